/** The axis of motor speed as the charts of speed share it: its marks, and where the flight is spent. */

import type { Excitation } from "../excitation/types.ts";
import { type Trace, WIDE_ONLY } from "./figure.ts";
import { plotText } from "./html.ts";
import { percent, rounded, toRpm } from "./numbers.ts";
import { steppedTicks } from "./ticks.ts";

/** The axis reaches past lowest and full speed by this factor, so that marks at its ends are whole. */
const BEYOND = 1.03;
/** Tick values, times a power of ten: about evenly spaced on a logarithmic axis. */
const SPEED_STEPS = [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8];
/** Where the strip that shows the flight stands, its words, and where the chart below them ends. */
const STRIP = [0.92, 1];
const WORDS = 0.89;
export const BELOW_STRIP = 0.86;
/** Points of the strip's outline. */
const OUTLINE = 75;
/** Names of parts of the flight longer than this are cut in the chart. */
const LONGEST = 22;
/** Shares of the axis that a sign of 12 pixels takes on a chart of usual width. */
const SIGN = 0.008;

/** Ends of the axis, rpm. */
export function speedRange({ speeds }: Pick<Excitation, "speeds">): readonly [number, number] {
  return [toRpm(speeds.low) / BEYOND, toRpm(speeds.full) * BEYOND];
}

/** Logarithmic, so that equal shares of speed are equally wide: lines of all orders run alike. */
export function speedAxis(e: Pick<Excitation, "speeds">) {
  const [low, high] = speedRange(e);
  return {
    title: { text: "motor speed, rpm", standoff: 8 },
    type: "log",
    range: [rounded(Math.log10(low), 6), rounded(Math.log10(high), 6)],
    ...steppedTicks(SPEED_STEPS, low, high),
  };
}

/** How much of the flight is spent around each speed, as a ridge on an axis of its own, "y2". */
export function flightTrace({ grid, nominalWeights, mix, mixName }: Excitation): Trace {
  const stride = Math.max(1, Math.floor(grid.length / OUTLINE));
  const kept = Array.from(grid.keys()).filter((i) => i % stride === 0 || i === grid.length - 1);
  // Against a logarithmic axis a share of the flight is an area when its density is per share of speed.
  const density = kept.map((i) => nominalWeights[i] * grid[i]);
  const most = Math.max(...density) || 1;
  const parts = mix.map((r) => `${percent(r.share, 2)} ${r.name}`).join(", ");
  return {
    type: "scatter",
    mode: "lines",
    x: kept.map((i) => rounded(toRpm(grid[i]))),
    y: density.map((d) => rounded(d / most, 2)),
    yaxis: "y2",
    fill: "tozeroy",
    fillcolor: "--accentSoft",
    line: { color: "--accent", width: 1.2 },
    name: plotText(`the flight, “${mixName}”: ${parts}`),
    hovertemplate: "%{fullData.name}<extra></extra>",
  };
}

/** The strip's axis. */
export const FLIGHT_AXIS = {
  domain: STRIP,
  range: [0, 1.05],
  visible: false,
  fixedrange: true,
};

/** Names of the flight's parts over the ridge, leaving out those that would lie on each other. */
export function flightLabels(e: Excitation) {
  const [low, high] = speedRange(e).map(Math.log10);
  let last = 0;
  return e.mix
    .toSorted((a, b) => a.speed - b.speed)
    .flatMap(({ name, speed, share }) => {
      const text = `${cut(name)} ${percent(share, 2)}`;
      const half = (SIGN * text.length) / 2;
      const at = (Math.log10(toRpm(speed)) - low) / (high - low);
      const centre = Math.min(1 - half, Math.max(half, at));
      if (centre - half < last) return [];
      last = centre + half;
      return [
        {
          name: WIDE_ONLY,
          x: rounded(centre),
          xref: "paper",
          y: WORDS,
          yref: "paper",
          text: plotText(text),
          showarrow: false,
          font: { color: "--muted", size: 12 },
        },
      ];
    });
}

/** Uprights at lowest, hover and full speed. */
export function speedLines({ speeds }: Pick<Excitation, "speeds">) {
  return [speeds.low, speeds.hover, speeds.full].map((speed) => {
    const x = rounded(toRpm(speed));
    const hover = speed === speeds.hover;
    const line = { color: hover ? "--ink" : "--muted", width: hover ? 1.4 : 1, dash: "dot" };
    return { type: "line", layer: "below", yref: "paper", x0: x, x1: x, y0: 0, y1: 1, line };
  });
}

/** Their names above the chart. */
export function speedNames({ speeds }: Pick<Excitation, "speeds">, hover = "hover") {
  const marks = [
    { speed: speeds.low, text: "lowest", xanchor: "left", wide: true },
    { speed: speeds.hover, text: hover, xanchor: "center", wide: false },
    { speed: speeds.full, text: "full", xanchor: "right", wide: false },
  ];
  return marks.map(({ speed, text, xanchor, wide }) => ({
    // "lowest" and "hover" may lie close together; the axis begins at the lowest speed anyway.
    ...(wide && { name: WIDE_ONLY }),
    // On a logarithmic axis notes stand at the logarithm.
    x: rounded(Math.log10(toRpm(speed)), 6),
    y: 1,
    yref: "paper",
    yanchor: "bottom",
    xanchor,
    text,
    showarrow: false,
    font: { color: "--muted", size: 12 },
  }));
}

function cut(name: string): string {
  const signs = Array.from(name);
  return signs.length > LONGEST ? `${signs.slice(0, LONGEST - 1).join("")}…` : name;
}
