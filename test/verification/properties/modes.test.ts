/** What all modes of a random frame satisfy together: orthogonality, effective masses, Rayleigh. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Analysis } from "../../../src/analyse.ts";
import { expand, restrict } from "../../../src/matrices/reduction.ts";
import { rigidMotions } from "../../../src/matrices/rigid.ts";
import { form } from "../../element/dense.ts";
import { solveFrame } from "../frequencies.ts";
import { memberFrame } from "./member-frames.ts";
import { forAll, whole } from "./runs.ts";
import { ALL, dot, eigenvaluesOf, ROUNDING, shapesOf, times } from "./spectra.ts";

const solveAll = (frame: object) => solveFrame(frame, { modes: ALL });

/** A vector of n numbers of either sign, told by a seed: sines of uneven arguments. */
function wave(n: number, seed: number): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => Math.sin((i + 1) * (i + seed) * 1.3));
}

describe("all modes of a frame", () => {
  test("are as many as its unknowns, with Phi'M Phi = I and Phi'K Phi = diag(lambda)", () => {
    forAll(memberFrame(), 25, (frame) => {
      const analysis = solveAll(frame);
      const { K, M, reduction } = analysis.system;
      const shapes = shapesOf(analysis);
      const lambda = eigenvaluesOf(analysis);
      expect(shapes.length).toBe(reduction.n);
      const floor = analysis.modes.lambda[0];
      shapes.forEach((phi, i) => {
        const [Kphi, Mphi] = [times(K, phi), times(M, phi)];
        shapes.forEach((other, j) => {
          expect(Math.abs(dot(other, Mphi) - +(i === j))).toBeLessThan(1e-11);
          const scale = Math.max(lambda[i], lambda[j], floor);
          const expected = i === j ? lambda[i] : 0;
          expect(Math.abs(dot(other, Kphi) - expected) / scale).toBeLessThan(ROUNDING);
        });
      });
    });
  });

  test("make up any motion: x = sum of phi (phi'M x)", () => {
    forAll(fc.tuple(memberFrame(), whole(1, 99)), 20, ([frame, seed]) => {
      const analysis = solveAll(frame);
      const { M, reduction } = analysis.system;
      const x = wave(reduction.n, seed);
      const Mx = times(M, x);
      const sum = new Float64Array(x.length);
      for (const phi of shapesOf(analysis)) {
        const share = dot(phi, Mx);
        phi.forEach((v, i) => {
          sum[i] += share * v;
        });
      }
      const gap = x.map((v, i) => v - sum[i]);
      expect(dot(gap, times(M, gap)) / dot(x, Mx)).toBeLessThan(1e-20);
    });
  });
});

/** u'Mu of a motion of the mesh, summed element by element. */
function twiceKinetic({ system }: Analysis, u: Float64Array): number {
  return system.elements.reduce((sum, { nodes, M }) => {
    const local = nodes.flatMap((node) => Array.from(u.subarray(6 * node, 6 * node + 6)));
    return M ? sum + form(M, local) : sum;
  }, 0);
}

describe("effective masses (phi'M r)^2, r a rigid-body motion of all that is not held", () => {
  test("add up to the mass or inertia that r moves, whatever holds the frame", () => {
    forAll(memberFrame(), 25, (frame) => {
      const analysis = solveAll(frame);
      const { system, mesh, mass } = analysis;
      const { xx, yy, zz } = mass.inertia;
      const shapes = shapesOf(analysis);
      rigidMotions(mesh, mass.cg).forEach((R, direction) => {
        const r = restrict(system.reduction, R);
        const moved = twiceKinetic(analysis, expand(system.reduction, r));
        const Mr = times(system.M, r);
        const sum = shapes.reduce((total, phi) => total + dot(phi, Mr) ** 2, 0);
        const whole = direction < 3 ? mass.mass : Math.max(xx, yy, zz);
        expect(Math.abs(sum - moved) / whole).toBeLessThan(1e-11);
      });
    });
  });

  test("of a free frame are those of the rigid-body motions alone: the mass and inertia of the drawing", () => {
    forAll(memberFrame({ holding: "free" }), 20, (frame) => {
      const { system, mesh, mass, modes } = solveAll(frame);
      const { xx, yy, zz } = mass.inertia;
      const whole = [mass.mass, mass.mass, mass.mass, xx, yy, zz];
      const n = system.reduction.n;
      rigidMotions(mesh, mass.cg).forEach((R, direction) => {
        const Mr = times(system.M, restrict(system.reduction, R));
        const rigid = modes.rigid.reduce((sum, phi) => sum + dot(phi, Mr) ** 2, 0);
        expect(Math.abs(rigid / whole[direction] - 1)).toBeLessThan(1e-11);
        modes.lambda.forEach((_, k) => {
          const share = dot(modes.phi.subarray(n * k, n * k + n), Mr) ** 2 / whole[direction];
          expect(share).toBeLessThan(1e-20);
        });
      });
    });
  });
});

describe("Rayleigh's quotient x'Kx / x'Mx", () => {
  test("lies between the lowest and the highest eigenvalue", () => {
    forAll(fc.tuple(memberFrame(), whole(1, 99)), 25, ([frame, seed]) => {
      const analysis = solveAll(frame);
      const { K, M, reduction } = analysis.system;
      const lambda = eigenvaluesOf(analysis);
      const x = wave(reduction.n, seed);
      const R = dot(x, times(K, x)) / dot(x, times(M, x));
      expect(R).toBeGreaterThanOrEqual(lambda[0]);
      expect(R).toBeLessThanOrEqual(lambda[lambda.length - 1] * (1 + ROUNDING));
    });
  });

  test("is stationary at a mode: an error e of the shape changes it by the square of e", () => {
    const values = fc.tuple(memberFrame(), fc.nat(99), whole(1, 99));
    forAll(values, 25, ([frame, number, seed]) => {
      const analysis = solveAll(frame);
      const { K, M, reduction } = analysis.system;
      const lambdas = eigenvaluesOf(analysis);
      const k = number % lambdas.length;
      const [phi, lambda] = [shapesOf(analysis)[k], lambdas[k]];
      // d as heavy as phi, and M-orthogonal to it
      const raw = wave(reduction.n, seed);
      const share = dot(raw, times(M, phi));
      const across = raw.map((v, i) => v - share * phi[i]);
      const size = Math.sqrt(dot(across, times(M, across)));
      const d = across.map((v) => v / size);
      const Kd = dot(d, times(K, d));
      for (const e of [0.1, 0.01, -0.01]) {
        const x = phi.map((v, i) => v + e * d[i]);
        const R = dot(x, times(K, x)) / dot(x, times(M, x));
        // (lambda + e^2 d'Kd) / (1 + e^2), nothing of first order
        const expected = (lambda + e * e * Kd) / (1 + e * e);
        expect(Math.abs(R / expected - 1)).toBeLessThan(ROUNDING);
      }
    });
  });
});
