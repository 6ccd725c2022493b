import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { foldedFrequency } from "../../src/filter/fold.ts";
import { type FoldedBand, foldedBelow, foldings, foldingText } from "../../src/sensing/folding.ts";
import { between, RUNS } from "../filter/filter-orders.ts";

const rpm = (speed: number) => (speed * 60) / (2 * Math.PI);
const speed = (rpm: number) => (rpm * 2 * Math.PI) / 60;

/**
 * cos(2 pi f/fs) of the sine that a run of samples is, with no word of folding: x[n+1] + x[n-1] =
 * 2 cos(w) x[n] for every sine, fitted over all n.
 */
function cosineOf(samples: Float64Array): number {
  let [num, den] = [0, 0];
  for (let n = 1; n < samples.length - 1; n++) {
    num += samples[n] * (samples[n + 1] + samples[n - 1]);
    den += 2 * samples[n] ** 2;
  }
  return num / den;
}

function sampled(f: number, fs: number, phase: number): Float64Array {
  return Float64Array.from({ length: 200 }, (_, n) => Math.cos((2 * Math.PI * f * n) / fs + phase));
}

describe("where a line shows", () => {
  test("1130 Hz at 1 kHz shows at 130 Hz", () => {
    expect(foldedFrequency(1130, 1000)).toBe(130);
    const cosine = cosineOf(sampled(1130, 1000, 0.3));
    expect((Math.acos(cosine) * 1000) / (2 * Math.PI)).toBeCloseTo(130, 8);
  });

  test.each([
    [0, 0],
    [499, 499],
    [500, 500],
    [501, 499],
    [870, 130],
    [1000, 0],
    [1500, 500],
    [27000, 0],
    [27200.5, 200.5],
  ])("%d Hz at 1 kHz shows at %d Hz", (f, shown) => {
    expect(foldedFrequency(f, 1000)).toBe(shown);
  });

  test("is where the samples of a sine have it", () => {
    fc.assert(
      fc.property(
        between(500, 32000),
        between(0.001, 12),
        between(0.1, 1.4),
        (fs, share, phase) => {
          const f = share * fs;
          const shown = foldedFrequency(f, fs);
          expect(shown).toBeGreaterThanOrEqual(0);
          expect(shown).toBeLessThanOrEqual(fs / 2);
          expect(Math.cos((2 * Math.PI * shown) / fs)).toBeCloseTo(
            cosineOf(sampled(f, fs, phase)),
            9,
          );
        },
      ),
      RUNS,
    );
  });

  test.each<[number, number, string]>([
    [-1, 1000, "f: the frequency must be 0 or more, but is -1 Hz."],
    [1, 0, "fs: the sampling rate must be above 0, but is 0 Hz."],
    [Number.NaN, 1000, "f: the frequency must be 0 or more, but is NaN Hz."],
  ])("%d Hz at %d Hz is refused", (f, fs, message) => {
    expect(() => foldedFrequency(f, fs)).toThrow(InputError);
    expect(() => foldedFrequency(f, fs)).toThrow(message);
  });
});

describe("bands of speeds whose lines fold", () => {
  test("order 6 from 5000 to 27400 rpm at 2 kHz, by hand", () => {
    // 500 to 2740 Hz: 1000 to 2000 Hz comes back down to 0, 2000 to 2740 Hz goes up again
    const bands = foldings([6], speed(5000), speed(27400), 2000);
    expect(bands.map(({ speeds }) => speeds.map((w) => Math.round(rpm(w))))).toEqual([
      [10000, 20000],
      [20000, 27400],
    ]);
    expect(bands[0].shown).toEqual([1000, 0]);
    expect(bands[1].shown).toEqual([0, expect.closeTo(740, 9)]);
    expect(bands.map(foldingText)).toEqual([
      "order 6 at 10000 to 20000 rpm (1000 to 2000 Hz) shows at 1000 to 0 Hz",
      "order 6 at 20000 to 27400 rpm (2000 to 2740 Hz) shows at 0 to 740 Hz",
    ]);
    expect(foldedBelow(bands, 80).map(foldingText)).toEqual([
      "order 6 at 19200 to 20000 rpm (1920 to 2000 Hz) shows at 80 to 0 Hz",
      "order 6 at 20000 to 20800 rpm (2000 to 2080 Hz) shows at 0 to 80 Hz",
    ]);
  });

  test("a single speed is one line of text without spans", () => {
    const [band] = foldings([6], speed(27400), speed(27400), 4000);
    expect(foldingText(band)).toBe("order 6 at 27400 rpm (2740 Hz) shows at 1260 Hz");
  });

  test("nothing folds where all lines stay below half the rate; orders count once, from low to high", () => {
    expect(foldings([1, 3], speed(8000), speed(30000), 8000)).toEqual([]);
    const bands = foldings([6, 3, 3], speed(8000), speed(30000), 2000);
    expect(bands.map(({ order }) => order)).toEqual([3, 6, 6]);
  });

  test("are exactly the speeds at which folding moves a line, and say where to", () => {
    fc.assert(
      fc.property(between(1, 12), between(400, 9000), between(0.05, 0.95), (order, fs, share) => {
        const [low, full] = [speed(6000), speed(30000)];
        const bands = foldings([order], low, full, fs);
        const w = low + share * (full - low);
        const f = (order * w) / (2 * Math.PI);
        const inside = bands.filter((band) => band.speeds[0] <= w && w < band.speeds[1]);
        expect(inside).toHaveLength(f > fs / 2 ? 1 : 0);
        for (const band of inside) expect(shownAt(band, w)).toBeCloseTo(foldedFrequency(f, fs), 8);
      }),
      RUNS,
    );
  });

  test("below a limit: by scanning the speeds", () => {
    fc.assert(
      fc.property(between(1, 12), between(400, 4000), between(10, 300), (order, fs, limit) => {
        const [low, full] = [speed(6000), speed(30000)];
        const bands = foldings([order], low, full, fs);
        const landing = foldedBelow(bands, limit);
        for (let i = 0; i <= 500; i++) {
          const w = low + ((full - low) * (i + 0.5)) / 501;
          const f = (order * w) / (2 * Math.PI);
          const lands = f > fs / 2 && foldedFrequency(f, fs) <= limit;
          expect(landing.some(({ speeds: [a, b] }) => a <= w && w <= b)).toBe(lands);
        }
        for (const band of landing) {
          expect(Math.max(...band.shown)).toBeLessThanOrEqual(limit);
          band.speeds.forEach((w, end) => {
            const f = (order * w) / (2 * Math.PI);
            expect(f).toBeCloseTo(band.lines[end], 8);
            expect(foldedFrequency(f, fs)).toBeCloseTo(band.shown[end], 8);
          });
        }
      }),
      RUNS,
    );
  });

  test("refuses speeds and rates that are none", () => {
    expect(() => foldings([1], -1, 100, 0)).toThrow(
      "fs: the sampling rate must be above 0, but is 0 Hz.\nlow: the lowest speed must be 0 or more, but is -1 rad/s.",
    );
  });
});

function shownAt({ speeds, shown }: FoldedBand, w: number): number {
  return shown[0] + ((shown[1] - shown[0]) * (w - speeds[0])) / (speeds[1] - speeds[0]);
}
