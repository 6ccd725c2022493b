/** A ranking written by hand, to go with the analysis of `fixture.ts`. Invented numbers. */

import { leverArm } from "../../../src/attitude/lever-arm.ts";
import { boxInertia } from "../../../src/element/rigid-mass.ts";
import type { Burden, FilterBurden } from "../../../src/filter/burden-types.ts";
import type {
  Cause,
  Flag,
  MapPlace,
  MountRow,
  RankedCandidate,
  Ranking,
} from "../../../src/ranking/types.ts";
import { USE_WEIGHTS } from "../../../src/ranking/use.ts";
import { MOUNT_MOTIONS } from "../../../src/response/mount-frequencies.ts";
import { HOSTILE, RPM } from "./fixture.ts";

const LOW_PASS: Burden = {
  attainable: true,
  lowPass: { order: 2, cutOff: 90.06 },
  notches: [],
  delay: 2.5379e-3,
  lag: 0.3189,
  groupDelay: 2.4981e-3,
  delayMostOfFlight: 2.6e-3,
  residual: 0.9655,
  residualOfLines: [0.9615, 0.0136],
  residualOfNoise: 0.0864,
  mostFrom: "once per turn",
};

const NOTCHES: Burden = {
  ...LOW_PASS,
  lowPass: undefined,
  notches: [1, 3],
  delay: 1.7172e-3,
  lag: 0.2158,
  residual: 0.4014,
};

export const BURDEN: FilterBurden = { raw: 10.6, without: LOW_PASS, with: NOTCHES };

/** Out of reach of any low-pass, within reach with notches. */
export const HOPELESS: FilterBurden = {
  raw: 300,
  without: { ...LOW_PASS, attainable: false, residual: 1.3123 },
  with: { ...NOTCHES, lowPass: { order: 1, cutOff: 823 } },
};

export const CAUSES: readonly Cause[] = [
  {
    mode: 1,
    frequency: 131.4,
    modeName: "arms flap, all together",
    parts: [
      { name: "left arm", share: 0.42 },
      { name: HOSTILE, share: 0.3 },
    ],
    remedy: "arms 20 % thicker raise that frequency by up to 24 %",
    order: "unbalance",
    share: 0.5,
    rpm: 7884,
    met: false,
  },
  {
    mode: 2,
    frequency: 205.2,
    modeName: "top bends",
    parts: [],
    remedy: "",
    order: "torque ripple",
    share: 0.3,
    rpm: 12312,
    met: true,
  },
  {
    mode: 0,
    frequency: 0,
    modeName: "the whole craft moves as one",
    parts: [],
    remedy: "",
    order: "unbalance",
    share: 0.1,
    rpm: 0,
    met: false,
  },
];

export function ranked(
  name: string,
  place: number,
  gyro: number,
  flags: readonly Flag[] = [],
): RankedCandidate {
  const spectrum = Float64Array.of(gyro, 2 * gyro, gyro);
  const sensed = 0.9 * gyro;
  const x = place === 1 ? 0.005 : -0.098;
  return {
    candidate: {
      name,
      plate: 0,
      x: 0,
      y: 0,
      side: place === 1 ? 1 : -1,
      holes: [],
      footprint: 6e-3,
      cg: [0, 0, 0.01],
      chip: [0, 0, 0.01],
      stack: { mass: 9e-3, inertia: boxInertia(9e-3, 0.03, 0.03, 0.015) },
      designed: place === 1,
      named: true,
      note: "",
    },
    plate: HOSTILE,
    place,
    tied: false,
    found: place !== 1,
    sensed: { gyro: sensed, accel: 0.4, gyroAtHover: sensed / 4 },
    score: 10 * (place - 1),
    scoreParts: { gyro: 1, accelerometer: 2, tilt: 3 },
    filter: place === 1 ? BURDEN : HOPELESS,
    delayOver: { without: 1.1e-3 * (place - 1), with: 0.25e-3 * (place - 1) },
    leverArm: leverArm([x, 0, 0.01]),
    couplings: [{ axis: "roll", frequency: 47.4, mode: 3, ratio: 1.1, gain: 0.9 }],
    rectified: { gyro: 0.006, accelerometer: 0.026, tilt: 0.0262 },
    clipping: {
      gyro: { axis: 0, speed: 100 * RPM, peak: 171, range: 2000, share: 0.0855, clipped: false },
      levelling: { axis: 2, speed: 90 * RPM, peak: 4, range: 16, share: 0.25, clipped: false },
    },
    cases: [
      {
        name: "one bad propeller",
        anywhere: true,
        text: "one is nicked",
        motor: HOSTILE,
        gyro: 1.34 * sensed,
      },
      {
        name: "lost balance",
        text: "a tip is gone",
        motor: "left motor",
        anywhere: true,
        gyro: 12.3 * sensed,
      },
    ],
    gyro,
    gyroAxes: [gyro, 0, 0],
    gyroAtHover: gyro / 4,
    fast: { flight: 0.1, power: 0.5 },
    gyroRange: [0.8 * sensed, 1.3 * sensed],
    accel: 0.5,
    accelAxes: [0, 0, 0.5],
    decibel: 20 * Math.log10(gyro / 3.1),
    accelDecibel: 0,
    fromCg: Math.abs(x),
    fromCg3d: Math.hypot(x, 0.01),
    flags,
    causes: CAUSES,
    motion: [
      {
        mode: 1,
        frequency: 131.4,
        rotation: 10,
        displacement: 1,
        rotationShare: 1,
        displacementShare: 1,
        calmestShare: 0.2,
      },
    ],
    spectra: [{ order: "unbalance", gyro: spectrum, accel: spectrum }],
    passed: [],
    gyroTotal: spectrum,
    accelTotal: spectrum,
  };
}

