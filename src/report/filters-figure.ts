/** The least delay of the filters as bars, place by place, without and with notches. */

import type { Burden } from "../filter/burden-types.ts";
import { type Figure, MARGIN, plainLayout, type Trace } from "./figure.ts";
import { chainWords, delayWords, isFree } from "./filters-words.ts";
import { plotText } from "./html.ts";
import { rounded } from "./numbers.ts";
import { labelled, placeText } from "./place-names.ts";
import { spectrumCurves } from "./spectra.ts";
import type { Analysed } from "./types.ts";

/** Names longer than this are cut beside the bars; the table has them whole. */
const LONGEST_NAME = 24;
/** Thickness of a bar, of the room for a place. */
const THICKNESS = 0.36;
/** Room for the figures at the ends of the bars, of the longest bar. */
const ROOM = 0.3;

/** One of the two ways to filter. */
export interface Way {
  readonly key: "without" | "with";
  readonly name: string;
  readonly colour: string;
  /** drawn hatched, so that the two differ without colour as well */
  readonly hatched: boolean;
}

export const WAYS: readonly Way[] = [
  { key: "without", name: "low-pass alone", colour: "--series0", hatched: false },
  { key: "with", name: "with notches", colour: "--series1", hatched: true },
];

/** undefined without a ranking. The places are those that have a spectrum. */
export function filtersFigure(analysed: Pick<Analysed, "ranking">): Figure | undefined {
  const { ranking } = analysed;
  if (!ranking) return undefined;
  const all = labelled(ranking.candidates);
  const shown = spectrumCurves(analysed).map((c) => all[c.index]);
  const names = shown.map((l) => plotText(cut(placeText(l))));
  const y = shown.map((_, i) => i);
  const delay = (b: Burden) => (b.attainable ? rounded(1e3 * b.delay, 3) : null);
  const traces = WAYS.map(({ key, name, colour, hatched }, k): Trace => {
    const burdens = shown.map(({ place }) => place.filter[key]);
    return {
      type: "bar",
      orientation: "h",
      name,
      // A bar of no length carries the words where there is no delay.
      x: burdens.map((b) => delay(b) ?? 0),
      y,
      width: THICKNESS,
      offset: (k - 1) * THICKNESS,
      marker: {
        color: colour,
        ...(hatched && {
          pattern: { shape: "/", bgcolor: colour, fgcolor: "--surface", size: 9, solidity: 0.25 },
        }),
      },
      text: burdens.map((b) => (b.attainable && !isFree(b) ? delayWords(b) : ` ${delayWords(b)}`)),
      textposition: "outside",
      cliponaxis: false,
      customdata: burdens.map((b, i) =>
        plotText(`${placeText(shown[i])}, ${name}: ${chainWords(b)}`),
      ),
      hovertemplate: "%{customdata}<extra></extra>",
    };
  });
  const longest = Math.max(0.01, ...traces.flatMap((t) => t.x?.map((v) => v ?? 0) ?? []));
  const axis = { tickmode: "array", tickvals: y, range: [shown.length - 0.4, -0.6], ticklen: 0 };
  const layout = plainLayout(
    {
      title: {
        text: `delay at ${rounded(ranking.controlBandwidth, 3)} Hz in hover, ms`,
        standoff: 8,
      },
      range: [0, rounded((1 + ROOM) * longest, 3)],
      nticks: 6,
    },
    { ...axis, ticktext: names, showgrid: false, fixedrange: true },
    {
      margin: { ...MARGIN, t: 12 },
      hovermode: "closest",
      barmode: "overlay",
    },
  );
  const narrowAxis = { ticktext: shown.map(({ label }) => label) };
  return { traces, layout, narrowAxis };
}

function cut(name: string): string {
  const signs = Array.from(name);
  return signs.length > LONGEST_NAME ? `${signs.slice(0, LONGEST_NAME - 1).join("")}…` : name;
}
