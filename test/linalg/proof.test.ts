import { describe, expect, test } from "vitest";
import { SolveError } from "../../src/errors.ts";
import { countBelow } from "../../src/linalg/completeness.ts";
import { cutPlaces, findGap } from "../../src/linalg/gap.ts";
import { lowestModes } from "../../src/linalg/modes.ts";
import { analysePattern } from "../../src/linalg/symbolic.ts";
import { chain, chainEigenvalue, sideBySide, springSystem, squareGrid } from "./chains.ts";
import { expectModes } from "./expect-modes.ts";

describe("a start block that knows only one of two structures", () => {
  // Nothing in the iteration crosses from one to the other: zeros stay exact zeros.
  const n = 90;
  const { K, M } = sideBySide(chain(n, "fixed-free"), chain(n, "fixed-fixed"));
  const start = new Float64Array(4 * 2 * n);
  for (let c = 0; c < 4; c++)
    for (let i = 0; i < n; i++) start[2 * n * c + i] = Math.sin(i * i * (c + 1) + i);

  test("the count notices, and the missing modes are found", () => {
    const modes = lowestModes(K, M, { count: 10, start });
    expectModes(K, M, modes);
    const exact = [
      ...Array.from({ length: 10 }, (_, i) => chainEigenvalue(n, "fixed-free", i + 1)),
      ...Array.from({ length: 10 }, (_, i) => chainEigenvalue(n, "fixed-fixed", i + 1)),
    ].sort((a, b) => a - b);
    for (let k = 0; k < 10; k++) expect(modes.lambda[k]).toBeCloseTo(exact[k], 11);
  });

  test("at a cost that shows that there was something to repair", () => {
    const usual = lowestModes(K, M, { count: 10 });
    const repaired = lowestModes(K, M, { count: 10, start });
    // Ten of one chain are found first, and as many of the other lie below the cut.
    expect(repaired.evidence.expectedBelow).toBeGreaterThan(usual.evidence.expectedBelow + 5);
  });
});

describe("failures are errors, never silently wrong", () => {
  test("a deflated vector that is no rigid-body motion", () => {
    const { K, M } = chain(100, "fixed-free");
    const bent = Float64Array.from({ length: 100 }, (_, i) => Math.sin(i));
    expect(() => lowestModes(K, M, { count: 3, deflate: [bent] })).toThrow(SolveError);
    expect(() => lowestModes(K, M, { count: 3, deflate: [bent] })).toThrow(
      "the vectors to deflate are no rigid-body motions",
    );
  });

  test("a slightly wrong rigid-body motion", () => {
    const { K, M } = chain(100, "free-free");
    for (const error of [1e-3, 1e-5, 1e-7]) {
      const nearly = Float64Array.from({ length: 100 }, (_, i) => 1 + (error * i) / 100);
      expect(() => lowestModes(K, M, { count: 3, deflate: [nearly] })).toThrow(
        "the vectors to deflate are no rigid-body motions",
      );
    }
  });

  test("but any mode that is known exactly may be deflated", () => {
    const n = 70;
    const { K, M } = chain(n, "fixed-fixed");
    const first = Float64Array.from({ length: n }, (_, i) =>
      Math.sin(((i + 1) * Math.PI) / (n + 1)),
    );
    const modes = lowestModes(K, M, { count: 4, deflate: [first] });
    for (let k = 0; k < 4; k++) {
      expect(modes.lambda[k]).toBeCloseTo(chainEigenvalue(n, "fixed-fixed", k + 2), 12);
    }
  });

  test("dependent vectors", () => {
    const { K, M } = chain(5, "free-free");
    const ones = new Float64Array(5).fill(1);
    expect(() => lowestModes(K, M, { count: 1, deflate: [ones, ones.map((x) => 3 * x)] })).toThrow(
      "linearly dependent",
    );
  });

  test("an unknown with neither stiffness nor mass", () => {
    const { K, M } = springSystem(
      [1, 1, 0],
      [
        [0, -1, 1],
        [1, 0, 1],
      ],
    );
    expect(() => lowestModes(K, M, { count: 1 })).toThrow(SolveError);
    expect(() => lowestModes(K, M, { count: 1 })).toThrow("pivot of unknown 2");
  });

  test("no mass at all", () => {
    const { K, M } = springSystem([0, 0], [[1, 0, 1]]);
    expect(() => lowestModes(K, M, { count: 1 })).toThrow("nothing vibrates");
  });

  test("a negative stiffness", () => {
    const { K, M } = springSystem(
      [1, 1],
      [
        [0, -1, 2],
        [1, 0, -0.5],
      ],
    );
    expect(() => lowestModes(K, M, { count: 1 })).toThrow("not positive definite");
  });

  test("unusable options", () => {
    const { K, M } = chain(3, "fixed-free");
    expect(() => lowestModes(K, M, { count: 0 })).toThrow(
      "count must be a positive integer, not 0",
    );
    expect(() => lowestModes(K, M, { count: 1, shift: 1 })).toThrow("shift must not be above zero");
    expect(() => lowestModes(K, M, { count: 1, deflate: [new Float64Array(2)] })).toThrow(
      "deflated vector 0 has 2 components instead of 3",
    );
    const symbolic = analysePattern(chain(3, "fixed-free").K.pattern);
    expect(() => lowestModes(K, M, { count: 1, symbolic })).toThrow("belongs to another pattern");
  });
});

