/** Places the stack could sit: those the file names, or else every place where its pattern fits. */

import { notPositive, throwIfAny } from "../check-number.ts";
import type { FrameFile } from "../frame/types.ts";
import { candidateAt } from "../model/equipment.ts";
import { borderDistance, bounds, contains, type Polygon } from "../model/polygon.ts";
import type { Candidate, Model, PlatePart } from "../model/types.ts";
import { hasRoom } from "./room.ts";

/** Distance between neighbouring places to begin with, m. */
const PITCH = 8e-3;

/** The candidates that the file names, and the place where it puts the stack if it is not among them. */
export function namedCandidates(file: FrameFile, model: Model): Candidate[] {
  const named = [...model.candidates];
  const { stack } = file;
  if (!stack || named.some((c) => c.designed)) return named;
  const def = { ...stack, note: "" };
  return [candidateAt({ plates: model.plates, file }, "as designed", def, true), ...named];
}

/** Places all over the plates, and how far apart they are, m. */
export interface FoundPlaces {
  readonly pitch: number;
  readonly places: readonly Candidate[];
}

/**
 * Every place where the stack fits, on a regular pattern.
 *
 * @param most of them; the pattern is widened until they are fewer
 * @param pitch to begin with, m
 * @throws InputError for a pitch that is not above zero
 */
export function findPlaces(
  file: FrameFile,
  model: Model,
  most: number,
  pitch = PITCH,
): FoundPlaces {
  throwIfAny(notPositive("map.pitch", "the distance between places", pitch, "m"));
  let found = everyPlace(file, model, pitch);
  let wide = pitch;
  while (found.length > most) {
    const fewer = everyPlace(file, model, 1.25 * wide);
    // On very many plates even one place each is too many: take every so-manieth of them.
    const alike = fewer.length === found.length && found.length <= model.plates.length;
    if (alike || fewer.length === 0) {
      return { pitch: wide, places: thinned(found, most) };
    }
    wide *= 1.25;
    found = fewer;
  }
  return { pitch: wide, places: found };
}

/** So many of the places, evenly in their order; not more than there are. */
export function thinned<P>(places: readonly P[], most: number): readonly P[] {
  if (places.length <= most) return places;
  const step = places.length / most;
  return Array.from({ length: most }, (_, i) => places[Math.floor(i * step)]);
}

/** The place at x, y on a plate, above it where there is room, else below; undefined where the stack does not fit. */
export function placeAt(
  file: FrameFile,
  model: Model,
  plate: PlatePart,
  x: number,
  y: number,
): Candidate | undefined {
  const side = (["above", "below"] as const).find((s) => hasRoom(file, model, plate, x, y, s));
  if (!side) return undefined;
  const at = `${plate.name} (${Math.round(x * 1e3)}, ${Math.round(y * 1e3)})`;
  const name = side === "above" ? at : `under ${at}`;
  const def = { plate: plate.name, at: [x, y] as const, side, note: "" };
  const place = candidateAt({ plates: model.plates, file }, name, def, false);
  return patternFits(plate, place) ? place : undefined;
}

/**
 * A regular pattern of places on every plate, symmetric about the middle of the plate: above it where
 * there is room for the stack, else below it where there is.
 */
function everyPlace(file: FrameFile, model: Model, pitch: number): Candidate[] {
  return model.plates.flatMap((plate) => {
    const [x0, y0, x1, y1] = bounds(plate.outline);
    const places: Candidate[] = [];
    for (const x of spread(x0, x1, pitch)) {
      for (const y of spread(y0, y1, pitch)) {
        const place = placeAt(file, model, plate, x, y);
        if (place) places.push(place);
      }
    }
    return places;
  });
}

function spread(from: number, to: number, pitch: number): number[] {
  const middle = (from + to) / 2;
  const n = Math.floor((to - from) / 2 / pitch);
  return Array.from({ length: 2 * n + 1 }, (_, i) => middle + (i - n) * pitch);
}

/**
 * Every screw head lies wholly on material: inside the outline, and clear of cut-outs. A round hole
 * under the head's middle that is smaller than the head is the screw's own.
 */
export function patternFits(plate: PlatePart, place: Candidate): boolean {
  const margin = place.footprint / 2 - 1e-9;
  return place.holes.every(([x, y]) => {
    const inside = contains(plate.outline, x, y) && borderDistance(plate.outline, x, y) >= margin;
    return inside && plate.holes.every((h) => isOwnHole(h, place) || clearOf(h, x, y, margin));
  });
}

function clearOf(hole: Polygon, x: number, y: number, margin: number): boolean {
  return !contains(hole, x, y) && borderDistance(hole, x, y) >= margin;
}

/** Whether a cut-out is smaller than a screw head and lies under the middle of one. */
function isOwnHole(hole: Polygon, { holes, footprint }: Candidate): boolean {
  const [x0, y0, x1, y1] = bounds(hole);
  if (Math.max(x1 - x0, y1 - y0) >= footprint) return false;
  const [cx, cy] = [(x0 + x1) / 2, (y0 + y1) / 2];
  return holes.some(([x, y]) => Math.hypot(x - cx, y - cy) < footprint / 4);
}
