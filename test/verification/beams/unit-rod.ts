/**
 * A rod that only stretches, or a shaft that only twists, of unit length, stiffness and mass: its
 * angular frequencies are the wave numbers x = omega L/c, c = sqrt(E/rho) or sqrt(G J/(rho Ip)).
 */

import { justAbove, type Tolerance } from "../case.ts";
import { frequencies } from "../frequencies.ts";
import { angular } from "../unit-beam.ts";

export type Motion = "stretching" | "twisting";
export const MOTIONS: readonly Motion[] = ["stretching", "twisting"];

export type RodEnd = "fixed" | "free";

export const ROD_ELEMENTS = 100;

/** Guides at both ends stop all motions but the one in question; the others are far stiffer, too. */
export function unitRod(
  motion: Motion,
  [left, right]: readonly [RodEnd, RodEnd],
  elements = ROD_ELEMENTS,
  bodies: object = {},
): object {
  const all = ["x", "y", "z", "rx", "ry", "rz"];
  const own = motion === "stretching" ? "x" : "rx";
  const hold = (end: RodEnd) => all.filter((d) => end === "fixed" || d !== own);
  const stiffness = motion === "stretching" ? { EA: 1, GJ: 1e4 } : { EA: 1e4, GJ: 1 };
  const section = {
    shape: "stiffness",
    ...stiffness,
    EIy: 100,
    EIz: 100,
    massPerLength: 1,
    inertiaPerLength: 1,
  };
  return {
    beamTheory: "euler-bernoulli",
    points: { left: ["0 m", 0, 0], right: ["1 m", 0, 0] },
    members: { rod: { from: "left", to: "right", section, elements } },
    supports: {
      left: { point: "left", fix: hold(left) },
      right: { point: "right", fix: hold(right) },
    },
    bodies,
  };
}

/** At one end: a mass for a rod, a disc for a shaft, in units of its own mass or inertia. */
export function endBody(motion: Motion, on: string, size: number): object {
  if (motion === "stretching") return { mass: `${size} kg`, on };
  return { mass: 0, inertia: { xx: `${size} kg m^2`, yy: 0, zz: 0 }, on };
}

/** x of the lowest modes. */
export function waveNumbers(rod: object, modes: number): number[] {
  return angular(frequencies(rod, { modes }));
}

/**
 * For a reference x: above it by no more than 100 elements with linear shape functions explain,
 * (x/n)^2/24 (leading term, with a twentieth more for the next), but for rounding.
 */
export function aboveRod(reference: string): Tolerance {
  return justAbove((1.05 * (Number(reference) / ROD_ELEMENTS) ** 2) / 24);
}

export const WHY_ABOVE_ROD =
  "Linear elements converge from above: at most (x/100)^2/24 for 100 of them, and a twentieth more. Bodies at the ends make the error smaller.";
