import { type FilePath, formatPath } from "./file-path.ts";
import { numberFields } from "./inputs-fields.ts";
import { bareUnit, type NumberField } from "./number-field.ts";
import { valueAt } from "./place.ts";
import { type FieldSpread, spreadsOf } from "./spread-of.ts";
import type { FrameFile } from "./types.ts";

export type InputKind = NumberField["kind"];

/** Where 95 % of real frames lie, SI; "even" = normal distribution of the value, "log" = of its logarithm. */
export type Spread = FieldSpread;

/** A number of the file that a study may vary. */
export interface Input {
  /** As users read it: arms.arm.thickness, arms.arm.width#1. */
  readonly name: string;
  readonly path: FilePath;
  readonly kind: InputKind;
  /** SI */
  readonly value: number;
  /** Factor from SI to the unit of a bare number in the file. */
  readonly perSI: number;
  /** That unit ("mm", "g"); "" for plain numbers. */
  readonly unit: string;
  /** Absent: taken as exact. */
  readonly spread?: Spread;
}

/** A frame file as it stands in its text and as it was read. */
interface AsRead {
  readonly raw: unknown;
  readonly file: FrameFile;
}

/**
 * The numbers of the file that a study may vary, in the order of its sections, those that the text leaves
 * to their defaults too. Widths, positions, densities and single stiffnesses and loss factors have no
 * spread unless the file gives them one; for damping there is one factor on all of it.
 */
export function inputsOf({ raw, file }: AsRead): Input[] {
  const fields = numberFields(raw, file);
  const spreads = spreadsOf(raw, fields, file.spreads);
  return fields.map((field) => {
    const { path, kind, value } = field;
    const spread = spreads.of.get(field);
    return {
      name: formatPath(path),
      path,
      kind,
      value,
      ...bareUnit(field),
      ...(spread && { spread }),
    };
  });
}

/**
 * The change that gives an input another value (SI); at the value it has, what stands in the file.
 */
export function withInput(
  { raw }: AsRead,
  { path, value, perSI }: Input,
  valueSI: number,
): { readonly path: FilePath; readonly written: unknown } {
  const asIs = valueSI === value ? valueAt(raw, path) : undefined;
  return { path, written: asIs ?? valueSI * perSI };
}
