/** The matrices of variants in the space against projections of the whole variant's, assembled anew. */

import { describe, expect, test } from "vitest";
import { parseFrameSource, readFrameSource } from "../../src/frame/change.ts";
import { choleskyInPlace, forwardInPlace } from "../../src/linalg/dense.ts";
import { multiplyBlock } from "../../src/linalg/product.ts";
import type { SymmetricSparse } from "../../src/linalg/sparse.ts";
import { assembleElements } from "../../src/matrices/assemble.ts";
import { elementMatrices } from "../../src/matrices/elements.ts";
import { freeRigidMotions } from "../../src/matrices/rigid.ts";
import { differences } from "../../src/reduced/differences.ts";
import { knownOf } from "../../src/reduced/known.ts";
import { reducedMatrices } from "../../src/reduced/matrices.ts";
import type { Prepared } from "../../src/variants/prepare.ts";
import { BENCH_FRAME } from "./bench-frame.ts";
import { type Changes, type Reduced, reduce } from "./variants-of.ts";

const sample = (name: string, meshSize: number) =>
  reduce(readFrameSource(`frames/${name}.jsonc`), meshSize, []);
const bench = reduce(parseFrameSource(JSON.stringify(BENCH_FRAME), "bench"), 12e-3, []);
const five = sample("five-inch", 16e-3);
const three = sample("three-inch", 14e-3);

/** X'Y of n x a and n x b, column-major, as rows of numbers. */
function gram(X: Float64Array, a: number, Y: Float64Array, b: number): number[][] {
  const n = X.length / a;
  return Array.from({ length: a }, (_, i) =>
    Array.from({ length: b }, (_, j) => {
      let sum = 0;
      for (let r = 0; r < n; r++) sum += X[i * n + r] * Y[j * n + r];
      return sum;
    }),
  );
}

function times(A: SymmetricSparse, X: Float64Array, columns: number): Float64Array {
  const out = new Float64Array(X.length);
  multiplyBlock(out, A, X, columns);
  return out;
}

/** [V W]'A V with A of the whole variant, and of its mass less what rigid motions have of it. */
function projectedAnew({ reduced: { frame } }: Reduced, { bareModel, mesh, bareMass }: Prepared) {
  const found = differences(frame.base, bareModel, mesh);
  if ("unlike" in found) throw new Error(found.unlike);
  const { reduction, lossWeights } = found.meshed;
  const { V, W, width, probes, n } = frame.space;
  const all = Float64Array.of(...V, ...W);
  const elements = [...elementMatrices(mesh, bareModel)];
  const { K, M } = assembleElements(reduction, elements);
  const lossy = elements.map(({ nodes, K, part }) => ({
    nodes,
    K: K?.map((v) => v * lossWeights[part]),
  }));
  const of = (A: SymmetricSparse) => gram(all, width + probes, times(A, V, width), width);
  const mass = of(M);
  const motions = freeRigidMotions(mesh, reduction, bareMass.cg);
  const count = motions.length;
  if (count > 0) {
    const R = Float64Array.of(...motions.flatMap((r) => [...r]));
    const MR = times(M, R, count);
    const L = Float64Array.from(gram(R, count, MR, count).flat());
    choleskyInPlace(L, count);
    const S = gram(all, width + probes, MR, count).map((row) => {
      const s = Float64Array.from(row);
      forwardInPlace(L, count, s, 1);
      return s;
    });
    mass.forEach((row, i) => {
      row.forEach((_, j) => {
        row[j] -= S[i].reduce((sum, v, k) => sum + v * S[j][k], 0);
      });
    });
  }
  expect(n).toBe(frame.system.K.pattern.n);
  return { found, K: of(K), M: mass, H: of(assembleElements(reduction, lossy).K), count };
}

/** Largest difference, as a share of the largest entry. */
function apart(found: Float64Array, rows: readonly (readonly number[])[]): number {
  const flat = rows.flat();
  const largest = flat.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  return flat.reduce((most, v, i) => Math.max(most, Math.abs(v - found[i])), 0) / largest;
}

