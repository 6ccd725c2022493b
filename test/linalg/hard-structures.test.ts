/** Structures at the edge of what double precision holds: right as far as the evidence says, no further. */

import { describe, expect, test } from "vitest";
import { SolveError } from "../../src/errors.ts";
import { denseModes } from "../../src/linalg/dense-modes.ts";
import { lowestModes, type ModeSet } from "../../src/linalg/modes.ts";
import { compressTriplets } from "../../src/linalg/sparse.ts";
import { type BeamModel, beamModel, plateStack, type Section, strip } from "./beam-grid.ts";
import { held, type Pencil, springSystem } from "./chains.ts";
import { expectModes } from "./expect-modes.ts";

type Point = readonly [number, number, number];

const softer = (s: Section, by: number): Section => ({ ...s, E: s.E * by, G: s.G * by });

/** A beam from each point named to the other. */
function beams(points: readonly Point[], list: readonly (readonly [number, number, Section])[]) {
  return beamModel(
    points,
    list.map(([a, b, section]) => ({
      ends: [
        { nodes: [a], at: points[a] },
        { nodes: [b], at: points[b] },
      ],
      section,
    })),
  );
}

/** Off by at most what the evidence says, of which `share` of the eigenvalue is asked for. */
function expectWithin({ lambda, evidence }: ModeSet, exact: ArrayLike<number>, share = 0): void {
  for (let k = 0; k < exact.length; k++) {
    expect(Math.abs(lambda[k] - exact[k]), `eigenvalue ${k + 1}`).toBeLessThan(
      evidence.uncertainty[k] + share * exact[k],
    );
  }
}

describe("two plates joined by a beam that is softer by", () => {
  const SIDE = 5;
  const points: Point[] = [0, 1].flatMap((p) =>
    Array.from(
      { length: SIDE * SIDE },
      (_, q): Point => [0.15 * p + 0.025 * Math.floor(q / SIDE), 0.025 * (q % SIDE), 0.01 * p],
    ),
  );
  const plates = [0, SIDE * SIDE].flatMap((first) =>
    Array.from({ length: SIDE * SIDE }, (_, q) => {
      const sheet = strip(0.025, 0.002);
      const right = q % SIDE < SIDE - 1 ? [[first + q, first + q + 1, sheet] as const] : [];
      const ahead = q + SIDE < SIDE * SIDE ? [[first + q, first + q + SIDE, sheet] as const] : [];
      return [...right, ...ahead];
    }).flat(),
  );
  const link = (by: number) =>
    [SIDE * SIDE - 3, SIDE * SIDE + 2, { ...softer(strip(0.01, 0.002), by), rho: 0 }] as const;

  /** Both plates rigid, each with six motions of its own: 12 unknowns, the beam the only stiffness. */
  function asRigidBodies(by: number): Float64Array {
    const { K } = beams(points, [link(by)]);
    const { M, n, rigid } = beams(points, plates);
    const R = [0, 1].flatMap((p) =>
      rigid.map((r) => r.map((x, i) => (Math.floor(i / (n / 2)) === p ? x : 0))),
    );
    const rows = Int32Array.from({ length: 144 }, (_, q) => Math.floor(q / 12));
    const cols = rows.map((_, q) => q % 12);
    const lower = rows.map((_, q) => q).filter((q) => rows[q] >= cols[q]);
    const product = (A: BeamModel["K"]) =>
      Float64Array.from(lower, (q) => bilinear(R[rows[q]], A, R[cols[q]]));
    const { pattern, values } = compressTriplets(
      12,
      lower.length,
      rows.filter((i, q) => i >= cols[q]),
      cols.filter((j, q) => rows[q] >= j),
      [product(K), product(M)],
    );
    const small = { K: { pattern, values: values[0] }, M: { pattern, values: values[1] } };
    return denseModes(small.K, small.M, 12).lambda.subarray(6);
  }

  const found = (by: number) => {
    const { K, M, rigid } = beams(points, [...plates, link(by)]);
    return { K, M, rigid, modes: lowestModes(K, M, { count: 9, deflate: rigid }) };
  };

  test.each([1e-5, 1e-7, 1e-9, 1e-11, 1e-13])("%f: six soft modes, as far as can be told", (by) => {
    const { modes } = found(by);
    expect(modes.evidence.countedBelow).toBe(modes.evidence.expectedBelow);
    // The plates are not quite rigid: that lowers the modes by their share of the give, at most 10 by.
    expectWithin(modes, asRigidBodies(by), 10 * by);
    expect(modes.evidence.maxResidual).toBeLessThan(1e-3);
  });

  test("with the share of rounding told: a few digits at a billionth, none at 1e-13", () => {
    const digits = (by: number) => {
      const { lambda, evidence } = found(by).modes;
      return Math.max(
        ...[0, 1, 2, 3, 4, 5].map((k) => evidence.uncertainty[k] / Math.abs(lambda[k])),
      );
    };
    expect(digits(1e-5)).toBeLessThan(1e-5);
    expect(digits(1e-9)).toBeLessThan(0.1);
    expect(digits(1e-13)).toBeGreaterThan(1);
  });

  test("and the modes above are those of the plates by themselves, in pairs", () => {
    const { lambda } = found(1e-9).modes;
    const alone = beams(points.slice(0, SIDE * SIDE), plates.slice(0, plates.length / 2));
    const single = lowestModes(alone.K, alone.M, { count: 2, deflate: alone.rigid });
    expect(lambda[6] / single.lambda[0]).toBeCloseTo(1, 8);
    expect(lambda[7] / single.lambda[0]).toBeCloseTo(1, 8);
    expect(lambda[8] / single.lambda[1]).toBeCloseTo(1, 8);
  });
});

