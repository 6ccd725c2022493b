/** What the uncertainty of natural frequencies means for hover. */

import type { Excitation } from "../../excitation/types.ts";
import type { Crossing, Ranking } from "../../ranking/types.ts";
import { type Html, html } from "../html.ts";
import { modeLink } from "../mode-link.ts";
import { mayBeAtHover } from "../modes-that-matter.ts";
import { hertz, percent, rpm, three, toRpm } from "../numbers.ts";
import { table } from "../section.ts";

/** Crossings told before the rest are counted. */
const MOST = 8;

/** Crossings that may lie at hover speed, the nearest first. */
export function mayMeetHover(crossings: readonly Crossing[], band: number): Crossing[] {
  return crossings
    .filter((c) => mayBeAtHover(c, band))
    .toSorted((a, b) => Math.abs(a.fromHover) - Math.abs(b.fromHover));
}

export function hoverFinding(
  { crossings, frequencyBand }: Ranking,
  { speeds }: Excitation,
): string {
  const met = mayMeetHover(crossings, frequencyBand);
  const band = `±${percent(frequencyBand)}`;
  const at = rpm(speeds.hover);
  if (met.length === 0) {
    return `Hover, at ${at}, stays clear: no resonance lies there for any error of the natural frequencies within ${band}.`;
  }
  const [near] = met;
  const many = met.length === 1 ? "One resonance" : `${met.length} resonances`;
  return `${many} may lie right at hover, ${at}, within ${band}; the nearest as drawn: ${near.order} with mode ${near.mode} (${near.modeName}) at ${three(near.rpm)}\u00a0rpm. So a level in hover alone is known less well than the level over the flight.`;
}

/** undefined where none may. */
export function hoverPart({ crossings, frequencyBand }: Ranking, e: Excitation): Html | undefined {
  const met = mayMeetHover(crossings, frequencyBand);
  if (met.length === 0) return undefined;
  const rest = met.length - MOST;
  return html`${table(
    `Resonances that may lie at hover speed, ${rpm(e.speeds.hover)}, the nearest first`,
    [
      {
        head: "mode",
        names: true,
        cell: (c) => modeLink(c.mode, `${c.mode}: ${c.modeName}`),
      },
      { head: "shaken by", label: "shaken by", cell: (c) => c.order },
      {
        head: html`frequency<br><small>Hz</small>`,
        label: "frequency",
        number: true,
        cell: (c) =>
          html`${hertz(c.frequency)} <small class="axis">${three((1 - frequencyBand) * c.frequency)} to ${three((1 + frequencyBand) * c.frequency)}</small>`,
      },
      {
        head: html`met at<br><small>rpm</small>`,
        label: "met at",
        number: true,
        cell: (c) =>
          html`${rpm(c.speed)} <small class="axis">${three((1 - frequencyBand) * toRpm(c.speed))} to ${three((1 + frequencyBand) * toRpm(c.speed))}</small>`,
      },
    ],
    met.slice(0, MOST),
    { cards: true },
  )}${rest > 0 && html`<p class="notes">${rest} more lie farther off.</p>`}`;
}
