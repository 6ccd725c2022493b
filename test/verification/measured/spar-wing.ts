/**
 * The aluminium-spar wing as a frame file: sixteen points, fifteen massless members of given stiffness,
 * sixteen bodies. x runs along the span from the clamped root, y along the chord, z up.
 */

import type { Analysis } from "../../../src/analyse.ts";
import { solveFrame } from "../frequencies.ts";

/** m; rib stations as fractions of it. */
const LENGTH = 0.549844;
// biome-ignore format: table
const STATIONS = [
  0, 0.069565, 0.13913, 0.208696, 0.278261, 0.347826, 0.417391, 0.486957,
  0.556522, 0.626087, 0.695652, 0.765217, 0.834783, 0.904348, 0.965217, 1,
];

/** Out-of-plane bending stiffness of each member, N m^2. */
// biome-ignore format: table
const EI = [
  5.24744, 4.50448, 4.47823, 4.47438, 4.47481, 4.47493, 4.47493, 4.47493,
  4.47493, 4.47489, 4.47472, 4.47618, 4.48917, 4.5482, 4.77038,
];

/** Torsional stiffness, N m^2. */
// biome-ignore format: table
const GJ = [
  7.5826, 7.5826, 7.5826, 7.5826, 6.51183, 6.51183, 6.51183, 6.51183,
  6.51584, 6.51584, 6.51584, 6.51584, 7.11893, 7.11893, 17.37307,
];

/** Of the spar without skin; they move the in-plane and lengthwise modes only. N m^2, N. */
const EI_IN_PLANE = 3000;
const EA = 9.65e6;

/** What hangs at a station. */
interface Lump {
  /** kg */
  readonly mass: number;
  /** about the span axis, kg m^2 */
  readonly span: number;
  /** about the chord and about the normal; of the wing without skin */
  readonly chord: number;
  readonly normal: number;
  /** centre of gravity from the station along span and chord, mm; of the wing without skin */
  readonly offset: readonly [number, number];
}

/** Chord and normal inertia of the first and the last but one are not given: taken as the ribs' between. */
const RIB = { chord: 2.09e-6, normal: 1.28e-5 };
const LUMPS: readonly Lump[] = [
  { ...RIB, mass: 0.0191186, span: 1.21417e-5, offset: [6.9, -0.98] },
  { ...RIB, mass: 0.0206788, span: 1.09721e-5, offset: [-1.88, 0.91] },
  ...new Array<Lump>(12).fill({
    ...RIB,
    mass: 0.0206828,
    span: 1.09788e-5,
    offset: [-1.88, 0.91],
  }),
  { ...RIB, mass: 0.025448, span: 1.45515e-5, offset: [1.34, -0.81] },
  { chord: 8.6e-7, normal: 1.226e-4, mass: 0.0431559, span: 1.222e-4, offset: [3.03, 4.88] },
];

export interface WingOptions {
  /** masses at their centres of gravity (default), or on the axis */
  readonly offsets?: boolean;
  /** inertias about chord and normal too (default), or about the span only */
  readonly allInertias?: boolean;
  /** N m/rad of a spring about the normal at the root; rigid where not given */
  readonly rootSpring?: number;
}

export function sparWing(options: WingOptions = {}): object {
  const { offsets = true, allInertias = true, rootSpring } = options;
  const held = rootSpring === undefined ? "all" : ["x", "y", "z", "rx", "ry"];
  const each = <T>(list: readonly T[], name: string, make: (item: T, i: number) => object) =>
    Object.fromEntries(list.map((item, i) => [`${name} ${i + 1}`, make(item, i)]));
  return {
    beamTheory: "euler-bernoulli",
    points: each(STATIONS, "station", (s) => [`${s * LENGTH} m`, 0, 0]),
    members: each(EI, "bay", (_, i) => ({
      from: `station ${i + 1}`,
      to: `station ${i + 2}`,
      section: {
        shape: "stiffness",
        EA,
        EIy: EI[i],
        EIz: EI_IN_PLANE,
        GJ: GJ[i],
        massPerLength: 0,
      },
      elements: 1,
    })),
    bodies: each(LUMPS, "rib", ({ mass, span, chord, normal, offset: [ahead, aside] }, i) => ({
      mass: `${mass} kg`,
      at: offsets
        ? [`${STATIONS[i] * LENGTH * 1e3 + ahead} mm`, `${aside} mm`, 0]
        : [`${STATIONS[i] * LENGTH} m`, 0, 0],
      inertia: {
        xx: `${span} kg m^2`,
        yy: `${allInertias ? chord : 0} kg m^2`,
        zz: `${allInertias ? normal : 0} kg m^2`,
      },
      on: `station ${i + 1}`,
    })),
    supports: { root: { point: "station 1", fix: held } },
    ...(rootSpring && { springs: { root: { between: ["station 1", "ground"], rz: rootSpring } } }),
  };
}

/** Half the chord of 98.9 mm: what turns a twist into a deflection to compare bending with, m. */
const HALF_CHORD = 0.04945;

export interface WingModes {
  readonly outOfPlane: readonly number[];
  readonly torsion: readonly number[];
  readonly inPlane: readonly number[];
}

/** Hz, by what moves most at the tip: modes of different kinds change places as the masses move. */
export function wingModes(options: WingOptions = {}): WingModes {
  const analysis = solveFrame(sparWing(options), { modes: 7 });
  const kinds = analysis.modes.shapes.map((shape) => tipMotion(analysis, shape));
  const of = (kind: string) =>
    analysis.modes.described.filter((_, i) => kinds[i] === kind).map((mode) => mode.frequency);
  return { outOfPlane: of("out of plane"), torsion: of("torsion"), inPlane: of("in plane") };
}

function tipMotion({ mesh }: Analysis, shape: Float64Array): string {
  const tip = 6 * (mesh.pointNodes.get(`station ${STATIONS.length}`) as number);
  const motions = [
    ["in plane", Math.abs(shape[tip + 1])],
    ["out of plane", Math.abs(shape[tip + 2])],
    ["torsion", HALF_CHORD * Math.abs(shape[tip + 3])],
  ] as const;
  return motions.reduce((most, motion) => (motion[1] > most[1] ? motion : most))[0];
}