describe("beams in a row whose stiffness spans", () => {
  test.each([1e3, 1e6, 1e9])(
    "%f: as dense algebra has them, within what the evidence says",
    (span) => {
      const count = 14;
      const points = Array.from(
        { length: count + 1 },
        (_, i): Point => [0.02 * i, 0.005 * (i % 3), 0.004 * (i % 2)],
      );
      const list = Array.from({ length: count }, (_, i) => {
        const by = span ** (-((5 * i) % count) / (count - 1));
        return [i, i + 1, softer(strip(0.01, 0.003), by)] as const;
      });
      const { K, M, rigid } = beams(points, list);
      const modes = lowestModes(K, M, { count: 12, deflate: rigid });
      expectModes(K, M, modes, rigid, 1e-14 * span + 1e-10);
      const dense = denseModes(K, M, 18, -modes.lambda[0]);
      expectWithin(modes, dense.lambda.subarray(6));
      const { uncertainty } = modes.evidence;
      uncertainty.forEach((u, k) => {
        expect(u / modes.lambda[k]).toBeLessThan(1e-13 * span + 1e-10);
      });
    },
  );
});

describe("a mass matrix without mass in some motions", () => {
  test("masses at the nodes only: as many modes as there are, more asked for", () => {
    const {
      K,
      M: consistent,
      n,
      rigid,
    } = plateStack({
      nx: 4,
      ny: 4,
      length: 0.2,
      width: 0.15,
      thickness: 0.003,
    });
    const M = { pattern: consistent.pattern, values: new Float64Array(consistent.values.length) };
    for (let i = 0; i < n; i++) if (i % 6 < 3) M.values[M.pattern.colPtr[i]] = 0.01;
    const modes = lowestModes(K, M, { count: 80, deflate: rigid });
    expect(modes.lambda.length).toBe(3 * 16 - 6);
    expectModes(K, M, modes, rigid);
    expectWithin(modes, denseModes(K, M, 48, -modes.lambda[0]).lambda.subarray(6), 1e-10);
    const few = lowestModes(K, M, { count: 5, deflate: rigid });
    for (let k = 0; k < 5; k++) expect(few.lambda[k] / modes.lambda[k]).toBeCloseTo(1, 10);
  });

  test("one mass at the tip of a beam without any: three modes in closed form", () => {
    const [L, m, parts] = [0.3, 0.25, 8];
    const section = { ...strip(0.02, 0.004), rho: 0 };
    const points = Array.from({ length: parts + 1 }, (_, i): Point => [(L * i) / parts, 0, 0]);
    const free = beams(
      points,
      Array.from({ length: parts }, (_, i) => [i, i + 1, section] as const),
    );
    const { K, M } = held(free, [0, 1, 2, 3, 4, 5]);
    for (let d = 0; d < 3; d++) M.values[M.pattern.colPtr[6 * (parts - 1) + d]] = m;
    const modes = lowestModes(K, M, { count: 10 });
    const { E, A, Iy, Iz } = section;
    const exact = [(3 * E * Iy) / (m * L ** 3), (3 * E * Iz) / (m * L ** 3), (E * A) / (m * L)];
    expect(modes.lambda.length).toBe(3);
    expectModes(K, M, modes);
    exact.forEach((l, k) => {
      expect(modes.lambda[k] / l).toBeCloseTo(1, 10);
    });
  });

  test("mass in the rigid-body motions only: nothing vibrates", () => {
    const { K, M } = springSystem(
      [1, 0, 0],
      [
        [1, 0, 5],
        [2, 1, 5],
      ],
    );
    const rigid = [new Float64Array(3).fill(1)];
    expect(() => lowestModes(K, M, { count: 2, deflate: rigid })).toThrow(
      new SolveError("no motion but those of the rigid body has mass: nothing can vibrate"),
    );
  });

  test("no stiffness against a turn that has no mass: refused", () => {
    const { K, M, rigid } = pinned();
    expect(() => lowestModes(K, M, { count: 1, deflate: rigid })).toThrow(
      "is not positive definite",
    );
  });

  /** Two masses on a line, joined along it: their other motions have neither stiffness nor mass. */
  function pinned(): Pencil & { rigid: Float64Array[] } {
    const section = { ...strip(0.01, 0.002), rho: 0, G: 0, Iy: 0, Iz: 0 };
    const { K, M, n } = beams(
      [
        [0, 0, 0],
        [0.1, 0, 0],
      ],
      [[0, 1, section]],
    );
    M.values[M.pattern.colPtr[0]] = M.values[M.pattern.colPtr[6]] = 1;
    return { K, M, rigid: [Float64Array.from({ length: n }, (_, i) => (i % 6 === 0 ? 1 : 0))] };
  }
});

