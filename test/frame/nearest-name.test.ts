import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { editDistance, nearestName } from "../../src/frame/nearest-name.ts";

describe("editDistance", () => {
  test.each([
    ["", "", 0],
    ["arm", "arm", 0],
    ["arm", "", 3],
    ["kitten", "sitting", 3],
    ["ab", "ba", 1],
    ["thikcness", "thickness", 1],
    ["ca", "abc", 3], // the restricted form: no edits between swapped letters
  ])("%s to %s takes %i", (a, b, steps) => {
    expect(editDistance(a, b)).toBe(steps);
  });

  test("is the same both ways and no longer than the longer word", () => {
    const word = fc.string({ maxLength: 12 });
    fc.assert(
      fc.property(word, word, (a, b) => {
        const distance = editDistance(a, b);
        expect(distance).toBe(editDistance(b, a));
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length));
        expect(distance === 0).toBe(a === b);
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});

describe("nearestName", () => {
  const keys = ["material", "thickness", "outline", "left and right", "front and rear"];

  test.each([
    ["thicknes", "thickness"],
    ["Thickness", "thickness"],
    ["tihckness", "thickness"],
    ["left-and-right", "left and right"],
    ["left and rigth", "left and right"],
    ["mat", "material"],
    ["outlines", "outline"],
  ])("%s means %s", (typed, meant) => {
    expect(nearestName(typed, keys)).toBe(meant);
  });

  test.each([["colour"], ["x"], [""], ["ma"], ["t".repeat(500)]])(
    "%s means none of them",
    (typed) => {
      expect(nearestName(typed, keys)).toBeUndefined();
    },
  );

  test("takes the first of two that are equally near", () => {
    expect(nearestName("arn", ["arm", "art"])).toBe("arm");
  });
});
