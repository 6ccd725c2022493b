/** How far seats give way by what the modes of a variant leave out. */

import { type Seat, seatMotion } from "../mesh/seat.ts";
import { leverRows, sixBy, transposed } from "../response/place.ts";
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

/** What the space lacks at seats, from those that are known or anew. */
function remainders(frame: ReducedFrame, seats: readonly Seat[]): Float64Array[] {
  const known = seats.map((seat) => {
    for (const { seat: from, remainder } of frame.seats) {
      const rise = riseBetween(from, seat);
      if (rise !== undefined) return raised(remainder, rise);
    }
    return undefined;
  });
  const missing = remaindersOf(
    frame,
    seats.filter((_, i) => known[i] === undefined),
  );
  let k = 0;
  return known.map((found) => found ?? missing[k++]);
}

/** Seats whose rows differ by less than this share of the largest are the same. */
const SAME_ROWS = 1e-9;

/**
 * How much higher the point of a seat is than that of another on the same screws: with the plate's
 * thickness the stack rises over its mid-plane. Undefined where they differ in more than that.
 */
function riseBetween(from: Seat, to: Seat): number | undefined {
  const m = from.dofs.length;
  if (to.dofs.length !== m || from.dofs.some((d, j) => d !== to.dofs[j])) return undefined;
  const [a, b] = [from.rows, to.rows];
  let [work, square, largest] = [0, 0, 0];
  for (let j = 0; j < m; j++) {
    const turn = a[4 * m + j];
    work += turn * (b[j] - a[j]);
    square += turn * turn;
  }
  const rise = square > 0 ? work / square : 0;
  for (const v of a) largest = Math.max(largest, Math.abs(v));
  const lever = leverAt(rise);
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < m; j++) {
      let moved = 0;
      for (let k = 0; k < 6; k++) moved += lever[6 * i + k] * a[k * m + j];
      if (!(Math.abs(moved - b[i * m + j]) <= SAME_ROWS * largest)) return undefined;
    }
  }
  return rise;
}

/** The flexibility at a point that lies higher by so much. */
function raised(F: Float64Array, rise: number): Float64Array {
  const lever = leverAt(rise);
  return sixBy(lever, transposed(sixBy(lever, F, 6)), 6); // F symmetric
}

function leverAt(rise: number): Float64Array {
  return leverRows([0, 0, rise]);
}

/** On the base: the exact flexibility of all modes left out, less that of the Ritz vectors beyond them. */
export function remaindersOf(
  frame: Omit<ReducedFrame, "remainder" | "seats">,
  seats: readonly Seat[],
): Float64Array[] {
  if (seats.length === 0) return [];
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
