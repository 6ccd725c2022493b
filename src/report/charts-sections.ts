/** The two charts against motor speed, with the tables that say the same. */

import { HOVER_MARGIN } from "../ranking/crossings.ts";
import type { Crossing, RankedCandidate } from "../ranking/types.ts";
import { crossingWords, orderLines, perTurn } from "./campbell.ts";
import { causesPart } from "./causes-table.ts";
import { chipsPart } from "./chips-table.ts";
import { chartBox } from "./figure.ts";
import { type Html, html, named } from "./html.ts";
import { placeLabels } from "./markers.ts";
import {
  degreesPerSecond,
  hertz,
  percent,
  rpm,
  signed,
  three,
  toRpm,
  withUnit,
} from "./numbers.ts";
import { seriesStyle } from "./palette.ts";
import { facts, folded, list, section, table } from "./section.ts";
import { peak, spectrumCurves } from "./spectra.ts";
import type { Analysed } from "./types.ts";

/** How far from hover still counts as near it, in words. */
const NEAR = percent(HOVER_MARGIN);

const WITHOUT_MOTORS =
  "The file has no motors, so there is no motor speed to set against the modes.";

export function campbellSection(analysed: Analysed): Html {
  const { excitation, ranking } = analysed;
  if (!excitation) return section("interference", "Where motor speed meets a mode", WITHOUT_MOTORS);
  const { speeds } = excitation;
  const crossings = ranking?.crossings ?? [];
  const near = crossings.filter((c) => c.nearHover);
  const finding = campbellFinding(near);
  const lead = html`Slanted lines: how often per second the motors push, as they speed up. Level lines: the modes. Where they cross, the motors feed a mode. The wide green band runs from the lowest speed to full throttle; the narrow orange one is hover ±${NEAR}. ${finding}`;
  return section(
    "interference",
    "Where motor speed meets a mode",
    lead,
    html`<figure>${chartBox("campbell-chart", "tall", finding)}
<figcaption><ul class="legend">${orderLines(analysed).map((l, i) => html`<li>${swatch(i)} ${l.names.join(", ")}: ${perTurn(l.order)}</li>`)}<li>${symbol("near")} crossing within ${NEAR} of hover</li><li>${symbol("other")} other crossing</li></ul></figcaption></figure>`,
    crossings.length > 0 &&
      folded(
        `All ${crossings.length} crossings as a table`,
        table(
          "Motor speeds at which a force meets a mode, lowest first",
          [
            {
              head: html`motor speed<br><small>rpm</small>`,
              number: true,
              names: true,
              cell: (c) => three(c.rpm),
            },
            {
              head: html`from hover<br><small>%</small>`,
              number: true,
              cell: (c) => signed(100 * c.fromHover, 0),
            },
            { head: "force", cell: (c) => c.order },
            { head: "how often", cell: (c) => perTurn(c.multiple) },
            { head: "mode", number: true, cell: (c) => c.mode },
            {
              head: html`frequency<br><small>Hz</small>`,
              number: true,
              cell: (c) => three(c.frequency),
            },
            { head: "motion", cell: (c) => c.modeName },
          ],
          crossings,
          { rowClass: (c) => (c.nearHover ? "near" : "") },
        ),
      ),
    html`<h3>What shakes the frame</h3>`,
    facts([
      ["lowest speed", speedWords(speeds.low)],
      ["hover", speedWords(speeds.hover)],
      ["full", speedWords(speeds.full)],
      ["thrust in hover", html`${withUnit(speeds.hoverThrust, "N")} <small>per motor</small>`],
      ["thrust to weight", three(speeds.thrustToWeight)],
    ]),
    table(
      "Forces of each motor",
      [
        { head: "force", names: true, cell: (o) => o.name },
        { head: "how often", cell: (o) => perTurn(o.order) },
        { head: "acts as", cell: (o) => o.kind },
        {
          head: "in hover",
          number: true,
          cell: (o) =>
            o.kind === "torque" || o.kind === "rotating moment"
              ? withUnit(1e3 * o.coefficient * speeds.hover ** 2, "N mm")
              : withUnit(o.coefficient * speeds.hover ** 2, "N"),
        },
        { head: "where the number comes from", long: true, cell: (o) => o.source },
      ],
      excitation.orders,
    ),
    table(
      `Flight mix “${excitation.mixName}”: how much of the flight is spent where`,
      [
        { head: "part", names: true, cell: (r) => r.name },
        {
          head: html`motor speed<br><small>rpm</small>`,
          number: true,
          cell: (r) => three(toRpm(r.speed)),
        },
        {
          head: html`give or take<br><small>rpm</small>`,
          number: true,
          cell: (r) => three(toRpm(r.spread)),
        },
        { head: html`share<br><small>%</small>`, number: true, cell: (r) => three(100 * r.share) },
      ],
      excitation.mix,
    ),
    html`<div class="notes">${list(speeds.notes)}</div>`,
  );
}

