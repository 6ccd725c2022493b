/** Mode shapes of the sparse path against those of dense algebra, by modal assurance. */

import { describe, expect, test } from "vitest";
import { prepare } from "../../src/analyse.ts";
import { readFrame } from "../../src/frame/read.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { denseModes } from "../../src/linalg/dense-modes.ts";
import { lowestModes } from "../../src/linalg/modes.ts";
import { assemble } from "../../src/matrices/assemble.ts";
import { freeRigidMotions } from "../../src/matrices/rigid.ts";
import { crossFrame, frameOf, metal } from "../modes/toys.ts";
import { assurance, clusters, spanAssurance } from "./assurance.ts";
import { plateStack } from "./beam-grid.ts";
import { chain, type Pencil, sideBySide, squareGrid } from "./chains.ts";

interface Model extends Pencil {
  readonly rigid: readonly Float64Array[];
}

/** Largest 1 - MAC found: 2e-15 for single modes, 7e-14 for spans (the sample); 1e-8 would be enough. */
const SAME = 1e-12;
/** Eigenvalues this close are one cluster. */
const CLOSE = 1e-6;

function systemOf(file: FrameFile, meshSize?: number): Model {
  const { mesh, model, mass } = prepare(file, meshSize === undefined ? {} : { meshSize });
  const { K, M, reduction } = assemble(mesh, model);
  return { K, M, rigid: freeRigidMotions(mesh, reduction, mass.cg) };
}

/** A square plate with an arm at each corner, a body at each tip: turned by 90 degrees it is the same. */
function fourfold(): Model {
  const half = 30;
  return systemOf(
    frameOf({
      meshSize: 20,
      assemblyLossFactor: 0,
      materials: { metal: metal({}) },
      plates: {
        hub: {
          material: "metal",
          thickness: 3,
          z: 0,
          outline: [
            [half, half],
            [-half, half],
            [-half, -half],
            [half, -half],
          ],
        },
      },
      arms: {
        arm: {
          material: "metal",
          thickness: 4,
          root: [22, 22],
          tip: [85, 85],
          copies: "all four corners",
          width: [14, 10],
          elements: 4,
          joint: { kind: "one piece", plate: "hub" },
        },
      },
      bodies: {
        tip: {
          mass: "30 g",
          at: [85, 85, 8],
          size: [20, 20, 16],
          on: "arm",
          copies: "all four corners",
        },
      },
    }),
  );
}

/** Both paths, and how well each cluster of modes agrees. */
function compare({ K, M, rigid }: Model, wanted: number) {
  const n = K.pattern.n;
  const sparse = lowestModes(K, M, { count: wanted, deflate: rigid });
  const r = rigid.length;
  const dense = denseModes(K, M, r + wanted, -sparse.lambda[0]);
  const ours = (k: number) => sparse.phi.subarray(k * n, (k + 1) * n);
  const theirs = (k: number) => dense.phi.subarray((r + k) * n, (r + k + 1) * n);
  // A cluster that the number of modes cuts in two cannot be compared.
  const groups = clusters(sparse.lambda, CLOSE).slice(0, -1);
  const range = ({ first, end }: { first: number; end: number }) =>
    Array.from({ length: end - first }, (_, i) => first + i);
  return {
    lambda: sparse.lambda,
    sizes: groups.map(({ first, end }) => end - first),
    single: groups
      .filter(({ first, end }) => end - first === 1)
      .map(({ first }) => assurance(ours(first), theirs(first))),
    spans: groups.map((g) => spanAssurance(M, range(g).map(ours), range(g).map(theirs))),
    eigenvalues: Math.max(
      ...Array.from(sparse.lambda, (l, k) => Math.abs(dense.lambda[r + k] / l - 1)),
    ),
  };
}

describe.each<[string, () => Model, number, number]>([
  // modes, least number of clusters with more than one of them
  ["a chain", () => ({ ...chain(120, "fixed-free"), rigid: [] }), 20, 0],
  ["a square grid of masses", () => ({ ...squareGrid(14), rigid: [] }), 24, 8],
  [
    "five copies of one chain",
    () => {
      const one = chain(30, "fixed-fixed");
      return { ...sideBySide(one, one, one, one, one), rigid: [] };
    },
    18,
    3,
  ],
  [
    "a free square plate",
    () => plateStack({ nx: 7, ny: 7, length: 0.1, width: 0.1, thickness: 0.002 }),
    16,
    3,
  ],
  [
    "two plates on struts",
    () =>
      plateStack({
        nx: 5,
        ny: 4,
        length: 0.2,
        width: 0.15,
        thickness: 0.003,
        plates: 2,
        struts: 4,
      }),
    14,
    0,
  ],
  ["a cross-shaped frame", () => systemOf(crossFrame({ lopsided: true })), 20, 0],
  ["a frame that looks the same from four sides", fourfold, 20, 4],
])("%s", (_, model, wanted, repeated) => {
  const found = compare(model(), wanted);

  test("has the modes that dense algebra finds", () => {
    for (const mac of found.spans) expect(1 - mac).toBeLessThan(SAME);
    for (const mac of found.single) expect(1 - mac).toBeLessThan(SAME);
    expect(found.eigenvalues).toBeLessThan(1e-11);
  });

  test(`with ${repeated} repeated eigenvalues or more among them`, () => {
    expect(found.sizes.filter((s) => s > 1).length).toBeGreaterThanOrEqual(repeated);
    expect(found.single.length + found.sizes.filter((s) => s > 1).length).toBe(found.sizes.length);
  });
});

test("the three-inch sample on its coarsest mesh: dense algebra finds the same 30 modes", () => {
  const found = compare(systemOf(readFrame("frames/three-inch.jsonc"), 0.02), 30);
  expect(found.single.length).toBeGreaterThan(25);
  for (const mac of found.spans) expect(1 - mac).toBeLessThan(SAME);
  for (const mac of found.single) expect(1 - mac).toBeLessThan(SAME);
  // Dense algebra in double precision is what differs: by 1e-10 from SciPy's refined values too.
  expect(found.eigenvalues).toBeLessThan(1e-9);
});

describe("modal assurance itself", () => {
  test.each([
    [[1, 2, 3], [1, 2, 3], 1],
    [[1, 2, 3], [-2, -4, -6], 1],
    // 100/196, 0 and 219.04 / (14 x 13.41), by hand
    [[1, 2, 3], [3, 2, 1], 100 / 196],
    [[1, 2, 3], [1, 1, -1], 0],
    [[1, 2, 3], [1, 2, 2.9], 13.7 ** 2 / (14 * 13.41)],
  ])("%j and %j: %f", (a, b, mac) => {
    expect(assurance(Float64Array.from(a), Float64Array.from(b))).toBeCloseTo(mac, 14);
  });

  test("a pair turned among itself is the same span; one of its modes is not the same mode", () => {
    const { K, M } = squareGrid(6);
    const { lambda, phi } = lowestModes(K, M, { count: 4 });
    expect(clusters(lambda, CLOSE)).toEqual([
      { first: 0, end: 1 },
      { first: 1, end: 3 },
      { first: 3, end: 4 },
    ]);
    const [a, b, other] = [1, 2, 3].map((k) => phi.slice(36 * k, 36 * (k + 1)));
    const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
    const turned = [a.map((x, i) => c * x - s * b[i]), a.map((x, i) => s * x + c * b[i])];
    expect(spanAssurance(M, [a, b], turned)).toBeCloseTo(1, 13);
    expect(assurance(a, turned[0])).toBeCloseTo(c * c, 13);
    expect(spanAssurance(M, [a, b], [a, other])).toBeLessThan(1e-12);
  });
});
