/**
 * Realistic test matrices: free plates of Euler-Bernoulli beams on a grid, 6 unknowns per node,
 * consistent mass, optionally stacked on struts whose ends are spread over patches of nodes.
 * Element matrices: J. S. Przemieniecki, Theory of Matrix Structural Analysis (from memory).
 */

import { compressTriplets, type SymmetricSparse } from "../../src/linalg/sparse.ts";

type Vector = readonly [number, number, number];

/** One end of a beam: the mean motion of a patch of nodes, carried rigidly to `at`. */
interface End {
  readonly nodes: readonly number[];
  readonly at: Vector;
}

export interface BeamModel {
  readonly n: number;
  readonly K: SymmetricSparse;
  readonly M: SymmetricSparse;
  /** The six rigid-body motions, each of size n. */
  readonly rigid: Float64Array[];
}

export interface Section {
  readonly E: number;
  readonly G: number;
  readonly A: number;
  readonly Iy: number;
  readonly Iz: number;
  readonly J: number;
  readonly rho: number;
}

/** A w x t strip of an isotropic material; the thin way bends about the local y axis. */
export function strip(w: number, t: number, E = 70e9, rho = 1600): Section {
  const J = (w * t ** 3 * 4) / 12;
  return { E, G: E / 2.6, A: w * t, Iy: (w * t ** 3) / 12, Iz: (t * w ** 3) / 12, J, rho };
}

/** Free-free beams between ends that are patches of nodes. */
export function beamModel(
  points: readonly Vector[],
  beams: readonly { readonly ends: readonly [End, End]; readonly section: Section }[],
): BeamModel {
  const n = 6 * points.length;
  const rows: number[] = [];
  const cols: number[] = [];
  const k: number[] = [];
  const m: number[] = [];
  for (const { ends, section } of beams) {
    const { Ke, Me } = beamElement(ends[0].at, ends[1].at, section);
    const dofs = ends.flatMap((end) =>
      end.nodes.flatMap((node) => [0, 1, 2, 3, 4, 5].map((d) => 6 * node + d)),
    );
    // T: 12 x dofs.length, motion of the two ends from the motion of the nodes.
    const T = Array.from({ length: 12 }, () => new Float64Array(dofs.length));
    let column = 0;
    ends.forEach((end, e) => {
      const weight = 1 / end.nodes.length;
      const mean = [0, 1, 2].map((d) => end.nodes.reduce((s, i) => s + points[i][d], 0) * weight);
      const [x, y, z] = [end.at[0] - mean[0], end.at[1] - mean[1], end.at[2] - mean[2]];
      for (let i = 0; i < end.nodes.length; i++, column += 6) {
        for (let d = 0; d < 6; d++) T[6 * e + d][column + d] = weight;
        lever(T, 6 * e, column + 3, weight, [x, y, z]);
      }
    });
    const kt = congruence(Ke, T);
    const mt = congruence(Me, T);
    for (let a = 0; a < dofs.length; a++) {
      for (let b = 0; b <= a; b++) {
        rows.push(dofs[a]);
        cols.push(dofs[b]);
        k.push(kt[a][b]);
        m.push(mt[a][b]);
      }
    }
  }
  const { pattern, values } = compressTriplets(
    n,
    rows.length,
    Int32Array.from(rows),
    Int32Array.from(cols),
    [Float64Array.from(k), Float64Array.from(m)],
  );
  const rigid = Array.from({ length: 6 }, () => new Float64Array(n));
  points.forEach((p, i) => {
    for (let d = 0; d < 6; d++) rigid[d][6 * i + d] = 1;
    const at = rigid.map((r) => r.subarray(6 * i, 6 * i + 6));
    // u = theta x p
    for (const [d, a, b] of [
      [3, 1, 2],
      [4, 2, 0],
      [5, 0, 1],
    ]) {
      at[d][b] = p[a];
      at[d][a] = -p[b];
    }
  });
  return {
    n,
    K: { pattern, values: values[0] },
    M: { pattern, values: values[1] },
    rigid,
  };
}

/** Rows row .. row + 2 of T gain weight (theta x d), theta in columns column .. column + 2. */
function lever(T: Float64Array[], row: number, column: number, weight: number, d: Vector): void {
  const [x, y, z] = d;
  T[row][column + 1] += weight * z;
  T[row][column + 2] -= weight * y;
  T[row + 1][column] -= weight * z;
  T[row + 1][column + 2] += weight * x;
  T[row + 2][column] += weight * y;
  T[row + 2][column + 1] -= weight * x;
}

/** T' A T */
function congruence(A: Float64Array[], T: Float64Array[]): Float64Array[] {
  const size = T[0].length;
  const AT = A.map((row) => {
    const out = new Float64Array(size);
    row.forEach((a, k) => {
      if (a !== 0) for (let j = 0; j < size; j++) out[j] += a * T[k][j];
    });
    return out;
  });
  return Array.from({ length: size }, (_, i) => {
    const out = new Float64Array(size);
    for (let k = 0; k < 12; k++) {
      const t = T[k][i];
      if (t !== 0) for (let j = 0; j < size; j++) out[j] += t * AT[k][j];
    }
    return out;
  });
}

