/** Matrices and shifts that cannot be: refused in words, or solved as they are, never silently wrong. */

import { describe, expect, test } from "vitest";
import { SolveError } from "../../src/errors.ts";
import { countBelow } from "../../src/linalg/completeness.ts";
import { denseModes } from "../../src/linalg/dense-modes.ts";
import { lowestModes } from "../../src/linalg/modes.ts";
import { multiply } from "../../src/linalg/product.ts";
import { fixedSeedGenerator } from "../../src/linalg/random.ts";
import type { SymmetricSparse } from "../../src/linalg/sparse.ts";
import { analysePattern } from "../../src/linalg/symbolic.ts";
import { plateStack } from "./beam-grid.ts";
import { chain, chainEigenvalue } from "./chains.ts";
import { expectModes } from "./expect-modes.ts";

const { K, M, n, rigid } = plateStack({ nx: 5, ny: 4, length: 0.2, width: 0.15, thickness: 0.003 });
const options = { count: 10, deflate: rigid };
const { colPtr, rowIdx } = K.pattern;

function edited(A: SymmetricSparse, edit: (values: Float64Array) => void): SymmetricSparse {
  const values = A.values.slice();
  edit(values);
  return { pattern: A.pattern, values };
}

/** The entry in row i of column j. */
const entry = (i: number, j: number) => rowIdx.indexOf(i, colPtr[j]);

describe("entries that are no numbers", () => {
  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("%d", (bad) => {
    for (const [i, j] of [
      [62, 62],
      [65, 62],
    ]) {
      const spoilt = (A: SymmetricSparse) => edited(A, (v) => v.fill(bad, entry(i, j)));
      expect(() => lowestModes(spoilt(K), M, options)).toThrow(
        new SolveError(
          `entry (${i}, ${j}) of the stiffness matrix is ${bad}: only finite numbers can be solved with`,
        ),
      );
      expect(() => lowestModes(K, spoilt(M), options)).toThrow(
        `entry (${i}, ${j}) of the mass matrix is ${bad}`,
      );
    }
  });
});

describe("a mass matrix that gives some motion a negative energy", () => {
  test.each<[string, (v: Float64Array) => void, string]>([
    [
      "a negative mass",
      (v) => v.fill(-1e-3, entry(2, 2), entry(2, 2) + 1),
      "entry (2, 2) is -0.001",
    ],
    ["a negative rotary inertia", (v) => v.fill(-1e-9, entry(4, 4), entry(4, 4) + 1), "entry (4, "],
    ["a lost diagonal entry", (v) => v.fill(0, entry(63, 63), entry(63, 63) + 1), "entries allow"],
    [
      "a coupling without the mass to it",
      (v) => v.fill(9, entry(8, 2), entry(8, 2) + 1),
      "(8, 2) is 9",
    ],
    ["every sign wrong", (v) => v.set(v.map((m) => -m)), "diagonal entry may be below"],
  ])("%s", (_, edit, where) => {
    const error = (() => {
      try {
        lowestModes(K, edited(M, edit), options);
      } catch (caught) {
        return caught;
      }
      return undefined;
    })();
    expect(error).toBeInstanceOf(SolveError);
    expect((error as Error).message).toContain(
      "the mass matrix gives some motion a negative energy",
    );
    expect((error as Error).message).toContain(where);
  });

  test("but roundings of entries that should be zero are none", () => {
    const largest = M.values.reduce((a, m) => Math.max(a, m), 0);
    const dusty = edited(M, (v) => {
      v[entry(4, 4)] += 1e-17 * largest;
      v[entry(8, 4)] += 1e-16 * largest;
    });
    const usual = lowestModes(K, M, options);
    const { lambda } = lowestModes(K, dusty, options);
    for (let k = 0; k < 10; k++) expect(lambda[k] / usual.lambda[k]).toBeCloseTo(1, 10);
  });
});

describe("a stiffness matrix that gives some motion a negative energy", () => {
  test.each<[string, (v: Float64Array) => void]>([
    ["a negative diagonal entry", (v) => v.fill(-1e5, entry(62, 62), entry(62, 62) + 1)],
    [
      "a negative spring to the ground",
      (v) => v.fill(v[entry(62, 62)] - 1e4, entry(62, 62), entry(62, 62) + 1),
    ],
    [
      "a coupling three times too strong",
      (v) => v.fill(3 * v[entry(6, 0)], entry(6, 0), entry(6, 0) + 1),
    ],
    ["a coupling of the wrong sign", (v) => v.fill(-v[entry(8, 2)], entry(8, 2), entry(8, 2) + 1)],
    ["every sign wrong", (v) => v.set(v.map((k) => -k))],
  ])("%s", (_, edit) => {
    expect(() => lowestModes(edited(K, edit), M, options)).toThrow(SolveError);
    expect(() => lowestModes(edited(K, edit), M, { count: 10 })).toThrow(SolveError);
  });
});

