/**
 * Every quantity of a frame file, found by the name of its field: to write the frame in other units,
 * or larger, stiffer and heavier.
 */

/** What a number in a frame file is, with the unit it has when it is written bare. */
export const BARE = {
  length: "mm",
  mass: "g",
  angle: "deg",
  modulus: "GPa",
  density: "g/cm^3",
  stiffness: "N/mm",
  rotationalStiffness: "N m/rad",
  frequency: "Hz",
  force: "N",
  inertia: "g mm^2",
  secondMoment: "mm^4",
  area: "mm^2",
  bendingRigidity: "N m^2",
  massPerLength: "kg/m",
  inertiaPerLength: "kg m",
} as const;

export type Kind = keyof typeof BARE;

/** The kind of a field, and of everything inside it that has none of its own. */
const KIND_OF: Readonly<Record<string, Kind | undefined>> = {
  ...all("length", "meshSize", "points", "at", "root", "tip", "outline", "size", "screws"),
  ...all("length", "thickness", "z", "diameter", "outer", "bore", "acrossFlats", "height"),
  ...all("length", "width", "footprint", "inserted", "motorPad"),
  ...all("mass", "mass"),
  ...all("angle", "warp"),
  ...all("modulus", "E", "E1", "E2", "G", "G12", "G13", "G23"),
  ...all("density", "density"),
  ...all("inertia", "inertia"),
  ...all("frequency", "bounce", "sway"),
  ...all("area", "A", "shearAreaY", "shearAreaZ"),
  ...all("secondMoment", "Iy", "Iz", "J", "Ip"),
  ...all("force", "EA", "kGAy", "kGAz"),
  ...all("bendingRigidity", "EIy", "EIz", "GJ"),
  ...all("massPerLength", "massPerLength"),
  ...all("inertiaPerLength", "inertiaPerLength"),
};

/** Fields of a spring, whose z is no length. */
const KIND_IN_SPRING: Readonly<Record<string, Kind>> = {
  ...all("stiffness", "x", "y", "z"),
  ...all("rotationalStiffness", "rx", "ry", "rz"),
};

function all(kind: Kind, ...fields: readonly string[]): Record<string, Kind> {
  return Object.fromEntries(fields.map((field) => [field, kind]));
}

type Change = (value: number, kind: Kind) => number | string;

/** The frame file with every quantity, written bare, changed; all else stays. */
export function mapQuantities<T extends object>(frame: T, change: Change): T {
  return walk(frame, undefined, KIND_OF, change) as T;
}

function walk(
  value: unknown,
  kind: Kind | undefined,
  kinds: Readonly<Record<string, Kind | undefined>>,
  change: Change,
): unknown {
  if (typeof value === "number") return kind === undefined ? value : change(value, kind);
  if (Array.isArray(value)) return value.map((one) => walk(one, kind, kinds, change));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, inside]) => [
      name,
      walk(inside, kinds[name] ?? kind, name === "springs" ? KIND_IN_SPRING : kinds, change),
    ]),
  );
}

/** Factors on every length, every modulus and every density. */
export interface Scale {
  readonly length?: number;
  readonly modulus?: number;
  readonly mass?: number;
}

/**
 * The same frame larger by `length`, of materials stiffer by `modulus` and denser by `mass`: every
 * quantity takes the factor of its dimension.
 */
export function scaled<T extends object>(
  frame: T,
  { length: s = 1, modulus: e = 1, mass: m = 1 }: Scale,
): T {
  const factor: Record<Kind, number> = {
    length: s,
    mass: m * s ** 3,
    angle: 1,
    modulus: e,
    density: m,
    stiffness: e * s,
    rotationalStiffness: e * s ** 3,
    frequency: Math.sqrt(e / m) / s,
    force: e * s ** 2,
    inertia: m * s ** 5,
    secondMoment: s ** 4,
    area: s ** 2,
    bendingRigidity: e * s ** 4,
    massPerLength: m * s ** 2,
    inertiaPerLength: m * s ** 4,
  };
  return mapQuantities(frame, (value, kind) => value * factor[kind]);
}
