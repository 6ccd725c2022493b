/**
 * Modes that the rate loop can drive: structural modes that turn the stack, low enough for the loop.
 *
 * On a rigid craft the loop's gain falls as bandwidth/f: a loop that flies makes up for the motors' lag with
 * lead about there, and counting no lag above it is on the safe side. A mode k adds to what the motors'
 * differential thrust (or torque) turns at the chip, at its own frequency,
 *
 *   (theta_k F_k / eta_k) / (theta_r F_r)   of the rigid craft's own turning,
 *
 * theta the chip's rotation and F the modal force of a roll, pitch or yaw command. Modes as close as a pair
 * of a symmetric frame ring together, however they share the motion out; so all modes are summed at the
 * frequency of one, as far as they are in quadrature, which only modes near their resonance are. The product
 * with the rigid craft's loop gain there is the gain at the resonance, before any filter: 1 is the limit of
 * stability when the phase is at its worst, 1/2 leaves the usual 6 dB. Below the bandwidth the loop's gain
 * is above 1 by design and the phase far from its worst, so modes there are left out.
 */

import type { CoupledModes } from "../response/coupled-modes.ts";
import type { Harmonics } from "../response/harmonic.ts";
import type { Place } from "../response/place.ts";
import { sixBy } from "../response/place.ts";

export interface LoopSettings {
  /** of the rate loop, Hz */
  readonly bandwidth: number;
  /** modes up to this frequency are looked at, Hz */
  readonly below: number;
  /** a rotor's drag moment over its thrust, m: a yaw command changes both */
  readonly torquePerThrust: number;
}

export interface LoopCoupling {
  readonly axis: "roll" | "pitch" | "yaw";
  /** of the coupled mode, Hz */
  readonly frequency: number;
  /** number among the elastic coupled modes, 1.. */
  readonly mode: number;
  /** what the mode turns over what the craft turns as a whole, at the resonance */
  readonly ratio: number;
  /** loop gain at the resonance before any filter */
  readonly gain: number;
}

const AXES = ["roll", "pitch", "yaw"] as const;

/** A mode that turns the chip less than this many times what the whole craft turns changes the loop little. */
const DOMINATES = 2;

/** Filters that leave the loop its phase take perhaps half of a mode this low: above this, nothing saves the place. */
export const UNSTABLE = 2;

/** The coupling that matters most, of those that outdo what the craft turns as a whole. */
export function mainCoupling(couplings: readonly LoopCoupling[]): LoopCoupling | undefined {
  return couplings.find((c) => c.ratio >= DOMINATES);
}

/** The liveliest mode between bandwidth and limit for each axis, largest gain first. */
export function loopCouplings(
  h: Harmonics,
  coupled: CoupledModes,
  rigid: number,
  place: Place,
  settings: LoopSettings,
): LoopCoupling[] {
  if (rigid < 6) return [];
  return AXES.flatMap((axis, a) => {
    const f = commandForces(h, coupled, place, a, settings.torquePerThrust);
    const turn = (k: number) => coupled.chip[6 * k + 3 + a];
    let whole = 0;
    for (let k = 0; k < rigid; k++) whole += turn(k) * f[k];
    if (!(Math.abs(whole) > 0)) return [];
    const found: LoopCoupling[] = [];
    for (let k = rigid; k < coupled.lambda.length; k++) {
      const frequency = Math.sqrt(coupled.lambda[k]) / (2 * Math.PI);
      if (frequency > settings.below) break;
      if (frequency < settings.bandwidth) continue;
      const ratio = Math.abs(resonance(coupled, rigid, k, (m) => turn(m) * f[m]) / whole);
      found.push({
        axis,
        frequency,
        mode: k - rigid + 1,
        ratio,
        gain: ratio * rigidGain(frequency, settings),
      });
    }
    return found.length > 0 ? [found.reduce((p, q) => (q.gain > p.gain ? q : p))] : [];
  }).sort((p, q) => q.gain - p.gain);
}

/** A mode without damping would ring without limit; metal alone has about this loss factor (from memory). */
const LEAST_LOSS = 1e-4;

/**
 * -Im of lambda_k sum of (theta F)_m/(lambda_m (1 + i eta_m) - lambda_k): what the elastic modes add in
 * quadrature at the frequency of mode k; of a mode alone theta F/eta.
 */
function resonance(
  { lambda, lossFactor }: CoupledModes,
  rigid: number,
  k: number,
  part: (mode: number) => number,
): number {
  let sum = 0;
  for (let m = rigid; m < lambda.length; m++) {
    const loss = lambda[m] * Math.max(lossFactor[m], LEAST_LOSS);
    sum += (part(m) * lambda[k] * loss) / ((lambda[m] - lambda[k]) ** 2 + loss ** 2);
  }
  return sum;
}

/** Loop gain of the rigid craft: 1 at the bandwidth, falling with the integration. */
export function rigidGain(f: number, { bandwidth }: Pick<LoopSettings, "bandwidth">): number {
  return bandwidth / f;
}

/**
 * Modal forces of a command about one axis: thrusts in proportion to the lever for roll and pitch; for yaw
 * every rotor's drag changes the same way about z, those that turn one way faster and with more thrust, the
 * others slower and with less.
 */
function commandForces(
  { rotors, loads }: Harmonics,
  { amplitudes, force, lambda }: CoupledModes,
  { psi, rest, stack }: Place,
  axis: number,
  torquePerThrust: number,
): Float64Array {
  const terms = psi.length / 6;
  const [cx, cy] = [0, 1].map((i) => rotors.reduce((s, r) => s + r.position[i], 0) / rotors.length);
  const load = new Float64Array(terms);
  const offset = new Float64Array(6);
  rotors.forEach((rotor, r) => {
    const [x, y] = [rotor.position[0] - cx, rotor.position[1] - cy];
    const command = [
      { thrust: y, torque: 0 },
      { thrust: -x, torque: 0 },
      { thrust: -rotor.spin / torquePerThrust, torque: 1 },
    ][axis];
    for (const name of ["thrust", "torque"] as const) {
      const size = command[name];
      if (size === 0) continue;
      for (let t = 0; t < terms; t++) load[t] += size * loads[r][name][t];
      if (!stack) continue;
      sixBy(stack.W, rest[r][name], 1).forEach((u, i) => {
        offset[i] += size * u;
      });
    }
  });
  return lambda.map((_, k) => {
    let sum = 0;
    for (let t = 0; t < terms; t++) sum += amplitudes[k * terms + t] * load[t];
    for (let i = 0; i < 6; i++) sum += force[6 * k + i] * offset[i];
    return sum;
  });
}
