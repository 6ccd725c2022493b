import { expect, test } from "vitest";
import { changedFrame, readFrameSource } from "../../src/frame/change.ts";
import { LIBRARY_NAMES } from "../../src/material/library-names.ts";
import { assemble } from "../../src/matrices/assemble.ts";
import { prepareVariant } from "../../src/variants/prepare.ts";

test("variants of one drawing share the pattern of their matrices, and so the ordering", () => {
  const source = readFrameSource("frames/five-inch.jsonc", LIBRARY_NAMES);
  const patternOf = (written: string) => {
    const path = ["arms", "arm", "thickness"];
    const { file } = changedFrame(source, [{ path, written }], { library: LIBRARY_NAMES });
    const { mesh, bareModel } = prepareVariant(file, 0.015);
    return assemble(mesh, bareModel).K.pattern;
  };
  expect(patternOf("6 mm")).toBe(patternOf("4.5 mm"));
});
