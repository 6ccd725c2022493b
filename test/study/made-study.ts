/**
 * A comparison of three variants of an invented frame, all numbers made up: thicker arms raise the arms'
 * modes and quieten the best spot. Samples scatter by smooth factors, so bands and chances are real ones.
 */

import { bandOf, noiseBand } from "../../src/study/bands.ts";
import { spotChances } from "../../src/study/chances.ts";
import { compareOutcomes } from "../../src/study/compare.ts";
import { differenceWords } from "../../src/study/difference-words.ts";
import { matchModes } from "../../src/study/match-modes.ts";
import { normalQuantile } from "../../src/study/normal.ts";
import { pairedNoise, pairedShift, variantChances } from "../../src/study/paired.ts";
import type { ComparisonStudy, PairResult, Sampled } from "../../src/study/results.ts";
import { enough, sampleCountText } from "../../src/study/sample-count.ts";
import { frameWords, variantWords } from "../../src/study/sure-words.ts";
import type { Outcome, Spot } from "../../src/variants/types.ts";
import { meeting, spot } from "./compare-fixtures.ts";
import { madeOutcome, turned } from "./made-outcomes.ts";

/** Names that a page and a terminal must show as they are. */
export const HOSTILE_SPOT = "</script><b>bold</b>";
export const HOSTILE_VARIANT = '<img src=x onerror="document.title=1">';
export const HOSTILE_TITLE = "Trial </title><script>document.title='f'</script>";

export interface MadeVariant {
  readonly name: string;
  readonly changes: readonly string[];
  readonly outcome: Outcome;
}

const NAMES = [
  "battery sways",
  "arms flap, all together",
  "arms flap, diagonal pairs",
  "top plate bends",
  "arms swing",
];

function spots(levels: readonly number[], delays: readonly number[], first: string): Spot[] {
  const names = [first, "under the top plate", "nose", "tail"];
  return names.map((name, i) =>
    spot(name, {
      plate: i === 1 ? "top" : "middle",
      gyro: levels[i],
      accel: 0.1 * levels[i],
      delay: delays[i],
      delayWithNotches: 0.6 * delays[i],
      score: 20 * Math.log10(levels[i] / levels[0]),
      ...(i === 3 && { ruledOut: "cantilevered" }),
    }),
  );
}

/** Three thicknesses of arms; the modes of the thickest have shapes that turned a little. */
export function madeVariants(
  names: readonly [string, string, string] = ["5 mm", "4 mm", "6 mm"],
  first = "sandwich",
): MadeVariant[] {
  const straight = turned(5, []);
  const slight = turned(5, [[1, 2, 0.3]]);
  const common = { modeNames: NAMES, best: 0, cg: [0.002, 0, 0.011] as const };
  return [
    {
      name: names[0],
      changes: [],
      outcome: madeOutcome([62, 128, 176, 262, 331], straight, {
        ...common,
        mass: 0.6412,
        hover: 1180,
        spots: spots(
          [2.4, 2.9, 5.1, 9.8],
          [0.0021, 0.0026, 0.0048, Number.POSITIVE_INFINITY],
          first,
        ),
        meetings: [meeting(3, -0.065, 1), meeting(4, 0.4)],
      }),
    },
    {
      name: names[1],
      changes: ["arms.arm.thickness = 4 mm"],
      outcome: madeOutcome([61.2, 97, 134, 258, 322], straight, {
        ...common,
        mass: 0.6298,
        hover: 1169,
        spots: spots(
          [3.9, 4.2, 6.4, 9.1],
          [0.0034, 0.0035, 0.0061, Number.POSITIVE_INFINITY],
          first,
        ),
        meetings: [meeting(4, 0.38)],
        moved: ["plate middle 1 mm down", "plate bottom 1 mm up"],
      }),
    },
    {
      name: names[2],
      changes: ["arms.arm.thickness = 6 mm"],
      outcome: madeOutcome([62.5, 158, 214, 265, 339], slight, {
        ...common,
        mass: 0.6526,
        hover: 1191,
        spots: spots(
          [2.2, 2.3, 4.4, 9.9],
          [0.0017, 0.0019, 0.004, Number.POSITIVE_INFINITY],
          first,
        ),
        meetings: [meeting(2, -0.02, 1), meeting(4, 0.41)],
        moved: ["plate middle 1 mm up", "plate bottom 1 mm down"],
        warnings: ["the arms weigh more than the motors they carry"],
      }),
    },
  ];
}

/** Samples where not given. */
const SAMPLES = 128;
/** Irrational steps, so that the coordinates of a sample have nothing to do with each other. */
const STEPS = [0.6180339887, 0.7548776662, 0.569840291, 0.8191725134, 0.4142135624, 0.7320508076];

/** A normal factor of sample i: exp(size z). */
function factor(i: number, coordinate: number, size: number): number {
  const u = ((i + 0.5) * STEPS[coordinate % STEPS.length]) % 1;
  return Math.exp(size * normalQuantile(u));
}

