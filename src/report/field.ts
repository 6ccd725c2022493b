/** Values between the places of a map. */

/** Where a value is known. */
export interface Known {
  readonly x: number;
  readonly y: number;
}

/** Nearness counts with the inverse of this power of the distance. */
const POWER = 4;

/**
 * Weights of the places for a point between them: the inverse fourth power of the distance, so that a place
 * has its own value and a point between places never leaves their range (D. Shepard, A two-dimensional
 * interpolation function for irregularly-spaced data, 1968, from memory; he has other powers too).
 *
 * @returns adding up to one, size of places; the nearest alone where a point lies on it
 */
export function weightsAt(places: readonly Known[], x: number, y: number): Float64Array {
  const w = Float64Array.from(places, (p) => Math.hypot(p.x - x, p.y - y) ** -POWER);
  const on = w.indexOf(Number.POSITIVE_INFINITY);
  if (on >= 0) return w.map((_, i) => (i === on ? 1 : 0));
  const sum = w.reduce((a, b) => a + b, 0);
  return w.map((v) => v / sum);
}

/** Number of the nearest place; -1 without places. */
export function nearest(places: readonly Known[], x: number, y: number): number {
  const away = places.map((p) => Math.hypot(p.x - x, p.y - y));
  return away.indexOf(Math.min(...away));
}
