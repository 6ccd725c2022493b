import { describe, expect, test } from "vitest";
import {
  type BeamConstants,
  type BeamTheory,
  beamEnergy,
  beamMatrices,
  omittedShearEnergy,
  shearRatio,
} from "../../src/element/beam.ts";
import { GAUSS_4 } from "../../src/element/quadrature.ts";
import { asymmetry, eigenvalues, form, largest, rigidMotions, times } from "./dense.ts";

/** Every constant its own number, so that no two can be mistaken for each other. */
const SECTION: BeamConstants = {
  EA: 3e4,
  EIy: 17,
  EIz: 29,
  GJ: 11,
  kGAy: 7e3,
  kGAz: 5e3,
  rhoA: 0.31,
  rhoIy: 2.3e-4,
  rhoIz: 3.7e-4,
  rhoIp: 4.1e-4,
};
const L = 0.37;
const THEORIES: readonly BeamTheory[] = ["euler-bernoulli", "rayleigh", "timoshenko"];

const UZ1 = 2;
const RY1 = 4;
const UZ2 = 8;
const RY2 = 10;
const UY1 = 1;
const RZ1 = 5;
const UY2 = 7;
const RZ2 = 11;

/** The 4 x 4 block of the unknowns w1, dw/dx1, w2, dw/dx2 of a bending plane; slope of dw/dx. */
function plane(A: Float64Array, dofs: readonly number[], slope: number): number[][] {
  const sign = [1, slope, 1, slope];
  return dofs.map((i, r) => dofs.map((j, c) => sign[r] * sign[c] * A[12 * i + j]));
}
const flat = (A: Float64Array) => plane(A, [UZ1, RY1, UZ2, RY2], -1);
const edge = (A: Float64Array) => plane(A, [UY1, RZ1, UY2, RZ2], 1);

/** Relative to the largest entry: 16 products of four Gauss points. */
function expectMatrix(actual: readonly (readonly number[])[], expected: readonly number[][]) {
  const scale = largest(expected.flat());
  expected.forEach((row, i) => {
    row.forEach((v, j) => {
      expect(Math.abs(actual[i][j] - v) / scale, `entry ${i}, ${j}`).toBeLessThan(1e-14);
    });
  });
}

/** Textbook bending stiffness with shear; J. S. Przemieniecki, Theory of Matrix Structural Analysis (from memory). */
function bendingStiffness(EI: number, Phi: number): number[][] {
  const c = EI / ((1 + Phi) * L ** 3);
  const [a, b] = [(4 + Phi) * L * L, (2 - Phi) * L * L];
  return [
    [12, 6 * L, -12, 6 * L],
    [6 * L, a, -6 * L, b],
    [-12, -6 * L, 12, -6 * L],
    [6 * L, b, -6 * L, a],
  ].map((row) => row.map((v) => c * v));
}

/** rho A L/420 [156 ...] + rho I/(30 L) [36 ...]: consistent mass, and its rotary part; same source. */
function bendingMass(rhoA: number, rhoI: number): number[][] {
  const m = (rhoA * L) / 420;
  const r = rhoI / (30 * L);
  const l2 = L * L;
  const translation = [
    [156, 22 * L, 54, -13 * L],
    [22 * L, 4 * l2, 13 * L, -3 * l2],
    [54, 13 * L, 156, -22 * L],
    [-13 * L, -3 * l2, -22 * L, 4 * l2],
  ];
  const rotation = [
    [36, 3 * L, -36, 3 * L],
    [3 * L, 4 * l2, -3 * L, -l2],
    [-36, -3 * L, 36, -3 * L],
    [3 * L, -l2, -3 * L, 4 * l2],
  ];
  return translation.map((row, i) => row.map((v, j) => m * v + r * rotation[i][j]));
}

