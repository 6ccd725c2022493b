/** Tables of references: one frame in each row, one check for each of its values. */

import { type Case, modes, type Tolerance } from "../case.ts";

/** A row: what sets its frame apart, and the references as printed, with spaces between. */
export interface Row {
  readonly values: string;
}

export interface RowMaker<R extends Row> {
  readonly rows: readonly R[];
  /** of a row, in the table: "mu = 0.5" */
  readonly name: (row: R) => string;
  /** the lowest `count` values of the row's frame */
  readonly solve: (row: R, count: number) => readonly number[];
  readonly tolerance: (reference: string, row: R, i: number) => Tolerance;
}

/** Checks "mu = 0.5, mode 1" and so on, and the solution of every row's frame, once. */
export function table<R extends Row>(made: RowMaker<R>): Pick<Case, "checks" | "solve"> {
  const { rows, name, solve, tolerance } = made;
  return {
    checks: rows.flatMap((row) =>
      modes(
        valuesOf(row),
        "",
        (reference, i) => tolerance(reference, row, i),
        `${name(row)}, mode`,
      ),
    ),
    solve: () =>
      rows.flatMap((row) => {
        const count = valuesOf(row).length;
        return solve(row, count).slice(0, count);
      }),
  };
}

function valuesOf({ values }: Row): string[] {
  return values.split(" ");
}
