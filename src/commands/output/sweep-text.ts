/** What a sweep found, for the terminal. */

import type { SweepProgress } from "../../runs/sweep-file.ts";
import { digits } from "../../study/figures.ts";
import { bestGyro } from "../../study/pareto.ts";
import type { SweepRow, SweepStudy } from "../../study/results-sweep.ts";
import { count } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { type Column, renderTable } from "../terminal/table.ts";
import { wrap } from "../terminal/wrap.ts";

/** Variants of the front that are listed. */
const LISTED = 12;
/** Reasons of failures that are listed. */
const REASONS = 3;

/** @param study undefined for one shard of a sweep */
export function sweepText(
  out: string,
  progress: SweepProgress,
  study: SweepStudy | undefined,
): string {
  const { rows, total, before, failed } = progress;
  const nothing = before === total;
  const done = nothing
    ? `All ${total} rows were in ${out} already; nothing was to do.`
    : `${count(rows, "row")} in ${out}${before > 0 ? `, ${before} of them from before` : ""}${failed > 0 ? `; ${count(failed, "variant")} could not be computed, the column "failed" says why` : ""}.`;
  if (!study) return wrap(printable(done));
  return [
    ...study.words.map((w) => wrap(printable(w))),
    frontText(study),
    reasonsText(study),
    `\n${wrap(printable(done))}`,
  ].join("");
}

function frontText({ parameters, rows, front }: SweepStudy): string {
  if (front.length < 2) return "";
  const columns: Column[] = [
    ...parameters.map((p) => ({ title: p.name, least: 10 })),
    { title: "mass", unit: "g", align: "right" },
    { title: "gyro noise", unit: "deg/s rms", align: "right" },
    { title: "at", least: 10 },
  ];
  const cells = (row: SweepRow): string[] => {
    const { outcome } = row;
    const spot = outcome?.best === undefined ? "" : outcome.spots[outcome.best].name;
    return [
      ...parameters.map((p, k) => p.texts[row.at[k]]),
      outcome ? digits(1e3 * outcome.mass) : "",
      outcome ? digits(bestGyro(outcome)) : "",
      spot,
    ];
  };
  const shown = front.slice(0, LISTED).map((i) => cells(rows[i]));
  const rest = front.length > LISTED ? wrap(`and ${front.length - LISTED} more.`, "  ") : "";
  return `\nLight and quiet at once (no other variant is better in both)\n${renderTable(columns, shown)}${rest}`;
}

function reasonsText({ rows }: SweepStudy): string {
  const reasons = new Map<string, number>();
  for (const { failed } of rows) {
    if (failed !== undefined) reasons.set(failed, (reasons.get(failed) ?? 0) + 1);
  }
  if (reasons.size === 0) return "";
  const lines = [...reasons]
    .slice(0, REASONS)
    .map(([reason, times]) =>
      wrap(printable(`${count(times, "variant")}: ${reason}`), "  ", "    "),
    );
  return `\nNot computed\n${lines.join("")}`;
}
