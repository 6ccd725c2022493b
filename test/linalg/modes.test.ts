import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { denseModes } from "../../src/linalg/dense-modes.ts";
import { lowestModes } from "../../src/linalg/modes.ts";
import { analysePattern } from "../../src/linalg/symbolic.ts";
import { beamModel, plateStack, strip } from "./beam-grid.ts";
import {
  chain,
  chainEigenvalue,
  type Ends,
  sideBySide,
  springSystem,
  squareGrid,
} from "./chains.ts";
import { expectModes } from "./expect-modes.ts";

const ones = (n: number) => new Float64Array(n).fill(1);

describe("closed forms", () => {
  test.each<[Ends, number, number]>([
    ["fixed-free", 1, 1],
    ["fixed-free", 2, 2],
    ["fixed-free", 5, 5],
    ["fixed-free", 300, 12],
    ["fixed-fixed", 1, 1],
    ["fixed-fixed", 5, 3],
    ["fixed-fixed", 400, 30],
    ["free-free", 2, 1],
    ["free-free", 5, 4],
    ["free-free", 350, 10],
  ])("%s chain of %i masses, %i modes", (ends, n, count) => {
    const { K, M } = chain(n, ends);
    const rigid = ends === "free-free" ? [ones(n)] : [];
    const modes = lowestModes(K, M, { count, deflate: rigid });
    expect(modes.lambda.length).toBe(count);
    expectModes(K, M, modes, rigid);
    for (let i = 1; i <= count; i++) {
      const exact = chainEigenvalue(n, ends, i + rigid.length);
      expect(Math.abs(modes.lambda[i - 1] / exact - 1)).toBeLessThan(1e-11);
    }
  });

  test("the tabulated values of the fixed-free chain of five", () => {
    const { K, M } = chain(5, "fixed-free");
    const { lambda } = lowestModes(K, M, { count: 5 });
    const exact = [0.081014052771, 0.690278532109, 1.715370323453, 2.830830026004, 3.682507065662];
    exact.forEach((value, i) => {
      expect(lambda[i]).toBeCloseTo(value, 11);
    });
  });

  test("zero eigenvalues that nobody deflated are found like any other", () => {
    const { K, M } = chain(200, "free-free");
    const { lambda, evidence } = lowestModes(K, M, { count: 5 });
    for (let i = 1; i <= 5; i++) {
      expect(Math.abs(lambda[i - 1] - chainEigenvalue(200, "free-free", i))).toBeLessThan(1e-12);
    }
    expect(evidence.countedBelow).toBe(evidence.expectedBelow);
  });
});

describe("repeated eigenvalues", () => {
  test("a square grid has all its pairs", () => {
    const side = 14;
    const { K, M } = squareGrid(side);
    const modes = lowestModes(K, M, { count: 20 });
    expectModes(K, M, modes);
    const single = Array.from({ length: side }, (_, i) =>
      chainEigenvalue(side, "fixed-fixed", i + 1),
    );
    const all = single.flatMap((a) => single.map((b) => a + b)).sort((a, b) => a - b);
    for (let k = 0; k < 20; k++) expect(modes.lambda[k]).toBeCloseTo(all[k], 11);
  });

  test("seven copies of one structure: more than the block has vectors", () => {
    const one = chain(40, "fixed-free");
    const { K, M } = sideBySide(...new Array(7).fill(one));
    const modes = lowestModes(K, M, { count: 16 });
    expectModes(K, M, modes);
    for (let k = 0; k < 16; k++) {
      const exact = chainEigenvalue(40, "fixed-free", Math.floor(k / 7) + 1);
      expect(modes.lambda[k]).toBeCloseTo(exact, 12);
    }
    // The count cuts no cluster: it lies behind the third group of seven.
    expect(modes.evidence.expectedBelow).toBe(21);
  });

  test("a square free plate has its pairs of modes", () => {
    const { K, M, rigid } = plateStack({ nx: 9, ny: 9, length: 0.1, width: 0.1, thickness: 0.002 });
    const modes = lowestModes(K, M, { count: 14, deflate: rigid });
    expectModes(K, M, modes, rigid);
    const pairs = Array.from(modes.lambda.subarray(1)).filter(
      (l, k) => l / modes.lambda[k] - 1 < 1e-9,
    );
    expect(pairs.length).toBeGreaterThanOrEqual(3);
  });
});

