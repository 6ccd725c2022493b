/** The tests of a family of cases: each number within its tolerance, and as the table shows it. */

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type Case, errorOf, type Family, passes } from "./case.ts";
import { cellsOf, sameCell, toleranceCell } from "./cells.ts";
import { TABLE } from "./documents.ts";
import { type CellsOf, readLongTable } from "./table.ts";

export function verify(families: readonly Family[]): void {
  const committed = readLongTable(readFileSync(TABLE, "utf8"));
  for (const family of families) {
    describe(family.title, () => {
      for (const of of family.cases) describe(of.name, () => verifyCase(of, committed));
    });
  }
}

function verifyCase(of: Case, committed: CellsOf): void {
  const solved = once(of.solve);

  test("one number for each check", () => {
    expect(solved().length).toBe(of.checks.length);
  });

  of.checks.forEach((check, i) => {
    test(`${check.quantity}: ${check.reference} ${check.unit}`.trimEnd(), () => {
      const ours = solved()[i];
      const message =
        `${ours} for ${check.reference}, error ${errorOf(check, ours).toExponential(2)}, ` +
        `allowed ${toleranceCell(check)}`;
      expect(passes(check, ours), message).toBe(true);
    });
  });

  test("as the verification table shows it", () => {
    of.checks.forEach((check, i) => {
      const run = cellsOf(check, solved()[i]);
      const shown = committed(of, check);
      const cure = "write it with: npm run verify -- --write";
      expect(shown, `no row for "${check.quantity}"; ${cure}`).toBeDefined();
      for (const cell of ["ours", "error"] as const) {
        const same = shown !== undefined && sameCell(shown[cell], run[cell]);
        const difference = `${check.quantity}, ${cell}: the table has ${shown?.[cell]}, the run ${run[cell]}`;
        expect(same, `${difference}; ${cure}`).toBe(true);
      }
    });
  });
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
