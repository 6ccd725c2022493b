/** The rest of the plates: places where the stack as it is cannot sit, so that a map covers them too. */

import type { FrameFile } from "../frame/types.ts";
import { candidateAt } from "../model/equipment.ts";
import { bounds, type Polygon } from "../model/polygon.ts";
import type { Candidate, Model, PlatePart } from "../model/types.ts";
import { namedCandidates, patternFits, thinned } from "./candidates.ts";
import { cellsBetween } from "./cells.ts";
import { hasRoom, inTheWay } from "./room.ts";

/**
 * Sizes of the screw pattern, heads and all, that are tried until one fits, as shares of its own. A fifth of
 * the usual patterns is about as wide as one screw head: less says nothing about a board.
 */
const SHARES = [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2];
/** The least widening at a time. */
const WIDER = 1.05;
/** Cells whose middle is nearer to a known place than this share of their width are left out. */
const NEAR = 0.55;

/** Why a place is not one for the stack as it is; both absent where it is one after all. */
export interface Hindrance {
  /** what the stack's box would cut, in words; absent where it has room */
  readonly inTheWay?: string;
  /** the screw pattern on which it is read there, as a share of its own; absent where that fits */
  readonly patternShare?: number;
}

export interface OtherPlace extends Hindrance {
  readonly candidate: Candidate;
}

/**
 * The middles of about even cells all over every plate, without those near a place that is known already.
 * Where the pattern of the screws does not fit it is drawn together about the place until it does; where
 * even a fifth of it does not, there is no place. Mass, height and kind of mounts are those of the stack.
 *
 * @param taken places known already
 * @param most of them; cells are widened until they are no more, and where the shape of a plate keeps them more
 *   however wide the cells are (a row in every tooth of a comb), so many of them are taken evenly
 * @param pitch width of cells to begin with, m
 */
export function otherPlaces(
  file: FrameFile,
  model: Model,
  taken: readonly Candidate[],
  most: number,
  pitch: number,
): readonly OtherPlace[] {
  const within = (width: number) =>
    model.plates.flatMap((plate, p) => {
      const here = taken.filter((t) => t.plate === p);
      const isFree = (x: number, y: number, high: number) =>
        !here.some((t) => Math.abs(t.x - x) < NEAR * width && Math.abs(t.y - y) < NEAR * high);
      return rows(plate, width).flatMap((row) => placesIn(file, model, plate, row, width, isFree));
    });
  const widest = Math.max(...model.plates.map(extent));
  let wide = pitch;
  let found = within(wide);
  // Cells wider than every plate are whole rows: wider ones are no fewer.
  while (found.length > most && wide <= widest) {
    wide *= Math.max(WIDER, Math.sqrt(found.length / most));
    found = within(wide);
  }
  const own = namedCandidates(file, model);
  return thinned(found, most).map((spot) =>
    withRoom(file, model, spot, sideOf(own, taken, spot.plate, model)),
  );
}

function extent({ outline }: PlatePart): number {
  const [x0, y0, x1, y1] = bounds(outline);
  return Math.max(x1 - x0, y1 - y0);
}

type Side = "above" | "below";

/** A place in the plan, and how much of the pattern fits. */
interface Spot {
  readonly plate: PlatePart;
  readonly x: number;
  readonly y: number;
  readonly share: number;
}

/** A line across a plate, from one edge to another. */
interface Row {
  readonly x: number;
  readonly from: number;
  readonly to: number;
}

/** From rear to front. */
function rows({ outline }: PlatePart, width: number): Row[] {
  const [x0, , x1] = bounds(outline);
  return cellsBetween(x0, x1, width).middles.flatMap((x) =>
    spansAt(outline, x).map(([from, to]) => ({ x, from, to })),
  );
}

/** Each row shares out what is wide there, so that narrow ends have places too: one in the middle at least. */
function placesIn(
  file: FrameFile,
  model: Model,
  plate: PlatePart,
  { x, from, to }: Row,
  width: number,
  isFree: (x: number, y: number, high: number) => boolean,
): Spot[] {
  const ys = cellsBetween(from, to, width);
  const free = ys.middles.filter((y) => isFree(x, y, ys.each));
  const found = free.flatMap((y) => fitted(file, model, plate, x, y));
  if (found.length > 0 || free.length < ys.middles.length) return found;
  return fitted(file, model, plate, x, (from + to) / 2);
}

/** From where to where a line across meets the inside of an outline: pairs of y. */
function spansAt(outline: Polygon, x: number): [number, number][] {
  const met: number[] = [];
  for (let i = 0, j = outline.length - 2; i < outline.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [outline[j], outline[j + 1], outline[i], outline[i + 1]];
    if (ax > x !== bx > x) met.push(ay + ((x - ax) / (bx - ax)) * (by - ay));
  }
  met.sort((a, b) => a - b);
  return Array.from({ length: met.length / 2 }, (_, k) => [met[2 * k], met[2 * k + 1]]);
}

function at(file: FrameFile, model: Model, spot: Spot, side: Side): Candidate {
  const { plate, x, y, share } = spot;
  const def = { plate: plate.name, at: [x, y] as const, side, note: "" };
  return drawnTogether(candidateAt({ plates: model.plates, file }, "", def, false), share);
}

function drawnTogether(place: Candidate, share: number): Candidate {
  const { x, y, holes, footprint } = place;
  return {
    ...place,
    holes: holes.map(([u, v]) => [x + share * (u - x), y + share * (v - y)]),
    footprint: share * footprint,
  };
}

function fitted(file: FrameFile, model: Model, plate: PlatePart, x: number, y: number): Spot[] {
  const whole = at(file, model, { plate, x, y, share: 1 }, "above");
  const share = SHARES.find((s) => patternFits(plate, drawnTogether(whole, s)));
  return share === undefined ? [] : [{ plate, x, y, share }];
}

/** On one side of the plate wherever it is taken: the two sides of a lively plate can read three times apart. */
function withRoom(file: FrameFile, model: Model, spot: Spot, side: Side): OtherPlace {
  const { plate, x, y, share } = spot;
  const way = inTheWay(file, model, plate, x, y, side);
  const other = side === "above" ? "below" : "above";
  if (way !== undefined && share === 1 && hasRoom(file, model, plate, x, y, other)) {
    return { candidate: at(file, model, spot, other) };
  }
  return {
    candidate: at(file, model, spot, side),
    ...(way !== undefined && { inTheWay: way }),
    ...(share < 1 && { patternShare: share }),
  };
}

/** Where the file's own places on the plate are, else those known already; above where there are none. */
function sideOf(
  own: readonly Candidate[],
  taken: readonly Candidate[],
  plate: PlatePart,
  model: Model,
): Side {
  const first = [...own, ...taken].find((c) => model.plates[c.plate] === plate);
  return first && first.side < 0 ? "below" : "above";
}
