import { linkSync, mkdirSync, readdirSync, symlinkSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { read, SMALL_FRAME, stillpoint, useSandbox } from "./sandbox.ts";

useSandbox();
const FRAME = "frames/five-inch.jsonc";
/** Few places to search. */
const QUICK = ["--map-pitch", "40 mm"];

/** The run must end with 2, print the message alone and compute nothing. */
async function refused(message: string, ...args: readonly string[]): Promise<void> {
  const { code, out, err } = await stillpoint(...args);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err.replace(/\s+/g, " ")).toContain(message);
}

describe("a report", () => {
  test("takes the place of an older report and of an empty file", async () => {
    writeFileSync("again.html", "");
    for (let i = 0; i < 2; i++) {
      expect((await stillpoint("rank", FRAME, "--report", "again.html", ...QUICK)).code).toBe(0);
      expect(read("again.html")).toMatch(/^<!DOCTYPE html>/);
    }
  });

  test("of a frame with the longest name is known again", async () => {
    const name = '\\"'.repeat(200);
    const frame = SMALL_FRAME.replace('"name": "Small"', `"name": "${name}"`);
    expect(frame).not.toBe(SMALL_FRAME);
    writeFileSync("long.jsonc", frame);
    for (let i = 0; i < 2; i++)
      expect((await stillpoint("rank", "long.jsonc", ...QUICK)).err).toBe("");
  });

  test.each([
    ["keep.txt", "a shopping list"],
    ["page.html", "<!DOCTYPE html>\n<html><title>My page</title></html>"],
  ])("does not take the place of %s", async (file, text) => {
    writeFileSync(file, text);
    const message = `${file} exists and is not a report of this program; choose another name or delete it.`;
    await refused(message, "rank", FRAME, "--report", file);
    expect(read(file)).toBe(text);
  });

  test("never takes the place of the frame file, whatever links lead there", async () => {
    mkdirSync("links");
    writeFileSync("mine.frame", SMALL_FRAME);
    symlinkSync("../mine.frame", "links/soft.html");
    linkSync("mine.frame", "links/hard.html");
    for (const file of [
      "mine.frame",
      "./links/../mine.frame",
      "links/soft.html",
      "links/hard.html",
    ]) {
      await refused("is the frame file itself", "rank", "mine.frame", "--report", file);
    }
    await refused("is the frame file itself", "rank", "links/soft.html", "--report", "mine.frame");
    expect(read("mine.frame")).toBe(SMALL_FRAME);
  });

  test("goes to a device as it is", async () => {
    expect((await stillpoint("rank", FRAME, "--report", "/dev/null", ...QUICK)).code).toBe(0);
  });
});

describe("a schema", () => {
  test("takes the place of an older schema only", async () => {
    for (let i = 0; i < 2; i++) {
      expect((await stillpoint("schema", "--output", "frame.schema.json")).code).toBe(0);
    }
    const withSchema = SMALL_FRAME.replace("{", '{ "$schema": "./frame.schema.json",');
    writeFileSync("editor.jsonc", withSchema);
    for (const file of [FRAME, "editor.jsonc"]) {
      const before = read(file);
      await refused("exists and is not a schema of this program", "schema", "--output", file);
      expect(read(file)).toBe(before);
    }
  });
});

describe("matrices", () => {
  test("take the place of older ones only", async () => {
    for (let i = 0; i < 2; i++) {
      expect((await stillpoint("matrices", FRAME, "--output", "m/")).code).toBe(0);
    }
    for (const [name, kind] of [
      ["mass.mtx", "a matrix"],
      ["unknowns.csv", "a list of unknowns"],
    ]) {
      mkdirSync(`other-${name}`);
      writeFileSync(`other-${name}/${name}`, "row;mine\n");
      const folder = `other-${name}/`;
      await refused(`is not ${kind} of this program`, "matrices", FRAME, "--output", folder);
      expect(readdirSync(folder)).toEqual([name]);
      expect(read(folder + name)).toBe("row;mine\n");
    }
  });

  test("never take the place of the frame file", async () => {
    mkdirSync("trap");
    writeFileSync("trap/mass.mtx", SMALL_FRAME);
    await refused("is the frame file itself", "matrices", "trap/mass.mtx", "--output", "trap/");
    expect(read("trap/mass.mtx")).toBe(SMALL_FRAME);
  });
});
