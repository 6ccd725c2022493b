/** The whole way from spreads to chances and bands, against a closed form. */

import { expect, test } from "vitest";
import { type Band, bandOf } from "../../src/study/bands.ts";
import { type Chances, spotChances } from "../../src/study/chances.ts";
import { dimensionsOf, sampledValues } from "../../src/study/dimensions.ts";
import { haltonSequence } from "../../src/study/halton.ts";
import { BATCH, enough } from "../../src/study/sample-count.ts";
import type { SpreadInput } from "../../src/study/spread-value.ts";

const INPUTS = 24;
const inputs: SpreadInput[] = Array.from({ length: INPUTS }, (_, j) => ({
  name: `bodies#${j + 10}`,
  kind: "mass",
  value: 10,
  // a standard deviation of 0.1
  spread: { from: 10 - 0.1959963984540054, to: 10 + 0.1959963984540054, scale: "even" },
}));
const dimensions = dimensionsOf([inputs]);
/** dB: every input moves the rear's lead, some much and most little; the squares sum to 3^2. */
const slopes = inputs.map((_, j) => 1 / (1 + (j % 8)));
const scale = 3 / Math.hypot(...slopes);
/** Variance of a normal number cut at three: 1 - 2 3 phi(3)/(1 - 2 Phi(-3)). */
const CUT_SIGMA = Math.sqrt(1 - (6 * 0.00443184841193801) / 0.99730020393674);

/** The rear is louder than the centre by 1.5 dB in the middle and scatters by nearly 3 dB. */
function lead(sequence: ReturnType<typeof haltonSequence>, i: number): number {
  const values = sampledValues(inputs, dimensions, sequence.point(i));
  return values.reduce((sum, c, j) => sum + scale * slopes[j] * 10 * (c.value - 10), 1.5);
}

interface Run {
  readonly samples: number;
  readonly chances: Chances;
  readonly band: Band;
}

/** Batches until there are enough. */
function run(seed: number): Run {
  const sequence = haltonSequence(dimensions.size, seed);
  const leads: number[] = [];
  for (;;) {
    for (let k = 0; k < BATCH; k++) leads.push(lead(sequence, leads.length));
    const chances = spotChances(
      leads.map((d) => ({
        spots: [
          { name: "centre", score: Math.max(0, -d) },
          { name: "rear", score: Math.max(0, d) },
        ],
      })),
    );
    const band = bandOf(leads) ?? expect.fail("no band");
    const state = { samples: leads.length, chances: chances.rivals.map((r) => r.best) };
    if (enough({ ...state, levels: [band] }).enough)
      return { samples: leads.length, chances, band };
  }
}

test("chances and edges are off by no more than their errors say, for many seeds", () => {
  const runs = Array.from({ length: 40 }, (_, k) => run(1000 + k));
  const rms = (off: (r: Run) => number) =>
    Math.sqrt(runs.reduce((s, r) => s + off(r) ** 2, 0) / runs.length);
  const centre = (r: Run) => r.chances.rivals.find((x) => x.name === "centre") ?? expect.fail();
  // The sum of many cut normal numbers is nearly normal: Phi(1.5/(3 x 0.987)) = Phi(0.507) = 0.694
  expect(CUT_SIGMA).toBeCloseTo(0.987, 3);
  const shareOff = rms((r) => (centre(r).best.share - 0.694) / centre(r).best.error);
  const edgeOff = rms(
    (r) => (r.band.high.value - (1.5 + 1.645 * 3 * CUT_SIGMA)) / r.band.high.error,
  );
  const middleOff = rms((r) => (r.band.median.value - 1.5) / r.band.median.error);
  for (const off of [shareOff, edgeOff, middleOff]) {
    expect(off).toBeGreaterThan(0.2);
    expect(off).toBeLessThan(1.1);
  }
  for (const r of runs) {
    expect(r.samples).toBeGreaterThanOrEqual(64);
    expect(r.samples).toBeLessThanOrEqual(512);
  }
});
