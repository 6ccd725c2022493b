/** What is marked on the map of a plate; coordinates in millimetres, y to the left and x up. */

import { canSit, type MapPlace, type RankedCandidate } from "../ranking/types.ts";
import type { Trace } from "./figure.ts";
import { plotText } from "./html.ts";
import { hindranceWords, spotWords } from "./map-quantities.ts";
import { standing } from "./markers.ts";
import { rounded } from "./numbers.ts";
import { type Labelled, placeText, sideWord } from "./place-names.ts";

const HOVER =
  "%{text}<br>gyro noise %{customdata[0]} deg/s rms<br>acceleration %{customdata[1]} g rms<br>filter delay %{customdata[2]} ms, with notches %{customdata[4]} ms<br>false tilt %{customdata[3]} degrees<extra></extra>";

export const fine = (v: number) => rounded(v, 4);
export const across = (y: number) => fine(1e3 * y);

function figuresOf(gyro: number, accel: number, without: number, tilt: number, notched: number) {
  const shown = [gyro, accel, 1e3 * without, (tilt * 180) / Math.PI, 1e3 * notched];
  return shown.map((v) => rounded(v, 3));
}

/** Colour and size come from the page's script. */
export function squares(places: readonly MapPlace[]): Trace {
  return {
    type: "scatter",
    mode: "markers",
    x: places.map((p) => across(p.y)),
    y: places.map((p) => across(p.x)),
    text: places.map((p) => {
      const notes = [
        sideWord(p) === "on" ? "on the plate" : "under the plate",
        ...hindranceWords(p),
        ...(p.avoid ? ["to be avoided"] : []),
        ...(p.attainable ? [] : ["no low-pass alone is enough"]),
      ];
      // One line each: maps are narrow.
      return [`${spotWords(p)}, ${notes[0]}`, ...notes.slice(1)].map(plotText).join("<br>");
    }),
    customdata: places.map((p) => figuresOf(p.gyro, p.accel, p.delayWithout, p.tilt, p.delayWith)),
    hovertemplate: HOVER,
    marker: {
      symbol: "square",
      line: {
        color: places.map((p) => (canSit(p) ? "--ink" : "--muted")),
        width: places.map((p) => (canSit(p) ? 2 : 0.5)),
      },
      opacity: 1,
    },
  };
}

export function avoided(places: readonly MapPlace[]): Trace[] {
  const bad = places.filter((p) => p.avoid);
  if (bad.length === 0) return [];
  return [
    mark(
      bad.map((p) => [p.x, p.y] as const),
      {
        symbol: "x-thin",
        size: 9,
        line: { color: "--caution", width: 2.5 },
      },
    ),
  ];
}

export function cgCross(x: number, y: number): Trace {
  const marker = {
    symbol: "circle-cross",
    size: 13,
    color: "--surface",
    line: { color: "--ink", width: 1.5 },
  };
  const { hoverinfo: _, ...cross } = mark([[x, y]], marker);
  return { ...cross, hovertemplate: "centre of gravity<extra></extra>" };
}

export function star(best: MapPlace | undefined, plate: string): Trace[] {
  if (best?.plate !== plate) return [];
  const marker = {
    symbol: "star",
    size: 19,
    color: "--surface",
    line: { color: "--ink", width: 1.5 },
  };
  return [mark([[best.x, best.y]], marker)];
}

/** A mark that leaves the label to what lies under it. */
function mark(
  at: readonly (readonly [number, number])[],
  marker: Readonly<Record<string, unknown>>,
): Trace {
  return {
    type: "scatter",
    mode: "markers",
    x: at.map(([, y]) => across(y)),
    y: at.map(([x]) => across(x)),
    hoverinfo: "skip",
    marker,
  };
}

const DOT_COLOURS = { best: "--accent", fine: "--ink", avoid: "--caution" } as const;

/** The places of the ranking, exactly where they are. */
export function dots(marked: readonly Labelled[], all: readonly RankedCandidate[]): Trace {
  const kinds = marked.map(({ place }) => standing(place, all.indexOf(place)));
  return {
    type: "scatter",
    mode: "markers",
    x: marked.map(({ place }) => across(place.candidate.y)),
    y: marked.map(({ place }) => across(place.candidate.x)),
    text: marked.map((l) => plotText(`${placeText(l)}, ${sideWord(l.place.candidate)} the plate`)),
    customdata: marked.map(({ place: { sensed, filter, leverArm } }) =>
      figuresOf(
        sensed.gyro,
        sensed.accel,
        filter.without.delay,
        leverArm.reading.tilt,
        filter.with.delay,
      ),
    ),
    hovertemplate: HOVER,
    marker: {
      symbol: kinds.map((k) => (k === "avoid" ? "diamond" : "circle")),
      size: 10,
      color: kinds.map((k) => DOT_COLOURS[k]),
      line: { color: "--surface", width: 2 },
    },
  };
}
