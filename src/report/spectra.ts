/** What the chips at each place pass on against motor speed: by order, all together, and as a map. */

import { spreadPower } from "../excitation/spread.ts";
import type { PassedOrder, RankedCandidate } from "../ranking/types.ts";
import { frequencyRange, modeLabels, orderLabel } from "./campbell.ts";
import { orderLines, perTurn } from "./campbell-words.ts";
import { MARGIN, plainLayout } from "./figure.ts";
import { plotText } from "./html.ts";
import { levelScale } from "./level-scale.ts";
import { modesThatMatter } from "./modes-that-matter.ts";
import { rounded, toRpm } from "./numbers.ts";
import { seriesStyle } from "./palette.ts";
import { labelled, placeText } from "./place-names.ts";
import type { SpectraData, SpectraQuantity } from "./spectra-data.ts";
import { allFinding, mapFinding, placeFinding } from "./spectra-words.ts";
import {
  BELOW_STRIP,
  FLIGHT_AXIS,
  flightLabels,
  flightTrace,
  speedAxis,
  speedLines,
  speedNames,
  speedRange,
} from "./speed-axis.ts";
import { frequencyTicks, plainTicks } from "./ticks.ts";
import type { Analysed } from "./types.ts";
import { packUnit } from "./unit-codec.ts";

/** Places in the page; with more candidates the best ones, the last ones and the one as drawn. */
const MOST_CURVES = 14;
const LAST_ONES = 3;
/** Curves of all places drawn to begin with. */
const FIRST_CURVES = 6;
/** The axis ends this many decades under its top. */
const DECADES = 4;
/** Decades of power below the largest that the packed numbers reach; see `powersFrom`. */
const PACKED = 10.24;
/** Decibels from the map's strongest colour to its ground. */
const MAP_DEPTH = 70;
/** The least width of a line in the map, as `sweepDensity` has it. */
const LEAST_WIDTH = 0.005;

export type Quantity = "gyro" | "accel";

/** One place that has a curve. */
export interface Curve {
  readonly candidate: RankedCandidate;
  /** its number in the ranking from 0, which gives it its style */
  readonly index: number;
  readonly drawn: boolean;
}

export function spectrumCurves({ ranking }: Pick<Analysed, "ranking">): Curve[] {
  const all = (ranking?.candidates ?? []).map((candidate, index) => ({ candidate, index }));
  const kept =
    all.length <= MOST_CURVES
      ? all
      : all.filter(
          ({ candidate, index }) =>
            index < MOST_CURVES - LAST_ONES - 1 ||
            index >= all.length - LAST_ONES ||
            candidate.candidate.designed,
        );
  return kept.map((c, i) => ({
    ...c,
    drawn: i < FIRST_CURVES || c.candidate.candidate.designed || i === kept.length - 1,
  }));
}

/** undefined without a ranking. */
export function spectraData(analysed: Analysed): SpectraData | undefined {
  const { excitation, ranking } = analysed;
  if (!excitation || !ranking) return undefined;
  const names = labelled(ranking.candidates);
  const curves = spectrumCurves(analysed);
  const { grid, motorSpread } = excitation;
  return {
    rpm: [toRpm(grid[0]), toRpm(grid[grid.length - 1])],
    spread: motorSpread,
    frequencies: frequencyRange(analysed),
    layout: levelLayout(excitation),
    map: mapLayout(analysed, excitation),
    flight: flightTrace(excitation),
    scales: { light: levelScale("light"), dark: levelScale("dark") },
    mapDepth: MAP_DEPTH,
    orders: orderLines(analysed).map(({ order }, i) => {
      const { colour, dash } = seriesStyle(i);
      return { multiple: order, name: perTurn(order), colour, dash };
    }),
    places: curves.map(({ index }) => {
      const { colour, dash } = seriesStyle(index);
      const { label } = names[index];
      return { label, name: plotText(placeText(names[index])), colour, dash };
    }),
    gyro: quantityData(analysed, excitation, curves, "gyro"),
    accel: quantityData(analysed, excitation, curves, "accel"),
  };
}

/** rms against nominal speed of all orders together, the motors' spread in it (size of the grid). */
export function passedTotal(
  { grid, motorSpread }: NonNullable<Analysed["excitation"]>,
  passed: readonly PassedOrder[],
  quantity: Quantity,
): Float64Array {
  const sum = grid.map((_, s) => passed.reduce((t, p) => t + p[quantity][s], 0));
  return spreadPower(grid, sum, motorSpread).map(Math.sqrt);
}