describe("against the textbook", () => {
  test("Euler-Bernoulli stiffness and consistent mass", () => {
    const { K, M } = beamMatrices(L, [SECTION], "euler-bernoulli");
    expectMatrix(flat(K), bendingStiffness(SECTION.EIy, 0));
    expectMatrix(edge(K), bendingStiffness(SECTION.EIz, 0));
    expectMatrix(flat(M), bendingMass(SECTION.rhoA, 0));
    expectMatrix(edge(M), bendingMass(SECTION.rhoA, 0));
    const pair = (A: Float64Array, d: number) => [
      [A[13 * d], A[12 * d + d + 6]],
      [A[12 * (d + 6) + d], A[13 * (d + 6)]],
    ];
    const spring = (k: number) => [
      [k, -k],
      [-k, k],
    ];
    const linear = (m: number) => [
      [m / 3, m / 6],
      [m / 6, m / 3],
    ];
    expectMatrix(pair(K, 0), spring(SECTION.EA / L));
    expectMatrix(pair(K, 3), spring(SECTION.GJ / L));
    expectMatrix(pair(M, 0), linear(SECTION.rhoA * L));
    expectMatrix(pair(M, 3), linear(SECTION.rhoIp * L));
  });

  test("Rayleigh adds the rotary inertia of each plane and leaves the stiffness", () => {
    const { K, M } = beamMatrices(L, [SECTION], "rayleigh");
    expectMatrix(flat(K), bendingStiffness(SECTION.EIy, 0));
    expectMatrix(flat(M), bendingMass(SECTION.rhoA, SECTION.rhoIy));
    expectMatrix(edge(M), bendingMass(SECTION.rhoA, SECTION.rhoIz));
  });

  test("Timoshenko stiffness with Phi = 12 EI/(k G A L^2) of each plane", () => {
    const { K } = beamMatrices(L, [SECTION], "timoshenko");
    expectMatrix(flat(K), bendingStiffness(SECTION.EIy, shearRatio(SECTION.EIy, SECTION.kGAz, L)));
    expectMatrix(edge(K), bendingStiffness(SECTION.EIz, shearRatio(SECTION.EIz, SECTION.kGAy, L)));
  });

  test("nothing couples the planes, stretching and twisting", () => {
    const groups = [
      [0, 6],
      [3, 9],
      [UZ1, RY1, UZ2, RY2],
      [UY1, RZ1, UY2, RZ2],
    ];
    for (const theory of THEORIES) {
      for (const A of Object.values(beamMatrices(L, [SECTION], theory))) {
        for (let i = 0; i < 12; i++) {
          for (let j = 0; j < 12; j++) {
            const together = groups.some((g) => g.includes(i) && g.includes(j));
            if (!together) expect(A[12 * i + j]).toBe(0);
          }
        }
      }
    }
  });

  test("a load along +z bends the free end up and turns it about -y", () => {
    const { K } = beamMatrices(L, [SECTION], "euler-bernoulli");
    // u = F L^3/(3 EI), dw/dx = F L^2/(2 EI) at the end of a cantilever
    const u = new Array(12).fill(0);
    u[UZ2] = L ** 3 / (3 * SECTION.EIy);
    u[RY2] = -(L ** 2) / (2 * SECTION.EIy);
    const f = times(K, u);
    expect(f[UZ2]).toBeCloseTo(1, 12);
    expect(Math.abs(f[RY2])).toBeLessThan(1e-12);
    expect(f[UZ1]).toBeCloseTo(-1, 12);
  });
});

describe.each(THEORIES)("%s element", (theory) => {
  const { K, M } = beamMatrices(L, [SECTION], theory);
  const R = rigidMotions([
    [0, 0, 0],
    [L, 0, 0],
  ]);

  test("symmetric, stiffness semi-definite with six zeros, mass definite", () => {
    expect(asymmetry(K, 12)).toBeLessThan(1e-15 * largest(K));
    expect(asymmetry(M, 12)).toBeLessThan(1e-15 * largest(M));
    const k = eigenvalues(K, 12);
    expect(k[0]).toBeGreaterThan(-1e-14 * k[11]);
    expect(k[5]).toBeLessThan(1e-14 * k[11]);
    expect(k[6]).toBeGreaterThan(1e-6 * k[11]);
    expect(eigenvalues(M, 12)[0]).toBeGreaterThan(0);
  });

  test("rigid-body motions carry no force", () => {
    for (const r of R) expect(largest(times(K, r))).toBeLessThan(1e-13 * largest(K));
  });

  test("R'MR: mass, first moment and inertia of a rod on the x axis", () => {
    const m = SECTION.rhoA * L;
    const bending = theory === "euler-bernoulli" ? 0 : 1;
    const expected = [
      [m, 0, 0, 0, 0, 0],
      [0, m, 0, 0, 0, (m * L) / 2],
      [0, 0, m, 0, (-m * L) / 2, 0],
      [0, 0, 0, SECTION.rhoIp * L, 0, 0],
      [0, 0, (-m * L) / 2, 0, (m * L * L) / 3 + bending * SECTION.rhoIy * L, 0],
      [0, (m * L) / 2, 0, 0, 0, (m * L * L) / 3 + bending * SECTION.rhoIz * L],
    ];
    expectMatrix(
      R.map((a) => R.map((b) => form(M, a, b))),
      expected,
    );
  });
});

describe("limits of Timoshenko's element", () => {
  test("without shear flexibility it is Rayleigh's, to the bit", () => {
    const rigid = { ...SECTION, kGAy: Number.POSITIVE_INFINITY, kGAz: Number.POSITIVE_INFINITY };
    const shear = beamMatrices(L, [rigid], "timoshenko");
    const none = beamMatrices(L, [SECTION], "rayleigh");
    expect(shear.K).toEqual(none.K);
    expect(shear.M).toEqual(none.M);
  });

  test("a very short element shears only: no locking", () => {
    const soft = { ...SECTION, kGAz: 1e-4 * SECTION.EIy };
    const { K } = beamMatrices(L, [soft], "timoshenko");
    // Both ends kept level: kGA/L, less the bending share 1/Phi.
    const Phi = shearRatio(soft.EIy, soft.kGAz, L);
    expect((K[13 * UZ1] * L) / soft.kGAz).toBeCloseTo(Phi / (1 + Phi), 12);
    expect(K[13 * UZ1] / (soft.kGAz / L)).toBeGreaterThan(0.999);
  });
});