/** Stiffness and consistent mass of a straight beam in global axes, 12 x 12. */
function beamElement(a: Vector, b: Vector, s: Section): { Ke: Float64Array[]; Me: Float64Array[] } {
  const L = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
  const Kl = Array.from({ length: 12 }, () => new Float64Array(12));
  const Ml = Array.from({ length: 12 }, () => new Float64Array(12));
  const mass = s.rho * s.A * L;
  const polar = s.rho * (s.Iy + s.Iz) * L;
  for (const [d, stiffness, inertia] of [
    [0, (s.E * s.A) / L, mass],
    [3, (s.G * s.J) / L, polar],
  ]) {
    Kl[d][d] = Kl[d + 6][d + 6] = stiffness;
    Kl[d][d + 6] = Kl[d + 6][d] = -stiffness;
    Ml[d][d] = Ml[d + 6][d + 6] = inertia / 3;
    Ml[d][d + 6] = Ml[d + 6][d] = inertia / 6;
  }
  // Bending: uy with rz, and uz with -ry.
  for (const [u, r, sign, I] of [
    [1, 5, 1, s.Iz],
    [2, 4, -1, s.Iy],
  ]) {
    const dofs = [u, r, u + 6, r + 6];
    const l = sign * L;
    // biome-ignore format: matrix layout
    const k = [
      [12, 6 * l, -12, 6 * l],
      [6 * l, 4 * L * L, -6 * l, 2 * L * L],
      [-12, -6 * l, 12, -6 * l],
      [6 * l, 2 * L * L, -6 * l, 4 * L * L],
    ];
    // biome-ignore format: matrix layout
    const m = [
      [156, 22 * l, 54, -13 * l],
      [22 * l, 4 * L * L, 13 * l, -3 * L * L],
      [54, 13 * l, 156, -22 * l],
      [-13 * l, -3 * L * L, -22 * l, 4 * L * L],
    ];
    for (let p = 0; p < 4; p++) {
      for (let q = 0; q < 4; q++) {
        Kl[dofs[p]][dofs[q]] = (k[p][q] * s.E * I) / L ** 3;
        Ml[dofs[p]][dofs[q]] = (m[p][q] * mass) / 420;
      }
    }
  }
  // Local axes: x along the beam, z as near to global z as it goes (global x for an upright beam).
  const ex = [0, 1, 2].map((d) => (b[d] - a[d]) / L);
  const up = Math.abs(ex[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1];
  const along = ex[0] * up[0] + ex[1] * up[1] + ex[2] * up[2];
  const across = up.map((u, d) => u - along * ex[d]);
  const ez = across.map((u) => u / Math.hypot(across[0], across[1], across[2]));
  const ey = [0, 1, 2].map(
    (d) => ez[(d + 1) % 3] * ex[(d + 2) % 3] - ez[(d + 2) % 3] * ex[(d + 1) % 3],
  );
  const R = Array.from({ length: 12 }, () => new Float64Array(12));
  for (let block = 0; block < 12; block += 3) {
    [ex, ey, ez].forEach((axis, i) => {
      for (let d = 0; d < 3; d++) R[block + i][block + d] = axis[d];
    });
  }
  return { Ke: congruence(Kl, R), Me: congruence(Ml, R) };
}

export interface PlateStackOptions {
  readonly nx: number;
  readonly ny: number;
  /** m */
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly plates?: number;
  /** Struts between neighbouring plates, each spread over patch x patch nodes at both ends. */
  readonly struts?: number;
  readonly patch?: number;
  readonly gap?: number;
}

/** Plates of nx x ny nodes, one above the other, held together by struts. */
export function plateStack(options: PlateStackOptions): BeamModel {
  const { nx, ny, length, width, thickness } = options;
  const { plates = 1, struts = 0, patch = 1, gap = length / 8 } = options;
  const points: Vector[] = [];
  const at = (p: number, i: number, j: number) => (p * nx + i) * ny + j;
  for (let p = 0; p < plates; p++) {
    for (let i = 0; i < nx; i++) {
      for (let j = 0; j < ny; j++) {
        points.push([(length * i) / (nx - 1), (width * j) / (ny - 1), p * gap]);
      }
    }
  }
  const alongX = strip(width / (ny - 1), thickness);
  const alongY = strip(length / (nx - 1), thickness);
  const beams: { ends: [End, End]; section: Section }[] = [];
  const single = (node: number): End => ({ nodes: [node], at: points[node] });
  for (let p = 0; p < plates; p++) {
    for (let i = 0; i < nx; i++) {
      for (let j = 0; j < ny; j++) {
        const here = at(p, i, j);
        if (i + 1 < nx)
          beams.push({ ends: [single(here), single(at(p, i + 1, j))], section: alongX });
        if (j + 1 < ny)
          beams.push({ ends: [single(here), single(at(p, i, j + 1))], section: alongY });
      }
    }
  }
  const rod = strip(length / 40, length / 40);
  for (let p = 0; p + 1 < plates; p++) {
    for (let s = 0; s < struts; s++) {
      const i0 = Math.floor(((nx - patch) * ((s * 7) % struts)) / Math.max(1, struts - 1));
      const j0 = Math.floor(((ny - patch) * ((s * 5 + 3) % struts)) / Math.max(1, struts - 1));
      const end = (plate: number): End => {
        const nodes: number[] = [];
        for (let a = 0; a < patch; a++) {
          for (let b = 0; b < patch; b++) nodes.push(at(plate, i0 + a, j0 + b));
        }
        const [x, y] = [0, 1].map(
          (d) => nodes.reduce((sum, node) => sum + points[node][d], 0) / nodes.length,
        );
        return { nodes, at: [x, y, plate * gap + (plate === p ? gap / 10 : -gap / 10)] };
      };
      beams.push({ ends: [end(p), end(p + 1)], section: rod });
    }
  }
  return beamModel(points, beams);
}
