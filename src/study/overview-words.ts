/** Several variants together: which is lightest, which is quietest, which are beaten in both. */

import { listed } from "../ranking/words.ts";
import type { NamedOutcome } from "./compare-types.ts";
import { gramsOf, rateOf } from "./figures.ts";
import { bestGyro, massNoiseFront } from "./pareto.ts";

/** Names that are told before the rest are counted. */
const NAMED = 4;

/** Sentences; none where fewer than two have a spot to use. */
export function overviewWords(outcomes: readonly NamedOutcome[]): string[] {
  const open = outcomes.filter(({ outcome }) => outcome.best !== undefined);
  if (open.length < 2) return [];
  const least = (of: (o: NamedOutcome) => number) => open.reduce((a, b) => (of(b) < of(a) ? b : a));
  const light = least((o) => o.outcome.mass);
  const quiet = least((o) => bestGyro(o.outcome));
  const mass = gramsOf(light.outcome.mass);
  const noise = `${rateOf(bestGyro(quiet.outcome))} rms of gyro noise at its best spot`;
  const both = `"${light.name}" is both the lightest (${mass}) and the quietest (${noise}).`;
  const apart = `The lightest is "${light.name}" (${mass}), the quietest "${quiet.name}" (${noise}).`;
  const front = new Set(massNoiseFront(open.map((o) => o.outcome)));
  const beaten = open.filter((_, i) => !front.has(i)).map((o) => `"${o.name}"`);
  const closed = outcomes.filter((o) => !open.includes(o)).map((o) => `"${o.name}"`);
  return [
    light === quiet ? both : apart,
    ...(beaten.length > 0
      ? [
          `No reason by mass or noise to take ${listed(beaten, NAMED)}: another is better in one and no worse in the other.`,
        ]
      : []),
    ...(closed.length > 0 ? [`Without a spot to use: ${listed(closed, NAMED)}.`] : []),
  ];
}
