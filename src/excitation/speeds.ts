/** Hover and full speed from mass and propulsion. */

import type { PropulsionDef } from "../frame/types.ts";
import type { Speeds } from "./types.ts";

/** Standard gravity, m/s^2, and air at sea level, kg/m^3 (ICAO standard atmosphere). */
export const GRAVITY = 9.80665;
export const AIR_DENSITY = 1.225;

/** The band considered begins at this share of hover, or at the idle speed where it is given. */
export const LOW_SHARE = 0.75;

const rpm = (omega: number) => (omega * 60) / (2 * Math.PI);

/** k in T = k omega^2 (N s^2): CT rho D^4/(2 pi)^2, from T = CT rho n^2 D^4 with n in rev/s. */
export function thrustFactor(thrustCoefficient: number, diameter: number): number {
  return (thrustCoefficient * AIR_DENSITY * diameter ** 4) / (2 * Math.PI) ** 2;
}

/**
 * @param mass of the whole craft, kg
 * @param motors how many share the lift
 */
export function motorSpeeds(p: PropulsionDef, mass: number, motors: number): Speeds {
  const weight = (mass * GRAVITY) / motors;
  // A hover speed that is given says more about the propeller than a coefficient from a table.
  const k =
    p.speeds.hover !== undefined
      ? weight / p.speeds.hover ** 2
      : thrustFactor(p.propeller.thrustCoefficient, p.propeller.diameter);
  const hover = Math.sqrt(weight / k);
  const full = p.speeds.full ?? p.loadedSpeedFraction * p.motor.kv * p.cells * p.cellVoltage;
  const low = Math.min(p.speeds.idle ?? LOW_SHARE * hover, hover);
  const notes = [
    p.speeds.hover !== undefined
      ? "hover speed: given in the file; the propeller's thrust follows from it and the weight"
      : `hover speed: thrust = weight, T = CT rho n^2 D^4 with CT ${p.propeller.thrustCoefficient} and air at ${AIR_DENSITY} kg/m3`,
    p.speeds.full !== undefined
      ? "full speed: given in the file"
      : `full speed: ${p.loadedSpeedFraction} x KV x ${p.cells} cells x ${p.cellVoltage} V`,
    p.speeds.idle !== undefined
      ? "lowest speed: the idle speed in the file"
      : `lowest speed: ${LOW_SHARE} x hover (common practice, no source)`,
  ];
  if (full < 1.05 * hover) {
    notes.push(
      `full speed (${Math.round(rpm(full))} rpm) leaves no room above hover (${Math.round(rpm(hover))} rpm): check mass, KV, cells and propeller`,
    );
  }
  return {
    low,
    hover,
    full: Math.max(full, 1.05 * hover),
    hoverThrust: weight,
    thrustFactor: k,
    fullThrust: k * full * full,
    thrustToWeight: (k * full * full) / weight,
    notes,
  };
}
