import type { FilePath } from "./file-path.ts";
import { valueAt } from "./place.ts";
import { type QuantityReading, readQuantity } from "./quantity.ts";
import type { QuantityKind } from "./quantity-kinds.ts";
import { hasUnit } from "./schema-spreads.ts";
import type { WrittenNumber } from "./types-inputs.ts";
import { lookUpUnit } from "./units.ts";

/** Numbers of the file, one by one. */

/** How far numbers of one sort usually lie from the drawing; common practice, no source. */
export type UsualSpread =
  | { readonly scale: "even"; readonly share: number }
  | { readonly scale: "log"; readonly low: number; readonly high: number };

export interface Sort {
  readonly kind:
    | "thickness"
    | "width"
    | "modulus"
    | "density"
    | "mass"
    | "joint"
    | "position"
    | "mount"
    | "damping";
  /** Undefined for plain numbers. */
  readonly quantity?: QuantityKind;
  readonly usual?: UsualSpread;
}

export interface NumberField extends Sort {
  readonly path: FilePath;
  /** SI */
  readonly value: number;
}

/**
 * The number at a path of the raw file, or `absent` (SI) where none is written; nothing where neither is
 * there.
 */
export function fieldAt(raw: unknown, path: FilePath, sort: Sort, absent?: number): NumberField[] {
  const written = valueAt(raw, path);
  const value =
    typeof written === "number" || typeof written === "string"
      ? readIn(sort, written)
      : { value: absent ?? Number.NaN };
  if ("problem" in value || Number.isNaN(value.value)) return [];
  return [{ ...sort, path, value: value.value }];
}

/** A number written for a field of this sort; a text without unit counts as a bare number. */
export function readIn({ quantity }: Sort, written: WrittenNumber): QuantityReading {
  const isBare = typeof written === "string" && written.trim() !== "" && !hasUnit(written);
  const given = isBare && Number.isFinite(Number(written)) ? Number(written) : written;
  if (quantity !== undefined) return readQuantity(given, quantity);
  if (typeof given === "number" && Number.isFinite(given)) return { value: given };
  return {
    problem: `${JSON.stringify(written)} is no number, and one without a unit is needed here.`,
  };
}

/** The paths of all numbers in a list and the lists in it; `path` itself where a number stands there. */
export function leavesUnder(raw: unknown, path: FilePath): FilePath[] {
  const value = valueAt(raw, path);
  if (Array.isArray(value)) return value.flatMap((_, i) => leavesUnder(raw, [...path, i]));
  return value === undefined ? [] : [path];
}

/** The unit of a bare number, and how many of it one SI unit is. */
export function bareUnit({ quantity }: Sort): { readonly unit: string; readonly perSI: number } {
  const unit = quantity?.bareUnit ?? "";
  const known = unit === "" ? undefined : lookUpUnit(unit);
  return { unit, perSI: known === undefined ? 1 : (known.perSI ?? 1 / known.toSI) };
}
