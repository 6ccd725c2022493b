/** What theory says of beams beyond single numbers: equal spectra, bounds, limits, trends. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectClose } from "../compare.ts";
import { meshError, squares } from "../unit-beam.ts";
import { effectiveMasses } from "./mode-shapes.ts";
import { onRootSpring } from "./root-spring.ts";
import { withTipBody } from "./tip-body.ts";

const ELEMENTS = 32;

const CLAMPED_FREE = [3.5160152685, 22.0344915647, 61.6972144135];
const CLAMPED_PINNED = [15.418205717, 49.9648620318, 104.247696459];

const springSquares = (kappa: number, mu = 0) => squares(onRootSpring(kappa, mu, ELEMENTS), 3);
const tipSquares = (mu: number, j = 0) => squares(withTipBody({ mu, j }, ELEMENTS), 3);

describe("a root spring and a tip mass", () => {
  test("kappa and mu = 1/kappa have the same spectrum", () => {
    // Their frequency equations are the same. The meshes differ by their own errors, 2.5e-6 in mode 3.
    fc.assert(
      fc.property(fc.double({ min: -1.5, max: 3, noNaN: true }), (exponent) => {
        const kappa = 10 ** exponent;
        expectClose(springSquares(kappa), tipSquares(1 / kappa), meshError(7.9, ELEMENTS));
      }),
      { seed: 20, numRuns: 10 },
    );
  });

  test("a stiff spring clamps; a soft one leaves the elastic modes of a pinned beam", () => {
    expectClose(springSquares(1e6), CLAMPED_FREE, 1e-5);
    expectClose(springSquares(1e-3).slice(1), CLAMPED_PINNED.slice(0, 2), 1e-4);
  });

  test("a heavy tip stands still in all modes but the first, which tends to (3/mu)^(1/2)", () => {
    const [first, ...others] = tipSquares(100);
    expectClose([first], [Math.sqrt(3 / 100)], 2e-3);
    expectClose(others, CLAMPED_PINNED.slice(0, 2), 1e-3);
  });

  test("kappa = 12.8 takes a tenth off an arm with a heavy motor: (1 + 3/kappa)^(-1/2)", () => {
    // Tip stiffness 3 E I/L^3 in series with the spring's k/L^2; the beam's own mass, a tenth of the
    // motor's here, moves the ratio by less than 1 %.
    const ratio = springSquares(12.8, 10)[0] / tipSquares(10)[0];
    expectClose([ratio], [1 / Math.sqrt(1 + 3 / 12.8)], 0.01);
    expect(ratio).toBeCloseTo(0.9, 2);
  });

  test("no frequency rises with the inertia of the tip body", () => {
    const inertias = [0, 1e-3, 1e-2, 1e-1, 1];
    const spectra = inertias.map((j) => tipSquares(1, j));
    spectra.slice(1).forEach((heavier, i) => {
      heavier.forEach((square, mode) => {
        expect(square, `j = ${inertias[i + 1]}, mode ${mode + 1}`).toBeLessThan(spectra[i][mode]);
      });
    });
  });
});

describe("Dunkerley below, Rayleigh above", () => {
  // W. T. Thomson, Theory of Vibration with Applications, sections 12.1 and 12.2: S. Dunkerley's sum of
  // 1/omega^2 of beam and mass alone; Rayleigh's quotient of the shape under a load at the tip.
  test.each([
    { mu: 0, lower: 3.5160152685, upper: 3.5675303401 },
    { mu: 0.1, lower: 2.9588386915, upper: 2.9893427727 },
    { mu: 0.5, lower: 2.0098427932, upper: 2.0193241203 },
    { mu: 1, lower: 1.5537543697, upper: 1.5581224807 },
    { mu: 2, lower: 1.1565854981, upper: 1.158383803 },
    { mu: 5, lower: 0.7564570621, upper: 0.7569595245 },
    { mu: 10, lower: 0.5411952717, upper: 0.5413791801 },
  ])("tip mass mu = $mu", ({ mu, lower, upper }) => {
    const dunkerley = 1 / Math.sqrt(1 / CLAMPED_FREE[0] ** 2 + mu / 3);
    const rayleigh = Math.sqrt(3 / (mu + 33 / 140));
    expectClose([dunkerley, rayleigh], [lower, upper], 1e-10);
    const [omega] = tipSquares(mu);
    // Without a mass Dunkerley's is the frequency itself, and rounding counts.
    expect(omega).toBeGreaterThan(lower * (1 - 1e-9));
    expect(omega).toBeLessThan(upper);
  });
});

test("all modes of a cantilever together take the beam's mass, but for what its root holds", () => {
  const elements = 4;
  const all = effectiveMasses(2 * elements, elements);
  const sum = all.reduce((total, share) => total + share, 0);
  // The fixed deflection of the root has 13/35 of an element's mass on the diagonal of M, no more.
  expect(sum).toBeLessThan(1);
  expect(sum).toBeGreaterThan(1 - 13 / 35 / elements);
});
