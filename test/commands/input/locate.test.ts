import { expect, test } from "vitest";
import { locateFindings } from "../../../src/commands/input/locate.ts";

const TEXT = `// a frame
{
  "plates": {
    "rear deck": {
      "holes": [
        { "at": [1, 2] },
        { "at": [3, 4] }, // the second
      ],
    },
    "rear deck.low": { "z": 3 },
  },
}`;

/** "line:column" of the place that `path` leads to. */
function placeOf(path: string): string {
  const [{ line, column }] = locateFindings(TEXT, [{ path, message: "" }]);
  return `${line}:${column}`;
}

test.each([
  ["plates", "3:3"],
  ["plates.rear deck", "4:5"],
  ['plates."rear deck"', "4:5"],
  ["plates.rear deck.holes#2", "7:9"],
  ["plates.rear deck.holes#2.at", "7:11"],
  ["plates.rear deck.low.z", "10:24"],
  ["plates.rear deck.thickness", "4:5"],
  ["arms.front", "undefined:undefined"],
  ["", "undefined:undefined"],
])("%s", (path, place) => {
  expect(placeOf(path)).toBe(place);
});

test("a place that is known already stays", () => {
  const finding = { path: "plates", message: "", line: 1, column: 1 };
  expect(locateFindings(TEXT, [finding])).toEqual([finding]);
});

test("a text that cannot be read leaves the findings as they are", () => {
  expect(locateFindings("", [{ path: "plates", message: "" }])).toEqual([
    { path: "plates", message: "" },
  ]);
});
