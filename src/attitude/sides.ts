/** The eight sides of a craft seen from above, and how people speak of them. */

/** Anticlockwise from above, an eighth of a turn each. */
const SIDES = [
  "front",
  "front left",
  "left",
  "rear left",
  "rear",
  "rear right",
  "right",
  "front right",
] as const;

export type Side = (typeof SIDES)[number];

/** Which side of the craft is low; "level" where none is. */
export type LowSide = "level" | Side;

/** The side that (x, y) points to, x forward and y left, to the nearest eighth of a turn. */
export function sideTowards(x: number, y: number): Side {
  const eighths = Math.round(Math.atan2(y, x) / (Math.PI / 4));
  return SIDES[(eighths + 8) % 8];
}

export function opposite(side: Side): Side {
  return SIDES[(SIDES.indexOf(side) + 4) % 8];
}

interface SideWords {
  /** where a thing is: "31 mm ahead of the centre of gravity" */
  readonly place: string;
  /** how the craft leans with this side low */
  readonly low: string;
  /** what is lifted */
  readonly part: string;
  /** where the craft drifts */
  readonly way: string;
}

export const SIDE_WORDS: Readonly<Record<Side, SideWords>> = {
  front: { place: "ahead of", low: "nose down", part: "the nose", way: "forwards" },
  "front left": {
    place: "ahead and left of",
    low: "nose and left side down",
    part: "the front left corner",
    way: "forwards and to the left",
  },
  left: { place: "left of", low: "left side down", part: "the left side", way: "to the left" },
  "rear left": {
    place: "behind and left of",
    low: "nose up and left side down",
    part: "the rear left corner",
    way: "backwards and to the left",
  },
  rear: { place: "behind", low: "nose up", part: "the tail", way: "backwards" },
  "rear right": {
    place: "behind and right of",
    low: "nose up and right side down",
    part: "the rear right corner",
    way: "backwards and to the right",
  },
  right: { place: "right of", low: "right side down", part: "the right side", way: "to the right" },
  "front right": {
    place: "ahead and right of",
    low: "nose and right side down",
    part: "the front right corner",
    way: "forwards and to the right",
  },
};
