import fc from "fast-check";
import { Matrix, inverse as mlInverse } from "ml-matrix";
import { describe, expect, test } from "vitest";
import {
  engineeringConstants,
  laminateCompliance,
  laminateDensity,
  laminateStiffness,
  rotateLaminate,
  transverseShear,
} from "../../src/material/lamination.ts";
import { reducedStiffness, rotateStiffness } from "../../src/material/ply.ts";
import { angle, expectEqual, layer, mirrored, ply, scaleOf, stack, turn } from "./random-stacks.ts";

/** Same cases every run. */
const RUNS = { seed: 20, numRuns: 200 };

describe("classical lamination theory", () => {
  test("B = 0 for every symmetric stack", () => {
    fc.assert(
      fc.property(stack, (half) => {
        const { B } = laminateStiffness([...half, ...half.toReversed()]);
        expect(Array.from(B)).toEqual(new Array(9).fill(0));
      }),
      RUNS,
    );
  });

  test("A does not depend on the order of the plies, whatever it is", () => {
    const orders = fc.array(fc.nat(), { minLength: 8, maxLength: 8 });
    fc.assert(
      fc.property(stack, orders, (list, keys) => {
        const shuffled = list
          .map((one, i) => ({ one, key: keys[i] }))
          .sort((a, b) => a.key - b.key)
          .map(({ one }) => one);
        const s = laminateStiffness(list);
        expectEqual(laminateStiffness(shuffled).A, s.A, 1e-13 * scaleOf(s, "A"));
      }),
      RUNS,
    );
  });

  test("D of the reversed stack is the same, B turns its sign", () => {
    fc.assert(
      fc.property(stack, (list) => {
        const s = laminateStiffness(list);
        const r = laminateStiffness(list.toReversed());
        expectEqual(r.D, s.D, 1e-12 * s.D[0]);
        expectEqual(
          r.B.map((value) => -value),
          s.B,
          1e-12 * s.A[0] * s.thickness,
        );
      }),
      RUNS,
    );
  });

  test("A16 = A26 = 0 for balanced stacks", () => {
    fc.assert(
      fc.property(stack, (list) => {
        const { A } = laminateStiffness([...list, ...mirrored(list)]);
        expectEqual(Float64Array.of(A[2], A[5]), Float64Array.of(0, 0), 1e-13 * A[0]);
      }),
      RUNS,
    );
  });

  test("exchanging +theta and -theta turns the sign of the 16 and 26 terms only", () => {
    fc.assert(
      fc.property(stack, (list) => {
        const s = laminateStiffness(list);
        const m = laminateStiffness(mirrored(list));
        for (const name of ["A", "B", "D"] as const) {
          const flipped = s[name].map((value, i) => ([2, 5, 6, 7].includes(i) ? -value : value));
          expectEqual(m[name], flipped, 1e-13 * scaleOf(s, name));
        }
      }),
      RUNS,
    );
  });

  test("turning by 90 degrees swaps 1 and 2, and signs of 16 with 26", () => {
    fc.assert(
      fc.property(stack, (list) => {
        const s = laminateStiffness(list);
        const turned = laminateStiffness(turn(list, Math.PI / 2));
        for (const name of ["A", "B", "D"] as const) {
          const m = s[name];
          const swapped = Float64Array.of(m[4], m[1], -m[5], m[1], m[0], -m[2], -m[5], -m[2], m[8]);
          expectEqual(turned[name], swapped, 1e-13 * scaleOf(s, name));
        }
      }),
      RUNS,
    );
  });

  test("turning the plies and turning A, B, D is the same", () => {
    fc.assert(
      fc.property(stack, angle, (list, theta) => {
        const s = laminateStiffness(list);
        const whole = rotateLaminate(s, theta);
        const single = laminateStiffness(turn(list, theta));
        for (const name of ["A", "B", "D"] as const) {
          expectEqual(whole[name], single[name], 1e-12 * scaleOf(s, name));
        }
      }),
      RUNS,
    );
  });

  test("A and D are positive definite, and so is the whole 6 x 6 matrix", () => {
    fc.assert(
      fc.property(stack, (list) => {
        const s = laminateStiffness(list);
        for (const M of [s.A, s.D]) {
          expect(M[0]).toBeGreaterThan(0);
          expect(M[0] * M[4] - M[1] ** 2).toBeGreaterThan(0);
          expect(determinant(M)).toBeGreaterThan(0);
        }
        const { a, d } = laminateCompliance(s);
        expect(determinant(a)).toBeGreaterThan(0);
        expect(determinant(d)).toBeGreaterThan(0);
      }),
      RUNS,
    );
  });

  test("no modulus of a free strip exceeds that of the sheet kept from contracting: 1/a11 <= A11", () => {
    fc.assert(
      fc.property(stack, (list) => {
        const s = laminateStiffness(list);
        const { a, d } = laminateCompliance(s);
        for (const i of [0, 4, 8]) {
          expect(1 / a[i]).toBeLessThanOrEqual(s.A[i] * (1 + 1e-9));
          expect(1 / d[i]).toBeLessThanOrEqual(s.D[i] * (1 + 1e-9));
        }
      }),
      RUNS,
    );
  });

  test("turned by 180 degrees a laminate is the same", () => {
    fc.assert(
      fc.property(stack, (list) => {
        const s = laminateStiffness(list);
        const turned = laminateStiffness(turn(list, Math.PI));
        for (const name of ["A", "B", "D"] as const) {
          expectEqual(turned[name], s[name], 1e-12 * scaleOf(s, name));
        }
      }),
      RUNS,
    );
  });

  test("splitting every ply into thinner ones changes nothing", () => {
    fc.assert(
      fc.property(stack, fc.integer({ min: 2, max: 5 }), (list, n) => {
        const s = laminateStiffness(list);
        const split = laminateStiffness(
          list.flatMap((one) => new Array(n).fill({ ...one, thickness: one.thickness / n })),
        );
        for (const name of ["A", "B", "D"] as const) {
          expectEqual(split[name], s[name], 1e-12 * scaleOf(s, name));
        }
      }),
      RUNS,
    );
  });

  test("isotropic plies give A = h Q, B = 0, D = h^3 Q / 12 at every angle", () => {
    fc.assert(
      fc.property(stack, fc.double({ min: -0.4, max: 0.49, noNaN: true }), (list, nu) => {
        const E = 70e9;
        const same = { ...list[0].ply, E1: E, E2: E, nu12: nu, G12: E / (2 * (1 + nu)) };
        const s = laminateStiffness(list.map((one) => ({ ...one, ply: same })));
        const Q = reducedStiffness(same);
        const h = s.thickness;
        expectEqual(
          s.A,
          Q.map((value) => value * h),
          1e-13 * s.A[0],
        );
        expectEqual(s.B, new Float64Array(9), 1e-13 * s.A[0] * h);
        expectEqual(
          s.D,
          Q.map((value) => (value * h ** 3) / 12),
          1e-12 * s.D[0],
        );
      }),
      RUNS,
    );
  });

  test("the invariants of a ply stay the same at every angle", () => {
    fc.assert(
      fc.property(ply, angle, (one, theta) => {
        const Q = reducedStiffness(one);
        expectEqual(invariants(rotateStiffness(Q, theta)), invariants(Q), 1e-13 * Q[0]);
      }),
      RUNS,
    );
  });

  test("pi/n laminates have A made of the invariants U1, U4, U5", () => {
    fc.assert(
      fc.property(ply, angle, fc.integer({ min: 3, max: 7 }), (one, start, n) => {
        const list = Array.from({ length: n }, (_, i) => ({
          ply: one,
          angle: start + (i * Math.PI) / n,
          thickness: one.thickness,
        }));
        const { A, thickness } = laminateStiffness(list);
        const [U1, U4, U5] = invariants(reducedStiffness(one)).map((value) => value * thickness);
        expectEqual(A, Float64Array.of(U1, U4, 0, U4, U1, 0, 0, 0, U5), 1e-12 * U1);
      }),
      RUNS,
    );
  });

  test("the block inverse is the inverse of the 6 x 6 matrix (dense solver)", () => {
    fc.assert(
      fc.property(stack, (list) => {
        const s = laminateStiffness(list);
        const h = s.thickness;
        const scale = s.A[0];
        // Curvatures times h and moments over h make all six rows the same size.
        const whole = join(s.A, s.B, s.B, s.D, h, scale);
        const expected = mlInverse(whole);
        const { a, b, d } = laminateCompliance(s);
        const bT = Float64Array.of(b[0], b[3], b[6], b[1], b[4], b[7], b[2], b[5], b[8]);
        const found = join(a, b, bT, d, 1 / h, 1 / scale);
        const size = expected.max();
        expect(Matrix.sub(found, expected).abs().max()).toBeLessThan(1e-9 * size);
      }),
      RUNS,
    );
  });

  test("off-axis modulus of a single ply: 1/Ex = c^4/E1 + s^4/E2 + (1/G12 - 2 nu12/E1) c^2 s^2", () => {
    fc.assert(
      fc.property(ply, angle, (one, theta) => {
        const c2 = Math.cos(theta) ** 2;
        const s2 = Math.sin(theta) ** 2;
        const { E1, E2, G12, nu12 } = one;
        const inverseEx = c2 ** 2 / E1 + s2 ** 2 / E2 + (1 / G12 - (2 * nu12) / E1) * c2 * s2;
        const single = [{ ply: one, angle: theta, thickness: 1e-3 }];
        const c = engineeringConstants(laminateStiffness(single));
        expect(c.Ex * inverseEx).toBeCloseTo(1, 10);
        expect(c.Efx * inverseEx).toBeCloseTo(1, 10);
      }),
      RUNS,
    );
  });
});

