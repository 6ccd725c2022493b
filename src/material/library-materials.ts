/** Built-in materials: carbon plates, laminates, metals, plastics. */

import { inputError } from "../errors.ts";
import {
  commonPractice,
  derived,
  type Fact,
  fromMemory,
  published,
  TABLE_FIBRE_EPOXY,
} from "./library-facts.ts";
import { libraryPly } from "./library-plies.ts";
import { isotropic, laminateFromStack, type Material } from "./material.ts";

export interface LibraryMaterial {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  readonly material: Material;
  /** Stack notation of a laminate. */
  readonly stack?: string;
  readonly facts: readonly Fact[];
}

const GPa = 1e9;

const PLATE_SHEAR = fromMemory(["G13", "G23"], "2.5 to 4 GPa for a woven plate");
const PLATE_DENSITY = commonPractice(["density"], "1500 to 1600 kg/m3 for a cut woven plate");
const PLATE_LOSS = fromMemory(
  ["lossFactor"],
  "also common practice: bare woven plate in bending, zeta 0.1 to 0.5 %, here 0.3 %",
);
const METAL_LOSS = fromMemory(["lossFactor"], "solid piece, without joints");
const G_OF_NU = derived(["G"], "E / (2 (1 + nu))");

export const LIBRARY_MATERIALS: readonly LibraryMaterial[] = [
  {
    id: "carbon-plate-0-90",
    name: "carbon plate, woven 0/90",
    note: "as cut from stock plate; 50 to 65 GPa along warp and weft, about 17 GPa at 45 degrees",
    material: {
      kind: "measured",
      E1: 60 * GPa,
      E2: 60 * GPa,
      G12: 5 * GPa,
      nu12: 0.1,
      G13: 3 * GPa,
      G23: 3 * GPa,
      density: 1550,
      lossFactor: 0.006,
    },
    facts: [
      fromMemory(["E1", "E2"], "bending modulus of a woven plate along warp, 50 to 65 GPa"),
      published(["G12", "nu12"], `of the fabric ply, ${TABLE_FIBRE_EPOXY}`),
      PLATE_SHEAR,
      PLATE_DENSITY,
      PLATE_LOSS,
    ],
  },
  {
    id: "carbon-plate-quasi-isotropic",
    name: "carbon plate, quasi-isotropic",
    note: "woven plies at 0 and 45 degrees in equal numbers; 45 to 55 GPa in every direction",
    material: {
      kind: "measured",
      E1: 50 * GPa,
      E2: 50 * GPa,
      G12: 18.4 * GPa,
      nu12: 0.36,
      G13: 3 * GPa,
      G23: 3 * GPa,
      density: 1550,
      lossFactor: 0.006,
    },
    facts: [
      derived(
        ["E1", "E2", "G12", "nu12"],
        `lamination theory with the fabric ply of ${TABLE_FIBRE_EPOXY}, rounded`,
      ),
      PLATE_SHEAR,
      PLATE_DENSITY,
      PLATE_LOSS,
    ],
  },
  laminate("carbon-fabric-0-90", "carbon fabric laminate, 0/90", "carbon-fabric", "[0]8s"),
  laminate(
    "carbon-fabric-quasi-isotropic",
    "carbon fabric laminate, quasi-isotropic",
    "carbon-fabric",
    "[0/45]4s",
  ),
  laminate("carbon-ud-cross-ply", "carbon unidirectional cross-ply", "carbon-ud", "[0/90]8s"),
  laminate(
    "carbon-ud-quasi-isotropic",
    "carbon unidirectional, quasi-isotropic",
    "carbon-ud",
    "[0/45/-45/90]4s",
  ),
  {
    id: "aluminium-6061-t6",
    name: "aluminium 6061-T6",
    note: "",
    material: isotropic(68.9 * GPa, 0.33, 2700, 0.002),
    facts: [fromMemory(["E", "nu", "density"], ""), G_OF_NU, METAL_LOSS],
  },
  {
    id: "aluminium-7075-t651",
    name: "aluminium 7075-T651",
    note: "",
    material: isotropic(71.7 * GPa, 0.33, 2810, 0.002),
    facts: [
      published(["E", "nu", "density"], "public multibody test of the Princeton beam experiment"),
      G_OF_NU,
      METAL_LOSS,
    ],
  },
  {
    id: "steel",
    name: "steel",
    note: "",
    material: {
      kind: "isotropic",
      E: 207 * GPa,
      G: 80 * GPa,
      nu: 0.29375,
      density: 7850,
      lossFactor: 0.002,
    },
    facts: [
      published(["E", "G"], TABLE_FIBRE_EPOXY),
      derived(["nu"], "E / (2 G) - 1"),
      fromMemory(["density"], "screw steel"),
      METAL_LOSS,
    ],
  },
  {
    id: "steel-screw",
    name: "steel of screws",
    note: "",
    material: isotropic(205 * GPa, 0.29, 7850, 0.002),
    facts: [fromMemory(["E", "nu", "density"], ""), G_OF_NU, METAL_LOSS],
  },
  {
    id: "titanium",
    name: "titanium alloy",
    note: "110 to 114 GPa",
    material: isotropic(110 * GPa, 0.33, 4430, 0.002),
    facts: [
      published(["E"], TABLE_FIBRE_EPOXY),
      fromMemory(["nu", "density"], "alloy of screws"),
      G_OF_NU,
      METAL_LOSS,
    ],
  },
  {
    id: "glass-epoxy",
    name: "glass/epoxy plate",
    note: "18 to 24 GPa in bending",
    material: {
      kind: "measured",
      E1: 21 * GPa,
      E2: 21 * GPa,
      G12: 4 * GPa,
      nu12: 0.15,
      G13: 3 * GPa,
      G23: 3 * GPa,
      density: 1850,
      lossFactor: 0.01,
    },
    facts: [
      fromMemory(["E1", "E2", "nu12", "density"], "18 to 24 GPa, nu 0.13 to 0.2"),
      published(["G12"], `of the glass fabric ply, ${TABLE_FIBRE_EPOXY}`),
      fromMemory(["G13", "G23", "lossFactor"], "order of magnitude"),
    ],
  },
  plastic(
    "nylon",
    "nylon 6/6, conditioned",
    "1.5 to 2 GPa; halves with moisture",
    1.75,
    0.39,
    1140,
    0.05,
  ),
  plastic(
    "nylon-dry",
    "nylon 6/6, dry",
    "2.8 to 3.2 GPa; halves with moisture",
    3,
    0.39,
    1140,
    0.05,
  ),
  plastic(
    "tpu-95a",
    "thermoplastic polyurethane, 95 Shore A, printed",
    "0.03 to 0.08 GPa, loss factor 0.1 to 0.3",
    0.05,
    0.48,
    1210,
    0.2,
  ),
  {
    ...plastic(
      "silicone",
      "silicone rubber, 40 to 60 Shore A",
      "0.001 to 0.004 GPa, loss factor 0.1 to 1",
      0.0025,
      0.49,
      1150,
      0.3,
    ),
    facts: [
      fromMemory(["E", "nu", "density"], "0.001 to 0.004 GPa, 1100 to 1200 kg/m3"),
      G_OF_NU,
      published(
        ["lossFactor"],
        'a filled example has tan delta 0.2 to 0.4, "Optimization of Acoustic Properties and Vibration/Damping Applications of Silicone Rubber Materials", web article',
      ),
    ],
  },
];

