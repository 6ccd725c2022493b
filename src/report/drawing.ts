/** Drawings in the plane as SVG; one unit is one millimetre of the frame. */

import type { Polygon } from "../model/polygon.ts";
import { type Html, html, raw } from "./html.ts";

export type Point = readonly [x: number, y: number];

/** Where a point of the frame (m) lies on the drawing (mm). */
export type View = (x: number, y: number, z: number) => Point;

/** From above, front at the top. */
export const fromAbove: View = (x, y) => [-y * 1e3, -x * 1e3];
/** From the right-hand side, front to the right. */
export const fromRight: View = (x, _, z) => [x * 1e3, -z * 1e3];

/** Rounded to a hundredth of a millimetre, which no screen shows. */
export function fine(v: number): string {
  const text = v.toFixed(2).replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
}

/** Path data of closed polygons given in metres in the plane of the frame. */
export function polygonPath(polygons: readonly Polygon[], view: View = fromAbove): string {
  return polygons
    .filter((p) => p.length >= 6)
    .map((p) => {
      const points = Array.from({ length: p.length / 2 }, (_, i) => {
        const [u, v] = view(p[2 * i], p[2 * i + 1], 0);
        return `${fine(u)} ${fine(v)}`;
      });
      return `M${points.join("L")}Z`;
    })
    .join("");
}

export function circle([x, y]: Point, r: number, className: string): Html {
  return html`<circle class="${className}" cx="${fine(x)}" cy="${fine(y)}" r="${fine(r)}"/>`;
}

export function line(a: Point, b: Point, className: string): Html {
  const [x1, y1, x2, y2] = [...a, ...b].map(fine);
  return html`<line class="${className}" x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}"/>`;
}

/** A rectangle between two opposite corners. */
export function box(a: Point, b: Point, className: string): Html {
  const [x, y] = [Math.min(a[0], b[0]), Math.min(a[1], b[1])];
  const [w, h] = [Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1])];
  return html`<rect class="${className}" x="${fine(x)}" y="${fine(y)}" width="${fine(w)}" height="${fine(h)}"/>`;
}

export function path(d: string, className: string): Html {
  return d === "" ? raw("") : html`<path class="${className}" d="${d}"/>`;
}

/** Text of a given size, mm; anchor start, middle or end. */
export function label(
  [x, y]: Point,
  size: number,
  text: string,
  className = "",
  anchor = "middle",
): Html {
  return html`<text class="${className}" x="${fine(x)}" y="${fine(y)}" font-size="${fine(size)}" text-anchor="${anchor}">${text}</text>`;
}

/** The smallest box around points. */
export interface Extent {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export function extentOf(points: readonly Point[], margin = 0): Extent {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return {
    x0: Math.min(...xs) - margin,
    y0: Math.min(...ys) - margin,
    x1: Math.max(...xs) + margin,
    y1: Math.max(...ys) + margin,
  };
}

/** The same with room around further points. */
export function extentWith(e: Extent, points: readonly Point[], margin: number): Extent {
  if (points.length === 0) return e;
  const more = extentOf(points, margin);
  return {
    x0: Math.min(e.x0, more.x0),
    y0: Math.min(e.y0, more.y0),
    x1: Math.max(e.x1, more.x1),
    y1: Math.max(e.y1, more.y1),
  };
}

/**
 * A drawing that says in words what it shows.
 *
 * @param id unique in the page
 */
export function drawing(
  id: string,
  extent: Extent,
  title: string,
  finding: string,
  layers: readonly Html[],
): Html {
  const { x0, y0, x1, y1 } = extent;
  const viewBox = [x0, y0, x1 - x0, y1 - y0].map(fine).join(" ");
  return html`<svg class="drawing" id="${id}" viewBox="${viewBox}" role="img" aria-labelledby="${id}-title ${id}-finding">
<title id="${id}-title">${title}</title><desc id="${id}-finding">${finding}</desc>
<defs><pattern id="${id}-hatch" patternUnits="userSpaceOnUse" width="4" height="4" patternTransform="rotate(45)"><rect class="hatch-ground" width="4" height="4"/><line class="hatch-line" x1="0" y1="0" x2="0" y2="4"/></pattern></defs>
${layers.map((l) => html`${l}\n`)}</svg>`;
}
