/** What moves the noise at a spot, or a mode: bars to both sides, and tables with all figures. */

import { type Mover, modeMovers, sizeOf, spotMovers } from "../../study/movers.ts";
import type { SensitivityTable } from "../../study/sensitivity-types.ts";
import { type BarWay, barsFigure, effect } from "../bars-figure.ts";
import type { Figure } from "../figure.ts";
import { type Html, html, type Part } from "../html.ts";
import { three } from "../numbers.ts";
import { type Column, table } from "../section.ts";

/** Effects below these are none: Hz and dB. */
const NOTHING = { Hz: 0.005, dB: 0.005 };

export const ENDS: readonly BarWay[] = [
  { name: "input at the low end of its range", colour: "--series1", hatched: true },
  { name: "input at the high end", colour: "--series0", hatched: false },
];

type Unit = keyof typeof NOTHING;

/** Inputs that do anything, most first. */
export function movingSpot(of: SensitivityTable, spot: number): Mover[] {
  return spotMovers(of, spot).filter((m) => sizeOf(m) >= NOTHING.dB);
}

/** @param number of the mode, from 1 */
export function movingMode(of: SensitivityTable, number: number): Mover[] {
  return modeMovers(of, number - 1).filter((m) => sizeOf(m) >= NOTHING.Hz);
}

/** Value of an input with its unit. */
export function inputValue({ input: { perSI, unit } }: Mover, value: number): string {
  return `${three(value * perSI)}${unit === "" ? "" : `\u00a0${unit}`}`;
}

/** "5.3 to 28", "32 to 34 g" */
export function rangeOf(m: Mover): string {
  return `${three(m.reach.from * m.input.perSI)} to ${inputValue(m, m.reach.to)}`;
}

const AXES = {
  dB: { title: "change of gyro noise, dB", sides: ["quieter", "louder"] },
  Hz: { title: "change of frequency, Hz", sides: ["lower", "higher"] },
} as const;

/** undefined where nothing moves it. */
export function moversFigure(
  movers: readonly Mover[],
  unit: Unit,
  most: number,
): Figure | undefined {
  if (movers.length === 0) return undefined;
  return barsFigure({
    ways: ENDS,
    title: AXES[unit].title,
    sides: AXES[unit].sides,
    rows: movers.slice(0, most).map((m) => ({
      name: m.input.name,
      more: `: ${rangeOf(m)}`,
      bars: [[m.reach.from, m.from] as const, [m.reach.to, m.to] as const].map(
        ([value, change], way) => ({
          way,
          value: change,
          text: effect(change),
          words: `${m.input.name} at ${inputValue(m, value)}: ${effect(change)} ${unit}`,
        }),
      ),
    })),
  });
}

/** Rows that the figure has. */
export const shownRows = (movers: readonly Mover[], most: number) => Math.min(movers.length, most);

/** "dampingFactor, from +2.8 dB at 0.5 to −2.7 dB at 2" */
export function moverWords(m: Mover, unit: Unit): string {
  return `${m.input.name}, ${effect(m.from)}\u00a0${unit} at ${inputValue(m, m.reach.from)}, ${effect(m.to)}\u00a0${unit} at ${inputValue(m, m.reach.to)}`;
}

/** All figures; paths of inputs whole, as the options of the commands take them. */
export function moversTable(caption: string, movers: readonly Mover[], unit: Unit): Html {
  const columns: Column<Mover>[] = [
    { head: "input", names: true, cell: (m) => html`<code>${m.input.name}</code>` },
    { head: "moved over", label: "moved over", number: true, cell: (m) => rangeWords(m) },
    {
      head: html`at the low end<br><small>${unit}</small>`,
      label: `at the low end, ${unit}`,
      number: true,
      cell: (m) => html`<strong>${effect(m.from)}</strong>`,
    },
    {
      head: html`at the high end<br><small>${unit}</small>`,
      label: `at the high end, ${unit}`,
      number: true,
      cell: (m) => html`<strong>${effect(m.to)}</strong>`,
    },
    {
      head: html`for one unit more<br><small>${unit}</small>`,
      label: `for one unit more, ${unit}`,
      number: true,
      cell: (m) =>
        m.input.unit === "" ? "–" : html`${slope(m.perUnit)} <small>per ${m.input.unit}</small>`,
    },
    {
      head: html`for 1 % more<br><small>${unit === "Hz" ? "%" : "dB"}</small>`,
      label: `for 1 % more, ${unit === "Hz" ? "%" : "dB"}`,
      number: true,
      cell: (m) => (m.perPercent === undefined ? "–" : slope(m.perPercent)),
    },
  ];
  return table(caption, columns, movers, { cards: true });
}

function rangeWords(m: Mover): Part {
  const { why } = m.reach;
  return html`${rangeOf(m)}${why !== "spread" && html` <small class="axis">no spread known: ±${why}</small>`}`;
}

const slope = (v: number) => (Math.abs(v) < 5e-4 ? "0" : v > 0 ? `+${three(v)}` : three(v));

/** Each mode with the inputs that can do most to it. */
export function modesTable(of: SensitivityTable, most = 3): Html {
  return table(
    "Modes and the inputs that move them most, over each input’s own range",
    [
      { head: "mode", number: true, label: "mode", cell: (m) => m.number },
      {
        head: html`frequency<br><small>Hz</small>`,
        label: "frequency, Hz",
        number: true,
        cell: (m) => html`<strong>${three(m.frequency)}</strong>`,
      },
      { head: "what moves", names: true, cell: (m) => m.name },
      {
        head: html`moved most by<br><small>Hz at the low and at the high end</small>`,
        label: "moved most by, Hz at the low and at the high end",
        cell: (m) => {
          const movers = movingMode(of, m.number).slice(0, most);
          if (movers.length === 0) return html`<span class="quiet">nothing in the file</span>`;
          return html`<ul class="plain">${movers.map((one) => html`<li><code>${one.input.name}</code> ${effect(one.from)}, ${effect(one.to)}</li>`)}</ul>`;
        },
      },
    ],
    of.modes,
    { cards: true },
  );
}
