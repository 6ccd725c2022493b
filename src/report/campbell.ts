/** The interference (Campbell) diagram: frequencies of the forces and of the modes against motor speed. */

import { HOVER_MARGIN } from "../ranking/crossings.ts";
import type { Crossing } from "../ranking/types.ts";
import {
  crossingWords,
  modeLineWords,
  NEAR,
  type OrderLine,
  orderLines,
  perTurn,
} from "./campbell-words.ts";
import { type Figure, MARGIN, plainLayout, type Trace } from "./figure.ts";
import { plotText } from "./html.ts";
import { type Matter, mayBeAtHover, modesThatMatter } from "./modes-that-matter.ts";
import { rounded, three, toRpm } from "./numbers.ts";
import { seriesStyle } from "./palette.ts";
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
import { frequencyTicks } from "./ticks.ts";
import type { Analysed } from "./types.ts";

/** Names of modes at the right edge keep this share of the height apart. */
const LABEL_GAP = 0.045;

/** The diagram, with what the page adds when a mode is pointed at or chosen. */
export interface CampbellData {
  readonly figure: Figure;
  /** ends of the axis of speed, rpm */
  readonly rpm: readonly [low: number, high: number];
  /** how far frequencies may be off, as a share */
  readonly band: number;
  readonly modes: readonly {
    readonly number: number;
    readonly frequency: number;
    readonly words: string;
  }[];
}

/** Ends of the axis of frequency, Hz: what the forces reach between lowest and full speed. */
export function frequencyRange({
  excitation,
  modes,
}: Pick<Analysed, "excitation" | "modes">): readonly [number, number] {
  if (!excitation) return [1, modes.evidence.checkFrequency];
  const orders = excitation.orders.map((o) => o.order);
  const [low, high] = speedRange(excitation);
  const top = (Math.max(...orders) * high) / 60;
  const bottom = (0.88 * Math.min(...orders) * low) / 60;
  return [bottom, Math.max(2 * bottom, Math.min(top, 1.08 * modes.evidence.checkFrequency))];
}

/** undefined without motors. */
export function campbellData(analysed: Analysed): CampbellData | undefined {
  const { excitation, modes, ranking } = analysed;
  if (!excitation) return undefined;
  const [bottom, top] = frequencyRange(analysed);
  const shown = modes.described.filter((m) => m.frequency > bottom && m.frequency < top);
  const matters = modesThatMatter(analysed);
  const band = ranking?.frequencyBand ?? 0;
  const causes = new Map(matters.map((m) => [m.mode.number, m.causes]));
  const rpm = speedRange(excitation);
  return {
    figure: figureOf(analysed, excitation, [bottom, top], matters),
    rpm: [rounded(rpm[0]) ?? 0, rounded(rpm[1]) ?? 0],
    band,
    modes: shown.map((m) => ({
      number: m.number,
      frequency: rounded(m.frequency) ?? 0,
      words: plotText(modeLineWords(m, band, causes.get(m.number) ?? "")),
    })),
  };
}

function figureOf(
  analysed: Analysed,
  excitation: NonNullable<Analysed["excitation"]>,
  [bottom, top]: readonly [number, number],
  matters: readonly Matter[],
): Figure {
  const { modes, ranking } = analysed;
  const band = ranking?.frequencyBand ?? 0;
  const range = speedRange(excitation);
  const lines = orderLines(analysed);
  const shown = modes.described.filter((m) => m.frequency > bottom && m.frequency < top);
  const drawn = matters.filter((m) => shown.includes(m.mode));
  const crossings = ranking?.crossings ?? [];
  const right = crossings.filter((c) => mayBeAtHover(c, band));
  const near = crossings.filter((c) => c.nearHover && !right.includes(c));
  const far = crossings.filter((c) => !right.includes(c) && !near.includes(c));
  const fill = { color: "--caution", line: { width: 1.5, color: "--surface" } };
  const open = { color: "--surface", line: { width: 2, color: "--caution" } };
  const other = { color: "--surface", line: { width: 1.5, color: "--ink" } };
  const traces = [
    ...drawn.map((m) => bandTrace(m, band, range)),
    levelLines(shown, range),
    ...lines.map((l, i) => orderTrace(l, i, range, top)),
    crossingMarks(far, { symbol: "circle", size: 8, ...other }),
    crossingMarks(near, { symbol: "diamond", size: 11, ...open }),
    crossingMarks(right, { symbol: "diamond", size: 13, ...fill }),
    flightTrace(excitation),
  ];
  const { hover } = excitation.speeds;
  const layout = plainLayout(
    { ...speedAxis(excitation), showgrid: false },
    // The level lines are modes; a grid would look like more of them.
    {
      title: { text: "frequency, Hz" },
      type: "log",
      domain: [0, BELOW_STRIP],
      range: [rounded(Math.log10(bottom), 6), rounded(Math.log10(top), 6)],
      showgrid: false,
      ...frequencyTicks(bottom, top),
    },
    {
      margin: { ...MARGIN, r: 72 },
      yaxis2: FLIGHT_AXIS,
      hovermode: "closest",
      hoverdistance: 12,
      shapes: [
        {
          type: "rect",
          layer: "below",
          yref: "paper",
          x0: rounded(toRpm((1 - HOVER_MARGIN) * hover)),
          x1: rounded(toRpm((1 + HOVER_MARGIN) * hover)),
          y0: 0,
          y1: BELOW_STRIP,
          fillcolor: "--cautionSoft",
          opacity: 0.8,
          line: { width: 0 },
        },
        ...speedLines(excitation),
      ],
      annotations: [
        ...speedNames(excitation, `hover ±${NEAR}`),
        ...flightLabels(excitation),
        ...modeLabels(shown, drawn, [bottom, top]),
        ...lines.map((l, i) => orderLabel(l, i, range, [bottom, top])),
      ],
    },
  );
  return { traces, layout };
}

