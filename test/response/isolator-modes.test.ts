import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boxInertia } from "../../src/element/rigid-mass.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { isolatorModes, mountFrequencies } from "../../src/response/mount-frequencies.ts";
import { mountStiffness, stackDynamics } from "../../src/response/mount-stiffness.ts";
import { BASE, modelOf } from "../model/frame.ts";

/** A stack on mounts over a rigid base, against closed forms and brute force. */

const HZ = 2 * Math.PI;
const MASS = 0.024;
const INERTIA = boxInertia(MASS, 0.042, 0.036, 0.018);

/** Four mounts at (+-a, +-b) turned by an angle, in the plane z = 0. */
function pattern(a: number, b: number, turned = 0): Vec3[] {
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  return [1, -1].flatMap((i) =>
    [1, -1].map((j): Vec3 => [c * i * a - s * j * b, s * i * a + c * j * b, 0]),
  );
}

function frequencies(mounts: Vec3[], height: number, axial: number, lateral: number) {
  const K = mountStiffness(mounts, [0, 0, height], axial, lateral);
  const modes = mountFrequencies(K, MASS, INERTIA);
  return Object.fromEntries(modes.map((m) => [m.motion, m.frequency]));
}

describe("four equal mounts, centre of gravity in their plane", () => {
  const [a, b, k, kl] = [0.015, 0.012, 8e3, 5e3];
  const found = frequencies(pattern(a, b), 0, k, kl);
  test.each([
    ["bounce", Math.sqrt((4 * k) / MASS)],
    ["sway fore-aft", Math.sqrt((4 * kl) / MASS)],
    ["sway sideways", Math.sqrt((4 * kl) / MASS)],
    ["twist", Math.sqrt((4 * kl * (a * a + b * b)) / INERTIA.zz)],
    ["roll rocking", Math.sqrt((4 * k * b * b) / INERTIA.xx)],
    ["pitch rocking", Math.sqrt((4 * k * a * a) / INERTIA.yy)],
  ])("%s", (motion, omega) => {
    expect((found[motion] * HZ) / omega).toBeCloseTo(1, 11);
  });
});

describe("centre of gravity above the mounts", () => {
  const [a, b, h, k, kl] = [0.015, 0.012, 0.0095, 8e3, 5e3];
  const found = frequencies(pattern(a, b), h, k, kl);

  /** Roots of (K - lambda m)(C + K h^2 - lambda I) = (K h)^2, in Hz: sway and rocking in one plane. */
  function coupled(K: number, C: number, I: number): [number, number] {
    const rock = C + K * h * h;
    const [p, q] = [MASS * I, MASS * rock + I * K];
    const root = Math.sqrt(q * q - 4 * p * K * C);
    return [Math.sqrt((q - root) / (2 * p)) / HZ, Math.sqrt((q + root) / (2 * p)) / HZ];
  }

  test("sway and rocking are the two roots of the plane's quadratic", () => {
    const alongX = coupled(4 * kl, 4 * k * a * a, INERTIA.yy);
    const alongY = coupled(4 * kl, 4 * k * b * b, INERTIA.xx);
    expect(found["sway fore-aft"] / alongX[0]).toBeCloseTo(1, 11);
    expect(found["pitch rocking"] / alongX[1]).toBeCloseTo(1, 11);
    expect(found["sway sideways"] / alongY[0]).toBeCloseTo(1, 11);
    expect(found["roll rocking"] / alongY[1]).toBeCloseTo(1, 11);
  });

  test("bounce and twist do not feel the height", () => {
    const flat = frequencies(pattern(a, b), 0, k, kl);
    for (const motion of ["bounce", "twist"]) expect(found[motion]).toBeCloseTo(flat[motion], 9);
  });

  test("standing or hanging is the same", () => {
    const hanging = frequencies(pattern(a, b), -h, k, kl);
    for (const motion of Object.keys(found)) expect(hanging[motion]).toBeCloseTo(found[motion], 9);
  });

  test("the dominant motion gives the name: on mounts close together rocking is the slow one", () => {
    const narrow = frequencies(pattern(0.004, 0.004), 0.004, k, kl);
    expect(narrow["pitch rocking"]).toBeLessThan(narrow["sway fore-aft"]);
    expect(found["sway fore-aft"]).toBeLessThan(found["pitch rocking"]);
  });
});

