/**
 * VPCS SDLL15/89, slender cantilever with a point mass at its end, centred and off the axis.
 *
 * Societe Francaise des Mecaniciens, Guide de validation des progiciels de calcul de structures,
 * AFNOR Technique (1990), sheet SDLL15/89, as reproduced in test-case reports.
 *
 * Steel tube, outer diameter 350 mm, wall 15 mm, length 10 m, E = 210 GPa, nu = 0.3, rho = 7800 kg/m^3;
 * 1000 kg without rotary inertia (1) at the tip, (2) on a rigid massless link 1 m across.
 * The exact values are those of the continuous Euler-Bernoulli beam (12 digits).
 */

import { describe, test } from "vitest";
import { expectClose } from "./compare.ts";
import { frequencies } from "./frequencies.ts";

const frame = (offset: number) => ({
  beamTheory: "euler-bernoulli",
  materials: {
    steel: { kind: "isotropic", E: "210 GPa", nu: 0.3, density: "7800 kg/m^3" },
  },
  points: { root: [0, 0, 0], tip: ["10 m", 0, 0] },
  members: {
    tube: {
      from: "root",
      to: "tip",
      section: { shape: "tube", outer: "350 mm", bore: "320 mm" },
      material: "steel",
      elements: 40,
    },
  },
  bodies: { mass: { mass: "1000 kg", at: ["10 m", `${offset} m`, 0], on: "tip" } },
  supports: { wall: { point: "root", fix: "all" } },
});

/** 40 elements: (k h)^4/1440 in bending is 3e-6 at most, (k h)^2/24 in stretching and twisting 7e-5. */
const BENDING = 4e-6;
const STRETCHING = 7e-5;
/** The printed digits: 1.65 stands for 1.6554, 80.47 for 80.448. */
const PRINTED = 4e-3;

describe("VPCS SDLL15", () => {
  test("mass at the tip: bending in pairs, stretching and twisting apart", () => {
    const found = frequencies(frame(0), { modes: 10 });
    expectClose(
      found,
      [1.65, 1.65, 16.07, 16.07, 50.02, 50.02, 76.47, 80.47, 103.2, 103.2],
      PRINTED,
    );
    const bending = [0, 1, 2, 3, 4, 5, 8, 9].map((i) => found[i]);
    const exact = [1.65543339, 16.07114485, 50.02345408, 103.19953682];
    expectClose(
      bending,
      exact.flatMap((f) => [f, f]),
      BENDING,
    );
    // Stretching with the mass, and the clamped-free shaft: the centred mass does not turn.
    expectClose([found[6], found[7]], [76.47055424, 80.44807947], STRETCHING);
  });

  test("mass 1 m off the axis: bending with twisting and bending with stretching", () => {
    const found = frequencies(frame(1), { modes: 10 });
    expectClose(found, [1.636, 1.642, 13.46, 13.59, 28.9, 31.96, 61.61, 63.93], 4e-4);
    const exact = [
      1.63632661, 1.64164565, 13.45513392, 13.59188566, 28.89702626, 31.95930525, 61.60762809,
      63.92789899, 113.8436359, 116.22250512,
    ];
    expectClose(found, exact, STRETCHING);
  });
});
