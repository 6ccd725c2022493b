/** Sentences and names of modes of a study as the page sets them. */

import type { HowSure } from "../../study/how-sure.ts";
import type { VariantResult } from "../../study/results.ts";
import type { SensitivityStudy } from "../../study/sensitivity-study.ts";
import { prose } from "../prose.ts";

export function movedSet(study: SensitivityStudy): SensitivityStudy {
  const { table, suggested } = study;
  return {
    ...study,
    table: { ...table, modes: table.modes.map((m) => ({ ...m, name: prose(m.name) })) },
    ...(suggested && {
      suggested: {
        ...suggested,
        found: suggested.found.map((s) => ({ ...s, words: prose(s.words), text: prose(s.text) })),
        ...(suggested.none !== undefined && { none: prose(suggested.none) }),
      },
    }),
  };
}

export function sureSet({ sampled, moved }: HowSure): HowSure {
  return {
    sampled: { ...sampled, variants: sampled.variants.map(variantSet) },
    moved: movedSet(moved),
  };
}

function variantSet(variant: VariantResult): VariantResult {
  const { sampled } = variant;
  if (!sampled) return variant;
  const modes = sampled.modes.map((m) => ({ ...m, name: prose(m.name) }));
  return { ...variant, sampled: { ...sampled, modes, words: prose(sampled.words) } };
}
