/** Two variants, frame by frame. */

import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import {
  type NoiseSample,
  pairedNoise,
  pairedShift,
  variantChances,
} from "../../src/study/paired.ts";

const at = (gyro: number, other = 99): NoiseSample => ({
  best: 1,
  spots: [
    { name: "rear", gyro: other },
    { name: "centre", gyro },
  ],
});
const none: NoiseSample = { spots: [{ name: "rear", gyro: 1, ruledOut: "cantilevered" }] };
const n = 200;
/** A scatter of +-12 dB that both variants share. */
const common = Array.from({ length: n }, (_, i) => 10 ** ((((i * 73) % n) / n - 0.5) * 1.2));

describe("noise", () => {
  test("a small steady difference is seen through a large scatter that both share", () => {
    const noise = pairedNoise(
      common.map((g) => at(g)),
      common.map((g, i) => at(g * 10 ** ((1 + 0.4 * Math.sin(i)) / 20))),
    );
    expect(noise.quieter?.map((c) => c.share)).toEqual([1, 0]);
    expect(noise.decibel?.median.value).toBeCloseTo(1, 1);
    expect(noise.decibel?.low.value).toBeGreaterThan(0.55);
    expect(noise.decibel?.high.value).toBeLessThan(1.45);
  });

  test("is that of the best spot, or of the spot named", () => {
    const [a, b] = [[at(10, 40)], [at(20, 20)]];
    expect(pairedNoise(a, b).decibel?.median.value).toBeCloseTo(6.0206, 4);
    expect(pairedNoise(a, b, "rear").decibel?.median.value).toBeCloseTo(-6.0206, 4);
    expect(pairedNoise(a, b, "front").decibel).toBeUndefined();
  });

  test("equal noise counts half for either", () => {
    const noise = pairedNoise([at(1), at(2)], [at(1), at(3)]);
    expect(noise.quieter?.map((c) => c.share)).toEqual([0.75, 0.25]);
  });

  test("frames in which one has no place are counted beside", () => {
    const noise = pairedNoise([at(1), none, none, at(1)], [at(2), at(2), none, at(2)]);
    expect(noise.out.map((c) => c.share)).toEqual([0.5, 0.25]);
    expect(noise.decibel?.found).toBe(2);
    expect(noise.quieter?.[0].of).toBe(2);
    const never = pairedNoise([none], [at(1)]);
    expect([never.quieter, never.decibel]).toEqual([undefined, undefined]);
    expect(pairedNoise([none], [at(1)], "rear").decibel).toBeUndefined();
  });

  test.each([
    ["as many samples", [at(1)], [at(1), at(2)], /1 of one and 2 of another/],
    ["noise above 0", [at(0)], [at(1)], /at "centre" one sample has 0/],
  ])("needs %s", (_, a, b, says) => {
    expect(() => pairedNoise(a, b)).toThrow(InputError);
    expect(() => pairedNoise(a, b)).toThrow(says);
  });
});

describe("several variants", () => {
  test("are compared in the same samples", () => {
    const chances = variantChances([
      { name: "4 mm", samples: [at(5), at(5), at(5), none] },
      { name: "5 mm", samples: [at(4), at(5.4), at(9), none] },
      { name: "6 mm", samples: [at(9), at(3), at(9), at(1)] },
    ]);
    expect(chances.rivals.map((r) => [r.name, r.best.share, r.near.share, r.out.share])).toEqual([
      ["6 mm", 0.5, 0.5, 0],
      ["4 mm", 0.25, 0.25, 0.25],
      ["5 mm", 0.25, 0.25, 0.25],
    ]);
  });

  test("must have the same samples", () => {
    const make = () =>
      variantChances([
        { name: "a", samples: [at(1)] },
        { name: "b", samples: [] },
      ]);
    expect(make).toThrow(/1 of one and 0 of another/);
    expect(() => variantChances([])).toThrow(InputError);
  });
});

describe("a mode's shift", () => {
  test("is in Hz and a share of the first's frequency", () => {
    const first = common.map((c) => 100 * c);
    const shift = pairedShift(
      first,
      first.map((f) => 1.1 * f),
    );
    expect(shift?.higher.share).toBe(1);
    expect(shift?.relative.low.value).toBeCloseTo(0.1, 12);
    expect(shift?.relative.high.value).toBeCloseTo(0.1, 12);
    expect(shift?.hertz.median.value).toBeCloseTo(10, 0);
  });

  test("leaves out samples in which either lacks the mode", () => {
    const shift = pairedShift([100, undefined, 100, 100], [90, 90, undefined, 80]);
    expect([shift?.hertz.found, shift?.hertz.of]).toEqual([2, 4]);
    expect(shift?.higher.share).toBe(0);
    expect(pairedShift([undefined], [1])).toBeUndefined();
  });
});
