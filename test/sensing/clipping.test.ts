import { describe, expect, test } from "vitest";
import { fixedSeedGenerator } from "../../src/linalg/random.ts";
import { clipping, PEAK, steadyForce } from "../../src/sensing/clipping.ts";

const grid = Float64Array.of(100, 200, 300, 400);
const even = Float64Array.of(0.25, 0.25, 0.25, 0.25);
const power = [
  Float64Array.of(1, 4, 1, 1),
  Float64Array.of(0, 0, 0, 9),
  Float64Array.of(1, 1, 6.25, 1),
];

/** Share of the time that the sum of such sines spends above 3 rms, phases at random. */
function shareAbove(amplitudes: readonly number[]): number {
  const random = fixedSeedGenerator(3);
  const rms = Math.sqrt(amplitudes.reduce((sum, a) => sum + (a * a) / 2, 0));
  const runs = 100_000;
  let above = 0;
  for (let run = 0; run < runs; run++) {
    let x = 0;
    for (const a of amplitudes) x += a * Math.cos(Math.PI * random());
    if (Math.abs(x) > PEAK * rms) above++;
  }
  return above / runs;
}

describe("three times rms", () => {
  const lines = (n: number) => Array.from({ length: n }, () => 1);
  test("is never passed by four equal sines, nor by one order of four motors", () => {
    expect(shareAbove(lines(4))).toBe(0);
    expect(4 / Math.sqrt(4 / 2)).toBeLessThan(PEAK);
  });

  test.each([
    [8, 0.0014],
    [12, 0.0018],
    [64, 0.0025],
  ])("%i equal sines: for the share of time that its note says", (n, share) => {
    // 100 000 draws: a standard deviation of about 0.00015
    expect(Math.abs(shareAbove(lines(n)) - share)).toBeLessThan(5e-4);
  });

  test("unequal ones stay longer below", () => {
    expect(shareAbove([1, 1, 1, 1, 0.5, 0.5, 0.5, 0.5])).toBeLessThan(0.0014);
  });
});

describe("clipping", () => {
  test("takes the worst axis and speed: 3 x 3 = 9 along y at the last speed", () => {
    expect(clipping(power, { grid, weights: even }, 8)).toEqual({
      axis: 1,
      speed: 400,
      peak: 9,
      range: 8,
      share: 1.125,
      clipped: true,
    });
    expect(clipping(power, { grid, weights: even }, 9)).toMatchObject({ share: 1, clipped: false });
  });

  test("adds what stands still along z", () => {
    // 3 x 2.5 + 1 at hover against 9 without
    const steady = steadyForce(grid, 300);
    expect([...steady].map((g) => Number(g.toFixed(3)))).toEqual([0.111, 0.444, 1, 1.778]);
    expect(clipping(power, { grid, weights: even }, 16, steady)).toMatchObject({ axis: 1 });
    const gravity = new Float64Array(4).fill(2);
    expect(clipping(power, { grid, weights: even }, 16, gravity)).toMatchObject({
      axis: 2,
      speed: 300,
      peak: 9.5,
      clipped: false,
    });
  });

  test("speeds without weight do not count", () => {
    const weights = Float64Array.of(0.3, 0.69, 0.0099, 0.0001);
    expect(clipping(power, { grid, weights }, 16)).toMatchObject({ axis: 2, speed: 300 });
    expect(clipping(power, { grid, weights: new Float64Array(4) }, 16)).toBeUndefined();
  });

  test("a range of nothing is refused", () => {
    expect(() => clipping(power, { grid, weights: even }, 0)).toThrow(
      "range: the range must be above 0, but is 0.",
    );
    expect(() => steadyForce(grid, 0)).toThrow("hover: the speed in hover must be above 0");
  });
});