describe("countBelow", () => {
  test("counts as the closed form does, wherever it cuts", () => {
    const { K, M } = chain(40, "fixed-free");
    const symbolic = analysePattern(K.pattern);
    for (let below = 1; below < 40; below++) {
      const lower = chainEigenvalue(40, "fixed-free", below);
      const upper = chainEigenvalue(40, "fixed-free", below + 1);
      const phi = new Float64Array(40).fill(1 / Math.sqrt(40));
      const places = [0.5, 0.4, 0.6].map((s) => lower + s * (upper - lower));
      const count = countBelow(symbolic, K, M, places, { lambda: lower, phi });
      expect(count.below).toBe(below);
    }
  });

  test("moves on from a place where a pivot vanishes", () => {
    // K - 2 M has a zero in every diagonal place.
    const { K, M } = chain(2, "fixed-fixed");
    const count = countBelow(analysePattern(K.pattern), K, M, [2, 2.5], {
      lambda: 1,
      phi: Float64Array.of(Math.SQRT1_2, Math.SQRT1_2),
    });
    expect(count).toMatchObject({ mu: 2.5, below: 1, attempts: 2 });
  });

  test("says so when every place is bad", () => {
    const { K, M } = chain(2, "fixed-fixed");
    const nearest = { lambda: 1, phi: Float64Array.of(1, 0) };
    expect(() => countBelow(analysePattern(K.pattern), K, M, [2, 2], nearest)).toThrow(
      "the count of eigenvalues above 1.00000 cannot be trusted",
    );
  });
});

describe("findGap", () => {
  const at = (lambda: readonly number[], residual = 0) => ({
    theta: Float64Array.from(lambda, (l) => 1 / (l + 1)),
    residual: new Float64Array(lambda.length).fill(residual),
    exhausted: false,
  });

  test("does not cut a cluster", () => {
    const gap = findGap(at([1, 2, 2, 2, 3]), -1, 2);
    expect(gap?.below).toBe(4);
    expect(gap?.upper).toBeCloseTo(3, 12);
  });

  test("does not trust vague values", () => {
    expect(findGap(at([1, 2, 3], 0.1), -1, 2)).toBeUndefined();
    expect(findGap(at([1, 2]), -1, 2)).toBeUndefined();
  });

  test("has no upper end once all is found", () => {
    expect(findGap({ ...at([1, 2]), exhausted: true }, -1, 2)).toEqual({
      below: 2,
      upper: Number.POSITIVE_INFINITY,
    });
  });

  test("takes the widest of narrow gaps only when there is no wide one in reach", () => {
    const close = Array.from({ length: 40 }, (_, k) => 1 + k * (k === 12 ? 3e-5 : 2e-5));
    const gap = findGap(at(close), -1, 5);
    expect(gap?.below).toBe(12);
  });

  test("cuts lie within the gap, the first just above its lower end", () => {
    for (const mu of cutPlaces(5, 6, -1)) {
      expect(mu).toBeGreaterThan(5);
      expect(mu).toBeLessThan(6);
    }
    expect(cutPlaces(5, 6, -1)[0]).toBeCloseTo(5.06, 12);
    expect(cutPlaces(0, Number.POSITIVE_INFINITY, -2)[0]).toBeCloseTo(0.02, 12);
  });
});

describe("the square grid", () => {
  test("every count from 1 to 40 is proved, in the middle of pairs too", () => {
    const { K, M } = squareGrid(10);
    const single = Array.from({ length: 10 }, (_, i) => chainEigenvalue(10, "fixed-fixed", i + 1));
    const all = single.flatMap((a) => single.map((b) => a + b)).sort((a, b) => a - b);
    for (let count = 1; count <= 40; count += 3) {
      const { lambda, evidence } = lowestModes(K, M, { count });
      expect(lambda.length).toBe(count);
      expect(lambda[count - 1]).toBeCloseTo(all[count - 1], 10);
      expect(evidence.countedBelow).toBe(all.filter((l) => l < evidence.checkShift).length);
    }
  });
});
