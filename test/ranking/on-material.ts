/** Whether screws have something under their heads, point by point. */

import { contains } from "../../src/model/polygon.ts";
import type { Candidate, Model } from "../../src/model/types.ts";

/** Whether points all over every screw head lie on material. */
export function onMaterial({ plates }: Model, c: Candidate): boolean {
  const { outline, holes } = plates[c.plate];
  return c.holes.every(([x, y]) =>
    [0, 0.4, 0.8, 0.999].every((share) =>
      Array.from({ length: 24 }, (_, i) => (i * Math.PI) / 12).every((a) => {
        const r = (share * c.footprint) / 2;
        const [px, py] = [x + r * Math.cos(a), y + r * Math.sin(a)];
        return contains(outline, px, py) && holes.every((h) => !contains(h, px, py));
      }),
    ),
  );
}
