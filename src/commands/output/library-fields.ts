/** The constants of a material or ply, in one order, with the words and units that go with them. */

import type { LibraryMaterial } from "../../material/library-materials.ts";
import type { LibraryPly } from "../../material/library-plies.ts";
import { shortest } from "../terminal/numbers.ts";

export type LibraryEntry = LibraryMaterial | LibraryPly;

interface Field {
  readonly key: string;
  /** Name in a JSON document. */
  readonly jsonName: string;
  readonly words: string;
  readonly print: (value: number) => string;
}

const GPa = scaled(1e9, "GPa");

// biome-ignore format: one field, one row
export const FIELDS: readonly Field[] = [
  { key: "E", jsonName: "youngsModulusPa", words: "stiffness in tension and bending", print: GPa },
  { key: "E1", jsonName: "youngsModulus1Pa", words: "stiffness along fibres or warp", print: GPa },
  { key: "E2", jsonName: "youngsModulus2Pa", words: "stiffness across them", print: GPa },
  { key: "G", jsonName: "shearModulusPa", words: "stiffness in shear", print: GPa },
  { key: "G12", jsonName: "shearModulus12Pa", words: "stiffness in shear within the sheet", print: GPa },
  { key: "G13", jsonName: "shearModulus13Pa", words: "shear through the thickness, along fibres or warp", print: GPa },
  { key: "G23", jsonName: "shearModulus23Pa", words: "shear through the thickness, across them", print: GPa },
  { key: "nu", jsonName: "poissonsRatio", words: "contraction across, per stretch", print: shortest },
  { key: "nu12", jsonName: "poissonsRatio12", words: "contraction across, per stretch along", print: shortest },
  { key: "density", jsonName: "densityKgPerM3", words: "density", print: scaled(1e3, "g/cm^3") },
  { key: "thickness", jsonName: "thicknessM", words: "thickness of one ply", print: scaled(1e-3, "mm") },
  { key: "lossFactor", jsonName: "lossFactor", words: "loss factor, twice the damping ratio", print: shortest },
  { key: "lossFactor1", jsonName: "lossFactor1", words: "loss factor along the fibres", print: shortest },
  { key: "lossFactor2", jsonName: "lossFactor2", words: "loss factor across them", print: shortest },
  { key: "lossFactor12", jsonName: "lossFactor12", words: "loss factor in shear", print: shortest },
];

/** The constants an entry gives itself; a laminate has none beside its plies. */
export function constantsOf(entry: LibraryEntry): Readonly<Record<string, unknown>> {
  if ("ply" in entry) return { ...entry.ply };
  return entry.material.kind === "laminate" ? {} : { ...entry.material };
}

/** The fields the entry has, with their values. */
export function fieldsOf(entry: LibraryEntry): { field: Field; value: number }[] {
  const constants = constantsOf(entry);
  return FIELDS.flatMap((field) => {
    const value = constants[field.key];
    return typeof value === "number" ? [{ field, value }] : [];
  });
}

export function noteOf(entry: LibraryEntry): string {
  return ("ply" in entry ? entry.ply.note : entry.note) ?? "";
}

function scaled(one: number, unit: string): (value: number) => string {
  return (value) => `${shortest(value / one)} ${unit}`;
}
