/** The motors' spread of speed, against brute force over many deltas. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { spreadPower, spreadWeights } from "../../src/excitation/spread.ts";

const GRID = Float64Array.from({ length: 300 }, (_, i) => 750 + (2250 * i) / 299);
const sum = (a: Float64Array) => a.reduce((s, v) => s + v, 0);
const dot = (a: Float64Array, b: Float64Array) => a.reduce((s, v, i) => s + v * b[i], 0);

/** Straight between the grid's speeds, constant beyond its ends. */
function interpolate(p: Float64Array, speed: number): number {
  const at = ((speed - GRID[0]) / (GRID[299] - GRID[0])) * 299;
  if (at <= 0) return p[0];
  if (at >= 299) return p[299];
  const i = Math.floor(at);
  return p[i] + (at - i) * (p[i + 1] - p[i]);
}

/** The mean over equally spaced deltas weighed with the normal density, cut at 3 standard deviations. */
function bruteForce(power: (speed: number) => number, speed: number, spread: number): number {
  const count = 40_000;
  let [whole, mean] = [0, 0];
  for (let k = 0; k < count; k++) {
    const z = -3 + (6 * (k + 0.5)) / count;
    const density = Math.exp((-z * z) / 2);
    whole += density;
    mean += density * power(speed * (1 + spread * z));
  }
  return mean / whole;
}

/** Power of a resonance at omega0 (rad/s) with loss factor eta, 1 at low speed. */
const resonance = (omega0: number, eta: number) => (speed: number) => {
  const r = (speed / omega0) ** 2;
  return 1 / ((1 - r) ** 2 + eta ** 2);
};

/**
 * Spreads, and how far the mean may be off on a resonance of 30 rad/s half-power width, four steps of the
 * grid, because the course between speeds is not straight. Measured: 0.027, 0.0096, 0.0051, 3e-4, 3e-4.
 */
const SPREADS = [
  [0.002, 0.04],
  [0.01, 0.014],
  [0.03, 0.007],
  [0.08, 5e-4],
  [0.2, 5e-4],
] as const;

describe.each(SPREADS)("a spread of %d", (spread, error) => {
  const curve = resonance(1500, 0.02);
  const p = GRID.map(curve);
  const smeared = spreadPower(GRID, p, spread);

  test("gives the mean of what is straight between the speeds", () => {
    for (const i of [0, 40, 99, 100, 104, 150, 280, 299]) {
      const mean = bruteForce((speed) => interpolate(p, speed), GRID[i], spread);
      expect(Math.abs(smeared[i] / mean - 1)).toBeLessThan(5e-7);
    }
  });

  test("gives the mean over a sharp resonance to the error of a straight course", () => {
    // constant beyond the ends, as what is flown beyond them counts at them
    const held = (speed: number) => curve(Math.min(Math.max(speed, GRID[0]), GRID[299]));
    const worst = Math.max(
      ...[0, 40, 80, 96, 99, 100, 101, 104, 120, 200, 299].map((i) =>
        Math.abs(smeared[i] / bruteForce(held, GRID[i], spread) - 1),
      ),
    );
    expect(worst).toBeLessThan(error);
  });

  test("keeps the sum of the weights and sends what lies beyond to the ends", () => {
    const w = GRID.map((_, i) => 1 + Math.sin(i) ** 2);
    const out = spreadWeights(GRID, w, spread);
    expect(sum(out) / sum(w)).toBeCloseTo(1, 13);
    const end = new Float64Array(300);
    end[299] = 1;
    const atEnd = spreadWeights(GRID, end, spread);
    // half the motors are faster than full speed
    expect(atEnd[299]).toBeGreaterThan(0.5);
    expect(sum(atEnd)).toBeCloseTo(1, 13);
    expect(Math.min(...out, ...atEnd)).toBeGreaterThan(-1e-12);
  });

  test("is a normal distribution about each speed", () => {
    const one = new Float64Array(300);
    one[100] = 1;
    const out = spreadWeights(GRID, one, Math.min(spread, 0.1));
    const mean = dot(out, GRID);
    const deviation = Math.sqrt(
      dot(
        out,
        GRID.map((x) => (x - mean) ** 2),
      ),
    );
    expect(mean).toBeCloseTo(GRID[100], 6);
    // cut at 3: 0.98658 of it; a hat of the grid's step adds h^2/6
    const h = GRID[1] - GRID[0];
    const s = 0.986578 * Math.min(spread, 0.1) * GRID[100];
    if (spread > 0.01) expect(deviation / Math.hypot(s, h / Math.sqrt(6))).toBeCloseTo(1, 3);
  });
});

test("smearing the weights and smearing the power are adjoint", () => {
  const values = fc.array(fc.double({ min: 0, max: 1e3, noNaN: true }), {
    minLength: 60,
    maxLength: 60,
  });
  fc.assert(
    fc.property(
      values,
      values,
      fc.array(fc.double({ min: 0.01, max: 5, noNaN: true }), { minLength: 60, maxLength: 60 }),
      fc.double({ min: 0, max: 0.2, noNaN: true }),
      (w, p, steps, spread) => {
        let speed = 0;
        const grid = Float64Array.from(steps, (s) => {
          speed += s;
          return speed;
        });
        const [weights, power] = [Float64Array.from(w), Float64Array.from(p)];
        const a = dot(weights, spreadPower(grid, power, spread));
        const b = dot(spreadWeights(grid, weights, spread), power);
        expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-12 * (1 + a));
        expect(sum(spreadWeights(grid, weights, spread)) - sum(weights)).toBeCloseTo(0, 8);
      },
    ),
    { seed: 7, numRuns: 200 },
  );
});

describe("limits", () => {
  const p = GRID.map(resonance(1500, 0.02));

  test("no spread, or one that is nothing beside a step, changes nothing", () => {
    for (const spread of [0, 1e-300, 1e-12, 1e-8]) {
      const [power, weights] = [spreadPower(GRID, p, spread), spreadWeights(GRID, p, spread)];
      for (const i of p.keys()) {
        expect(power[i] / p[i]).toBeCloseTo(1, 5);
        expect(weights[i] / p[i]).toBeCloseTo(1, 5);
      }
    }
    expect(spreadPower(GRID, p, 0)).not.toBe(p);
  });

  test("what is the same at every speed stays so, and a straight course keeps its middle", () => {
    const flat = spreadPower(GRID, new Float64Array(300).fill(3), 0.05);
    for (const v of flat) expect(v).toBeCloseTo(3, 12);
    const straight = spreadPower(GRID, GRID, 0.03);
    // away from the ends, 3 x 3 % of 1500
    expect(straight[100]).toBeCloseTo(GRID[100], 6);
  });

  test("a resonance gets lower and broader, and keeps its area", () => {
    const smeared = spreadPower(GRID, p, 0.03);
    expect(Math.max(...smeared)).toBeLessThan(0.5 * Math.max(...p));
    const wide = (a: Float64Array) => a.filter((v) => v > 0.5 * Math.max(...a)).length;
    expect(wide(smeared)).toBeGreaterThan(2 * wide(p));
    expect(sum(smeared) / sum(p)).toBeCloseTo(1, 1);
  });
});
