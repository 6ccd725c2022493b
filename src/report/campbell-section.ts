/** The interference diagram with its crossings, and what shakes the frame. */

import type { Crossing } from "../ranking/types.ts";
import { frequencyRange } from "./campbell.ts";
import { campbellFinding, NEAR, orderLines, perTurn } from "./campbell-words.ts";
import { chartBox } from "./figure.ts";
import { type Html, html } from "./html.ts";
import { modeLink } from "./mode-link.ts";
import { mayBeAtHover } from "./modes-that-matter.ts";
import { hertz, percent, rpm, signed, three, toRpm, withUnit } from "./numbers.ts";
import { facts, folded, list, section, table } from "./section.ts";
import { lineSwatch } from "./series-marks.ts";
import type { Analysed } from "./types.ts";
import { term } from "./words.ts";

const TITLE = "Where motor speed meets a mode";

export const WITHOUT_MOTORS =
  "The file has no motors, so there is no motor speed to set against the modes.";

export function campbellSection(analysed: Analysed): Html {
  const { excitation, ranking } = analysed;
  if (!excitation) return section("interference", TITLE, WITHOUT_MOTORS);
  const crossings = ranking?.crossings ?? [];
  const band = ranking?.frequencyBand ?? 0;
  const finding = ranking ? campbellFinding(ranking) : "Nothing is ranked.";
  const how = html`Slanted lines are the ${term("order", "orders")} of the motors: how often per second they push, faster as they turn faster. Level lines are the ${term("mode", "modes")}. Where they meet, the motors feed the mode: a ${term("crossing")}. Both scales grow by factors, so that ±${percent(band)} is as wide everywhere. Point at a level line to see how far its frequency may be off; a click on it, or on a crossing, shows how it moves.`;
  return section(
    "interference",
    TITLE,
    { finding, how },
    html`<figure>${chartBox("campbell-chart", "tall", finding)}
<figcaption>${legend(analysed)}${left(analysed)}</figcaption></figure>`,
    crossings.length > 0 && crossingsTable(crossings, band),
    forcesPart(excitation),
  );
}

function legend(analysed: Analysed): Html {
  const orders = orderLines(analysed).map(
    (l, i) => html`<li>${lineSwatch(i)} ${l.names.join(", ")}: ${perTurn(l.order)}</li>`,
  );
  const band = percent(analysed.ranking?.frequencyBand ?? 0);
  return html`<ul class="legend">${orders}
<li>${symbol("hover")} may lie right at hover: its band of ±${band} reaches it</li>
<li>${symbol("near")} within ${NEAR} of hover</li><li>${symbol("other")} other crossing</li>
<li>${patch("caution")} band of ±${band} of a mode met near hover</li><li>${patch("accent")} of one that makes noise</li></ul>`;
}

/** How many modes lie outside the diagram. */
function left({ modes, ...analysed }: Analysed): Html | undefined {
  const [bottom, top] = frequencyRange({ modes, ...analysed });
  const below = modes.described.filter((m) => m.frequency <= bottom).length;
  const above = modes.described.filter((m) => m.frequency >= top).length;
  if (below + above === 0) return undefined;
  const count = (n: number, words: string) =>
    n === 0 ? [] : [`${n} ${n === 1 ? "mode" : "modes"} ${words}`];
  const parts = [
    ...count(below, `below ${hertz(bottom)}, below the lowest speed considered`),
    ...count(above, `above ${hertz(top)}`),
  ];
  return html`<p class="notes">Left out: ${parts.join("; ")}.</p>`;
}

function crossingsTable(crossings: readonly Crossing[], band: number): Html {
  return folded(
    `All ${crossings.length} crossings with the modes computed, as a table`,
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
          label: "from hover, %",
          number: true,
          cell: ({ fromHover: off }) => signed(100 * off, Math.abs(off) < 0.0995 ? 1 : 0),
        },
        {
          head: html`may lie at hover<br><small>frequency ±${percent(band)}</small>`,
          label: "may lie at hover",
          cell: (c) => (mayBeAtHover(c, band) ? html`<strong>yes</strong>` : "no"),
        },
        { head: "force", cell: (c) => html`${c.order} <small>${perTurn(c.multiple)}</small>` },
        { head: "mode", number: true, cell: (c) => modeLink(c.mode, String(c.mode)) },
        {
          head: html`frequency<br><small>Hz</small>`,
          label: "frequency, Hz",
          number: true,
          cell: (c) => three(c.frequency),
        },
        { head: "motion", cell: (c) => c.modeName },
      ],
      crossings,
      {
        cards: true,
        rowClass: (c) => (c.nearHover || mayBeAtHover(c, band) ? "near" : ""),
      },
    ),
  );
}

function forcesPart(excitation: NonNullable<Analysed["excitation"]>): readonly Html[] {
  const { speeds } = excitation;
  return [
    html`<h3>What shakes the frame</h3>`,
    facts([
      ["lowest speed", speedWords(speeds.low)],
      ["hover", speedWords(speeds.hover)],
      ["full", speedWords(speeds.full)],
      ["thrust in hover", html`${withUnit(speeds.hoverThrust, "N")} <small>per motor</small>`],
      ["thrust to weight", three(speeds.thrustToWeight)],
    ]),
    folded(
      "Forces, flight mix, and where the speeds come from",
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
          {
            head: html`share<br><small>%</small>`,
            number: true,
            cell: (r) => three(100 * r.share),
          },
        ],
        excitation.mix,
      ),
      html`<div class="notes">${list(speeds.notes)}</div>`,
    ),
  ];
}

function speedWords(omega: number): Html {
  return html`${rpm(omega)} <small>${hertz(omega / (2 * Math.PI))}</small>`;
}

function symbol(kind: "hover" | "near" | "other"): Html {
  const shape =
    kind === "other"
      ? html`<circle class="other-mark" cx="8" cy="8" r="6"/>`
      : html`<path class="${kind === "hover" ? "near-mark" : "open-mark"}" d="M8 1L15 8L8 15L1 8Z"/>`;
  return html`<svg class="symbol" viewBox="0 0 16 16" aria-hidden="true">${shape}</svg>`;
}

function patch(colour: "caution" | "accent"): Html {
  return html`<svg class="swatch" viewBox="0 0 34 10" aria-hidden="true"><rect x=".5" y=".5" width="33" height="9" style="fill: var(--${colour}Soft); stroke: var(--${colour})"/></svg>`;
}