test("any one entry wrong: refused, or the modes are those of the matrices as they are", () => {
  const random = fixedSeedGenerator(5);
  const draw = (below: number) => Math.floor(((random() + 1) / 2) * below);
  const tally = { refused: 0, solved: 0 };
  for (let trial = 0; trial < 80; trial++) {
    const which = trial % 2 === 0 ? K : M;
    let p = draw(which.values.length);
    while (which.values[p] === 0) p = (p + 1) % which.values.length;
    const change = [-1, 0, 3, 0.5][(trial >> 1) % 4];
    const wrong = edited(which, (v) => v.fill(change * v[p], p, p + 1));
    const [stiffness, mass] = which === K ? [wrong, M] : [K, wrong];
    // Nothing deflated, since the rigid-body motions may be gone.
    try {
      const modes = lowestModes(stiffness, mass, { count: 12 });
      expectModes(stiffness, mass, modes);
      const dense = denseModes(stiffness, mass, 12);
      const unit = dense.lambda[11];
      for (let k = 0; k < 12; k++) {
        expect(Math.abs(modes.lambda[k] - dense.lambda[k])).toBeLessThan(1e-9 * unit);
      }
      tally.solved++;
    } catch (error) {
      if (!(error instanceof SolveError)) throw error;
      tally.refused++;
    }
  }
  expect(tally.refused).toBeGreaterThan(15);
  expect(tally.solved).toBeGreaterThan(15);
});

describe("a shift on an eigenvalue", () => {
  test("zero, for a structure that floats", () => {
    for (const shift of [0, -0, -1e-12]) {
      expect(() => lowestModes(K, M, { ...options, shift })).toThrow("is not positive definite");
      expect(() => lowestModes(K, M, { count: 10, shift })).toThrow("is not positive definite");
    }
  });

  test("zero, for a structure that is held: the lowest modes as ever", () => {
    const held = chain(90, "fixed-free");
    const modes = lowestModes(held.K, held.M, { count: 8, shift: 0 });
    expectModes(held.K, held.M, modes);
    expect(modes.evidence.shift).toBe(0);
    for (let i = 1; i <= 8; i++) {
      expect(modes.lambda[i - 1]).toBeCloseTo(chainEigenvalue(90, "fixed-free", i), 12);
    }
  });

  test("a count at an eigenvalue is right on one side of it or the other, or moves on", () => {
    const size = 40;
    const pencil = chain(size, "fixed-fixed");
    const symbolic = analysePattern(pencil.K.pattern);
    const phi = new Float64Array(size).fill(1 / Math.sqrt(size));
    const exact = Array.from({ length: size }, (_, i) =>
      chainEigenvalue(size, "fixed-fixed", i + 1),
    );
    for (let k = 1; k + 1 < size; k++) {
      const width = exact[k + 1] - exact[k];
      const places = [exact[k], exact[k] + width / 2, exact[k] + width / 3];
      const nearest = { lambda: exact[k - 1], phi };
      const { mu, below } = countBelow(symbolic, pencil.K, pencil.M, places, nearest);
      expect(below).toBeGreaterThanOrEqual(exact.filter((l) => l < mu * (1 - 1e-12)).length);
      expect(below).toBeLessThanOrEqual(exact.filter((l) => l < mu * (1 + 1e-12)).length);
      // Right above a mode that was found it is not trusted at all.
      const onMode = countBelow(symbolic, pencil.K, pencil.M, places, { lambda: exact[k], phi });
      expect(onMode.mu).toBeGreaterThan(exact[k]);
      expect(onMode.below).toBe(k + 1);
    }
  });

  test("shifts far below all modes: right, or refused", () => {
    const usual = lowestModes(K, M, options);
    const outcomes = [1e3, 1e6, 1e9, 1e15, 1e25].map((factor) => {
      try {
        const { lambda } = lowestModes(K, M, { ...options, shift: -factor * usual.lambda[0] });
        for (let k = 0; k < 10; k++) expect(lambda[k] / usual.lambda[k]).toBeCloseTo(1, 9);
        return "right";
      } catch (error) {
        expect(error).toBeInstanceOf(SolveError);
        return "refused";
      }
    });
    expect(outcomes[0]).toBe("right");
    expect(outcomes[4]).toBe("refused");
  });
});

test("a tolerance that is none is refused; one that cannot be met is a failure", () => {
  for (const tolerance of [0, -1, Number.NaN]) {
    expect(() => lowestModes(K, M, { ...options, tolerance })).toThrow(
      new RangeError(`tolerance must be above zero, but is ${tolerance}`),
    );
  }
  expect(() => lowestModes(K, M, { ...options, tolerance: 1e-300 })).toThrow(SolveError);
  // One that is too easily met does not lower what is demanded in the end.
  expect(() => lowestModes(K, M, { ...options, tolerance: 1 })).toThrow("where 1e-8 is required");
});

test("the modes of the matrix used here are right to begin with", () => {
  const modes = lowestModes(K, M, options);
  expectModes(K, M, modes, rigid);
  const force = new Float64Array(n);
  for (const r of rigid) {
    multiply(force, K, r);
    for (const f of force) expect(Math.abs(f)).toBeLessThan(1e-6);
  }
});
