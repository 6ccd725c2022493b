import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boxInertia, type Inertia, rigidMass, shiftInertia } from "../../src/element/rigid-mass.ts";
import { asymmetry, eigenvalues, form } from "./dense.ts";

const number = fc.double({ min: -2, max: 2, noNaN: true });
const vector = fc.tuple(number, number, number);
const runs = { seed: 9, numRuns: 100 };

const INERTIA: Inertia = { xx: 0.9, yy: 1.1, zz: 1.3, xy: 0.1, xz: -0.2, yz: 0.15 };
const KEYS = ["xx", "yy", "zz", "xy", "xz", "yz"] as const;

const cross = (a: readonly number[], b: readonly number[]) => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: readonly number[], b: readonly number[]) => a.reduce((s, v, i) => s + v * b[i], 0);
const tensor = (I: Inertia) => [I.xx, I.xy, I.xz, I.xy, I.yy, I.yz, I.xz, I.yz, I.zz];

/** Inertia about the origin of point masses: the definition, entries of the tensor. */
function ofPoints(points: readonly { m: number; r: readonly number[] }[]): Inertia {
  const sum = (f: (x: number, y: number, z: number) => number) =>
    points.reduce((s, { m, r }) => s + m * f(r[0], r[1], r[2]), 0);
  return {
    xx: sum((_, y, z) => y * y + z * z),
    yy: sum((x, _, z) => x * x + z * z),
    zz: sum((x, y) => x * x + y * y),
    xy: -sum((x, y) => x * y),
    xz: -sum((x, _, z) => x * z),
    yz: -sum((_, y, z) => y * z),
  };
}

describe("mass of a rigid body", () => {
  test("kinetic energy m v_cg^2/2 + w'I w/2 for any motion, the centre of gravity off the node", () => {
    fc.assert(
      fc.property(vector, vector, vector, (v, w, r) => {
        const m = 0.7;
        const M = rigidMass(m, INERTIA, r);
        const atCg = cross(w, r).map((c, i) => v[i] + c);
        const energy = m * dot(atCg, atCg) + form(tensor(INERTIA), w);
        expect(form(M, [...v, ...w])).toBeCloseTo(energy, 11);
      }),
      runs,
    );
  });

  test("symmetric and positive definite", () => {
    const M = rigidMass(0.7, INERTIA, [0.3, -1.2, 0.8]);
    expect(asymmetry(M, 6)).toBe(0);
    expect(eigenvalues(M, 6)[0]).toBeGreaterThan(0);
  });
});

describe("inertia", () => {
  test("parallel axes against point masses, and back again", () => {
    const points = [
      { m: 0.4, r: [0.3, 0.1, -0.2] },
      { m: 0.7, r: [-0.5, 0.6, 0.2] },
      { m: 0.2, r: [0.9, -0.3, 0.5] },
    ];
    const m = 1.3;
    const cg = [0, 1, 2].map((i) => points.reduce((s, p) => s + (p.m * p.r[i]) / m, 0));
    const own = ofPoints(points.map((p) => ({ m: p.m, r: p.r.map((v, i) => v - cg[i]) })));
    const shifted = shiftInertia(own, m, cg);
    const back = shiftInertia(shifted, -m, cg);
    for (const k of KEYS) {
      expect(shifted[k]).toBeCloseTo(ofPoints(points)[k], 14);
      expect(back[k]).toBeCloseTo(own[k], 14);
    }
  });

  test("a box cut into eight has the inertia of the whole", () => {
    const [m, size] = [2.4, [0.3, 0.5, 0.7] as const];
    const whole = boxInertia(m, ...size);
    const signs = [-1, 1];
    const parts = signs.flatMap((i) =>
      signs.flatMap((j) =>
        signs.map((k) => {
          const part = boxInertia(m / 8, size[0] / 2, size[1] / 2, size[2] / 2);
          const r = [i, j, k].map((s, d) => (s * size[d]) / 4);
          return shiftInertia(part, m / 8, r);
        }),
      ),
    );
    for (const key of KEYS) {
      expect(parts.reduce((s, p) => s + p[key], 0)).toBeCloseTo(whole[key], 14);
    }
  });
});
