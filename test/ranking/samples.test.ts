/** The four sample frames from file to verdict. */

import { describe, expect, test } from "vitest";
import { type Analysis, analyse } from "../../src/analyse.ts";
import { readFrame } from "../../src/frame/read.ts";
import type { RankedCandidate, Ranking } from "../../src/ranking/types.ts";

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

  test("what the chips pass on by multiples makes the place's figure over the mix", () => {
    for (const { passed, sensed } of ranking.candidates) {
      expect(passed.map((p) => p.multiple)).toEqual([1, 3, 6]);
      const overMix = (kind: "gyro" | "accel") =>
        passed
          .flatMap((p) => Array.from(excitation.weights, (w, s) => w * p[kind][s]))
          .reduce((sum, power) => sum + power, 0);
      expect(Math.sqrt(overMix("gyro")) / sensed.gyro).toBeCloseTo(1, 9);
      // The figure has the chip's own noise in it.
      expect(Math.sqrt(overMix("accel"))).toBeLessThan(sensed.accel);
      expect(Math.sqrt(overMix("accel"))).toBeGreaterThan(0.9 * sensed.accel);
    }
  });

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

  /** The craft without its stack, from the list of its parts. */
  const parts = mass.parts.filter((p) => p.name !== "stack");
  const bareMass = parts.reduce((m, p) => m + p.mass, 0);
  const cgWith = (c: RankedCandidate) =>
    [0, 1, 2].map((i) => {
      const moment = parts.reduce((m, p) => m + p.mass * p.cg[i], 0);
      const { stack, cg } = c.candidate;
      return (moment + stack.mass * cg[i]) / (bareMass + stack.mass);
    });

  test("figures of a candidate hang together", () => {
    const quietest = ranking.candidates
      .filter((c) => !c.flags.some((f) => f.hard))
      .reduce((a, b) => (b.sensed.gyro < a.sensed.gyro ? b : a));
    expect(parts.length).toBe(mass.parts.length - 1);
    for (const c of ranking.candidates) {
      expect(Math.hypot(...c.gyroAxes) / c.gyro).toBeCloseTo(1, 10);
      expect(Math.hypot(...c.accelAxes) / c.accel).toBeCloseTo(1, 10);
      expect(10 ** (c.decibel / 20)).toBeCloseTo(c.sensed.gyro / quietest.sensed.gyro, 9);
      // spectra have the motors' spread in them, so they are met as the mix means it
      const { nominalWeights, grid, speeds } = excitation;
      const mean = (v: Float64Array) => v.reduce((s, x, i) => s + nominalWeights[i] * x * x, 0);
      const quick = c.gyroTotal.map((v, i) => (grid[i] > 1.5 * speeds.hover ? v : 0));
      // as the chip passes it on; its low-pass takes more of what is fast
      expect(c.fast.power).toBeLessThan(mean(quick) / mean(c.gyroTotal));
      expect(c.fast.power).toBeGreaterThan(0.8 * (mean(quick) / mean(c.gyroTotal)));
      expect(Math.sqrt(mean(c.gyroTotal)) / c.gyro).toBeCloseTo(1, 9);
      expect(Math.sqrt(mean(c.accelTotal)) / c.accel).toBeCloseTo(1, 9);
      c.gyroTotal.forEach((v, i) => {
        const sum = c.spectra.reduce((s, o) => s + o.gyro[i] ** 2, 0);
        expect(v * v).toBeCloseTo(sum, 6);
      });
      expect(c.gyroRange[0]).toBeLessThanOrEqual(c.sensed.gyro);
      expect(c.gyroRange[1]).toBeGreaterThanOrEqual(c.sensed.gyro);
      // the chip's low-pass takes more than its sensitivity to acceleration adds
      expect(c.sensed.gyro).toBeLessThan(c.gyro);
      const shares = c.causes.map((k) => k.share);
      expect(shares).toEqual([...shares].sort((a, b) => b - a));
      expect(shares.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(1 + 1e-12);
      const cg = cgWith(c);
      const [x, y, z] = c.candidate.chip.map((v, i) => v - cg[i]);
      expect(c.fromCg).toBeCloseTo(Math.hypot(x, y), 9);
      expect(c.fromCg3d).toBeCloseTo(Math.hypot(x, y, z), 9);
      // tan 1 degree g/omega^2 at 200 deg/s: 14 mm
      expect(c.flags.some((f) => f.kind === "far from the centre of gravity")).toBe(
        c.fromCg > 0.01405,
      );
      const { gyro, accelerometer, tilt } = ranking.weights;
      const { scoreParts: part } = c;
      const score = gyro * part.gyro + accelerometer * part.accelerometer + tilt * part.tilt;
      expect(c.score).toBeCloseTo(score, 12);
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
    expect(place("three-inch", "under the top plate").tied).toBe(true);
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
    const reasons = deck.flags.filter((f) => f.hard).map((f) => f.kind);
    expect(reasons).toEqual(["cantilevered", "in the control band"]);
    expect(deck.decibel).toBeGreaterThan(10);
    expect(deck.tied).toBe(false);
    const { candidates, verdict } = sample("seven-inch").ranking;
    expect(candidates[candidates.length - 1]).toBe(deck);
    expect(verdict.sentences.join(" ")).toContain('"rear deck" (cantilevered; ');
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

  test("seven-inch: the rate loop could drive the deck's nodding, and nothing at the sandwich", () => {
    const deck = place("seven-inch", "rear deck");
    const [worst, ...others] = deck.couplings;
    expect(worst.axis).toBe("pitch");
    expect(worst.frequency).toBeGreaterThan(60);
    expect(worst.frequency).toBeLessThan(70);
    // measured: it turns the deck 24 times as much as the whole craft turns
    expect(worst.ratio).toBeGreaterThan(15);
    expect(worst.gain).toBeGreaterThan(5);
    // elsewhere, and about the other axes, the craft's own turning outdoes every mode below 80 Hz twofold
    const sandwich = place("seven-inch", "sandwich");
    expect(sandwich.couplings.length).toBe(3);
    for (const c of [...others, ...sandwich.couplings]) expect(c.ratio).toBeLessThan(2);
  });

  test("ten-inch: the centre; the place as built is as quiet but far from the centre of gravity", () => {
    expect(sample("ten-inch").ranking.use).toBe("self-level");
    expect(first("ten-inch").candidate.name).toBe("centre");
    const built = place("ten-inch", "front bay");
    expect([built.tied, built.candidate.designed]).toEqual([false, true]);
    expect(built.decibel).toBeLessThan(1);
    expect(built.score).toBeGreaterThan(first("ten-inch").score + 3);
    expect(built.fromCg).toBeCloseTo(0.063, 3);
    const text = built.flags.map((f) => f.text).join();
    // atan(3.4907^2 0.063/9.80665) = 4.5 degrees
    expect(text).toContain("4.5 degrees nose down");
    expect(sample("ten-inch").ranking.overhangs.some((o) => o.flagged)).toBe(false);
  });
});
