import { existsSync, linkSync, mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { MAP_HEADER } from "../../src/commands/output/map-csv.ts";
import { UNKNOWNS_HEADER } from "../../src/commands/output/unknowns.ts";
import { requireApart } from "../../src/commands/overwrite.ts";
import { readCsv } from "./csv-reader.ts";
import { read, SMALL_FRAME, stillpoint, useSandbox } from "./sandbox.ts";

useSandbox();
const FRAME = "frames/five-inch.jsonc";
/** Few places, so that the tests are quick. */
const COARSE = ["--map-pitch", "30 mm"];

/** The run must end with 2, print the message alone and compute nothing. */
async function refused(message: string, ...args: readonly string[]): Promise<void> {
  const { code, out, err } = await stillpoint("rank", ...args);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err.replace(/\s+/g, " ")).toContain(message);
}

describe("the map of a frame", () => {
  test("is written with the report, and says the same as the JSON", async () => {
    const files = ["--report", "out/a.html", "--map", "out/a.csv"];
    const { code, out, err } = await stillpoint("rank", FRAME, "--json", ...files, ...COARSE);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(read("out/a.html")).toMatch(/^<!DOCTYPE html>/);
    const { map, mapFile, report } = JSON.parse(out);
    expect({ mapFile, report }).toEqual({ mapFile: "out/a.csv", report: "out/a.html" });
    expect(map.pitchM).toBeCloseTo(0.03, 12);

    const [header, ...rows] = readCsv(read("out/a.csv"));
    const column = (name: string) => rows.map((row) => row[header.indexOf(name)]);
    expect(rows.length).toBeGreaterThan(1);
    expect(rows).toHaveLength(map.places.length);
    const sorted = (values: readonly (number | string)[]) => {
      return values.map((v) => Number(v)).toSorted((a, b) => a - b);
    };
    for (const [name, field, factor] of [
      ["x_mm", "xM", 1e3],
      ["gyro_deg_per_s_rms", "sensedGyroDegPerSecRms", 1],
      ["accel_g_rms", "sensedAccelGRms", 1],
      ["delay_ms", "delayLowPassAloneS", 1e3],
      ["delay_with_notches_ms", "delayWithNotchesS", 1e3],
      ["false_tilt_deg", "falseTiltDeg", 1],
      ["score_db", "scoreDb", 1],
    ] as const) {
      const there = sorted(
        map.places.map((place: Record<string, number>) => place[field] * factor),
      );
      const here = sorted(column(name));
      here.forEach((value, i) => {
        const error = Math.abs(value - there[i]);
        expect(error).toBeLessThanOrEqual(5.1e-6 * Math.abs(there[i]) + 1e-6);
      });
    }
    // on one plate the places where the stack fits stand 30 mm apart, or a multiple of it
    const free = map.places.filter(
      (p: Record<string, unknown>) => p.inTheWay === null && p.patternShare === 1,
    );
    const xs = free
      .filter((p: { plate: string }) => p.plate === free[0].plate)
      .map((p: { xM: number }) => 1e3 * p.xM);
    for (const x of xs) expect(Math.abs(((x - xs[0]) / 30) % 1)).toBeCloseTo(0, 5);
  });

  test("takes the place of an older map, and is told at the end", async () => {
    writeFileSync("old.csv", `${MAP_HEADER}\nolder\n`);
    const { code, out } = await stillpoint(
      ...["rank", FRAME, "--no-report", "--map", "old.csv"],
      ...COARSE,
    );
    expect(code).toBe(0);
    expect(out).toMatch(/\n\nMap: old\.csv\n$/);
    expect(out.replace(/\s+/g, " ")).toMatch(
      /Searched: \d+ places all over the plates, 30 mm apart,/,
    );
    expect(read("old.csv").startsWith(`${MAP_HEADER}\r\n`)).toBe(true);
  });
});

describe("a map does not take the place", () => {
  test.each([
    ["keep.csv", "a,b\r\n1,2\r\n"],
    ["unknowns.csv", `${UNKNOWNS_HEADER}\n`],
  ])("of %s", async (file, text) => {
    writeFileSync(file, text);
    const report = ["--report", "beside.html"];
    await refused(
      `${file} exists and is not a map of this program`,
      FRAME,
      "--map",
      file,
      ...report,
    );
    expect(read(file)).toBe(text);
    expect(existsSync("beside.html")).toBe(false);
  });

  test("of the frame file, whatever links lead there", async () => {
    writeFileSync("mine.frame", SMALL_FRAME);
    mkdirSync("links");
    symlinkSync("../mine.frame", "links/soft.csv");
    linkSync("mine.frame", "links/hard.csv");
    for (const file of ["mine.frame", "links/soft.csv", "links/hard.csv"]) {
      await refused("is the frame file itself", "mine.frame", "--no-report", "--map", file);
    }
    expect(read("mine.frame")).toBe(SMALL_FRAME);
  });

  test("of a folder", async () => {
    mkdirSync("folder");
    await refused("folder is a folder: give the name of a file.", FRAME, "--map", "folder");
  });

  test("of the report of the same run, whatever links lead there", async () => {
    mkdirSync("one");
    symlinkSync("one", "other");
    writeFileSync("empty", "");
    linkSync("empty", "void");
    for (const [report, map] of [
      ["same.out", "./same.out"],
      ["one/same.out", "other/same.out"],
      ["empty", "void"],
    ]) {
      const options = ["--report", report, "--map", map];
      await refused("was given for two different outputs", FRAME, ...options);
    }
    expect(read("empty")).toBe("");
  });
});

test("two outputs may go to the same device", () => {
  expect(() => requireApart("/dev/null", "/dev/null")).not.toThrow();
});
