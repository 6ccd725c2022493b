/**
 * What an accelerometer reads along x forward, y RIGHT, z DOWN, as flight mechanics has its axes. The
 * program's y and z point the other way: every vector goes in and comes out with y and z negated, half
 * a turn about x.
 */

import { type RigidMotion, specificForce } from "../../../src/attitude/specific-force.ts";
import { type Attitude, apparentAttitude, gravityInBody } from "../../../src/attitude/tilt.ts";
import type { Vec3 } from "../../../src/model/types.ts";
import type { Check } from "../case.ts";
import { digits, inDegrees } from "./response-checks.ts";

export const DEGREE = Math.PI / 180;
export const ZERO: Vec3 = [0, 0, 0];
export const LEVEL: Attitude = { roll: 0, pitch: 0 };

export const SOURCE =
  "Second derivative of the sensor's path (rotation matrices) less gravity in 30-digit arithmetic";
export const MODEL =
  "f = a + alpha x r + omega x (omega x r) - g along x forward, y right, z down; " +
  "apparent roll (right side down) and pitch (nose up) from its direction.";

export const aft = (mm: number): Vec3 => [-mm * 1e-3, 0, 0];
export const below = (mm: number): Vec3 => [0, 0, mm * 1e-3];

/** Rates about the three axes, deg/s in, rad/s out. */
export const rate = (roll: number, pitch: number, yaw: number): Vec3 => [
  roll * DEGREE,
  pitch * DEGREE,
  yaw * DEGREE,
];

/** fx fy fz, apparent roll and pitch in degrees; all along x forward, y right, z down. */
export function readingOf(motion: RigidMotion, r: Vec3, attitude: Attitude): number[] {
  const f = specificForce(turnedMotion(motion), turned(r), gravityInBody(attitude));
  const { roll, pitch } = apparentAttitude(f);
  return [...turned(f), inDegrees(roll), inDegrees(pitch)];
}

/** Half a turn about x: from y right, z down to y left, z up, and back. */
export function turned([x, y, z]: Vec3): Vec3 {
  return [x, -y, -z];
}

export function turnedMotion({ acceleration, omega, alpha }: RigidMotion): RigidMotion {
  return { acceleration: turned(acceleration), omega: turned(omega), alpha: turned(alpha) };
}

export function readingChecks(where: string, references: readonly string[]): Check[] {
  return references.map((reference, i) =>
    i < 3
      ? digits(`f${"xyz"[i]}${where}`, "m/s^2", reference)
      : digits(`apparent ${i === 3 ? "roll" : "pitch"}${where}`, "deg", reference),
  );
}
