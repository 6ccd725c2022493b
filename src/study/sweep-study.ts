/** The rows of a sweep as findings: modes followed, the quietest, what is light and quiet at once. */

import type { Outcome } from "../variants/types.ts";
import { bestGyro, paretoFront } from "./pareto.ts";
import type { SweepLine, SweepParameter, SweepRow, SweepStudy } from "./results-sweep.ts";
import { sweepWords } from "./sweep-words.ts";
import { track } from "./track.ts";

/** Fewer values along a line show no course. */
const LEAST_VALUES = 3;
/** Following modes along more lines than this would take longer than the sweep. */
const MOST_LINES = 40;

export interface SweepGiven extends Pick<SweepStudy, "title" | "files" | "parameters" | "rows"> {
  /**
   * The outcome between two rows of a line at fraction f of the way; undefined where it fails. Absent:
   * modes are followed from row to row alone.
   */
  readonly between?: (from: SweepRow, to: SweepRow, f: number) => Outcome | undefined;
}

export function sweepStudy({ between, ...given }: SweepGiven): SweepStudy {
  const { parameters, rows } = given;
  const gyro = rows.map(({ outcome }) => (outcome ? bestGyro(outcome) : Number.NaN));
  const front = paretoFront(
    rows.map(({ outcome }, i) => [outcome?.mass ?? Number.NaN, gyro[i]] as const),
  );
  // The last of the front is the one with the least noise.
  const quietest = front.at(-1);
  const found = {
    ...given,
    lines: linesOf(parameters, rows, between),
    front,
    ...(quietest !== undefined && { quietest }),
  };
  return { ...found, words: sweepWords(found) };
}

function linesOf(
  parameters: readonly SweepParameter[],
  rows: readonly SweepRow[],
  between: SweepGiven["between"],
): SweepLine[] {
  const last = parameters.length - 1;
  const { numbers } = parameters[last];
  if (!numbers || numbers.length < LEAST_VALUES) return [];
  const lines: SweepLine[] = [];
  for (let start = 0; start < rows.length && lines.length < MOST_LINES; start += numbers.length) {
    const order = numbers
      .map((value, k) => ({ value, row: start + k }))
      .filter(({ row }) => rows[row].outcome !== undefined)
      .sort((a, b) => a.value - b.value);
    if (order.length < LEAST_VALUES) continue;
    const chosen = order.map(({ row }) => rows[row]);
    const values = order.map(({ value }) => value);
    const outcomes = chosen.flatMap(({ outcome }) => (outcome ? [outcome] : []));
    const tracking = track(outcomes, between && ((i, f) => between(chosen[i], chosen[i + 1], f)), {
      values,
    });
    lines.push({
      held: rows[start].at.slice(0, last),
      rows: order.map(({ row }) => row),
      values,
      tracking,
    });
  }
  return lines;
}
