/** Derivatives of a cantilever against closed forms. */

import { expect, test } from "vitest";
import { parseFrameSource } from "../../src/frame/change.ts";
import { ownSlopes } from "../../src/reduced/slopes.ts";
import { derivativesOf, inputNamed, subject } from "./differenced.ts";

const [WIDTH, THICKNESS, LENGTH] = [20, 3, 200]; // mm

/** A strip of metal along x, clamped at its root; Euler-Bernoulli. */
function strip(more: object = {}) {
  const frame = {
    version: 1,
    name: "strip",
    beamTheory: "euler-bernoulli",
    materials: {
      metal: { kind: "isotropic", E: "70 GPa", nu: 0.33, density: "2.7 g/cm^3", lossFactor: 0.01 },
    },
    points: { root: [0, 0, 0] },
    arms: {
      strip: {
        material: "metal",
        thickness: THICKNESS,
        width: WIDTH,
        root: [0, 0],
        tip: [LENGTH, 0],
        elements: 12,
        joint: { kind: "point", point: "root" },
      },
    },
    supports: { wall: { point: "root", fix: "all" } },
    ...more,
  };
  return subject(parseFrameSource(JSON.stringify(frame), "strip.jsonc"), 3);
}

/** d ln f/d ln p of every mode */
function powers(of: ReturnType<typeof strip>, name: string): number[] {
  const input = inputNamed(of, name);
  const slopes = ownSlopes(of.lambda, derivativesOf(of, input));
  return Array.from(slopes, (s, k) => (s * input.value) / (2 * of.lambda[k]));
}

const plain = strip();

// Bending across the thickness, the same again, then bending across the width (R. D. Blevins, Formulas
// for Natural Frequency and Mode Shape, table 8-1: f ~ sqrt(E I/(rho A))/L^2, from memory).
test.each([
  ["arms.strip.thickness", [1, 1, 0]],
  ["arms.strip.width", [0, 0, 1]],
  ["arms.strip.tip#1", [-2, -2, -2]],
  ["modulusFactors.metal", [0.5, 0.5, 0.5]],
  ["materials.metal.density", [-0.5, -0.5, -0.5]],
])("frequencies of a strip go with %s to the power %o", (name, expected) => {
  powers(plain, name).forEach((p, k) => {
    expect(p).toBeCloseTo(expected[k], 6);
  });
});

/** beta L of a cantilever with a point mass of mu times its own at the tip: 1 + cos cosh + mu beta (cos sinh - sin cosh) = 0. */
function firstRoot(mu: number): number {
  const f = (b: number) =>
    1 +
    Math.cos(b) * Math.cosh(b) +
    mu * b * (Math.cos(b) * Math.sinh(b) - Math.sin(b) * Math.cosh(b));
  let [low, high] = [0.1, 1.9];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (f(low) * f(middle) <= 0) high = middle;
    else low = middle;
  }
  return low;
}

test("a mass at the tip lowers the first frequency as the closed form has it", () => {
  // Four times the beam's mass, in a cube of 1 mm: a point. D. J. Gorman, Free Vibration Analysis of Beams
  // and Shafts (from memory); f ~ beta^2.
  const m = 4 * 2.7e-6 * WIDTH * THICKNESS * LENGTH; // kg
  const of = strip({
    bodies: { lump: { mass: 1e3 * m, at: [LENGTH, 0, 0], size: [1, 1, 1], on: "strip" } },
  });
  const h = 1e-4;
  const expected = (2 * Math.log(firstRoot(4 * (1 + h)) / firstRoot(4 * (1 - h)))) / (2 * h);
  const [p] = powers(of, "bodies.lump.mass");
  expect(p / expected).toBeCloseTo(1, 4);
});
