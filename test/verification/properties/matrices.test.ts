/** Symmetry and definiteness of the assembled matrices of random frames, and what they weigh. */

import { describe, expect, test } from "vitest";
import { choleskyInPlace, symmetricEigen } from "../../../src/linalg/dense.ts";
import { type SymmetricSparse, toDense } from "../../../src/linalg/sparse.ts";
import type { System } from "../../../src/matrices/assemble.ts";
import { massDifference } from "../../../src/matrices/mass.ts";
import { restrict } from "../../../src/matrices/reduction.ts";
import { rigidMotions } from "../../../src/matrices/rigid.ts";
import { asymmetry, largest } from "../../element/dense.ts";
import { solveFrame } from "../frequencies.ts";
import { memberFrame } from "./member-frames.ts";
import { fileOf, multirotor } from "./multirotors.ts";
import { forAll } from "./runs.ts";
import { times } from "./spectra.ts";
import { weigh } from "./weighing.ts";

/**
 * Eigenvalues of A with its diagonal scaled to 1, so that metres and radians weigh alike, relative to
 * the largest.
 */
function scaledEigenvalues(A: SymmetricSparse): number[] {
  const n = A.pattern.n;
  const full = toDense(A);
  const d = Array.from({ length: n }, (_, i) => 1 / Math.sqrt(full[n * i + i]));
  const { values } = symmetricEigen(
    full.map((v, p) => v * d[Math.floor(p / n)] * d[p % n]),
    n,
  );
  return Array.from(values, (v) => v / values[n - 1]);
}

describe("stiffness and mass of a frame of members", () => {
  test("K has no negative eigenvalue, and a zero for each rigid-body motion that is left, no more", () => {
    forAll(memberFrame(), 40, (frame) => {
      const { system, modes } = solveFrame(frame, { modes: 1 });
      const values = scaledEigenvalues(system.K);
      // Rounding leaves 3e-16 of the zeros; the softest elastic one is above 1e-7.
      expect(values[0]).toBeGreaterThan(-1e-14);
      expect(values.filter((v) => v < 1e-12).length).toBe(modes.rigid.length);
    });
  });

  test("M is positive definite", () => {
    forAll(memberFrame(), 20, (frame) => {
      const { system } = solveFrame(frame, { modes: 1 });
      // Consistent masses of slender elements come to 1e-4, and to no zero at all.
      expect(scaledEigenvalues(system.M)[0]).toBeGreaterThan(1e-6);
    });
  });

  test("every element's matrices are symmetric", () => {
    forAll(memberFrame(), 20, (frame) => {
      for (const { K, M, nodes } of solveFrame(frame, { modes: 1 }).system.elements) {
        for (const A of [K, M]) {
          if (A) expect(asymmetry(A, 6 * nodes.length)).toBeLessThanOrEqual(1e-15 * largest(A));
        }
      }
    });
  });

  test("R'MR is the mass, centre of gravity and inertia that one weighs by hand", () => {
    forAll(memberFrame({ holding: "free", theory: "rayleigh" }), 30, (frame) => {
      const { mass, assembledMass } = solveFrame(frame, { modes: 1 });
      // Sums of some ten pieces: 2e-15.
      expect(massDifference(mass, weigh(frame))).toBeLessThan(1e-14);
      expect(massDifference(assembledMass!, weigh(frame))).toBeLessThan(1e-14);
    });
  });
});

/** M with 1e-15 of the largest mass, and of the largest inertia, more in every place of its diagonal. */
function withARounding({ M, reduction }: System): Float64Array {
  const n = reduction.n;
  const full = toDense(M);
  const turns = (i: number) => reduction.masters[i] % 6 > 2;
  const most = [false, true].map((kind) =>
    Math.max(...Array.from({ length: n }, (_, i) => (turns(i) === kind ? full[n * i + i] : 0))),
  );
  for (let i = 0; i < n; i++) full[n * i + i] += 1e-15 * most[+turns(i)];
  return full;
}

describe("stiffness and mass of a multirotor", () => {
  test("K + delta M is positive definite, delta a millionth of the first eigenvalue; M but for rounding", () => {
    forAll(multirotor(), 4, (craft) => {
      const { system, modes } = solveFrame(fileOf(craft), { modes: 1 });
      const [K, M] = [toDense(system.K), toDense(system.M)];
      const n = system.reduction.n;
      // Throws where a pivot is not above zero.
      choleskyInPlace(
        K.map((k, p) => k + 1e-6 * modes.lambda[0] * M[p]),
        n,
      );
      // A corner of the grid that holds only a sliver of the plate has 1e-29 of mass, of either sign.
      choleskyInPlace(withARounding(system), n);
    });
  });

  test("R'MR is the drawing's, and K R = 0", () => {
    forAll(multirotor(), 6, (craft) => {
      const { system, mesh, mass, assembledMass } = solveFrame(fileOf(craft), { modes: 1 });
      // Sums over hundreds of cells and chains of ties.
      expect(massDifference(mass, assembledMass!)).toBeLessThan(1e-12);
      for (const R of rigidMotions(mesh, mass.cg)) {
        const q = restrict(system.reduction, R);
        const force = largest(times(system.K, q)) / (largest(system.K.values) * largest(q));
        expect(force).toBeLessThan(1e-13);
      }
    });
  });
});