/** All modes as level lines in one trace; they are pointed at by the page's own points. */
function levelLines(
  modes: readonly { readonly frequency: number }[],
  [low, high]: readonly [number, number],
): Trace {
  return {
    type: "scatter",
    mode: "lines",
    x: modes.flatMap(() => [rounded(low), rounded(high), null]),
    y: modes.flatMap((m) => [rounded(m.frequency), rounded(m.frequency), null]),
    name: "modes",
    line: { color: "--muted", width: 0.9 },
    hoverinfo: "skip",
  };
}

/** Where the frequency of a mode may lie: a band from one end of the axis to the other. */
function bandTrace(
  { mode: { frequency, number }, nearHover }: Matter,
  band: number,
  [low, high]: readonly [number, number],
): Trace {
  const [least, most] = [rounded((1 - band) * frequency), rounded((1 + band) * frequency)];
  return {
    type: "scatter",
    mode: "lines",
    x: [low, high, high, low].map((v) => rounded(v)),
    y: [least, least, most, most],
    name: `band of mode ${number}`,
    fill: "toself",
    fillcolor: nearHover ? "--cautionSoft" : "--accentSoft",
    opacity: 0.75,
    line: { color: nearHover ? "--caution" : "--accent", width: 0.6 },
    hoverinfo: "skip",
  };
}

function orderTrace(
  l: OrderLine,
  i: number,
  [low, high]: readonly [number, number],
  top: number,
): Trace {
  const end = Math.min(high, (60 * top) / l.order);
  const style = seriesStyle(i);
  return {
    type: "scatter",
    mode: "lines",
    x: [rounded(low), rounded(end)],
    y: [rounded((l.order * low) / 60), rounded((l.order * end) / 60)],
    name: plotText(`${l.names.join(", ")}: ${perTurn(l.order)}`),
    line: { color: style.colour, width: 2.5, dash: style.dash },
    hovertemplate: "%{fullData.name}<extra></extra>",
  };
}

function crossingMarks(
  crossings: readonly Crossing[],
  marker: Readonly<Record<string, unknown>>,
): Trace {
  return {
    type: "scatter",
    mode: "markers",
    x: crossings.map((c) => rounded(c.rpm)),
    y: crossings.map((c) => rounded(c.frequency)),
    text: crossings.map((c) => plotText(crossingWords(c))),
    customdata: crossings.map((c) => c.mode),
    hovertemplate: "%{text}<extra></extra>",
    marker,
  };
}

/** Numbers and frequencies at the right edge: those that matter first, then what finds room. */
export function modeLabels(
  modes: readonly { readonly number: number; readonly frequency: number }[],
  matters: readonly Matter[],
  [bottom, top]: readonly [number, number],
) {
  const chosen = new Set(matters.map((m) => m.mode.number));
  const at = (f: number) => (Math.log(f / bottom) / Math.log(top / bottom)) * BELOW_STRIP;
  const taken: number[] = [];
  const first = modes.filter((m) => chosen.has(m.number));
  return [...first, ...modes.filter((m) => !chosen.has(m.number))].flatMap((m) => {
    const place = at(m.frequency);
    if (taken.some((t) => Math.abs(t - place) < LABEL_GAP)) return [];
    taken.push(place);
    return [
      {
        x: 1,
        xref: "paper",
        xanchor: "left",
        xshift: 4,
        y: rounded(Math.log10(m.frequency), 6),
        text: `${m.number}: ${three(m.frequency)}`,
        showarrow: false,
        font: { size: 12, color: chosen.has(m.number) ? "--ink" : "--muted" },
      },
    ];
  });
}

/** The name of an order along its line. */
export function orderLabel(
  l: OrderLine,
  i: number,
  [low, high]: readonly [number, number],
  [bottom, top]: readonly [number, number],
) {
  const from = Math.max(low, (60 * bottom) / l.order);
  const to = Math.min(high, (60 * top) / l.order);
  const x = from * (to / from) ** 0.8;
  return {
    x: rounded(Math.log10(x), 6),
    y: rounded(Math.log10((l.order * x) / 60), 6),
    text: perTurn(l.order),
    showarrow: false,
    xanchor: "right",
    xshift: -8,
    yanchor: "bottom",
    font: { size: 12, color: seriesStyle(i).colour },
    bgcolor: "--surface",
    borderpad: 2,
  };
}