/** The library's material of that id; throws InputError (at `path`) with the ids that exist. */
export function libraryMaterial(id: string, path = ""): LibraryMaterial {
  const found = LIBRARY_MATERIALS.find((candidate) => candidate.id === id);
  if (found === undefined) {
    const known = LIBRARY_MATERIALS.map((candidate) => candidate.id).join(", ");
    throw inputError(path, `There is no material "${id}" in the library; it has ${known}.`);
  }
  return found;
}

function laminate(id: string, name: string, plyId: string, stack: string): LibraryMaterial {
  const { ply } = libraryPly(plyId);
  return {
    id,
    name,
    note: `plies of ${plyId}, scaled to the thickness of the part`,
    material: laminateFromStack(ply, stack),
    stack,
    facts: [
      derived(["plies"], `lamination theory with the library's ply ${plyId}; ${ply.source}`),
      commonPractice(["angles"], "number of plies for a plate of 2 to 7 mm"),
    ],
  };
}

function plastic(
  id: string,
  name: string,
  note: string,
  gpa: number,
  nu: number,
  density: number,
  lossFactor: number,
): LibraryMaterial {
  return {
    id,
    name,
    note,
    material: isotropic(gpa * GPa, nu, density, lossFactor),
    facts: [fromMemory(["E", "nu", "density", "lossFactor"], note), G_OF_NU],
  };
}
