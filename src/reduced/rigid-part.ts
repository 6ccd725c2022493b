/** The rigid motions of a variant, and what the vectors of the space have of them. */

import { rigidMass } from "../element/rigid-mass.ts";
import { choleskyInPlace, forwardInPlace } from "../linalg/dense.ts";
import type { MassProperties } from "../matrices/mass.ts";
import { freeCombinations } from "../matrices/rigid.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Vec3 } from "../model/types.ts";
import type { Basis } from "./basis.ts";
import type { Known, Momentum } from "./known.ts";
import type { Meshed } from "./meshed.ts";
import { rawMotions, shifted } from "./momentum.ts";
import { addScaled } from "./projection.ts";
import type { Space } from "./space.ts";
import type { MassShare } from "./units.ts";

/** Motions that nothing holds, M-orthonormal. */
export interface RigidPart {
  readonly count: number;
  readonly about: Vec3;
  /** each as a sum of ux uy uz rx ry rz about that point (6 x count, row-major) */
  readonly motions: Float64Array;
  /** of the space and the probes, (width + probes) x count, row-major: y stands for V y - motions S'y */
  readonly S: Float64Array;
}

/**
 * The variant's own mass about the shared point is known from its drawing, which the matrices agree with
 * to rounding.
 *
 * @param exchanged momentum of what is exchanged, see `seenMomentum`
 */
export function rigidPart(
  { base, about }: Pick<Basis, "base" | "about">,
  known: Known,
  { mesh }: Meshed,
  exchanged: Float64Array,
  shares: readonly MassShare[],
  { mass, inertia, cg }: MassProperties,
): RigidPart {
  const all = known.rows.all;
  const momentum = movedMomentum(known.momentum, base.mesh, mesh, all);
  addScaled(momentum, 1, exchanged);
  for (const { of, mass: more, shift } of shares) {
    if (of.momentum) addScaled(momentum, more, shifted(of.momentum, shift));
  }
  const own = rigidMass(
    mass,
    inertia,
    cg.map((v, i) => v - about[i]),
  );
  const free = freeCombinations(mesh, about);
  const combinations = free === "all" ? IDENTITY : free;
  const count = combinations.length;
  const C = Float64Array.from(
    { length: 6 * count },
    (_, i) => combinations[i % count][Math.floor(i / count)],
  );
  // Rows of L^-1 C' are the motions with R'MR = L L' of C'(own)C made 1.
  const L = product(transposed(C, 6, count), product(own, C, 6, 6, count), count, 6, count);
  choleskyInPlace(L, count);
  const motions = C;
  forwardInPlace(L, count, motions, 6);
  return { count, about, motions, S: product(momentum, motions, all, 6, count) };
}

const IDENTITY = Array.from({ length: 6 }, (_, i) =>
  Array.from({ length: 6 }, (_, j) => (i === j ? 1 : 0)),
);

/** The momentum of the base on ties of its own, its nodes where the variant has them. */
function movedMomentum(
  { whole, along }: Momentum,
  { xyz: before }: Mesh,
  { xyz: after }: Mesh,
  all: number,
): Float64Array {
  const out = whole.slice();
  for (let at = 0; at < before.length; at += 3) {
    const [x, y, z] = [0, 1, 2].map((k) => after[at + k] - before[at + k]);
    if (x === 0 && y === 0 && z === 0) continue;
    for (let c = 0; c < all; c++) {
      const px = along[at * all + c];
      const py = along[(at + 1) * all + c];
      const pz = along[(at + 2) * all + c];
      out[6 * c + 3] += y * pz - z * py;
      out[6 * c + 4] += z * px - x * pz;
      out[6 * c + 5] += x * py - y * px;
    }
  }
  return out;
}

/** M -= S S' of a packed projection. */
export function withoutRigid({ width, probes }: Space, M: Float64Array, { S, count }: RigidPart) {
  let at = 0;
  for (let i = 0; i < width + probes; i++) {
    const last = Math.min(i, width - 1);
    for (let j = 0; j <= last; j++, at++) {
      let sum = 0;
      for (let k = 0; k < count; k++) sum += S[i * count + k] * S[j * count + k];
      M[at] -= sum;
    }
  }
}

/** The rigid motions at an unknown of the mesh (size count). */
export function rigidAt(
  { count, about, motions }: RigidPart,
  { xyz }: Mesh,
  dof: number,
): Float64Array {
  const raw = rawMotions(xyz, about, Int32Array.of(dof));
  const out = new Float64Array(count);
  for (let i = 0; i < 6; i++) {
    const r = raw[i];
    for (let k = 0; k < count; k++) out[k] += r * motions[i * count + k];
  }
  return out;
}

/** A B, all row-major. */
function product(
  A: Float64Array,
  B: Float64Array,
  n: number,
  m: number,
  columns: number,
): Float64Array {
  const out = new Float64Array(n * columns);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < m; k++) {
      const a = A[i * m + k];
      for (let j = 0; j < columns; j++) out[i * columns + j] += a * B[k * columns + j];
    }
  }
  return out;
}

function transposed(A: Float64Array, n: number, m: number): Float64Array {
  return Float64Array.from({ length: n * m }, (_, i) => A[(i % n) * m + Math.floor(i / n)]);
}