/** The lowest motion first, as far apart as a soft mount has them. */
const MOTIONS = MOUNT_MOTIONS.map((motion, i) => ({
  motion,
  frequency: 50 + 13.2 * i,
  shares: Float64Array.from(MOUNT_MOTIONS, (_, j) => +(i === j)),
}));

export const MOUNTS: readonly MountRow[] = [
  { name: "screwed down", gyro: 2.79, accel: 0.4, filter: BURDEN, flags: [] },
  {
    name: "silicone grommets, usual",
    modes: MOTIONS,
    gyro: 0.123,
    accel: 0.0265,
    filter: HOPELESS,
    flags: [
      {
        kind: "isolators too soft",
        hard: false,
        text: "five lie below; take stiffer ones (now 6)",
      },
      { kind: "isolators do not isolate", hard: false, text: "the bounce lies above" },
    ],
  },
];

export const MAP_PLACES: readonly MapPlace[] = [
  [HOSTILE, 0.008, -0.008],
  [HOSTILE, 0, 0.008],
  ["top", 0, 0],
  [HOSTILE, 0, -0.008],
].map(([plate, x, y], i) => ({
  plate: String(plate),
  side: i === 2 ? -1 : 1,
  x: Number(x),
  y: Number(y),
  gyro: 3.14159265 + i,
  accel: 0.5,
  delayWithout: 2.5e-3,
  delayWith: 1.7e-3,
  attainable: i !== 1,
  tilt: Math.PI / 90,
  score: i - 1,
  avoid: i === 3,
  ...(i === 1 && { inTheWay: "=plate", patternShare: 0.4 }),
}));

export const ranking: Ranking = {
  candidates: [
    ranked("centre", 1, 3.1),
    ranked(HOSTILE, 2, 314.159, [
      { kind: "cantilevered", hard: true, text: `"${HOSTILE}" reaches 98 mm past its support` },
      { kind: "far from the centre of gravity", hard: false, text: "98 mm behind the centre" },
    ]),
  ],
  use: "both",
  weights: USE_WEIGHTS.both,
  controlBandwidth: 40,
  residual: 1,
  mounts: MOUNTS,
  map: { pitch: 8e-3, places: MAP_PLACES },
  foldings: {
    gyro: [],
    accelerometer: [
      { order: 3, speeds: [10000 * RPM, 20000 * RPM], lines: [500, 1000], shown: [500, 0] },
    ],
  },
  overhangs: [],
  crossings: [
    {
      mode: 2,
      frequency: 1234.5,
      modeName: `"${HOSTILE}" bends`,
      order: "unbalance",
      multiple: 1,
      speed: 10000 * RPM,
      rpm: 10000,
      fromHover: -0.08,
      nearHover: true,
    },
  ],
  tieBand: 1,
  frequencyBand: 0.07,
  notes: ["no soft mount is in the figures"],
  verdict: {
    headline: `Put the stack at "centre", not at "${HOSTILE}".`,
    sentences: ["So."],
    remarks: [`Mind "${HOSTILE}".`],
  },
};
