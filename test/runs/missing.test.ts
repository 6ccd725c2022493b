import { expect, test } from "vitest";
import { missingText } from "../../src/runs/missing.ts";
import type { Part } from "../../src/runs/part.ts";

function part(file: string, indexes: readonly number[]): Part {
  const rows = indexes.map((index) => ({ index, line: "", hasFailed: false }));
  return { file, format: "csv", header: "", titles: [], rows };
}

function told(of: number, ...parts: readonly Part[]): string {
  const there = new Set(parts.flatMap(({ rows }) => rows.map(({ index }) => index)));
  const all = Array.from({ length: of }, (_, i) => i + 1);
  const missing = all.filter((i) => !there.has(i));
  return missingText(missing, parts, of);
}

const GO_ON =
  "is not complete: run the command that wrote it again, and it goes on where it stopped.";

test("a single run that stopped is to be run again", () => {
  expect(told(10, part("a.csv", [1, 2, 3]))).toBe(`7 of 10 rows are missing: 4-10. a.csv ${GO_ON}`);
});

test("parts that are not there and one that stopped are told apart", () => {
  const parts = [part("a.csv", [1, 5, 9]), part("c.csv", [3])];
  expect(told(12, ...parts)).toBe(
    `8 of 12 rows are missing: 2, 4, 6-8, 10-12. c.csv (part 3/4) ${GO_ON} Run the sweep with --shard 2/4 and --shard 4/4 as well.`,
  );
});

test("what is left of a joined file is told by parts that are just that", () => {
  expect(told(10, part("half.csv", [1, 3, 4, 6, 7, 9, 10]))).toBe(
    "3 of 10 rows are missing: 2, 5, 8. Run the sweep with --shard 2/3 as well.",
  );
});

test("many parts are not named one by one", () => {
  const text = told(100, part("a.csv", [1, 21, 41, 61, 81]));
  expect(text).toContain("--shard 9/20 and 11 more as well.");
});
