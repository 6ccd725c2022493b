/** The four sample frames from file to verdict. */

import { describe, expect, test } from "vitest";
import { type Analysis, analyse } from "../../src/analyse.ts";
import { readFrame } from "../../src/frame/read.ts";
import type { Ranking } from "../../src/ranking/types.ts";

const NAMES = ["three-inch", "five-inch", "seven-inch", "ten-inch"] as const;

function ranked(name: (typeof NAMES)[number]): Analysis & { readonly ranking: Ranking } {
  const a = analyse(readFrame(`frames/${name}.jsonc`));
  const { ranking } = a;
  if (!ranking) throw new Error(`${name} has no ranking`);
  return { ...a, ranking };
}

const samples = new Map(NAMES.map((name) => [name, ranked(name)]));
const sample = (name: (typeof NAMES)[number]) => samples.get(name) ?? ranked(name);
const place = (name: (typeof NAMES)[number], candidate: string) => {
  const found = sample(name).ranking.candidates.find((c) => c.candidate.name === candidate);
  if (!found) throw new Error(`no candidate "${candidate}"`);
  return found;
};
const first = (name: (typeof NAMES)[number]) => sample(name).ranking.candidates[0];

/** Two significant digits: what the last one does is not the point here. */
const rounded = (text: string) =>
  text.replace(/\d+(\.\d+)?/g, (n) => String(Number(Number(n).toPrecision(2))));

test("verdicts, numbers to two digits", async () => {
  const text = NAMES.map((name) => {
    const { headline, sentences } = sample(name).ranking.verdict;
    return [`${name}:`, ...[headline, ...sentences].map((s) => `  ${rounded(s)}`), ""].join("\n");
  }).join("\n");
  await expect(text).toMatchFileSnapshot("golden/verdicts.txt");
});