test("a square pattern may be turned: bounce, twist and all frequencies stay, in order", () => {
  const modes = (turned: number) => {
    const K = mountStiffness(pattern(0.01, 0.01, turned), [0, 0, 0.008], 6e3, 3e3);
    return mountFrequencies(K, MASS, boxInertia(MASS, 0.03, 0.03, 0.01));
  };
  const straight = modes(0);
  for (const angle of [0.3, Math.PI / 4, 1.2]) {
    modes(angle).forEach((mode, i) => {
      expect(mode.motion).toBe(straight[i].motion);
      expect(mode.frequency / straight[i].frequency).toBeCloseTo(1, 11);
      expect(Math.max(...mode.shares)).toBeCloseTo(Math.max(...straight[i].shares), 9);
    });
  }
  // coinciding pairs are told apart: no mode moves along x and y at once
  for (const { shares } of straight) expect(shares[0] * shares[1]).toBeLessThan(1e-12);
});

/**
 * Total stiffness (kN/m) for a wanted bounce, by stack mass (g) and frequency (Hz), as it is quoted in
 * the trade to two digits. Derived from f = sqrt(k/m)/(2 pi) by others: it checks units and mounts.
 */
const TABLE: readonly (readonly [grams: number, ...kN: number[]])[] = [
  [10, 1.0, 2.5, 3.9, 8.9, 16, 36],
  [15, 1.5, 3.8, 5.9, 13, 24, 53],
  [24, 2.4, 6.1, 9.5, 21, 38, 85],
  [30, 3.0, 7.6, 12, 27, 47, 107],
];
test.each(TABLE)("bounce of %d g by the trade's table", (grams, ...total) => {
  const inertia = boxInertia(grams / 1e3, 0.036, 0.036, 0.015);
  [50, 80, 100, 150, 200, 300].forEach((f, i) => {
    const K = mountStiffness(pattern(0.015, 0.015), [0, 0, 0.008], (total[i] * 1e3) / 4, 2e3);
    const bounce = mountFrequencies(K, grams / 1e3, inertia).find((m) => m.motion === "bounce");
    // two digits of k are up to 5 % of it, and half as much of f
    expect(Math.abs((bounce?.frequency ?? 0) / f - 1)).toBeLessThan(0.025);
  });
});

