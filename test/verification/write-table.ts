/**
 * `npm run verify`: runs every verification case and prints the short table; with `-- --write` it also
 * writes the long table beside this file and the short one into the project's README. Exit code 1 when
 * a case cannot be solved or a number is outside its tolerance; nothing is written then.
 */

import { readFileSync, writeFileSync } from "node:fs";
import { AREAS } from "./areas.ts";
import { type Case, type Check, passes } from "./case.ts";
import { cellsOf, toleranceCell } from "./cells.ts";
import { putShortTable, README, TABLE } from "./documents.ts";
import { casesOf, longTable, shortTable } from "./table.ts";

/** Failures of one case that are listed; the others are counted. */
const LISTED = 3;

const run = new Map<Check, number>();
const cells = (_: Case, check: Check) => {
  const ours = run.get(check);
  return ours === undefined ? undefined : cellsOf(check, ours);
};

const complaints = casesOf(AREAS).flatMap(runCase);
const short = shortTable(AREAS, cells);
console.log(short);

if (complaints.length > 0) {
  console.error(`\n${complaints.join("\n")}\n\nNothing was written.`);
  process.exitCode = 1;
} else if (process.argv.includes("--write")) {
  const readme = putShortTable(readFileSync(README, "utf8"), short);
  writeFileSync(TABLE, longTable(AREAS, cells));
  writeFileSync(README, readme);
  console.log("\nAll within tolerance. Written: README.md and test/verification/README.md");
} else {
  console.log("\nAll within tolerance. To write the tables: npm run verify -- --write");
}

/** Solves a case; what is wrong with it, in lines. */
function runCase(of: Case): string[] {
  let solved: readonly number[];
  try {
    solved = of.solve();
  } catch (error) {
    return [`${of.name}: could not be solved: ${(error as Error).message}`];
  }
  const failed = of.checks.filter((check, i) => {
    run.set(check, solved[i]);
    return !passes(check, solved[i]);
  });
  if (failed.length === 0) return [];
  const more = failed.length - LISTED;
  return [
    `${of.name}: ${failed.length} of ${of.checks.length} values outside tolerance`,
    ...failed.slice(0, LISTED).map((check) => `  ${failure(of, check)}`),
    ...(more > 0 ? [`  and ${more} more`] : []),
  ];
}

function failure(of: Case, check: Check): string {
  const { ours, error } = cells(of, check) ?? { ours: "?", error: "?" };
  const reference = `${check.reference} ${check.unit}`.trimEnd();
  return `${check.quantity}: ${ours} for ${reference}, error ${error}, allowed ${toleranceCell(check)}`;
}
