/** Options that change a frame: a place in the file and the values it takes. */

import { inputError } from "../../errors.ts";
import type { Change, FrameSource } from "../../frame/change.ts";
import { expandPath } from "../../frame/change.ts";
import { formatPath } from "../../frame/file-path.ts";
import { inputsOf } from "../../frame/inputs.ts";
import { parsePath } from "../../frame/parse-path.ts";
import { readSeries } from "../../frame/series.ts";

/** One option: the same values at one place or, with "*", at several together. */
export interface Varied {
  /** as typed */
  readonly path: string;
  /** short, for names of variants: the last steps of the path */
  readonly short: string;
  readonly values: readonly VariedValue[];
}

export interface VariedValue {
  /** as a person writes it: "4 mm" */
  readonly text: string;
  readonly written: unknown;
  readonly changes: readonly Change[];
}

/**
 * Reads `path=values`.
 *
 * @param option its name, for messages
 * @throws InputError for a text that cannot be read or a place that does not exist
 */
export function readVaried(option: string, text: string, source: FrameSource): Varied {
  const at = equalsSign(text);
  if (at < 0) {
    throw inputError(
      option,
      `${JSON.stringify(text)} names no values: write a place in the file, an equals sign and values, such as "arms.arm.thickness=4 mm, 5 mm".`,
    );
  }
  const path = text.slice(0, at).trim();
  const values = inOption(option, () => readSeries(text.slice(at + 1)));
  requireDifferent(option, path, values);
  const places = inOption(option, () => expandPath(source, parsePath(path)));
  const unit = inputsOf(source).find((i) => i.name === formatPath(places[0]))?.unit ?? "";
  return {
    path,
    short: shortName(path),
    values: values.map((written) => ({
      text: textOf(written, unit),
      written,
      changes: places.map((place) => ({ path: place, written })),
    })),
  };
}

/** As a person writes it; a bare number is in the field's own unit. */
function textOf(written: unknown, unit: string): string {
  if (typeof written === "string") return written;
  return typeof written === "number" ? `${written} ${unit}`.trim() : JSON.stringify(written);
}

function requireDifferent(option: string, path: string, values: readonly unknown[]): void {
  const texts = values.map((v) => JSON.stringify(v));
  const twice = texts.find((t, i) => texts.indexOf(t) < i);
  if (twice === undefined) return;
  throw inputError(option, `${path} is set to ${twice} twice; leave one of them out.`);
}

/** The first equals sign that is not inside quotes. */
function equalsSign(text: string): number {
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    if (text[i] === '"') quoted = !quoted;
    else if (text[i] === "=" && !quoted) return i;
  }
  return -1;
}

/** What is wrong with a path or a series is wrong with the option. */
function inOption<T>(option: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw namedAfter(option, error);
  }
}

function namedAfter(option: string, error: unknown): unknown {
  if (!(error instanceof Error) || !("findings" in error)) return error;
  const [first] = (error as ReturnType<typeof inputError>).findings;
  const where = first.path === "" ? "" : `${first.path}: `;
  return inputError(option, `${where}${first.message}`);
}

/** Coordinates of what has them, by the name of the field. */
const COORDINATES: Readonly<Record<string, readonly string[]>> = {
  at: ["x", "y", "z"],
  root: ["x", "y"],
  tip: ["x", "y"],
};

/** Sections of which a frame has several parts, so that the part's name is needed. */
const NAMED_SECTIONS: ReadonlySet<string> = new Set([
  "bodies",
  "candidates",
  "plates",
  "standoffs",
]);

/** "thickness" of arms.arm.thickness, "battery at x" of bodies.battery.at#1, "width entry 1" of arms.arm.width#1 */
function shortName(path: string): string {
  const steps = parsePath(path);
  const names = steps.map((step, i) => {
    if (typeof step === "string") return step;
    return COORDINATES[String(steps[i - 1])]?.[step] ?? `entry ${step + 1}`;
  });
  const field = steps.findLastIndex((s) => typeof s === "string");
  // What a part is called matters where several could be meant: bodies, not the arms.
  const first = NAMED_SECTIONS.has(String(steps[0])) ? 1 : Math.min(2, field);
  return names
    .slice(first)
    .map((step) => (step === "*" ? `all ${steps[0]}` : step))
    .join(" ");
}

/** Every combination of the values, the last option's changing fastest. */
export function combinations(varied: readonly Varied[]): (readonly VariedValue[])[] {
  return varied.reduce<(readonly VariedValue[])[]>(
    (all, { values }) => all.flatMap((before) => values.map((v) => [...before, v])),
    [[]],
  );
}

/** "4 mm thickness, 15 mm width", "isolators none": what tells variants apart comes first where it can. */
export function combinationName(varied: readonly Varied[], values: readonly VariedValue[]): string {
  return values
    .map(({ text }, i) =>
      /^[-+.\d]/.test(text) ? `${text} ${varied[i].short}` : `${varied[i].short} ${text}`,
    )
    .join(", ");
}

/** "arms.arm.thickness = 4 mm" each */
export function toldChanges(varied: readonly Varied[], values: readonly VariedValue[]): string[] {
  return values.map((v, i) => `${varied[i].path} = ${v.text}`);
}
