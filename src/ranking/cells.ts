/** Even cells along a line. */

/** Middles of even cells from one bound to the other, about so wide: one at least. */
export function cellsBetween(from: number, to: number, width: number) {
  const n = Math.max(1, Math.round((to - from) / width));
  const each = (to - from) / n;
  return { each, middles: Array.from({ length: n }, (_, i) => from + (i + 0.5) * each) };
}
