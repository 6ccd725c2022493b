/** Ranked places made up from a few figures, for tests of what is said about them. */

import { leverArm } from "../../src/attitude/lever-arm.ts";
import { boxInertia } from "../../src/element/rigid-mass.ts";
import type { Burden } from "../../src/filter/burden-types.ts";
import type { LoopCoupling } from "../../src/ranking/control-band.ts";
import type { Flag, Overhang, RankedCandidate } from "../../src/ranking/types.ts";

export interface Made {
  readonly name: string;
  /** sensed, deg/s rms */
  readonly gyro: number;
  /** dB; by default the gyro's level */
  readonly score?: number;
  readonly tied?: boolean;
  readonly flags?: readonly Flag[];
  readonly designed?: boolean;
  readonly found?: boolean;
  readonly rigid?: boolean;
  readonly below?: boolean;
  /** ahead of the centre of gravity, mm */
  readonly ahead?: number;
  /** ms; none where the residual is out of reach */
  readonly delay?: number | "out of reach";
  readonly notched?: number | "out of reach";
  readonly couplings?: readonly LoopCoupling[];
}

export const CANTILEVERED: Flag = { kind: "cantilevered", hard: true, text: "reaches far" };
export const OFF: Flag = { kind: "pattern off the plate", hard: true, text: "does not fit" };
export const LOOP: Flag = { kind: "in the control band", hard: true, text: "a mode" };
export const FAR: Flag = { kind: "far from the centre of gravity", hard: false, text: "far" };

function burden(delay: number | "out of reach"): Burden {
  const reached = delay !== "out of reach";
  const seconds = reached ? delay * 1e-3 : 5e-3;
  return {
    attainable: reached,
    lowPass: seconds > 0 ? { order: 2, cutOff: 100 } : undefined,
    notches: [],
    delay: seconds,
    lag: 0,
    groupDelay: seconds,
    delayMostOfFlight: seconds,
    residual: 1,
    residualOfLines: [],
    residualOfNoise: 0,
    mostFrom: "noise",
  };
}

/** In order; levels against the quietest without a hard flag, or of all. */
export function ranked(made: readonly Made[]): RankedCandidate[] {
  const open = made.filter((m) => !(m.flags ?? []).some((f) => f.hard));
  const some = open.length > 0 ? open : made;
  const quietest = Math.min(...some.map((m) => m.gyro));
  const nothing = new Float64Array(0);
  const filters = made.map((m) => {
    const without = burden(m.delay ?? 2);
    return { raw: m.gyro, without, with: burden(m.notched ?? m.delay ?? 2) };
  });
  const quickest = Math.min(...some.map((m) => filters[made.indexOf(m)].without.delay));
  return made.map((m, i) => {
    const decibel = 20 * Math.log10(m.gyro / quietest);
    return {
      candidate: {
        name: m.name,
        plate: 0,
        x: 0,
        y: 0,
        side: m.below ? -1 : 1,
        holes: [],
        footprint: 6e-3,
        cg: [0, 0, 0],
        chip: [0, 0, 0],
        stack: { mass: 9e-3, inertia: boxInertia(9e-3, 0.03, 0.03, 0.015) },
        designed: m.designed ?? false,
        named: !m.found,
        note: "",
      },
      plate: "deck",
      place: m.tied ? 1 : i + 1,
      tied: m.tied ?? false,
      found: m.found ?? false,
      sensed: { gyro: m.gyro, accel: 1, gyroAtHover: m.gyro / 4 },
      score: m.score ?? decibel,
      scoreParts: { gyro: decibel, accelerometer: 0, tilt: 0 },
      filter: filters[i],
      delayOver: { without: filters[i].without.delay - quickest, with: 0 },
      leverArm: leverArm([(m.ahead ?? 0) * 1e-3, 0, 0]),
      couplings: m.couplings ?? [],
      rectified: { gyro: 0, accelerometer: 0, tilt: 0 },
      clipping: {},
      cases: [
        {
          name: "one bad propeller",
          text: "",
          motor: "rear left motor",
          anywhere: true,
          gyro: 2 * m.gyro,
        },
        {
          name: "lost balance",
          text: "",
          motor: "rear right motor",
          anywhere: true,
          gyro: 9 * m.gyro,
        },
      ],
      gyro: 1.2 * m.gyro,
      gyroAxes: [1.2 * m.gyro, 0, 0],
      accel: 1,
      accelAxes: [1, 0, 0],
      gyroAtHover: m.gyro / 4,
      fast: { flight: 0.1, power: 0.5 },
      gyroRange: [m.gyro, m.gyro],
      decibel,
      accelDecibel: 0,
      fromCg: 0,
      fromCg3d: 0,
      flags: m.flags ?? [],
      causes: [
        {
          mode: m.rigid ? 0 : 7,
          frequency: 181.4,
          modeName: "arms flap, all together",
          order: "unbalance",
          share: 0.62,
          parts: [{ name: "front left arm", share: 0.4 }],
          remedy: "arms 20 % thicker raise that frequency by up to 17 %",
          met: true,
          rpm: 10884,
        },
      ],
      motion: [],
      spectra: [],
      passed: [],
      gyroTotal: nothing,
      accelTotal: nothing,
    };
  });
}

export const OVERHANG: Overhang = {
  plate: "deck",
  direction: "rear",
  length: 0.09,
  thickness: 0.002,
  supportAt: -0.05,
  endAt: -0.14,
  mass: 0.03,
  mode: 3,
  frequency: 70,
  flagged: true,
  text: '"deck" reaches 90 mm past its last support to the rear',
};
