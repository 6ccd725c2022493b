/** The harmonic forces of one rotor, each growing with the square of its speed. */

import type { ExcitationDef, OrderDef, PropulsionDef } from "../frame/types-flight.ts";
import { AIR_DENSITY } from "./speeds.ts";
import type { OrderForce, Speeds } from "./types.ts";

/** Share of the ideal induced power in what a small propeller takes; common practice, no source. */
const FIGURE_OF_MERIT = 0.6;

/**
 * Where a blade's thrust acts, as a share of the radius. Blade element estimates of one station take
 * 0.7 to 0.75; from memory.
 */
const THRUST_RADIUS = 0.7;

const ASSUMED = "common practice, no source";

/** A force of this size per kg m of unbalance, to be scaled to the unbalance of each rotor. */
export const UNIT_UNBALANCE: OrderForce = {
  name: "unbalance",
  order: 1,
  kind: "side force",
  coefficient: 1,
  source: "1 kg m per rotor",
};

/**
 * Residual unbalance of a rotor, kg m: U = m e with e = G/omega, the balance grade G in mm/s at full
 * speed (ISO 21940-11:2016, definition of the grade). The force U omega^2 then grows with the square
 * of the speed, because the unbalance itself stays.
 */
export function residualUnbalance(mass: number, grade: number, fullSpeed: number): number {
  return (mass * grade * 1e-3) / fullSpeed;
}

/** Unbalance of a rotor in the normal state, kg m: the file's, or by its balance grade. */
export function normalUnbalance(e: ExcitationDef, mass: number, speeds: Speeds): number {
  return e.unbalance ?? residualUnbalance(mass, e.balanceGrade, speeds.full);
}

/**
 * Propeller torque per thrust, m: Q/T = P/(omega T) with P = T sqrt(T/(2 rho A))/FM (momentum
 * theory); independent of speed because T grows with omega^2.
 *
 * @param k in T = k omega^2, N s^2
 */
export function torquePerThrust(k: number, diameter: number): number {
  const area = (Math.PI / 4) * diameter ** 2;
  return Math.sqrt(k / (2 * AIR_DENSITY * area)) / FIGURE_OF_MERIT;
}

/** Moment in the propeller's plane per thrust that the blades do not share evenly, m: 0.7 R. */
export function momentPerThrust(diameter: number): number {
  return (THRUST_RADIUS * diameter) / 2;
}

/** g mm to three digits. */
export const inGmm = (U: number) => `${(U * 1e6).toPrecision(3)} g mm`;

/** Per cent to three digits. */
export const inPercent = (share: number) => `${Number((100 * share).toPrecision(3))} %`;

/**
 * The orders of the normal state, without those of size zero. Several may share a multiple of the
 * speed (`multiplesOf`).
 *
 * @param rotatingMass bell, propeller and nut of one rotor, kg
 */
export function orderForces(
  p: PropulsionDef,
  e: ExcitationDef,
  speeds: Speeds,
  rotatingMass: number,
): OrderForce[] {
  const k = speeds.thrustFactor;
  // N s^2 or N m s^2 of what each kind is a share of
  const whole = {
    thrust: k,
    "side force": k,
    torque: k * torquePerThrust(k, p.propeller.diameter),
    "rotating moment": k * momentPerThrust(p.propeller.diameter),
  };
  const blades = p.propeller.blades;
  const unbalance = normalUnbalance(e, rotatingMass, speeds);
  const ripple = (name: string, order: number, kind: "thrust" | "torque", fraction: number) => ({
    name,
    order,
    kind,
    coefficient: fraction * whole[kind],
    source: rippleSource(kind, order, fraction),
  });
  const orders: OrderForce[] = [
    {
      ...UNIT_UNBALANCE,
      coefficient: unbalance,
      source:
        e.unbalance !== undefined
          ? `U = ${inGmm(unbalance)} per rotor, given in the file`
          : `U = ${inGmm(unbalance)} per rotor: balance grade G ${e.balanceGrade} at full speed (ISO 21940-11 law; the grade is ${ASSUMED})`,
    },
    {
      name: "blade difference",
      order: 1,
      kind: "rotating moment",
      coefficient: e.bladeDifference * whole["rotating moment"],
      source: `${inPercent(e.bladeDifference)} of the thrust not shared evenly by the blades (${ASSUMED}), at ${THRUST_RADIUS} of the radius (usual in blade element estimates, from memory)`,
    },
    ripple("blade pass", blades, "thrust", e.thrustRipple),
    ripple("blade-pass torque", blades, "torque", e.torqueRipple),
    ripple("twice blade pass", 2 * blades, "thrust", e.thrustRippleDouble),
    ripple("twice blade-pass torque", 2 * blades, "torque", e.torqueRippleDouble),
    ...e.orders.map((o) => ({
      name: `order ${o.order} (${o.of})`,
      order: o.order,
      kind: o.of,
      coefficient: o.fraction * whole[o.of],
      source: `${inPercent(o.fraction)} of the ${shareOf(o)}, given in the file`,
    })),
  ];
  return orders.filter((o) => o.coefficient > 0);
}

function rippleSource(kind: "thrust" | "torque", order: number, fraction: number): string {
  const share = inPercent(fraction);
  if (kind === "thrust") return `${share} of the thrust at ${order} per turn (${ASSUMED})`;
  return `${share} of the propeller's torque at ${order} per turn; torque by momentum theory with figure of merit ${FIGURE_OF_MERIT} (${ASSUMED})`;
}

function shareOf({ of }: OrderDef): string {
  if (of === "torque") return "propeller's torque";
  return of === "rotating moment" ? `thrust at ${THRUST_RADIUS} of the radius` : "thrust";
}
