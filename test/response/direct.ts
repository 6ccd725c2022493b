/** The forced response by brute force: dense complex matrices, one solution per frequency. */

import type { System } from "../../src/matrices/assemble.ts";
import type { Mesh, MeshPart } from "../../src/mesh/types.ts";
import type { Rotor } from "../../src/model/types.ts";

/** K, K_loss = sum of eta_e K_e, M: each n x n, row-major, on the unknowns that remain. */
export interface Dense {
  readonly n: number;
  readonly K: Float64Array;
  readonly loss: Float64Array;
  readonly M: Float64Array;
}

/** Sums T'K_e T element by element, each with a loss factor of its own. */
export function denseSystem(
  { elements, reduction: t }: System,
  mesh: Mesh,
  lossOf: (part: MeshPart) => number = (p) => p.lossFactor,
): Dense {
  const n = t.n;
  const [K, loss, M] = [0, 1, 2].map(() => new Float64Array(n * n));
  const add = (out: Float64Array, nodes: readonly number[], A: Float64Array, scale: number) => {
    const dofs = nodes.flatMap((node) => [0, 1, 2, 3, 4, 5].map((d) => 6 * node + d));
    dofs.forEach((di, i) => {
      dofs.forEach((dj, j) => {
        const a = scale * A[i * dofs.length + j];
        if (a === 0) return;
        for (let p = t.ptr[di]; p < t.ptr[di + 1]; p++) {
          for (let q = t.ptr[dj]; q < t.ptr[dj + 1]; q++) {
            out[n * t.col[p] + t.col[q]] += a * t.coef[p] * t.coef[q];
          }
        }
      });
    });
  };
  for (const e of elements) {
    if (e.M) add(M, e.nodes, e.M, 1);
    if (!e.K) continue;
    add(K, e.nodes, e.K, 1);
    const eta = lossOf(mesh.parts[e.part]);
    if (eta !== 0) add(loss, e.nodes, e.K, eta);
  }
  return { n, K, loss, M };
}

export interface Complex {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** x = (K + i K_loss - omega^2 M)^-1 f for several loads f. */
export function directMotions(d: Dense, omega: number, loads: readonly Complex[]): Complex[] {
  const { n } = d;
  const w = n + loads.length;
  const re = new Float64Array(n * w);
  const im = new Float64Array(n * w);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      re[i * w + j] = d.K[i * n + j] - omega * omega * d.M[i * n + j];
      im[i * w + j] = d.loss[i * n + j];
    }
    loads.forEach((f, k) => {
      re[i * w + n + k] = f.re[i];
      im[i * w + n + k] = f.im[i];
    });
  }
  eliminate(re, im, n, w);
  return loads.map((_, k) => ({
    re: Float64Array.from({ length: n }, (_, i) => re[i * w + n + k]),
    im: Float64Array.from({ length: n }, (_, i) => im[i * w + n + k]),
  }));
}

/** Gaussian elimination with partial pivoting on n rows of w complex numbers, then back-substitution. */
function eliminate(re: Float64Array, im: Float64Array, n: number, w: number): void {
  const size = (i: number, c: number) => re[i * w + c] ** 2 + im[i * w + c] ** 2;
  /** row i -= f * row c, from column `from` on */
  const take = (i: number, c: number, fr: number, fi: number, from: number) => {
    if (fr === 0 && fi === 0) return;
    for (let k = from, p = i * w + from, q = c * w + from; k < w; k++, p++, q++) {
      re[p] -= fr * re[q] - fi * im[q];
      im[p] -= fr * im[q] + fi * re[q];
    }
  };
  for (let c = 0; c < n; c++) {
    let p = c;
    for (let i = c + 1; i < n; i++) if (size(i, c) > size(p, c)) p = i;
    for (const a of [re, im]) {
      const row = a.slice(c * w, (c + 1) * w);
      a.copyWithin(c * w, p * w, (p + 1) * w);
      a.set(row, p * w);
    }
    const [pr, pi] = [re[c * w + c], im[c * w + c]];
    const square = size(c, c);
    for (let k = c; k < w; k++) {
      const [a, b] = [re[c * w + k], im[c * w + k]];
      re[c * w + k] = (a * pr + b * pi) / square;
      im[c * w + k] = (b * pr - a * pi) / square;
    }
    for (let i = c + 1; i < n; i++) take(i, c, re[i * w + c], im[i * w + c], c);
  }
  for (let c = n - 1; c > 0; c--) {
    for (let i = 0; i < c; i++) take(i, c, re[i * w + c], im[i * w + c], n);
  }
}

/**
 * The load on the unknowns that remain of a force at a rotor's propeller and a couple, by virtual work:
 * each unknown's share is the work done on the motion of the propeller's centre.
 */
export function rotorForce(
  system: System,
  mesh: Mesh,
  rotor: Rotor,
  force: readonly number[],
  couple: readonly number[] = [0, 0, 0],
): Float64Array {
  const t = system.reduction;
  const tip = mesh.armTips[rotor.arm];
  const [rx, ry, rz] = rotor.position.map((v, i) => v - mesh.xyz[3 * tip + i]);
  // velocity of the propeller's centre for a unit of each unknown of the tip: u + theta x r
  const motion = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
    [0, -rz, ry],
    [rz, 0, -rx],
    [-ry, rx, 0],
  ];
  const out = new Float64Array(t.n);
  motion.forEach((v, d) => {
    const work = v.reduce((sum, vi, i) => sum + vi * force[i], 0) + (d > 2 ? couple[d - 3] : 0);
    const row = 6 * tip + d;
    for (let p = t.ptr[row]; p < t.ptr[row + 1]; p++) out[t.col[p]] += work * t.coef[p];
  });
  return out;
}
