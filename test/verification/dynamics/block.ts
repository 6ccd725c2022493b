/**
 * A block on springs as a frame file: a stiff deck with ballast, an arm and a motor, guided so that it
 * moves only where a case wants it to, so that a textbook's mass on a spring goes through every stage.
 */

import { parseFrame } from "../../../src/frame/read.ts";

/** Motor and propeller, as a share of all mass; the rest is ballast. */
const ROTOR = 0.05;
/** Speed in hover as a share of full speed. */
export const HOVER = 0.2;
/** Every force that the program assumes set to zero, motors turning alike: a case names its own. */
export const STILL = {
  balanceGrade: 0,
  bladeDifference: 0,
  thrustRipple: 0,
  torqueRipple: 0,
  thrustRippleDouble: 0,
  torqueRippleDouble: 0,
  motorSpread: 0,
};

/** The stiffest material a file may name, GPa. */
const STIFFEST = 1e5;

/** A mass (kg) on a spring (N/m). */
export interface Oscillator {
  readonly m: number;
  readonly k: number;
}

/** 1 kg at 10 Hz. */
export const TEN_HERTZ: Oscillator = { m: 1, k: (2 * Math.PI * 10) ** 2 };

/** Hz. */
export const naturalFrequency = ({ m, k }: Oscillator) => Math.sqrt(k / m) / (2 * Math.PI);

/** A square plate of 60 mm at a height (mm). */
export const deck = (z: number) => ({
  material: "stiff",
  thickness: "10 mm",
  z,
  outline: [
    [30, 30],
    [-30, 30],
    [-30, -30],
    [30, -30],
  ],
});

/** A place for a board on a plate. */
export const here = (plate: string) => ({ plate, at: [0, 0], holes: { spacing: "20 mm" } });

/** A board of no weight at a place, so that the places read the bare structure. */
export const feather = (at: readonly [x: number, y: number]) => ({
  mass: "1e-6 g",
  size: [20, 20, 4],
  plate: "deck",
  at,
  height: "8 mm",
  holes: { spacing: "20 mm" },
});

/**
 * A deck with an arm and a motor at its end.
 *
 * @param fullSpeed turns/s
 */
export function block(
  { m, k }: Oscillator,
  guided: readonly string[],
  fullSpeed: number,
  excitation: object,
) {
  const speed = (share: number) => `${share * fullSpeed} cycle/s`;
  return {
    version: 1,
    name: "block on a spring",
    meshSize: "100 mm",
    beamTheory: "euler-bernoulli",
    materials: {
      // some 1e6 times as stiff as the spring and of no weight to speak of; stiffer, and rounding shows
      stiff: {
        kind: "isotropic",
        E: `${Math.min(k / 4, STIFFEST)} GPa`,
        nu: 0.3,
        density: `${1e-7 * m} g/cm^3`,
        lossFactor: 0,
      },
    },
    plates: { deck: deck(0) },
    arms: {
      arm: {
        material: "stiff",
        thickness: "10 mm",
        root: [30, 0],
        tip: [50, 0],
        width: 20,
        elements: 1,
        joint: { kind: "one piece", plate: "deck" },
      },
    },
    points: { foot: [0, 0, 0] },
    links: { foot: { point: "foot", plate: "deck", footprint: "20 mm" } },
    supports: { guide: { point: "foot", fix: guided } },
    bodies: { ballast: { mass: `${(1 - ROTOR) * m} kg`, on: "foot" } },
    propulsion: {
      motor: { mass: `${0.9 * ROTOR * m} kg`, cgHeight: 0, kv: "1000 rpm/V" },
      propeller: {
        mass: `${0.1 * ROTOR * m} kg`,
        diameter: "5 in",
        blades: 3,
        planeHeight: 0,
        thrustCoefficient: 0.15,
      },
      cells: 4,
      speeds: { idle: speed(HOVER / 2), hover: speed(HOVER), full: speed(1) },
    },
    excitation: { ...STILL, ...excitation },
    stack: feather([0, 0]),
    candidates: { deck: here("deck") },
  };
}

export const read = (frame: object) => parseFrame(JSON.stringify(frame), "block.jsonc");
