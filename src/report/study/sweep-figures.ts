/** Charts of a sweep: mass against noise, noise and frequencies along a parameter. */

import { bestGyro } from "../../study/pareto.ts";
import type { SweepLine, SweepStudy } from "../../study/results-sweep.ts";
import { rowName } from "../../study/sweep-words.ts";
import type { Outcome } from "../../variants/types.ts";
import { type Figure, MARGIN, plainLayout, type Trace } from "../figure.ts";
import { plotText } from "../html.ts";
import { degreesPerSecond, grams, hertz, rounded, three } from "../numbers.ts";
import { seriesStyle } from "../palette.ts";
import { seriesMark } from "../series-marks.ts";
import { logTicks } from "../ticks.ts";

/** Room beside the outermost points, of the axis. */
const ROOM = 0.06;

/** Mass against gyro noise at the best spot; the front joined. undefined where no row has a spot to use. */
export function frontFigure(study: SweepStudy): Figure | undefined {
  const { rows, front, quietest } = study;
  const points = rows.flatMap(({ outcome }, i) =>
    outcome?.best === undefined
      ? []
      : [{ i, mass: 1e3 * outcome.mass, gyro: bestGyro(outcome), name: rowName(study, rows[i]) }],
  );
  if (points.length === 0) return undefined;
  const of = (some: readonly number[]) => some.flatMap((i) => points.find((p) => p.i === i) ?? []);
  const marks = (
    some: readonly (typeof points)[number][],
    mode: "markers" | "lines",
    more: Partial<Trace>,
  ): Trace => ({
    type: "scatter",
    mode,
    x: some.map((p) => rounded(p.mass, 5)),
    y: some.map((p) => rounded(p.gyro)),
    customdata: some.map((p) =>
      plotText(`${p.name}: ${grams(1e-3 * p.mass)}, ${degreesPerSecond(p.gyro)} rms`),
    ),
    hovertemplate: "%{customdata}<extra></extra>",
    ...more,
  });
  const beaten = points.filter((p) => !front.includes(p.i));
  const traces = [
    marks(beaten, "markers", {
      name: "beaten",
      marker: { symbol: "circle-open", size: 8, color: "--muted", line: { width: 1.5 } },
    }),
    marks(of(front), "lines", { line: { color: "--series0", width: 1.5 }, hoverinfo: "skip" }),
    marks(of(front), "markers", {
      name: "front",
      marker: { symbol: "diamond", size: 11, color: "--series0" },
    }),
    marks(of(quietest === undefined ? [] : [quietest]), "markers", {
      name: "quietest",
      marker: { symbol: "star", size: 17, color: "--series1" },
    }),
  ];
  const layout = plainLayout(
    {
      title: { text: "mass, g", standoff: 8 },
      range: padded(points.map((p) => p.mass)),
      nticks: 7,
    },
    noiseAxis(
      points.map((p) => p.gyro),
      "gyro noise at the best spot, deg/s rms",
    ),
    { margin: { ...MARGIN, t: 14 }, hovermode: "closest" },
  );
  return { traces, layout };
}

/** The line on which modes and noise are drawn: that of the quietest row, or the first. */
export function shownLine({ lines, quietest }: SweepStudy): SweepLine | undefined {
  return lines.find((l) => quietest !== undefined && l.rows.includes(quietest)) ?? lines[0];
}

const outcomesOf = ({ rows }: SweepStudy, line: SweepLine): Outcome[] =>
  line.rows.flatMap((i) => rows[i].outcome ?? []);

/** Names of the spots along a line, in the order of the first outcome that has them. */
export function spotNames(outcomes: readonly Outcome[]): string[] {
  return [...new Set(outcomes.flatMap((o) => o.spots.map((s) => s.name)))];
}

/** Noise at every spot along the followed parameter; undefined without spots. */
export function courseFigure(study: SweepStudy, line: SweepLine): Figure | undefined {
  const outcomes = outcomesOf(study, line);
  const names = spotNames(outcomes);
  if (names.length === 0) return undefined;
  const gyro = (name: string) => outcomes.map((o) => o.spots.find((s) => s.name === name));
  const traces = names.flatMap((name, n): Trace[] => {
    const spots = gyro(name);
    const style = seriesStyle(n);
    const { symbol } = seriesMark(n);
    const common = {
      type: "scatter",
      x: line.values,
      y: spots.map((s) => (s ? rounded(s.gyro) : null)),
      name: plotText(name),
      customdata: spots.map((s, k) =>
        plotText(
          s
            ? `${name} at ${valueText(study, line, k)}: ${degreesPerSecond(s.gyro)} rms${s.ruledOut === undefined ? "" : `, avoid: ${s.ruledOut}`}`
            : "",
        ),
      ),
      hovertemplate: "%{customdata}<extra></extra>",
    } as const;
    const open = spots.map((s) => (s?.ruledOut === undefined ? symbol : `${symbol}-open`));
    return [
      {
        ...common,
        mode: "lines",
        line: { color: style.colour, width: 2.2, dash: style.dash },
        hoverinfo: "skip",
      },
      {
        ...common,
        mode: "markers",
        marker: {
          color: style.colour,
          symbol: open,
          size: 9,
          line: { width: 1.5, color: style.colour },
        },
      },
    ];
  });
  const all = outcomes.flatMap((o) => o.spots.map((s) => s.gyro));
  const layout = plainLayout(parameterAxis(study, line), noiseAxis(all, "gyro noise, deg/s rms"), {
    margin: { ...MARGIN, t: 14 },
    hovermode: "closest",
  });
  return { traces, layout };
}

