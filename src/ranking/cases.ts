/** What a place reads when one propeller is worse than the others. */

import { UNIT_UNBALANCE } from "../excitation/orders.ts";
import type { UnbalanceCase } from "../excitation/types.ts";
import type { BareFrame } from "../response/bare-frame.ts";
import { harmonics } from "../response/harmonic.ts";
import { readPlace } from "../response/reading.ts";
import { packHarmonics } from "../response/shaken.ts";
import { ownPowerGain } from "../sensing/own-low-pass.ts";
import { type Assessed, sense } from "./assess.ts";
import type { Instruments } from "./instruments.ts";
import type { CaseReading } from "./types.ts";

/**
 * Every case of the excitation for every place, with the motor at which it is worst there. Rotors never
 * share a phase, so with P_r the power of a unit unbalance on rotor r a case reads the sum of U_r^2 P_r
 * in place of the normal unbalance.
 */
export function casesOf(
  bare: BareFrame,
  instruments: Instruments,
  places: readonly Assessed[],
): CaseReading[][] {
  const { cases } = bare.h.excitation;
  if (cases.length === 0) return places.map(() => []);
  const perRotor = unitFrames(bare);
  const gains = { ...instruments, ...unitGains(bare, instruments) };
  return places.map((p) => {
    const unit = perRotor.map((frame) => sense(frame, gains, readPlace(frame, p.place)).gyro ** 2);
    const rest = restPower(bare, p);
    return cases.map((c) => worstOf(bare, c, unit, rest));
  });
}

/** The bare frame shaken by a unit unbalance on one rotor alone, one frame for each rotor. */
function unitFrames(bare: BareFrame): BareFrame[] {
  const { mesh, modes, rigidShapes, h } = bare;
  const excitation = { ...h.excitation, orders: [UNIT_UNBALANCE] };
  const all = harmonics(mesh, modes, rigidShapes, h.rotors, h.residuals, excitation);
  return h.rotors.map((_, rotor) => {
    const one = { ...all, responses: all.responses.filter((r) => r.rotor === rotor) };
    return { ...bare, h: one, motions: packHarmonics(one) };
  });
}

/** The chips' gains at once per turn, whether or not the normal state has such an order. */
function unitGains({ h }: BareFrame, { sensors }: Instruments) {
  const turns = h.excitation.grid.map((speed) => (UNIT_UNBALANCE.order * speed) / (2 * Math.PI));
  const gain = (own: number) => [turns.map((f) => ownPowerGain(own, f))];
  return {
    gyroGain: gain(sensors.gyro.bandwidth),
    accelGain: gain(sensors.accelerometer.bandwidth),
  };
}

/** Mean-square gyro reading of all orders but the normal unbalance. */
function restPower({ h }: BareFrame, { sensed }: Assessed): number {
  const { weights } = h.excitation;
  return h.orders.reduce(
    (sum, order, o) =>
      order.name === UNIT_UNBALANCE.name
        ? sum
        : sum + sensed.gyroPower[o].reduce((t, p, s) => t + weights[s] * p, 0),
    0,
  );
}

function worstOf(
  { h }: BareFrame,
  { name, text, variants }: UnbalanceCase,
  unit: readonly number[],
  rest: number,
): CaseReading {
  const anywhere = variants.length > 1;
  const readings = variants.map(({ rotor, unbalance }) => ({
    motor: h.rotors[rotor].name,
    gyro: Math.sqrt(unit.reduce((sum, p, r) => sum + p * unbalance[r] ** 2, rest)),
  }));
  return { name, text, anywhere, ...readings.reduce((a, b) => (b.gyro > a.gyro ? b : a)) };
}
