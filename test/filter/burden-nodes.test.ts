/** What gathering the power on nodes changes, against closed forms of what it replaces. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { notchBiquad } from "../../src/filter/biquad.ts";
import { burdenTable } from "../../src/filter/burden-table.ts";
import type { BurdenSetup } from "../../src/filter/burden-types.ts";
import { bandsOf, frequencyNodes, positionOf } from "../../src/filter/frequency-nodes.ts";
import { lowPassPower, lowPassSections } from "../../src/filter/low-pass.ts";
import { lineOf, PLAIN } from "./burden-setups.ts";
import { between, RUNS } from "./filter-orders.ts";
import { runFilters } from "./run-filters.ts";

const SETUP: BurdenSetup = { ...PLAIN, fs: 8000, noiseDensity: 0.005 };
const nodes = frequencyNodes(SETUP);

describe("nodes", () => {
  test("run from 0 to fs/2, 1.5 % of t apart or less", () => {
    expect([nodes[0], nodes[nodes.length - 1]]).toEqual([0, 4000]);
    const t = [...nodes.slice(1, -1)].map((f) => Math.tan((Math.PI * f) / 8000));
    const steps = t.slice(1).map((above, i) => Math.log(above / t[i]));
    expect(Math.max(...steps)).toBeLessThan(0.015 + 1e-9);
    expect(Math.min(...steps)).toBeGreaterThan(0.0149);
  });

  test("share a frequency so that the mean stays", () => {
    fc.assert(
      fc.property(between(0, 4000), (f) => {
        const { below, above } = positionOf(f, nodes);
        expect(above >= 0 && above <= 1 && below < nodes.length - 1).toBe(true);
        expect(nodes[below] * (1 - above) + nodes[below + 1] * above).toBeCloseTo(f, 9);
      }),
      RUNS,
    );
    expect(positionOf(4000, nodes)).toEqual({ below: nodes.length - 2, above: 1 });
    expect(positionOf(4000.0001, nodes).above).toBe(1);
  });

  test("stand for bands that make up the whole", () => {
    expect(bandsOf(nodes).reduce((a, b) => a + b, 0)).toBeCloseTo(4000, 9);
  });

  test("misjudge what a low-pass leaves by 0.025 % of the line, and 0.25 % of what is left", () => {
    let [ofLine, ofRest] = [0, 0];
    for (const choice of burdenTable(SETUP, []).lowPasses.flat()) {
      const t0 = Math.tan((Math.PI * choice.cutOff) / 8000);
      for (let n = 0; n < nodes.length - 1; n++) {
        const middle = (nodes[n] + nodes[n + 1]) / 2;
        const exact = lowPassPower(choice.order, (Math.tan((Math.PI * middle) / 8000) / t0) ** 2);
        const error = Math.abs((choice.gains[n] + choice.gains[n + 1]) / 2 - exact);
        ofLine = Math.max(ofLine, error);
        if (n > 0 && n < nodes.length - 2) ofRest = Math.max(ofRest, error / exact);
      }
    }
    expect(ofLine).toBeLessThan(2.5e-4);
    expect(ofRest).toBeLessThan(2.5e-3);
  });
});

describe("noise", () => {
  const through = (noise: Float64Array, gains?: Float64Array) =>
    noise.reduce((sum, power, n) => sum + power * (gains?.[n] ?? 1), 0);
  const [none] = burdenTable(SETUP, []).sets;

  test("unfiltered is the density over half the sampling rate, on three axes", () => {
    expect(through(none.noise)).toBeCloseTo(3 * 0.005 ** 2 * 4000, 12);
  });

  test("behind a low-pass is the integral in closed form", () => {
    // (2/fs) int |H|^2 df with u = t, df = (fs/pi) du/(1 + u^2), by partial fractions:
    // n = 1: a/(1 + a);  even n: (a^2n + (1/n) sum (-1)^k a^(2k+1)/sin((2k+1) pi/2n))/(1 + a^2n)
    const share = { 1: (a: number) => a / (1 + a), 2: evenShare(2), 4: evenShare(4) };
    for (const { order, cutOff, gains } of burdenTable(SETUP, []).lowPasses.flat()) {
      const exact = share[order](Math.tan((Math.PI * cutOff) / 8000)) * 0.3;
      expect(Math.abs(through(none.noise, gains) / exact - 1)).toBeLessThan(3e-4);
    }
  });

  test("behind notches and a low-pass is the energy of the impulse response", () => {
    // sum h^2 = (1/fs) int over -fs/2 to fs/2 of |H|^2 df
    const notch = { quality: 3, trackingError: 0 };
    const setup = { ...SETUP, rotors: 2, motorSpread: 0.03, notch };
    const table = burdenTable(setup, [lineOf(setup, 1), lineOf(setup, 2)]);
    const both = table.sets.find(({ orders }) => orders.join() === "1,2")!;
    const notches = [194, 206, 388, 412].map((f0) => notchBiquad({ f0, Q: 3, fs: 8000 }));
    for (const at of [60, 90, 120]) {
      for (const { order, cutOff, gains } of table.lowPasses.map((choices) => choices[at])) {
        const filters = [...notches, ...lowPassSections({ order, cutOff }, 8000)];
        const h = runFilters(
          filters,
          Float64Array.from({ length: 8000 }, (_, n) => +(n === 0)),
        );
        const energy = h.reduce((sum, x) => sum + x * x, 0);
        expect(Math.abs(through(both.noise, gains) / (0.3 * energy) - 1)).toBeLessThan(1e-3);
      }
    }
    // what notches take is no small part where they lie in the pass band
    expect(through(both.noise) / through(table.sets[0].noise)).toBeLessThan(0.92);
  });

  test("may be shaped by the sensor's own filter", () => {
    const noiseGain = (f: number) => 1 / (1 + (f / 250) ** 2);
    const [{ noise }] = burdenTable({ ...SETUP, noiseGain }, []).sets;
    const exact = 3 * 0.005 ** 2 * 250 * Math.atan(4000 / 250);
    expect(Math.abs(through(noise) / exact - 1)).toBeLessThan(1e-4);
  });
});

function evenShare(n: 2 | 4) {
  return (a: number) => {
    const terms = Array.from({ length: n }, (_, k) => {
      return ((-1) ** k * a ** (2 * k + 1)) / Math.sin(((2 * k + 1) * Math.PI) / (2 * n));
    });
    const sum = terms.reduce((total, term) => total + term, 0);
    return (a ** (2 * n) + sum / n) / (1 + a ** (2 * n));
  };
}
