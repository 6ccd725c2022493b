import {
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { requireWritable, writeFiles } from "../../src/commands/write-files.ts";
import { InputError } from "../../src/errors.ts";

let folder = "";
const at = (...names: string[]) => path.join(folder, ...names);
const text = (...names: string[]) => readFileSync(at(...names), "utf8");

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "stillpoint-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

describe("writeFiles", () => {
  test("makes missing folders and leaves nothing else behind", () => {
    writeFiles([{ path: at("a", "b", "c.txt"), text: "x" }]);
    expect(text("a", "b", "c.txt")).toBe("x");
    expect(readdirSync(at("a", "b"))).toEqual(["c.txt"]);
  });

  test("writes all of several files or none", () => {
    writeFileSync(at("old.txt"), "before");
    const files = [
      { path: at("old.txt"), text: "after" },
      { path: at("new.txt"), text: "x" },
      { path: at("old.txt", "impossible.txt"), text: "x" },
    ];
    expect(() => writeFiles(files)).toThrow(InputError);
    expect(text("old.txt")).toBe("before");
    expect(readdirSync(folder)).toEqual(["old.txt"]);
  });

  test("replaces a file and keeps its permissions", () => {
    writeFileSync(at("a.txt"), "before", { mode: 0o640 });
    writeFiles([{ path: at("a.txt"), text: "after" }]);
    expect(text("a.txt")).toBe("after");
    expect(statSync(at("a.txt")).mode & 0o777).toBe(0o640);
  });

  test("writes behind a link and keeps the link", () => {
    writeFileSync(at("real.txt"), "before");
    symlinkSync("real.txt", at("link.txt"));
    writeFiles([{ path: at("link.txt"), text: "after" }]);
    expect(text("real.txt")).toBe("after");
    expect(readdirSync(folder).sort()).toEqual(["link.txt", "real.txt"]);
  });

  test("writes to a device as it is", () => {
    writeFiles([{ path: "/dev/null", text: "x" }]);
    expect(statSync("/dev/null").isCharacterDevice()).toBe(true);
  });

  test.each([
    ["a folder", () => folder, /is a folder: give the name of a file/],
    ["a file as folder", () => at("file", "x"), /cannot be written: .*not a folder/],
    [
      "a name that is too long",
      () => at("x".repeat(300)),
      /cannot be written: the name is too long/,
    ],
  ])("says what is wrong with %s", (_, name, message) => {
    writeFileSync(at("file"), "");
    expect(() => writeFiles([{ path: name(), text: "x" }])).toThrow(message);
    expect(readdirSync(folder)).toEqual(["file"]);
  });
});

test("a place that cannot be written is found before any work is done", () => {
  expect(() => requireWritable(folder)).toThrow(InputError);
  expect(() => requireWritable(at("a.txt"))).not.toThrow();
  expect(readdirSync(folder)).toEqual([]);
});