describe("thickness averages", () => {
  test("transverse shear swaps at 90 degrees and keeps its sum", () => {
    fc.assert(
      fc.property(stack, angle, (list, theta) => {
        const at = transverseShear(list, theta);
        const across = transverseShear(list, theta + Math.PI / 2);
        expect(across.Gsz / at.Gnz).toBeCloseTo(1, 12);
        const zero = transverseShear(list);
        expect(at.Gsz / transverseShear(turn(list, -theta)).Gsz).toBeCloseTo(1, 12);
        expect((at.Gsz + at.Gnz) / (zero.Gsz + zero.Gnz)).toBeCloseTo(1, 12);
      }),
      RUNS,
    );
  });

  test("density is weighted by thickness", () => {
    const one = fc.sample(layer, { seed: 1, numRuns: 2 });
    const [light, heavy] = [900, 1800].map((density, i) => ({
      ...one[i],
      thickness: i === 0 ? 2e-3 : 1e-3,
      ply: { ...one[i].ply, density },
    }));
    expect(laminateDensity([light, heavy])).toBeCloseTo(1200, 10);
    expect(laminateDensity([light, light, light])).toBe(900);
  });
});

/** U1, U4, U5 of Tsai and Pagano: the parts of Q that no rotation changes. */
function invariants(Q: Float64Array): Float64Array {
  const [Q11, Q12, , , Q22, , , , Q66] = Q;
  return Float64Array.of(
    (3 * Q11 + 3 * Q22 + 2 * Q12 + 4 * Q66) / 8,
    (Q11 + Q22 + 6 * Q12 - 4 * Q66) / 8,
    (Q11 + Q22 - 2 * Q12 + 4 * Q66) / 8,
  );
}

function determinant(m: Float64Array): number {
  return (
    m[0] * (m[4] * m[8] - m[5] * m[7]) -
    m[1] * (m[3] * m[8] - m[5] * m[6]) +
    m[2] * (m[3] * m[7] - m[4] * m[6])
  );
}

function join(
  upperLeft: Float64Array,
  upperRight: Float64Array,
  lowerLeft: Float64Array,
  lowerRight: Float64Array,
  h: number,
  scale: number,
): Matrix {
  const blocks = [
    [upperLeft, upperRight],
    [lowerLeft, lowerRight],
  ];
  const out = new Matrix(6, 6);
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < 6; j++) {
      const value = blocks[i < 3 ? 0 : 1][j < 3 ? 0 : 1][3 * (i % 3) + (j % 3)];
      out.set(i, j, value / scale / h ** ((i < 3 ? 0 : 1) + (j < 3 ? 0 : 1)));
    }
  }
  return out;
}