/** What is common to all variants scatters most, so that differences are known better than levels. */
function sampleOf({ outcome }: MadeVariant, v: number, i: number): Outcome {
  const common = factor(i, 0, 0.2);
  const spots = outcome.spots.map((s, k) => {
    const gyro = s.gyro * common * factor(i + 7 * v, k + 1, 0.08);
    return { ...s, gyro, score: 20 * Math.log10(gyro) };
  });
  const open = spots.map((s) => (s.ruledOut === undefined ? s.gyro : Number.POSITIVE_INFINITY));
  const frequencies = outcome.frequencies.map(
    (f, k) => f * factor(i, k + 1, 0.03) * factor(i, 0, 0.02),
  );
  return { ...outcome, spots, best: open.indexOf(Math.min(...open)), frequencies };
}

const samplesOf = (variant: MadeVariant, v: number, count: number) =>
  Array.from({ length: count }, (_, i) => sampleOf(variant, v, i));

function sampledOf({ outcome }: MadeVariant, samples: readonly Outcome[]): Sampled {
  const chances = spotChances(samples);
  return {
    spots: outcome.spots.map((s, k) => {
      const out = chances.rivals.find((r) => r.name === s.name)!.out;
      const noise = noiseBand(
        samples.map((o) => o.spots[k].gyro),
        s.gyro,
      );
      return { name: s.name, ruledOut: out, ...(out.share < 1 && { noise }) };
    }),
    modes: Array.from(outcome.frequencies, (nominal, k) => ({
      number: k + 1,
      name: NAMES[k],
      nominal,
      band: bandOf(samples.map((o) => o.frequencies[k]))!,
    })),
    chances,
    words: frameWords(chances, "rate"),
  };
}

function pairOf(
  [a, b]: readonly MadeVariant[],
  [first, second]: readonly (readonly Outcome[])[],
): PairResult {
  const noise = pairedNoise(first, second);
  const modes = matchModes(a.outcome, b.outcome, 5).pairs.map((p) => ({
    name: NAMES[p.a - 1],
    shift: pairedShift(
      first.map((o) => o.frequencies[p.a - 1]),
      second.map((o) => o.frequencies[p.b - 1]),
    )!,
  }));
  const shifts = modes.map(({ name, shift }) => ({ mode: name, shift }));
  return {
    reference: a.name,
    name: b.name,
    noise,
    spots: a.outcome.spots.map(({ name }) => ({ name, noise: pairedNoise(first, second, name) })),
    modes,
    words: differenceWords([a.name, b.name], noise, shifts),
  };
}

const INPUTS = [
  { name: "arms.arm.thickness", spread: "±3 %", source: "common practice, no source" },
  { name: "plates.top.thickness", spread: "±3 %", source: "common practice, no source" },
  { name: "materials.carbon.E1", spread: "±10 %", source: "file" },
  { name: "arms.arm.joint.kappa", spread: "5.3 to 28", source: "common practice, no source" },
] as const;

/** The study of these variants; with one it is the uncertainty of a frame, and with 0 samples nothing is sampled. */
export function madeStudy(
  variants: readonly MadeVariant[] = madeVariants(),
  count = SAMPLES,
  title = "Brindle",
): ComparisonStudy {
  const all = variants.map((v, i) => samplesOf(v, i, count));
  const [reference] = variants;
  const results = variants.map((v, i) => ({
    ...v,
    ...(count > 0 && { sampled: sampledOf(v, all[i]) }),
  }));
  const plain = {
    title,
    files: [{ path: "frames/brindle.jsonc", hash: "ab".repeat(32) }],
    use: "rate" as const,
    variants: results,
    failed: [],
    comparison:
      variants.length > 1
        ? compareOutcomes(variants)
        : { reference: reference.name, differences: [] },
  };
  if (count === 0)
    return { ...plain, words: ["Nothing was sampled, so nothing is said to be real."] };
  const chances = variantChances(variants.map((v, i) => ({ name: v.name, samples: all[i] })));
  const pairs = variants.slice(1).map((v, i) => pairOf([reference, v], [all[0], all[i + 1]]));
  const levels = results.flatMap(
    (r) => r.sampled?.spots.flatMap((s) => s.noise?.decibel ?? []) ?? [],
  );
  const own = results[0].sampled!;
  return {
    ...plain,
    words:
      variants.length > 1 ? [variantWords(chances), ...pairs.map((p) => p.words)] : [own.words],
    sure: {
      samples: count,
      text: sampleCountText(
        count,
        enough({ samples: count, chances: chances.rivals.map((r) => r.best), levels }),
      ),
      seed: 1,
      inputs: INPUTS,
      reduced: count * variants.length - 3,
      exact: 2,
      failed: [{ reason: "the arm would be thinner than its screws", count: 1 }],
      chances,
      pairs,
    },
  };
}
