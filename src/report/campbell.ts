/** The interference (Campbell) diagram: frequencies of the forces and of the modes against motor speed. */

import { HOVER_MARGIN } from "../ranking/crossings.ts";
import type { Crossing } from "../ranking/types.ts";
import { type Figure, MARGIN, plainLayout, SPEED_AXIS, type Trace } from "./figure.ts";
import { plotText } from "./html.ts";
import { hertz, percent, rounded, three, toRpm } from "./numbers.ts";
import { seriesStyle } from "./palette.ts";
import type { Analysed } from "./types.ts";

/** Names of modes at the right edge keep this share of the height apart. */
const LABEL_GAP = 0.045;

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

/** undefined without motors. */
export function campbellFigure(analysed: Analysed): Figure | undefined {
  const { excitation, modes, ranking } = analysed;
  if (!excitation) return undefined;
  const { low, hover, full } = excitation.speeds;
  const lines = orderLines(analysed);
  const fastest = 1.06 * toRpm(full);
  const highestOrder = Math.max(0, ...lines.map((l) => l.order));
  const top = Math.min((highestOrder * fastest) / 60, 1.08 * modes.evidence.checkFrequency);
  const shown = modes.described.filter((m) => m.frequency < top);
  const crossings = ranking?.crossings ?? [];
  const traces = [
    ...shown.map(
      (m): Trace => ({
        type: "scatter",
        mode: "lines",
        x: [0, rounded(fastest)],
        y: [rounded(m.frequency), rounded(m.frequency)],
        name: `mode ${m.number}`,
        line: { color: "--muted", width: 0.8 },
        hovertemplate: `mode ${m.number}: ${hertz(m.frequency)}<extra></extra>`,
      }),
    ),
    ...lines.map((l, i): Trace => {
      const end = Math.min(fastest, (60 * top) / l.order);
      const style = seriesStyle(i);
      return {
        type: "scatter",
        mode: "lines",
        x: [0, rounded(end)],
        y: [0, rounded((l.order * end) / 60)],
        name: plotText(l.names.join(", ")),
        line: { color: style.colour, width: 2.5, dash: style.dash },
        hovertemplate: `%{fullData.name}: ${perTurn(l.order)}<extra></extra>`,
      };
    }),
    crossingMarks(
      crossings.filter((c) => !c.nearHover),
      { symbol: "circle-open", size: 9, color: "--ink", line: { width: 1.5 } },
    ),
    crossingMarks(
      crossings.filter((c) => c.nearHover),
      { symbol: "diamond", size: 13, color: "--caution", line: { width: 1.5, color: "--surface" } },
    ),
  ];
  const mark = (speed: number, text: string, xanchor: string) => ({
    x: rounded(toRpm(speed)),
    y: 1,
    yref: "paper",
    yanchor: "bottom",
    xanchor,
    text,
    showarrow: false,
    font: { color: "--muted", size: 12 },
  });
  const layout = plainLayout(
    { ...SPEED_AXIS, range: [0, rounded(fastest)] },
    // The level lines are modes; a grid would look like more of them.
    {
      title: { text: "frequency, Hz" },
      range: [0, rounded(top)],
      showgrid: false,
      tickformat: ",d",
    },
    {
      margin: { ...MARGIN, r: 74 },
      hovermode: "closest",
      shapes: [
        band(low, full, "--accentSoft", 0.55),
        band((1 - HOVER_MARGIN) * hover, (1 + HOVER_MARGIN) * hover, "--cautionSoft", 0.9),
        ...[low, hover, full].map(upright),
      ],
      annotations: [
        mark(low, "lowest", "right"),
        mark(hover, `hover ±${percent(HOVER_MARGIN)}`, "left"),
        mark(full, "full", "center"),
        ...modeLabels(shown, top),
        ...lines.map((l) => orderLabel(l, fastest, top)),
      ],
    },
  );
  return { traces, layout };
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
    hovertemplate: "%{text}<extra></extra>",
    marker,
  };
}

/** "unbalance meets mode 3 (arms flap) at 7 200 rpm, 5 % below hover". */
export function crossingWords(c: Crossing): string {
  const side = c.fromHover < 0 ? "below" : "above";
  const distance = `${percent(Math.abs(c.fromHover), 2)} ${side} hover`;
  return `${c.order} meets mode ${c.mode} (${c.modeName}, ${hertz(c.frequency)}) at ${three(c.rpm)}\u00a0rpm, ${distance}`;
}

function band(from: number, to: number, colour: string, opacity: number) {
  return {
    type: "rect",
    layer: "below",
    yref: "paper",
    x0: rounded(toRpm(from)),
    x1: rounded(toRpm(to)),
    y0: 0,
    y1: 1,
    fillcolor: colour,
    opacity,
    line: { width: 0 },
  };
}

function upright(speed: number) {
  const x = rounded(toRpm(speed));
  const line = { color: "--muted", width: 1, dash: "dot" };
  return { type: "line", layer: "below", yref: "paper", x0: x, x1: x, y0: 0, y1: 1, line };
}

/** Numbers and frequencies at the right edge, leaving out those that would lie on each other. */
function modeLabels(
  modes: readonly { readonly number: number; readonly frequency: number }[],
  top: number,
) {
  let last = Number.NEGATIVE_INFINITY;
  return modes.flatMap((m) => {
    if (m.frequency - last < LABEL_GAP * top) return [];
    last = m.frequency;
    return [
      {
        x: 1,
        xref: "paper",
        xanchor: "left",
        xshift: 4,
        y: rounded(m.frequency),
        text: `${m.number}: ${three(m.frequency)}`,
        showarrow: false,
        font: { size: 12, color: "--muted" },
      },
    ];
  });
}

/** The name of an order along its line, where it leaves the chart. */
function orderLabel(l: OrderLine, fastest: number, top: number) {
  const x = 0.86 * Math.min(fastest, (60 * top) / l.order);
  return {
    x: rounded(x),
    y: rounded((l.order * x) / 60),
    text: perTurn(l.order),
    showarrow: false,
    xanchor: "right",
    xshift: -8,
    yanchor: "bottom",
    font: { size: 12, color: "--ink" },
    bgcolor: "--surface",
    borderpad: 2,
  };
}
