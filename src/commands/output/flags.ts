/** The reasons behind the flags, and overhangs. */

import type { Flag, Overhang, RankedCandidate } from "../../ranking/types.ts";
import { millimetres, shortest, toDegrees } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { bullets, HARD_SPACE, wrap } from "../terminal/wrap.ts";

/** Each flag once, with the places it holds for; empty where there is none. */
export function flagsText(places: readonly RankedCandidate[]): string {
  const holders = new Map<string, { flag: Flag; text: string; names: string[] }>();
  for (const ranked of places) {
    for (const flag of ranked.flags) {
      const text = shortened(flag, ranked);
      const key = `${flag.kind} ${flag.hard} ${text}`;
      const known = holders.get(key);
      if (known === undefined) holders.set(key, { flag, text, names: [ranked.candidate.name] });
      else known.names.push(ranked.candidate.name);
    }
  }
  return bullets(
    [...holders.values()].map(({ flag, text, names }) => {
      const where = names.map(printable).join(", ");
      return `${where} (${flag.hard ? "avoid" : "mind"}): ${printable(text)}`;
    }),
  );
}

/** The lever arm has a section of its own: here only that it is long, in the same words for all. */
function shortened(flag: Flag, { leverArm: { radius, error, yawRate } }: RankedCandidate): string {
  if (flag.kind !== "far from the centre of gravity") return flag.text;
  const angle = `${shortest(toDegrees(error))}${HARD_SPACE}deg`;
  const yaw = `${shortest(toDegrees(yawRate))}${HARD_SPACE}deg/s`;
  return `further than ${shortest(1e3 * radius)}${HARD_SPACE}mm from the centre of gravity: the accelerometer reads more than ${angle} of false tilt in steady yaw of ${yaw}; see "Self-level"`;
}

/**
 * Overhangs worth a word and not told as a flag; where there are only harmless ones the longest, to say
 * that they were looked at. Empty where nothing is left to tell.
 */
export function overhangsText(
  overhangs: readonly Overhang[],
  places: readonly RankedCandidate[],
): string {
  const told = new Set(places.flatMap(({ flags }) => flags.map(({ text }) => text)));
  const flagged = overhangs.filter((overhang) => overhang.flagged);
  const untold = flagged.filter(({ text }) => !told.has(text));
  if (untold.length > 0) return bullets(untold.map(({ text }) => printable(text)));
  const [longest] = overhangs.toSorted((a, b) => b.length - a.length);
  if (flagged.length > 0 || longest === undefined) return "";
  return wrap(
    `None worth a worry. The longest is ${millimetres(longest.length)}${HARD_SPACE}mm, at the ${longest.direction} of ${printable(longest.plate)}.`,
  );
}
