/** The bolted root of an arm, as a frame file says it: a spring k = kappa E I/L in both planes. */

import type { Case, Check } from "../case.ts";
import { solveFrame } from "../frequencies.ts";
import { ELEMENTS } from "../unit-beam.ts";

/** m, Pa, kg/m^3: so soft and thin that the layer between arm and plate is as good as rigid. */
const ARM = { length: 0.2, width: 0.01, thickness: 0.002, E: 1e8, density: 1500 };

const frame = (kappa: number) => ({
  beamTheory: "euler-bernoulli",
  materials: {
    soft: { kind: "measured", E1: "0.1 GPa", G12: "1 GPa", density: "1.5 g/cm^3" },
  },
  plates: {
    block: {
      material: "soft",
      thickness: "2 mm",
      z: "2 mm",
      outline: [
        [-45, -10],
        [5, -10],
        [5, 10],
        [-45, 10],
      ],
    },
  },
  arms: {
    arm: {
      material: "soft",
      thickness: "2 mm",
      width: "10 mm",
      root: [0, 0],
      tip: ["200 mm", 0],
      elements: ELEMENTS,
      joint: { kind: "bolted", plates: ["block"], inserted: "40 mm", kappa },
    },
  },
  supports: {
    block: {
      plate: "block",
      within: [
        [-50, -20],
        [10, -20],
        [10, 20],
        [-50, 20],
      ],
      fix: "all",
    },
  },
});

/** x^2 = omega L^2 sqrt(rho A/(E I)) of three flat modes and the first edgewise one. */
function found(kappa: number): number[] {
  const { modes } = solveFrame(frame(kappa), { modes: 10 });
  const { length: L, width: b, thickness: t, E, density } = ARM;
  const squares = (motion: "armFlat" | "armEdge", height: number) => {
    const unit = Math.sqrt((E * height ** 2) / (12 * density)) / L ** 2; // sqrt(E I/(rho A L^4))
    return modes.described
      .filter((mode) => mode.motion[motion] > 0.5)
      .map((mode) => (2 * Math.PI * mode.frequency) / unit);
  };
  return [...squares("armFlat", t).slice(0, 3), squares("armEdge", b)[0]];
}

const ROWS = [
  { kappa: 5, values: ["2.61274786135", "18.2078144154", "53.5585785859", "2.61274786135"] },
  { kappa: 10, values: ["2.96783834678", "19.3558010099", "55.5182455488", "2.96783834678"] },
  { kappa: 20, values: ["3.20829198306", "20.3646433771", "57.5522798153", "3.20829198306"] },
];
const QUANTITIES = ["flat 1", "flat 2", "flat 3", "edgewise 1"];

export const BOLTED_ARM: Case = {
  name: "Bolted arm",
  source: "As for the root spring.",
  model:
    "A soft arm of 200 mm, 10 x 2 mm, 64 elements, bolted over 40 mm to a plate that is held all over; " +
    'joint kind "bolted" with the kappa of the row. x^2 of three flat modes and one edgewise.',
  why:
    "The mesh lies up to 9e-8 above in flat 3; the layer between arm and plate, which gives a little beside " +
    "the spring, takes away up to 4e-8 in flat bending and 2.2e-6 edgewise, where the arm is 25 times stiffer.",
  checks: ROWS.flatMap(({ kappa, values }) =>
    values.map(
      (reference, i): Check => ({
        quantity: `kappa = ${kappa}, ${QUANTITIES[i]}`,
        unit: "",
        reference,
        tolerance: { kind: "relative", low: i < 3 ? -1e-7 : -4e-6, high: 2e-7 },
      }),
    ),
  ),
  solve: () => ROWS.flatMap(({ kappa }) => found(kappa)),
};
