/**
 * Units with their size in SI by definition: the international inch of 25.4 mm, the avoirdupois pound
 * of 0.45359237 kg, standard gravity of 9.80665 m/s^2. The first of each kind is the one of bare numbers.
 */

import { type Kind, mapQuantities } from "./quantities.ts";

const INCH = 0.0254;
const FOOT = 12 * INCH;
const POUND = 0.45359237;
const OUNCE = POUND / 16;
const POUND_FORCE = POUND * 9.80665;

type Units = readonly (readonly [unit: string, si: number])[];

// biome-ignore format: one kind, one row
export const UNITS: Readonly<Record<Kind, Units>> = {
  length: [["mm", 1e-3], ["cm", 1e-2], ["m", 1], ["um", 1e-6], ["in", INCH], ["ft", FOOT], ["mil", INCH / 1000]],
  mass: [["g", 1e-3], ["kg", 1], ["mg", 1e-6], ["oz", OUNCE], ["lb", POUND]],
  angle: [["deg", Math.PI / 180], ["rad", 1]],
  modulus: [["GPa", 1e9], ["MPa", 1e6], ["kPa", 1e3], ["Pa", 1], ["N/mm^2", 1e6], ["lbf/in^2", POUND_FORCE / INCH ** 2], ["psi", POUND_FORCE / INCH ** 2]],
  density: [["g/cm^3", 1e3], ["kg/m^3", 1], ["mg/mm^3", 1e3], ["lb/in^3", POUND / INCH ** 3], ["oz/in^3", OUNCE / INCH ** 3], ["lb/ft^3", POUND / FOOT ** 3]],
  stiffness: [["N/mm", 1e3], ["N/m", 1], ["kN/m", 1e3], ["lbf/in", POUND_FORCE / INCH]],
  rotationalStiffness: [["N m/rad", 1], ["N mm/rad", 1e-3], ["N m/deg", 180 / Math.PI], ["lbf in/rad", POUND_FORCE * INCH]],
  frequency: [["Hz", 1], ["kHz", 1e3]],
  force: [["N", 1], ["kN", 1e3], ["lbf", POUND_FORCE]],
  inertia: [["g mm^2", 1e-9], ["kg m^2", 1], ["g cm^2", 1e-7], ["oz in^2", OUNCE * INCH ** 2], ["lb in^2", POUND * INCH ** 2]],
  secondMoment: [["mm^4", 1e-12], ["cm^4", 1e-8], ["m^4", 1], ["in^4", INCH ** 4]],
  area: [["mm^2", 1e-6], ["cm^2", 1e-4], ["m^2", 1], ["in^2", INCH ** 2]],
  bendingRigidity: [["N m^2", 1], ["N mm^2", 1e-6], ["lbf in^2", POUND_FORCE * INCH ** 2]],
  massPerLength: [["kg/m", 1], ["g/mm", 1], ["g/cm", 0.1], ["oz/in", OUNCE / INCH], ["lb/ft", POUND / FOOT]],
  inertiaPerLength: [["kg m", 1], ["g mm", 1e-6], ["lb in", POUND * INCH]],
};

/** Every quantity of the frame with a unit written out, chosen anew for each by the numbers in turn. */
export function inOtherUnits<T extends object>(frame: T, choices: readonly number[]): T {
  let next = 0;
  return mapQuantities(frame, (value, kind) => {
    const units = UNITS[kind];
    const [unit, si] = units[choices[next++ % choices.length] % units.length];
    return `${(value * units[0][1]) / si} ${unit}`;
  });
}
