/** Beams that go together because they are alike. */

import type { Meshed } from "./meshed.ts";
import { same } from "./same.ts";

/** Beams of parts with the same lengths and sections: mirrored copies, and posts of one kind. */
export function beamFamiliesOf({ mesh, lossWeights }: Meshed): number[][] {
  const parts = new Map<number, number[]>();
  mesh.beams.forEach(({ part }, i) => {
    parts.set(part, [...(parts.get(part) ?? []), i]);
  });
  const families: { readonly drawn: unknown; readonly beams: number[] }[] = [];
  for (const [part, beams] of parts) {
    const elements = beams.map((i) => mesh.beams[i]);
    const drawn = [elements.map((e) => [e.length, e.sections]), lossWeights[part]];
    const found = families.find((f) => same(f.drawn, drawn));
    if (found) found.beams.push(...beams);
    else families.push({ drawn, beams: [...beams] });
  }
  return families.map((f) => f.beams);
}
