/**
 * `npm run verify`: runs every verification case and prints the short table; with `-- --write` it also
 * writes the long table beside this file and the short one into the project's README. Exit code 1 when
 * a number is outside its tolerance; nothing is written then.
 */

import { readFileSync, writeFileSync } from "node:fs";
import { AREAS } from "./areas.ts";
import { type Case, type Check, errorOf, passes } from "./case.ts";
import { cellsOf, toleranceCell } from "./cells.ts";
import { putShortTable, README, TABLE } from "./documents.ts";
import { longTable, shortTable } from "./table.ts";

const cases = AREAS.flatMap(({ families }) => families.flatMap((family) => family.cases));
const run = new Map<Check, number>();
const failures: string[] = [];

for (const of of cases) {
  const solved = of.solve();
  of.checks.forEach((check, i) => {
    run.set(check, solved[i]);
    if (!passes(check, solved[i])) failures.push(failure(of, check, solved[i]));
  });
}

const cells = (_: Case, check: Check) => cellsOf(check, run.get(check) ?? Number.NaN);
const short = shortTable(AREAS, cells);
console.log(short);
console.log(`\n${failures.length === 0 ? "None" : failures.length} outside its tolerance`);

if (failures.length > 0) {
  console.error(failures.join("\n"));
  process.exitCode = 1;
} else if (process.argv.includes("--write")) {
  const readme = putShortTable(readFileSync(README, "utf8"), short);
  writeFileSync(TABLE, longTable(AREAS, cells));
  writeFileSync(README, readme);
  console.log("Written: README.md and test/verification/README.md");
}

function failure(of: Case, check: Check, ours: number): string {
  const error = errorOf(check, ours).toExponential(2);
  const found = `${ours} for ${check.reference} ${check.unit}`;
  return `${of.name}, ${check.quantity}: ${found}, error ${error}, allowed ${toleranceCell(check)}`;
}
