/** How far seats give way by what the modes of a variant leave out. */

import { type Seat, seatMotion } from "../mesh/seat.ts";
import { type SeatFlexibility, seatFlexibility } from "../response/residual.ts";
import type { ReducedMatrices } from "./matrices.ts";
import { rowsAt } from "./mesh-rows.ts";
import type { Meshed } from "./meshed.ts";
import { rigidRowsAt } from "./motions.ts";
import type { RitzPairs } from "./ritz.ts";
import type { ReducedFrame } from "./types.ts";

/** By the Ritz vectors beyond the modes; and by what the space lacks, as it is on the base. */
export function flexibilityIn(
  frame: ReducedFrame,
  meshed: Meshed,
  matrices: ReducedMatrices,
  ritz: RitzPairs,
  count: number,
): SeatFlexibility {
  return (seats) => {
    const rest = remainders(frame, seats);
    return seats.map((seat, i) => {
      const F = seatBeyond(frame, meshed, matrices, ritz, count, seat);
      return F.map((v, k) => v + rest[i][k]);
    });
  };
}

/** sum of psi psi'/(lambda - shift) over the Ritz vectors beyond the modes (6 x 6) */
export function seatBeyond(
  { space, solved }: Pick<ReducedFrame, "space" | "solved">,
  meshed: Pick<Meshed, "mesh">,
  matrices: Pick<ReducedMatrices, "rows" | "rigid">,
  { lambda, Y }: RitzPairs,
  count: number,
  { dofs, rows }: Seat,
): Float64Array {
  const { width: w } = space;
  const { count: rigid, S } = matrices.rigid;
  // Motion of the seat in every vector of the space, its rigid part taken out (6 x w)
  const P = sixRows(rows, rowsAt(matrices.rows, dofs, w), dofs.length, w);
  const Q = sixRows(rows, rigidRowsAt(meshed, matrices, dofs), dofs.length, rigid);
  for (let i = 0; i < 6; i++) {
    for (let c = 0; c < w; c++) {
      for (let r = 0; r < rigid; r++) P[i * w + c] -= Q[i * rigid + r] * S[c * rigid + r];
    }
  }
  const F = new Float64Array(36);
  const psi = new Float64Array(6);
  for (let k = count; k < lambda.length; k++) {
    for (let i = 0; i < 6; i++) {
      psi[i] = 0;
      for (let c = 0; c < w; c++) psi[i] += P[i * w + c] * Y[k * w + c];
    }
    for (let i = 0; i < 6; i++) {
      for (let j = 0; j < 6; j++) F[6 * i + j] += (psi[i] * psi[j]) / (lambda[k] - solved.shift);
    }
  }
  return F;
}

/** B X, 6 x columns row-major, for B of 6 x m row-major and X of m x columns column-major. */
function sixRows(B: Float64Array, X: Float64Array, m: number, columns: number): Float64Array {
  const out = new Float64Array(6 * columns);
  for (let i = 0; i < 6; i++) {
    for (let c = 0; c < columns; c++) {
      let sum = 0;
      for (let j = 0; j < m; j++) sum += B[i * m + j] * X[c * m + j];
      out[i * columns + c] = sum;
    }
  }
  return out;
}

/** Remainders of seats that were asked for before, by frame. */
const KNOWN = new WeakMap<ReducedFrame, Map<string, Float64Array>>();

function remainders(frame: ReducedFrame, seats: readonly Seat[]): Float64Array[] {
  const known = KNOWN.get(frame) ?? new Map<string, Float64Array>();
  KNOWN.set(frame, known);
  // Heights follow a thickness, so rows may differ by rounding: nine digits are enough to tell seats apart.
  const keys = seats.map(
    ({ dofs, rows }) => `${dofs.join()};${Array.from(rows, (v) => v.toPrecision(9)).join()}`,
  );
  const missing = seats.filter((_, i) => !known.has(keys[i]));
  if (missing.length > 0) {
    const found = remaindersOf(frame, missing);
    let k = 0;
    seats.forEach((_, i) => {
      if (!known.has(keys[i])) known.set(keys[i], found[k++]);
    });
  }
  return keys.map((key) => known.get(key) as Float64Array);
}

/** On the base: the exact flexibility of all modes left out, less that of the Ritz vectors beyond them. */
function remaindersOf(frame: ReducedFrame, seats: readonly Seat[]): Float64Array[] {
  const { solved, system, base, ritz, count, baseMatrices } = frame;
  const { modes, rigidShapes } = solved;
  const shapes = [...modes.shapes, ...rigidShapes];
  const psi = seats.map((seat) => {
    const out = new Float64Array(6 * shapes.length);
    shapes.forEach((shape, t) => {
      seatMotion(seat, shape).forEach((u, i) => {
        out[i * shapes.length + t] = u;
      });
    });
    return out;
  });
  const exact = seatFlexibility(system, solved, seats, psi);
  return seats.map((seat, i) => {
    const inSpace = seatBeyond(frame, base, baseMatrices, ritz, count, seat);
    return exact[i].map((v, k) => v - inSpace[k]);
  });
}
