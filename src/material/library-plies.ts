/** Built-in plies. Every number has a fact that says where it comes from. */

import { inputError } from "../errors.ts";
import {
  commonPractice,
  derived,
  type Fact,
  fromMemory,
  published,
  sourceText,
  TABLE_CFRP_2020,
  TABLE_CFRP_2025,
  TABLE_FIBRE_EPOXY,
} from "./library-facts.ts";
import type { Ply } from "./ply.ts";

export interface LibraryPly {
  readonly id: string;
  readonly name: string;
  /** `ply.note` and `ply.source` repeat the name's remark and the facts as text. */
  readonly ply: Ply;
  readonly facts: readonly Fact[];
}

const GPa = 1e9;
const mm = 1e-3;

const ELASTIC = ["E1", "E2", "G12", "nu12"];
const WOVEN_SHEAR = fromMemory(["G13", "G23"], "2.5 to 4 GPa for a woven plate");
const UD_SHEAR = published(["G13", "G23"], `of another unidirectional ply, ${TABLE_CFRP_2020}`);
const WOVEN_THICKNESS = fromMemory(["thickness"], "0.20 to 0.25 mm for a 200 g/m2 cloth");
const UD_THICKNESS = published(["thickness"], "standard-modulus ply of textbook example scripts");
const WOVEN_LOSS = fromMemory(
  ["lossFactor"],
  "also common practice: bare woven plate in bending, zeta 0.1 to 0.5 %, here 0.3 %",
);
const UD_LOSS_VALUES = {
  lossFactor: 0.0067,
  lossFactor1: 0.0007,
  lossFactor2: 0.0067,
  lossFactor12: 0.0113,
};
const UD_LOSS = fromMemory(
  Object.keys(UD_LOSS_VALUES),
  "Lin, Ni and Adams 1984: specific damping capacity 0.45, 4.2, 7.1 % along, across, in shear, over 2 pi",
);
const DENSITY_AS_STANDARD = derived(["density"], "as the standard-modulus ply of the same table");

export const LIBRARY_PLIES: readonly LibraryPly[] = [
  entry(
    "carbon-fabric",
    "carbon fabric, standard modulus",
    "woven 0/90, half fibre by volume, dry, room temperature",
    {
      E1: 70 * GPa,
      E2: 70 * GPa,
      G12: 5 * GPa,
      nu12: 0.1,
      G13: 3 * GPa,
      G23: 3 * GPa,
      density: 1600,
      thickness: 0.22 * mm,
      lossFactor: 0.006,
    },
    [
      published([...ELASTIC, "density"], TABLE_FIBRE_EPOXY),
      WOVEN_SHEAR,
      WOVEN_THICKNESS,
      WOVEN_LOSS,
    ],
  ),
  entry(
    "carbon-fabric-high-modulus",
    "carbon fabric, high modulus",
    "woven 0/90, half fibre by volume",
    {
      E1: 85 * GPa,
      E2: 85 * GPa,
      G12: 5 * GPa,
      nu12: 0.1,
      G13: 3 * GPa,
      G23: 3 * GPa,
      density: 1600,
      thickness: 0.22 * mm,
      lossFactor: 0.006,
    },
    [
      published(ELASTIC, TABLE_FIBRE_EPOXY),
      DENSITY_AS_STANDARD,
      WOVEN_SHEAR,
      WOVEN_THICKNESS,
      WOVEN_LOSS,
    ],
  ),
  entry(
    "carbon-ud",
    "carbon unidirectional, standard modulus",
    "60 % fibre by volume",
    {
      E1: 135 * GPa,
      E2: 10 * GPa,
      G12: 5 * GPa,
      nu12: 0.3,
      G13: 4.3 * GPa,
      G23: 3.2 * GPa,
      density: 1600,
      thickness: 0.125 * mm,
      ...UD_LOSS_VALUES,
    },
    [published([...ELASTIC, "density"], TABLE_FIBRE_EPOXY), UD_SHEAR, UD_THICKNESS, UD_LOSS],
  ),
  entry(
    "carbon-ud-high-modulus",
    "carbon unidirectional, high modulus",
    "60 % fibre by volume",
    {
      E1: 175 * GPa,
      E2: 8 * GPa,
      G12: 5 * GPa,
      nu12: 0.3,
      G13: 4.3 * GPa,
      G23: 3.2 * GPa,
      density: 1600,
      thickness: 0.125 * mm,
      ...UD_LOSS_VALUES,
    },
    [published(ELASTIC, TABLE_FIBRE_EPOXY), DENSITY_AS_STANDARD, UD_SHEAR, UD_THICKNESS, UD_LOSS],
  ),
  entry(
    "carbon-ud-measured",
    "carbon unidirectional, measured means",
    "standard deviations: E1 2.15, E2 0.31, G12 0.17 GPa, nu12 0.17",
    {
      E1: 103.01 * GPa,
      E2: 7.36 * GPa,
      G12: 4.04 * GPa,
      nu12: 0.37,
      G13: 4.3 * GPa,
      G23: 3.2 * GPa,
      density: 1550,
      thickness: 0.15 * mm,
      ...UD_LOSS_VALUES,
    },
    [
      published(ELASTIC, TABLE_CFRP_2025),
      UD_SHEAR,
      commonPractice(["density"], "1500 to 1600 kg/m3"),
      published(["thickness"], "material list of a public laminate finite-element project"),
      UD_LOSS,
    ],
  ),
  entry(
    "carbon-ud-study",
    "carbon unidirectional, with transverse shear moduli",
    "constants used together in one finite-element study",
    {
      E1: 109 * GPa,
      E2: 8.82 * GPa,
      G12: 4.315 * GPa,
      nu12: 0.342,
      G13: 4.315 * GPa,
      G23: 3.2 * GPa,
      density: 1550,
      thickness: 0.125 * mm,
      ...UD_LOSS_VALUES,
    },
    [
      published([...ELASTIC, "G13", "G23"], TABLE_CFRP_2020),
      commonPractice(["density"], "1500 to 1600 kg/m3"),
      UD_THICKNESS,
      UD_LOSS,
    ],
  ),
  entry(
    "glass-fabric",
    "glass fabric",
    "woven 0/90",
    {
      E1: 25 * GPa,
      E2: 25 * GPa,
      G12: 4 * GPa,
      nu12: 0.15,
      G13: 3 * GPa,
      G23: 3 * GPa,
      density: 1850,
      thickness: 0.2 * mm,
      lossFactor: 0.01,
    },
    [
      published(["E1", "E2", "G12"], TABLE_FIBRE_EPOXY),
      fromMemory(["nu12", "density"], "nu 0.13 to 0.2, 1850 kg/m3 for a glass/epoxy plate"),
      fromMemory(["G13", "G23", "thickness", "lossFactor"], "order of magnitude"),
    ],
  ),
];

/** The library's ply of that id; throws InputError (at `path`) with the ids that exist. */
export function libraryPly(id: string, path = ""): LibraryPly {
  const found = LIBRARY_PLIES.find((candidate) => candidate.id === id);
  if (found === undefined) {
    const known = LIBRARY_PLIES.map((candidate) => candidate.id).join(", ");
    throw inputError(path, `There is no ply "${id}" in the library; it has ${known}.`);
  }
  return found;
}

function entry(
  id: string,
  name: string,
  note: string,
  values: Ply,
  facts: readonly Fact[],
): LibraryPly {
  return { id, name, ply: { ...values, note, source: sourceText(facts) }, facts };
}
