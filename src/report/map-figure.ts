/** A plate from above with a square for every place of the map. */

import { bounds } from "../model/polygon.ts";
import type { PlatePart } from "../model/types.ts";
import type { MapPlace, RankedCandidate } from "../ranking/types.ts";
import { type Extent, extentOf, extentWith, fromAbove, type Point } from "./drawing.ts";
import { type Figure, plainLayout } from "./figure.ts";
import { across, avoided, cgCross, dots, fine, squares, star } from "./map-marks.ts";
import { bestOfMap } from "./map-quantities.ts";
import { calloutPlaces, MOST_NUMBERS, standing } from "./markers.ts";
import { type Labelled, labelled } from "./place-names.ts";
import type { Analysed } from "./types.ts";

/** Pixels around a plan, fixed, so that its scale is known. */
const AROUND = { l: 52, r: 10, t: 10, b: 52 };
/** Radius of a callout, of the larger side of the plan. */
const CALLOUT = 1 / 26;

/** Room for every plate that has places and the callouts beside it, so that all have one scale. */
export function commonExtent(plates: readonly PlatePart[]): { frame: Extent; r: number } {
  const corners = plates.flatMap(({ outline }) => {
    const [x0, y0, x1, y1] = bounds(outline);
    return [fromAbove(x0, y0, 0), fromAbove(x1, y1, 0)];
  });
  const around = extentOf(corners);
  const size = Math.max(around.x1 - around.x0, around.y1 - around.y0);
  return { frame: extentOf(corners, 0.03 * size), r: size * CALLOUT };
}

export function plateFigure(
  { ranking, mass }: Analysed,
  plate: PlatePart,
  places: readonly MapPlace[],
  { frame, r }: { readonly frame: Extent; readonly r: number },
): Figure {
  const all = ranking?.candidates ?? [];
  // A single place needs no star.
  const best = ranking && ranking.map.places.length > 1 ? bestOfMap(ranking.map) : undefined;
  const marked = labelled(all).filter(({ place }) => place.plate === plate.name);
  const points = marked.map(({ place: { candidate: c } }) => fromAbove(c.x, c.y, 0));
  const lines = {
    axis: 0,
    at: [frame.x1 + 1.6 * r, frame.x0 - 1.6 * r],
    limits: [frame.y0 + r, frame.y1 - r],
  } as const;
  const extent = extentWith(
    frame,
    [
      [lines.at[0], 0],
      [lines.at[1], 0],
    ],
    1.9 * r,
  );
  const numbered = marked.filter(({ place }) => all.indexOf(place) < MOST_NUMBERS);
  const callouts = calloutPlaces(points.slice(0, numbered.length), lines, r);
  const axis = {
    fixedrange: true,
    constrain: "domain",
    automargin: false,
    nticks: 5,
    showgrid: false,
  };
  const layout = plainLayout(
    // Left is positive, as in the frame file, and to the left.
    { ...axis, title: { text: "y, mm", standoff: 6 }, range: [-extent.x0, -extent.x1].map(fine) },
    {
      ...axis,
      title: { text: "x, mm", standoff: 4 },
      range: [-frame.y1, -frame.y0].map(fine),
      scaleanchor: "x",
    },
    {
      margin: AROUND,
      hovermode: "closest",
      // Small, for a map is narrow.
      hoverlabel: {
        bgcolor: "--surface",
        bordercolor: "--muted",
        font: { color: "--ink", size: 11 },
        align: "left",
        namelength: -1,
      },
      dragmode: false,
      shapes: [{ type: "path", layer: "below", path: outlinePath(plate), ...OUTLINE }],
      annotations: numbered.map((l, i) => callout(l, points[i], callouts[i], all)),
    },
  );
  return {
    traces: [
      squares(places),
      ...avoided(places),
      cgCross(mass.cg[0], mass.cg[1]),
      ...star(best, plate.name),
      dots(marked, all),
    ],
    layout,
  };
}

const OUTLINE = {
  fillrule: "evenodd",
  fillcolor: "--sunken",
  line: { color: "--ink", width: 1.3 },
};

/** Outline and holes in millimetres: y to the left, x up. */
function outlinePath({ outline, holes }: PlatePart): string {
  return [outline, ...holes]
    .filter((p) => p.length >= 6)
    .map((p) => {
      const corners = Array.from(
        { length: p.length / 2 },
        (_, i) => `${across(p[2 * i + 1])},${across(p[2 * i])}`,
      );
      return `M${corners.join("L")}Z`;
    })
    .join("");
}

const CALLOUT_COLOURS = {
  best: { bgcolor: "--accent", bordercolor: "--accent", font: { color: "--onAccent" } },
  fine: { bgcolor: "--surface", bordercolor: "--ink", font: { color: "--ink" } },
  avoid: { bgcolor: "--cautionSoft", bordercolor: "--caution", font: { color: "--caution" } },
} as const;

/** The number of a place, with a leader to it. */
function callout(
  { label, place }: Labelled,
  [u, v]: Point,
  [atU, atV]: Point,
  all: readonly RankedCandidate[],
) {
  const kind = standing(place, all.indexOf(place));
  return {
    x: fine(-u),
    y: fine(-v),
    ax: fine(-atU),
    ay: fine(-atV),
    axref: "x",
    ayref: "y",
    text: kind === "fine" ? label : `${label}<br>${kind}`,
    showarrow: true,
    arrowhead: 0,
    arrowwidth: 1.6,
    arrowcolor: "--ink",
    borderpad: 3,
    borderwidth: 1.5,
    ...CALLOUT_COLOURS[kind],
  };
}
