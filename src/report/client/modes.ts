/** The moving picture of the modes. Runs in the page: gets from outside only what it is handed. */

import type { Theme } from "../palette.ts";
import type { Browser, Host, Plotly, PreparedShape, ShapesData, Tools } from "./types.ts";

/** Places the picture and connects its controls. */
export function startModes(browser: Browser, data: ShapesData, tools: Tools, host: Host): void {
  const { document } = browser;
  let Plotly: Plotly;
  const element = (id: string) => {
    const found = document.getElementById(id);
    if (found === null) throw new Error(`the page has no ${id}`);
    return found;
  };
  const chart = element("shape-chart");
  const [play, size, ghost, bodies, words] = [
    "mode-play",
    "mode-size",
    "mode-ghost",
    "mode-bodies",
    "mode-words",
  ].map(element);
  if (document.createElement("canvas").getContext("webgl") === null) {
    chart.textContent =
      "This browser cannot draw in three dimensions (no WebGL); the table says how each mode moves.";
    return;
  }
  const rest = tools.vertexMotion(data, data.places);
  const lines = tools.lineVertices(data.lines);
  const boxLines = tools.lineVertices(data.boxes.lines);
  const prepare = (mode: number): PreparedShape => {
    const motion = tools.vertexMotion(data, tools.unpackUnit(data.shapes[mode - 1]));
    return { data, rest, motion, lines, boxLines };
  };
  const low = [0, 1, 2].map((k) =>
    rest.filter((_, i) => i % 3 === k).reduce((a, b) => Math.min(a, b)),
  );
  const high = [0, 1, 2].map((k) =>
    rest.filter((_, i) => i % 3 === k).reduce((a, b) => Math.max(a, b)),
  );
  const reach = Math.max(...high.map((h, k) => h - low[k]));
  let shape = prepare(data.first);
  let playing = false;
  let seen = true;
  let busy = false;
  let held = false;
  let angle = 0;
  let phase = 1;
  let before = 0;

  /** Size of the motion, mm: the slider is in hundredths of the frame's own size. */
  const amplitude = () => (Number(size.value) / 100) * reach;
  // The same box for every phase and size, or the picture would breathe.
  const room = 0.14 * reach;
  const axis = (k: number) => ({ visible: false, range: [low[k] - room, high[k] + room] });
  const sides = high.map((h, k) => (h - low[k] + 2 * room) / (reach + 2 * room));
  const views: Record<string, object> = {
    corner: { eye: { x: -0.95, y: 0.95, z: 0.85 }, up: { x: 0, y: 0, z: 1 } },
    above: { eye: { x: -0.001, y: 0, z: 1.7 }, up: { x: 1, y: 0, z: 0 } },
    front: { eye: { x: 1.7, y: 0, z: 0.05 }, up: { x: 0, y: 0, z: 1 } },
    side: { eye: { x: 0, y: -1.7, z: 0.05 }, up: { x: 0, y: 0, z: 1 } },
  };
  // The picture fills the smaller side of its place.
  const zoom = 1.75 * Math.min(1.05, chart.clientWidth / chart.clientHeight);
  const layout = () => ({
    paper_bgcolor: "rgba(0,0,0,0)",
    margin: { l: 0, r: 0, t: 0, b: 0 },
    showlegend: false,
    uirevision: "kept",
    scene: {
      xaxis: axis(0),
      yaxis: axis(1),
      zaxis: axis(2),
      aspectmode: "manual",
      aspectratio: { x: zoom * sides[0], y: zoom * sides[1], z: zoom * sides[2] },
      camera: seenFrom()["scene.camera"] ?? {
        ...views.corner,
        projection: { type: "orthographic" },
      },
      dragmode: "turntable",
      uirevision: "kept",
    },
  });
  const config = { displayModeBar: false, responsive: true, scrollZoom: false };
  // Every redrawing sets the view back to the one in the layout, where a turn by hand arrives late or,
  // after a quick one, not at all: so it is put there before.
  const seenFrom = () => {
    const camera = chart._fullLayout?.scene?._scene?.getCamera();
    return camera === undefined ? {} : { "scene.camera": camera };
  };
  const draw = (theme: Theme) => {
    const traces = tools.shapeTraces(shape, theme);
    traces[1].visible = bodies.checked;
    traces[3].visible = bodies.checked;
    traces[5].visible = ghost.checked;
    const moved = tools.shapeUpdate(shape, phase * amplitude()) as Record<string, unknown[]>;
    for (let i = 0; i < 5; i++) {
      for (const k of ["x", "y", "z"]) traces[i][k] = moved[k][i];
    }
    return Plotly.react(chart, traces, layout(), config);
  };
  let shown: Theme | undefined;
  const move = async () => {
    if (busy || shown === undefined) return;
    busy = true;
    const update = tools.shapeUpdate(shape, phase * amplitude());
    await Plotly.update(chart, update, seenFrom(), [0, 1, 2, 3, 4]);
    busy = false;
  };
  const step = (now: number) => {
    if (!playing) return;
    // A slow swing: one in 1.8 seconds. After a pause it goes on where it was.
    const passed = before === 0 ? 0 : Math.min(100, now - before);
    before = now;
    angle += (2 * Math.PI * passed) / 1800;
    phase = Math.cos(angle);
    if (seen && !held && !document.hidden) move();
    browser.requestAnimationFrame(step);
  };
  const setPlaying = (on: boolean) => {
    playing = on;
    before = 0;
    play.textContent = on ? "Pause" : "Play";
    play.setAttribute("aria-pressed", String(on));
    if (on) browser.requestAnimationFrame(step);
  };
  const choose = (mode: number) => {
    shape = prepare(mode);
    words.textContent = data.words[mode - 1];
    chart.setAttribute("aria-label", data.words[mode - 1]);
    if (shown !== undefined) draw(shown);
  };

  play.addEventListener("click", () => setPlaying(!playing));
  size.addEventListener("input", () => {
    if (!playing) move();
  });
  for (const box of [ghost, bodies]) {
    box.addEventListener("change", () => {
      if (shown !== undefined) draw(shown);
    });
  }
  for (const radio of document.querySelectorAll("input[name=mode]")) {
    // The table scrolls in its own box: show the row of the mode that is chosen at first.
    if (radio.checked) element("modes-box").scrollTop = (radio.closest("tr")?.offsetTop ?? 0) - 120;
    radio.addEventListener("change", () => host.chooseMode(Number(radio.value)));
  }
  for (const button of document.querySelectorAll("button[data-view]")) {
    button.addEventListener("click", () => {
      const view = views[button.dataset.view] as { eye: object; up: object };
      Plotly.relayout(chart, { "scene.camera.eye": view.eye, "scene.camera.up": view.up });
    });
  }
  // The shape waits while the view is turned, or the two would fight.
  chart.addEventListener(
    "pointerdown",
    () => {
      held = true;
    },
    true,
  );
  for (const end of ["pointerup", "pointercancel"]) {
    browser.addEventListener(end, () =>
      browser.setTimeout(() => {
        held = false;
      }, 60),
    );
  }
  new browser.IntersectionObserver((entries) => {
    seen = entries.some((e) => e.isIntersecting);
  }).observe(chart);
  const still = browser.matchMedia("(prefers-reduced-motion: reduce)");
  still.addEventListener("change", () => {
    if (still.matches) setPlaying(false);
  });

  host.onMode((mode) => {
    for (const radio of document.querySelectorAll("input[name=mode]"))
      radio.checked = Number(radio.value) === mode;
    choose(mode);
  });
  host.place("shape-chart", (_, context) => {
    Plotly = context.Plotly;
    const first = shown === undefined;
    shown = context.theme;
    draw(context.theme).then(() => {
      if (first && !still.matches) setPlaying(true);
    });
  });
}
