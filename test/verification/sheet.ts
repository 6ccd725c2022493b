/** A rectangular plate as a frame file, with the classical ways to hold its edges. */

export interface Sheet {
  /** sides along x and y, m */
  readonly a: number;
  readonly b: number;
  /** in the units of a frame file */
  readonly thickness: string;
  readonly material: object;
  readonly plies?: object;
}

/** The benchmarks' plate: 10 m x 10 m x 50 mm, E = 200 GPa, nu = 0.3, rho = 8000 kg/m^3. */
export const STEEL = { kind: "isotropic", E: "200 GPa", nu: 0.3, density: "8000 kg/m^3" };

type Edge = "x = 0" | "x = a" | "y = 0" | "y = b";
const EDGES: readonly Edge[] = ["x = 0", "x = a", "y = 0", "y = b"];

function edgeLine({ a, b }: Sheet, edge: Edge) {
  const corner = (x: number, y: number) => [`${x} m`, `${y} m`];
  const ends: Record<Edge, readonly (readonly string[])[]> = {
    "x = 0": [corner(0, 0), corner(0, b)],
    "x = a": [corner(a, 0), corner(a, b)],
    "y = 0": [corner(0, 0), corner(a, 0)],
    "y = b": [corner(0, b), corner(a, b)],
  };
  return ends[edge];
}

/** No motion in the plane: the plate keeps one translation and two rotations. */
export function outOfPlaneOnly({ a, b }: Sheet): object {
  const corner = (x: number, y: number) => [`${x} m`, `${y} m`];
  const within = [corner(-a, -b), corner(2 * a, -b), corner(2 * a, 2 * b), corner(-a, 2 * b)];
  return { "in the plane": { plate: "sheet", within, fix: ["x", "y", "rz"] } };
}

/** An edge held fast. */
export function clamped(sheet: Sheet, edges: readonly Edge[] = EDGES): object {
  return Object.fromEntries(
    edges.map((e) => [e, { plate: "sheet", along: edgeLine(sheet, e), fix: "all" }]),
  );
}

/**
 * Hinged edges: no deflection anywhere along the edge, so no slope along it either. Fixing z alone
 * holds the grid points only and lets the edge wave between them.
 */
export function simplySupported(sheet: Sheet, fixSlope = true): object {
  return Object.fromEntries(
    EDGES.map((e) => {
      const slope = e.startsWith("x") ? "rx" : "ry";
      const fix = fixSlope ? ["z", slope] : ["z"];
      return [e, { plate: "sheet", along: edgeLine(sheet, e), fix }];
    }),
  );
}

/** The frame file: `cells` squares along x and as many of that size along y as it takes. */
export function sheetFrame(sheet: Sheet, cells: number, supports: object): object {
  const { a, b, thickness, material, plies } = sheet;
  return {
    meshSize: `${a / cells} m`,
    ...(plies && { plies }),
    materials: { stuff: material },
    plates: {
      sheet: {
        material: "stuff",
        thickness,
        z: 0,
        outline: [
          [0, 0],
          [`${a} m`, 0],
          [`${a} m`, `${b} m`],
          [0, `${b} m`],
        ],
      },
    },
    supports,
  };
}

/** What the frequencies of a thin isotropic plate hang on, SI. */
export interface ThinPlate {
  /** side along x */
  readonly a: number;
  readonly h: number;
  readonly E: number;
  readonly nu: number;
  readonly rho: number;
}

/** lambda = omega a^2 sqrt(rho h/D), D = E h^3/(12 (1 - nu^2)). */
export function frequencyParameter(frequency: number, { a, h, E, nu, rho }: ThinPlate): number {
  const D = (E * h ** 3) / (12 * (1 - nu * nu));
  return 2 * Math.PI * frequency * a * a * Math.sqrt((rho * h) / D);
}

/** lambda of 50 mm of STEEL. */
export function plateParameter(frequency: number, a: number): number {
  return frequencyParameter(frequency, { a, h: 0.05, E: 200e9, nu: 0.3, rho: 8000 });
}
