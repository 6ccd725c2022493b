/**
 * What an accelerometer reads on a rigid body that moves and turns.
 *
 * Body axes: x forward, y left, z up. An accelerometer measures specific force, acceleration less
 * gravity: f = a - g. At rest and level it reads (0, 0, +9.81 m/s^2), the support that carries it.
 * (A sensor that reports g - a has the opposite sign throughout: negate f as a whole.)
 */

import { notFinite, throwIfAny } from "../check-number.ts";
import type { Vec3 } from "../model/types.ts";

/** The motion of a rigid body at an instant; all vectors along the body axes. */
export interface RigidMotion {
  /** of the reference point (the centre of gravity) against the ground, m/s^2: zero in hover */
  readonly acceleration: Vec3;
  /** rate of rotation, rad/s, right-handed: +x right side down, +y nose down, +z nose to the left */
  readonly omega: Vec3;
  /** its rate of change, rad/s^2 */
  readonly alpha: Vec3;
}

/**
 * Acceleration of the point r of the body: a + alpha x r + omega x (omega x r).
 *
 * The last term points towards the axis of rotation and vanishes on it; its sign does not depend on
 * the sense of rotation. (Kinematics of a rigid body, any textbook.)
 *
 * @param r from the reference point, m
 * @returns m/s^2
 * @throws InputError for a component that is not finite
 */
export function accelerationAt(motion: RigidMotion, r: Vec3): Vec3 {
  const { acceleration, omega, alpha } = motion;
  checkVectors({ acceleration, omega, alpha, r });
  const [x, y, z] = leverAcceleration(omega, alpha, r);
  return [acceleration[0] + x, acceleration[1] + y, acceleration[2] + z];
}

/** alpha x r + omega x (omega x r), m/s^2: what the place r adds; unchecked. */
export function leverAcceleration(omega: Vec3, alpha: Vec3, r: Vec3): Vec3 {
  const [t, c] = [cross(alpha, r), cross(omega, cross(omega, r))];
  return [t[0] + c[0], t[1] + c[1], t[2] + c[2]];
}

/**
 * Specific force at the point r: acceleration there less gravity.
 *
 * @param r from the reference point, m
 * @param gravity along the body axes, pointing down, m/s^2: see `gravityInBody`
 * @returns m/s^2
 * @throws InputError for a component that is not finite
 */
export function specificForce(motion: RigidMotion, r: Vec3, gravity: Vec3): Vec3 {
  checkVectors({ gravity });
  const a = accelerationAt(motion, r);
  return [a[0] - gravity[0], a[1] - gravity[1], a[2] - gravity[2]];
}

/** Throws InputError with every component that is not finite, named by vector and axis. */
export function checkVectors(vectors: Readonly<Record<string, Vec3>>): void {
  throwIfAny(
    Object.entries(vectors).flatMap(([name, v]) =>
      v.flatMap((value, i) => notFinite(`${name}.${"xyz"[i]}`, "the component", value, "")),
    ),
  );
}

function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
