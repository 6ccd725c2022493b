/** What the map of places can show, one at a time. */

import { canSit, type MapPlace, type QuietMap } from "../ranking/types.ts";
import { degrees, degreesPerSecond, inMillimetres, milliseconds, withUnit } from "./numbers.ts";
import { quoted, sideWord } from "./place-names.ts";

export interface Quantity {
  readonly key: "gyro" | "accel" | "delayWithout" | "tilt";
  /** in the switch and at the beginning of a sentence */
  readonly name: string;
  /** as the page shows it: its value of a place, and the value with its unit */
  readonly of: (place: MapPlace) => number;
  readonly words: (value: number) => string;
  readonly unit: string;
  /** a level, whose equal steps are equal ratios */
  readonly byRatio: boolean;
  /** how far the most is from the least */
  readonly apart: (least: number, most: number) => string;
}

const level = (least: number, most: number) =>
  least > 0 ? `, ${(20 * Math.log10(most / least)).toFixed(1)}\u00a0dB apart` : "";

export const QUANTITIES: readonly Quantity[] = [
  {
    key: "gyro",
    name: "gyro noise",
    unit: "deg/s rms",
    of: (p) => p.gyro,
    words: (v) => `${degreesPerSecond(v)} rms`,
    byRatio: true,
    apart: level,
  },
  {
    key: "accel",
    name: "acceleration",
    unit: "g rms",
    of: (p) => p.accel,
    words: (v) => `${withUnit(v, "g")} rms`,
    byRatio: true,
    apart: level,
  },
  {
    key: "delayWithout",
    name: "filter delay",
    unit: "ms",
    of: (p) => 1e3 * p.delayWithout,
    words: (v) => milliseconds(1e-3 * v),
    byRatio: false,
    apart: () => "",
  },
  {
    key: "tilt",
    name: "false tilt",
    unit: "degrees",
    of: (p) => (p.tilt * 180) / Math.PI,
    words: (v) => degrees((v * Math.PI) / 180),
    byRatio: false,
    apart: () => "",
  },
];

/** The place with the least score of those where the stack can sit, not to be avoided if there is a choice. */
export function bestOfMap({ places }: Pick<QuietMap, "places">): MapPlace | undefined {
  const free = places.filter(canSit);
  const open = free.filter((p) => !p.avoid);
  const from = open.length > 0 ? open : free;
  return from.reduce<MapPlace | undefined>(
    (a, b) => (a === undefined || b.score < a.score ? b : a),
    undefined,
  );
}

/** "x 24, y −8 mm" */
export function spotWords({ x, y }: Pick<MapPlace, "x" | "y">): string {
  return `x\u00a0${inMillimetres(x)}, y\u00a0${inMillimetres(y)}\u00a0mm`;
}

/** "x 24, y −8 mm on “bottom”" */
export function mapPlaceWords(p: MapPlace): string {
  const against = [
    ...(p.inTheWay === undefined ? [] : ["no room"]),
    ...(p.patternShare === undefined ? [] : ["its screws do not fit"]),
    ...(p.avoid ? ["to be avoided"] : []),
  ];
  const why = against.length > 0 ? ` (${against.join(", ")})` : "";
  return `${spotWords(p)} ${sideWord(p)} ${quoted(p.plate)}${why}`;
}

/** Why the stack as it is cannot sit there; empty where it can. */
export function hindranceWords({ inTheWay, patternShare }: MapPlace): string[] {
  return [
    ...(inTheWay === undefined ? [] : [`${inTheWay} is in the way`]),
    ...(patternShare === undefined
      ? []
      : [
          `its screws do not fit: read with their pattern at ${Math.round(100 * patternShare)}\u00a0%`,
        ]),
  ];
}

/** The extremes of a quantity. */
export function extremes(places: readonly MapPlace[], { of }: Quantity) {
  const least = places.reduce((a, b) => (of(b) < of(a) ? b : a));
  const most = places.reduce((a, b) => (of(b) > of(a) ? b : a));
  return { least, most, low: of(least), high: of(most) };
}

/** A quantity over the whole map in a sentence. */
export function quantityFinding(places: readonly MapPlace[], q: Quantity): string {
  const { least, most, low, high } = extremes(places, q);
  const begun = `${q.name[0].toUpperCase()}${q.name.slice(1)}`;
  const lowest = q.words(low);
  if (places.length === 1) return `${begun}: ${lowest} at the only place, ${mapPlaceWords(least)}.`;
  if (lowest === q.words(high)) return `${begun}: ${lowest} everywhere.`;
  return `${begun}: least ${lowest} at ${mapPlaceWords(least)}; most ${q.words(high)} at ${mapPlaceWords(most)}${q.apart(low, high)}.`;
}

/** The same for one plate. */
export function plateFinding(plate: string, places: readonly MapPlace[], q: Quantity): string {
  const { low, high } = extremes(places, q);
  const [least, most] = [q.words(low), q.words(high)];
  const range = least === most ? least : `from ${least} to ${most}`;
  const count = places.length === 1 ? "one place" : `${places.length} places`;
  return `The plate ${quoted(plate)} from above, ${count}: ${q.name} ${range}.`;
}
