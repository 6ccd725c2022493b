/** What each place reads against motor speed, all orders together. */

import type { RankedCandidate } from "../ranking/types.ts";
import { type Figure, plainLayout, SPEED_AXIS, type Trace, WIDE_ONLY } from "./figure.ts";
import { plotText } from "./html.ts";
import { rounded, three, toRpm } from "./numbers.ts";
import { seriesStyle } from "./palette.ts";
import type { Analysed } from "./types.ts";

/** Curves in the page; with more candidates the best ones, the last ones and the one as drawn. */
const MOST_CURVES = 14;
const LAST_ONES = 3;
/** Curves drawn to begin with. */
const FIRST_CURVES = 6;
/** The axis ends this many decades under its top. */
const DECADES = 4;

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

/** Two charts, of which the page shows one at a time; their traces share the speeds, rpm. */
export interface SpectraFigures {
  readonly x: readonly (number | null)[];
  readonly gyro: Figure;
  readonly accel: Figure;
}

/** undefined without a ranking. */
export function spectraFigures(analysed: Analysed): SpectraFigures | undefined {
  const { excitation, ranking } = analysed;
  if (!excitation || !ranking) return undefined;
  const curves = spectrumCurves(analysed);
  return {
    x: Array.from(excitation.grid, (w) => rounded(toRpm(w), 5)),
    gyro: spectrum(excitation, curves, (c) => c.gyroTotal, "turn rate, deg/s rms"),
    accel: spectrum(excitation, curves, (c) => c.accelTotal, "acceleration, g rms"),
  };
}

function spectrum(
  e: NonNullable<Analysed["excitation"]>,
  curves: readonly Curve[],
  of: (c: RankedCandidate) => Float64Array,
  title: string,
): Figure {
  const traces = curves.map(({ candidate, index, drawn }): Trace => {
    const style = seriesStyle(index);
    const name = plotText(candidate.candidate.name);
    return {
      type: "scatter",
      mode: "lines",
      // A logarithmic axis has no place for zero.
      y: Array.from(of(candidate), (v) => (v > 0 ? rounded(v, 3) : null)),
      name,
      line: { color: style.colour, width: index === 0 ? 3.5 : 2, dash: style.dash },
      // Names stay out of the template, which has signs of its own.
      hovertemplate: "%{fullData.name}: %{y:.3~g} at %{x:,.3~r} rpm<extra></extra>",
      visible: drawn,
    };
  });
  const highest = Math.max(1e-9, ...curves.map(({ candidate }) => Math.max(...of(candidate))));
  const lowest = Math.min(highest, ...curves.map(({ candidate }) => least(of(candidate))));
  const top = Math.log10(highest) + 0.1;
  const bottom = Math.max(Math.log10(lowest) - 0.1, top - DECADES);
  const { low, hover, full } = e.speeds;
  const marks = [
    { speed: low, text: "lowest" },
    { speed: hover, text: "hover" },
    { speed: full, text: "full" },
  ];
  const layout = plainLayout(
    { ...SPEED_AXIS, range: [low, full].map((w) => rounded(toRpm(w))) },
    {
      title: { text: title },
      type: "log",
      range: [rounded(bottom), rounded(top)],
      ...plainTicks(bottom, top),
    },
    {
      hovermode: "closest",
      shapes: marks.map(({ speed }) => ({
        type: "line",
        layer: "below",
        yref: "paper",
        x0: rounded(toRpm(speed)),
        x1: rounded(toRpm(speed)),
        y0: 0,
        y1: 1,
        line: { color: "--muted", width: 1, dash: "dot" },
      })),
      annotations: marks.map(({ speed, text }, i) => ({
        x: rounded(toRpm(speed)),
        y: 1,
        yref: "paper",
        yanchor: "bottom",
        xanchor: ["left", "center", "right"][i],
        text,
        // "lowest" and "hover" lie close together; the axis begins at the lowest speed anyway.
        ...(i === 0 && { name: WIDE_ONLY }),
        showarrow: false,
        font: { color: "--muted", size: 12 },
      })),
    },
  );
  return { traces, layout };
}

/** Ticks at 1, 2, 5, 10 ... written out in full; one per decade where there are many decades. */
export function plainTicks(bottom: number, top: number) {
  const steps = top - bottom > 2.5 ? [1] : [1, 2, 5];
  const tickvals: number[] = [];
  for (let decade = Math.floor(bottom); decade <= top; decade++) {
    for (const k of steps) {
      const value = Number(`${k}e${decade}`);
      if (Math.log10(value) >= bottom && Math.log10(value) <= top) tickvals.push(value);
    }
  }
  return { tickvals, ticktext: tickvals.map((v) => three(v)) };
}

function least(values: Float64Array): number {
  return values.reduce((m, v) => (v > 0 && v < m ? v : m), Number.POSITIVE_INFINITY);
}

/** The speed of the highest reading, rad/s, and the reading. */
export function peak(e: NonNullable<Analysed["excitation"]>, values: Float64Array) {
  const at = values.reduce((best, v, i) => (v > values[best] ? i : best), 0);
  return { speed: e.grid[at], value: values[at] };
}
