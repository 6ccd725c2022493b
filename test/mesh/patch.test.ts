import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { buildMesh } from "../../src/mesh/build.ts";
import { footingOn, patchOn } from "../../src/mesh/patch.ts";
import type { Patch } from "../../src/mesh/types.ts";
import { clipToConvex, disc, moments, rectangle, strip } from "../../src/model/polygon.ts";
import { rigidMotions } from "../element/dense.ts";
import { modelOf, plateAt } from "../model/frame.ts";

const OUTLINE = [
  [33, 4],
  [21, 19],
  [-14, 23],
  [-31, 2],
  [-9, -17],
  [26, -13],
];
const model = modelOf({ plates: { base: plateAt(7, { outline: OUTLINE }) } });
const mesh = buildMesh(model, 5e-3);
const [grid] = mesh.grids;
const [plate] = model.plates;

const node = (n: number) => [0, 1, 2].map((i) => mesh.xyz[3 * n + i]);

/** Weighted means of the coordinates, and of the six rigid-body motions, against the centre's own. */
function expectMeanOf(patch: Patch) {
  const mean = (f: (n: number) => number) =>
    patch.nodes.reduce((s, n, k) => s + patch.weights[k] * f(n), 0);
  expect(mean(() => 1)).toBeCloseTo(1, 13);
  for (const i of [0, 1, 2]) expect(mean((n) => node(n)[i])).toBeCloseTo(patch.centre[i], 15);
  const R = rigidMotions([patch.centre]);
  const onNodes = Array.from(patch.nodes, (n) => rigidMotions([node(n)]));
  R.forEach((motion, m) => {
    motion.forEach((v, d) => {
      const averaged = onNodes.reduce((s, r, k) => s + patch.weights[k] * r[m][d], 0);
      expect(Math.abs(averaged - v)).toBeLessThan(1e-14);
    });
  });
}

describe("a patch of a plate", () => {
  const place = fc.record({
    x: fc.double({ min: -0.02, max: 0.025, noNaN: true }),
    y: fc.double({ min: -0.012, max: 0.016, noNaN: true }),
    d: fc.double({ min: 0.5e-3, max: 0.03, noNaN: true }),
  });

  test("under any disc: the part on the plate, its own centroid, rigid motions followed", () => {
    fc.assert(
      fc.property(place, ({ x, y, d }) => {
        const shape = disc(x, y, d, 12);
        const patch = patchOn(grid, shape);
        const on = moments(clipToConvex(plate.outline, shape));
        if (patch === undefined) {
          expect(on.area).toBeLessThan(1e-9 * d * d);
          return;
        }
        expect(patch.area / on.area).toBeCloseTo(1, 10);
        expect(patch.centre[0]).toBeCloseTo(on.x / on.area, 12);
        expect(patch.centre[1]).toBeCloseTo(on.y / on.area, 12);
        expect(patch.centre[2]).toBe(0.007);
        expectMeanOf(patch);
      }),
      { seed: 6, numRuns: 100 },
    );
  });

  test("under a slanted strip, as an arm's inserted end", () => {
    const end = strip(0.024, 0.012, Math.PI + 0.7, 0.02, 0.012);
    const patch = patchOn(grid, end)!;
    expectMeanOf(patch);
    expect(patch.area).toBeCloseTo(moments(clipToConvex(plate.outline, end)).area, 15);
  });

  test("all weights positive on whole cells, nodes in rising order and none twice", () => {
    const patch = patchOn(grid, disc(0.002, 0.001, 0.011, 12))!;
    expect(Math.min(...patch.weights)).toBeGreaterThan(0);
    expect([...new Set(patch.nodes)].sort((a, b) => a - b)).toEqual(Array.from(patch.nodes));
  });

  test("a point-like patch is the bilinear interpolation at that point", () => {
    const [x, y] = [0.0031, -0.0042];
    const patch = patchOn(grid, disc(x, y, 1e-7, 12))!;
    expect(patch.nodes.length).toBe(4);
    const s = ((x - grid.x0) / grid.a) % 1;
    const t = ((y - grid.y0) / grid.b) % 1;
    const expected = [(1 - s) * (1 - t), s * (1 - t), (1 - s) * t, s * t].sort((a, b) => a - b);
    patch.weights.toSorted().forEach((w, i) => {
      expect(w).toBeCloseTo(expected[i], 6); // the patch is 1e-7 m wide, a cell 5e-3
    });
  });

  test("none where there is no plate", () => {
    expect(patchOn(grid, disc(0.05, 0.05, 0.004, 12))).toBeUndefined();
    expect(patchOn(grid, rectangle(-0.03, -0.017, -0.025, -0.014))).toBeUndefined();
  });

  test("the weights from moments are the bilinear functions summed over the points", () => {
    fc.assert(
      fc.property(place, ({ x, y, d }) => {
        const shape = disc(x, y, d, 12);
        const patch = patchOn(grid, shape);
        if (!patch) return;
        const weight = new Map<number, number>();
        for (const { nodes, points } of patch.pieces) {
          points.w.forEach((w, k) => {
            const [s, t] = [points.s[k], points.t[k]];
            const N = [(1 - s) * (1 - t), s * (1 - t), s * t, (1 - s) * t];
            nodes.forEach((n, c) => {
              weight.set(n, (weight.get(n) ?? 0) + w * N[c]);
            });
          });
        }
        expect(Array.from(patch.nodes)).toEqual([...weight.keys()].sort((a, b) => a - b));
        patch.nodes.forEach((n, k) => {
          expect(Math.abs(patch.weights[k] - (weight.get(n) ?? 0))).toBeLessThan(1e-13);
        });
        const { pieces: _, ...footing } = patch;
        expect(footingOn(grid, shape)).toEqual(footing);
      }),
      { seed: 4, numRuns: 60 },
    );
  });
});
