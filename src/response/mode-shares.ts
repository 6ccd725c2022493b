/** How much of a place's gyro noise each natural mode causes, with the stack in place. */

import type { Modes } from "../modes/types.ts";
import { type CoupledModes, coupledModes } from "./coupled-modes.ts";
import type { Harmonics } from "./harmonic.ts";
import { ofUnitAmplitude } from "./load.ts";
import { type Place, sixBy } from "./place.ts";

export interface ModeShares {
  readonly coupled: CoupledModes;
  /** number of rigid motions among the coupled modes; they come first */
  readonly rigid: number;
  /**
   * mean-square rotation rate over the flight mix ((deg/s)^2) of each mode as if it acted alone, by
   * order, as the chip passes it on; the rigid motions together at 0, then the elastic modes (each size 1 + elastic)
   */
  readonly power: readonly Float64Array[];
}

const DEGREE = Math.PI / 180;

/**
 * @param modes of the bare frame
 * @param passed share of the power that the chip's own low-pass passes, by order and speed; all where not given
 */
export function modeShares(
  h: Harmonics,
  modes: Modes,
  place: Place,
  passed?: readonly Float64Array[],
): ModeShares {
  const coupled = coupledModes(modes, place);
  const rigid = modes.rigid.length;
  const count = coupled.lambda.length - rigid;
  const power = h.orders.map(() => new Float64Array(1 + count));
  const { weights } = h.excitation;
  h.orders.forEach((force, order) => {
    const share = passed ? weights.map((w, s) => w * passed[order][s]) : weights;
    h.rotors.forEach((rotor, r) => {
      const bare = ofUnitAmplitude(force.kind, rotor.spin, (name) => h.loads[r][name]);
      const rest = ofUnitAmplitude(force.kind, rotor.spin, (name) => place.rest[r][name]);
      const f = modalForces(coupled, place, bare, rest);
      addPower(power[order], h, order, share, coupled, rigid, f);
    });
  });
  return { coupled, rigid, power };
}

/** Work of a unit load on each coupled mode: on the known modes, and through the modes left out. */
function modalForces(
  { amplitudes, force, lambda }: CoupledModes,
  { stack, psi }: Place,
  bare: { readonly re: Float64Array; readonly im: Float64Array },
  rest: { readonly re: Float64Array; readonly im: Float64Array },
) {
  const terms = psi.length / 6;
  const W = stack?.W ?? new Float64Array(36);
  const parts = [
    { load: bare.re, offset: sixBy(W, rest.re, 1) },
    { load: bare.im, offset: sixBy(W, rest.im, 1) },
  ];
  const [re, im] = parts.map(({ load, offset }) =>
    Float64Array.from(lambda, (_, k) => {
      let sum = 0;
      for (let t = 0; t < terms; t++) sum += amplitudes[k * terms + t] * load[t];
      for (let i = 0; i < 6; i++) sum += force[6 * k + i] * offset[i];
      return sum;
    }),
  );
  return { re, im };
}

function addPower(
  out: Float64Array,
  h: Harmonics,
  order: number,
  share: Float64Array,
  { lambda, lossFactor, chip }: CoupledModes,
  rigid: number,
  f: { readonly re: Float64Array; readonly im: Float64Array },
): void {
  const { grid } = h.excitation;
  const force = h.orders[order];
  for (let s = 0; s < grid.length; s++) {
    const omega = force.order * grid[s];
    const A = force.coefficient * grid[s] ** 2;
    const gain = (share[s] * (A * omega) ** 2) / (2 * DEGREE * DEGREE);
    if (gain === 0) continue;
    const whole = new Float64Array(6);
    for (let k = 0; k < lambda.length; k++) {
      const [dr, di] =
        k < rigid ? [-omega * omega, 0] : [lambda[k] - omega * omega, lambda[k] * lossFactor[k]];
      const d = dr * dr + di * di;
      if (k < rigid) {
        for (let i = 0; i < 3; i++) {
          const turn = (chip[6 * k + 3 + i] * dr) / d;
          whole[i] += turn * f.re[k];
          whole[3 + i] += turn * f.im[k];
        }
        continue;
      }
      const turns = chip[6 * k + 3] ** 2 + chip[6 * k + 4] ** 2 + chip[6 * k + 5] ** 2;
      out[1 + k - rigid] += (gain * turns * (f.re[k] ** 2 + f.im[k] ** 2)) / d;
    }
    out[0] += gain * whole.reduce((sum, v) => sum + v * v, 0);
  }
}