/** "4.5 mm", of the kth place along the line */
export function valueText({ parameters, along, rows }: SweepStudy, line: SweepLine, k: number) {
  return parameters[along].texts[rows[line.rows[k]].at[along]];
}

/** Frequencies along the followed parameter, with the places where modes meet. */
export function branchesFigure(study: SweepStudy, line: SweepLine): Figure {
  const { branches, veerings, crossings } = line.tracking;
  const { unit } = study.parameters[study.along];
  const at = (v: number) => `${three(v)}${unit === "" ? "" : ` ${unit}`}`;
  const outcomes = outcomesOf(study, line);
  const lines = branches.map((b, n): Trace => {
    const style = seriesStyle(n);
    return {
      type: "scatter",
      mode: "lines",
      x: line.values,
      y: b.frequencies.map((f) => (f === undefined ? null : rounded(f))),
      name: plotText(branchName(outcomes, b)),
      line: { color: style.colour, width: 2, dash: style.dash },
      customdata: b.frequencies.map((f, k) =>
        plotText(
          f === undefined
            ? ""
            : `${branchName(outcomes, b)}: ${hertz(f)} as mode ${b.modes[k]} at ${valueText(study, line, k)}`,
        ),
      ),
      hovertemplate: "%{customdata}<extra></extra>",
      connectgaps: false,
    };
  });
  const meetings = (
    some: readonly { readonly at: number; readonly frequency: number }[],
    name: string,
    words: (i: number) => string,
    marker: Readonly<Record<string, unknown>>,
  ): Trace => ({
    type: "scatter",
    mode: "markers",
    x: some.map((m) => rounded(m.at)),
    y: some.map((m) => rounded(m.frequency)),
    name,
    customdata: some.map((_, i) => plotText(words(i))),
    hovertemplate: "%{customdata}<extra></extra>",
    marker,
  });
  const known = branches.flatMap((b) => b.frequencies.filter((f) => f !== undefined));
  const [low, high] = [0.94 * Math.min(1e6, ...known), 1.06 * Math.max(1e-6, ...known)];
  const layout = plainLayout(
    parameterAxis(study, line),
    {
      title: { text: "frequency, Hz" },
      type: "log",
      range: [rounded(Math.log10(low)), rounded(Math.log10(high))],
      ...logTicks(low, high),
    },
    { margin: { ...MARGIN, t: 14 }, hovermode: "closest" },
  );
  return {
    traces: [
      ...hoverLines(outcomes, line, low, high),
      ...lines,
      meetings(
        veerings,
        "veering",
        (i) =>
          `modes ${veerings[i].modes.join(" and ")} turn into one another near ${at(veerings[i].at)}, ${hertz(veerings[i].gap)} apart`,
        {
          symbol: "diamond",
          size: 12,
          color: "--caution",
          line: { width: 1.5, color: "--surface" },
        },
      ),
      meetings(
        crossings,
        "crossing",
        (i) => `two modes cross near ${at(crossings[i].at)}, at ${hertz(crossings[i].frequency)}`,
        { symbol: "circle-open", size: 10, color: "--ink", line: { width: 1.5 } },
      ),
    ],
    layout,
  };
}

/** What pushes in hover: an order's frequency follows the mass. */
function hoverLines(
  outcomes: readonly Outcome[],
  line: SweepLine,
  low: number,
  high: number,
): Trace[] {
  const met = outcomes.flatMap((o) => o.meetings);
  const multiples = [...new Set(met.map((m) => m.multiple))].sort((a, b) => a - b);
  return multiples.flatMap((multiple): Trace[] => {
    const y = outcomes.map((o) => (multiple * o.hover) / (2 * Math.PI));
    if (!y.some((f) => f > low && f < high)) return [];
    const names = [...new Set(met.filter((m) => m.multiple === multiple).map((m) => m.order))];
    return [
      {
        type: "scatter",
        mode: "lines",
        x: line.values,
        y: y.map((f) => rounded(f)),
        name: plotText(`${names.join(", ")} in hover`),
        line: { color: "--cautionSoft", width: 9 },
        hovertemplate: "%{fullData.name}: %{y:.3~g} Hz<extra></extra>",
      },
    ];
  });
}

type Branch = SweepLine["tracking"]["branches"][number];

/** By its number where it is first known, and its motion where that is known in words. */
export function branchName(outcomes: readonly Outcome[], { modes }: Branch): string {
  const k = modes.findIndex((m) => m !== undefined);
  const number = modes[k] ?? 0;
  const named = modes.findIndex((m, i) => m !== undefined && outcomes[i].modeNames !== undefined);
  const name = outcomes[named]?.modeNames?.[(modes[named] ?? 0) - 1];
  return name ? `mode ${number}, ${name}` : `mode ${number}`;
}

function parameterAxis({ parameters, along }: SweepStudy, { values }: SweepLine) {
  const { name, unit } = parameters[along];
  const short = name.length > 40 ? `…${name.slice(-39)}` : name;
  return {
    title: { text: plotText(unit === "" ? short : `${short}, ${unit}`), standoff: 8 },
    range: padded(values),
    nticks: 9,
  };
}

function noiseAxis(gyro: readonly number[], title: string) {
  const [low, high] = [0.92 * Math.min(...gyro), 1.08 * Math.max(...gyro)];
  return {
    title: { text: title },
    type: "log",
    range: [rounded(Math.log10(low)), rounded(Math.log10(high))],
    ...logTicks(low, high),
  };
}

function padded(values: readonly number[]): (number | null)[] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(ROOM * (high - low), 1e-3 * Math.abs(high));
  return [rounded(low - room, 5), rounded(high + room, 5)];
}
