/** Sentences and names of modes of a study as the page sets them. */

import type { HowSure } from "../../study/how-sure.ts";
import type { VariantResult } from "../../study/results.ts";
import type { SensitivityStudy } from "../../study/sensitivity-study.ts";
import { namesCompared, namesMoved } from "../known-names.ts";
import { prose } from "../prose.ts";

/** @param names from the file, more than the study knows */
export function movedSet(study: SensitivityStudy, names: readonly string[] = []): SensitivityStudy {
  const known = [...names, ...namesMoved(study)];
  const set = (text: string) => prose(text, known);
  const { table, suggested } = study;
  return {
    ...study,
    table: { ...table, modes: table.modes.map((m) => ({ ...m, name: set(m.name) })) },
    ...(suggested && {
      suggested: {
        ...suggested,
        found: suggested.found.map((s) => ({ ...s, words: set(s.words), text: set(s.text) })),
        ...(suggested.none !== undefined && { none: set(suggested.none) }),
      },
    }),
  };
}

/** @param names from the file */
export function sureSet({ sampled, moved }: HowSure, names: readonly string[]): HowSure {
  const known = [...names, ...namesCompared(sampled)];
  const set = (text: string) => prose(text, known);
  return {
    sampled: { ...sampled, variants: sampled.variants.map((v) => variantSet(v, set)) },
    moved: movedSet(moved, names),
  };
}

function variantSet(variant: VariantResult, set: (text: string) => string): VariantResult {
  const { sampled } = variant;
  if (!sampled) return variant;
  const modes = sampled.modes.map((m) => ({ ...m, name: set(m.name) }));
  return { ...variant, sampled: { ...sampled, modes, words: set(sampled.words) } };
}
