/**
 * The eigenvalues of the sample frames against a general library, SciPy: golden data beside the script
 * that made them (write.ts, eigenvalues.py), and the script itself where python3 with SciPy is at hand.
 */

import { describe, expect, test } from "vitest";
import { type SymmetricSparse, withoutZeros } from "../../src/linalg/sparse.ts";
import { differences, fingerprint } from "./fingerprint.ts";
import {
  ELASTIC,
  framePath,
  REGENERATE,
  RIGID,
  readGolden,
  SAMPLES,
  type Sample,
  solveSample,
} from "./samples.ts";
import { scipyEigenvalues, scipyVersion } from "./scipy.ts";

/**
 * Largest differences found: 5e-11, 4e-11, 1e-11 and 8e-12, all ours: SciPy's refined values are good
 * to 1e-12. One rounding of every entry of K may move an eigenvalue of these frames by 5e-10 to 1e-9.
 */
const TOLERANCE = 1e-9;

const solved = new Map(SAMPLES.map((sample) => [sample, solveSample(sample)]));
const sampleOf = (sample: Sample) => solved.get(sample)!;

/** The largest relative difference, with the mode where it is. */
function furthest(ours: Float64Array, theirs: readonly number[]): { worst: number; mode: number } {
  const apart = theirs.map((l, k) => Math.abs(ours[k] / l - 1));
  const worst = apart.reduce((a, d) => (d > a || Number.isNaN(d) ? d : a), 0);
  return { worst, mode: apart.indexOf(worst) + 1 };
}

describe.each(SAMPLES)("%s sample", (sample) => {
  const golden = readGolden(sample);
  const { K, M, modes } = sampleOf(sample);

  test("K and M are those that the golden data were computed from", () => {
    expect(
      differences(golden.matrices, fingerprint(K, M)),
      `${framePath(sample)}, or the model that is made of it, is no longer the one of ` +
        `test/golden/${sample}.json. If that is meant, run\n\n  ${REGENERATE}\n\n` +
        "(needs python3 with SciPy), look at the differences it prints, and keep the new file",
    ).toEqual([]);
  });

  test("forty eigenvalues as SciPy has them", () => {
    expect(golden.elastic.length).toBe(ELASTIC);
    expect(modes.lambda.length).toBe(ELASTIC);
    const { worst, mode } = furthest(modes.lambda, golden.elastic);
    expect(worst, `mode ${mode}`).toBeLessThan(TOLERANCE);
  });

  test("each within the uncertainty that our own evidence states", () => {
    const { uncertainty } = modes.evidence;
    golden.elastic.forEach((l, k) => {
      expect(Math.abs(modes.lambda[k] - l), `mode ${k + 1}`).toBeLessThan(uncertainty[k]);
      expect(uncertainty[k] / l).toBeLessThan(1e-8);
    });
  });

  test("SciPy's own error is small enough to compare with, and it found six motions without strain", () => {
    expect(golden.largestErrorEstimate).toBeLessThan(TOLERANCE / 100);
    expect(golden.denseDiffersBy).toBeLessThan(TOLERANCE);
    expect(golden.rigid.length).toBe(RIGID);
    expect(modes.rigid.length).toBe(RIGID * K.pattern.n);
    for (const l of golden.rigid) expect(Math.abs(l)).toBeLessThan(1e-8 * golden.elastic[0]);
  });
});

describe("the fingerprint", () => {
  const { K, M } = sampleOf("three-inch");
  const was = fingerprint(K, M);
  const changed = (A: SymmetricSparse, factor: (p: number) => number): SymmetricSparse => ({
    pattern: A.pattern,
    values: A.values.map((a, p) => a * factor(p)),
  });

  test("does not mind the last bits", () => {
    const noisy = (A: SymmetricSparse) => changed(A, (p) => 1 + 2 ** -52 * Math.cos(p));
    expect(differences(was, fingerprint(noisy(K), noisy(M)))).toEqual([]);
  });

  test("notices one soft spring, one mass, one entry less", () => {
    const d = K.pattern.colPtr;
    const softest = Array.from(d.subarray(0, -1)).reduce((a, p) =>
      K.values[p] < K.values[a] ? p : a,
    );
    const one = (at: number) => (p: number) => (p === at ? 1.0001 : 1);
    expect(differences(was, fingerprint(changed(K, one(softest)), M)).join()).toContain("of K");
    expect(differences(was, fingerprint(K, changed(M, one(0)))).join()).toContain("of M");
    expect(differences(was, fingerprint(withoutZeros(K), M)).join()).toContain("entries: was");
  });
});

const version = scipyVersion();
const title =
  version === undefined
    ? "skipped, because python3 with SciPy is not here"
    : `SciPy ${version} on this machine`;

describe.skipIf(version === undefined)(title, () => {
  test.each(["three-inch", "five-inch"] as const)("gives the eigenvalues of the %s", (sample) => {
    const { K, M, modes } = sampleOf(sample);
    const scipy = scipyEigenvalues(K, M, { rigid: RIGID, elastic: ELASTIC });
    // Where there is no extended precision SciPy's values are rounded as ours are.
    const tolerance = TOLERANCE + scipy.largestErrorEstimate;
    const { worst, mode } = furthest(modes.lambda, scipy.elastic);
    expect(worst, `mode ${mode} beside SciPy now`).toBeLessThan(tolerance);
  });
});
