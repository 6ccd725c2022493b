/**
 * Where lines above half the sampling rate show: cos(2 pi f n/fs) has the same samples for f and for
 * |f - k fs|, k any whole number, and shows at the one within 0 .. fs/2 (sampling theorem).
 */

import { negative, notPositive, throwIfAny } from "../check-number.ts";

/** A band that is narrower than this, relative to its frequency, is none. */
const ROUNDING = 1e-12;

/** Speeds of the motors at which one order lies in one half band and so shows somewhere else. */
export interface FoldedBand {
  /** multiple of the motor's speed */
  readonly order: number;
  /** rad/s, from low to high */
  readonly speeds: readonly [from: number, to: number];
  /** the line itself at these speeds, Hz */
  readonly lines: readonly [from: number, to: number];
  /** where it shows at these speeds, Hz; in between it moves evenly, upwards or downwards */
  readonly shown: readonly [from: number, to: number];
}

/**
 * The bands in which lines of the motors fold, by order and then by speed: one for every half band of
 * width fs/2 above the first. Orders given twice count once; none where nothing reaches fs/2.
 *
 * @param orders multiples of the motors' speed, above zero
 * @param low the motors' lowest speed, rad/s
 * @param full the highest
 * @param fs sampling rate, Hz
 * @throws InputError for a sampling rate not above zero, or speeds that are negative or not finite
 */
export function foldings(
  orders: readonly number[],
  low: number,
  full: number,
  fs: number,
): FoldedBand[] {
  throwIfAny(
    notPositive("fs", "the sampling rate", fs, "Hz"),
    negative("low", "the lowest speed", low, "rad/s"),
    negative("full", "the highest speed", full, "rad/s"),
  );
  return [...new Set(orders)]
    .sort((a, b) => a - b)
    .flatMap((order) => {
      const [first, last] = [low, full].map((speed) => (order * speed) / (2 * Math.PI));
      return bandsOf(order, first, last, fs / 2);
    });
}

/** The bands of one order, its line going from `first` to `last`, Hz. */
function bandsOf(order: number, first: number, last: number, half: number): FoldedBand[] {
  const bands: FoldedBand[] = [];
  const start = Math.max(1, Math.floor((first / half) * (1 + ROUNDING)));
  for (let k = start; k * half < last * (1 - ROUNDING); k++) {
    const [from, to] = [Math.max(first, k * half), Math.min(last, (k + 1) * half)];
    bands.push(bandOf(order, [from, to], [shownIn(k, half, from), shownIn(k, half, to)]));
  }
  return bands;
}

/** f in the half band k half .. (k + 1) half: counted from its lower end if k is even, else from above. */
function shownIn(k: number, half: number, f: number): number {
  return k % 2 === 0 ? f - k * half : (k + 1) * half - f;
}

function bandOf(
  order: number,
  lines: readonly [number, number],
  shown: readonly [number, number],
): FoldedBand {
  const speeds = lines.map((f) => (2 * Math.PI * f) / order) as [number, number];
  return { order, speeds, lines, shown };
}

/**
 * The parts of the bands in which the line shows at `limit` or below: in the control band, or where a
 * low-pass of that frequency no longer holds it off.
 *
 * @param limit Hz
 */
export function foldedBelow(bands: readonly FoldedBand[], limit: number): FoldedBand[] {
  return bands.flatMap((band) => {
    const [from, to] = band.shown;
    if (Math.max(from, to) <= limit) return [band];
    if (Math.min(from, to) >= limit) return [];
    // line and place move at the same pace: as far in f as in what shows
    const [low, high] = band.lines;
    return from < to
      ? [bandOf(band.order, [low, low + (limit - from)], [from, limit])]
      : [bandOf(band.order, [high - (limit - to), high], [limit, to])];
  });
}

/** "order 6 at 24000 to 27400 rpm (2400 to 2740 Hz) shows at 400 to 740 Hz" */
export function foldingText({ order, speeds, lines, shown }: FoldedBand): string {
  const rpm = speeds.map((speed) => (speed * 60) / (2 * Math.PI));
  return `order ${order} at ${span(rpm)} rpm (${span(lines)} Hz) shows at ${span(shown)} Hz`;
}

function span(ends: readonly number[]): string {
  const [from, to] = ends.map((value) => String(Math.round(value)));
  return from === to ? from : `${from} to ${to}`;
}
