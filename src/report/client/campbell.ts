/** The interference diagram. Runs in the page: functions get from outside only what they are handed. */

import type { CampbellData } from "../campbell.ts";
import type { Trace } from "../figure.ts";
import type { Fitting } from "./figures.ts";
import type { Tools } from "./tools.ts";
import type { Host, PageData } from "./types.ts";

/** Draws the diagram and connects it to the picture of the modes. */
export function startCampbell(
  data: PageData,
  campbell: CampbellData,
  tools: Tools,
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
