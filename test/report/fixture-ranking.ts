/** A ranking of three places, written by hand; only the lever arms are the program's own. */

import { leverArm } from "../../src/attitude/lever-arm.ts";
import type { Excitation } from "../../src/excitation/types.ts";
import type { Burden, FilterBurden } from "../../src/filter/burden-types.ts";
import type { Candidate, Model } from "../../src/model/types.ts";
import type { ModeDescription } from "../../src/modes/types.ts";
import type {
  Cause,
  Crossing,
  MapPlace,
  ModalMotion,
  MountRow,
  PassedOrder,
  QuietMap,
  RankedCandidate,
  Ranking,
} from "../../src/ranking/types.ts";
import { USE_WEIGHTS } from "../../src/ranking/use.ts";
import { MOUNT_MOTIONS } from "../../src/response/mount-frequencies.ts";

/** True levels; the chips pass on nine tenths. */
const LEVELS = [2, 2.1, 12];
const PASSED = 0.9;

function burden(delay: number, more: Partial<Burden>): Burden {
  return {
    attainable: true,
    lowPass: undefined,
    notches: [],
    delay,
    lag: 2 * Math.PI * 30 * delay,
    groupDelay: delay,
    delayMostOfFlight: 1.1 * delay,
    residual: 0.95,
    residualOfLines: [0.9, 0.2],
    residualOfNoise: 0.1,
    mostFrom: "once per turn",
    ...more,
  };
}

/** The first as usual, the second so quiet that notches need nothing, the third out of a low-pass's reach. */
export const FILTERS: readonly FilterBurden[] = [
  {
    raw: 1.8,
    without: burden(0.0021, { lowPass: { order: 2, cutOff: 120 } }),
    with: burden(0.0012, { notches: [1] }),
  },
  {
    raw: 1.89,
    without: burden(0.00234, { lowPass: { order: 1, cutOff: 111 } }),
    with: burden(0, { mostFrom: "noise" }),
  },
  {
    raw: 10.8,
    without: burden(0.009, {
      attainable: false,
      lowPass: { order: 4, cutOff: 31 },
      residual: 3.21,
    }),
    with: burden(0.0055, { lowPass: { order: 4, cutOff: 61.5 }, notches: [1, 3] }),
  },
];

/** A resonance at 13 800 rpm on a rising floor. */
function readings({ grid, speeds }: Excitation, level: number): Float64Array {
  const rpm = (w: number) => (w * 30) / Math.PI;
  return grid.map(
    (w) => level * (w / speeds.hover) ** 2 * (1 + 6 / (1 + ((rpm(w) - 13_800) / 400) ** 2)),
  );
}

/** Four fifths of the power once per turn, the rest at three; the accelerometer in proportion. */
function passed(gyro: Float64Array): PassedOrder[] {
  return [0.8, 0.2].map((share, i) => ({
    multiple: [1, 3][i],
    gyro: gyro.map((v) => share * (PASSED * v) ** 2),
    accel: gyro.map((v) => share * (0.35 * v) ** 2),
  }));
}

function motion(modes: readonly ModeDescription[], share: number): ModalMotion[] {
  return modes.map(({ number, frequency }) => ({
    mode: number,
    frequency,
    rotation: 40 * share,
    displacement: share,
    rotationShare: share,
    calmestShare: 0.1,
    displacementShare: share,
  }));
}

function causes(mode: ModeDescription): Cause[] {
  return [
    {
      mode: mode.number,
      frequency: mode.frequency,
      modeName: mode.name,
      order: "unbalance",
      share: 0.62,
      parts: mode.shares.map((s) => ({ name: s.part, share: s.strain })),
      remedy: "plates 20 % thicker raise that frequency by up to 12 %",
      rpm: 13_800,
      met: true,
    },
    {
      mode: 0,
      frequency: 0,
      modeName: "the whole craft moves as one",
      order: "unbalance",
      share: 0.2,
      parts: [],
      remedy: "",
      rpm: 0,
      met: false,
    },
  ];
}

