/** Figures of the levels at a place. Runs in the page: functions get from outside only what they are handed. */

import type { Figure, Trace } from "../figure.ts";
import type { SpectraData } from "../spectra-data.ts";
import type { labelPlaces, powersFrom, SweptOrders, spreadLevels, sweepDensity } from "./sweep.ts";

/** What the figures are computed with. */
export interface LevelTools {
  readonly unpackUnit: (text: string) => Float64Array;
  readonly powersFrom: typeof powersFrom;
  readonly spreadLevels: typeof spreadLevels;
  readonly sweepDensity: typeof sweepDensity;
  readonly labelPlaces: typeof labelPlaces;
  readonly sweptOrders: typeof sweptOrders;
  readonly labelledLines: typeof labelledLines;
}

/** The lines at a place, unpacked. */
export function sweptOrders(
  data: SpectraData,
  quantity: "gyro" | "accel",
  place: number,
  tools: Pick<LevelTools, "unpackUnit" | "powersFrom">,
): SweptOrders {
  const { top, powers } = data[quantity];
  return {
    rpm: data.rpm,
    multiples: data.orders.map((o) => o.multiple),
    powers: powers[place].map((text) => tools.powersFrom(tools.unpackUnit(text), top)),
    spread: data.spread,
  };
}

/** One line to be drawn, with its label. */
export interface LevelLine {
  /** mean squares at the speeds (size s) */
  readonly power: Float64Array;
  readonly name: string;
  readonly label: string;
  readonly colour: string;
  readonly dash: string;
  readonly width: number;
}

/** Lines of rms against speed, each with its label at the right end. @param height of the chart, in pixels of text as large as usual */
export function labelledLines(
  data: SpectraData,
  quantity: "gyro" | "accel",
  lines: readonly LevelLine[],
  height: number,
  { labelPlaces }: Pick<LevelTools, "labelPlaces">,
  over: { readonly yaxis?: object; readonly margin?: object } = {},
): Figure {
  const { layout } = data;
  const { unit, yaxis } = data[quantity];
  const axis = { ...(layout.yaxis as object), ...yaxis, ...over.yaxis };
  const margin = { ...(layout.margin as object), ...over.margin };
  const { range } = axis as unknown as { readonly range: readonly [number, number] };
  const [low, high] = data.rpm;
  const count = lines[0]?.power.length ?? 0;
  const x = Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));
  const traces = lines.map(
    (l): Trace => ({
      type: "scatter",
      mode: "lines",
      x,
      // A logarithmic axis has no place for zero.
      y: Array.from(l.power, (p) => (p > 0 ? Math.sqrt(p) : null)),
      name: l.name,
      line: { color: l.colour, width: l.width, dash: l.dash },
      // Names stay out of the template, which has signs of its own.
      hovertemplate: `%{fullData.name}: %{y:.3~g} ${unit} at %{x:,.3~r} rpm<extra></extra>`,
    }),
  );
  const ends = lines.map((l) => {
    const last = l.power.reduce((kept, p) => (p > 0 ? p : kept), 0);
    return Math.min(range[1], Math.max(range[0], last > 0 ? Math.log10(last) / 2 : range[0]));
  });
  const gap = (17 * (range[1] - range[0])) / Math.max(100, 0.88 * (height - 96));
  const places = labelPlaces(ends, gap, range[0], range[1]);
  const annotations = lines.map((l, i) => ({
    x: 1,
    xref: "paper",
    xanchor: "left",
    xshift: 5,
    y: places[i],
    text: l.label,
    showarrow: false,
    font: { size: 12, color: l.colour },
  }));
  const notes = layout.annotations as readonly unknown[];
  return {
    traces: [...traces, data.flight],
    layout: { ...layout, margin, yaxis: axis, annotations: [...notes, ...annotations] },
  };
}

/** The total and every order at one place. */
export function placeFigure(
  data: SpectraData,
  quantity: "gyro" | "accel",
  place: number,
  height: number,
  tools: LevelTools,
): Figure {
  const { rpm, powers, spread } = tools.sweptOrders(data, quantity, place, tools);
  const levels = powers.map((p) => tools.spreadLevels(rpm, p, spread));
  const sum = (levels[0] ?? new Float64Array(0)).map((_, s) =>
    levels.reduce((t, p) => t + p[s], 0),
  );
  const { name } = data.places[place];
  const orders = data.orders.map((o, k) => ({
    power: levels[k],
    name: `${name}, ${o.name}`,
    label: o.name,
    colour: o.colour,
    dash: o.dash,
    width: 2,
  }));
  const total = {
    power: sum,
    name: `${name}, all together`,
    label: "all together",
    colour: "--ink",
    dash: "solid",
    width: 3.5,
  };
  // The orders lie over the total, which they follow where they make most of it.
  return tools.labelledLines(data, quantity, [total, ...orders], height, tools);
}

/** The totals of all places that are to be seen. */
export function allPlacesFigure(
  data: SpectraData,
  quantity: "gyro" | "accel",
  seen: readonly boolean[],
  height: number,
  tools: LevelTools,
): Figure {
  const lines = data.places.flatMap((p, i): LevelLine[] => {
    if (!seen[i]) return [];
    const { rpm, powers, spread } = tools.sweptOrders(data, quantity, i, tools);
    const sum = (powers[0] ?? new Float64Array(0)).map((_, s) =>
      powers.reduce((t, o) => t + o[s], 0),
    );
    const power = tools.spreadLevels(rpm, sum, spread);
    return [{ ...p, power, width: i === 0 ? 3.5 : 2 }];
  });
  // The totals alone need less of the axis, and short labels less of the margin.
  const over = { yaxis: data[quantity].together, margin: { r: 48 } };
  return tools.labelledLines(data, quantity, lines, height, tools, over);
}

/** The map of speed and frequency: what a slow sweep of the throttle would leave in a recording. */
export function sweepFigure(
  data: SpectraData,
  quantity: "gyro" | "accel",
  place: number,
  scheme: "light" | "dark",
  height: number,
  tools: LevelTools,
): Figure {
  const { mapTop, densityUnit } = data[quantity];
  const between = (low: number, high: number, count: number) =>
    Array.from({ length: count }, (_, k) => low * (high / low) ** (k / (count - 1)));
  const x = between(data.rpm[0], data.rpm[1], 220);
  const y = between(data.frequencies[0], data.frequencies[1], 300);
  const floor = mapTop - data.mapDepth;
  const z = tools
    .sweepDensity(tools.sweptOrders(data, quantity, place, tools), x, y)
    .map((row) => Array.from(row, (d) => Math.max(floor, 10 * Math.log10(d + 1e-30))));
  const heat = {
    type: "heatmap",
    x,
    y,
    z,
    zmin: floor,
    zmax: mapTop,
    zsmooth: "best",
    colorscale: data.scales[scheme],
    name: data.places[place].name,
    hovertemplate: `%{fullData.name}: %{z:.0f} ${densityUnit} at %{y:,.3~r} Hz and %{x:,.3~r} rpm<extra></extra>`,
    colorbar: {
      orientation: "h",
      x: 0,
      xanchor: "left",
      xpad: 0,
      // Below the axis' title, whatever the chart's height; the margins are 34 and 112 pixels.
      y: -56 / Math.max(100, height - 146),
      yanchor: "top",
      ypad: 0,
      thickness: 10,
      len: 1,
      outlinewidth: 0,
      title: { text: densityUnit, side: "bottom" },
    },
  };
  return { traces: [heat as unknown as Trace], layout: data.map };
}
