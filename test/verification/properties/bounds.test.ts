/**
 * Sums and splits: trace(K^-1 M), Dunkerley, Southwell and the inequalities of H. Weyl (Math. Ann. 71,
 * 1912, from memory) for stiffness or mass that is shared out between two frames of the same shape.
 */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { backwardInPlace, choleskyInPlace, forwardInPlace } from "../../../src/linalg/dense.ts";
import { type SymmetricSparse, toDense } from "../../../src/linalg/sparse.ts";
import { solveFrame } from "../frequencies.ts";
import { type MemberFrame, memberFrame } from "./member-frames.ts";
import { type Kind, mapQuantities } from "./quantities.ts";
import { forAll } from "./runs.ts";
import { ALL, eigenvalues, eigenvaluesOf, ROUNDING } from "./spectra.ts";

/** trace(K^-1 M) by dense Cholesky factors, K > 0. */
function flexibleMass(K: SymmetricSparse, M: SymmetricSparse): number {
  const n = K.pattern.n;
  const L = toDense(K);
  choleskyInPlace(L, n);
  const X = toDense(M);
  forwardInPlace(L, n, X, n);
  backwardInPlace(L, n, X, n);
  let trace = 0;
  for (let i = 0; i < n; i++) trace += X[n * i + i];
  return trace;
}

describe("a held frame", () => {
  test("trace(K^-1 M) is the sum of all 1/lambda, and 1/lambda_1 is at most that (Dunkerley)", () => {
    forAll(memberFrame({ holding: "held" }), 30, (frame) => {
      const analysis = solveFrame(frame, { modes: ALL });
      const lambda = eigenvaluesOf(analysis);
      const trace = flexibleMass(analysis.system.K, analysis.system.M);
      const sum = lambda.reduce((total, l) => total + 1 / l, 0);
      expect(Math.abs(sum / trace - 1)).toBeLessThan(ROUNDING);
      expect(lambda[0] * (1 + ROUNDING)).toBeGreaterThanOrEqual(1 / trace);
      expect(lambda[0]).toBeLessThanOrEqual((lambda.length / trace) * (1 + ROUNDING));
    });
  });
});

const STIFFNESS: readonly Kind[] = [
  ...(["force", "bendingRigidity", "stiffness", "rotationalStiffness"] as const),
];
const MASS: readonly Kind[] = ["mass", "inertia", "massPerLength", "inertiaPerLength"];

/**
 * Two frames of the same shape whose quantities of these kinds add up to the given one's: the first
 * takes the given shares, again and again in the order of the file, the second what is left. A body's
 * six numbers of inertia are shared alike, or one share would not be possible by itself.
 */
function split(
  frame: MemberFrame,
  kinds: readonly Kind[],
  shares: readonly number[],
): readonly [MemberFrame, MemberFrame] {
  const part = (of: (share: number) => number) => {
    let next = 0;
    return mapQuantities(frame, (value, kind) => {
      if (!kinds.includes(kind)) return value;
      const share = kind === "inertia" ? shares[0] : shares[next++ % shares.length];
      return value * of(share);
    });
  };
  return [part((s) => s), part((s) => 1 - s)];
}

const shares = fc.array(
  fc.integer({ min: 5, max: 95 }).map((v) => v / 100),
  { minLength: 7, maxLength: 7 },
);

/** Sections by their stiffness and mass, which are then free to be shared out. */
const sharable = fc.tuple(memberFrame({ holding: "held", sections: "stiffness" }), shares);

describe("a frame shared out between two", () => {
  test("stiffness: lambda_(i+j-1) is at least lambda_i + lambda_j of the shares (i = j = 1: Southwell)", () => {
    forAll(sharable, 25, ([frame, by]) => {
      const whole = eigenvalues(frame, ALL);
      const [one, two] = split(frame, STIFFNESS, by).map((part) => eigenvalues(part, ALL));
      expect(one[0]).toBeLessThan(whole[0]);
      for (let i = 0; i < whole.length; i++) {
        for (let j = 0; i + j < whole.length; j++) {
          expect(whole[i + j] * (1 + ROUNDING)).toBeGreaterThanOrEqual(one[i] + two[j]);
        }
      }
    });
  });

  test("mass: 1/lambda_(i+j-1) is at most 1/lambda_i + 1/lambda_j of the shares (i = j = 1: Dunkerley)", () => {
    forAll(sharable, 25, ([frame, by]) => {
      const whole = eigenvalues(frame, ALL);
      const [one, two] = split(frame, MASS, by).map((part) => eigenvalues(part, ALL));
      expect(one[0]).toBeGreaterThan(whole[0]);
      for (let i = 0; i < whole.length; i++) {
        for (let j = 0; i + j < whole.length; j++) {
          expect(1 / whole[i + j]).toBeLessThanOrEqual((1 / one[i] + 1 / two[j]) * (1 + ROUNDING));
        }
      }
    });
  });
});
