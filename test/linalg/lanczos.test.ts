import { describe, expect, test } from "vitest";
import { SolveError } from "../../src/errors.ts";
import { factorise } from "../../src/linalg/factorise.ts";
import {
  type LanczosOptions,
  lanczos,
  type RitzValues,
  type Verdict,
} from "../../src/linalg/lanczos.ts";
import { emptyBasis, extendBasis } from "../../src/linalg/m-basis.ts";
import { multiplyBlock } from "../../src/linalg/product.ts";
import { fixedSeedGenerator } from "../../src/linalg/random.ts";
import { shiftInvert } from "../../src/linalg/shift-invert.ts";
import { combine } from "../../src/linalg/sparse.ts";
import { analysePattern } from "../../src/linalg/symbolic.ts";
import { chain, chainEigenvalue, type Pencil, sideBySide } from "./chains.ts";

const sigma = -1e-4;

/** The first `count` eigenvalues, once their residuals are small. */
function lowest(
  { K, M }: Pencil,
  count: number,
  options: Partial<LanczosOptions> = {},
  deflated: readonly Float64Array[] = [],
) {
  const n = K.pattern.n;
  const operator = shiftInvert(factorise(analysePattern(K.pattern), combine(1, K, -sigma, M)), M);
  const basis = emptyBasis(n, deflated.length);
  deflated.forEach((v, c) => {
    basis.V.set(v, c * n);
  });
  extendBasis(basis, deflated.length, operator.multiplyMass);
  let looks = 0;
  const choose = ({ theta, residual, exhausted }: RitzValues): Verdict => {
    looks++;
    let settled = 0;
    while (settled < theta.length && residual[settled] <= 1e-12 * theta[settled]) settled++;
    return settled >= count || exhausted ? { take: count } : { lookAfter: 4 };
  };
  const found = lanczos(operator, basis, choose, {
    blockSize: 4,
    maxBasis: 100,
    maxCalls: 2000,
    firstLook: 8,
    random: fixedSeedGenerator(),
    ...options,
  });
  return { ...found, lambda: found.theta.map((t) => sigma + 1 / t), looks, operator };
}

describe("lanczos", () => {
  test("finds the lowest eigenvalues of a chain, with M-orthonormal vectors", () => {
    const n = 250;
    const found = lowest(chain(n, "fixed-free"), 9);
    for (let k = 0; k < 9; k++) {
      expect(found.lambda[k]).toBeCloseTo(chainEigenvalue(n, "fixed-free", k + 1), 12);
    }
    const MX = new Float64Array(9 * n);
    found.operator.multiplyMass(MX, found.vectors, 9);
    for (let i = 0; i < 9; i++) {
      for (let j = 0; j < 9; j++) {
        let product = 0;
        for (let q = 0; q < n; q++) product += found.vectors[i * n + q] * MX[j * n + q];
        expect(product).toBeCloseTo(i === j ? 1 : 0, 12);
      }
    }
  });

  test("gives the same with a basis so small that it has to restart many times", () => {
    const n = 250;
    const system = chain(n, "fixed-fixed");
    const roomy = lowest(system, 6);
    const cramped = lowest(system, 6, { maxBasis: 20 });
    expect(cramped.calls).toBeGreaterThan(roomy.calls);
    for (let k = 0; k < 6; k++) {
      expect(cramped.lambda[k]).toBeCloseTo(chainEigenvalue(n, "fixed-fixed", k + 1), 12);
    }
  });

  test("keeps away from what is deflated", () => {
    const n = 120;
    const found = lowest(chain(n, "free-free"), 5, {}, [new Float64Array(n).fill(3)]);
    for (let k = 0; k < 5; k++) {
      expect(found.lambda[k]).toBeCloseTo(chainEigenvalue(n, "free-free", k + 2), 12);
      let sum = 0;
      for (let i = 0; i < n; i++) sum += found.vectors[k * n + i];
      expect(Math.abs(sum)).toBeLessThan(1e-12);
    }
  });

  test("a start block within one of two separate systems finds nothing of the other", () => {
    const n = 60;
    const start = new Float64Array(4 * 2 * n);
    for (let c = 0; c < 4; c++) {
      for (let i = 0; i < n; i++) start[2 * n * c + i] = Math.sin(i * i * (c + 1) + i);
    }
    const both = sideBySide(chain(n, "fixed-free"), chain(n, "fixed-free"));
    const blind = lowest(both, 4, { start });
    const seeing = lowest(both, 4);
    for (let k = 0; k < 4; k++) {
      expect(blind.lambda[k]).toBeCloseTo(chainEigenvalue(n, "fixed-free", k + 1), 12);
      expect(seeing.lambda[k]).toBeCloseTo(chainEigenvalue(n, "fixed-free", 1 + (k >> 1)), 12);
    }
  });

  test("a start block of equal columns is filled up with fresh vectors", () => {
    const n = 80;
    const found = lowest(chain(n, "fixed-free"), 4, { start: new Float64Array(4 * n).fill(1) });
    for (let k = 0; k < 4; k++) {
      expect(found.lambda[k]).toBeCloseTo(chainEigenvalue(n, "fixed-free", k + 1), 12);
    }
  });

  test.each([1, 2, 3, 5, 9, 14])("exhausts a system of %i unknowns", (n) => {
    const found = lowest(chain(n, "fixed-free"), n, { firstLook: 1000 });
    expect(found.looks).toBe(1);
    expect(found.theta.length).toBe(n);
    for (let k = 0; k < n; k++) {
      expect(found.lambda[k]).toBeCloseTo(chainEigenvalue(n, "fixed-free", k + 1), 10);
    }
  });

  test("gives up with an error when the calls are spent", () => {
    expect(() => lowest(chain(300, "fixed-free"), 20, { maxCalls: 24 })).toThrow(SolveError);
    expect(() => lowest(chain(300, "fixed-free"), 20, { maxCalls: 24 })).toThrow(
      "stopped after 24 operator calls",
    );
  });
});

