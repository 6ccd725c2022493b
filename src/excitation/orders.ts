/** The harmonic forces of one rotor, each growing with the square of its speed. */

import type { ExcitationDef, PropulsionDef } from "../frame/types-flight.ts";
import { AIR_DENSITY } from "./speeds.ts";
import type { OrderForce, Speeds } from "./types.ts";

/** Share of the ideal induced power in what a small propeller takes; common practice, no source. */
const FIGURE_OF_MERIT = 0.6;

/**
 * Residual unbalance of a rotor, kg m: U = m e with e = G/omega, the balance grade G in mm/s at full
 * speed (ISO 21940-11:2016, definition of the grade). The force U omega^2 then grows with the square
 * of the speed, because the unbalance itself stays.
 */
export function residualUnbalance(mass: number, grade: number, fullSpeed: number): number {
  return (mass * grade * 1e-3) / fullSpeed;
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

/** @param rotatingMass bell, propeller and nut of one rotor, kg */
export function orderForces(
  p: PropulsionDef,
  e: ExcitationDef,
  speeds: Speeds,
  rotatingMass: number,
): OrderForce[] {
  const k = speeds.thrustFactor;
  const torque = k * torquePerThrust(k, p.propeller.diameter);
  const blades = p.propeller.blades;
  const U = e.unbalance ?? residualUnbalance(rotatingMass, e.balanceGrade, speeds.full);
  const gmm = (U * 1e6).toPrecision(3);
  const share = (f: number) => `${Number((100 * f).toPrecision(3))} %`;
  const orders: OrderForce[] = [
    {
      name: "unbalance",
      order: 1,
      kind: "side force",
      coefficient: U,
      source:
        e.unbalance !== undefined
          ? `U = ${gmm} g mm per rotor, given in the file`
          : `U = ${gmm} g mm per rotor: balance grade G ${e.balanceGrade} at full speed (ISO 21940-11 law; the grade is common practice, no source)`,
    },
    {
      name: "blade pass",
      order: blades,
      kind: "thrust",
      coefficient: e.thrustRipple * k,
      source: `${share(e.thrustRipple)} of the thrust at ${blades} per turn (common practice, no source)`,
    },
    {
      name: "blade-pass torque",
      order: blades,
      kind: "torque",
      coefficient: e.torqueRipple * torque,
      source: `${share(e.torqueRipple)} of the propeller's torque at ${blades} per turn; torque by momentum theory with figure of merit ${FIGURE_OF_MERIT} (common practice, no source)`,
    },
    ...e.orders.map((o) => ({
      name: `order ${o.order} (${o.of})`,
      order: o.order,
      kind: o.of,
      coefficient: o.fraction * (o.of === "torque" ? torque : k),
      source: `${share(o.fraction)} of the ${o.of === "torque" ? "propeller's torque" : "thrust"}, given in the file`,
    })),
  ];
  return orders.filter((o) => o.coefficient > 0);
}
