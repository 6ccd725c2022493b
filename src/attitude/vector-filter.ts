/**
 * A filter that keeps the vertical as a unit vector u along the body axes, turned by the gyro about all
 * axes and drawn towards the direction of the accelerometer's reading f with the time constant tau:
 *
 *   u' = -(omega + c) x u,   c = (f/|f|) x u/tau
 *
 * So do filters that keep a quaternion or a matrix, as far as the vertical is concerned (R. Mahony,
 * T. Hamel, J.-M. Pflimlin, "Nonlinear complementary filters on the special orthogonal group", IEEE
 * Trans. Automatic Control 53, 2008, without the bias; from memory). In a frame that stands still the
 * gyro's part is gone and w, the same vector there, follows F, the direction of f there:
 *
 *   w' = (F - (F . w) w)/tau
 */

import { toLocal } from "../element/rotation.ts";
import type { Vec3 } from "../model/types.ts";
import type { Instant, SampledSegment } from "./sampled-motion.ts";
import { leverAcceleration } from "./specific-force.ts";
import { upWith } from "./static-false-attitude.ts";
import { toStill } from "./turning.ts";

/**
 * The estimate after every pair of steps, from level, of a sensor at r on a craft whose thrust carries
 * it, 1 g along z.
 *
 * Classic Runge-Kutta steps over the pairs: the error falls with the fourth power of their length.
 *
 * @param r from the centre of gravity, m
 * @param tau s; a pair lasts a fraction of it
 * @returns u along the body axes, at the start and the pairs' ends of each segment in turn
 */
export function vectorEstimates(
  motion: readonly SampledSegment[],
  r: Vec3,
  tau: number,
): readonly Vec3[] {
  let w: Vec3 = [0, 0, 1];
  return motion.flatMap(({ instants, step }) => {
    const F = instants.map((instant) => directionRead(instant, r));
    const u = [inBody(w, instants[0])];
    for (let i = 2; i < instants.length; i += 2) {
      w = follow(w, F[i - 2], F[i - 1], F[i], (2 * step) / tau);
      u.push(inBody(w, instants[i]));
    }
    return u;
  });
}

/** Of f, in the frame that stands still; up along z where there is no force. */
function directionRead({ omega, alpha, axes }: Instant, r: Vec3): Vec3 {
  return toStill(unit(upWith(leverAcceleration(omega, alpha, r))), axes);
}

const inBody = (w: Vec3, { axes }: Instant): Vec3 => {
  const u = toLocal(w, axes);
  return [u[0], u[1], u[2]];
};

/** w over a pair of length x tau, with F at its start, middle and end. */
function follow(w: Vec3, F0: Vec3, F1: Vec3, F2: Vec3, x: number): Vec3 {
  const k1 = pull(F0, w);
  const k2 = pull(F1, along(w, k1, x / 2));
  const k3 = pull(F1, along(w, k2, x / 2));
  const k4 = pull(F2, along(w, k3, x));
  const end = along(along(along(along(w, k1, x / 6), k2, x / 3), k3, x / 3), k4, x / 6);
  return unit(end);
}

/** F - (F . w) w */
function pull(F: Vec3, w: Vec3): Vec3 {
  return along(F, w, -(F[0] * w[0] + F[1] * w[1] + F[2] * w[2]));
}

function along(a: Vec3, b: Vec3, share: number): Vec3 {
  return [a[0] + share * b[0], a[1] + share * b[1], a[2] + share * b[2]];
}

function unit([x, y, z]: Vec3): Vec3 {
  const size = Math.hypot(x, y, z);
  return size === 0 ? [0, 0, 1] : [x / size, y / size, z / size];
}
