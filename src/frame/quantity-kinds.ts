/** What a number in a frame file can stand for, and the unit it has when it is written bare. */

/** Exponents of mass, length, time, electric current and angle, joined by commas. */
export type Dimension = string;

export interface QuantityKind {
  /** With its article, as it stands in a message: "a length". */
  readonly noun: string;
  /** Unit of a number written without one; "" for a fraction. */
  readonly bareUnit: string;
  /** As a builder would write it. */
  readonly example: string;
  readonly dimension: Dimension;
  /** Largest size that can be meant, SI, and the same in words: catches slips of the unit. */
  readonly most: number;
  readonly mostText: string;
  /** Units offered when the one in the file is not known. */
  readonly usualUnits: readonly string[];
}

function kind(
  noun: string,
  bareUnit: string,
  example: string,
  dimension: Dimension,
  most: readonly [si: number, text: string],
  usualUnits: readonly string[],
): QuantityKind {
  return { noun, bareUnit, example, dimension, most: most[0], mostText: most[1], usualUnits };
}

// biome-ignore format: one kind, one row
export const KINDS = {
  length: kind("a length", "mm", "5 mm", "0,1,0,0,0", [1e3, "1000 m"], ["mm", "cm", "m", "in", "inch", "um"]),
  mass: kind("a mass", "g", "33 g", "1,0,0,0,0", [1e5, "100000 kg"], ["g", "kg", "mg", "oz", "lb"]),
  angle: kind("an angle", "deg", "45 deg", "0,0,0,0,1", [2 * Math.PI, "360 deg"], ["deg", "rad"]),
  modulus: kind("a modulus", "GPa", "70 GPa", "1,-1,-2,0,0", [1e14, "100000 GPa"], ["GPa", "MPa", "kPa", "Pa", "psi"]),
  density: kind("a density", "g/cm^3", "1.55 g/cm^3", "1,-3,0,0,0", [1e5, "100 g/cm^3"], ["g/cm^3", "kg/m^3"]),
  stiffness: kind("a stiffness", "N/mm", "10 N/mm", "1,0,-2,0,0", [1e12, "1e9 N/mm"], ["N/mm", "N/m", "kN/m"]),
  rotationalStiffness: kind("a rotational stiffness", "N m/rad", "100 N m/rad", "1,2,-2,0,-1", [1e12, "1e12 N m/rad"], ["N m/rad", "N m/deg", "N mm/rad"]),
  frequency: kind("a frequency", "Hz", "75 Hz", "0,0,-1,0,0", [1e6, "1 MHz"], ["Hz", "kHz"]),
  speed: kind("a rotational speed", "rpm", "10800 rpm", "0,0,-1,0,1", [1e5, "950000 rpm"], ["rpm", "rad/s", "cycle/s", "deg/s"]),
  rate: kind("a rotation rate", "deg/s", "200 deg/s", "0,0,-1,0,1", [1e3 * Math.PI, "180000 deg/s"], ["deg/s", "rad/s", "rpm"]),
  time: kind("a time", "ms", "20 ms", "0,0,1,0,0", [3600, "3600 s"], ["ms", "s", "us"]),
  kv: kind("a motor speed per volt", "rpm/V", "1800 rpm/V", "-1,-2,2,1,1", [1e5, "950000 rpm/V"], ["rpm/V", "rad/s/V"]),
  unbalance: kind("an unbalance", "g mm", "0.12 g mm", "1,1,0,0,0", [1, "1 kg m"], ["g mm", "kg m", "mg mm"]),
  force: kind("a force", "N", "20 N", "1,1,-2,0,0", [1e13, "1e13 N"], ["N", "kN", "lbf"]),
  inertia: kind("a moment of inertia", "g mm^2", "5200 g mm^2", "1,2,0,0,0", [1e6, "1e6 kg m^2"], ["g mm^2", "kg m^2", "g cm^2"]),
  secondMoment: kind("a second moment of area", "mm^4", "180 mm^4", "0,4,0,0,0", [1e4, "10000 m^4"], ["mm^4", "cm^4", "m^4"]),
  area: kind("an area", "mm^2", "85 mm^2", "0,2,0,0,0", [1e4, "10000 m^2"], ["mm^2", "cm^2", "m^2"]),
  voltage: kind("a voltage", "V", "3.7 V", "1,2,-3,-1,0", [1e3, "1000 V"], ["V", "mV"]),
  balanceGrade: kind("a balance grade", "mm/s", "16 mm/s", "0,1,-1,0,0", [10, "10000 mm/s"], ["mm/s", "m/s"]),
  bendingRigidity: kind("a bending or torsion rigidity", "N m^2", "4.5 N m^2", "1,3,-2,0,0", [1e13, "1e13 N m^2"], ["N m^2", "N mm^2"]),
  massPerLength: kind("a mass per length", "kg/m", "0.13 kg/m", "1,-1,0,0,0", [1e6, "1e6 kg/m"], ["kg/m", "g/mm"]),
  inertiaPerLength: kind("an inertia per length", "kg m", "1.2e-6 kg m", "1,1,0,0,0", [1e6, "1e6 kg m"], ["kg m", "g mm"]),
  fraction: kind("a fraction", "", "5 %", "0,0,0,0,0", [1e3, "100000 %"], ["%"]),
} as const satisfies Record<string, QuantityKind>;

const OTHER_DIMENSIONS: Readonly<Record<Dimension, string>> = {
  "1,-1,-2,0,0": "a pressure",
  "1,2,-2,0,0": "a torque or an energy",
  "0,1,-1,0,0": "a velocity",
  "0,1,-2,0,0": "an acceleration",
  "0,3,0,0,0": "a volume",
  "0,0,-2,0,1": "a rotational acceleration",
  "1,2,-3,0,0": "a power",
  "0,0,0,1,0": "an electric current",
};

/** The everyday name of what has this dimension, with its article; undefined when it has none. */
export function nameOfDimension(dimension: Dimension): string | undefined {
  return (
    OTHER_DIMENSIONS[dimension] ??
    Object.values(KINDS).find((known) => known.dimension === dimension)?.noun
  );
}
