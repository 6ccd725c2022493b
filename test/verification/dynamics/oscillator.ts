/**
 * One degree of freedom through the whole path: a block that can only move along x, on a spring, shaken
 * by its motor and read by a sensor board.
 *
 * Damping in the program is structural: a mode's stiffness is lambda (1 + i eta). A viscous damper c
 * adds i c omega = i k 2 zeta r at r = omega/omega_n. The two are the same at one frequency when
 * eta = 2 zeta r, so every row of a viscous table is a frame of its own with that loss factor.
 */

import { type Analysis, analyse } from "../../../src/analyse.ts";
import {
  block,
  deck,
  HOVER,
  here,
  naturalFrequency,
  type Oscillator,
  read,
  TEN_HERTZ,
} from "./block.ts";

const G = 9.80665;

/**
 * The loss factor in two parts, one of the spring and one of the whole assembly, which add; a quarter
 * goes to the assembly because a file allows no part more than 3.
 */
function damped(frame: object, lossFactor: number): object {
  return { ...frame, assemblyLossFactor: lossFactor / 4 };
}

function springBlock(o: Oscillator, lossFactor: number, fullSpeed: number, excitation: object) {
  const guided = ["y", "z", "rx", "ry", "rz"];
  const spring = { between: ["foot", "ground"], x: `${o.k} N/m`, lossFactor: 0.75 * lossFactor };
  const frame = block(o, guided, fullSpeed, excitation);
  return damped({ ...frame, springs: { spring } }, lossFactor);
}

/** m, of the board on a plate at full speed, from what its accelerometer reads (g rms). */
function amplitude({ ranking }: Analysis, plate: string, omega: number): number {
  const place = ranking?.candidates.find((c) => c.candidate.name === plate);
  if (!place) throw new Error(`no reading on the ${plate}`);
  const rms = place.accelTotal[place.accelTotal.length - 1];
  return (rms * Math.SQRT2 * G) / omega ** 2;
}

const solve = (frame: object) => analyse(read(frame), { modes: 3 });

/** A side force of 1 % of the thrust, once per turn. */
const SIDE_FORCE = { orders: [{ order: 1, of: "side force", fraction: 0.01 }] };

/** N at full speed: thrust is weight in hover and grows with the square of the speed. */
const sideForce = (m: number) => (0.01 * m * G) / HOVER ** 2;

/** k X / F at r = omega/omega_n. */
export function magnification(r: number, lossFactor: number, o = TEN_HERTZ): number {
  const f = r * naturalFrequency(o);
  const X = amplitude(solve(springBlock(o, lossFactor, f, SIDE_FORCE)), "deck", 2 * Math.PI * f);
  return (o.k * X) / sideForce(o.m);
}

/** X (m) under a rotating unbalance U (kg m). */
export function unbalanceAmplitude(
  r: number,
  lossFactor: number,
  U: number,
  o = TEN_HERTZ,
): number {
  const f = r * naturalFrequency(o);
  const frame = springBlock(o, lossFactor, f, { unbalance: `${U} kg m` });
  return amplitude(solve(frame), "deck", 2 * Math.PI * f);
}

/**
 * Amplitude of a tray over that of the deck it rides on: the tray hangs on the deck by a spring along x
 * and weighs o.m; the deck, free to move along x and as heavy, is shaken by the motor.
 */
export function transmissibility(r: number, lossFactor: number, o = TEN_HERTZ): number {
  const f = r * naturalFrequency(o);
  const frame = block(o, ["y", "z", "rx", "ry", "rz"], f, SIDE_FORCE);
  const joint = {
    plates: ["deck", "tray"],
    at: [0, 0],
    footprint: "20 mm",
    stiffness: { x: `${o.k} N/m` },
    lossFactor: 0.75 * lossFactor,
  };
  const analysis = solve(
    damped(
      {
        ...frame,
        plates: { deck: deck(0), tray: deck(20) },
        points: { ...frame.points, cargo: [0, 0, 20] },
        links: { ...frame.links, cargo: { point: "cargo", plate: "tray", footprint: "20 mm" } },
        joints: { mount: joint },
        bodies: { ...frame.bodies, cargo: { mass: `${o.m} kg`, on: "cargo" } },
        candidates: { deck: here("deck"), tray: here("tray") },
      },
      lossFactor,
    ),
  );
  const [above, below] = ["tray", "deck"].map((p) => amplitude(analysis, p, 2 * Math.PI * f));
  return above / below;
}

/** The block without damping, for sweeps, with its side force (N) per (speed in rad/s)^2. */
export function undampedBlock(o: Oscillator) {
  const fn = naturalFrequency(o);
  const file = read(springBlock(o, 0, fn, SIDE_FORCE));
  return { file, forcePerSpeedSquared: sideForce(o.m) / (2 * Math.PI * fn) ** 2 };
}

/** Hz, by the eigen-solver. */
export function firstFrequency(o: Oscillator): number {
  const frame = springBlock(o, 0, naturalFrequency(o), SIDE_FORCE);
  return solve(frame).modes.described[0].frequency;
}
