/** Laminates as arms, from a frame file to a frequency: outer plies count in bending, all in stretching. */

import { type Check, type Family, justAbove } from "../case.ts";
import { solveFrame } from "../frequencies.ts";
import { T300_5208_IN_FILE } from "./t300.ts";

/** Frequencies of the first two modes of flat bending, and of the first edgewise where it is asked for. */
interface Arm {
  readonly stack: string;
  /** thickness of a ply and of the arm, mm */
  readonly ply: number;
  readonly thickness: number;
  readonly flat: readonly [string, string];
  readonly edge?: string;
  /** ply constants where not T300/5208 */
  readonly constants?: object;
}

const GLASS = { E1: "54870 MPa", E2: "18320 MPa", G12: "8900 MPa", nu12: 0.25 };

// biome-ignore format: table
const ARMS: readonly Arm[] = [
  { stack: "[0/90]s",        ply: 0.25,  thickness: 1,   flat: ["161.597576", "1012.71472"], edge: "1501.47276" },
  { stack: "[0/45/-45/90]s", ply: 0.125, thickness: 1,   flat: ["137.873340", "864.037473"], edge: "1279.21138" },
  { stack: "[45/-45/0/90]s", ply: 0.25,  thickness: 2,   flat: ["167.829029", "1051.76657"], edge: "1279.21138" },
  { stack: "[45/0_2/45]",    ply: 3,     thickness: 12,  flat: ["795.058302", "4982.54533"], edge: "960.536187", constants: GLASS },
  { stack: "[0/30/-45]",     ply: 0.5,   thickness: 1.5, flat: ["147.877190", "926.730533"] },
];

function frame({ stack, ply, thickness, constants = {} }: Arm): object {
  return {
    beamTheory: "euler-bernoulli",
    plies: { tape: { ...T300_5208_IN_FILE, ...constants, thickness: `${ply} mm` } },
    materials: { stack: { kind: "laminate", ply: "tape", stack } },
    points: { root: [0, 0, 0] },
    arms: {
      arm: {
        material: "stack",
        thickness: `${thickness} mm`,
        width: "12 mm",
        // Its own direction, so that nothing depends on the axes of the frame.
        root: [0, 0],
        tip: ["60 mm", "80 mm"],
        elements: 40,
        joint: { kind: "point", point: "root" },
      },
    },
    supports: { wall: { point: "root", fix: "all" } },
  };
}

/** 40 elements lie (k h)^4/1440 above the beam, 1.3e-7 in the second mode; nine digits are given. */
const check = (quantity: string, reference: string): Check => ({
  quantity,
  unit: "Hz",
  reference,
  tolerance: { ...justAbove(2e-7), low: -1e-8 },
});

function solve(arm: Arm): number[] {
  const { described } = solveFrame(frame(arm), { modes: 8 }).modes;
  const frequencies = (motion: "armFlat" | "armEdge") =>
    described.filter((mode) => mode.motion[motion] > 0.5).map((mode) => mode.frequency);
  const edge = arm.edge ? [frequencies("armEdge")[0]] : [];
  return [...frequencies("armFlat").slice(0, 2), ...edge];
}

export const FEW_PLIES: Family = {
  title: "Arms of few plies",
  source: "closed form with the moduli of the tables",
  cases: [
    {
      name: "Clamped laminate arms in bending",
      source:
        "f = x^2/(2 pi L^2) t sqrt(Efx/(12 rho)) flat and x^2/(2 pi L^2) b sqrt(Ex/(12 rho)) edgewise, " +
        "x = 1.8751 and 4.6941, with Efx and Ex of the laminates above; of the unsymmetric stack, " +
        "59.59 GPa from the inverse of the whole 6 x 6 matrix.",
      model:
        "Arms of 100 mm length and 12 mm width, clamped, of T300/5208 (the 12 mm arm of the glass plies of " +
        "[45/0/45]); 1600 kg/m^3, invented. Euler-Bernoulli, 40 elements.",
      why:
        "40 elements lie above the beam by (k h)^4/1440, 1.3e-7 in the second mode; below only by the rounding " +
        "of the reference.",
      checks: ARMS.flatMap(({ stack, flat, edge }) => [
        check(`${stack} flat 1`, flat[0]),
        check(`${stack} flat 2`, flat[1]),
        ...(edge ? [check(`${stack} edgewise 1`, edge)] : []),
      ]),
      solve: () => ARMS.flatMap(solve),
    },
  ],
};
