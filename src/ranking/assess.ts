/** What the stack reads at each place, and what the chips and filters make of it. */

import { falseTiltAt } from "../attitude/false-tilt.ts";
import type { FilterBurden } from "../filter/burden-types.ts";
import { filterBurden } from "../filter/filter-burden.ts";
import type { MassProperties } from "../matrices/mass.ts";
import { type Seat, seatBeside, seatOf } from "../mesh/seat.ts";
import type { Candidate, Vec3 } from "../model/types.ts";
import type { ShakenFrame } from "../response/bare-frame.ts";
import { stackDynamics } from "../response/mount-stiffness.ts";
import { type Mounted, type Place, placesOf } from "../response/place.ts";
import { type Reading, readPlace, rms } from "../response/reading.ts";
import { gyroReading } from "../sensing/gyro-reading.ts";
import { noiseBandwidth, noiseFloor } from "../sensing/noise.ts";
import type { Instruments } from "./instruments.ts";
import type { PassedOrder } from "./types.ts";

/** What the chips pass on, before any filter of the flight controller. */
export interface Sensed {
  /** mean-square gyro reading by order and speed, (deg/s)^2 */
  readonly gyroPower: readonly Float64Array[];
  /** over the flight mix, all orders, deg/s rms; and g rms with the chip's own noise in it */
  readonly gyro: number;
  readonly accel: number;
}

export interface Assessed {
  readonly candidate: Candidate;
  /** of the chip */
  readonly seat: Seat;
  readonly place: Place;
  readonly reading: Reading;
  /** true motion over the flight mix: deg/s rms and g rms */
  readonly gyro: number;
  readonly accel: number;
  readonly sensed: Sensed;
  readonly filter: FilterBurden;
  /** the chip from the centre of gravity of the craft with the stack here, m */
  readonly lever: Vec3;
  /** false tilt in steady yaw at the rate of the control section, static, rad */
  readonly tilt: number;
}

/** A place before any filter is chosen for it. */
export type Heard = Omit<Assessed, "filter">;

/** What the stack's chip moves like at each place, before any chip or filter. */
export type ReadPlace = Pick<Assessed, "candidate" | "seat" | "place" | "reading">;

/** A place before it is read. */
export type PlacedStack = Omit<ReadPlace, "reading">;

/** A place with no plate under it is none. */
export function readPlaces(bare: ShakenFrame, candidates: readonly Candidate[]): ReadPlace[] {
  return placesOn(bare, candidates).map((p) => readPlaced(bare, p));
}

function readPlaced(bare: ShakenFrame, placed: PlacedStack): ReadPlace {
  return { ...placed, reading: readPlace(bare, placed.place) };
}

/** The places before they are read. */
export function placesOn(
  { mesh, h, flexibility }: ShakenFrame,
  candidates: readonly Candidate[],
): PlacedStack[] {
  const found = candidates.flatMap((candidate) => {
    const { plate, holes, footprint, cg, chip } = candidate;
    const seat = seatOf(mesh.grids[plate], holes, footprint, cg);
    return seat ? [{ candidate, seat, chip: minus(chip, cg) }] : [];
  });
  const mounted = found.map(
    ({ candidate, seat, chip }): Mounted => ({ seat, stack: stackDynamics(candidate), chip }),
  );
  return placesOf(h, flexibility, mounted).map((place, i) => {
    const { candidate, seat, chip } = found[i];
    return { candidate, seat: seatBeside(seat, chip), place };
  });
}

/** @param mass of the bare frame */
export function assess(
  bare: ShakenFrame,
  mass: Pick<MassProperties, "mass" | "cg">,
  instruments: Instruments,
  candidates: readonly Candidate[],
): Assessed[] {
  return hear(bare, mass, instruments, placesOn(bare, candidates)).map((heard) => ({
    ...heard,
    filter: filterBurden(instruments.filters(), grouped(instruments, heard.sensed.gyroPower)),
  }));
}

/**
 * The same without the filters.
 *
 * @param mass of the bare frame
 */
export function hear(
  bare: ShakenFrame,
  mass: Pick<MassProperties, "mass" | "cg">,
  instruments: Instruments,
  places: readonly PlacedStack[],
): Heard[] {
  return places.map((placed) => {
    const read = readPlaced(bare, placed);
    const { candidate, reading } = read;
    const sensed = sense(bare, instruments, reading);
    const lever = minus(candidate.chip, cgWith(mass, candidate));
    return {
      ...read,
      gyro: rms(reading.gyroAxes),
      accel: rms(reading.accelAxes),
      sensed,
      lever,
      tilt: falseTiltAt(lever[0], lever[1], instruments.control.yawRate),
    };
  });
}

/** The reading through the chips' sensitivity to acceleration and their own low-pass. */
export function sense(
  { h }: ShakenFrame,
  { sensors, gyroGain, accelGain }: Pick<Instruments, "sensors" | "gyroGain" | "accelGain">,
  reading: Reading,
): Sensed {
  const { weights } = h.excitation;
  const s = sensors.gyro.accelerationSensitivity;
  const gyroPower = h.orders.map((_, o) =>
    gyroReading(reading.gyroPower[o], reading.accelPower[o], s).map((p, i) => p * gyroGain[o][i]),
  );
  let [gyro, accel] = [0, 0];
  for (let o = 0; o < h.orders.length; o++) {
    for (let i = 0; i < weights.length; i++) {
      gyro += weights[i] * gyroPower[o][i];
      accel += weights[i] * reading.accelPower[o][i] * accelGain[o][i];
    }
  }
  const { noiseDensity, bandwidth } = sensors.accelerometer;
  accel += noiseFloor(noiseDensity, noiseBandwidth(bandwidth, 2)) ** 2;
  return { gyroPower, gyro: Math.sqrt(gyro), accel: Math.sqrt(accel) };
}

/** Powers of orders at the same multiple, added. */
export function grouped({ groups }: Instruments, powers: readonly Float64Array[]): Float64Array[] {
  return groups.map(({ orders }) =>
    powers[orders[0]].map((_, s) => orders.reduce((sum, o) => sum + powers[o][s], 0)),
  );
}

/** What both chips pass on, multiple by multiple, with all motors alike. */
export function passedOrders(
  instruments: Instruments,
  { sensed, reading }: Pick<Assessed, "sensed" | "reading">,
): PassedOrder[] {
  const { groups, accelGain } = instruments;
  const gyro = grouped(instruments, sensed.gyroPower);
  const accel = grouped(
    instruments,
    reading.accelPower.map((power, o) => power.map((p, s) => p * accelGain[o][s])),
  );
  return groups.map(({ multiple }, g) => ({ multiple, gyro: gyro[g], accel: accel[g] }));
}

/** Centre of gravity of the craft with the stack of the candidate in place. */
export function cgWith(
  { mass, cg }: Pick<MassProperties, "mass" | "cg">,
  { stack, cg: at }: Pick<Candidate, "stack" | "cg">,
): Vec3 {
  const share = stack.mass / (mass + stack.mass);
  const mean = (i: number) => cg[i] + share * (at[i] - cg[i]);
  return [mean(0), mean(1), mean(2)];
}

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
