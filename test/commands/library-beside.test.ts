import { mkdirSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { rankedLines } from "../../src/commands/output/written.ts";
import { libraryFile, readPlotly } from "../../src/report/plotly.ts";
import { crossSections } from "../modes/toys.ts";
import { read, stillpoint, useSandbox } from "./sandbox.ts";

useSandbox();
const FRAME = "frames/five-inch.jsonc";
const QUICK = ["--map-pitch", "40 mm"];
const LIBRARY = libraryFile();

describe("--library-beside", () => {
  test("leaves the plot library once beside all reports of a folder", async () => {
    const beside = ["--library-beside", ...QUICK];
    const told = await stillpoint("rank", FRAME, "--report", "out/a.html", ...beside);
    expect(told.code).toBe(0);
    expect(told.out.trimEnd().split("\n").slice(-2)).toEqual([
      "Report: out/a.html",
      `Plot library beside it: ${LIBRARY} (keep them together)`,
    ]);
    expect(readdirSync("out").sort()).toEqual(["a.html", LIBRARY]);
    expect(read(`out/${LIBRARY}`)).toBe(readPlotly());
    const { mtimeMs } = statSync(`out/${LIBRARY}`);
    const again = await stillpoint("rank", FRAME, "--report", "out/b.html", ...beside);
    expect(again.out).toContain(LIBRARY);
    expect(statSync(`out/${LIBRARY}`).mtimeMs).toBe(mtimeMs);
    const page = read("out/b.html");
    expect(page).toContain(`data-beside="${LIBRARY}"`);
    expect(page).toMatch(/script-src &#39;sha256-[\w+/=]+&#39; &#39;self&#39;;/);
    expect(page.length).toBeLessThan(400_000);
  });

  test.each([
    ["compare", "--set", "dampingFactor=2", "--no-sampling", "--modes", "12"],
    ["sensitivity", "--no-suggestions"],
    ["sweep", "--vary", "dampingFactor=1, 2", "--out", "rows.csv", "--modes", "12"],
  ])("is named by %s", async (command, ...args) => {
    // Nothing turns, and there is no stack: quickly moved.
    const {
      propulsion: _p,
      stack: _s,
      candidates: _c,
      ...still
    } = crossSections({ armElements: 2 });
    const shaken = command === "sensitivity" ? still : crossSections({ armElements: 2 });
    writeFileSync("cross.jsonc", JSON.stringify({ version: 1, name: "Cross", ...shaken }));
    const { code, out } = await stillpoint(
      ...[command, "cross.jsonc", "--report", `${command}/a.html`, "--library-beside"],
      ...["--workers", "1", ...args],
    );
    expect(code).toBe(0);
    expect(out).toMatch(
      /\nReport: \w+\/a\.html\nPlot library beside it: plotly-[\w.-]+\.js \(keep them together\)\n$/,
    );
  });

  test("is not named where it lies in the report", () => {
    expect(rankedLines({ report: "a.html" }, {})).toBe("\nReport: a.html\n");
    expect(rankedLines({ map: "a.csv" }, { libraryBeside: true })).toBe("\nMap: a.csv\n");
  });

  test("writes nothing where another file has the library's name", async () => {
    mkdirSync("taken");
    writeFileSync(`taken/${LIBRARY}`, "mine");
    const { code, err } = await stillpoint(
      ...["rank", FRAME, "--report", "taken/a.html", "--library-beside", ...QUICK],
    );
    expect(code).toBe(2);
    expect(err.replace(/\s+/g, " ")).toContain(
      `--library-beside: taken/${LIBRARY} exists and is not the plot library that reports use`,
    );
    expect(readdirSync("taken")).toEqual([LIBRARY]);
    expect(read(`taken/${LIBRARY}`)).toBe("mine");
  });

  test("makes no sense without a report", async () => {
    const { code, err } = await stillpoint("rank", FRAME, "--no-report", "--library-beside");
    expect(code).toBe(2);
    expect(err).toContain("leave out one of the two");
  });
});
