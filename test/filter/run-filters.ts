/** Filters run sample by sample. */

import type { Biquad } from "../../src/filter/biquad.ts";

/** y[n] = sum b_k x[n-k] - sum a_k y[n-k] of each filter in turn, from rest. */
export function runFilters(filters: readonly Biquad[], input: Float64Array): Float64Array {
  let x = input;
  for (const { b, a } of filters) {
    const y = new Float64Array(x.length);
    for (let n = 0; n < x.length; n++) {
      const past = (of: Float64Array, k: number) => (n < k ? 0 : of[n - k]);
      y[n] = b[0] * x[n] + b[1] * past(x, 1) + b[2] * past(x, 2);
      y[n] -= a[1] * past(y, 1) + a[2] * past(y, 2);
    }
    x = y;
  }
  return x;
}
