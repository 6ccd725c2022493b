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
   * The outcome between two rows that differ in the followed parameter, at fraction f of the way; undefined where it fails. Absent:
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
  const along = longest(parameters);
  const found = {
    ...given,
    along,
    lines: linesOf(parameters, rows, along, between),
    front,
    ...(quietest !== undefined && { quietest }),
  };
  return { ...found, words: sweepWords(found) };
}

/** The parameter with the most numbers; of equals the last. */
function longest(parameters: readonly SweepParameter[]): number {
  const count = (p: SweepParameter) => p.numbers?.length ?? 0;
  return parameters.reduce((best, p, i) => (count(p) >= count(parameters[best]) ? i : best), 0);
}

function linesOf(
  parameters: readonly SweepParameter[],
  rows: readonly SweepRow[],
  along: number,
  between: SweepGiven["between"],
): SweepLine[] {
  const { numbers } = parameters[along];
  if (!numbers || numbers.length < LEAST_VALUES) return [];
  const starts = rows.filter((r) => r.at[along] === 0).slice(0, MOST_LINES);
  return starts.flatMap(({ at: held }): SweepLine[] => {
    const order = rows
      .map((r, row) => ({ row, value: numbers[r.at[along]], at: r.at, outcome: r.outcome }))
      .filter(({ at, outcome }) => outcome && at.every((k, p) => p === along || k === held[p]))
      .sort((a, b) => a.value - b.value);
    if (order.length < LEAST_VALUES) return [];
    const chosen = order.map(({ row }) => rows[row]);
    const values = order.map(({ value }) => value);
    const outcomes = order.flatMap(({ outcome }) => (outcome ? [outcome] : []));
    const halfWay = between && ((i: number, f: number) => between(chosen[i], chosen[i + 1], f));
    const tracking = track(outcomes, halfWay, { values });
    return [{ held, rows: order.map(({ row }) => row), values, tracking }];
  });
}
