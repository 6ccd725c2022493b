/**
 * A craft that hardly bends, shaken by its four motors: what its gyro and accelerometer read is then a
 * matter of forces, lever arms, mass and inertia, and can be worked out without any frame: rigid-craft.py.
 */

import { analyse } from "../../../src/analyse.ts";
import type { RankedCandidate } from "../../../src/ranking/types.ts";
import { type Case, type Check, type Family, within } from "../case.ts";
import { feather, read, STILL } from "./block.ts";

/** Turns/s; with 300 speeds evenly between them, every whole number of turns/s is one of them. */
const LOWEST = 100;
const FULL = 399;
/** The speed of the cases of one force. */
const AT = 200;

interface Forces {
  readonly unbalance?: string;
  readonly thrustRipple?: string;
  readonly torqueRipple?: string;
}

const UNBALANCE = "0.02 g mm";
const THRUST_RIPPLE = "5 %";
const TORQUE_RIPPLE = "50 %";

const turns = (perSecond: number) => `${perSecond} cycle/s`;

/** Structure without weight to speak of; all mass is in the ballast, the motors and the propellers. */
function craft({ unbalance = "0 g mm", thrustRipple = "0 %", torqueRipple = "0 %" }: Forces) {
  return {
    version: 1,
    name: "rigid craft",
    meshSize: "100 mm",
    beamTheory: "euler-bernoulli",
    materials: {
      stiff: {
        kind: "isotropic",
        E: "1e5 GPa",
        nu: 0.3,
        density: "1e-7 g/cm^3",
        lossFactor: 0,
      },
    },
    plates: {
      deck: {
        material: "stiff",
        thickness: "40 mm",
        z: 0,
        outline: [
          [40, 40],
          [-40, 40],
          [-40, -40],
          [40, -40],
        ],
      },
    },
    arms: {
      arm: {
        material: "stiff",
        thickness: "40 mm",
        root: [36, 30],
        tip: [85, 65],
        copies: "all four corners",
        width: 40,
        elements: 1,
        joint: { kind: "one piece", plate: "deck" },
      },
    },
    points: { below: [0, 0, -30] },
    links: { below: { point: "below", plate: "deck", footprint: "40 mm" } },
    bodies: {
      ballast: {
        mass: "400 g",
        inertia: { xx: "5e-4 kg m^2", yy: "9e-4 kg m^2", zz: "11e-4 kg m^2" },
        on: "below",
      },
    },
    propulsion: {
      motor: { mass: 30, bellMass: 16, cgHeight: 30, size: [28, 20], kv: "1800 rpm/V" },
      propeller: { mass: 5, diameter: 127, blades: 3, planeHeight: 40, thrustCoefficient: 0.15 },
      cells: 4,
      speeds: { idle: turns(LOWEST), full: turns(FULL) },
    },
    excitation: { ...STILL, unbalance, thrustRipple, torqueRipple },
    flightMix: [
      { speed: turns(160), weight: 3 },
      { speed: turns(300), weight: 1 },
    ],
    // a gyro that passes everything on and does not feel acceleration
    sensors: { gyro: { bandwidth: "1 MHz", accelerationSensitivity: 0 } },
    stack: feather([12, 7]),
    candidates: {
      board: { plate: "deck", at: [12, 7], height: 8, holes: { spacing: "20 mm" } },
    },
  };
}

function reading(forces: Forces): RankedCandidate {
  const { ranking } = analyse(read(craft(forces)), { modes: 6 });
  const board = ranking?.candidates.find((c) => c.candidate.name === "board");
  if (!board) throw new Error("the board is not ranked");
  return board;
}

const BODY =
  "400 g of ballast (5, 9 and 11 x 1e-4 kg m^2 about x, y, z) 30 mm below the middle of a stiff deck " +
  "without weight; at x = +-85 mm, y = +-65 mm motors of 30 g at a height of 30 mm (cylinders of 28 mm " +
  "by 20 mm; about the shaft only the 14 g that do not turn) and propellers of 127 mm, 5 g at 40 mm " +
  "(m D^2/24 about x and y, nothing about z). So m = 0.54 kg, centre of gravity at z = -14.074074 mm, " +
  "I = 1.507857870e-3, 2.327857870e-3, 2.708488e-3 kg m^2. The sensor sits at 12, 7, 28 mm.";

const EULER =
  "Newton and Euler for a rigid body: with a force F and a couple C at p from the centre of gravity, " +
  "alpha = I^-1 (p x F + C), rate alpha/omega, acceleration F/m + alpha x r over 9.80665 m/s^2; rms is " +
  "amplitude/sqrt 2; the powers of axes and motors add";
const THRUST = "T = k Omega^2, k = CT rho D^4/(2 pi)^2, CT = 0.15, rho = 1.225 kg/m^3";
const COMPUTED = "evaluated apart from the program, ten digits";

