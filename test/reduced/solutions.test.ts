/** Outcomes of variants from the reduced model against exact solutions. */

import { describe, expect, test } from "vitest";
import { parseFrameSource, readFrameSource } from "../../src/frame/change.ts";
import { exactOutcome } from "../../src/variants/exact.ts";
import { reduceVariants, variantSolver } from "../../src/variants/reduced.ts";
import type { Outcome } from "../../src/variants/types.ts";
import { BENCH_FRAME } from "./bench-frame.ts";
import { type Changes, type Reduced, reduce } from "./variants-of.ts";

const ENDS: readonly Changes[] = [
  { "arms.arm.thickness": "4 mm", "arms.arm.joint.kappa": 5, "bodies.battery.mass": "160 g" },
  { "arms.arm.thickness": "6 mm", "arms.arm.joint.kappa": 20, "plates.top.thickness": "2.5 mm" },
];
const five = reduce(readFrameSource("frames/five-inch.jsonc"), 16e-3, ENDS);
const three = reduce(readFrameSource("frames/three-inch.jsonc"), 14e-3, [
  { "plates.top.thickness": "1.2 mm", "propulsion.motor.mass": "12 g" },
  { "plates.top.thickness": "2 mm", "modulusFactors.carbon-plate-quasi-isotropic": 0.85 },
]);
const bench = reduce(parseFrameSource(JSON.stringify(BENCH_FRAME), "bench"), 12e-3, [
  { "plates.low.thickness": "1.8 mm", "members.mast.section.diameter": "5.5 mm" },
  { "plates.low.thickness": "2.2 mm", "bodies.box.mass": "20 g" },
]);

/** Anything is good enough for it: an estimate above the tolerance asks for an exact solution. */
const ANY_ERROR = 1e3;

/**
 * The estimate is of the frame without its stack. How the seat gives way by what the space lacks is taken
 * from the base: that much of a variant's frequencies with the stack.
 */
const OF_THE_STACK = 2e-6;

function both(of: Reduced, changes: Changes) {
  const prepared = of.variant(changes);
  const found = variantSolver(of.reduced, ANY_ERROR).outcome(prepared);
  const exact = exactOutcome(prepared, { modes: of.reduced.count });
  return { found, exact, error: apart(found.frequencies, exact.frequencies) };
}

/** Largest relative difference. */
function apart(a: Float64Array, b: Float64Array): number {
  expect(a.length).toBe(b.length);
  return a.reduce((most, v, i) => Math.max(most, Math.abs(v / b[i] - 1)), 0);
}

function largestDecibels(a: Outcome, b: Outcome): number {
  const ratios = a.spots.flatMap((s, i) => [s.gyro / b.spots[i].gyro, s.accel / b.spots[i].accel]);
  return Math.max(0, ...ratios.map((r) => Math.abs(20 * Math.log10(r))));
}

describe.each([
  ["five-inch", five],
  ["three-inch", three],
  ["bench", bench],
] as const)("the base of %s", (_, of) => {
  test("comes out exactly", () => {
    const { found, exact, error } = both(of, {});
    expect(found.solution.method).toBe("reduced");
    expect(error).toBeLessThan(1e-9);
    expect(apart(found.lossFactors, exact.lossFactors)).toBeLessThan(1e-8);
    expect(largestDecibels(found, exact)).toBeLessThan(1e-6);
    expect(found.solution.error).toBeLessThan(1e-9);
  });
});

const VARIANTS: readonly (readonly [string, Reduced, readonly Changes[]])[] = [
  [
    "five-inch",
    five,
    [
      { "arms.arm.thickness": "5.5 mm" },
      { "arms.arm.width": [16, 13] },
      { "arms.arm.joint.kappa": 10, "plates.top.thickness": "2.2 mm" },
      { "bodies.battery.mass": "175 g", "bodies.action camera.soft.bounce": "65 Hz" },
      { "modulusFactors.carbon-plate-0-90": 1.1 },
      { "arms.arm.tip": [81, 78] },
      { "standoffs.post.section.outer": "4.5 mm" },
      { beamTheory: "timoshenko" },
    ],
  ],
  [
    "three-inch",
    three,
    [
      { "plates.top.thickness": "1.7 mm" },
      { "plates.base.thickness": "3.2 mm", "arms.arm.thickness": "3.2 mm" },
      { "propulsion.motor.mass": "10 g", "bodies.battery.mass": "60 g" },
    ],
  ],
  [
    "bench",
    bench,
    [
      { "plates.low.thickness": "2.1 mm" },
      { "members.mast.section.diameter": "5.8 mm", "springs.stay.y": "4 N/mm" },
      { "bodies.lump.soft.bounce": "65 Hz", "materials.print.E": "2.1 GPa" },
    ],
  ],
];

describe.each(VARIANTS)("variants of %s", (_, of, variants) => {
  const cases = variants.map((changes) => [Object.keys(changes).join(), changes] as const);
  test.each(cases)("%s", (_, changes) => {
    const { found, exact, error } = both(of, changes);
    expect(found.solution.method).toBe("reduced");
    expect(error).toBeLessThan(1.5 * found.solution.error + OF_THE_STACK);
    expect(error).toBeGreaterThan(found.solution.error / 30);
    // Noise and damping go with the shapes: to first order in what the space lacks.
    const first = Math.sqrt(found.solution.error);
    expect(largestDecibels(found, exact)).toBeLessThan(0.01 + 4 * first);
    expect(apart(found.lossFactors, exact.lossFactors)).toBeLessThan(0.002 + first);
  });
});

describe("where the reduced model does not do", () => {
  test("an estimate above the tolerance asks for an exact solution", () => {
    const prepared = five.variant({ "arms.arm.thickness": "5.5 mm" });
    const { found, exact } = both(five, { "arms.arm.thickness": "5.5 mm" });
    const below = variantSolver(five.reduced, 0.99 * found.solution.error).outcome(prepared);
    expect(below.solution).toEqual({ method: "exact", error: 0 });
    expect(below.frequencies).toEqual(exact.frequencies);
    const above = variantSolver(five.reduced, 1.01 * found.solution.error).outcome(prepared);
    expect(above.solution.method).toBe("reduced");
  });

  test("a mesh that is unlike the base's is solved exactly", () => {
    const wider = {
      "plates.top.outline": [
        [95, 10],
        [70, 14],
        [40, 24],
        [-40, 24],
        [-74, 10],
      ],
    };
    const { found, error } = both(five, wider);
    expect(found.solution).toEqual({ method: "exact", error: 0 });
    expect(error).toBe(0);
  });
});

test("the same variant gives the same bytes, whatever was solved before it", () => {
  const changes = { "arms.arm.thickness": "4.7 mm", "plates.middle.thickness": "2.4 mm" };
  const prepared = five.variant(changes);
  const fresh = variantSolver(reduceVariants(five.base, []), ANY_ERROR);
  const used = variantSolver(reduceVariants(five.base, []), ANY_ERROR);
  for (const other of ENDS) used.outcome(five.variant(other));
  expect(used.outcome(prepared)).toEqual(fresh.outcome(prepared));
});
