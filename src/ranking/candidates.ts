/** Places the stack could sit: those the file names, or else every place where its pattern fits. */

import type { FrameFile } from "../frame/types.ts";
import { candidateAt } from "../model/equipment.ts";
import { borderDistance, bounds, contains, type Polygon } from "../model/polygon.ts";
import type { Candidate, Model, PlatePart } from "../model/types.ts";

/** Most places looked at when the file names none. */
const MOST = 60;
/** Distance between neighbouring places to begin with, m. */
const PITCH = 8e-3;

/** The candidates, and the place where the file puts the stack if it is not among them. */
export function candidatesOf(file: FrameFile, model: Model): Candidate[] {
  const found = model.candidates.length > 0 ? [...model.candidates] : everyFit(file, model);
  const { stack } = file;
  if (!stack || found.some((c) => c.designed)) return found;
  return [
    candidateAt({ plates: model.plates, file }, "as designed", { ...stack, note: "" }, true),
    ...found,
  ];
}

function everyFit(file: FrameFile, model: Model): Candidate[] {
  let found = everyPlace(file, model, PITCH);
  for (let pitch = PITCH; found.length > MOST; ) {
    pitch *= 1.25;
    found = everyPlace(file, model, pitch);
  }
  return found;
}

/** A regular pattern of places on every plate, symmetric about the middle of the plate. */
function everyPlace(file: FrameFile, model: Model, pitch: number): Candidate[] {
  return model.plates.flatMap((plate) => {
    const [x0, y0, x1, y1] = bounds(plate.outline);
    const places: Candidate[] = [];
    for (const x of spread(x0, x1, pitch)) {
      for (const y of spread(y0, y1, pitch)) {
        const name = `${plate.name} ${Math.round(x * 1e3)}, ${Math.round(y * 1e3)}`;
        const def = { plate: plate.name, at: [x, y] as const, side: "above" as const, note: "" };
        const place = candidateAt({ plates: model.plates, file }, name, def, false);
        if (patternFits(plate, place)) places.push(place);
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
