/** The lower triangle of a symmetric product against the whole of it. */

import fc from "fast-check";
import { expect, test } from "vitest";
import { innerProducts, lowerProducts } from "../../src/linalg/tall.ts";

test("lowerProducts: the lower triangle of X'A X, over more rows than one chunk too", () => {
  const sizes = fc.record({
    n: fc.oneof(fc.integer({ min: 0, max: 9 }), fc.constant(1500)),
    a: fc.integer({ min: 0, max: 11 }),
  });
  fc.assert(
    fc.property(sizes, ({ n, a }) => {
      const X = Float64Array.from({ length: n * a }, (_, k) => Math.sin(1 + k * k));
      const AX = X.map((v, k) => v * (1 + (n === 0 ? 0 : k % n)));
      const [lower, whole] = [new Float64Array(a * a).fill(7), new Float64Array(a * a)];
      lowerProducts(lower, X, AX, a, n);
      innerProducts(whole, X, a, AX, a, n);
      for (let i = 0; i < a; i++) {
        for (let j = 0; j <= i; j++) {
          expect(Math.abs(lower[i * a + j] - whole[i * a + j])).toBeLessThan(1e-9 * (1 + n * n));
        }
      }
    }),
    { seed: 11, numRuns: 60 },
  );
});
