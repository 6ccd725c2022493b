/** Small test matrices with known spectra. */

import { compressTriplets, type SymmetricSparse } from "../../src/linalg/sparse.ts";

export interface Pencil {
  readonly K: SymmetricSparse;
  readonly M: SymmetricSparse;
}

/** A spring (its stiffness) from mass i to mass j, or to the ground with j = -1. */
export type Spring = readonly [i: number, j: number, stiffness: number];

/** Point masses with one unknown each, joined by springs. */
export function springSystem(masses: readonly number[], springs: readonly Spring[]): Pencil {
  const rows: number[] = [];
  const cols: number[] = [];
  const k: number[] = [];
  const m: number[] = [];
  const add = (i: number, j: number, stiffness: number, mass: number) => {
    rows.push(i);
    cols.push(j);
    k.push(stiffness);
    m.push(mass);
  };
  masses.forEach((mass, i) => {
    add(i, i, 0, mass);
  });
  for (const [i, j, stiffness] of springs) {
    add(i, i, stiffness, 0);
    if (j < 0) continue;
    add(j, j, stiffness, 0);
    add(i, j, -stiffness, 0);
  }
  const { pattern, values } = compressTriplets(
    masses.length,
    rows.length,
    Int32Array.from(rows),
    Int32Array.from(cols),
    [Float64Array.from(k), Float64Array.from(m)],
  );
  return { K: { pattern, values: values[0] }, M: { pattern, values: values[1] } };
}

export type Ends = "fixed-free" | "fixed-fixed" | "free-free";

/** n unit masses in a row, joined by unit springs. */
export function chain(n: number, ends: Ends): Pencil {
  const springs: Spring[] = [];
  for (let i = 0; i + 1 < n; i++) springs.push([i + 1, i, 1]);
  if (ends !== "free-free") springs.push([0, -1, 1]);
  if (ends === "fixed-fixed") springs.push([n - 1, -1, 1]);
  return springSystem(new Array(n).fill(1), springs);
}

/** The i-th eigenvalue (i = 1 ..) of such a chain, in closed form. */
export function chainEigenvalue(n: number, ends: Ends, i: number): number {
  const angle = {
    "fixed-free": ((2 * i - 1) * Math.PI) / (4 * n + 2),
    "fixed-fixed": (i * Math.PI) / (2 * n + 2),
    "free-free": ((i - 1) * Math.PI) / (2 * n),
  }[ends];
  return 4 * Math.sin(angle) ** 2;
}

/** side x side unit masses, each tied to its neighbours and the rim to the ground by unit springs:
 * lambda_ij = lambda_i + lambda_j of the fixed-fixed chain, so most come in pairs. */
export function squareGrid(side: number): Pencil {
  const springs: Spring[] = [];
  for (let i = 0; i < side; i++) {
    for (let j = 0; j < side; j++) {
      const here = i * side + j;
      springs.push([here, i + 1 < side ? here + side : -1, 1]);
      springs.push([here, j + 1 < side ? here + 1 : -1, 1]);
      if (i === 0) springs.push([here, -1, 1]);
      if (j === 0) springs.push([here, -1, 1]);
    }
  }
  return springSystem(new Array(side * side).fill(1), springs);
}

/** Several systems side by side, with no spring between them. */
export function sideBySide(...systems: readonly Pencil[]): Pencil {
  const rows: number[] = [];
  const cols: number[] = [];
  const k: number[] = [];
  const m: number[] = [];
  let offset = 0;
  for (const { K, M } of systems) {
    const { n, colPtr, rowIdx } = K.pattern;
    for (let j = 0; j < n; j++) {
      for (let p = colPtr[j]; p < colPtr[j + 1]; p++) {
        rows.push(offset + rowIdx[p]);
        cols.push(offset + j);
        k.push(K.values[p]);
        m.push(M.values[p]);
      }
    }
    offset += n;
  }
  const { pattern, values } = compressTriplets(
    offset,
    rows.length,
    Int32Array.from(rows),
    Int32Array.from(cols),
    [Float64Array.from(k), Float64Array.from(m)],
  );
  return { K: { pattern, values: values[0] }, M: { pattern, values: values[1] } };
}

/** The system with some unknowns held: their rows and columns are left out. */
export function held({ K, M }: Pencil, unknowns: readonly number[]): Pencil {
  const { n, colPtr, rowIdx } = K.pattern;
  const free = Array.from({ length: n }, (_, i) => i).filter((i) => !unknowns.includes(i));
  const place = new Map(free.map((i, k) => [i, k]));
  const rows: number[] = [];
  const cols: number[] = [];
  const entries: number[] = [];
  for (const j of free) {
    for (let p = colPtr[j]; p < colPtr[j + 1]; p++) {
      const row = place.get(rowIdx[p]);
      if (row === undefined) continue;
      rows.push(row);
      cols.push(place.get(j) as number);
      entries.push(p);
    }
  }
  const { pattern, values } = compressTriplets(
    free.length,
    rows.length,
    Int32Array.from(rows),
    Int32Array.from(cols),
    [K, M].map((A) => Float64Array.from(entries, (p) => A.values[p])),
  );
  return { K: { pattern, values: values[0] }, M: { pattern, values: values[1] } };
}
