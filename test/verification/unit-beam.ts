/**
 * A beam of unit length, mass and bending stiffness as a frame file: its angular frequencies are the
 * dimensionless omega sqrt(rho A L^4 / (E I)) = x^2 of the tables, x the wave number times the length.
 */

import type { Tolerance } from "./case.ts";
import { frequencies, onePerPair } from "./frequencies.ts";

/** Both bending planes alike; stretching and twisting a thousand times stiffer, out of the way. */
export const UNIT_SECTION = {
  shape: "stiffness",
  EA: 1e6,
  EIy: 1,
  EIz: 1,
  GJ: 1e3,
  massPerLength: 1,
  inertiaPerLength: 1e-3,
};

/** How an end is held: the motions fixed there, in both bending planes. */
export const ENDS = {
  clamped: ["x", "y", "z", "rx", "ry", "rz"],
  pinned: ["x", "y", "z", "rx"],
  guided: ["x", "rx", "ry", "rz"],
  free: [],
} as const;

export type End = keyof typeof ENDS;

/** Elements along a beam, where a case does not say otherwise: errors of 1e-8 to 2e-6. */
export const ELEMENTS = 64;

/** Along x, from the point "left" to the point "right", `elements` beam elements. */
export function unitBeam(left: End, right: End, elements = ELEMENTS, more: object = {}): object {
  const held = { left, right };
  const supports = (["left", "right"] as const)
    .filter((point) => ENDS[held[point]].length > 0)
    .map((point) => [`${held[point]} ${point}`, { point, fix: ENDS[held[point]] }]);
  return {
    beamTheory: "euler-bernoulli",
    points: { left: ["0 m", 0, 0], right: ["1 m", 0, 0] },
    members: { beam: { from: "left", to: "right", section: UNIT_SECTION, elements } },
    supports: Object.fromEntries(supports),
    ...more,
  };
}

/** x^2 of the lowest bending modes of a unit beam, one for each pair of planes. */
export function squares(beam: object, modes: number): number[] {
  return onePerPair(angular(frequencies(beam, { modes: 2 * modes })));
}

/**
 * How far n consistent elements lie above the beam's own frequency, relative: (x/n)^4/1440 for the
 * wave number x (leading term; J. S. Przemieniecki, Theory of Matrix Structural Analysis, from
 * memory). With a tenth more for the next term.
 */
export function meshError(x: number, n: number): number {
  return (1.1 * (x / n) ** 4) / 1440;
}

/** Rounding of a first mode with 64 elements, relative (K's condition grows as their fourth power). */
const ROUNDING = 1e-9;

/** For a reference x^2: above it by no more than 64 elements explain, but for rounding. */
export function aboveBeam(reference: string, rounding = ROUNDING): Tolerance {
  const high = meshError(Math.sqrt(Number(reference)), ELEMENTS) + rounding;
  return { kind: "relative", low: -rounding, high };
}

export const WHY_ABOVE =
  "Consistent elements converge from above: at most (x/64)^4/1440 for 64 of them, a tenth more for the " +
  "next term of the series, and 1e-9 for rounding. Masses at the ends make the error smaller.";

/** omega = 2 pi f. */
export function angular(frequencies: readonly number[]): number[] {
  return frequencies.map((f) => 2 * Math.PI * f);
}
