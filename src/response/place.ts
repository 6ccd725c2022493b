/** Places of the frame as the forced response sees them: how each mode, force and load moves the seat. */

import { type Seat, seatMotion } from "../mesh/seat.ts";
import type { Vec3 } from "../model/types.ts";
import type { Harmonics } from "./harmonic.ts";
import { ROTOR_LOADS, type RotorLoadName } from "./load.ts";
import type { StackDynamics } from "./mount-stiffness.ts";
import type { SeatFlexibility } from "./residual.ts";
import { type StackCoordinates, stackCoordinates } from "./stack.ts";

/** A stack's seat on the bare frame; motions are those of the stack's centre of gravity. */
export interface Place {
  /** by elastic modes, then rigid motions, per unit amplitude (6 x terms, row-major) */
  readonly psi: Float64Array;
  /** static, by the modes left out: per rotor and unit load (6 each) ... */
  readonly rest: readonly Readonly<Record<RotorLoadName, Float64Array>>[];
  /** ... and for forces on the seat itself (6 x 6, row-major) */
  readonly flexibility: Float64Array;
  /** undefined: a massless reading point */
  readonly stack?: StackCoordinates;
  /** from the centre of gravity to the chip, m */
  readonly chip: Vec3;
}

/** What is to be mounted where. */
export interface Mounted {
  /** with the stack's centre of gravity as its point */
  readonly seat: Seat;
  readonly stack?: StackDynamics;
  readonly chip: Vec3;
}

/** @param flexibilityOf the bare frame's */
export function placesOf(
  h: Harmonics,
  flexibilityOf: SeatFlexibility,
  mounted: readonly Mounted[],
): Place[] {
  const psi = mounted.map(({ seat }) => seatTerms(h, seat));
  const flexibility = flexibilityOf(
    mounted.map((m) => m.seat),
    psi,
  );
  return mounted.map(({ seat, stack, chip }, i) => ({
    psi: psi[i],
    rest: restTerms(h, seat),
    flexibility: flexibility[i],
    ...(stack && { stack: stackCoordinates(stack) }),
    chip,
  }));
}

/** A point that reads the frame and weighs nothing. */
export function readingPoint(h: Harmonics, seat: Seat): Place {
  return {
    psi: seatTerms(h, seat),
    rest: restTerms(h, seat),
    flexibility: new Float64Array(36),
    chip: [0, 0, 0],
  };
}

/** The place on a frame all of whose natural frequencies are higher by this factor, mounts included. */
export function shiftedPlace(place: Place, factor: number): Place {
  const stiffer = factor * factor;
  const softer = (v: number) => v / stiffer;
  const { stack } = place;
  return {
    ...place,
    rest: place.rest.map(
      (loads) =>
        Object.fromEntries(
          Object.entries(loads).map(([name, u]) => [name, u.map(softer)]),
        ) as typeof loads,
    ),
    flexibility: place.flexibility.map(softer),
    ...(stack && { stack: { ...stack, kappa: stack.kappa.map((k) => k * stiffer) } }),
  };
}

function restTerms(h: Harmonics, seat: Seat): Place["rest"] {
  return h.residuals.map(
    (motions) =>
      Object.fromEntries(
        ROTOR_LOADS.map((name) => [name, seatMotion(seat, motions[name])]),
      ) as Place["rest"][number],
  );
}

function seatTerms(h: Harmonics, seat: Seat): Float64Array {
  const terms = h.shapes.length;
  const psi = new Float64Array(6 * terms);
  h.shapes.forEach((shape, t) => {
    const u = seatMotion(seat, shape);
    for (let i = 0; i < 6; i++) psi[i * terms + t] = u[i];
  });
  return psi;
}

/** Motion of the chip ux uy uz rx ry rz from that of the centre of gravity: (u + theta x r, theta), 6 x 6. */
export function leverRows([x, y, z]: Vec3): Float64Array {
  // biome-ignore format: a matrix, row by row
  return Float64Array.of(
    1, 0, 0, 0, z, -y,
    0, 1, 0, -z, 0, x,
    0, 0, 1, y, -x, 0,
    0, 0, 0, 1, 0, 0,
    0, 0, 0, 0, 1, 0,
    0, 0, 0, 0, 0, 1,
  );
}

/** C = A B for 6 x n, row-major. */
export function sixBy(A: Float64Array, B: Float64Array, n: number): Float64Array {
  const C = new Float64Array(6 * n);
  multiplySix(C, A, B, n);
  return C;
}

/** C := A B for 6 x n, row-major. */
export function multiplySix(C: Float64Array, A: Float64Array, B: Float64Array, n: number): void {
  C.fill(0);
  for (let i = 0; i < 6; i++) {
    for (let k = 0; k < 6; k++) {
      const a = A[6 * i + k];
      if (a === 0) continue;
      for (let j = 0; j < n; j++) C[i * n + j] += a * B[k * n + j];
    }
  }
}

/** A' of a 6 x 6 matrix. */
export function transposed(A: Float64Array): Float64Array {
  return A.map((_, i) => A[6 * (i % 6) + Math.floor(i / 6)]);
}