function speedWords(omega: number): Html {
  return html`${rpm(omega)} <small>${hertz(omega / (2 * Math.PI))}</small>`;
}

/** The nearest crossing to hover in words. */
export function campbellFinding(near: readonly Crossing[]): string {
  if (near.length === 0) return `No force meets a mode within ${NEAR} of hover.`;
  const nearest = near.reduce((a, b) => (Math.abs(b.fromHover) < Math.abs(a.fromHover) ? b : a));
  const count = near.length === 1 ? "One crossing lies" : `${near.length} crossings lie`;
  return `${count} within ${NEAR} of hover; the nearest: ${crossingWords(nearest)}.`;
}

export function spectraSection(analysed: Analysed): Html {
  const { excitation, ranking } = analysed;
  if (!excitation || !ranking) {
    return section(
      "spectra",
      "Noise against motor speed",
      excitation ? "Nothing is ranked, so there are no spectra." : WITHOUT_MOTORS,
    );
  }
  const curves = spectrumCurves(analysed);
  const labels = placeLabels(ranking.candidates);
  const finding = spectraFinding(excitation, ranking.candidates);
  const lead = html`How a stack at each place moves while the motors hold one speed, give or take the ${percent(excitation.motorSpread, 2)} by which they differ from each other; that rounds the peaks. True motion, before the chips’ own low-pass. The scale at the left grows by factors: 1, 2, 5, 10. ${finding}`;
  return section(
    "spectra",
    "Noise against motor speed",
    lead,
    html`<fieldset class="switch"><legend>show</legend>
<label><input type="radio" name="quantity" value="gyro" checked> turn rate <small>(gyro)</small></label>
<label><input type="radio" name="quantity" value="accel"> acceleration</label></fieldset>
<figure>${chartBox("spectra-chart", "tall", finding)}
<figcaption><fieldset class="switch legend"><legend>places</legend>${curves.map(({ index, candidate, drawn }, i) => html`<label><input type="checkbox" name="curve" value="${i}"${{ html: drawn ? " checked" : "" }}> ${swatch(index)} <span>${labels[index]}: ${named(candidate.candidate.name)}</span></label>`)}</fieldset></figcaption></figure>`,
    curves.length < ranking.candidates.length &&
      html`<p class="notes">Curves of ${curves.length} of the ${ranking.candidates.length} places are in this page: the best, the last and the one drawn in the file.</p>`,
    causesPart(ranking, excitation.speeds),
    chipsPart(ranking),
  );
}

function spectraFinding(
  excitation: NonNullable<Analysed["excitation"]>,
  candidates: readonly RankedCandidate[],
): string {
  const words = (c: RankedCandidate) => {
    const p = peak(excitation, c.gyroTotal);
    return `“${c.candidate.name}”, peaks with ${degreesPerSecond(p.value)} at ${rpm(p.speed)}`;
  };
  const [first, last] = [candidates[0], candidates.at(-1)];
  if (!first) return "";
  if (!last || last === first) return `The only place, ${words(first)}.`;
  return `The best place, ${words(first)}; the last, ${words(last)}.`;
}

/** The line of a curve, as it stands in the chart. */
function swatch(index: number): Html {
  const { colour, strokes } = seriesStyle(index);
  return html`<svg class="swatch" viewBox="0 0 34 10" aria-hidden="true"><line x1="1" y1="5" x2="33" y2="5" style="stroke: var(${colour})" stroke-width="3" stroke-dasharray="${strokes}"/></svg>`;
}

function symbol(kind: "near" | "other"): Html {
  const shape =
    kind === "near"
      ? html`<path class="near-mark" d="M8 0L16 8L8 16L0 8Z"/>`
      : html`<circle class="other-mark" cx="8" cy="8" r="6"/>`;
  return html`<svg class="symbol" viewBox="0 0 16 16" aria-hidden="true">${shape}</svg>`;
}
