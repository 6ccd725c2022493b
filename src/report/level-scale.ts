/** Colours of levels: from the chart's own ground to the strongest ink, so that silence is quiet. */

import { fromOklab } from "./palette.ts";

/**
 * Straight lines in the OKLab space (see `motionScale`), so that equal steps in decibels look equal: on
 * a light page from its surface to a deep blue, on a dark one from its surface to yellow. Both vary in
 * lightness and between blue and yellow only.
 */
const ENDS = {
  light: [
    [0.988, 0.0005, 0.004],
    [0.27, -0.005, -0.11],
  ],
  dark: [
    [0.245, -0.006, -0.014],
    [0.93, -0.01, 0.15],
  ],
} as const;

export function levelScale(
  scheme: "light" | "dark",
  steps = 9,
): readonly (readonly [number, string])[] {
  const [from, to] = ENDS[scheme];
  return Array.from({ length: steps }, (_, i) => {
    const t = i / (steps - 1);
    const [L, a, b] = from.map((v, k) => v + t * (to[k] - v));
    return [Number(t.toFixed(4)), fromOklab(L, a, b)] as const;
  });
}