describe("sections that vary along the element", () => {
  /** EA, rhoA, rhoIp linear; the others follow a strip whose width tapers to half. */
  const at = (s: number): BeamConstants => {
    const w = 1 - s / 2;
    return {
      ...SECTION,
      EA: SECTION.EA * w,
      EIy: SECTION.EIy * w,
      EIz: SECTION.EIz * w ** 3,
      rhoA: SECTION.rhoA * w,
      rhoIp: SECTION.rhoIp * w,
    };
  };
  const tapered = Array.from(GAUSS_4.x, at);

  test("four equal sections are one section", () => {
    const same = [SECTION, SECTION, SECTION, SECTION];
    for (const theory of THEORIES) {
      const [one, four] = [[SECTION], same].map((s) => beamMatrices(L, s, theory));
      for (let i = 0; i < 144; i++) {
        expect(Math.abs(four.K[i] - one.K[i])).toBeLessThan(1e-14 * largest(one.K));
        expect(Math.abs(four.M[i] - one.M[i])).toBeLessThan(1e-14 * largest(one.M));
      }
    }
  });

  test("mean stiffness, exact mass and moments of a linear taper", () => {
    const { K, M } = beamMatrices(L, tapered, "euler-bernoulli");
    expect((K[0] * L) / SECTION.EA).toBeCloseTo(3 / 4, 14); // mean of 1 - s/2
    const R = rigidMotions([
      [0, 0, 0],
      [L, 0, 0],
    ]);
    const m = SECTION.rhoA * L;
    expect(form(M, R[0])).toBeCloseTo((m * 3) / 4, 14);
    expect(form(M, R[1], R[5])).toBeCloseTo(m * L * (1 / 2 - 1 / 6), 14);
    expect(form(M, R[5])).toBeCloseTo(m * L * L * (1 / 3 - 1 / 8), 14);
    expect(form(M, R[3])).toBeCloseTo((SECTION.rhoIp * L * 3) / 4, 14);
  });

  test("a constant curvature stores the mean of E I", () => {
    const { K } = beamMatrices(L, tapered, "euler-bernoulli");
    const u = new Array(12).fill(0);
    [u[UZ2], u[RY2]] = [L * L, -2 * L]; // w = x^2, w'' = 2
    expect(form(K, u) / 2 / (2 * SECTION.EIy * L)).toBeCloseTo(3 / 4, 13);
    const v = new Array(12).fill(0);
    [v[UY2], v[RZ2]] = [L * L, 2 * L];
    // integral of (1 - s/2)^3 = (1 - 1/16)/2
    expect(form(K, v) / 2 / (2 * SECTION.EIz * L)).toBeCloseTo(15 / 32, 13);
  });
});

describe("energies", () => {
  const { K } = beamMatrices(L, [SECTION], "euler-bernoulli");
  const u = Float64Array.from({ length: 12 }, (_, i) => Math.sin(3.1 * i + 0.4));

  test("stretching, twisting and the two bendings add up to u'Ku/2", () => {
    for (const theory of THEORIES) {
      const { K } = beamMatrices(L, [SECTION], theory);
      const e = beamEnergy(K, u);
      expect((e.axial + e.torsion + e.flat + e.edge) / (form(K, u) / 2)).toBeCloseTo(1, 13);
      expect(Math.min(e.axial, e.torsion, e.flat, e.edge)).toBeGreaterThan(0);
    }
  });

  test("omitted shear energy of a tip load: F^2 L/(2 k G A)", () => {
    const tip = new Float64Array(12);
    tip[UZ2] = L ** 3 / (3 * SECTION.EIy);
    tip[RY2] = -(L ** 2) / (2 * SECTION.EIy);
    expect(omittedShearEnergy(K, L, SECTION, tip)).toBeCloseTo(L / (2 * SECTION.kGAz), 12);
    const side = new Float64Array(12);
    side[UY2] = L ** 3 / (3 * SECTION.EIz);
    side[RZ2] = L ** 2 / (2 * SECTION.EIz);
    expect(omittedShearEnergy(K, L, SECTION, side)).toBeCloseTo(L / (2 * SECTION.kGAy), 12);
  });

  test("rigid-body motions have no shear", () => {
    const R = rigidMotions([
      [0, 0, 0],
      [L, 0, 0],
    ]);
    for (const r of R) {
      const scale = omittedShearEnergy(K, L, SECTION, u);
      expect(omittedShearEnergy(K, L, SECTION, Float64Array.from(r)) / scale).toBeLessThan(1e-20);
    }
  });
});
