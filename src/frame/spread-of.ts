import { InputError } from "../errors.ts";
import { type FilePath, formatPath } from "./file-path.ts";
import type { PlacedFinding } from "./issue-findings.ts";
import { nearestName } from "./nearest-name.ts";
import { type NumberField, readIn } from "./number-field.ts";
import { parsePath } from "./parse-path.ts";
import { ANY_NAME, placesLike, problemOfPlace } from "./place.ts";
import type { Named } from "./types-basic.ts";
import type { SpreadDef } from "./types-inputs.ts";

/** Where 95 % of real frames lie, SI. */
export interface FieldSpread {
  readonly from: number;
  readonly to: number;
  /** Normal distribution of the value, or of its logarithm. */
  readonly scale: "even" | "log";
  readonly source: "file" | "common practice, no source";
}

const OF_ZERO = "The value is zero, and so is any share of it: give both ends in a list.";

/** The spread of each field that has one, and what is wrong with those in the file. */
export interface Spreads {
  readonly of: ReadonlyMap<NumberField, FieldSpread>;
  readonly findings: readonly PlacedFinding[];
}

/** The usual spreads of the fields, and over them those of the file; an exact path goes before a wide one. */
export function spreadsOf(
  raw: unknown,
  fields: readonly NumberField[],
  given: Named<SpreadDef>,
): Spreads {
  const of = new Map<NumberField, FieldSpread>();
  for (const field of fields) {
    const spread = usualSpread(field);
    if (spread !== undefined) of.set(field, spread);
  }
  const findings: PlacedFinding[] = [];
  const entries = Object.entries(given).map(([key, def]) => ({
    key,
    def,
    ...meant(raw, fields, key),
  }));
  const wideFirst = entries.toSorted((a, b) => b.fields.length - a.fields.length);
  for (const { key, def, fields: meantFields, problem } of wideFirst) {
    const problems = problem === undefined ? [] : [problem];
    for (const field of meantFields) {
      const spread = def === "none" ? undefined : givenSpread(field, def);
      // of many places a few may be at zero: those stay as they are
      if (spread === OF_ZERO && meantFields.length > 1) continue;
      if (typeof spread === "string") problems.push(spread);
      else if (spread === undefined) of.delete(field);
      else of.set(field, spread);
    }
    // the ends of a wide path are wrong in the same way everywhere
    const [message] = problems;
    if (message !== undefined) {
      findings.push({ path: ["spreads", key], message, atKey: problem !== undefined });
    }
  }
  return { of, findings };
}

function usualSpread({ value, usual }: NumberField): FieldSpread | undefined {
  if (usual === undefined) return undefined;
  const [low, high] =
    usual.scale === "log" ? [usual.low, usual.high] : [1 - usual.share, 1 + usual.share];
  const source = "common practice, no source";
  return { from: clean(value * low), to: clean(value * high), scale: usual.scale, source };
}

/** The spread, or what is wrong with it. */
function givenSpread(field: NumberField, def: Exclude<SpreadDef, "none">): FieldSpread | string {
  if (typeof def === "number") {
    const half = Math.abs(field.value) * def;
    if (half === 0) return OF_ZERO;
    const [from, to] = [clean(field.value - half), clean(field.value + half)];
    return { from, to, scale: "even", source: "file" };
  }
  const ends = def.map((one) => readIn(field, one));
  for (const end of ends) if ("problem" in end) return end.problem;
  const [from, to] = ends.map((end) => ("value" in end ? end.value : Number.NaN));
  if (!(from < to)) {
    return 'The first end must be smaller than the second; for a number taken as exact write "none".';
  }
  const isPositive = field.kind === "position" || from > 0;
  if (!isPositive) return "Both ends must be more than zero.";
  const scale = field.usual?.scale ?? "even";
  return { from, to, scale, source: "file" };
}

/** 0.00194 and not 0.0019399999999999999. */
function clean(value: number): number {
  return Number(value.toPrecision(12));
}

interface Meant {
  readonly fields: readonly NumberField[];
  readonly problem?: string;
}

/** The numbers that a path means: with "*" for any name, and all entries of a list. */
function meant(raw: unknown, fields: readonly NumberField[], key: string): Meant {
  let path: FilePath;
  try {
    path = parsePath(key);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { fields: [], problem: error.findings[0].message };
  }
  const texts = path.includes(ANY_NAME)
    ? placesLike(raw, path).map(formatPath)
    : [formatPath(path)];
  const found = fields.filter((field) => {
    const name = formatPath(field.path);
    return texts.some(
      (text) =>
        name === text || (/^(#\d+)+$/.test(name.slice(text.length)) && name.startsWith(text)),
    );
  });
  return found.length > 0
    ? { fields: found }
    : { fields: [], problem: nothingMeant(raw, fields, path) };
}

function nothingMeant(raw: unknown, fields: readonly NumberField[], path: FilePath): string {
  const text = formatPath(path);
  const near = nearestName(
    text,
    fields.map((field) => formatPath(field.path)),
  );
  const hint = near === undefined ? "" : ` Did you mean ${near}?`;
  const missing = path.includes(ANY_NAME) ? undefined : problemOfPlace(raw, path);
  if (missing !== undefined) return `There is no such number. ${missing}`;
  return `No number with a spread is meant by this.${hint} Thicknesses, widths, modulusFactors, densities, masses, joints, positions, mounts and damping can have one.`;
}
