/** From carriers to what is drawn. Runs in the page: every function stands alone. */

import type { DisplayData } from "../display.ts";
import type { Theme } from "../palette.ts";
import type { PreparedShape, Trace } from "./types.ts";

/** Three numbers of every vertex from those of the carriers: the followers lie between them. */
export function vertexMotion(data: DisplayData, carriers: ArrayLike<number>): Float64Array {
  const count = carriers.length / 3;
  const followers = data.followers.length / 4;
  const out = new Float64Array(3 * (count + followers));
  for (let i = 0; i < carriers.length; i++) out[i] = carriers[i];
  for (let f = 0; f < followers; f++) {
    const frame = data.followers[4 * f];
    const [w1, w2, w3] = [1, 2, 3].map((k) => data.followers[4 * f + k] / 1000);
    const weights = [1 - w1 - w2 - w3, w1, w2, w3];
    for (let k = 0; k < 3; k++) {
      let sum = 0;
      weights.forEach((w, c) => {
        sum += w * carriers[3 * data.frames[4 * frame + c] + k];
      });
      out[3 * (count + f) + k] = sum;
    }
  }
  return out;
}

/** Lines one after the other, -1 between them. */
export function lineVertices(lines: readonly (readonly number[])[]): number[] {
  return lines.flatMap((line) => [...line, -1]);
}

/**
 * Places of all that moves, for the traces of `shapeTraces`: surface, bodies, borders, bodies' edges,
 * mark.
 *
 * @param size mm: how far the largest motion is drawn from rest
 */
export function shapeUpdate(shape: PreparedShape, size: number): Record<string, unknown> {
  const { rest, motion, data } = shape;
  const at = (vertex: number, k: number) =>
    vertex < 0 ? null : rest[3 * vertex + k] + size * motion[3 * vertex + k];
  const count = rest.length / 3;
  const all = Array.from({ length: count }, (_, i) => i);
  const mark = data.mark ?? [];
  const groups = [all, all, shape.lines, shape.boxLines, mark];
  const axis = (k: number) => groups.map((vertices) => vertices.map((v) => at(v, k)));
  return { x: axis(0), y: axis(1), z: axis(2) };
}

/**
 * The picture at rest: surface, bodies, borders, bodies' edges, mark; then what does not move: the
 * borders once more as ghost, and an arrow to the front.
 */
export function shapeTraces(shape: PreparedShape, theme: Theme): Trace[] {
  const { data, motion, rest } = shape;
  const count = rest.length / 3;
  const every = (list: readonly number[], k: number) => list.filter((_, i) => i % 3 === k);
  const triangles = (list: readonly number[]) => ({
    i: every(list, 0),
    j: every(list, 1),
    k: every(list, 2),
  });
  const place = (vertices: readonly number[], k: number) =>
    vertices.map((v) => (v < 0 ? null : rest[3 * v + k]));
  const places = (vertices: readonly number[]) => ({
    x: place(vertices, 0),
    y: place(vertices, 1),
    z: place(vertices, 2),
  });
  const along = rest.filter((_, i) => i % 3 === 0);
  const nose = along.reduce((a, b) => Math.max(a, b));
  const length = nose - along.reduce((a, b) => Math.min(a, b));
  const all = Array.from({ length: count }, (_, i) => i);
  const intensity = all.map((i) => Math.hypot(motion[3 * i], motion[3 * i + 1], motion[3 * i + 2]));
  const line = (vertices: readonly number[], style: object, visible = true) => ({
    type: "scatter3d",
    mode: "lines",
    ...places(vertices),
    line: style,
    hoverinfo: "skip",
    visible,
    connectgaps: false,
  });
  return [
    {
      type: "mesh3d",
      ...places(all),
      ...triangles(data.surface),
      intensity,
      cmin: 0,
      cmax: 1,
      colorscale: data.scale,
      showscale: false,
      flatshading: true,
      lighting: { ambient: 0.88, diffuse: 0.25, specular: 0, roughness: 1, fresnel: 0 },
      hoverinfo: "skip",
    },
    {
      type: "mesh3d",
      ...places(all),
      ...triangles(data.boxes.surface),
      intensity,
      cmin: 0,
      cmax: 1,
      colorscale: data.scale,
      showscale: false,
      opacity: 0.3,
      flatshading: true,
      lighting: { ambient: 1, diffuse: 0, specular: 0, fresnel: 0 },
      hoverinfo: "skip",
    },
    line(shape.lines, { color: theme.ink, width: 3 }),
    line(shape.boxLines, { color: theme.muted, width: 1.5 }),
    {
      type: "scatter3d",
      mode: "lines+markers",
      ...places(data.mark ?? []),
      line: { color: theme.accent, width: 5 },
      marker: {
        color: theme.accent,
        size: 8,
        symbol: "diamond",
        line: { color: theme.surface, width: 2 },
      },
      hoverinfo: "skip",
    },
    line(shape.lines, { color: theme.muted, width: 1.5 }),
    {
      type: "scatter3d",
      mode: "lines+text",
      x: [
        nose,
        nose + 0.08 * length,
        nose + 0.055 * length,
        null,
        nose + 0.08 * length,
        nose + 0.055 * length,
      ],
      y: [0, 0, 0.015 * length, null, 0, -0.015 * length],
      z: [0, 0, 0, null, 0, 0],
      text: ["", "front"],
      textposition: "top center",
      textfont: { color: theme.muted, size: 13 },
      line: { color: theme.muted, width: 3 },
      hoverinfo: "skip",
    },
  ];
}
