/** Order between the modes of the altered chains, and bounds on the first of them. */

import { describe, expect, test } from "vitest";
import { factorise } from "../../../src/linalg/factorise.ts";
import { lowestModes } from "../../../src/linalg/modes.ts";
import { solveInPlace } from "../../../src/linalg/solve.ts";
import { analysePattern } from "../../../src/linalg/symbolic.ts";
import { chain, type Spring, springSystem } from "../../linalg/chains.ts";
import { chainEigenvalues } from "./altered-chain.ts";

/** low_i <= high_i for all i, and high_i <= low_(i + 1): one change of rank one. */
function expectInterlaced(low: readonly number[], high: readonly number[]) {
  high.forEach((lambda, i) => {
    expect(lambda, `eigenvalue ${i + 1}`).toBeGreaterThanOrEqual(low[i]);
    if (i + 1 < low.length) expect(lambda, `eigenvalue ${i + 1}`).toBeLessThanOrEqual(low[i + 1]);
  });
}

describe("chain of five: one change of rank one moves no mode past its neighbour", () => {
  const base = chainEigenvalues("as it is");

  test("a mass lowers every mode", () => {
    expectInterlaced(chainEigenvalues("3 kg more"), base);
  });

  test("a spring raises every mode", () => {
    expectInterlaced(base, chainEigenvalues("a spring of 2 N/m"));
  });

  test("a support raises every mode, and takes one away", () => {
    const held = chainEigenvalues("a support");
    expect(held.length).toBe(4);
    expectInterlaced(base, held);
  });
});

test("stiffness in two parts: lambda_1 is at least the sum of theirs, of masses alike (Southwell)", () => {
  const first = (springs: readonly Spring[]) => {
    const { K, M } = springSystem([1, 1, 1, 1, 1], springs);
    return lowestModes(K, M, { count: 1 }).lambda[0];
  };
  const row: Spring[] = [0, 1, 2, 3].map((i) => [i, i + 1, 1]);
  const fixedLeft: Spring[] = [[0, -1, 1], ...row];
  const fixedRight: Spring[] = [...row, [4, -1, 1]];
  const sum = first(fixedLeft) + first(fixedRight);
  expect(sum).toBeCloseTo(2 * 0.0810140528, 9);
  // measured: 0.33 against 0.16
  expect(first([...fixedLeft, ...fixedRight])).toBeGreaterThan(sum);
});

/** The diagonal of K^-1: the deflection of each mass under a unit force on it. */
function flexibilities(n: number): number[] {
  const { K } = chain(n, "fixed-free");
  const factor = factorise(analysePattern(K.pattern), K);
  return Array.from({ length: n }, (_, i) => {
    const x = new Float64Array(n);
    x[i] = 1;
    solveInPlace(factor, x, 1);
    return x[i];
  });
}

test("trace(K^-1 M) of the chain of five is 15, the sum of 1/lambda, and more than 1/lambda_1", () => {
  const base = chainEigenvalues("as it is");
  const trace = flexibilities(5).reduce((sum, a) => sum + a, 0);
  expect(trace).toBeCloseTo(15, 12);
  expect(base.reduce((sum, lambda) => sum + 1 / lambda, 0)).toBeCloseTo(trace, 10);
  // S. Dunkerley, Phil. Trans. R. Soc. 185 (1895): lambda_1 > 1/trace
  expect(base[0]).toBeGreaterThan(1 / 15);
});
