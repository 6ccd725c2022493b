/**
 * The clamped carbon/epoxy strips as frame files: one ply angle throughout, as an arm (a beam) and as a
 * plate. Sizes and ply constants from memory.
 */

import type { Analysis } from "../../../src/analyse.ts";
import { solveFrame } from "../frequencies.ts";

/** mm */
const LENGTH = 190.5;
const WIDTH = 12.7;
const THICKNESS = "3.175 mm";

const material = (degrees: number) => ({
  plies: {
    tape: {
      E1: "129.11 GPa",
      E2: "9.408 GPa",
      G12: "5.157 GPa",
      nu12: 0.3,
      G13: "4.305 GPa",
      G23: "2.541 GPa",
      density: "1550.07 kg/m^3",
      thickness: THICKNESS,
    },
  },
  materials: { "one way": { kind: "laminate", ply: "tape", stack: `[${degrees}]` } },
});

export type BeamTheory = "euler-bernoulli" | "rayleigh" | "timoshenko";

export function stripArm(degrees: number, beamTheory: BeamTheory): object {
  return {
    beamTheory,
    ...material(degrees),
    points: { root: [0, 0, 0] },
    arms: {
      strip: {
        material: "one way",
        thickness: THICKNESS,
        width: WIDTH,
        root: [0, 0],
        tip: [LENGTH, 0],
        elements: 40,
        joint: { kind: "point", point: "root" },
      },
    },
    supports: { wall: { point: "root", fix: "all" } },
  };
}

/** Held to move out of its plane only. `length` in mm, cells as large as `across` of them make the width. */
export function stripPlate(degrees: number, length = LENGTH, across = 8): object {
  const [far, side] = [length + 1, WIDTH + 1];
  return {
    meshSize: WIDTH / across,
    ...material(degrees),
    plates: {
      strip: {
        material: "one way",
        thickness: THICKNESS,
        z: 0,
        outline: [
          [0, 0],
          [length, 0],
          [length, WIDTH],
          [0, WIDTH],
        ],
      },
    },
    supports: {
      wall: {
        plate: "strip",
        along: [
          [0, 0],
          [0, WIDTH],
        ],
        fix: "all",
      },
      "in the plane": {
        plate: "strip",
        within: [
          [-1, -1],
          [far, -1],
          [far, side],
          [-1, side],
        ],
        fix: ["x", "y", "rz"],
      },
    },
  };
}

export interface StripModes {
  /** flat bending, Hz */
  readonly bending: readonly number[];
  readonly torsion: readonly number[];
}

/** By where the strain energy is: flat bending or twisting. */
export function armModes(degrees: number, beamTheory: BeamTheory): StripModes {
  const { described } = solveFrame(stripArm(degrees, beamTheory), { modes: 10 }).modes;
  const of = (motion: "armFlat" | "armTorsion") =>
    described.filter((mode) => mode.motion[motion] > 0.5).map((mode) => mode.frequency);
  return { bending: of("armFlat"), torsion: of("armTorsion") };
}

/** By the tip's two corners: they move the same way in bending, against each other in torsion. */
export function plateModes(degrees: number, length = LENGTH, across = 8): StripModes {
  const analysis = solveFrame(stripPlate(degrees, length, across), { modes: 6 });
  const [right, left] = tipCorners(analysis);
  const twists = analysis.modes.shapes.map(
    (shape) => shape[6 * right + 2] * shape[6 * left + 2] < 0,
  );
  const of = (torsion: boolean) =>
    analysis.modes.described.filter((_, i) => twists[i] === torsion).map((mode) => mode.frequency);
  return { bending: of(false), torsion: of(true) };
}

function tipCorners({ mesh }: Analysis): [number, number] {
  const { nodeAt, nx, ny } = mesh.grids[0];
  return [nodeAt[nx], nodeAt[ny * (nx + 1) + nx]];
}
