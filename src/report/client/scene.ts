/** From the packed frame to closed surfaces, and from packed modes to their motion. Runs in the page. */

import type { DrawnFrame, MotionSteps, PackedMotion, Scene, SceneMotion } from "./viewer-types.ts";

/** Vertices, triangles and edges of the frame at rest. */
export function readScene(frame: DrawnFrame, unpack: (text: string) => number[]): Scene {
  const places = unpack(frame.carriers);
  const carriers = places.length / 3;
  const rest: number[] = [];
  for (let i = 0; i < carriers; i++)
    for (let k = 0; k < 3; k++) rest.push(places[k * carriers + i] / 100);
  const [fixed, ...from] = frame.fixed.map(unpack);
  const skins: number[] = [...fixed];
  const offsets: number[] = [];
  fixed.forEach((c, i) => {
    for (let k = 0; k < 3; k++) {
      offsets.push(from[k][i] / 100);
      rest.push(rest[3 * c + k] + from[k][i] / 100);
    }
  });
  const cells = unpack(frame.cells);
  const inside = frame.inside.map(unpack);
  inside[0].forEach((cell, i) => {
    const [s, t] = [inside[1][i] / 1000, inside[2][i] / 1000];
    const weights = [(1 - s) * (1 - t), s * (1 - t), s * t, (1 - s) * t];
    for (let k = 0; k < 3; k++)
      rest.push(weights.reduce((sum, w, c) => sum + w * rest[3 * cells[4 * cell + c] + k], 0));
  });
  const triangles: number[] = [];
  const partOf: number[] = [];
  const edges: number[] = [];
  const edgePart: number[] = [];
  const soft: number[] = [];
  const skin = (vertex: number, z: number) => {
    skins.push(vertex);
    offsets.push(0, 0, z);
    for (let k = 0; k < 3; k++) rest.push(rest[3 * vertex + k] + (k === 2 ? z : 0));
    return rest.length / 3 - 1;
  };
  frame.parts.forEach(({ slab, prism }, part) => {
    /** Returns the number of its first triangle. */
    const face = (...corners: number[]) => {
      for (let i = 2; i < corners.length; i++) {
        triangles.push(corners[0], corners[i - 1], corners[i]);
        partOf.push(part);
      }
      return partOf.length - corners.length + 2;
    };
    const edge = (a: number, b: number, left: number, right: number, round = false) => {
      edges.push(a, b, left, right);
      edgePart.push(part);
      soft.push(round ? 1 : 0);
    };
    if (slab !== undefined) {
      const sides = [-1, 1].map((side) => {
        const known = new Map<number, number>();
        return (vertex: number) => {
          const there = known.get(vertex) ?? skin(vertex, side * slab.half);
          known.set(vertex, there);
          return there;
        };
      });
      const [lower, upper] = sides;
      const faces = unpack(slab.faces);
      for (let i = 0; i < faces.length; i += 3) {
        const [a, b, c] = faces.slice(i, i + 3);
        face(upper(a), upper(b), upper(c));
        face(lower(c), lower(b), lower(a));
      }
      const border = unpack(slab.borders);
      const walls = (wall: (a: number, b: number) => void) => {
        for (let i = 1; i < border.length; i++)
          if (border[i - 1] >= 0 && border[i] >= 0) wall(border[i - 1], border[i]);
      };
      walls((a, b) => face(lower(a), lower(b), upper(b), upper(a)));
      // One rim after the other: lines that go on are drawn in one go.
      walls((a, b) => edge(upper(a), upper(b), -1, -1));
      walls((a, b) => edge(lower(a), lower(b), -1, -1));
    }
    if (prism !== undefined) {
      const rings = unpack(prism.rings);
      const n = prism.sides;
      const at = (ring: number, i: number) => rings[ring * n + ((i + n) % n)];
      const last = rings.length / n - 1;
      const all = Array.from({ length: n }, (_, i) => i);
      const bottom = face(...all.map((i) => at(0, n - 1 - i)));
      const top = face(...all.map((i) => at(last, i)));
      for (let r = 0; r < last; r++) {
        const sides = all.map((i) => face(at(r, i), at(r, i + 1), at(r + 1, i + 1), at(r + 1, i)));
        for (const i of all) {
          edge(at(r, i), at(r + 1, i), sides[(i + n - 1) % n], sides[i], n !== 4);
          if (r === 0) edge(at(0, i), at(0, i + 1), bottom, sides[i]);
          if (r === last - 1) edge(at(last, i), at(last, i + 1), top, sides[i]);
        }
      }
    }
  });
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const v of triangles) {
    for (let k = 0; k < 3; k++) {
      low[k] = Math.min(low[k], rest[3 * v + k]);
      high[k] = Math.max(high[k], rest[3 * v + k]);
    }
  }
  // The largest distance in each of a few storeys, told for both ends of the storey.
  const storeys = 24;
  const far = new Float64Array(storeys);
  const [cx, cy, cz] = low.map((l, k) => (l + high[k]) / 2);
  const storey = (high[2] - low[2]) / storeys || 1;
  for (const v of triangles) {
    const s = Math.min(storeys - 1, Math.floor((rest[3 * v + 2] - low[2]) / storey));
    far[s] = Math.max(far[s], Math.hypot(rest[3 * v] - cx, rest[3 * v + 1] - cy));
  }
  const profile = Array.from(far).flatMap((r, s) =>
    r > 0 ? [r, low[2] + s * storey - cz, r, low[2] + (s + 1) * storey - cz] : [],
  );
  return {
    rest: Float64Array.from(rest),
    carriers,
    fixed,
    cells,
    inside,
    skins,
    offsets,
    triangles: Int32Array.from(triangles),
    partOf: Int32Array.from(partOf),
    edges: Int32Array.from(edges),
    edgePart: Int32Array.from(edgePart),
    soft: Uint8Array.from(soft),
    kinds: frame.parts.map((p) => p.kind),
    low,
    high,
    profile,
  };
}

