/** Orders, crossings and modes of the interference diagram in words. */

import { HOVER_MARGIN } from "../ranking/crossings.ts";
import { fedModes } from "../ranking/fed-modes.ts";
import type { Crossing, Ranking } from "../ranking/types.ts";
import type { Matter } from "./modes-that-matter.ts";
import { mayBeAtHover } from "./modes-that-matter.ts";
import { hertz, percent, three } from "./numbers.ts";
import { quoted } from "./place-names.ts";
import type { Analysed } from "./types.ts";

/** How far from hover still counts as near it, in words. */
export const NEAR = percent(HOVER_MARGIN);

/** Nearer to hover than this is at hover: nobody knows its speed better. */
const AT_HOVER = 0.005;

/** Forces at the same multiple of the motor's speed, as one line. */
export interface OrderLine {
  readonly order: number;
  readonly names: readonly string[];
}

export function orderLines({ excitation }: Pick<Analysed, "excitation">): OrderLine[] {
  const orders = [...new Set(excitation?.orders.map((o) => o.order))].sort((a, b) => a - b);
  return orders.map((order) => ({
    order,
    names: excitation?.orders.filter((o) => o.order === order).map((o) => o.name) ?? [],
  }));
}

/** "once per turn", "3 per turn". */
export function perTurn(order: number): string {
  return order === 1 ? "once per turn" : `${three(order)} per turn`;
}

/** "5 % below hover", "at hover" */
function hoverWords({ fromHover }: Pick<Crossing, "fromHover">): string {
  if (Math.abs(fromHover) < AT_HOVER) return "at hover";
  return `${percent(Math.abs(fromHover), 2)} ${fromHover < 0 ? "below" : "above"} hover`;
}

/** "unbalance meets mode 3 (arms flap, 183 Hz) at 7 200 rpm, 5 % below hover". */
export function crossingWords(c: Crossing): string {
  return `${c.order} meets mode ${c.mode} (${c.modeName}, ${hertz(c.frequency)}) at ${three(c.rpm)}\u00a0rpm, ${hoverWords(c)}`;
}

/** "mode 19: 405 Hz give or take 28, arms flap; 38 % of the noise at 1a" */
export function modeLineWords(
  { number, frequency, name }: Pick<Matter["mode"], "number" | "frequency" | "name">,
  band: number,
  causes: string,
): string {
  const known = `${hertz(frequency)} give or take ${three(band * frequency, 2)}`;
  return `mode ${number}: ${known}, ${name}${causes === "" ? "" : `; ${causes}`}`;
}

/** What is met near hover, and where most of the first place's noise comes from. */
export function campbellFinding({ crossings, frequencyBand, candidates }: Ranking): string {
  return [hoverFinding(crossings, frequencyBand), noiseFinding(candidates[0])]
    .filter((s) => s !== "")
    .join(" ");
}

function hoverFinding(crossings: readonly Crossing[], band: number): string {
  const near = crossings.filter((c) => c.nearHover || mayBeAtHover(c, band));
  if (near.length === 0) return `No force meets a mode within ${NEAR} of hover.`;
  // The lowest multiple pushes hardest; of its crossings the nearest.
  const [first] = near.toSorted(
    (a, b) => a.multiple - b.multiple || Math.abs(a.fromHover) - Math.abs(b.fromHover),
  );
  const right = near.filter((c) => mayBeAtHover(c, band)).length;
  const could = `could lie right on it, since frequencies are known to ±${percent(band)}`;
  if (near.length === 1) {
    return `Near hover, ${crossingWords(first)}${right > 0 ? `; it ${could}` : ""}.`;
  }
  const count = right === near.length ? "all" : right === 0 ? "none" : String(right);
  return `Near hover forces meet ${near.length} modes; ${count} of them ${could}. The lowest order: ${crossingWords(first)}.`;
}

function noiseFinding(place: Ranking["candidates"][number] | undefined): string {
  const fed = place && fedModes(place.causes).find((f) => f.cause.mode > 0);
  if (!place || !fed) return "";
  const { cause, share, forces } = fed;
  const where = cause.met
    ? `at ${three(cause.rpm)}\u00a0rpm`
    : "at a speed that is not flown, near enough to feel";
  const by = forces.map((f) => f.order).join(" and ");
  return `The largest share of the noise at ${quoted(place.candidate.name)}, ${percent(share, 2)}, comes where ${by} ${forces.length > 1 ? "meet" : "meets"} ${hertz(cause.frequency)} ${where}.`;
}
