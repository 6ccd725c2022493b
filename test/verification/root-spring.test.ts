/**
 * A cantilever whose root turns on a spring, k = kappa E I/L: the plainest model of a clamped arm.
 *
 *   kappa (1 + cos x cosh x) + x (cos x sinh x - sin x cosh x) = 0
 *
 * Multiplied by mu = 1/kappa this is the equation of the cantilever with the tip mass mu: both have
 * exactly the same spectrum, which tests spring and mass at once. Roots in 30-digit arithmetic,
 * checked against the boundary determinant.
 */

import { describe, expect, test } from "vitest";
import { expectClose } from "./compare.ts";
import { frequencies, onePerPair } from "./frequencies.ts";
import { angular, meshError, unitBeam } from "./unit-beam.ts";

const ELEMENTS = 32;

/** x^2 of the beam pinned at its left end, held there by springs about y and z. */
function onRootSpring(kappa: number, bodies: object = {}): number[] {
  const spring = { between: ["left", "ground"], ry: kappa, rz: kappa };
  const beam = unitBeam("pinned", "free", ELEMENTS, { springs: { root: spring }, bodies });
  return onePerPair(angular(frequencies(beam, { modes: 6 })));
}

/**
 * At kappa = 0.01 the first mode swings almost rigidly on its spring: rounding of the beam's own
 * stiffness, 1e9 times larger, leaves 3e-9 of its frequency.
 */
const ROUNDING = 1e-8;

function expectRoots(found: readonly number[], x: readonly number[]) {
  x.forEach((root, i) => {
    const ratio = found[i] / root ** 2;
    expect(ratio, `mode ${i + 1}`).toBeGreaterThan(1 - ROUNDING);
    expect(ratio, `mode ${i + 1}`).toBeLessThan(1 + meshError(root, ELEMENTS) + ROUNDING);
  });
}

describe("cantilever on a rotational root spring", () => {
  test.each([
    { kappa: 0.01, x: [0.415934240675, 3.92780479468, 7.06929123304] },
    { kappa: 0.1, x: [0.73578191939, 3.93846583325, 7.07561636703] },
    { kappa: 1, x: [1.24791740961, 4.03113943671, 7.13413224094] },
    { kappa: 5, x: [1.61639966016, 4.26706156686, 7.31837267334] },
    { kappa: 10, x: [1.72274152059, 4.39952281616, 7.4510566733] },
    { kappa: 20, x: [1.79117056225, 4.51272017492, 7.58632188978] },
    { kappa: 100, x: [1.85678697696, 4.64972648342, 7.78267123973] },
    { kappa: 1000, x: [1.87323340888, 4.68942403444, 7.84697167218] },
  ])("kappa = $kappa", ({ kappa, x }) => {
    expectRoots(onRootSpring(kappa), x);
  });

  test.each([
    { kappa: 10, mu: 0.5, x: [1.32124812454, 3.85055728719, 6.8111852551] },
    { kappa: 10, mu: 1, x: [1.16418442935, 3.77075498129, 6.75431495183] },
    { kappa: 100, mu: 5, x: [0.863520719358, 3.91256695106, 7.01718863341] },
    { kappa: 50, mu: 2, x: [1.06009537962, 3.91113472704, 6.98130837785] },
  ])("kappa = $kappa with a tip mass mu = $mu", ({ kappa, mu, x }) => {
    expectRoots(onRootSpring(kappa, { tip: { mass: `${mu} kg`, on: "right" } }), x);
  });

  test.each([0.2, 0.5, 2, 50])("kappa = %s and a tip mass 1/kappa: the same spectrum", (kappa) => {
    const tip = { mass: `${1 / kappa} kg`, on: "right" };
    const clamped = unitBeam("clamped", "free", ELEMENTS, { bodies: { tip } });
    const masses = onePerPair(angular(frequencies(clamped, { modes: 6 })));
    // The theorem is one of the beam; the two meshes differ by their own errors, 2e-6 in mode 3.
    expectClose(onRootSpring(kappa), masses, meshError(7.9, ELEMENTS));
  });

  test("kappa = 12.8 takes a tenth off an arm with a heavy motor: (1 + 3/kappa)^(-1/2)", () => {
    // Tip stiffness 3 E I/L^3 in series with the spring's k/L^2; the beam's own mass, a tenth of the
    // motor's here, moves the ratio by less than 1 %.
    const tip = { mass: "10 kg", on: "right" };
    const clamped = unitBeam("clamped", "free", ELEMENTS, { bodies: { tip } });
    const [omega] = angular(frequencies(clamped, { modes: 2 }));
    const ratio = onRootSpring(12.8, { tip })[0] / omega;
    expect(Math.abs(ratio / Math.sqrt(1 / (1 + 3 / 12.8)) - 1)).toBeLessThan(0.01);
    expect(ratio).toBeCloseTo(0.9, 2);
  });
});