describe("any mounts", () => {
  // whole numbers scaled: doubles would mostly be tiny
  const length = fc.integer({ min: -3000, max: 3000 }).map((v) => v * 1e-5);
  const place = fc.tuple(length, length, length);
  const mounts = fc.array(place, { minLength: 3, maxLength: 6 });
  const stiffness = fc.integer({ min: 200, max: 200_000 });

  test("K stores what the stretched mounts store", () => {
    const motion = fc.array(length, { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(mounts, place, stiffness, stiffness, motion, (at, cg, k, kl, q) => {
        const K = mountStiffness(at, cg, k, kl);
        let energy = 0;
        for (const mount of at) {
          const [x, y, z] = mount.map((v, i) => v - cg[i]);
          const [ux, uy, uz, rx, ry, rz] = q;
          energy += (kl * (ux + ry * z - rz * y) ** 2) / 2;
          energy += (kl * (uy + rz * x - rx * z) ** 2) / 2;
          energy += (k * (uz + rx * y - ry * x) ** 2) / 2;
        }
        const stored = q.reduce(
          (sum, p, i) => sum + q.reduce((s, v, j) => s + (p * K[6 * i + j] * v) / 2, 0),
          0,
        );
        expect(stored).toBeCloseTo(energy, 9);
      }),
      { seed: 23, numRuns: 100 },
    );
  });

  /** Number of frequencies below f: negative pivots of K - (2 pi f)^2 M, by elimination (Sylvester). */
  function countBelow(K: Float64Array, M: readonly number[], f: number): number {
    const lambda = (HZ * f) ** 2;
    const A = Array.from({ length: 6 }, (_, i) =>
      Array.from(
        { length: 6 },
        (_, j) => K[6 * i + j] / Math.sqrt(M[i] * M[j]) - (i === j ? lambda : 0),
      ),
    );
    let below = 0;
    for (let p = 0; p < 6; p++) {
      if (A[p][p] < 0) below++;
      for (let i = p + 1; i < 6; i++) {
        const factor = A[i][p] / A[p][p];
        for (let j = p; j < 6; j++) A[i][j] -= factor * A[p][j];
      }
    }
    return below;
  }

  test("six modes at the frequencies where the count of pivots steps, each with a name of its own", () => {
    const M = [MASS, MASS, MASS, INERTIA.xx, INERTIA.yy, INERTIA.zz];
    fc.assert(
      fc.property(mounts, place, stiffness, stiffness, (at, cg, k, kl) => {
        const K = mountStiffness(at, cg, k, kl);
        const modes = mountFrequencies(K, MASS, INERTIA);
        expect(new Set(modes.map((m) => m.motion)).size).toBe(6);
        for (const { frequency: f, shares } of modes) {
          expect(shares.reduce((sum, v) => sum + v, 0)).toBeCloseTo(1, 9);
          // what is soft because mounts lie in a line or in one place drowns in the rounding of the rest
          if (f < 1e-3 * modes[5].frequency) continue;
          const band = 1e-6 * f;
          expect(countBelow(K, M, f + band) - countBelow(K, M, f - band)).toBeGreaterThan(0);
        }
        expect(countBelow(K, M, modes[5].frequency * 1.001)).toBe(6);
      }),
      { seed: 29, numRuns: 100 },
    );
  });
});

describe("the stack of a candidate", () => {
  const place = (isolators: unknown, side = "above") =>
    modelOf({
      ...BASE,
      stack: {
        mass: 24,
        size: [42, 36, 18],
        plate: "base",
        at: [0, 0],
        height: 9.5,
        holes: { spacing: [20, 16] },
      },
      candidates: { here: { plate: "base", at: [4, -2], side, isolators } },
    }).candidates[0];

  test("screwed down it has mass and no mounts", () => {
    const { M, K, lossFactor } = stackDynamics(place("none"));
    const { xx, yy, zz } = INERTIA;
    [MASS, MASS, MASS, xx, yy, zz].forEach((m, i) => {
      expect(M[i] / m).toBeCloseTo(1, 12);
    });
    expect([K, lossFactor]).toEqual([undefined, 0]);
    expect(isolatorModes(place("none"))).toBeUndefined();
  });

  test.each(["above", "below"])("%s the plate it rides on a mount at each hole", (side) => {
    const candidate = place({ axial: "8 kN/m", lateral: "5 kN/m", lossFactor: 0.3 }, side);
    const { K, lossFactor } = stackDynamics(candidate);
    expect(lossFactor).toBe(0.3);
    // 9.5 mm from the face to the centre of gravity, the face 1 mm from the middle of the plate
    const h = side === "above" ? 0.0095 : -0.0095;
    const expected = mountStiffness(pattern(0.01, 0.008), [0, 0, h], 8e3, 5e3);
    expected.forEach((v, i) => {
      expect(K?.[i]).toBeCloseTo(v, 8);
    });
    const found = Object.fromEntries(
      (isolatorModes(candidate) ?? []).map((m) => [m.motion, m.frequency]),
    );
    const closed = frequencies(pattern(0.01, 0.008), 0.0095, 8e3, 5e3);
    for (const [motion, f] of Object.entries(closed)) expect(found[motion]).toBeCloseTo(f, 8);
  });
});
