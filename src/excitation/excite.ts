/** Everything that shakes the frame, from the file's propulsion and the frame's mass. */

import { inputError } from "../errors.ts";
import type { FrameFile } from "../frame/types.ts";
import type { ExcitationDef } from "../frame/types-flight.ts";
import type { Rotor } from "../model/types.ts";
import { unbalanceCases } from "./cases.ts";
import { mixRows, mixWeights, outsideBand, speedGrid } from "./mix.ts";
import { inPercent, orderForces } from "./orders.ts";
import { motorSpeeds } from "./speeds.ts";
import { spreadWeights } from "./spread.ts";
import type { Excitation } from "./types.ts";

/** A ripple beyond this is worth a word: 1 to 5 % is usual, up to 10 % near arms; common practice, no source. */
const LARGE_RIPPLE = 0.3;

/**
 * undefined for a frame without propulsion.
 *
 * @param mass of the whole craft, kg
 * @throws InputError when every force is zero, for a motor that does not exist, or when full speed does
 * not lift the craft
 */
export function excite(
  file: FrameFile,
  rotors: readonly Rotor[],
  mass: number,
): Excitation | undefined {
  const { propulsion, excitation } = file;
  if (!propulsion || rotors.length === 0) return undefined;
  const speeds = motorSpeeds(propulsion, mass, rotors.length);
  const orders = orderForces(propulsion, excitation, speeds, rotors[0].rotatingMass);
  if (orders.length === 0) {
    throw inputError(
      "excitation",
      "every force is set to zero, so nothing shakes the frame; leave out the fields you do not know",
    );
  }
  const { cases, warnings } = unbalanceCases(excitation, propulsion, rotors, speeds);
  const { name, rows } = mixRows(file.flightMix, speeds);
  const grid = speedGrid(speeds);
  const nominalWeights = mixWeights(rows, grid);
  return {
    speeds,
    orders,
    cases,
    bladePass: propulsion.propeller.blades,
    mixName: name,
    mix: rows,
    motorSpread: excitation.motorSpread,
    grid,
    weights: spreadWeights(grid, nominalWeights, excitation.motorSpread),
    nominalWeights,
    warnings: [
      ...speeds.warnings,
      ...largeRipples(excitation),
      ...warnings,
      ...outsideBand(rows, grid),
    ],
  };
}

/** Slips such as 0.5 for half a per cent. */
function largeRipples(e: ExcitationDef): string[] {
  const fields = [
    "bladeDifference",
    "thrustRipple",
    "torqueRipple",
    "thrustRippleDouble",
    "torqueRippleDouble",
  ] as const;
  return fields
    .filter((field) => e[field] > LARGE_RIPPLE)
    .map(
      (field) =>
        `"${field}" in excitation is ${inPercent(e[field])}, where 1 to 10 % is usual; a bare number is a share: write 0.03 or "3 %" for three per cent`,
    );
}

/** The highest frequency at which anything shakes, Hz. */
export function highestFrequency({ orders, speeds }: Excitation): number {
  return (Math.max(...orders.map((o) => o.order)) * speeds.full) / (2 * Math.PI);
}

/** Modes are not asked to reach beyond this, Hz. */
const MOST_REACH = 2000;

/**
 * How far modes should reach, Hz: the highest frequency of the orders up to blade pass, at most 2 kHz.
 * What shakes faster, twice blade pass and the file's own orders beyond blade pass, does not ask for
 * more modes: above 2 kHz neither a mesh of the usual cells says much nor the sensor, which is run with
 * a low-pass of some hundred Hz to 1 kHz (common practice, no source). Where every order lies beyond
 * blade pass, the lowest of them counts.
 */
export function reachWanted({ orders, speeds, bladePass }: Excitation): number {
  const multiples = orders.map((o) => o.order);
  const low = multiples.filter((m) => m <= bladePass);
  const multiple = low.length > 0 ? Math.max(...low) : Math.min(...multiples);
  return Math.min((multiple * speeds.full) / (2 * Math.PI), MOST_REACH);
}