function ranked(
  candidate: Candidate,
  i: number,
  plate: string,
  modes: readonly ModeDescription[],
  excitation: Excitation,
): RankedCandidate {
  const level = LEVELS[i];
  const fromCg = [0.0052, 0.0052, 0.0701][i];
  const arm = leverArm([[-0.003, 0.003, -fromCg][i], i === 2 ? 0 : 0.00425, -0.01]);
  const filter = FILTERS[i];
  return {
    candidate,
    plate,
    place: [1, 1, 3][i],
    tied: i < 2,
    found: i === 1,
    sensed: { gyro: PASSED * level, accel: 0.35 * level, gyroAtHover: 0.2 * level },
    score: [0.35, 0.12, 17.3][i],
    scoreParts: { gyro: 20 * Math.log10(level / 2), accelerometer: 0, tilt: 1 },
    filter,
    delayOver: {
      without: filter.without.delay - FILTERS[0].without.delay,
      with: filter.with.delay - FILTERS[1].with.delay,
    },
    leverArm: arm,
    couplings: [{ axis: "roll", frequency: 47, mode: 1, ratio: 1.1, gain: 0.3 }],
    rectified: { gyro: 0.01 * level, accelerometer: 0.02 * level, tilt: Math.atan(0.02 * level) },
    clipping: {
      gyro: {
        axis: 0,
        speed: excitation.speeds.full,
        peak: 100 * level,
        range: 2000,
        share: 0.05 * level,
        clipped: false,
      },
      accelerometer: {
        axis: 2,
        speed: excitation.speeds.full,
        peak: 2 * level,
        range: 16,
        share: level / 8,
        clipped: level > 8,
      },
    },
    cases: [
      {
        name: "one bad propeller",
        text: "one made-up propeller",
        motor: "front left motor",
        anywhere: true,
        gyro: [2.5, 2.45, 15][i],
      },
      {
        name: "lost balance",
        text: "made up",
        motor: "rear right motor",
        anywhere: true,
        gyro: 8 * level,
      },
    ],
    gyro: level,
    gyroAxes: [0.8 * level, 0.6 * level, 0.01],
    accel: 0.4 * level,
    accelAxes: [0.1, 0.1, 0.38 * level],
    gyroAtHover: level / 4,
    fast: { flight: 0.1, power: 0.5 },
    gyroRange: [0.8 * level, 1.4 * level],
    decibel: 20 * Math.log10(level / 2),
    accelDecibel: 20 * Math.log10(level / 2),
    fromCg,
    fromCg3d: [0.0112, 0.0142, 0.0712][i],
    flags:
      i === 2
        ? [
            {
              kind: "cantilevered",
              hard: true,
              text: `"${plate}" reaches 50 mm past its last support`,
            },
          ]
        : [],
    causes: causes(modes[[1, 1, 2][i]]),
    motion: motion(modes, [0.11, 0.12, 1][i]),
    spectra: [],
    passed: passed(readings(excitation, level)),
    gyroTotal: readings(excitation, level),
    accelTotal: readings(excitation, 0.4 * level),
  };
}

/**
 * Five places where the stack fits, the quietest of them on the overhang, and two where it does not: one of
 * them with the best score, one too narrow for the screws.
 */
function quietMap(plate: string): QuietMap {
  const place = (x: number, y: number, more: Partial<MapPlace>): MapPlace => ({
    plate,
    side: 1,
    x,
    y,
    gyro: 2 + 20 * Math.abs(x),
    accel: 0.7 + 5 * Math.abs(y),
    delayWithout: 0.002 + 0.01 * Math.abs(x),
    delayWith: 0.0012,
    attainable: true,
    tilt: Math.hypot(x, y),
    score: 1 + 10 * Math.abs(x),
    avoid: false,
    ...more,
  });
  return {
    pitch: 0.01,
    places: [
      place(-0.06, 0, { gyro: 1.5, score: 0.1, avoid: true }),
      place(-0.01, 0, {}),
      place(0, -0.01, { side: -1 }),
      place(0, 0.01, { score: 0.9 }),
      place(0.04, 0, { attainable: false, delayWithout: 0.00876 }),
      place(0.02, 0.02, { gyro: 3, score: 0, inTheWay: `the plate "${plate}"` }),
      place(-0.08, 0, { gyro: 5.6, score: 8, patternShare: 0.4 }),
    ],
  };
}

function mounts(): MountRow[] {
  const modes = MOUNT_MOTIONS.map((name, k) => ({
    motion: name,
    frequency: 52 + 10 * k,
    shares: Float64Array.from(MOUNT_MOTIONS, (_, i) => +(i === k)),
  }));
  const flag = { kind: "isolators too soft", hard: false, text: "made up" } as const;
  return [
    { name: "screwed down", gyro: 1.8, accel: 0.7, filter: FILTERS[0], flags: [] },
    { name: "made-up pads", modes, gyro: 0.9, accel: 0.31, filter: FILTERS[1], flags: [flag] },
  ];
}

function crossing(mode: ModeDescription, order: string, multiple: number, hover: number): Crossing {
  const rpm = (60 * mode.frequency) / multiple;
  const speed = (rpm * Math.PI) / 30;
  const fromHover = speed / hover - 1;
  return {
    mode: mode.number,
    frequency: mode.frequency,
    modeName: mode.name,
    order,
    multiple,
    speed,
    rpm,
    fromHover,
    nearHover: Math.abs(fromHover) <= 0.1,
  };
}

export function madeUpRanking(
  model: Model,
  modes: readonly ModeDescription[],
  excitation: Excitation,
): Ranking {
  const plate = model.plates[0].name;
  const [best, , third] = model.candidates.map((c) => c.name);
  const meets = (mode: number, order: string, multiple: number) =>
    crossing(modes[mode - 1], order, multiple, excitation.speeds.hover);
  return {
    candidates: model.candidates.map((c, i) => ranked(c, i, plate, modes, excitation)),
    use: "both",
    weights: USE_WEIGHTS.both,
    controlBandwidth: 30,
    residual: 1,
    mounts: mounts(),
    map: quietMap(plate),
    overhangs: [
      {
        plate,
        direction: "rear",
        length: 0.05,
        thickness: 0.002,
        supportAt: -0.04,
        endAt: -0.09,
        mass: 0.012,
        mode: 3,
        frequency: 450,
        flagged: true,
        text: `"${plate}" reaches 50 mm past its last support`,
      },
    ],
    crossings: [meets(3, "blade pass", 3), meets(1, "unbalance", 1), meets(2, "unbalance", 1)],
    tieBand: 1,
    frequencyBand: 0.07,
    foldings: { gyro: [], accelerometer: [] },
    notes: ["made up"],
    verdict: {
      headline: `Put the stack at "${best}" on the plate "${plate}".`,
      sentences: [`Not at "${third}": cantilevered.`],
      remarks: [`Notches help at "${third}" most.`],
    },
  };
}