describe("difficult structures", () => {
  test("two halves joined by a spring a billion times softer", () => {
    const n = 80;
    const springs = Array.from({ length: 2 * n - 1 }, (_, i): [number, number, number] => [
      i + 1,
      i,
      i === n - 1 ? 1e-9 : 1,
    ]);
    const { K, M } = springSystem(new Array(2 * n).fill(1), springs);
    const rigid = [ones(2 * n)];
    const modes = lowestModes(K, M, { count: 9, deflate: rigid });
    expectModes(K, M, modes, rigid);
    // The two halves against each other: (k / m) (1 / n + 1 / n), softer by 1e-8.
    expect(modes.lambda[0] / (2e-9 / n)).toBeCloseTo(1, 6);
    for (let i = 1; i <= 4; i++) {
      const exact = chainEigenvalue(n, "free-free", i + 1);
      expect(modes.lambda[2 * i - 1]).toBeCloseTo(exact, 8);
      expect(modes.lambda[2 * i]).toBeCloseTo(exact, 8);
    }
  });

  test("stiffness and mass over nine decades", () => {
    const n = 150;
    const springs = Array.from({ length: n }, (_, i): [number, number, number] => [
      i,
      i - 1,
      10 ** ((9 * ((7 * i) % 10)) / 9),
    ]);
    const masses = Array.from({ length: n }, (_, i) => 10 ** (((3 * i) % 7) - 3));
    const { K, M } = springSystem(masses, springs);
    const modes = lowestModes(K, M, { count: 10 });
    // The diagonal of K holds 1e9 and 1 in one number: that costs lambda up to ten digits.
    expectModes(K, M, modes, [], 1e-5);
    expect(modes.evidence.roundingLimited).toBeGreaterThan(0);
    const dense = denseModes(K, M, 10);
    for (let k = 0; k < 10; k++) {
      expect(Math.abs(modes.lambda[k] / dense.lambda[k] - 1)).toBeLessThan(1e-5);
    }
  });

  test("massless unknowns among the others", () => {
    const n = 120;
    const masses = Array.from({ length: n }, (_, i) => i % 2);
    const springs = Array.from({ length: n }, (_, i): [number, number, number] => [i, i - 1, 2]);
    const { K, M } = springSystem(masses, springs);
    const modes = lowestModes(K, M, { count: 8 });
    expectModes(K, M, modes);
    // Every other mass missing: pairs of springs in a row, a chain of half the length.
    for (let i = 1; i <= 8; i++) {
      expect(modes.lambda[i - 1]).toBeCloseTo(chainEigenvalue(n / 2, "fixed-free", i), 11);
    }
  });

  test.each([
    ["a 10 m plate below 1 Hz", { nx: 6, ny: 5, length: 10, width: 8, thickness: 0.002 }],
    ["a 20 mm strip above 10 kHz", { nx: 15, ny: 2, length: 0.02, width: 0.001, thickness: 0.001 }],
    [
      "plates on struts",
      { nx: 4, ny: 4, length: 0.2, width: 0.15, thickness: 0.003, plates: 2, struts: 4, patch: 2 },
    ],
  ])("%s: sparse, dense and the proof agree", (_, options) => {
    const { K, M, rigid } = plateStack(options);
    const modes = lowestModes(K, M, { count: 12, deflate: rigid });
    expectModes(K, M, modes, rigid);
    const dense = denseModes(K, M, 18);
    for (let k = 0; k < 12; k++) {
      expect(Math.abs(modes.lambda[k] / dense.lambda[k + 6] - 1)).toBeLessThan(1e-7);
    }
  });
});

