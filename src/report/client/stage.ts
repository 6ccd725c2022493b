/** A canvas with a scene that can be turned by hand. Runs in the page: functions stand alone. */

import type { Theme } from "../palette.ts";
import type { Browser, PageEvent, Stage, StageOptions } from "./types.ts";
import type { ViewerTools } from "./viewer-tools.ts";
import type { Camera, Canvas2d, Picture, Raster, Rgb } from "./viewer-types.ts";

/** Puts a canvas into its place and connects pointer, keys and the buttons of the views. */
export function createStage(browser: Browser, tools: ViewerTools, options: StageOptions): Stage {
  const { at, scene, look } = options;
  const { document } = browser;
  const canvas = document.createElement("canvas");
  canvas.setAttribute("role", "img");
  canvas.setAttribute("tabindex", "0");
  canvas.setAttribute("aria-describedby", `${at.id}-hint`);
  const tip = document.createElement("span");
  tip.setAttribute("class", "tip");
  tip.setAttribute("aria-hidden", "true");
  tip.hidden = true;
  // Eyes: yaw from x to y, and how high. Behind and to the left the nose points into the picture.
  const views: Readonly<Record<string, readonly [number, number]>> = {
    corner: [2.45, 0.6],
    above: [Math.PI, Math.PI / 2],
    front: [0, 0.03],
    side: [-Math.PI / 2, 0.03],
  };
  const camera: Camera = { yaw: views.corner[0], pitch: views.corner[1], zoom: 1 };
  const ink = canvas.getContext("2d") as unknown as Canvas2d;
  let image: { readonly data: { readonly buffer: ArrayBuffer } } | undefined;
  let raster: Raster | undefined;
  let picture: Picture | undefined;
  let there = false;
  let printing = false;
  let finest = 2;
  let ratio = 1;

  const render = () => {
    if (raster === undefined || image === undefined) return;
    picture = tools.composePicture(tools, scene, camera, raster, ratio, look());
    if (printing) {
      // Browsers print a canvas by what was drawn into it, and leave out points that were only put there.
      const points = document.createElement("canvas");
      points.width = raster.width;
      points.height = raster.height;
      (points.getContext("2d") as unknown as Canvas2d).putImageData(image, 0, 0);
      ink.drawImage(points, 0, 0);
    } else {
      ink.putImageData(image, 0, 0);
    }
    tools.paintOverlay(ink, picture.overlay, ratio);
  };
  const measure = () => {
    ratio = printing ? 3 : Math.min(browser.devicePixelRatio || 1, finest);
    const width = Math.max(1, Math.round(at.clientWidth * ratio));
    const height = Math.max(1, Math.round(at.clientHeight * ratio));
    if (raster?.width === width && raster.height === height) return;
    canvas.width = width;
    canvas.height = height;
    image = ink.createImageData(width, height);
    raster = tools.newRaster(width, height, image.data.buffer);
  };
  /** Only one drawing per frame of the screen, however many events come. */
  let asked = false;
  const ask = () => {
    if (asked) return;
    asked = true;
    browser.requestAnimationFrame(() => {
      asked = false;
      render();
    });
  };
  const turn = (right: number, up: number) => {
    camera.yaw -= right;
    camera.pitch = Math.max(-Math.PI / 2, Math.min(Math.PI / 2, camera.pitch + up));
    ask();
  };
  const zoom = (factor: number) => {
    camera.zoom = Math.max(0.5, Math.min(6, camera.zoom * factor));
    ask();
  };

  let held: { x: number; y: number } | undefined;
  const point = (event: PageEvent) => {
    const box = canvas.getBoundingClientRect();
    const [x, y] = [event.clientX - box.left, event.clientY - box.top];
    const { opacity } = look().paint;
    const picked =
      picture && tools.pick(scene, picture.seen, x * ratio, y * ratio, (part) => opacity[part] > 0);
    tip.hidden = picked === undefined;
    if (picked === undefined) return;
    tip.textContent = options.say(picked);
    // On the side of the pointer that has more room.
    const right = x > at.clientWidth / 2;
    tip.style.left = `${Math.round(x + (right ? -12 : 14))}px`;
    tip.style.top = `${Math.round(y + 12)}px`;
    tip.style.setProperty("transform", right ? "translateX(-100%)" : "none");
  };
  canvas.addEventListener("pointerdown", (event) => {
    held = { x: event.clientX, y: event.clientY };
    canvas.setPointerCapture(event.pointerId);
    point(event);
  });
  canvas.addEventListener("pointermove", (event) => {
    if (held === undefined) {
      point(event);
      return;
    }
    tip.hidden = true;
    // A finger that moves up or down scrolls the page.
    const up = event.pointerType === "touch" ? 0 : 0.008 * (event.clientY - held.y);
    turn(0.008 * (event.clientX - held.x), up);
    held = { x: event.clientX, y: event.clientY };
  });
  for (const end of ["pointerup", "pointercancel"]) {
    canvas.addEventListener(end, () => {
      held = undefined;
    });
  }
  canvas.addEventListener("pointerleave", () => {
    tip.hidden = true;
  });
  const keys: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => turn(-0.12, 0),
    ArrowRight: () => turn(0.12, 0),
    ArrowUp: () => turn(0, -0.12),
    ArrowDown: () => turn(0, 0.12),
    "+": () => zoom(1.15),
    "=": () => zoom(1.15),
    "-": () => zoom(1 / 1.15),
  };
  canvas.addEventListener("keydown", (event) => {
    const act = keys[event.key];
    if (act === undefined || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    act();
  });
  for (const button of options.buttons) {
    button.addEventListener("click", () => {
      const view = views[button.dataset.view ?? ""];
      if (view) Object.assign(camera, { yaw: view[0], pitch: view[1], zoom: 1 });
      else zoom(button.dataset.zoom === "in" ? 1.25 : 0.8);
      ask();
    });
  }

  const address = (svg: string) => `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  return {
    canvas,
    camera,
    render,
    place: (c) => {
      printing = c.printing;
      if (!there) for (const part of [canvas, tip]) at.append(part);
      there = true;
      canvas.setAttribute("aria-label", options.label());
      measure();
      render();
    },
    coarsen: (most) => {
      finest = most;
      measure();
    },
    save: async (format) => {
      const scale = format === "png" ? 2 : 1;
      const [width, height] = [at.clientWidth, at.clientHeight].map((v) => Math.round(scale * v));
      if (format === "png") {
        const copy = document.createElement("canvas");
        copy.width = width;
        copy.height = height;
        const paper = copy.getContext("2d") as unknown as Canvas2d;
        const own = paper.createImageData(width, height);
        const points = tools.newRaster(width, height, own.data.buffer);
        const { overlay } = tools.composePicture(tools, scene, camera, points, scale, look());
        paper.putImageData(own, 0, 0);
        tools.paintOverlay(paper, overlay, scale);
        return copy.toDataURL("image/png");
      }
      const points = tools.newRaster(width, height);
      const now = look();
      const { seen, overlay } = tools.composePicture(tools, scene, camera, points, scale, now);
      const covered = (x: number, y: number, depth: number) => {
        const [i, j] = [Math.round(x - 0.5), Math.round(y - 0.5)];
        if (i < 0 || j < 0 || i >= width || j >= height) return false;
        return points.depth[j * width + i] > depth + 0.3 + 2 / seen.scale;
      };
      const areas = tools.paintedAreas(scene, seen, now.paint, covered);
      // From a drawing that is there: no address stands in the page, not even one that leads nowhere.
      const [svg] = document.querySelectorAll("svg");
      const title = options.label();
      const { namespaceURI } = svg;
      return address(
        tools.svgPicture(width, height, now.theme.surface, areas, overlay, title, namespaceURI),
      );
    },
  };
}

/** Colours of the kinds of parts. */
export function kindColours(theme: Theme): Readonly<Record<string, Rgb>> {
  const rgb = (colour: string): Rgb => {
    const n = Number.parseInt(colour.slice(1), 16);
    return [n >> 16, (n >> 8) & 255, n & 255];
  };
  return {
    plate: rgb(theme.plate),
    arm: rgb(theme.series5),
    post: rgb(theme.series1),
    motor: rgb(theme.series7),
    stack: rgb(theme.accent),
    body: rgb(theme.series2),
  };
}
