/** What units of plates' constants add, made when first wanted and kept. */

import type { Contribution } from "./contribution.ts";
import { plateTerm, type Term } from "./plate-terms.ts";
import type { ReducedFrame } from "./types.ts";

export type Terms = (plate: number, term: Term) => Contribution;

export function termsOf({ space, base }: ReducedFrame): Terms {
  const known = new Map<string, Contribution>();
  return (plate, term) => {
    const key = `${plate} ${term.kind} ${"entry" in term ? term.entry : ""}`;
    const found = known.get(key) ?? plateTerm(space, base, plate, term);
    known.set(key, found);
    return found;
  };
}
