import { mkdtempSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { parseFrame, readFrame } from "../../src/frame/read.ts";
import { fileWith, findingsIn, LIBRARY, PLATE } from "./helpers.ts";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "frame-read-"));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

function write(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

function errorOf(path: string): InputError {
  try {
    readFrame(path, LIBRARY);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error(`${path} was read`);
}

describe("readFrame", () => {
  test("reads a good file", () => {
    const path = write("good.jsonc", JSON.stringify(fileWith({})));
    expect(readFrame(path, LIBRARY)).toEqual(
      parseFrame(JSON.stringify(fileWith({})), "x", LIBRARY),
    );
  });

  test("names the file as the user did, and says what would be right", () => {
    const path = write("bad.jsonc", JSON.stringify(fileWith({ meshSize: -1 }), undefined, 1));
    const error = errorOf(path);
    expect(error.file).toBe(path);
    expect(error.exitCode).toBe(2);
    expect(error.message).toBe(
      "meshSize: -1 (read as -1 mm) is not possible: it must be more than zero.",
    );
  });

  test("a file that is not there, and the one that was meant", () => {
    write("five-inch.jsonc", "{}");
    expect(errorOf(join(folder, "five-inhc.jsonc")).message).toBe(
      'There is no such file. Did you mean "five-inch.jsonc" in the same folder?',
    );
    expect(errorOf(join(folder, "no", "such", "folder.jsonc")).message).toBe(
      "There is no such file.",
    );
  });

  test("a folder", () => {
    expect(errorOf(folder).message).toBe("This is a folder: name the frame file in it.");
  });

  test("an empty file", () => {
    expect(errorOf(write("empty.jsonc", "")).message).toBe(
      'The file is empty. A frame file begins with { "version": 1, "name": "...".',
    );
  });

  test("a file of 50 MB is not even opened", () => {
    const path = write("huge.jsonc", "");
    truncateSync(path, 50_000_000); // a hole: takes no room on the disk
    expect(errorOf(path).message).toBe(
      "The file is too large (50.0 MB): a frame file has some kilobytes, at most 2 MB are read.",
    );
  });

  test("a file in another encoding", () => {
    const path = write("utf16.jsonc", Buffer.from("\uFEFF{}", "utf16le"));
    expect(errorOf(path).message).toBe(
      "This is not a text in UTF-8: save the file as plain text with UTF-8 encoding.",
    );
  });

  test("a byte order mark does no harm", () => {
    const path = write("bom.jsonc", `\uFEFF${JSON.stringify(fileWith({}))}`);
    expect(readFrame(path, LIBRARY).name).toBe("test");
  });
});

describe("parseFrame", () => {
  test("without library names lets unknown materials through, but not unknown plates", () => {
    const file = fileWith({
      plates: { base: { ...PLATE, material: "unobtainium" } },
      candidates: { c: { plate: "bass", at: [0, 0] } },
    });
    expect(() => parseFrame(JSON.stringify(file), "x")).toThrow(
      /^candidates\.c\.plate: There is no plate called "bass"\. Did you mean "base"\? Known here: "base"\.$/,
    );
  });

  test("reports everything at once, in the order of the file, with line and column", () => {
    const text = `{
  "version": 1,
  "nam": "x",
  "plates": {
    "bottom": {
      "material": "carbon-plate-0-9",
      "thickness": "2,5 mm",
      "z": "3 g",
      "outline": [[0, 0], [10, "y"], [0, 10]],
      "fill": 0
    },
    "bottom": {}
  },
  "arms": { "arm": { "joint": { "kind": "bolted", "plates": ["botom"], "inserted": 5 } } },
  "bodies": { "battery": { "mass": -1, "on": "bottom", "hold": "soft" } }
}`;
    const places = findingsIn(text).map(({ line, column, path }) => `${line}:${column} ${path}`);
    expect(places).toEqual([
      "1:1 name",
      "3:3 nam",
      "6:19 plates.bottom.material",
      "7:20 plates.bottom.thickness",
      "8:12 plates.bottom.z",
      "9:32 plates.bottom.outline#2#2",
      "10:15 plates.bottom.fill",
      "12:5 plates.bottom",
      "14:13 arms.arm.material",
      "14:13 arms.arm.thickness",
      "14:13 arms.arm.root",
      "14:13 arms.arm.tip",
      "14:13 arms.arm.width",
      "14:62 arms.arm.joint.plates#1",
      "15:15 bodies.battery.soft",
      "15:15 bodies.battery.at",
      "15:36 bodies.battery.mass",
    ]);
  });

  test("stops counting when there is more than a person can mend", () => {
    const outline = Array.from({ length: 300 }, () => [0, "y"]);
    const findings = findingsIn(fileWith({ plates: { base: { ...PLATE, outline } } }));
    expect(findings).toHaveLength(101);
    expect(findings[100].message).toBe(
      "There are 200 more findings of this kind; mend these first.",
    );
  });
});