describe("any system of masses and springs", () => {
  const strength = fc.integer({ min: -2, max: 2 }).map((e) => 10 ** e);
  const system = fc.integer({ min: 2, max: 70 }).chain((n) =>
    fc.record({
      masses: fc.array(strength, { minLength: n, maxLength: n }),
      // Every mass hangs on an earlier one, so the system is connected; some more springs on top.
      tree: fc.array(fc.tuple(fc.nat(), strength), { minLength: n - 1, maxLength: n - 1 }),
      more: fc.array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1), strength), { maxLength: n }),
      grounded: fc.boolean(),
      count: fc.integer({ min: 1, max: n + 2 }),
    }),
  );

  test("sparse and dense modes agree", () => {
    fc.assert(
      fc.property(system, ({ masses, tree, more, grounded, count }) => {
        const n = masses.length;
        const { K, M } = springSystem(masses, [
          ...tree.map(([j, k], i): [number, number, number] => [i + 1, j % (i + 1), k]),
          ...more.filter(([i, j]) => i !== j),
          ...(grounded ? [[0, -1, 1] as const] : []),
        ]);
        const rigid = grounded ? [] : [ones(n)];
        if (n === rigid.length) return;
        const modes = lowestModes(K, M, { count, deflate: rigid });
        expect(modes.lambda.length).toBe(Math.min(count, n - rigid.length));
        expectModes(K, M, modes, rigid, 1e-8);
        const dense = denseModes(K, M, n);
        for (let k = 0; k < modes.lambda.length; k++) {
          const ratio = modes.lambda[k] / dense.lambda[k + rigid.length];
          expect(Math.abs(ratio - 1)).toBeLessThan(1e-8);
        }
      }),
      // Bounds on roundings should not be tried on other systems at every run.
      { numRuns: 60, seed: 20 },
    );
  });
});

describe("more modes than there are", () => {
  test("all that exist are returned", () => {
    const { K, M } = chain(7, "free-free");
    const modes = lowestModes(K, M, { count: 50, deflate: [ones(7)] });
    expect(modes.lambda.length).toBe(6);
    expectModes(K, M, modes, [ones(7)]);
    expect(modes.evidence.countedBelow).toBe(7);
  });

  test("also where they are many", () => {
    const { K, M } = squareGrid(9);
    const modes = lowestModes(K, M, { count: 81 });
    expectModes(K, M, modes);
    expect(modes.evidence.countedBelow).toBe(81);
  });

  test("a beam element has six rigid and six elastic modes", () => {
    const { K, M, rigid } = beamModel(
      [
        [0, 0, 0],
        [0.3, 0.1, 0.2],
      ],
      [
        {
          ends: [
            { nodes: [0], at: [0, 0, 0] },
            { nodes: [1], at: [0.3, 0.1, 0.2] },
          ],
          section: strip(0.02, 0.004),
        },
      ],
    );
    const modes = lowestModes(K, M, { count: 12, deflate: rigid });
    expect(modes.lambda.length).toBe(6);
    expectModes(K, M, modes, rigid);
  });

  test("a rigid structure has none", () => {
    const { K, M } = springSystem([2], [[0, -1, 0]]);
    expect(() => lowestModes(K, M, { count: 3, deflate: [ones(1)] })).toThrow(
      "nothing can vibrate",
    );
  });
});

describe("the result", () => {
  const { K, M, rigid } = plateStack({
    nx: 10,
    ny: 9,
    length: 0.3,
    width: 0.2,
    thickness: 0.003,
  });

  test("is the same to the last bit every time, with or without a symbolic factorisation", () => {
    const first = lowestModes(K, M, { count: 10, deflate: rigid });
    const symbolic = analysePattern(K.pattern);
    const second = lowestModes(K, M, { count: 10, deflate: rigid, symbolic });
    expect(second.lambda).toEqual(first.lambda);
    expect(second.phi).toEqual(first.phi);
    expect(second.evidence).toEqual(first.evidence);
  });

  test("does not depend on the shift", () => {
    const usual = lowestModes(K, M, { count: 6, deflate: rigid });
    for (const factor of [0.01, 20]) {
      const shift = -factor * usual.lambda[0];
      const { lambda, evidence } = lowestModes(K, M, { count: 6, deflate: rigid, shift });
      expect(evidence.shift).toBe(shift);
      for (let k = 0; k < 6; k++) expect(lambda[k] / usual.lambda[k]).toBeCloseTo(1, 10);
    }
  });

  test("hands back the rigid motions M-orthonormal and a factor that solves", () => {
    const { rigid: R, factor } = lowestModes(K, M, { count: 2, deflate: rigid });
    expect(R.length).toBe(6 * K.pattern.n);
    expect(factor.negativePivots).toBe(0);
  });
});
