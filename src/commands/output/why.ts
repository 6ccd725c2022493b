/** Why places are noisy: modes and orders, what holds the energy, and what would help. */

import type { Cause, RankedCandidate } from "../../ranking/types.ts";
import { digits, quantity, wholePercent } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { bullets, wrap } from "../terminal/wrap.ts";
import { isToAvoid } from "./shown-places.ts";

/** Places explained at most. */
const MOST = 6;

/** The first place, the drawn one, the noisiest and those to avoid, in the order of the ranking. */
export function explainedPlaces(places: readonly RankedCandidate[]): RankedCandidate[] {
  if (places.length === 0) return [];
  const noisiest = places.reduce((a, b) => (b.sensed.gyro > a.sensed.gyro ? b : a));
  const chosen = new Set([
    places[0],
    noisiest,
    ...places.filter(({ candidate }) => candidate.designed),
    ...places.filter(isToAvoid),
  ]);
  const kept = new Set([...chosen].slice(0, MOST));
  return places.filter((ranked) => kept.has(ranked));
}

export function whyText(places: readonly RankedCandidate[]): string {
  return explainedPlaces(places)
    .map((ranked) => {
      const { candidate, place, sensed } = ranked;
      const which = `${printable(candidate.name)} (${isToAvoid(ranked) ? "avoid" : `place ${place}`})`;
      const level = `${quantity(sensed.gyro, "deg/s")} rms, ${digits(sensed.gyroAtHover)} in hover`;
      return wrap(`${which}: ${level}`, "  ") + causesText(ranked.causes);
    })
    .join("");
}

function causesText(causes: readonly Cause[]): string {
  const groups = together(causes);
  const texts = groups.map((group, i) => {
    const again = groups.slice(0, i).some(([first]) => first.mode === group[0].mode);
    return groupText(group, again);
  });
  return bullets(texts.map(printable), "    ");
}

/** Orders that meet the same mode at the same speed are one cause with several names. */
function together(causes: readonly Cause[]): Cause[][] {
  const groups: Cause[][] = [];
  for (const cause of causes) {
    const same = groups.find(([{ mode, rpm }]) => mode === cause.mode && rpm === cause.rpm);
    if (same === undefined) groups.push([cause]);
    else same.push(cause);
  }
  return groups;
}

/** `again`: the mode was told in an entry before. */
function groupText(group: readonly Cause[], again: boolean): string {
  const [{ mode, frequency, modeName, rpm, met, parts, remedy }] = group;
  const share = wholePercent(group.reduce((sum, cause) => sum + cause.share, 0));
  const orders =
    group.length === 1
      ? group[0].order
      : listed(group.map((cause) => `${cause.order} (${wholePercent(cause.share)})`));
  if (mode === 0) return `${share}: ${orders}; ${modeName}, which no place avoids`;
  const speed = quantity(rpm, "rpm");
  const where = met ? `met at ${speed}` : `would meet at ${speed}, outside the speeds considered`;
  const which = `${share}: ${orders} on ${quantity(frequency, "Hz")} (${modeName}), ${where}`;
  if (again) return which;
  const energy = parts.map(({ name, share: part }) => `${name} ${wholePercent(part)}`);
  return [
    which,
    ...(energy.length > 0 ? [`it strains ${energy.join(", ")}`] : []),
    ...(remedy === "" ? [] : [remedy]),
  ].join("; ");
}

function listed(names: readonly string[]): string {
  return `${names.slice(0, -1).join(", ")} and ${names[names.length - 1]}`;
}