function quantityData(
  analysed: Analysed,
  e: NonNullable<Analysed["excitation"]>,
  curves: readonly Curve[],
  quantity: Quantity,
): SpectraQuantity {
  const places = curves.map((c) => c.candidate);
  const powers = places.map((c) => c.passed.map((p) => p[quantity]));
  const top = Math.max(1e-18, ...powers.flat().map((p) => Math.max(...p)));
  const totals = places.map((c) => passedTotal(e, c.passed, quantity));
  // Every order is to be seen at every place, at its strongest at least.
  const peaks = powers.flat().map((p) => Math.max(...spreadPower(e.grid, p, e.motorSpread)));
  const weakest = Math.sqrt(Math.min(...peaks.filter((p) => p > 0), top));
  const { unit, title } = QUANTITIES[quantity];
  const mapTop = 5 * Math.ceil(2 * Math.log10(densest(e, places, quantity)));
  const all = labelled(analysed.ranking?.candidates ?? []);
  return {
    unit: `${unit} rms`,
    densityUnit: `dB re 1 (${unit})²/Hz`,
    top,
    powers: powers.map((orders) => orders.map((p) => packUnit(unitsOf(p, top)))),
    yaxis: { title: { text: `${title}, ${unit} rms` }, ...levelAxis(totals, weakest) },
    together: levelAxis(totals, Number.POSITIVE_INFINITY),
    mapTop,
    findings: curves.map(({ index }, i) => placeFinding(all[index], e, totals[i], quantity)),
    mapFindings: curves.map(({ index }) => mapFinding(all[index], e, analysed, quantity)),
    finding: allFinding(all, curves, e, totals, quantity),
  };
}

const QUANTITIES = {
  gyro: { unit: "deg/s", title: "turn rate" },
  accel: { unit: "g", title: "acceleration" },
} as const;

/** -1 to 1 for the codec of shapes: PACKED decades; what is less is nothing. */
export function unitsOf(power: Float64Array, top: number): Float64Array {
  return power.map((p) => (p > 0 ? 1 + (2 * Math.log10(p / top)) / PACKED : -1));
}

/** The largest mean square per hertz that any line of the map can reach. */
function densest(
  { grid, motorSpread }: NonNullable<Analysed["excitation"]>,
  places: readonly RankedCandidate[],
  quantity: Quantity,
): number {
  const width = Math.max(motorSpread, LEAST_WIDTH);
  const peaks = places.flatMap((c) =>
    c.passed.map((p) =>
      p[quantity].reduce((most, power, s) => {
        const sigma = (width * p.multiple * grid[s]) / (2 * Math.PI);
        return Math.max(most, power / (sigma * Math.sqrt(2 * Math.PI)));
      }, 0),
    ),
  );
  return Math.max(1e-18, ...peaks);
}

function levelLayout(e: NonNullable<Analysed["excitation"]>) {
  return plainLayout(
    speedAxis(e),
    { type: "log", domain: [0, BELOW_STRIP] },
    {
      margin: { ...MARGIN, r: 96 },
      yaxis2: FLIGHT_AXIS,
      hovermode: "closest",
      shapes: speedLines(e),
      annotations: [...speedNames(e), ...flightLabels(e)],
    },
  );
}

/** Range and ticks of the axis of levels: all of the totals and down to `weakest`, within DECADES. */
function levelAxis(totals: readonly Float64Array[], weakest: number) {
  const highest = Math.max(1e-9, ...totals.map((t) => Math.max(...t)));
  const lowest = Math.min(highest, ...totals.map(least), weakest);
  const top = Math.log10(highest) + 0.1;
  const bottom = Math.max(Math.log10(lowest) - 0.1, top - DECADES);
  return { range: [rounded(bottom), rounded(top)], ...plainTicks(bottom, top) };
}

function mapLayout(analysed: Analysed, e: NonNullable<Analysed["excitation"]>) {
  const [bottom, top] = frequencyRange(analysed);
  const range = speedRange(e);
  const matters = modesThatMatter(analysed).filter(
    ({ mode: { frequency: f } }) => f > bottom && f < top,
  );
  const modes = matters.map((m) => m.mode);
  return plainLayout(
    { ...speedAxis(e), showgrid: false },
    {
      title: { text: "frequency, Hz" },
      type: "log",
      range: [rounded(Math.log10(bottom), 6), rounded(Math.log10(top), 6)],
      showgrid: false,
      ...frequencyTicks(bottom, top),
    },
    {
      margin: { ...MARGIN, r: 72, b: 112 },
      hovermode: "closest",
      shapes: [
        ...speedLines(e).map((l) => ({ ...l, layer: "above" })),
        ...modes.map((m) => ({
          type: "line",
          layer: "above",
          xref: "paper",
          x0: 0,
          x1: 1,
          y0: rounded(m.frequency),
          y1: rounded(m.frequency),
          line: { color: "--muted", width: 1, dash: "dot" },
          opacity: 0.7,
        })),
      ],
      annotations: [
        ...speedNames(e),
        ...modeLabels(modes, matters, [bottom, top]),
        // Over the streak, which is wider than a line.
        ...orderLines(analysed).map((l, i) => ({
          ...orderLabel(l, i, range, [bottom, top]),
          yshift: 10,
          bgcolor: "rgba(0,0,0,0)",
        })),
      ],
    },
  );
}

function least(values: Float64Array): number {
  return values.reduce((m, v) => (v > 0 && v < m ? v : m), Number.POSITIVE_INFINITY);
}
