/** The columns of what was varied: numbers wherever all values have one unit, texts otherwise. */

import type { Parameter } from "./jobs.ts";

/** What stands in one place of a table; no figure where it is undefined, NaN or infinite. */
export type Cell = number | string | undefined;

export interface InputColumn {
  /** with the unit of its numbers: arms.arm.thickness_mm */
  readonly title: string;
  readonly cell: (written: unknown) => Cell;
}

const NUMBER_THEN_UNIT =
  /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*([A-Za-z%][A-Za-z0-9^/* %]*?)\s*$/;

export function inputColumn({ name, values, unit = "" }: Parameter): InputColumn {
  const read = values.map((written) => numberAndUnit(written, unit));
  const [first] = read;
  if (first === undefined || read.some((one) => one?.unit !== first.unit)) {
    return { title: name, cell: asText };
  }
  return {
    title: first.unit === "" ? name : `${name}_${inTitle(first.unit)}`,
    cell: (written) => numberAndUnit(written, unit)?.value,
  };
}

function numberAndUnit(written: unknown, bareUnit: string) {
  if (typeof written === "number") return { value: written, unit: bareUnit };
  const match = typeof written === "string" ? NUMBER_THEN_UNIT.exec(written) : null;
  if (match === null) return undefined;
  return { value: Number(match[1]), unit: match[2].replace(/\s+/g, " ") };
}

/** "g/cm^3" as g_per_cm3. */
function inTitle(unit: string): string {
  return unit
    .replaceAll("%", "percent")
    .replaceAll("^", "")
    .replace(/\s*\/\s*/g, "_per_")
    .replace(/[ *]+/g, "_");
}

function asText(written: unknown): string {
  return typeof written === "string" ? written : (JSON.stringify(written) ?? "");
}
