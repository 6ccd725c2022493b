import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatPath } from "../../src/frame/file-path.ts";
import { parsePath } from "../../src/frame/parse-path.ts";

describe("a path that can be read", () => {
  test.each<[string, (string | number)[]]>([
    ["arms.arm.thickness", ["arms", "arm", "thickness"]],
    ['plates."rear deck".outline#3', ["plates", "rear deck", "outline", 2]],
    ["plates.rear deck.outline#3#1", ["plates", "rear deck", "outline", 2, 0]],
    [" bodies . battery . at #3 ", ["bodies", "battery", "at", 2]],
    ["plates.*.thickness", ["plates", "*", "thickness"]],
    ["modulusFactors.carbon-plate-0-90", ["modulusFactors", "carbon-plate-0-90"]],
    ['materials."a.b#2".E', ["materials", "a.b#2", "E"]],
    ["plates.top.holes#2.at", ["plates", "top", "holes", 1, "at"]],
    ["meshSize", ["meshSize"]],
  ])("%s", (text, path) => {
    expect(parsePath(text)).toEqual(path);
  });

  test("is the inverse of formatPath, whatever the names are", () => {
    const name = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.string(),
      fc.constantFrom("arm", "rear deck", "*", '"', "\\", ".", "#1", "", " ", "__proto__"),
    );
    const path = fc.array(fc.oneof(name, fc.nat({ max: 1e6 })), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(path, (steps) => {
        expect(parsePath(formatPath(steps))).toEqual(steps);
      }),
      { seed: 5, numRuns: 500 },
    );
  });
});

describe("a path that cannot be read", () => {
  test.each([
    ["", "it is empty"],
    ["  ", "it is empty"],
    [".arms", "it begins with a dot"],
    ["arms..arm", 'a name is missing at "." (character 6)'],
    ["arms.", "it ends with a dot"],
    ["arms.arm.width#0", "list entries are counted from 1, as in #1"],
    ["arms.arm.width[0]", "list entries are written #1, #2, not [0], [1]"],
    ["arms.arm.width#1x", '"#" (character 15) is not expected'],
    ['plates."rear', "a quotation mark is never closed"],
    ['plates."rear"deck', '"d" (character 14) is not expected'],
    ['plates."\\x"', '"\\x" is no text in quotes'],
  ])("%s", (text, why) => {
    expect(() => parsePath(text)).toThrow(
      `cannot be read: ${why}. Write it like arms.arm.thickness, plates."rear deck".z or arms.arm.width#1.`,
    );
  });
});
