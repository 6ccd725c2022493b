/** How sure a study is, for people: samples, what was varied, what failed. */

import type { SampledInput, Sureness } from "../../study/results.ts";
import { count } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { bullets, wrap } from "../terminal/wrap.ts";

/** Inputs named before the rest are counted. */
const NAMED = 5;
const REASONS = 3;

export function surenessText(sure: Sureness): string {
  return [
    wrap(printable(sure.text)),
    sure.inputs.length === 0
      ? wrap("No input of the file has a spread, so nothing was varied.")
      : wrap("Varied, 95 % of real frames being taken to lie between:") +
        bullets(spreadGroups(sure.inputs).map(groupText)),
    wrap(solvedText(sure)),
    bullets(
      sure.failed
        .slice(0, REASONS)
        .map((f) => `could not be solved (${count(f.count, "sample")}): ${printable(f.reason)}`),
    ),
  ].join("");
}

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

function groupText({ spread, source, names }: SpreadGroup): string {
  const shown = names.slice(0, NAMED).map(printable).join(", ");
  const rest = names.length - NAMED;
  const from = source === "file" ? "from the file" : source;
  return `${spread} (${from}): ${shown}${rest > 0 ? ` and ${count(rest, "more", "more")}` : ""}`;
}

function solvedText({ reduced, exact, seed }: Sureness): string {
  const quick =
    reduced > 0
      ? `${reduced} frames by a reduced model, where the estimate of its error allows; `
      : "";
  return `Solved: ${quick}${exact} in full. Seed ${seed}: the same seed gives the same samples.`;
}
