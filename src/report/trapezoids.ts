/** A plate with holes, cut into trapezoids inside one cell, so that it can be drawn true to its outline. */

import { clipToConvex, type Polygon, rectangle } from "../model/polygon.ts";

/** Between the heights y0 and y1, from the left side to the right side, m. */
export interface Trapezoid {
  readonly y0: number;
  readonly y1: number;
  /** x at y0 and y1 */
  readonly left: readonly [number, number];
  readonly right: readonly [number, number];
}

interface Edge {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/**
 * The part of a plate in the cell from (x0, y0) to (x1, y1): horizontal strips between all corners,
 * filled by the even-odd rule. Holes must lie inside the outline and apart from each other.
 */
export function trapezoids(
  outline: Polygon,
  holes: readonly Polygon[],
  cell: readonly [x0: number, y0: number, x1: number, y1: number],
): Trapezoid[] {
  const [x0, y0, x1, y1] = cell;
  const box = rectangle(x0, y0, x1, y1);
  const near = 1e-9 * Math.max(x1 - x0, y1 - y0);
  const edges = [outline, ...holes].flatMap((p) => upward(clipToConvex(p, box), near));
  const heights = [...new Set(edges.flatMap((e) => [e.y0, e.y1]))].sort((a, b) => a - b);
  const out: Trapezoid[] = [];
  for (let k = 1; k < heights.length; k++) {
    const [bottom, top] = [heights[k - 1], heights[k]];
    if (top - bottom < near) continue;
    const middle = (bottom + top) / 2;
    const across = edges
      .filter((e) => e.y0 < middle && e.y1 > middle)
      .map((e) => ({ at: [xAt(e, bottom), xAt(e, top)] as const, middle: xAt(e, middle) }))
      .sort((a, b) => a.middle - b.middle);
    for (let i = 1; i < across.length; i += 2) {
      if (across[i].middle - across[i - 1].middle < near) continue;
      out.push({ y0: bottom, y1: top, left: across[i - 1].at, right: across[i].at });
    }
  }
  return out;
}

/** Sides that rise or fall, written so that they rise. */
function upward(p: Polygon, near: number): Edge[] {
  const edges: Edge[] = [];
  for (let i = 0; i < p.length; i += 2) {
    const j = (i + 2) % p.length;
    const [ax, ay, bx, by] = [p[i], p[i + 1], p[j], p[j + 1]];
    if (Math.abs(by - ay) < near) continue;
    edges.push(by > ay ? { x0: ax, y0: ay, x1: bx, y1: by } : { x0: bx, y0: by, x1: ax, y1: ay });
  }
  return edges;
}

function xAt(e: Edge, y: number): number {
  return e.x0 + ((y - e.y0) / (e.y1 - e.y0)) * (e.x1 - e.x0);
}
