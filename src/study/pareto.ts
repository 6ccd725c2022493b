/** What no other variant beats in both of two figures. */

import type { Outcome } from "../variants/types.ts";

/**
 * The points that no other is better than in one figure without being worse in the other; equal points
 * stand or fall together. Points with a figure that is not finite are left out.
 *
 * @param points two figures each, less is better
 * @returns places in the list, by the first figure, equal ones in the order of the list
 */
export function paretoFront(points: readonly (readonly [number, number])[]): number[] {
  const order = points
    .map((_, i) => i)
    .filter((i) => points[i].every((v) => Number.isFinite(v)))
    .sort((i, j) => points[i][0] - points[j][0] || points[i][1] - points[j][1] || i - j);
  const front: number[] = [];
  for (const i of order) {
    const last = front[front.length - 1];
    const [x, y] = points[i];
    const better = last === undefined || y < points[last][1];
    const equal = last !== undefined && x === points[last][0] && y === points[last][1];
    if (better || equal) front.push(i);
  }
  return front;
}

/** Gyro noise at the best spot, deg/s rms; NaN where there is none. */
export function bestGyro({ spots, best }: Outcome): number {
  return best === undefined ? Number.NaN : spots[best].gyro;
}
