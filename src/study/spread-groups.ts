/** What is told together: inputs of one spread, parts that moved alike. */

import { listed } from "../ranking/words.ts";
import type { SampledInput } from "./results.ts";

/** Inputs of one spread and one source. */
export interface SpreadGroup extends Pick<SampledInput, "spread" | "source"> {
  readonly names: readonly string[];
}

export function spreadGroups(inputs: readonly SampledInput[]): SpreadGroup[] {
  const groups = new Map<string, { group: SampledInput; names: string[] }>();
  for (const input of inputs) {
    const key = `${input.source} ${input.spread}`;
    const known = groups.get(key);
    if (known === undefined) groups.set(key, { group: input, names: [input.name] });
    else known.names.push(input.name);
  }
  return [...groups.values()].map(({ group: { spread, source }, names }) => {
    return { spread, source, names };
  });
}

/**
 * Parts that moved alike as one text each: "plate top, body camera and 7 others 0.5 mm up".
 *
 * @param moved as outcomes have them: "plate top 0.5 mm up"
 */
export function movedTogether(moved: readonly string[]): string[] {
  const alike = new Map<string, string[]>();
  for (const text of moved) {
    const [, part = text, by = ""] = /^(.*?) (\d\S* mm \w+)$/.exec(text) ?? [];
    alike.set(by, [...(alike.get(by) ?? []), part]);
  }
  return [...alike].map(([by, parts]) => `${listed(parts)} ${by}`.trim());
}
