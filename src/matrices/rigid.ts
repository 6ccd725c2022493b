/** The motions a free frame makes without bending, built from geometry. */

import { EigenvalueDecomposition, Matrix } from "ml-matrix";
import type { Mesh } from "../mesh/types.ts";
import { type Reduction, restrict } from "./reduction.ts";

/**
 * The six rigid-body motions about a point, on all unknowns of the mesh: three translations (1 m) and
 * three rotations (1 rad).
 *
 * @param about m; the centre of gravity makes them nearly orthogonal
 */
export function rigidMotions(mesh: Mesh, about: ArrayLike<number>): Float64Array[] {
  const n = mesh.xyz.length / 3;
  const R = Array.from({ length: 6 }, () => new Float64Array(6 * n));
  for (let i = 0; i < n; i++) {
    const [x, y, z] = [0, 1, 2].map((k) => mesh.xyz[3 * i + k] - about[k]);
    for (let k = 0; k < 6; k++) R[k][6 * i + k] = 1;
    // u = theta x r
    R[3][6 * i + 1] = -z;
    R[3][6 * i + 2] = y;
    R[4][6 * i] = z;
    R[4][6 * i + 2] = -x;
    R[5][6 * i] = -y;
    R[5][6 * i + 1] = x;
  }
  return R;
}

/**
 * The rigid-body motions that the supports and ground springs leave free, on the unknowns that remain:
 * six for a frame in flight, none for one that is clamped. Combinations of the six whose motion at
 * every held unknown is zero.
 */
export function freeRigidMotions(
  mesh: Mesh,
  reduction: Reduction,
  about: ArrayLike<number>,
): Float64Array[] {
  const R = rigidMotions(mesh, about);
  const free = freeCombinations(mesh, about);
  if (free === "all") return R.map((r) => restrict(reduction, r));
  return free.map((combination) => {
    const u = new Float64Array(R[0].length);
    combination.forEach((c, i) => {
      for (let d = 0; d < u.length; d++) u[d] += c * R[i][d];
    });
    return restrict(reduction, u);
  });
}

/** Combinations of the six rigid motions (6 factors each) that nothing holds. */
export function freeCombinations(
  mesh: Mesh,
  about: ArrayLike<number>,
): "all" | readonly (readonly number[])[] {
  const held = [...mesh.fixed];
  for (const s of mesh.springs) {
    if (s.nodes[1] >= 0) continue;
    for (let i = 0; i < 6; i++) if (s.k[i] !== 0) held.push(6 * s.nodes[0] + i);
  }
  if (held.length === 0) return "all";
  const R = rigidMotions(mesh, about);

  // Rotations are scaled by the frame's size, so that metres and radians weigh alike.
  let reach = 0;
  for (let i = 0; i < mesh.xyz.length; i++) {
    reach = Math.max(reach, Math.abs(mesh.xyz[i] - about[i % 3]));
  }
  const scale = [1, 1, 1, 1 / reach, 1 / reach, 1 / reach];
  const weigh = (dof: number) => (dof % 6 < 3 ? 1 : reach);
  const G = Matrix.zeros(6, 6);
  for (const dof of held) {
    for (let i = 0; i < 6; i++) {
      for (let j = 0; j < 6; j++) {
        const v = weigh(dof) ** 2 * scale[i] * R[i][dof] * scale[j] * R[j][dof];
        G.set(i, j, G.get(i, j) + v);
      }
    }
  }
  const evd = new EigenvalueDecomposition(G, { assumeSymmetric: true });
  const largest = Math.max(...evd.realEigenvalues);
  return evd.realEigenvalues.flatMap((value, k) =>
    value > 1e-10 * largest ? [] : [scale.map((c, i) => c * evd.eigenvectorMatrix.get(i, k))],
  );
}