test("one free beam element: 720, 8400 and 12, in closed form", () => {
  const L = 0.2;
  const section = strip(0.02, 0.004);
  const { K, M, rigid } = beams(
    [
      [0, 0, 0],
      [L, 0, 0],
    ],
    [[0, 1, section]],
  );
  const modes = lowestModes(K, M, { count: 6, deflate: rigid });
  expectModes(K, M, modes, rigid);
  const { E, G, A, Iy, Iz, J, rho } = section;
  // Of the consistent matrices (roots of the 4 x 4 and 2 x 2 determinants by hand).
  const bending = (I: number) => [720, 8400].map((c) => (c * E * I) / (rho * A * L ** 4));
  const axial = (12 * E) / (rho * L ** 2);
  const torsion = (12 * G * J) / (rho * (Iy + Iz) * L ** 2);
  const exact = [...bending(Iy), ...bending(Iz), axial, torsion].sort((a, b) => a - b);
  exact.forEach((l, k) => {
    expect(modes.lambda[k] / l).toBeCloseTo(1, 12);
  });
});

test("one unknown: known to rounding", () => {
  for (const k of [1, 3e-100, 7e100]) {
    const { K, M } = springSystem([1], [[0, -1, k]]);
    const { lambda, evidence } = lowestModes(K, M, { count: 1 });
    expect(Math.abs(lambda[0] / k - 1)).toBeLessThan(1e-15);
    expect(evidence.uncertainty[0] / k).toBeLessThan(1e-15);
    expect(evidence.uncertainty[0]).toBeGreaterThan(0);
  }
});

/** a' A b */
function bilinear(a: Float64Array, { pattern, values }: BeamModel["K"], b: Float64Array): number {
  const { n, colPtr, rowIdx } = pattern;
  let sum = 0;
  for (let j = 0; j < n; j++) {
    sum += a[j] * values[colPtr[j]] * b[j];
    for (let p = colPtr[j] + 1; p < colPtr[j + 1]; p++) {
      sum += values[p] * (a[rowIdx[p]] * b[j] + a[j] * b[rowIdx[p]]);
    }
  }
  return sum;
}
