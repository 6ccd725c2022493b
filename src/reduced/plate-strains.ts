/** How much of each mode's strain energy the plates hold, for telling which overhangs have modes of their own. */

import type { Share } from "../modes/types.ts";
import type { Meshed } from "./meshed.ts";
import { constantOf, TERMS } from "./plate-terms.ts";
import type { RitzPairs } from "./ritz.ts";
import type { Terms } from "./terms.ts";
import type { ReducedFrame } from "./types.ts";

/** Per mode the plates' shares, 0..1; kinetic shares are not known. */
export function plateStrains(
  { space }: ReducedFrame,
  terms: Terms,
  meshed: Meshed,
  { lambda, Y }: RitzPairs,
  count: number,
): Share[][] {
  const w = space.width;
  const stiffness = meshed.model.plates.map((_, plate) => {
    const K = new Float64Array(w * w);
    for (const term of TERMS) {
      const c = "entry" in term ? constantOf(meshed, plate, term) : 0;
      if (c === 0) continue;
      const of = terms(plate, term).K;
      for (let i = 0; i < K.length; i++) K[i] += c * of[i];
    }
    return K;
  });
  return Array.from({ length: count }, (_, k) =>
    stiffness.map((K, plate) => {
      let energy = 0;
      for (let i = 0; i < w; i++) {
        let row = 0;
        for (let j = 0; j < w; j++) row += K[i * w + j] * Y[k * w + j];
        energy += Y[k * w + i] * row;
      }
      const strain = lambda[k] > 0 ? energy / lambda[k] : 0;
      return { part: meshed.model.plates[plate].name, kind: "plate", strain, kinetic: 0 };
    }),
  );
}
