/** The sentences of a comparison: the facts they tell, their order, and their digits. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compareOutcomes } from "../../src/study/compare.ts";
import { differenceWords } from "../../src/study/compare-words.ts";
import { movedWords } from "../../src/study/figures.ts";
import { overviewWords } from "../../src/study/overview-words.ts";
import type { Outcome } from "../../src/variants/types.ts";
import { meeting, reference, reshaped, spot, variant } from "./compare-fixtures.ts";

const words = (to: Outcome, from = reference) =>
  differenceWords(
    compareOutcomes([
      { name: "as filed", outcome: from },
      { name: "changed", outcome: to },
    ]).differences[0],
  );
const same = [0, 1, 2, 3, 4];

describe("one change, one sentence:", () => {
  test.each<[string, Partial<Outcome>, string]>([
    ["nothing", { mass: 0.5005 }, "Nothing changes that would be worth a word."],
    ["more mass", { mass: 0.5124 }, "It weighs 12.4 g more (2.5 %): 512 g."],
    ["less mass", { mass: 0.4 }, "It weighs 100 g less (20 %): 400 g."],
    [
      "the first mode",
      reshaped([87.3, 100, 150, 200, 300], same),
      "Its first mode, battery sways, rises 9.1 %, from 80 to 87.3 Hz.",
    ],
    [
      "another mode alone",
      reshaped([80, 100, 150, 180, 300], same),
      "Of the modes only number 4, arms swing, changes: it falls 10 %, from 200 to 180 Hz.",
    ],
    [
      "noise at the best spot",
      { spots: [spot("centre", { gyro: 1.5 })] },
      'The best spot stays "centre": the gyro reads 1.5 deg/s rms there, 6 dB less than in the reference.',
    ],
    [
      "filter delay at the best spot",
      { spots: [spot("centre", { delay: 3.42e-3 })] },
      'The best spot stays "centre": its filters need 0.42 ms more delay (3.42 ms in all).',
    ],
    [
      "no filter left to need",
      { spots: [spot("centre", { delay: 0 })] },
      'The best spot stays "centre": its filters need 3 ms less delay (none is left).',
    ],
    [
      "a target out of reach",
      { spots: [spot("centre", { delay: Number.POSITIVE_INFINITY })] },
      'The best spot stays "centre": no low-pass brings it to what is wanted any more.',
    ],
    [
      "a crossing that leaves hover",
      { meetings: [] },
      "No longer near hover: blade pass meets arms flap (100 Hz) 3 % above hover.",
    ],
    [
      "a crossing that comes to hover",
      { meetings: [meeting(2, 0.03), meeting(5, -0.042)] },
      "New near hover: blade pass meets top bends (300 Hz) 4.2 % below hover.",
    ],
    [
      "the centre of gravity",
      { cg: [-0.0022, 0, 0.012] },
      "The centre of gravity moves 3.2 mm back and 2 mm up.",
    ],
    [
      "false tilt",
      { spots: [spot("centre", { tilt: 0.01 + Math.PI / 180 })] },
      'In steady yaw "centre" reads 1 degree more false tilt (1.6 degrees).',
    ],
    [
      "a spot that is ruled out",
      { spots: [spot("centre"), spot("nose", { ruledOut: "no room" })] },
      'Now ruled out: "nose" (no room).',
    ],
    [
      "a spot that is open again",
      { spots: [spot("centre"), spot("tail", { score: 9 })] },
      'No longer ruled out: "tail" (was cantilevered).',
    ],
  ])("%s", (_, more, sentence) => {
    expect(words(variant(more))).toEqual([sentence]);
  });

  test("a mode that goes, and one that comes", () => {
    const few = variant({ ...reshaped([80, 150, 200, 300], [0, 2, 3, 4]), meetings: [] });
    const before = variant({ meetings: [] });
    expect(words(few, before)).toEqual([
      "Without a counterpart here: 1 mode of the reference, arms flap (100 Hz).",
    ]);
    expect(words(before, few)).toEqual([
      "Without a counterpart in the reference: 1 mode of this one, arms flap (100 Hz).",
    ]);
  });
});

describe("the best spot", () => {
  const two = (centre: number, nose: number) =>
    variant({ spots: [spot("centre", { score: centre }), spot("nose", { score: nose })], best: 1 });

  test("is another, by how much, and whether that matters", () => {
    expect(words(two(4, 0))).toEqual([
      'The best spot is now "nose" instead of "centre", 4 dB ahead of it by score: noise and filter delay are as at the reference\'s.',
    ]);
    expect(words(two(0.2, 0))[0]).toContain("though the two are as good as tied");
  });

  test("is none, or one where there was none", () => {
    const { best: _, ...closed } = variant({ spots: [spot("centre", { ruledOut: "no room" })] });
    expect(words(closed)[0]).toBe(
      'No spot is left without a flag that rules it out; "centre" was best.',
    );
    expect(words(reference, closed)[0]).toBe(
      '"centre" can be used, where the reference has no spot without a flag that rules it out: 3 deg/s rms.',
    );
  });
});

describe("several changes", () => {
  test("stand in order of what they mean", () => {
    const big = { spots: [spot("centre", { gyro: 12 })], best: 0 };
    const small = { mass: 0.51 };
    expect(words(variant({ ...big, ...small })).map((s) => s.slice(0, 13))).toEqual([
      "The best spot",
      "It weighs 10 ",
    ]);
    const heavy = { mass: 0.8, spots: [spot("centre", { gyro: 3.3 })] };
    expect(words(variant(heavy)).map((s) => s.slice(0, 13))).toEqual([
      "It weighs 300",
      "The best spot",
    ]);
  });

  test("are told with three digits at most, ups as ups, whatever they are", () => {
    const factor = fc.double({ min: 0.3, max: 3, noNaN: true });
    const some = fc.record({
      mass: factor,
      first: fc.double({ min: 0.5, max: 1.2, noNaN: true }),
      gyro: factor,
      delay: fc.oneof(factor, fc.constant(Number.POSITIVE_INFINITY)),
      x: fc.double({ min: -0.02, max: 0.02, noNaN: true }),
    });
    fc.assert(
      fc.property(some, ({ mass, first, gyro, delay, x }) => {
        const to = variant({
          mass: 0.5 * mass,
          cg: [0.001 + x, 0, 0.01],
          ...reshaped([80 * first, 100, 150, 200, 300], same),
          spots: [spot("centre", { gyro: 3 * gyro, delay: 3e-3 * delay })],
        });
        const said = words(to);
        const text = said.join(" ");
        for (const [number] of text.matchAll(/\d[\d.]*\d|\d/g)) {
          const significant = number.replace(".", "").replace(/^0+/, "").replace(/0+$/, "");
          expect(significant.length).toBeLessThanOrEqual(3);
        }
        expect(text).not.toMatch(/NaN|Infinity|undefined|e[+-]\d/);
        for (const s of said) expect(s).toMatch(/^[A-Z"].*\.$/);
        if (Math.abs(mass - 1) > 0.01) {
          expect(text).toMatch(mass > 1 ? /weighs [\d.]+ g more/ : /weighs [\d.]+ g less/);
        }
        if (Math.abs(first - 1) > 0.01) {
          expect(text).toMatch(first > 1 ? /battery sways, rises/ : /battery sways, falls/);
        }
        if (Math.abs(20 * Math.log10(gyro)) > 0.6) {
          expect(text).toMatch(gyro > 1 ? /dB more than/ : /dB less than/);
        }
        if (Math.abs(x) > 1.1e-3) expect(text).toMatch(x > 0 ? /mm forward/ : /mm back/);
      }),
      { seed: 17, numRuns: 200 },
    );
  });
});

test("moves are told by the farthest way first, and lesser ones left out", () => {
  expect(movedWords([0, 0, 0])).toBe("");
  expect(movedWords([0.0011, -0.005, 0.0032])).toBe(
    "5 mm to the right, 3.2 mm up and 1.1 mm forward",
  );
  expect(movedWords([0.02, 0, -0.0002])).toBe("20 mm forward");
});

describe("several variants together", () => {
  const made = (name: string, mass: number, gyro: number) => ({
    name,
    outcome: variant({ mass, spots: [spot("centre", { gyro })] }),
  });

  test("name the lightest, the quietest, and what is beaten in both", () => {
    expect(overviewWords([made("a", 0.5, 3), made("b", 0.45, 4), made("c", 0.52, 3.1)])).toEqual([
      'The lightest is "b" (450 g), the quietest "a" (3 deg/s rms of gyro noise at its best spot).',
      'No reason by mass, noise or filter delay to take "c": another is better in one and no worse in the others.',
    ]);
    expect(overviewWords([made("a", 0.5, 3), made("b", 0.45, 2)])[0]).toBe(
      '"b" is both the lightest (450 g) and the quietest (2 deg/s rms of gyro noise at its best spot).',
    );
  });

  test("leave out those without a spot, and say so", () => {
    const { best: _, ...closed } = reference;
    const all = [made("a", 0.5, 3), made("b", 0.45, 4), { name: "shut", outcome: closed }];
    expect(overviewWords(all).at(-1)).toBe('Without a spot to use: "shut" (cantilevered).');
    expect(overviewWords(all.slice(2))).toEqual(['Without a spot to use: "shut" (cantilevered).']);
  });
});