function largestDifference(of: Reduced, changes: Changes): number {
  const prepared = of.variant(changes);
  const { frame } = of.reduced;
  const expected = projectedAnew(of, prepared);
  const got = reducedMatrices(frame, knownOf(frame), expected.found, prepared.bareMass);
  const w = frame.space.width;
  expect(got.rigid.count).toBe(expected.count);
  expect(got.K.length).toBe(w * w);
  return Math.max(
    apart(got.K, expected.K.slice(0, w)),
    apart(got.M, expected.M.slice(0, w)),
    apart(got.H, expected.H.slice(0, w)),
    apart(got.probedK, expected.K.slice(w)),
    apart(got.probedM, expected.M.slice(w)),
  );
}

const CASES: readonly (readonly [string, Reduced, Readonly<Record<string, Changes>>])[] = [
  [
    "five-inch",
    five,
    {
      "the base itself": {},
      "arms thicker, heights following": { "arms.arm.thickness": "6.5 mm" },
      "arms of other widths": { "arms.arm.width": [15, 14] },
      "arms of another material": { "arms.arm.material": "carbon-plate-0-90" },
      "a plate thicker, heights following": { "plates.middle.thickness": "3 mm" },
      "moduli and damping": {
        "modulusFactors.carbon-plate-0-90": 1.2,
        "modulusFactors.aluminium-7075-t651": 0.9,
        dampingFactor: 1.3,
        assemblyLossFactor: 0.03,
      },
      "softer roots": { "arms.arm.joint.kappa": 4 },
      masses: {
        "bodies.battery.mass": "230 g",
        "bodies.screws.mass": "30 g",
        "propulsion.motor.mass": "40 g",
        "bodies.video transmitter.mass": "30 g",
      },
      mounts: {
        "bodies.battery.soft.bounce": "50 Hz",
        "bodies.battery.soft.lossFactor": 0.4,
        "bodies.action camera.soft.bounce": "90 Hz",
      },
      "a soft body elsewhere": { "bodies.battery.at": [-34, 1, 50.5] },
      "posts elsewhere": {
        "standoffs.post.at": [
          [67, 9.5],
          [26, 17.2],
          [-26, 17],
          [-60, 11],
        ],
      },
      "arm tips elsewhere": { "arms.arm.tip": [85, 75] },
      "a heavier stack elsewhere": { "stack.mass": "40 g", "stack.at": [4, 0] },
      "beams that shear": { beamTheory: "timoshenko" },
      "everything at once": {
        "arms.arm.thickness": "4 mm",
        "arms.arm.width": [18, 12],
        "arms.arm.joint.kappa": 30,
        "plates.bottom.thickness": "2 mm",
        "plates.top.thickness": "3 mm",
        "modulusFactors.carbon-plate-quasi-isotropic": 0.8,
        "bodies.battery.mass": "150 g",
        "bodies.antenna prints.mass": "20 g",
        "bodies.action camera.soft.bounce": "60 Hz",
      },
    },
  ],
  [
    "three-inch",
    three,
    {
      "plate and arms thicker": { "plates.base.thickness": "4 mm", "arms.arm.thickness": "4 mm" },
      "tips elsewhere": { "arms.arm.tip": [52, 47] },
      "a thinner top": { "plates.top.thickness": "1 mm" },
    },
  ],
  [
    "bench",
    bench,
    {
      "thicker plates": { "plates.low.thickness": "2.5 mm", "plates.high.thickness": "2 mm" },
      "moduli and densities": {
        "materials.print.E": "2.5 GPa",
        "materials.print.density": 1.4,
        "materials.sheet.lossFactor": 0.02,
      },
      "members and springs": {
        "members.mast.section.diameter": "7 mm",
        "springs.stay.y": "5 N/mm",
        "joints.screw.stiffness.z": "0.7 kN/mm",
      },
      "posts and mounts": {
        "standoffs.post.section.diameter": "3 mm",
        "bodies.lump.soft.bounce": "70 Hz",
        "bodies.box.mass": "25 g",
      },
    },
  ],
];

describe.each(CASES)("%s", (_, of, cases) => {
  test.each(Object.entries(cases))("%s", (_, changes) => {
    expect(largestDifference(of, changes)).toBeLessThan(1e-10);
  });
});

test("the frame on the bench has one motion left", () => {
  expect(projectedAnew(bench, bench.variant({})).count).toBe(1);
});
