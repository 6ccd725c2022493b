/** The whole picture: surfaces, lines, mark, arrow. Runs in the page: every function stands alone. */

import type { ViewerTools } from "./viewer-tools.ts";
import type { Camera, Canvas2d, Look, Overlay, Picture, Raster, Scene } from "./viewer-types.ts";

/**
 * Draws the surfaces into a raster and says what lies over them.
 *
 * @param ratio points of the raster per pixel of the page: how thick lines and large letters are
 */
export function composePicture(
  tools: ViewerTools,
  scene: Scene,
  camera: Camera,
  raster: Raster,
  ratio: number,
  look: Look,
): Picture {
  const { width, height } = raster;
  const { paint, theme, room, move, size } = look;
  const seen = tools.project(scene, camera, width, height, room, move, size);
  tools.rasterise(raster, scene, seen, paint, ratio);
  const { opacity } = paint;
  // A point of the picture is this many mm wide.
  const point = 1 / seen.scale;
  const lines = (wanted: (part: number) => boolean) =>
    tools.inSight(raster, seen, tools.edgesOf(scene, seen, wanted), 0.25 + point);
  const strokes: Overlay["strokes"][number][] = [];
  if (look.ghost && move !== undefined) {
    const rest = tools.project(scene, camera, width, height, room);
    const slabs = (part: number) => scene.kinds[part] === "plate" || scene.kinds[part] === "arm";
    strokes.push({
      pieces: tools.inSight(raster, rest, tools.edgesOf(scene, rest, slabs), 0),
      colour: theme.muted,
      width: 0.8 * ratio,
      dash: [3 * ratio, 3 * ratio],
    });
  }
  strokes.push(
    { pieces: lines((p) => opacity[p] > 0 && opacity[p] < 1), colour: theme.muted, width: ratio },
    { pieces: lines((p) => opacity[p] >= 1), colour: theme.ink, width: 1.1 * ratio },
  );
  const badges: Overlay["badges"][number][] = [];
  const letters: Overlay["letters"][number][] = [];
  const nose = scene.high[0];
  const length = nose - scene.low[0];
  const [tail, tip] = [nose + 0.03 * length, nose + 0.12 * length];
  const [a, b] = [seen.at(tail, 0, 0), seen.at(tip, 0, 0)];
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const long = Math.hypot(dx, dy);
  if (long > 8 * ratio) {
    const [ux, uy] = [(5 * ratio * dx) / long, (5 * ratio * dy) / long];
    const barb = (k: number) => [b[0], b[1], b[0] - 1.4 * ux + k * uy, b[1] - 1.4 * uy - k * ux];
    strokes.push({
      pieces: [a[0], a[1], b[0], b[1], ...barb(0.8), ...barb(-0.8)],
      colour: theme.muted,
      width: 1.6 * ratio,
    });
    letters.push({
      x: b[0] + 3.4 * ux,
      y: b[1] + 2.6 * uy + 4 * ratio,
      text: "front",
      colour: theme.muted,
      size: 13 * ratio,
    });
  }
  if (look.mark !== undefined) {
    const [plate, chip] = look.mark;
    const [x, y] = [seen.x[chip], seen.y[chip]];
    const pieces = [seen.x[plate], seen.y[plate], x, y];
    strokes.push(
      { pieces, colour: theme.surface, width: 6 * ratio },
      { pieces, colour: theme.accent, width: 3 * ratio },
    );
    const r = 7 * ratio;
    badges.push({
      points: [x - r, y, x, y - r, x + r, y, x, y + r],
      fill: theme.accent,
      edge: theme.surface,
    });
  }
  return { seen, overlay: { strokes, badges, letters } };
}

/** Draws what lies over the surfaces on a canvas. */
export function paintOverlay(ink: Canvas2d, overlay: Overlay, ratio: number): void {
  ink.lineCap = "butt";
  ink.lineJoin = "round";
  for (const { pieces, colour, width, dash } of overlay.strokes) {
    ink.strokeStyle = colour;
    ink.lineWidth = width;
    ink.setLineDash(dash ?? []);
    ink.beginPath();
    for (let i = 0; i < pieces.length; i += 4) {
      const goesOn = pieces[i] === pieces[i - 2] && pieces[i + 1] === pieces[i - 1];
      if (!goesOn) ink.moveTo(pieces[i], pieces[i + 1]);
      ink.lineTo(pieces[i + 2], pieces[i + 3]);
    }
    ink.stroke();
  }
  ink.setLineDash([]);
  for (const { points, fill, edge } of overlay.badges) {
    ink.fillStyle = fill;
    ink.strokeStyle = edge;
    ink.lineWidth = 2 * ratio;
    ink.beginPath();
    ink.moveTo(points[0], points[1]);
    for (let i = 2; i < points.length; i += 2) ink.lineTo(points[i], points[i + 1]);
    ink.closePath();
    ink.stroke();
    ink.fill();
  }
  ink.textAlign = "center";
  for (const { x, y, text, colour, size } of overlay.letters) {
    ink.font = `${size}px system-ui, sans-serif`;
    ink.fillStyle = colour;
    ink.fillText(text, x, y);
  }
}

/** "#rrggbb" as numbers. */
export function rgbOf(colour: string): [number, number, number] {
  const n = Number.parseInt(colour.slice(1), 16);
  return [n >> 16, (n >> 8) & 255, n & 255];
}

/**
 * A scale of colours in 256 steps, drawn in `bands` bands so that lines of equal motion show; within a
 * band it still rises a little.
 */
export function scaleColours(
  scale: readonly (readonly [number, string])[],
  bands: number,
): (readonly [number, number, number])[] {
  const numbers = scale.map(([, colour]) => Number.parseInt(colour.slice(1), 16));
  return Array.from({ length: 256 }, (_, i) => {
    const t = i / 255;
    const band = Math.min(bands - 1, Math.floor(t * bands)) / (bands - 1);
    const at = Math.max(0, Math.min(1, 0.75 * band + 0.25 * t)) * (scale.length - 1);
    const k = Math.min(scale.length - 2, Math.floor(at));
    const mixed = (shift: number) => {
      const [p, q] = [(numbers[k] >> shift) & 255, (numbers[k + 1] >> shift) & 255];
      return Math.round(p + (at - k) * (q - p));
    };
    return [mixed(16), mixed(8), mixed(0)] as const;
  });
}
