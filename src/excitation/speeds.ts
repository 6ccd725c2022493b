/** Hover and full speed from mass and propulsion. */

import { inputError } from "../errors.ts";
import type { PropulsionDef } from "../frame/types-flight.ts";
import type { Speeds } from "./types.ts";

/** Standard gravity, m/s^2, and air at sea level, kg/m^3 (ICAO standard atmosphere). */
export const GRAVITY = 9.80665;
export const AIR_DENSITY = 1.225;

/** The band considered begins at this share of hover, or at the idle speed where it is given. */
const LOW_SHARE = 0.75;

/** Less thrust to weight than this is worth a word; common practice, no source. */
const LITTLE_THRUST = 1.5;

const rpm = (omega: number) => Math.round((omega * 60) / (2 * Math.PI));

/** k in T = k omega^2 (N s^2): CT rho D^4/(2 pi)^2, from T = CT rho n^2 D^4 with n in rev/s. */
export function thrustFactor(thrustCoefficient: number, diameter: number): number {
  return (thrustCoefficient * AIR_DENSITY * diameter ** 4) / (2 * Math.PI) ** 2;
}

/**
 * @param mass of the whole craft, kg
 * @param motors how many share the lift
 * @throws InputError when full speed does not lift the craft
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
  if (!(full > hover)) {
    throw inputError(
      "propulsion",
      `the craft cannot fly: ${Math.round(mass * 1e3)} g need ${rpm(hover)} rpm to hover, but full speed is ${rpm(full)} rpm; check masses, "kv", "cells" and the propeller's "diameter" (5 alone means 5 mm; write "5 in")`,
    );
  }
  const thrustToWeight = (full / hover) ** 2;
  const idle = p.speeds.idle;
  const low = idle !== undefined && idle <= hover ? idle : LOW_SHARE * hover;
  return {
    low,
    hover,
    full,
    hoverThrust: weight,
    fullThrust: k * full * full,
    thrustFactor: k,
    thrustToWeight,
    notes: [
      p.speeds.hover !== undefined
        ? "hover speed: given in the file; the propeller's thrust follows from it and the weight"
        : `hover speed: thrust = weight, T = CT rho n^2 D^4 with CT ${p.propeller.thrustCoefficient} and air at ${AIR_DENSITY} kg/m3`,
      p.speeds.full !== undefined
        ? "full speed: given in the file"
        : `full speed: ${p.loadedSpeedFraction} x KV x ${p.cells} cells x ${p.cellVoltage} V`,
      low === idle
        ? "lowest speed: the idle speed in the file"
        : `lowest speed: ${LOW_SHARE} x hover (common practice, no source)`,
      `the front left propeller turns ${p.frontLeftTurns} seen from above, neighbours the other way`,
    ],
    warnings: [
      ...(thrustToWeight < LITTLE_THRUST
        ? [
            `full thrust is only ${thrustToWeight.toPrecision(2)} times the weight; check masses, "kv", "cells" and the propeller`,
          ]
        : []),
      ...(idle !== undefined && idle > hover
        ? [
            `the idle speed in the file (${rpm(idle)} rpm) is above hover (${rpm(hover)} rpm); ${rpm(low)} rpm is taken as the lowest speed`,
          ]
        : []),
    ],
  };
}