/**
 * Motion of every vertex from that of the carriers (three numbers each: x of all, y of all, z of all).
 * What is fixed to a carrier, and the skins of plates and arms, move as u + theta x r. In a plate's cell
 * the deflection is the polynomial of twelve terms that takes deflections and slopes of its corners
 * (A. Adini, R. W. Clough 1961; O. C. Zienkiewicz, The finite element method, chapter on plate bending,
 * from memory): linear motions and xy are exact, and neighbours meet without a gap. All else is bilinear.
 */
export function sceneMotion(
  scene: Scene,
  moves: ArrayLike<number>,
  turns: ArrayLike<number>,
): SceneMotion {
  const { rest, carriers, fixed, cells, inside, skins, offsets } = scene;
  const move = new Float64Array(rest.length);
  const turn = new Float64Array(rest.length);
  for (let i = 0; i < carriers; i++) {
    for (let k = 0; k < 3; k++) {
      move[3 * i + k] = moves[k * carriers + i];
      turn[3 * i + k] = turns[k * carriers + i];
    }
  }
  const rigid = (vertex: number, from: number, n: number) => {
    const [x, y, z] = [offsets[3 * n], offsets[3 * n + 1], offsets[3 * n + 2]];
    const [a, b, c] = [turn[3 * from], turn[3 * from + 1], turn[3 * from + 2]];
    move[3 * vertex] = move[3 * from] + b * z - c * y;
    move[3 * vertex + 1] = move[3 * from + 1] + c * x - a * z;
    move[3 * vertex + 2] = move[3 * from + 2] + a * y - b * x;
    for (let k = 0; k < 3; k++) turn[3 * vertex + k] = turn[3 * from + k];
  };
  fixed.forEach((carrier, i) => {
    rigid(carriers + i, carrier, i);
  });
  const first = carriers + fixed.length;
  inside[0].forEach((cell, i) => {
    const vertex = first + i;
    const [xi, eta] = [inside[1][i] / 500 - 1, inside[2][i] / 500 - 1];
    const corners = cells.slice(4 * cell, 4 * cell + 4);
    const [a, b] = [
      (rest[3 * corners[2]] - rest[3 * corners[0]]) / 2,
      (rest[3 * corners[2] + 1] - rest[3 * corners[0] + 1]) / 2,
    ];
    corners.forEach((corner, c) => {
      const [xc, yc] = [c === 1 || c === 2 ? 1 : -1, c >= 2 ? 1 : -1];
      const [p, q] = [1 + xc * xi, 1 + yc * eta];
      const flat = (p * q) / 4;
      for (let k = 0; k < 3; k++) {
        if (k < 2) move[3 * vertex + k] += flat * move[3 * corner + k];
        turn[3 * vertex + k] += flat * turn[3 * corner + k];
      }
      // Slopes of w: dw/dx = -theta_y, dw/dy = theta_x.
      const w = (p * q * (2 + xc * xi + yc * eta - xi * xi - eta * eta)) / 8;
      const along = (-a * xc * p * p * (1 - xc * xi) * q) / 8;
      const across = (-b * yc * q * q * (1 - yc * eta) * p) / 8;
      move[3 * vertex + 2] +=
        w * move[3 * corner + 2] - along * turn[3 * corner + 1] + across * turn[3 * corner];
    });
  });
  const base = first + inside[0].length;
  for (let i = fixed.length; i < skins.length; i++) {
    rigid(base + i - fixed.length, skins[i], i);
  }
  return { move, turn };
}

/** A mode of the page as motion of all vertices, for a largest displacement of 1 mm. */
export function readMotion(
  scene: Scene,
  packed: PackedMotion,
  steps: MotionSteps,
  unpack: (text: string) => number[],
  motion: (scene: Scene, moves: ArrayLike<number>, turns: ArrayLike<number>) => SceneMotion,
): SceneMotion {
  const moves = unpack(packed.move).map((v) => v / steps.move);
  const turns = unpack(packed.turn).map((v) => (v / steps.turn) * packed.turnPerMove);
  return motion(scene, moves, turns);
}
