/** What samples and moved inputs say of a ranking: chances, bands of modes, movers, help. */

import type { HowSure } from "../../study/how-sure.ts";
import type { SampledMode } from "../../study/results.ts";
import { type BandMark, bandFigure } from "../band-figure.ts";
import { waysLegend } from "../bars-figure.ts";
import { chartBox, type Figure } from "../figure.ts";
import { type Html, html, named } from "../html.ts";
import { heardModes } from "../modes-that-matter.ts";
import { hertz, percent, rounded, three } from "../numbers.ts";
import { folded } from "../section.ts";
import { chancesFigure, chancesPart, samplesPart } from "../study/sure-section.ts";
import { logTicks } from "../ticks.ts";
import type { Analysed } from "../types.ts";
import { helpFinding, helpPart } from "./help.ts";
import {
  ENDS,
  modesTable,
  moversFigure,
  moversTable,
  moverWords,
  movingMode,
  movingSpot,
  shownRows,
} from "./movers.ts";

/** Inputs in a chart, lowest modes and modes near hover among the bands. */
const INPUTS = 8;
const MODES = 6;

/** The mode among those moved that causes most noise at the first place; undefined where none is known. */
export function loudestMode(
  { moved: { table } }: HowSure,
  analysed: Pick<Analysed, "ranking" | "modes">,
): number | undefined {
  const number = heardModes(analysed)[0]?.number;
  return number !== undefined && number <= table.modes.length ? number : undefined;
}

/** The lowest modes, and those that hover's forces come nearest to. */
function bandedModes({ sampled, moved }: HowSure, loudest: number | undefined): SampledMode[] {
  const all = sampled.variants[0]?.sampled?.modes ?? [];
  const telling = new Set([...moved.telling, ...(loudest === undefined ? [] : [loudest])]);
  return all.filter((m) => m.band && (m.number <= MODES || telling.has(m.number)));
}

function modesFigure(modes: readonly SampledMode[]): Figure | undefined {
  const marks = modes.flatMap(({ number, name, nominal, band }, i): BandMark[] => {
    if (!band) return [];
    const [low, middle, high] = [band.low.value, band.median.value, band.high.value];
    const words = `mode ${number}, ${name}: ${hertz(nominal)} as drawn; nine of ten frames ${three(low)} to ${hertz(high)}`;
    return [
      { at: i, series: 0, low: Math.min(low, middle), middle, high: Math.max(high, middle), words },
    ];
  });
  if (marks.length === 0) return undefined;
  const ends = marks.flatMap((m) => [m.low ?? m.middle, m.high ?? m.middle]);
  const [low, high] = [0.92 * Math.min(...ends), 1.08 * Math.max(...ends)];
  return bandFigure({
    rows: modes.map((m) => ({ name: `${m.number}: ${m.name}`, short: String(m.number) })),
    series: ["nine of ten frames"],
    marks,
    longestName: 36,
    xaxis: {
      title: { text: "frequency, Hz", standoff: 8 },
      type: "log",
      range: [rounded(Math.log10(low)), rounded(Math.log10(high))],
      ...logTicks(low, high),
    },
  });
}

function modesFinding(modes: readonly SampledMode[]): string {
  const half = modes.flatMap(({ band }) =>
    band ? [(band.high.value - band.low.value) / (2 * band.median.value)] : [],
  );
  if (half.length === 0) return "No mode was found again in the frames drawn.";
  return `From frame to frame these modes scatter by ±${percent(Math.min(...half), 2)} to ±${percent(Math.max(...half), 2)}.`;
}

export function sampledFigures(
  sure: HowSure,
  analysed: Pick<Analysed, "ranking" | "modes">,
): Readonly<Record<string, Figure | undefined>> {
  const { table, spot } = sure.moved;
  const loudest = loudestMode(sure, analysed);
  return {
    "chances-chart": chancesFigure(sure.sampled),
    "sure-modes-chart": modesFigure(bandedModes(sure, loudest)),
    "sure-spot-chart":
      spot === undefined ? undefined : moversFigure(movingSpot(table, spot), "dB", INPUTS),
    "sure-mode-chart":
      loudest === undefined ? undefined : moversFigure(movingMode(table, loudest), "Hz", INPUTS),
  };
}

export function sampledPart(
  sure: HowSure,
  frame: string,
  analysed: Pick<Analysed, "ranking" | "modes">,
): Html {
  const { sampled, moved } = sure;
  const loudest = loudestMode(sure, analysed);
  const banded = bandedModes(sure, loudest);
  const bands = modesFinding(banded);
  return html`${
    sampled.sure
      ? html`<h3>How often each place is the best</h3>${chancesPart(sampled)}
<h3>Natural frequencies</h3><p>${bands}</p>
<figure>${chartBox("sure-modes-chart", "bars", bands, Number((0.72 * banded.length).toFixed(2)))}
<figcaption><p class="key">The lowest modes and those that the motors’ forces come nearest to in hover. Nine of ten frames lie within the bar, half of them on either side of the mark.</p></figcaption></figure>`
      : html`<p>The file names no place for the stack, so no frames were drawn: name the best one that was found in the section “candidates”.</p>`
  }${spotPart(sure)}${modePart(sure, loudest)}
${moved.suggested && html`<h3>What would help</h3><p>${helpFinding(moved.suggested)}</p>${helpPart(moved.suggested, frame)}`}
${folded("All modes and what moves them", modesTable(moved.table))}
${sampled.sure && folded("What was varied, and how many frames", samplesPart(sampled.sure, false))}`;
}

function spotPart({ moved: { table, spot } }: HowSure): Html | undefined {
  if (spot === undefined) return undefined;
  const { name } = table.spots[spot];
  const movers = movingSpot(table, spot);
  const [most] = movers;
  if (!most)
    return html`<h3>What moves the noise at “${named(name)}”</h3><p>No number of the file moves it.</p>`;
  const finding = `The noise at “${name}” is moved most by ${moverWords(most, "dB")}.`;
  return html`<h3>What moves the noise at “${named(name)}”</h3><p>${finding}</p>
<figure>${chartBox("sure-spot-chart", "bars named", finding, shownRows(movers, INPUTS))}
<figcaption>${waysLegend(ENDS)}</figcaption></figure>
${folded(movers.length === 1 ? "The one input that moves it" : `All ${movers.length} inputs that move it`, moversTable(`Inputs that move the noise at “${name}”`, movers, "dB"))}`;
}

function modePart({ moved: { table } }: HowSure, loudest: number | undefined): Html | undefined {
  if (loudest === undefined) return undefined;
  const { name, frequency, number } = table.modes[loudest - 1];
  const movers = movingMode(table, number);
  const [most] = movers;
  if (!most) return undefined;
  const finding = `Mode ${number} (${name}, ${hertz(frequency)}) causes most of the noise at the best place, and is moved most by ${moverWords(most, "Hz")}.`;
  return html`<h3>What moves the mode that causes most</h3><p>${finding}</p>
<figure>${chartBox("sure-mode-chart", "bars named", finding, shownRows(movers, INPUTS))}
<figcaption>${waysLegend(ENDS)}</figcaption></figure>
${folded(movers.length === 1 ? "The one input that moves it" : `All ${movers.length} inputs that move it`, moversTable(`Inputs that move mode ${number}`, movers, "Hz"))}`;
}
