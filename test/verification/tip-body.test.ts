/**
 * A cantilever with a body at its tip: the plainest model of an arm with its motor.
 *
 * mu = M/(rho A L), j = J/(rho A L^3), the body's centre at the tip:
 *
 *   1 + c C + mu x (c S - s C) - j x^3 (s C + c S) + mu j x^4 (1 - c C) = 0,
 *   c, s = cos x, sin x;  C, S = cosh x, sinh x
 *
 * I. A. Karnovsky & O. I. Lebed, Formulas for Structural Dynamics (2004), eq. 7.18, prints it for
 * j = 0. Roots in 30-digit arithmetic, checked against the boundary determinant. For mu = 1, j = 0,
 * x^2 = 1.557298, 16.25009, 50.89584 is printed in Mathematical Problems in Engineering 2017, article
 * 1568019, table 1. That table's columns with rotary inertia are not used: their frequencies rise with
 * the inertia, which no added inertia can do; they solve the equation with the sign of j reversed.
 */

import { describe, expect, test } from "vitest";
import { expectClose } from "./compare.ts";
import { frequencies, onePerPair } from "./frequencies.ts";
import { angular, meshError, unitBeam } from "./unit-beam.ts";

const ELEMENTS = 32;

/** x^2 = omega sqrt(rho A L^4/(E I)); the body at e L beyond the tip, j about its own centre. */
function withTipBody(mu: number, j = 0, e = 0): number[] {
  const inertia = { xx: 0, yy: `${j} kg m^2`, zz: `${j} kg m^2` };
  const body = { mass: `${mu} kg`, at: [`${1 + e} m`, 0, 0], inertia, on: "right" };
  const beam = unitBeam("clamped", "free", ELEMENTS, { bodies: { body } });
  return onePerPair(angular(frequencies(beam, { modes: 6 })));
}

/** Never below the roots, and not further above than 32 elements explain. */
function expectRoots(found: readonly number[], x: readonly number[]) {
  x.forEach((root, i) => {
    const ratio = found[i] / root ** 2;
    expect(ratio, `mode ${i + 1}`).toBeGreaterThan(1 - 1e-9);
    expect(ratio, `mode ${i + 1}`).toBeLessThan(1 + meshError(root, ELEMENTS) + 1e-9);
  });
}

describe("cantilever with a point mass at the tip", () => {
  test.each([
    { mu: 0.1, x: [1.72274152059, 4.39952281616, 7.4510566733] },
    { mu: 0.5, x: [1.41996442977, 4.11113338642, 7.19033524196] },
    { mu: 1, x: [1.24791740961, 4.03113943671, 7.13413224094] },
    { mu: 2, x: [1.07619566408, 3.98257328776, 7.10265018605] },
    { mu: 5, x: [0.87002145889, 3.94998049114, 7.08253760284] },
    { mu: 10, x: [0.73578191939, 3.93846583325, 7.07561636703] },
  ])("mu = $mu", ({ mu, x }) => {
    expectRoots(withTipBody(mu), x);
  });

  test("the printed values for mu = 1, to their last digit", () => {
    // 32 elements lie at most 2e-6 above in the third mode.
    expectClose(withTipBody(1), [1.557298, 16.25009, 50.89584], 3e-6);
  });

  test("Dunkerley below, Rayleigh above, at any mass ratio", () => {
    // W. T. Thomson, Theory of Vibration, sections 12.1, 12.2; static tip-load shape: m + 33/140.
    for (const mu of [0.1, 1, 10]) {
      const [omega] = withTipBody(mu);
      expect(omega).toBeGreaterThan(1 / Math.sqrt(1 / 12.3623633 + mu / 3));
      expect(omega).toBeLessThan(Math.sqrt(3 / (mu + 33 / 140)));
    }
  });
});

describe("cantilever with a body of its own inertia at the tip", () => {
  test.each([
    { mu: 0, j: 0.01, x: [1.83964801057, 3.78181569484, 5.82665303848] },
    { mu: 0.5, j: 0.001, x: [1.41894177063, 4.06273416952, 6.94694319353] },
    { mu: 0.5, j: 0.05, x: [1.37061483719, 2.86387572285, 5.14624806295] },
    { mu: 1, j: 0.01, x: [1.24244790772, 3.63862454226, 5.66300104274] },
    { mu: 1, j: 0.1, x: [1.19566983109, 2.5050600194, 4.97509843779] },
    { mu: 1, j: 1, x: [0.931611384112, 1.841350633, 4.90087315384] },
    { mu: 5, j: 0.1, x: [0.860857745151, 2.46731444789, 4.86252912848] },
  ])("mu = $mu, j = $j", ({ mu, j, x }) => {
    expectRoots(withTipBody(mu, j), x);
  });

  test.each([
    { mu: 1, j: 0, e: 0.1, x: [1.17733861164, 3.68073238645, 6.54227510375] },
    { mu: 1, j: 0.01, e: 0.1, x: [1.17291676513, 3.44253724446, 5.81057339441] },
    { mu: 0.5, j: 0.002, e: 0.05, x: [1.38355277226, 3.85128995947, 6.52537551023] },
    { mu: 2, j: 0.01, e: -0.05, x: [1.11018792729, 3.71944961472, 5.45706455067] },
  ])("mu = $mu, j = $j, centre of gravity $e L beyond the tip", ({ mu, j, e, x }) => {
    expectRoots(withTipBody(mu, j, e), x);
  });
});

describe("free beam with a mass at each end", () => {
  // Roots of the boundary determinant. A. Erturk & D. J. Inman, J. Vibration and Acoustics, DOI
  // 10.1115/1.2776341, show that the handbook formula for this case is wrong; it is not used.
  test.each([
    { left: 0.1, right: 0.1, x: [4.15566423069, 7.06824935382, 10.0656790917] },
    { left: 1, right: 1, x: [3.39879933495, 6.42725907332, 9.52445215891] },
    { left: 10, right: 10, x: [3.17265919288, 6.29893519738, 9.43532047836] },
    { left: 1, right: 0, x: [4.04183213631, 7.13383987997, 10.2566302599] },
    { left: 1, right: 0.5, x: [3.48871905504, 6.48733701446, 9.56873502455] },
  ])("masses $left and $right of the beam's own", ({ left, right, x }) => {
    const bodies = {
      first: { mass: `${left} kg`, on: "left" },
      second: { mass: `${right} kg`, on: "right" },
    };
    const beam = unitBeam("free", "free", ELEMENTS, { bodies });
    expectRoots(onePerPair(angular(frequencies(beam, { modes: 6 }))), x);
  });
});
