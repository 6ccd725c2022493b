/** Plates with straight edges along x and y, side a = 1 m from the root, of any width. */

import { frequencies } from "../frequencies.ts";
import { clamped, frequencyParameter, type Sheet, sheetFrame } from "../sheet.ts";

const STEEL = { kind: "isotropic", E: "210 GPa", nu: 0.3, density: "7800 kg/m^3" };

export interface Plate {
  /** a/b */
  readonly ratio: number;
  /** mm */
  readonly thickness: number;
  readonly clampedRoot: boolean;
}

function sheetOf({ ratio, thickness }: Plate): Sheet {
  return { a: 1, b: 1 / ratio, thickness: `${thickness} mm`, material: STEEL };
}

/** `cells` along the side a. */
export function plateFrame(plate: Plate, cells: number): object {
  const sheet = sheetOf(plate);
  return sheetFrame(sheet, cells, plate.clampedRoot ? clamped(sheet, ["x = 0"]) : {});
}

/** The lowest `count` elastic modes, Hz. */
export function plateHertz(plate: Plate, cells: number, count: number): number[] {
  return frequencies(plateFrame(plate, cells), { modes: count });
}

/** The same as lambda. */
export function plateLambda(plate: Plate, cells: number, count: number): number[] {
  const thin = { a: 1, h: plate.thickness / 1000, E: 210e9, nu: 0.3, rho: 7800 };
  return plateHertz(plate, cells, count).map((f) => frequencyParameter(f, thin));
}
