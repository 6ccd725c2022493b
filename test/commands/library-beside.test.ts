import { mkdirSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { libraryFile, readPlotly } from "../../src/report/plotly.ts";
import { read, stillpoint, useSandbox } from "./sandbox.ts";

useSandbox();
const FRAME = "frames/five-inch.jsonc";
const QUICK = ["--map-pitch", "40 mm"];
const LIBRARY = libraryFile();

describe("--library-beside", () => {
  test("leaves the plot library once beside all reports of a folder", async () => {
    const beside = ["--library-beside", ...QUICK];
    expect((await stillpoint("rank", FRAME, "--report", "out/a.html", ...beside)).code).toBe(0);
    expect(readdirSync("out").sort()).toEqual(["a.html", LIBRARY]);
    expect(read(`out/${LIBRARY}`)).toBe(readPlotly());
    const { mtimeMs } = statSync(`out/${LIBRARY}`);
    expect((await stillpoint("rank", FRAME, "--report", "out/b.html", ...beside)).code).toBe(0);
    expect(statSync(`out/${LIBRARY}`).mtimeMs).toBe(mtimeMs);
    const page = read("out/b.html");
    expect(page).toContain(`data-beside="${LIBRARY}"`);
    expect(page).toMatch(/script-src &#39;sha256-[\w+/=]+&#39; &#39;self&#39;;/);
    expect(page.length).toBeLessThan(400_000);
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
