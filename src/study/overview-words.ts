/** Several variants together: which is lightest, which is quietest, which are beaten in both. */

import { listed } from "../ranking/words.ts";
import type { NamedOutcome } from "./compare-types.ts";
import { bestDelay } from "./delay-words.ts";
import { gramsOf, rateOf } from "./figures.ts";
import { bestGyro } from "./pareto.ts";

/** Names that are told before the rest are counted. */
const NAMED = 4;
/** Less is no reason: kg, and dB. */
const LIGHTER = 0.5e-3;
const QUIETER = 0.5;

/** Sentences; about mass and noise only where two and more have a spot to use. */
export function overviewWords(outcomes: readonly NamedOutcome[]): string[] {
  const open = outcomes.filter(({ outcome }) => outcome.best !== undefined);
  const closed = outcomes.filter((o) => !open.includes(o) && o.outcome.spots.length > 0);
  const without =
    closed.length > 0 ? [`Without a spot to use: ${listed(closed.map(whyClosed), NAMED)}.`] : [];
  if (open.length < 2) return without;
  const least = (of: (o: NamedOutcome) => number) => open.reduce((a, b) => (of(b) < of(a) ? b : a));
  const light = least((o) => o.outcome.mass);
  const quiet = least((o) => bestGyro(o.outcome));
  const mass = gramsOf(light.outcome.mass);
  const noise = `${rateOf(bestGyro(quiet.outcome))} rms of gyro noise at its best spot`;
  const both = `"${light.name}" is both the lightest (${mass}) and the quietest (${noise}).`;
  const apart = `The lightest is "${light.name}" (${mass}), the quietest "${quiet.name}" (${noise}).`;
  const beaten = open.filter((o) => open.some((p) => beats(p, o))).map((o) => `"${o.name}"`);
  return [
    light === quiet ? both : apart,
    ...(beaten.length > 0
      ? [
          `No reason by mass, noise or filter delay to take ${listed(beaten, NAMED)}: another is better in one and no worse in the others.`,
        ]
      : []),
    ...without,
  ];
}

/** Better by something that matters, and worse in nothing. */
function beats(p: NamedOutcome, o: NamedOutcome): boolean {
  const [mp, mo] = [p.outcome.mass, o.outcome.mass];
  const [gp, go] = [bestGyro(p.outcome), bestGyro(o.outcome)];
  const [dp, d] = [p, o].map((v) => bestDelay(v) ?? Number.POSITIVE_INFINITY);
  if (mp > mo || gp > go || dp > d) return false;
  return mo - mp > LIGHTER || 20 * Math.log10(go / gp) > QUIETER;
}

function whyClosed({ name, outcome }: NamedOutcome): string {
  const reasons = [...new Set(outcome.spots.map((s) => s.ruledOut))].filter((r) => r !== undefined);
  return `"${name}" (${reasons.join(", ")})`;
}
