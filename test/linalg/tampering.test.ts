/**
 * What was found is tampered with before it is proved: modes dropped, doubled, invented, bent, and the
 * factors of the matrices spoilt. Each must be noticed, or made good.
 */

import { describe, expect, test } from "vitest";
import { SolveError } from "../../src/errors.ts";
import { backwardError } from "../../src/linalg/backward-error.ts";
import { factorise } from "../../src/linalg/factorise.ts";
import { type FoundModes, findModes, polish, unacceptable } from "../../src/linalg/find-modes.ts";
import { lowestModes } from "../../src/linalg/modes.ts";
import { type Problem, stateProblem } from "../../src/linalg/problem.ts";
import { prove } from "../../src/linalg/prove.ts";
import { measure } from "../../src/linalg/quality.ts";
import { fixedSeedGenerator } from "../../src/linalg/random.ts";
import { combine } from "../../src/linalg/sparse.ts";
import { analysePattern } from "../../src/linalg/symbolic.ts";
import { plateStack } from "./beam-grid.ts";
import { springSystem } from "./chains.ts";

const { K, M, n, rigid } = plateStack({ nx: 6, ny: 5, length: 0.2, width: 0.15, thickness: 0.003 });
const count = 10;
const more = lowestModes(K, M, { count: 40, deflate: rigid });
const right = more.lambda.subarray(0, count);
const mode = (k: number) => more.phi.slice(k * n, (k + 1) * n);

function searched(): { problem: Problem; found: FoundModes } {
  const problem = stateProblem(K, M, { count, deflate: rigid });
  return { problem, found: findModes(problem, {}) };
}

/** The modes found, with other vectors in their place, judged as those of the search are. */
function replaced(
  problem: Problem,
  found: FoundModes,
  change: (columns: Float64Array[]) => Float64Array[],
): FoundModes {
  const { phi, lambda } = found.modes;
  const columns = change(Array.from(lambda, (_, k) => phi.slice(k * n, (k + 1) * n)));
  const vectors = Float64Array.from(columns.flatMap((c) => Array.from(c)));
  const modes = measure(problem.sparseK, problem.sparseM, problem.near, problem.rigid, vectors);
  return { ...found, modes };
}

function mix(a: Float64Array, b: Float64Array, share: number): Float64Array {
  return a.map((x, i) => x + share * b[i]);
}

function expectRight(lambda: Float64Array): void {
  for (let k = 0; k < count; k++) expect(Math.abs(lambda[k] / right[k] - 1)).toBeLessThan(1e-10);
}

describe("modes that are missing", () => {
  test.each(Array.from({ length: count }, (_, k) => k + 1))(
    "number %i is found again",
    (number) => {
      const { problem, found } = searched();
      const short = replaced(problem, found, (all) => all.toSpliced(number - 1, 1));
      const { modes, expected } = prove(problem, short);
      // Without the last one it counts below a cut above the one before.
      const proven = number === found.modes.lambda.length ? number - 1 : found.modes.lambda.length;
      expect(expected).toBeGreaterThanOrEqual(6 + proven);
      for (let k = 0; k < proven; k++) {
        expect(Math.abs(modes.lambda[k] / right[k] - 1)).toBeLessThan(1e-10);
      }
    },
  );

  test("all but the last are found again", () => {
    const { problem, found } = searched();
    expectRight(
      prove(
        problem,
        replaced(problem, found, (all) => all.slice(-1)),
      ).modes.lambda,
    );
  });

  test("where the search stays blind to one, that is an error", () => {
    const { problem, found } = searched();
    const hidden = mode(4);
    const massHidden = new Float64Array(n);
    problem.operator.multiplyMass(massHidden, hidden, 1);
    const { solve } = problem.operator;
    problem.operator = {
      ...problem.operator,
      solve(out, b, columns) {
        solve(out, b, columns);
        for (let c = 0; c < columns; c++) {
          const x = out.subarray(c * n, (c + 1) * n);
          const share = x.reduce((sum, xi, i) => sum + xi * massHidden[i], 0);
          for (let i = 0; i < n; i++) x[i] -= share * hidden[i];
        }
      },
    };
    expect(() =>
      prove(
        problem,
        replaced(problem, found, (all) => all.toSpliced(4, 1)),
      ),
    ).toThrow(SolveError);
    // From the beginning, too: the iteration itself never sees the mode.
    expect(() => prove(problem, findModes(problem, {}))).toThrow(SolveError);
  });
});