const STIFF =
  "The craft still bends a little, up to 3e-6 of its motion at blade pass and 2e-7 once per turn; with a " +
  "tenth of the modulus it is ten times as much. The arithmetic of so stiff a craft rounds by 1e-7.";

function atOneSpeed(
  name: string,
  words: { readonly shaken: string; readonly law: string },
  forces: Forces,
  [gyro, accel]: readonly [string, string],
  tolerance: number,
): Case {
  const check = (quantity: string, unit: string, reference: string): Check => ({
    quantity: `${quantity} at ${AT} turns/s`,
    unit,
    reference,
    tolerance: within(tolerance),
  });
  return {
    name: `Rigid craft shaken by ${name}`,
    source: `${EULER}. ${words.law}; ${COMPUTED}.`,
    model: `${BODY} ${words.shaken}`,
    why: STIFF,
    checks: [check("gyro", "deg/s rms", gyro), check("accelerometer", "g rms", accel)],
    solve: () => {
      const { gyroTotal, accelTotal } = reading(forces);
      return [gyroTotal[AT - LOWEST], accelTotal[AT - LOWEST]];
    },
  };
}

const IN_FLIGHT: readonly (readonly [quantity: string, unit: string, reference: string])[] = [
  ["gyro", "deg/s rms", "0.1876812949"],
  ["gyro at the quiet end of its range", "deg/s rms", "0.1876812949"],
  ["gyro at the loud end of its range", "deg/s rms", "0.1876812949"],
  ["gyro about x", "deg/s rms", "0.1172701121"],
  ["gyro about y", "deg/s rms", "0.09060467114"],
  ["gyro about z", "deg/s rms", "0.1151641560"],
  ["accelerometer", "g rms", "0.05955903471"],
  ["accelerometer along x", "g rms", "0.03156353132"],
  ["accelerometer along y", "g rms", "0.03782259836"],
  ["accelerometer along z", "g rms", "0.03347346948"],
];

const OVER_THE_MIX: Case = {
  name: "Rigid craft in flight",
  source:
    `${EULER}, with the three forces of the cases at one speed. The power of a rate goes with Omega^2, that of an ` +
    "acceleration with Omega^4; over a normal distribution of mean N and deviation s N their means are " +
    `N^2 (1 + s^2) and N^4 (1 + 6 s^2 + 3 s^4); ${COMPUTED}.`,
  model: `${BODY} Unbalance, thrust ripple and torque ripple of the cases at one speed together; three quarters of the flight around 160 turns/s, a quarter around 300, each with the spread of s = 0.03 that the program gives a row of the table.`,
  why: "The craft still bends by a few 1e-6 of its motion; speeds of less than 1e-6 of the flight, left out at the quiet end, are as much. The range is that of all natural frequencies being up to 7 % off, which a rigid craft does not notice. The sum over 300 speeds in place of the integral is exact to 1e-14.",
  headline: true,
  checks: IN_FLIGHT.map(([quantity, unit, reference]) => ({
    quantity: `${quantity} over the flight`,
    unit,
    reference,
    tolerance: within(1e-5),
  })),
  solve: () => {
    const { gyro, gyroRange, gyroAxes, accel, accelAxes } = reading({
      unbalance: UNBALANCE,
      thrustRipple: THRUST_RIPPLE,
      torqueRipple: TORQUE_RIPPLE,
    });
    return [gyro, ...gyroRange, ...gyroAxes, accel, ...accelAxes];
  },
};

export const RIGID_CRAFT: Family = {
  title: "Rigid craft shaken by its motors",
  source: "Newton and Euler, closed form",
  cases: [
    atOneSpeed(
      "unbalance",
      {
        shaken: `Every rotor has an unbalance of ${UNBALANCE}.`,
        law: "F = U Omega^2 turns in the propeller's plane, omega = Omega",
      },
      { unbalance: UNBALANCE },
      ["0.1185086943", "0.02023595450"],
      5e-7,
    ),
    atOneSpeed(
      "thrust ripple",
      {
        shaken: `Thrust ripple of ${THRUST_RIPPLE} at the pass of three blades.`,
        law: `F = 0.05 T along z, omega = 3 Omega, ${THRUST}`,
      },
      { thrustRipple: THRUST_RIPPLE },
      ["0.1160858968", "0.04218468803"],
      5e-6,
    ),
    atOneSpeed(
      "torque ripple",
      {
        shaken: `Torque ripple of ${TORQUE_RIPPLE} at the pass of three blades.`,
        law: `C = 0.5 Q about z, omega = 3 Omega; momentum theory, P = Q Omega = T sqrt(T/(2 rho A))/0.6 with A = pi D^2/4, so Q = T sqrt(k/(2 rho A))/0.6 (the figure of merit is common practice, no source); ${THRUST}`,
      },
      { torqueRipple: TORQUE_RIPPLE },
      ["0.07897872460", "0.007361673999"],
      1e-5,
    ),
    OVER_THE_MIX,
  ],
};
