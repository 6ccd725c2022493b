import { expect, test } from "vitest";
import { shortNames } from "../../src/study/short-names.ts";

test("words that all names share are left out, units stay with their numbers", () => {
  expect(shortNames(["4 mm thickness", "6 mm thickness"])).toEqual(["4 mm", "6 mm"]);
  expect(shortNames(["4 mm", "6 mm"])).toEqual(["4 mm", "6 mm"]);
  expect(shortNames(["stack at nose", "stack at tail"])).toEqual(["nose", "tail"]);
  expect(shortNames(["soft mount", "screwed"])).toEqual(["soft mount", "screwed"]);
});

test("names stay as they are where a part would say nothing", () => {
  expect(shortNames(["five-inch"])).toEqual(["five-inch"]);
  expect(shortNames(["a b", "a b c"])).toEqual(["b", "b c"]);
  expect(shortNames(["arm", "arm"])).toEqual(["arm", "arm"]);
});
