/** The chips, filters and loops by which all places of a frame are judged. */

import { multiplesOf } from "../excitation/multiples.ts";
import { torquePerThrust } from "../excitation/orders.ts";
import type { Excitation } from "../excitation/types.ts";
import { checkBurdenSetup } from "../filter/burden-check.ts";
import { type BurdenTable, burdenTable } from "../filter/burden-table.ts";
import type { BurdenSetup } from "../filter/burden-types.ts";
import { foldedFrequency } from "../filter/fold.ts";
import type { FrameFile } from "../frame/types.ts";
import type { ControlDef, SensorsDef } from "../frame/types-sensors.ts";
import { controlBandwidth } from "../sensing/control-bandwidth.ts";
import { ownPowerGain } from "../sensing/own-low-pass.ts";
import type { Use } from "./use.ts";

/** Lines at the same multiple of the motors' speed, as one. */
export interface OrderGroup {
  readonly name: string;
  readonly multiple: number;
  /** indices of the orders */
  readonly orders: readonly number[];
}

export interface Instruments {
  readonly sensors: SensorsDef;
  readonly control: ControlDef;
  readonly use: Use;
  /** of the rate loop, Hz */
  readonly bandwidth: number;
  /** a rotor's drag moment over its thrust, m */
  readonly torquePerThrust: number;
  readonly groups: readonly OrderGroup[];
  /** share of the power that the chips' own low-pass passes, by order and speed */
  readonly gyroGain: readonly Float64Array[];
  readonly accelGain: readonly Float64Array[];
  /** made when first asked for: it takes as long as reading some ten places */
  readonly filters: () => BurdenTable;
}

/** @throws InputError for settings that do not go together */
export function instrumentsOf(file: FrameFile, e: Excitation, rotors: number): Instruments {
  const { sensors, control } = file;
  const { gyro, accelerometer } = sensors;
  const diameter = file.propulsion?.propeller.diameter ?? 0;
  const bandwidth = controlBandwidth(control, diameter);
  const turns = e.grid.map((speed) => speed / (2 * Math.PI));
  const gain = (own: number) =>
    e.orders.map(({ order }) => turns.map((n) => ownPowerGain(own, order * n)));
  const groups = multiplesOf(e.orders).map(({ multiple, orders }) => ({
    name: groupName(multiple, e.bladePass),
    multiple,
    orders,
  }));
  const setup: BurdenSetup = {
    fs: gyro.sampling,
    speeds: turns,
    weights: e.weights,
    hover: e.speeds.hover / (2 * Math.PI),
    controlBandwidth: bandwidth,
    target: control.residual,
    noiseDensity: gyro.noiseDensity,
    noiseGain: (f) => ownPowerGain(gyro.bandwidth, f),
    rotors,
    motorSpread: e.motorSpread,
    notch: control.notches,
  };
  const lines = groups.map(({ name, multiple }) => {
    const folded = Uint8Array.from(turns, (n) => +(multiple * n > gyro.sampling / 2));
    const frequency = turns.map((n) => foldedFrequency(multiple * n, gyro.sampling));
    return { name, order: multiple, frequency, folded };
  });
  checkBurdenSetup(setup);
  let table: BurdenTable | undefined;
  return {
    sensors,
    control,
    use: control.use,
    bandwidth,
    torquePerThrust: torquePerThrust(e.speeds.thrustFactor, diameter),
    groups,
    gyroGain: gain(gyro.bandwidth),
    accelGain: gain(accelerometer.bandwidth),
    filters: () => {
      table ??= burdenTable(setup, lines);
      return table;
    },
  };
}

function groupName(multiple: number, bladePass: number): string {
  if (multiple === 1) return "once per turn";
  if (multiple === bladePass) return "blade pass";
  if (multiple === 2 * bladePass) return "twice blade pass";
  return `order ${multiple}`;
}
