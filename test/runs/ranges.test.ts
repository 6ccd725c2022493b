import { expect, test } from "vitest";
import { inRanges, listed } from "../../src/runs/ranges.ts";

test.each([
  [[], ""],
  [[4], "4"],
  [[1, 2, 3, 7, 9, 10], "1-3, 7, 9-10"],
  [[1, 3, 5, 7, 9, 11, 13, 15, 17, 18, 20], "1, 3, 5, 7, 9, 11, 13, 15 and 3 more"],
])("%j is told as %j", (numbers, text) => {
  expect(inRanges(numbers)).toBe(text);
});

test("words are listed as in a sentence", () => {
  expect([[], ["a"], ["a", "b"], ["a", "b", "c"]].map(listed)).toEqual([
    "",
    "a",
    "a and b",
    "a, b and c",
  ]);
});
