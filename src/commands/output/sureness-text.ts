/** How sure a study is, for people: samples, what was varied, what failed. */

import type { Sureness } from "../../study/results.ts";
import { type SpreadGroup, spreadGroups } from "../../study/spread-groups.ts";
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
