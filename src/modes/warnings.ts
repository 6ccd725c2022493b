/** What about the modes is worth a word to the user. */

import type { Modes } from "./types.ts";

/** A frequency this much below the highest one computed is zero but for rounding. */
const NO_STIFFNESS = 1e-5;
/** Shear that would lower a frequency by more than this is worth a word while beams leave it out. */
const SHEAR_LIMIT = 0.02;
/** Modes must reach this many times the highest frequency that is shaken. */
const REACH = 1.2;
/** Mode numbers listed before the list is cut. */
const LISTED = 6;

/** @param shaken highest frequency of excitation, Hz, where known: modes far above it do not matter */
export function modeWarnings(modes: Modes, shaken?: number): string[] {
  return [...mechanism(modes), ...shear(modes, shaken)];
}

function mechanism({ described }: Modes): string[] {
  const highest = described[described.length - 1]?.frequency ?? 0;
  const loose = described.filter((m) => m.frequency < NO_STIFFNESS * highest).length;
  if (loose === 0) return [];
  return [
    `${loose} ${loose === 1 ? "motion meets" : "motions meet"} no stiffness at all although nothing is loose: a hinge, or a link that ties too little; look at the first modes`,
  ];
}

function shear({ described }: Modes, shaken = Number.POSITIVE_INFINITY): string[] {
  const over = described.filter(
    (m) => m.shearEffect > SHEAR_LIMIT && m.frequency <= REACH * shaken,
  );
  if (over.length === 0) return [];
  const worst = over.reduce((a, b) => (b.shearEffect > a.shearEffect ? b : a));
  const numbers = over.map((m) => m.number);
  const list = `${numbers.slice(0, LISTED).join(", ")}${numbers.length > LISTED ? ", ..." : ""}`;
  const most = `${Math.round(100 * worst.shearEffect)} %`;
  const which =
    over.length === 1
      ? `the frequency of mode ${worst.number} by about ${most}`
      : `the frequencies of modes ${list} by more than 2 % (mode ${worst.number}: about ${most})`;
  return [`shear in the beams would lower ${which}; set "beamTheory": "timoshenko" to include it`];
}

/** Whether the modes reach far enough past the highest frequency of excitation (Hz). */
export function reaches({ described }: Modes, shaken: number): boolean {
  return (described[described.length - 1]?.frequency ?? 0) >= REACH * shaken;
}

/** @param shaken highest frequency of excitation, Hz */
export function reachWarning(modes: Modes, shaken: number): string[] {
  if (reaches(modes, shaken)) return [];
  const { described } = modes;
  const highest = described[described.length - 1]?.frequency ?? 0;
  return [
    `the ${described.length} modes reach ${short(highest)} Hz, but the motors shake up to ${short(shaken)} Hz; figures that rest on what lies above the last mode are wrong, so ask for more modes`,
  ];
}

const short = (f: number): number => Number(f.toPrecision(3));
