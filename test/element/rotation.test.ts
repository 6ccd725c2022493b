import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { beamMatrices } from "../../src/element/beam.ts";
import { IDENTITY, memberAxes, toGlobal, toLocal } from "../../src/element/rotation.ts";
import { asymmetry, form, largest, rigidMotions, times } from "./dense.ts";

const number = fc.double({ min: -1, max: 1, noNaN: true });
const vector = fc.tuple(number, number, number);
/** A member and an "up" that is not along it. */
const directions = fc
  .tuple(vector, vector)
  .filter(([d, up]) => Math.hypot(...d) > 0.1 && Math.hypot(...up) > 0.1)
  .filter(([d, up]) => {
    const dot = d[0] * up[0] + d[1] * up[1] + d[2] * up[2];
    return Math.abs(dot) < 0.99 * Math.hypot(...d) * Math.hypot(...up);
  });
const runs = { seed: 3, numRuns: 100 };

const SECTION = {
  EA: 300,
  EIy: 17,
  EIz: 29,
  GJ: 11,
  kGAy: 70,
  kGAz: 50,
  rhoA: 0.31,
  rhoIy: 0.02,
  rhoIz: 0.03,
  rhoIp: 0.04,
};

describe("axes of a member", () => {
  test("orthonormal and right-handed, x along the member, z towards up", () => {
    fc.assert(
      fc.property(directions, ([d, up]) => {
        const R = memberAxes(d, up);
        const [x, y, z] = [0, 3, 6].map((i) => Array.from(R.slice(i, i + 3)));
        const dot = (a: readonly number[], b: readonly number[]) =>
          a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        for (const a of [x, y, z]) expect(dot(a, a)).toBeCloseTo(1, 13);
        for (const [a, b] of [
          [x, y],
          [y, z],
          [z, x],
        ]) {
          expect(dot(a, b)).toBeCloseTo(0, 13);
        }
        const det =
          x[0] * (y[1] * z[2] - y[2] * z[1]) +
          x[1] * (y[2] * z[0] - y[0] * z[2]) +
          x[2] * (y[0] * z[1] - y[1] * z[0]);
        expect(det).toBeCloseTo(1, 13);
        expect(dot(x, d)).toBeCloseTo(Math.hypot(...d), 13);
        expect(dot(z, up)).toBeGreaterThan(0);
      }),
      runs,
    );
  });

  test("an arm forward has global axes; one to the left turns x into y", () => {
    expect(Array.from(memberAxes([2, 0, 0], [0, 0, 1]))).toEqual(Array.from(IDENTITY));
    const left = Array.from(
      memberAxes([0, 3, 0], [0, 0, 1]),
      (v) => Math.round(v * 1e12) / 1e12 + 0,
    );
    expect(left).toEqual([0, 1, 0, -1, 0, 0, 0, 0, 1]);
  });

  test("no length, or an up along the member, is refused", () => {
    expect(() => memberAxes([0, 0, 0], [0, 0, 1])).toThrow(RangeError);
    expect(() => memberAxes([0, 0, 2], [0, 0, -5])).toThrow(RangeError);
  });
});

describe("turning element matrices", () => {
  const L = 0.8;
  const { K } = beamMatrices(L, [SECTION], "timoshenko");

  test("energy is the same in local and in global unknowns", () => {
    const motion = fc.array(number, { minLength: 12, maxLength: 12 });
    fc.assert(
      fc.property(directions, motion, ([d, up], u) => {
        const R = memberAxes(d, up);
        const global = toGlobal(K, 12, R);
        expect(form(global, u)).toBeCloseTo(form(K, toLocal(u, R)), 9);
        expect(asymmetry(global, 12)).toBeLessThan(1e-13 * largest(K));
      }),
      runs,
    );
  });

  test("rigid-body motions of a member anywhere in space carry no force", () => {
    fc.assert(
      fc.property(directions, vector, ([d, up], from) => {
        const length = Math.hypot(...d);
        const global = toGlobal(K, 12, memberAxes(d, up));
        const to = from.map((v, i) => v + (L * d[i]) / length);
        for (const r of rigidMotions([from, to])) {
          expect(largest(times(global, r))).toBeLessThan(1e-13 * largest(K));
        }
      }),
      runs,
    );
  });
});
