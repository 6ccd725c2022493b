import { existsSync, writeFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { crossSections } from "../modes/toys.ts";
import { type Outcome, read, stillpoint, useSandbox } from "./sandbox.ts";

useSandbox();

const FRAME = "cross.jsonc";
const QUICK = ["--samples", "32", "--workers", "1", "--modes", "12", "--no-date"];
const { candidates: _candidates, ...cross } = crossSections({ lossFactor: 0.3, armElements: 2 });

beforeAll(() => {
  const candidates = {
    middle: { plate: "hub", at: [0, 0] },
  };
  writeFileSync(FRAME, JSON.stringify({ version: 1, name: "Cross", ...cross, candidates }));
});

describe("rank --sure", () => {
  let json: Outcome;
  beforeAll(async () => {
    json = await stillpoint("rank", FRAME, "--sure", ...QUICK, "--report", "sure.html", "--json");
  }, 120_000);

  test("adds chances, bands, inputs and suggestions to the document of the ranking", () => {
    expect({ code: json.code, err: json.err }).toEqual({ code: 0, err: "" });
    const { kind, places, sure } = JSON.parse(json.out);
    expect(kind).toBe("ranking");
    expect(sure.samples).toMatchObject({ samples: 32, seed: 1 });
    const { rivals } = sure.bestPlaceOfSamples;
    const shares: number[] = rivals.map((r: { best: { share: number } }) => r.best.share);
    expect(shares.reduce((a, b) => a + b, 0)).toBeLessThan(1.001);
    // every band holds the level of the drawing, or nearly: inputs scatter about it
    for (const { name, noise } of sure.places) {
      const drawn = places.find((p: { name: string }) => p.name === name).sensedGyroDegPerSecRms;
      const { lowDegPerSecRms, highDegPerSecRms } = noise.sensedGyro;
      expect(lowDegPerSecRms).toBeLessThan(1.1 * drawn);
      expect(highDegPerSecRms).toBeGreaterThan(drawn / 1.1);
    }
    expect(sure.sensitivity.spot).toBe(places[0].name);
    expect(sure.sensitivity.inputs.map((i: { name: string }) => i.name)).toContain(
      "arms.arm.thickness",
    );
    expect(sure.sensitivity.suggestions.tried).toBeGreaterThan(0);
  });

  test("tells it in the same page, with the options that made it", () => {
    const page = read("sure.html");
    for (const id of ["chances-chart", "sure-spot-chart", "sure-modes-chart"]) {
      expect(page).toContain(`id="${id}"`);
    }
    expect(page).toContain("rank cross.jsonc --modes 12 --sure --samples 32");
  });
});

test.each([
  [["--samples", "40"], "--samples"],
  [["--seed", "2"], "--seed"],
  [["--workers", "1"], "--workers"],
])("%j without --sure ends with 2 and advice", async (args, option) => {
  const { code, out, err } = await stillpoint("rank", FRAME, ...args, "--report", "none.html");
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err.replace(/\s+/g, " ")).toContain(`${option}: goes with --sure`);
  expect(existsSync("none.html")).toBe(false);
});

test("too few samples are refused before anything is computed", async () => {
  const { code, err } = await stillpoint("rank", FRAME, "--sure", "--samples", "4");
  expect(code).toBe(2);
  expect(err.replace(/\s+/g, " ")).toContain("a whole number from 32 to 4096, but is 4");
});
