import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { read, stillpoint, useSandbox } from "./sandbox.ts";

useSandbox();
const FRAME = "frames/five-inch.jsonc";
const QUICK = ["--mesh-size", "30 mm", "--modes", "12", "--workers", "1"];
const ARMS = ["--set", "arms.arm.thickness=4 mm, 6 mm"];

describe("compare", () => {
  test("answers in words, writes its page, and gives the same bytes again", async () => {
    const args = ["compare", FRAME, ...ARMS, ...QUICK, "--samples", "32", "--no-date"];
    const first = await stillpoint(...args, "--report", "a.html");
    const second = await stillpoint(...args, "--report", "b.html");
    expect(first).toMatchObject({ code: 0, err: "" });
    for (const line of first.out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
    expect(first.out).toMatch(/32 samples: /);
    expect(first.out).toMatch(/real difference|cannot be told apart|hardly matters/);
    expect(second.out.replace("b.html", "a.html")).toBe(first.out);
    expect(read("a.html")).toBe(read("b.html"));
  });

  test("with one value takes the file as it is beside it", async () => {
    const { out } = await stillpoint(
      ...["compare", FRAME, "--set", "bodies.battery.at#1=-30", "--no-sampling", "--json"],
      ...[...QUICK, "--no-report"],
    );
    const document = JSON.parse(out);
    expect(document).toMatchObject({ kind: "comparison" });
    expect(document.variants.map((v: { name: string }) => v.name)).toEqual([
      "as it is",
      "-30 mm battery at x",
    ]);
  });

  test("compares files, and says which cannot be built", async () => {
    const text = readFileSync(FRAME, "utf8");
    writeFileSync("stout.jsonc", text.replace('"thickness": "5 mm"', '"thickness": "6 mm"'));
    const { code, out } = await stillpoint(
      ...["compare", FRAME, "stout.jsonc", "--no-sampling", "--no-report", ...QUICK],
    );
    expect(code).toBe(0);
    expect(out).toMatch(/^ {2}stout /m);
  });
});

test("uncertainty names no winner that the samples do not bear out", async () => {
  const { out } = await stillpoint(
    ...["uncertainty", FRAME, "--samples", "32", "--json", "--no-report", ...QUICK],
  );
  const document = JSON.parse(out);
  const rivals: { name: string; best: { share: number; limitsOf95Percent: number[] } }[] =
    document.variants[0].bestSpotOfSamples.rivals;
  const [first] = rivals;
  const isClear = first.best.share >= 0.9 && first.best.limitsOf95Percent[0] > 0.8;
  expect(document.answer[0].startsWith(`"${first.name}" is the best place`)).toBe(isClear);
  expect(rivals.reduce((sum, r) => sum + r.best.share, 0)).toBeLessThan(1.001);
});

describe("sweep", () => {
  const sweep = (...more: string[]) =>
    stillpoint(
      ...["sweep", FRAME, "--vary", "arms.arm.thickness=4 mm..6 mm step 1 mm", ...QUICK, ...more],
    );

  test("writes rows and a page, and has nothing to do the second time", async () => {
    const first = await sweep("--out", "rows.csv", "--report", "rows.html");
    expect(first).toMatchObject({ code: 0, err: "" });
    expect(first.out).toMatch(/3 rows in rows\.csv\./);
    const rows = read("rows.csv");
    expect(rows.split("\r\n")[0]).toMatch(/^index,of,sweep,arms\.arm\.thickness_mm,mass_g,/);
    const again = await sweep("--out", "rows.csv", "--report", "again.html", "--no-date");
    expect(again.out.replace(/\s+/g, " ")).toContain("nothing was to do");
    expect(again.out).toContain("Quietest is");
    expect(existsSync("again.html")).toBe(true);
    expect(read("rows.csv")).toBe(rows);
  });

  test("in shards, joined, gives the same bytes", async () => {
    for (const i of [1, 2]) await sweep("--shard", `${i}/2`, "--out", `${i}.csv`, "--no-report");
    expect(await stillpoint("join", "2.csv", "1.csv", "--out", "joined.csv")).toMatchObject({
      code: 0,
    });
    expect(read("joined.csv")).toBe(read("rows.csv"));
  });

  test("does not write over the rows of another", async () => {
    const { code, err } = await stillpoint(
      ...["sweep", FRAME, "--vary", "dampingFactor=1, 2", "--out", "rows.csv", ...QUICK],
    );
    expect(code).toBe(2);
    expect(err).toContain("rows.csv holds rows of another sweep");
  });
});

describe("what cannot be", () => {
  test.each([
    [["compare", FRAME], "there is nothing to compare with"],
    [["compare", FRAME, "--set", "arms.arm.thickness"], "names no values"],
    [
      ["compare", FRAME, "--set", "arms.arm.thicknes=4 mm, 5 mm"],
      "Did you mean arms.arm.thickness?",
    ],
    [["compare", FRAME, "--set", "arms.arm.thickness=0 mm", "--no-sampling"], "more than zero"],
    [["compare", FRAME, "--set", "dampingFactor=2, 2"], "is set to 2 twice"],
    [["compare", FRAME, FRAME], "is named twice"],
    [["compare", FRAME, "--set", "arms.leg.thickness=4 mm, 5 mm"], "leg"],
    [["compare", FRAME, FRAME, "--set", "dampingFactor=1, 2"], "goes with one frame file"],
    [["compare", FRAME, ...ARMS, "--samples", "0"], "a whole number from 32 to 4096, but is 0"],
    [["compare", FRAME, ...ARMS, "--samples", "many"], "Give a whole number from 32 to 4096"],
    [["compare", FRAME, ...ARMS, "--error", "0"], "give percentage points from 1 to 20"],
    [["compare", FRAME, "--set", "dampingFactor=1..2 in 30"], "at most 24"],
    [["sweep", FRAME, "--vary", "dampingFactor=1, 2", "--shard", "3/2"], "--shard"],
    [["sweep", FRAME, "--vary", "dampingFactor=1, 2", "--out", "rows.txt"], ".csv"],
    [["sweep", FRAME, "--vary", "dampingFactor=2..1 step 1"], "--vary"],
    [["sweep", FRAME, "--vary", "arms.arm.thickness=0, -1", "--out", "bad.csv"], "none of the 2"],
    [["uncertainty", "none.jsonc"], "There is no such file"],
  ])("%j ends with 2 and advice", async (args, message) => {
    const { code, out, err } = await stillpoint(...args);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err.replace(/\s+/g, " ")).toContain(message);
    expect(existsSync("rows.txt")).toBe(false);
  });
});
