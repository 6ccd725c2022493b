/** The chain chosen is the best of all, and the choice is steady. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { burdenTable } from "../../src/filter/burden-table.ts";
import type { BurdenSetup, Line } from "../../src/filter/burden-types.ts";
import { filterBurden } from "../../src/filter/filter-burden.ts";
import { bruteChains } from "./brute-force.ts";
import { lineOf, PLAIN } from "./burden-setups.ts";
import { between } from "./filter-orders.ts";

interface Case {
  readonly setup: BurdenSetup;
  readonly lines: readonly Line[];
  readonly powers: readonly Float64Array[];
}

const SPEEDS = Float64Array.of(110, 130, 160, 240);
const WEIGHTS = Float64Array.of(0.2, 0.5, 0.2, 0.1);
/** 5 x 240 rev/s and its motors fold at 2 kHz; in hover all can be followed. */
const ORDERS = [1, 3, 5];

const cases: fc.Arbitrary<Case> = fc
  .record({
    // of the target, from a third of what the lines leave to a hundredth
    target: between(-2, -0.1),
    levels: fc.array(between(-1.5, 1), { minLength: 3, maxLength: 3 }),
    tilt: between(-2, 2),
    noise: between(0, 0.01),
    rotors: fc.integer({ min: 1, max: 4 }),
    spread: between(0, 0.04),
    quality: between(1.5, 6),
    error: between(0, 0.03),
  })
  .map(({ target, levels, tilt, noise, rotors, spread, quality, error }) => {
    const setup: BurdenSetup = {
      ...PLAIN,
      fs: 2000,
      speeds: SPEEDS,
      weights: WEIGHTS,
      hover: 135,
      target: 10 ** target,
      noiseDensity: noise,
      rotors,
      motorSpread: spread,
      notch: { quality, trackingError: error },
    };
    const lines = ORDERS.map((order) => lineOf(setup, order));
    const powers = levels.map((level) => SPEEDS.map((s) => 10 ** level * (s / 135) ** tilt));
    return { setup, lines, powers };
  });

const run = ({ setup, lines, powers }: Case) => filterBurden(burdenTable(setup, lines), powers);

/** Two roundings that differ: nodes 1.5 % apart here, noise summed at 120 frequencies there. */
const SLACK = 3e-3;

describe("against every chain of filters there is", () => {
  test("the least delay is chosen, or what leaves least", () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(cases, (of) => {
        const all = bruteChains(of.setup, of.lines, of.powers);
        const { raw, without, with: notched } = run(of);
        expect(raw ** 2 / all[0].power).toBeCloseTo(1, 9);
        for (const burden of [without, notched]) {
          const may = burden === without ? all.filter((c) => c.notches.length === 0) : all;
          const same = may.find(
            (c) =>
              c.notches.join() === burden.notches.join() &&
              c.lowPass?.order === burden.lowPass?.order &&
              c.lowPass?.cutOff === burden.lowPass?.cutOff,
          );
          expect(same).toBeDefined();
          expect(Math.abs(burden.residual ** 2 / same!.power - 1)).toBeLessThan(SLACK);
          expect(burden.delay).toBeCloseTo(same!.delay, 12);
          const target = of.setup.target ** 2;
          const surely = may.filter((c) => c.power < target * (1 - SLACK));
          const delays = surely.map((c) => c.delay);
          const least = Math.min(...may.map((c) => c.power));
          if (burden.attainable) {
            expect(burden.residual).toBeLessThanOrEqual(of.setup.target);
            expect(burden.delay).toBeLessThanOrEqual(Math.min(...delays) + 1e-12);
          } else {
            expect(delays).toEqual([]);
            expect(Math.abs(burden.residual ** 2 / least - 1)).toBeLessThan(SLACK);
          }
          seen.add(`${burden.attainable} ${burden.lowPass?.order} ${burden.notches.length}`);
        }
      }),
      { seed: 20262, numRuns: 12 },
    );
    // the cases are not all alike
    for (const kind of ["true 1 0", "true 2 0", "true 4 0"]) expect(seen).toContain(kind);
    expect([...seen].some((kind) => kind.startsWith("false"))).toBe(true);
    expect([...seen].some((kind) => kind.endsWith("1"))).toBe(true);
    expect([...seen].some((kind) => /true . [23]$/.test(kind))).toBe(true);
  });
});

const RUNS = { seed: 20263, numRuns: 8 };

describe("the least delay", () => {
  test("never falls when all powers double", () => {
    fc.assert(
      fc.property(cases, (of) => {
        const once = run(of);
        const twice = run({ ...of, powers: of.powers.map((p) => p.map((x) => 2 * x)) });
        for (const kind of ["without", "with"] as const) {
          if (!once[kind].attainable) expect(twice[kind].attainable).toBe(false);
          else if (twice[kind].attainable) {
            expect(twice[kind].delay).toBeGreaterThanOrEqual(once[kind].delay * (1 - 1e-11));
          }
        }
      }),
      RUNS,
    );
  });

  test("never rises when more multiples may be followed", () => {
    fc.assert(
      fc.property(cases, (of) => {
        let before = { attainable: false, delay: Number.POSITIVE_INFINITY };
        for (const most of [0, 1, 2, 3]) {
          const notch = { ...of.setup.notch, most };
          const burden = run({ ...of, setup: { ...of.setup, notch } });
          if (most === 0) expect(burden.with).toEqual(burden.without);
          expect(burden.with.notches.length).toBeLessThanOrEqual(most);
          if (before.attainable) {
            expect(burden.with.attainable).toBe(true);
            expect(burden.with.delay).toBeLessThanOrEqual(before.delay * (1 + 1e-11));
          }
          before = burden.with;
        }
      }),
      RUNS,
    );
  });

  test("asks for the same chain when signal, noise and target all grow fourfold", () => {
    fc.assert(
      fc.property(cases, (of) => {
        const { setup, lines, powers } = of;
        const { target, noiseDensity } = setup;
        const louder = run({
          setup: { ...setup, target: 4 * target, noiseDensity: 4 * noiseDensity },
          lines,
          powers: powers.map((p) => p.map((x) => 16 * x)),
        });
        const { with: chain } = run(of);
        expect(louder.with.lowPass).toEqual(chain.lowPass);
        expect(louder.with.notches).toEqual(chain.notches);
        expect(louder.with.delay).toBe(chain.delay);
        expect(louder.with.residual).toBeCloseTo(4 * chain.residual, 12);
      }),
      RUNS,
    );
  });
});
