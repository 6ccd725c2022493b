/** The moving picture of the modes. Runs in the page: gets from outside only what it is handed. */

import type { Tools } from "./tools.ts";
import type { Browser, Host, ShapesData } from "./types.ts";
import type { Look, Picked, Rgb, SceneMotion } from "./viewer-types.ts";

/** Places the picture and connects its controls. */
export function startModes(browser: Browser, data: ShapesData, tools: Tools, host: Host): void {
  const { document } = browser;
  const element = (id: string) => {
    const found = document.getElementById(id);
    if (found === null) throw new Error(`the page has no ${id}`);
    return found;
  };
  const chart = element("shape-chart");
  const figure = chart.closest("figure") as typeof chart;
  const [play, slider, speed, ghost, bodies, words, turning, clip] = [
    ...["mode-play", "mode-size", "mode-speed", "mode-ghost", "mode-bodies", "mode-words"],
    ...["mode-by-turning", "mode-clip"],
  ].map(element);
  const scene = tools.readScene(data.frame, tools.unpackIntegers);
  const reach = Math.max(...scene.high.map((h, k) => h - scene.low[k]));
  const colours: readonly Rgb[] = tools.scaleColours(data.scale, 10);
  // Little shade: the colours are to be read off.
  const DIMMEST = 0.8;
  const table = tools.shadeTable(colours, DIMMEST);
  const count = data.motions.length;
  let mode = data.first;
  let motion: SceneMotion;
  /** per vertex, relative to the largest in this mode: how far it moves and how much it turns */
  let shares: readonly [Float64Array, Float64Array];
  let printing = false;
  let playing = false;
  let inSight = false;
  let angle = 0;
  let before = 0;
  let slow = 0;

  const opacity = () => {
    const through = bodies.checked ? 0.24 : 0;
    return scene.kinds.map((kind) => (kind === "body" || kind === "stack" ? through : 1));
  };
  /** A body that rocks on its mount would leave all else dark: without bodies the rest has the scale. */
  const lengths = (vectors: Float64Array) => {
    const out = new Float64Array(vectors.length / 3);
    const shown = opacity();
    let most = 0;
    for (let v = 0; v < out.length; v++) {
      out[v] = Math.hypot(vectors[3 * v], vectors[3 * v + 1], vectors[3 * v + 2]);
    }
    scene.partOf.forEach((part, t) => {
      if (shown[part] === 0) return;
      for (let k = 0; k < 3; k++) most = Math.max(most, out[scene.triangles[3 * t + k]]);
    });
    return most > 0 ? out.map((v) => v / most) : out;
  };
  const measure = () => {
    shares = [lengths(motion.move), lengths(motion.turn)];
  };
  const prepare = () => {
    const packed = data.motions[mode - 1];
    motion = tools.readMotion(scene, packed, data.steps, tools.unpackIntegers, tools.sceneMotion);
    measure();
  };
  prepare();

  const look = (): Look => {
    const theme = host.theme();
    const size = (Number(slider.value) / 100) * reach;
    return {
      paint: {
        values: shares[turning.checked ? 1 : 0],
        colours,
        table,
        dimmest: DIMMEST,
        opacity: opacity(),
        ground: tools.rgbOf(theme.surface),
      },
      move: motion.move,
      // The slider is in hundredths of the frame's own size. On paper: at the largest deflection.
      size: (printing ? 1 : Math.cos(angle)) * size,
      ghost: ghost.checked,
      ...(data.frame.mark && { mark: data.frame.mark }),
      theme,
      room: 0.03 * reach + 0.7 * size,
    };
  };
  const percent = (share: number) => `${Number((100 * share).toPrecision(2))}\u00a0%`;
  const say = ({ part, triangle, weights }: Picked) => {
    const share = (values: Float64Array) =>
      percent(
        weights.reduce((sum, w, k) => sum + w * values[scene.triangles[3 * triangle + k]], 0),
      );
    const { name } = data.frame.parts[part];
    return `${name}: moves ${share(shares[0])} and turns ${share(shares[1])} of the most that is shown`;
  };
  const stage = tools.createStage(browser, tools, {
    at: chart,
    scene,
    look,
    say,
    label: () => data.words[mode - 1],
    buttons: figure.querySelectorAll("button[data-view], button[data-zoom]"),
  });

  const step = (now: number) => {
    if (!playing || !inSight || document.hidden) {
      before = 0;
      return;
    }
    // After a pause it goes on where it was.
    const passed = before === 0 ? 0 : Math.min(100, now - before);
    before = now;
    angle += (2 * Math.PI * passed * Number(speed.value)) / 1800;
    const begun = browser.performance.now();
    stage.render();
    // Fine screens of slow machines: fewer points while it moves, if most frames take long.
    slow = Math.max(0, slow + (browser.performance.now() - begun > 20 ? 1 : -1));
    if (slow > 12) stage.coarsen(1);
    browser.requestAnimationFrame(step);
  };
  const run = () => {
    if (before !== 0 || !playing || !inSight || document.hidden) return;
    before = -1;
    browser.requestAnimationFrame((now) => {
      before = now;
      step(now);
    });
  };
  const setPlaying = (on: boolean) => {
    playing = on;
    play.textContent = on ? "Pause" : "Play";
    play.setAttribute("aria-pressed", String(on));
    run();
    if (on) return;
    stage.coarsen(2);
    stage.render();
  };
  const still = browser.matchMedia("(prefers-reduced-motion: reduce)");
  let begun = false;
  host.place(
    "shape-chart",
    (_at, c) => {
      printing = c.printing;
      stage.place(c);
      if (begun || printing) return;
      begun = true;
      if (!still.matches) setPlaying(true);
    },
    { library: false, save: stage.save },
  );
  new browser.IntersectionObserver((entries) => {
    inSight = entries[entries.length - 1].isIntersecting;
    run();
  }).observe(chart);
  document.addEventListener("visibilitychange", run);
  still.addEventListener("change", () => {
    if (still.matches) setPlaying(false);
  });

  const radios = Array.from(document.querySelectorAll("input[name=mode]"));
  const [back, next] = ["mode-back", "mode-next"].map(element);
  const show = (number: number) => {
    if (!(number >= 1)) return;
    if (number > count) {
      words.textContent = `Mode ${number} is not in this page, which has the shapes of the lowest ${count} only.`;
      return;
    }
    mode = number;
    prepare();
    words.textContent = data.words[mode - 1];
    stage.canvas.setAttribute("aria-label", data.words[mode - 1]);
    for (const radio of radios) {
      if (Number(radio.value) !== mode) continue;
      radio.checked = true;
      // The table scrolls in its own box: keep the chosen row in it.
      const [row, box] = [radio.closest("tr"), element("modes-box")];
      const top = row?.offsetTop ?? 0;
      const seen = top > box.scrollTop + 60 && top < box.scrollTop + box.clientHeight - 60;
      if (!seen) box.scrollTop = top - 120;
    }
    back.disabled = mode === 1;
    next.disabled = mode === count;
    stage.render();
  };
  show(mode);
  host.onMode(show);
  for (const radio of radios) {
    radio.addEventListener("change", () => host.chooseMode(Number(radio.value)));
  }
  back.addEventListener("click", () => host.chooseMode(mode - 1));
  next.addEventListener("click", () => host.chooseMode(mode + 1));

  play.addEventListener("click", () => setPlaying(!playing));
  const redraw = () => {
    if (!playing) stage.render();
  };
  slider.addEventListener("input", redraw);
  bodies.addEventListener("change", measure);
  for (const control of [ghost, bodies, ...figure.querySelectorAll("input[name=mode-by]")]) {
    control.addEventListener("change", () => stage.render());
  }
  const { MediaRecorder } = browser as unknown as {
    readonly MediaRecorder?: { isTypeSupported(type: string): boolean };
  };
  clip.hidden = !(
    "captureStream" in stage.canvas && MediaRecorder?.isTypeSupported("video/webm") === true
  );
  clip.addEventListener("click", async () => {
    const was = playing;
    clip.disabled = true;
    setPlaying(true);
    try {
      const link = document.createElement("a");
      link.href = await tools.recordClip(browser, stage.canvas, 3600 / Number(speed.value));
      link.download = `mode-${mode}.webm`;
      link.click();
      // The browser has begun to save it by then.
      browser.setTimeout(() => browser.URL.revokeObjectURL(link.href), 60_000);
    } catch {
      words.textContent = "This browser could not film the picture.";
    } finally {
      clip.disabled = false;
      setPlaying(was);
    }
  });
}