describe("modes that are none", () => {
  test("one twice in place of its neighbour: the number is right, the modes are not", () => {
    for (let k = 0; k + 1 < count; k++) {
      const { problem, found } = searched();
      const doubled = replaced(problem, found, (all) => all.with(k + 1, all[k]));
      // With the last one gone it counts below a cut lower down, where there is one too many.
      const complaint = k + 2 < count ? "the modes are not orthogonal" : "not proved complete";
      expect(() => prove(problem, doubled)).toThrow(complaint);
    }
  });

  test("one too many", () => {
    const { problem, found } = searched();
    const invented = replaced(problem, found, (all) => [...all, mix(all[2], all[3], 1)]);
    expect(() => prove(problem, invented)).toThrow("the modes are not proved complete: 16");
  });

  test("an elastic mode among the rigid-body motions", () => {
    const { problem, found } = searched();
    // Given out as known, found a second time: one more than counted.
    const deflated = stateProblem(K, M, { count, deflate: [...rigid, mode(0)] });
    expect(() => prove({ ...deflated, near: problem.near }, found)).toThrow("not proved complete");
  });

  test("a mode bent towards one that is not wanted: the residual tells by how much", () => {
    const { problem, found } = searched();
    for (const share of [1e-1, 1e-3, 1e-5, 1e-7]) {
      const bent = replaced(problem, found, (all) => all.with(5, mix(all[5], mode(35), share)));
      const residual = bent.modes.residual[5];
      // (lambda_35 - lambda_5) share over the root of (lambda_5 - sigma) (lambda_35 - sigma)
      const [l, L, sigma] = [right[5], more.lambda[35], problem.near.sigma];
      const due = (share * (L - l)) / Math.sqrt((l - sigma) * (L - sigma));
      expect(residual / due).toBeCloseTo(1, share > 0.01 ? 0 : 2);
      expect(unacceptable(problem, bent.modes)).toMatch(/^mode 6 \(eigenvalue /);
      expectRight(polish(problem, bent.modes).lambda);
      if (residual > 1e-3)
        expect(() => prove(problem, bent)).toThrow("cannot be counted as a mode");
    }
  });

  test("a mode that leans on another counted one is not orthogonal to it", () => {
    for (const share of [1e-4, 1e-6]) {
      const { problem, found } = searched();
      const leaning = replaced(problem, found, (all) => all.with(4, mix(all[4], all[5], share)));
      expect(() => prove(problem, leaning)).toThrow("the modes are not orthogonal");
    }
  });

  test("one that leans on a wanted mode, in place of it: residual, angle and number would pass", () => {
    // Unit masses on springs to the ground: 3.305 and a little of 3, which is left out.
    const springs = [1, 2, 3, 3.3, 3.305, 4, 5, 6, 7, 8];
    const chain = springSystem(
      springs.map(() => 1),
      springs.map((k, i) => [i, -1, k] as const),
    );
    const problem = stateProblem(chain.K, chain.M, { count: 3 });
    const unit = (i: number) => Float64Array.from(springs, (_, j) => Number(i === j));
    const angle = 0.0103;
    const leaning = unit(4).map((x, i) => Math.cos(angle) * x + Math.sin(angle) * unit(2)[i]);
    const vectors = [unit(0), unit(1), unit(3), leaning].flatMap((v) => Array.from(v));
    const { sparseK, sparseM, near, rigid: none } = problem;
    const modes = measure(sparseK, sparseM, near, none, Float64Array.from(vectors));
    expect(modes.residual[3]).toBeLessThan(1e-3);
    expect(modes.lambda[3]).toBeLessThan(3.305);
    expect(() => prove(problem, { modes, upper: 3.305 })).toThrow(
      "cannot be told from what lies above",
    );
  });

  test("eigenvalues that were exchanged are of no account: they are measured anew", () => {
    const { problem, found } = searched();
    const swapped = replaced(problem, found, (all) => all.with(1, all[7]).with(7, all[1]));
    expectRight(swapped.modes.lambda);
    const lambda = found.modes.lambda.with(1, found.modes.lambda[8]).with(8, right[1]);
    expectRight(polish(problem, { ...found.modes, lambda, residual: lambda }).lambda);
  });
});

describe("factors that are spoilt", () => {
  const places = fixedSeedGenerator(11);

  test.each([1e-6, -0.5, 1e9])("a pivot by the factor 1 + %f", (change) => {
    for (let trial = 0; trial < 8; trial++) {
      const { problem, found } = searched();
      const { d } = problem.near.factor;
      d[Math.floor(((places() + 1) / 2) * n)] *= 1 + change;
      expect(() => prove(problem, found)).toThrow("are those of another matrix");
    }
  });

  test("before the search: wrong is never taken for right", () => {
    let refused = 0;
    for (let trial = 0; trial < 40; trial++) {
      const problem = stateProblem(K, M, { count, deflate: rigid });
      const { L, d } = problem.near.factor;
      const spoilt = trial % 2 === 0 ? d : L;
      const place = Math.floor(((places() + 1) / 2) * spoilt.length);
      spoilt[place] *= [1 + 1e-9, 1.01, -1, 1e6][(trial >> 1) % 4];
      try {
        expectRight(prove(problem, findModes(problem, {})).modes.lambda);
      } catch (error) {
        expect(error).toBeInstanceOf(SolveError);
        refused++;
      }
    }
    // Entries of L outside its triangle, and changes of the last digits, do no harm.
    expect(refused).toBeGreaterThan(12);
    expect(refused).toBeLessThan(40);
  });

  test("the backward error tells sound factors from others", () => {
    const symbolic = analysePattern(K.pattern);
    const A = combine(1, K, 1e6, M);
    const factor = factorise(symbolic, A);
    expect(backwardError(factor, A)).toBeLessThan(1e-15);
    for (let q = 0; q < n; q += 7) {
      const d = factor.d.with(q, factor.d[q] * (1 + 1e-8));
      expect(backwardError({ ...factor, d }, A)).toBeGreaterThan(1e-13);
    }
    expect(backwardError(factor, combine(1, K, 1.0001e6, M))).toBeGreaterThan(1e-10);
  });
});
