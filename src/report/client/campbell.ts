/** The interference diagram. Runs in the page: functions get from outside only what they are handed. */

import type { CampbellData } from "../campbell.ts";
import type { Trace } from "../figure.ts";
import type { DrawingTools, drawFigure, Fitting } from "./charts.ts";
import type { Host, PageData } from "./types.ts";

/** Points along the lines of modes, invisible, so that a line can be pointed at anywhere. */
export function modePoints({ modes, rpm }: CampbellData): Trace {
  const count = 36;
  const along = Array.from(
    { length: count },
    (_, k) => rpm[0] * (rpm[1] / rpm[0]) ** (k / (count - 1)),
  );
  return {
    type: "scatter",
    mode: "markers",
    x: modes.flatMap(() => along),
    y: modes.flatMap((m) => along.map(() => m.frequency)),
    text: modes.flatMap((m) => along.map(() => m.words)),
    customdata: modes.flatMap((m) => along.map(() => m.number)),
    marker: { size: 8, opacity: 0 },
    hovertemplate: "%{text}<extra></extra>",
  };
}

/** Corners of the bands of some modes, null between two. */
export function modeBands(
  { modes, rpm, band }: CampbellData,
  numbers: readonly number[],
): { x: (number | null)[]; y: (number | null)[] } {
  const chosen = modes.filter((m) => numbers.includes(m.number));
  const ends = (m: { readonly frequency: number }) => [
    (1 - band) * m.frequency,
    (1 + band) * m.frequency,
  ];
  return {
    x: chosen.flatMap(() => [rpm[0], rpm[1], rpm[1], rpm[0], rpm[0], null]),
    y: chosen.flatMap((m) => {
      const [low, high] = ends(m);
      return [low, low, high, high, low, null];
    }),
  };
}

interface CampbellTools extends DrawingTools {
  readonly drawFigure: typeof drawFigure;
  readonly modeBands: typeof modeBands;
  readonly modePoints: typeof modePoints;
}

/** Draws the diagram and connects it to the picture of the modes. */
export function startCampbell(
  data: PageData,
  campbell: CampbellData,
  tools: CampbellTools,
  host: Host,
  fitting: Fitting,
): void {
  let chosen = data.shapes?.first ?? 0;
  let pointed = 0;
  let connected = false;
  let scrolled = false;
  const focus = (): Trace => ({
    type: "scatter",
    mode: "lines",
    ...tools.modeBands(campbell, [chosen, pointed]),
    fill: "toself",
    fillcolor: "--sunken",
    line: { color: "--ink", width: 1.2 },
    hoverinfo: "skip",
  });
  const place = host.place("campbell-chart", async (at, c) => {
    const traces = [focus(), ...campbell.figure.traces, tools.modePoints(campbell)];
    await tools.drawFigure(at, { ...campbell.figure, traces }, c, tools, fitting);
    if (connected) return;
    connected = true;
    // A finger that scrolls the page over the diagram chooses nothing.
    at.addEventListener("pointerdown", () => {
      scrolled = false;
    });
    at.addEventListener("pointercancel", () => {
      scrolled = true;
    });
    const point = (mode: number) => {
      if (mode === pointed) return;
      pointed = mode;
      const { x, y } = tools.modeBands(campbell, [chosen, pointed]);
      c.Plotly.update(at, { x: [x], y: [y] }, {}, [0]);
    };
    at.on?.("plotly_hover", ({ points }) => point(Number(points?.[0]?.customdata ?? 0)));
    at.on?.("plotly_unhover", () => point(0));
    at.on?.("plotly_click", ({ points }) => {
      const mode = Number(points?.[0]?.customdata ?? 0);
      if (mode > 0 && !scrolled) host.chooseMode(mode, true);
    });
  });
  host.onMode((mode) => {
    if (mode === chosen) return;
    chosen = mode;
    place.redraw();
  });
}
