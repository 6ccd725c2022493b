/** Whether two variants differ, on made-up paired samples. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { differenceOf } from "../../src/study/difference.ts";
import { differenceWords } from "../../src/study/difference-words.ts";
import { normalQuantile } from "../../src/study/normal.ts";
import {
  type NoiseSample,
  type PairedShift,
  pairedNoise,
  pairedShift,
} from "../../src/study/paired.ts";

const NAMES = ["6 mm arms", "5 mm arms"] as const;
const at = (decibel: number): NoiseSample => ({
  best: 0,
  spots: [{ name: "centre", gyro: 10 ** (decibel / 20) }],
});
const none: NoiseSample = { spots: [] };
/** Evenly spaced quantiles of a normal distribution, in mixed order. */
const normal = (n: number, mean: number, sigma: number) =>
  Array.from({ length: n }, (_, i) => mean + sigma * normalQuantile((((i * 37) % n) + 0.5) / n));
/** The second variant louder by these, dB, over a scatter of both. */
const noiseOf = (differences: readonly number[]) =>
  pairedNoise(
    differences.map((_, i) => at(20 + ((i * 7) % 11))),
    differences.map((d, i) => at(20 + ((i * 7) % 11) + d)),
  );
const told = (differences: readonly number[]) => differenceWords(NAMES, noiseOf(differences));
const kind = (differences: readonly number[]) => differenceOf(noiseOf(differences))?.kind;

describe("a real difference", () => {
  test("is told with its chance, its size and its band", () => {
    const text = told(normal(101, 1.2, 0.5));
    expect(text).toMatch(
      /^With 6 mm arms the best place is quieter than with 5 mm arms in 99 % of frames built to these spreads, by 1\.2 dB \(0\.4 to 2\.0\): a real difference\.$/,
    );
  });

  test("the other way round names the other variant, with the same figures", () => {
    const text = told(normal(101, -1.2, 0.5));
    expect(text).toMatch(/^With 5 mm arms the best place is quieter than with 6 mm arms/);
    expect(text).toContain("in 99 % of frames");
    expect(text).toContain("by 1.2 dB (0.4 to 2.0): a real difference");
  });
});

describe("not a real difference", () => {
  test("where either may be the quieter, however large the median", () => {
    const differences = normal(201, 2, 1.5);
    expect(kind(differences)).toBe("open");
    expect(told(differences)).toMatch(
      /^Not a real difference: with 5 mm arms the best place is between 0\.5 dB quieter and 4\.5 dB louder than with 6 mm arms in nine of ten frames/,
    );
    expect(told(differences)).not.toContain("a real difference.");
  });

  test("where it is sure but too small to matter", () => {
    const differences = normal(101, 0.3, 0.1);
    expect(kind(differences)).toBe("small");
    expect(told(differences)).toMatch(
      /^Not a real .*only by 0\.3 dB \(0\.1 to 0\.5\), and below 0\.5 dB does not matter\.$/,
    );
  });

  test("where the variants are alike", () => {
    expect(kind(normal(101, 0.05, 0.2))).toBe("alike");
    expect(kind(new Array(50).fill(0))).toBe("alike");
    expect(told(new Array(50).fill(0))).toMatch(
      /^Not a real .*within 0\.5 dB of each other in nine of ten/,
    );
  });

  test("yet, where the band only just excludes 0 for so few samples", () => {
    // 5 % quantile: 1.2 - 1.645 x 0.7 = 0.05, known to 0.7 x 2.1/sqrt(n)
    expect(kind(normal(40, 1.2, 0.65))).toBe("unsure");
    expect(told(normal(40, 1.2, 0.65))).toMatch(
      /^Not yet a real difference: with 6 mm arms .*too few/,
    );
    expect(kind(normal(4000, 1.2, 0.65))).toBe("real");
    expect(kind([3, 3.1, 2.9, 3, 3.2])).toBe("unsure");
  });
});

test("the kind is real only when the band excludes 0 and the median matters", () => {
  const differences = fc
    .tuple(
      fc.integer({ min: 1, max: 300 }),
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.double({ min: 0, max: 3, noNaN: true }),
    )
    .map(([n, mean, sigma]) => normal(n, mean, sigma));
  fc.assert(
    fc.property(differences, (d) => {
      const noise = noiseOf(d);
      const text = differenceWords(NAMES, noise);
      const { low, median, high } = noise.decibel ?? expect.fail("no band");
      const excludes = low.value > 0 || high.value < 0;
      if (/: a real difference/.test(text)) {
        expect(excludes && Math.abs(median.value) >= 0.5).toBe(true);
        expect(text.startsWith(`With ${NAMES[median.value > 0 ? 0 : 1]} `)).toBe(true);
      } else {
        expect(text).toMatch(/^Not (yet )?a real difference/);
      }
      expect(text).not.toMatch(/\d{4}|100 %|NaN|Infinity|-0/);
    }),
    { seed: 11, numRuns: 200 },
  );
});

describe("frames without a place", () => {
  test("are told for either variant", () => {
    const noise = pairedNoise(
      [...new Array(90).fill(at(0)), ...new Array(10).fill(none)],
      [...new Array(95).fill(at(3)), ...new Array(5).fill(none)],
    );
    expect(differenceWords(NAMES, noise)).toMatch(
      /a real difference\. Every place is ruled out with 6 mm arms in 10 % of frames and with 5 mm arms in 5 % of frames\.$/,
    );
  });

  test("only leave nothing to compare", () => {
    const text = differenceWords(NAMES, pairedNoise([none, none], [at(1), at(2)]));
    expect(text).toMatch(/^6 mm arms and 5 mm arms cannot be compared: no frame tried/);
  });
});

describe("frequency shifts", () => {
  const noise = noiseOf(normal(101, 1.2, 0.5));
  const shift = (mean: number, sigma: number, from = 200): PairedShift => {
    const by = normal(101, mean, sigma);
    return (
      pairedShift(
        by.map(() => from),
        by.map((d) => from + d),
      ) ?? expect.fail("no shift")
    );
  };
  const second = (shifts: readonly [string, PairedShift][]) =>
    differenceWords(
      NAMES,
      noise,
      shifts.map(([mode, s]) => ({ mode, shift: s })),
    ).split("a real difference. ")[1];

  test("are told with direction and band, largest first, the rest counted", () => {
    expect(
      second([
        ["arm bending", shift(-12, 2)],
        ["plate twist", shift(30, 3)],
        ["yaw", shift(6, 1)],
        ["flat", shift(0.1, 5)],
      ]),
    ).toBe(
      'From 6 mm arms to 5 mm arms the mode "plate twist" rises by 30 Hz (25 to 35), the mode "arm bending" falls by 12 Hz (8.7 to 15) and 1 other mode moves.',
    );
  });

  test("that may go either way, or are below 1 %, are not told", () => {
    expect(
      second([
        ["a", shift(5, 10)],
        ["b", shift(1, 0.1)],
      ]),
    ).toBe("No mode is sure to move by 1 % or more.");
    expect(second([])).toBeUndefined();
  });

  test("all in at most three sentences", () => {
    const text = differenceWords(
      NAMES,
      pairedNoise([...new Array(90).fill(at(0)), none], [...new Array(90).fill(at(3)), none]),
      [{ mode: "arm bending", shift: shift(12, 2) }],
    );
    expect(text.split(/\. (?=[A-Z])/).length).toBe(3);
  });
});
