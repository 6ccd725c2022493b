/** How sure a ranking is, as fields of its JSON document. */

import { spotsAcross } from "../../study/across.ts";
import type { HowSure } from "../../study/how-sure.ts";
import { sensitivityFields } from "./sensitivity-json.ts";
import {
  bandFields,
  chanceFields,
  chancesFields,
  noiseFields,
  sureFields,
} from "./sureness-json.ts";

/** Chances and bands are null where the file names no place for the stack. */
export function howSureFields({ sampled, moved }: HowSure): Record<string, unknown> {
  const [variant] = sampled.variants;
  const { sampled: found } = variant;
  return {
    answer: found?.words ?? null,
    samples: sampled.sure ? sureFields(sampled.sure) : null,
    bestPlaceOfSamples: found ? chancesFields(found.chances) : null,
    places: spotsAcross({ variants: [variant] }).map(({ name, plate, cells: [c] }) => ({
      name,
      plate,
      noise: c?.noise ? noiseFields(c.noise) : null,
      avoid: c?.ruledOut ? chanceFields(c.ruledOut) : null,
    })),
    modeBands: (found?.modes ?? []).map(({ number, name, nominal, band }) => ({
      mode: number,
      name,
      frequencyHz: nominal,
      band: band ? bandFields(band, "Hz") : null,
    })),
    sensitivity: sensitivityFields(moved),
  };
}
