import { mkdirSync, writeFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { requireFrameFile } from "../../../src/commands/input/missing-frame.ts";
import { InputError } from "../../../src/errors.ts";
import { SMALL_FRAME, useSandbox } from "../sandbox.ts";

useSandbox();
beforeAll(() => {
  writeFileSync("package.json", '{ "name": "x", "version": "1.0.0" }');
  writeFileSync("package-lock.json", '{ "lockfileVersion": 3, "packages": {} }');
  writeFileSync("tsconfig.json", '{ "compilerOptions": {} }');
  writeFileSync(".hidden.jsonc", SMALL_FRAME);
  mkdirSync("more");
  writeFileSync("more/bench.json", '{ "version": 1, "members": {} }');
  writeFileSync("more/broken.jsonc", '{ "version": 1, "plates": { "top": [ } ');
  mkdirSync("more/folder.json");
});

function told(file: string): string {
  try {
    requireFrameFile(file);
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    expect((error as InputError).file).toBe(file);
    return (error as InputError).message;
  }
  return "";
}

describe("a frame file that is not there", () => {
  test.each([
    ["frames/five-ich.jsonc", ' Did you mean "frames/five-inch.jsonc"?'],
    ["five-inch.jsonc", ' Did you mean "frames/five-inch.jsonc"?'],
    ["five-inch", ' Did you mean "frames/five-inch.jsonc"?'],
    ["more/bnch.json", ' Did you mean "more/bench.json"?'],
    ["package.jsonc", ' Frames to choose from: "frames/five-inch.jsonc".'],
    ["nofile.jsonc", ' Frames to choose from: "frames/five-inch.jsonc".'],
    ["hidden.jsonc", ' Frames to choose from: "frames/five-inch.jsonc".'],
    [
      "more/zzzzzz.jsonc",
      ' Frames to choose from: "more/bench.json", "more/broken.jsonc" or "frames/five-inch.jsonc".',
    ],
    ["none/zzzzzz.jsonc", ' Frames to choose from: "frames/five-inch.jsonc".'],
  ])("%s is told with the frames that are near", (file, hint) => {
    expect(told(file)).toBe(`There is no such file.${hint}`);
  });

  test("of what is there nothing is said", () => {
    expect(told("frames/five-inch.jsonc")).toBe("");
    expect(told("more")).toBe("");
  });
});