describe("extendBasis", () => {
  const { M } = chain(50, "fixed-free");
  const mass = (out: Float64Array, x: Float64Array, columns: number) =>
    multiplyBlock(out, M, x, columns);

  test("W = V C + Q B", () => {
    const random = fixedSeedGenerator(7);
    const basis = emptyBasis(50, 9);
    const W = Float64Array.from({ length: 50 * 9 }, random);
    basis.V.set(W);
    extendBasis(basis, 5, mass);
    basis.V.set(W.subarray(250), 250);
    const { C, B, added } = extendBasis(basis, 4, mass);
    expect(added).toBe(4);
    for (let c = 0; c < 4; c++) {
      for (let i = 0; i < 50; i++) {
        let sum = 0;
        for (let k = 0; k < 5; k++) sum += basis.V[k * 50 + i] * C[k * 4 + c];
        for (let k = 0; k < 4; k++) sum += basis.V[(5 + k) * 50 + i] * B[k * 4 + c];
        expect(sum).toBeCloseTo(W[(5 + c) * 50 + i], 13);
      }
    }
  });

  test("drops dependent and zero vectors, keeps nearly dependent ones orthonormal", () => {
    const basis = emptyBasis(50, 4);
    for (let i = 0; i < 50; i++) {
      basis.V[i] = Math.sin(i);
      basis.V[50 + i] = 2 * Math.sin(i);
      basis.V[150 + i] = Math.sin(i) + 1e-9 * Math.cos(3 * i);
    }
    expect(extendBasis(basis, 4, mass).added).toBe(2);
    expect(basis.count).toBe(2);
    let product = 0;
    for (let i = 0; i < 50; i++) product += basis.V[i] * basis.V[50 + i];
    expect(Math.abs(product)).toBeLessThan(1e-15);
  });
});

describe("fixedSeedGenerator", () => {
  test("repeats itself from the same seed and fills -1 .. 1 evenly", () => {
    const a = fixedSeedGenerator();
    const b = fixedSeedGenerator();
    const drawn = Array.from({ length: 4000 }, a);
    expect(Array.from({ length: 4000 }, b)).toEqual(drawn);
    expect(Math.max(...drawn.map(Math.abs))).toBeLessThanOrEqual(1);
    const quarters = [0, 0, 0, 0];
    for (const x of drawn) quarters[Math.floor((x + 1) * 2)]++;
    for (const q of quarters) expect(Math.abs(q - 1000)).toBeLessThan(120);
  });
});