describe.each(NAMES)("%s", (name) => {
  const { ranking, modes, excitation, mass } = sample(name);
  if (!excitation) throw new Error("a sample without motors");

  test("crossings: every order meets every mode of the band, and no other", () => {
    const { low, hover, full } = excitation.speeds;
    const expected = modes.described.flatMap((m) =>
      [1, 3, 6].flatMap((order) => {
        const speed = (2 * Math.PI * m.frequency) / order;
        return speed >= low && speed <= full ? [{ mode: m.number, speed }] : [];
      }),
    );
    expected.sort((a, b) => a.speed - b.speed);
    expect(ranking.crossings.map((c) => c.mode)).toEqual(expected.map((c) => c.mode));
    ranking.crossings.forEach((c, i) => {
      expect(c.speed / expected[i].speed).toBeCloseTo(1, 12);
      expect((c.rpm * 2 * Math.PI) / 60 / c.speed).toBeCloseTo(1, 12);
      expect((1 + c.fromHover) * hover).toBeCloseTo(c.speed, 6);
      expect(c.nearHover).toBe(Math.abs(c.speed - hover) <= 0.1 * hover);
      expect(c.modeName).toBe(modes.described[c.mode - 1].name);
    });
  });

  test("figures of a candidate hang together", () => {
    const quietest = ranking.candidates
      .filter((c) => !c.flags.some((f) => f.hard))
      .reduce((a, b) => (b.gyro < a.gyro ? b : a));
    for (const c of ranking.candidates) {
      expect(Math.hypot(...c.gyroAxes) / c.gyro).toBeCloseTo(1, 10);
      expect(Math.hypot(...c.accelAxes) / c.accel).toBeCloseTo(1, 10);
      expect(10 ** (c.decibel / 20)).toBeCloseTo(c.gyro / quietest.gyro, 9);
      const mean = (v: Float64Array) => v.reduce((s, x, i) => s + excitation.weights[i] * x * x, 0);
      expect(Math.sqrt(mean(c.gyroTotal)) / c.gyro).toBeCloseTo(1, 9);
      expect(Math.sqrt(mean(c.accelTotal)) / c.accel).toBeCloseTo(1, 9);
      c.gyroTotal.forEach((v, i) => {
        const sum = c.spectra.reduce((s, o) => s + o.gyro[i] ** 2, 0);
        expect(v * v).toBeCloseTo(sum, 6);
      });
      expect(c.gyroRange[0]).toBeLessThanOrEqual(c.gyro * (1 + 1e-4));
      expect(c.gyroRange[1]).toBeGreaterThanOrEqual(c.gyro * (1 - 1e-4));
      const shares = c.causes.map((k) => k.share);
      expect(shares).toEqual([...shares].sort((a, b) => b - a));
      expect(shares.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(1 + 1e-12);
      const [x, y, z] = c.candidate.chip.map((v, i) => v - mass.cg[i]);
      expect(c.fromCg).toBeCloseTo(Math.hypot(x, y), 12);
      expect(c.fromCg3d).toBeCloseTo(Math.hypot(x, y, z), 12);
      expect(c.flags.some((f) => f.kind === "far from the centre of gravity")).toBe(
        c.fromCg > 0.02,
      );
    }
  });

  test("the modes reach beyond what is shaken, and the proof holds", () => {
    const shaken = (3 * excitation.speeds.full) / (2 * Math.PI);
    expect(modes.described[modes.described.length - 1].frequency).toBeGreaterThan(1.2 * shaken);
    expect(modes.evidence.counted).toBe(modes.evidence.found);
  });

  test("once per turn at hover falls near an arm mode, as each was drawn to", () => {
    const hover = excitation.speeds.hover / (2 * Math.PI);
    const arms = modes.described.filter((m) => m.name.includes("arms"));
    expect(Math.min(...arms.map((m) => Math.abs(m.frequency / hover - 1)))).toBeLessThan(0.28);
  });
});

describe("facts of the verdicts", () => {
  test("three-inch: nothing overhangs, hardly anything differs, and the middle of the base wins", () => {
    const { ranking } = sample("three-inch");
    expect(ranking.overhangs).toEqual([]);
    expect(first("three-inch").candidate.name).toBe("centre");
    expect(Math.max(...ranking.candidates.map((c) => c.decibel))).toBeLessThan(3);
    expect(ranking.candidates.every((c) => c.tied)).toBe(true);
  });

  test("five-inch: the middle of the sandwich, as built; the nose is worst", () => {
    expect(first("five-inch").candidate.name).toBe("sandwich centre");
    expect(first("five-inch").candidate.designed).toBe(true);
    const { candidates } = sample("five-inch").ranking;
    const worst = candidates.reduce((a, b) => (b.gyro > a.gyro ? b : a));
    expect(worst.candidate.name).toBe("nose bay");
    expect(sample("five-inch").ranking.overhangs).toEqual([]);
  });

  test("seven-inch: the sandwich; the rear deck is cantilevered and far the noisiest", () => {
    expect(first("seven-inch").candidate.name).toBe("sandwich");
    const deck = place("seven-inch", "rear deck");
    expect(deck.flags.filter((f) => f.hard).map((f) => f.kind)).toEqual(["cantilevered"]);
    expect(deck.decibel).toBeGreaterThan(10);
    expect(deck.tied).toBe(false);
    const { candidates, verdict } = sample("seven-inch").ranking;
    expect(candidates[candidates.length - 1]).toBe(deck);
    expect(verdict.sentences.join(" ")).toContain('Not at "rear deck": cantilevered');
    // a deck that nods: pitch and roll far above yaw
    expect(Math.max(deck.gyroAxes[0], deck.gyroAxes[1])).toBeGreaterThan(3 * deck.gyroAxes[2]);
  });

  test("seven-inch: the overhang has its length, direction, mass and a mode near the clamped deck's", () => {
    const { ranking, modes } = sample("seven-inch");
    const [deck] = ranking.overhangs;
    expect([deck.plate, deck.direction, deck.flagged]).toEqual(["rear deck", "rear", true]);
    // from the screws at -58 to the end at -156
    expect(deck.length).toBeCloseTo(0.098, 9);
    expect([deck.supportAt, deck.endAt]).toEqual([-0.058, -0.156]);
    // two boxes of 54 g and about 6 g of plate
    expect(deck.mass).toBeGreaterThan(0.058);
    expect(deck.mass).toBeLessThan(0.062);
    // 81 Hz by hand with a clamped root and 84 mm
    expect(deck.frequency).toBeGreaterThan(60);
    expect(deck.frequency).toBeLessThan(95);
    expect(modes.described[(deck.mode ?? 0) - 1].frequency).toBe(deck.frequency);
    expect(deck.text).toContain("98 mm");
  });

  test("ten-inch: the centre; the place as built ties but is far from the centre of gravity", () => {
    expect(first("ten-inch").candidate.name).toBe("centre");
    const built = place("ten-inch", "front bay");
    expect([built.tied, built.candidate.designed]).toEqual([true, true]);
    expect(built.fromCg).toBeCloseTo(0.063, 3);
    const text = built.flags.map((f) => f.text).join();
    // atan(6.9813^2 0.063/9.80665) = 17.4 degrees
    expect(text).toContain("17 degrees");
    expect(sample("ten-inch").ranking.overhangs.some((o) => o.flagged)).toBe(false);
  });
});
