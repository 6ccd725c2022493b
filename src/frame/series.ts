import { type InputError, inputError } from "../errors.ts";
import { shown } from "./shown.ts";
import { splitList } from "./split-list.ts";
import { type KnownUnit, lookUpUnit, toSI } from "./units.ts";
import { readWritten } from "./written.ts";

/** Lists and ranges of values as typed for sweeps and comparisons. */

const MOST_VALUES = 10_000;
/** A range that ends within this share of a step of its last value ends there. */
const HIT = 1e-9;

const NUMBER = String.raw`[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`;
const UNIT = "[A-Za-z%][A-Za-z0-9^/* %]*?";
const WITH_UNIT = new RegExp(`^(${NUMBER})\\s*(${UNIT})?$`);
const RANGE = new RegExp(
  `^(${NUMBER})\\s*(${UNIT})?\\s*\\.\\.\\.?\\s*(${NUMBER})\\s*(${UNIT})?\\s+(?:step\\s+(${NUMBER})\\s*(${UNIT})?|in\\s+(\\d+))$`,
);
const LOOKS_LIKE_RANGE = new RegExp(`^${NUMBER}\\s*(?:${UNIT})?\\s*\\.\\.`);
const HOW =
  'Write a range as "3 mm..8 mm step 0.5 mm", or with the number of values as "3 mm..8 mm in 11".';

/** One entry of the list: numbers in a unit ("" for none yet), or a value of another kind. */
type Entry =
  | { readonly text: string; readonly numbers: readonly number[]; readonly unit: string }
  | { readonly text: string; readonly value: unknown };

/**
 * The values of a series as they would stand in the file: "4 mm, 5 mm", "4, 5, 6 mm" (a unit given once,
 * at the end, holds for all), "3 mm..8 mm step 0.5 mm", "3..8 mm in 11", words, and lists in brackets;
 * all of them mixed by commas. Texts "<number> <unit>" where there is a unit, else numbers.
 * Throws InputError for what cannot be read, for units that do not go together, and for more than
 * 10 000 values.
 */
export function readSeries(text: string): unknown[] {
  if (text.trim() === "")
    throw bad(text, 'there is nothing in it. Write values, such as "4, 5, 6 mm".');
  const entries = splitList(text).map((entry) => readEntry(text, entry));
  const unit = commonUnit(text, entries);
  const count = entries.reduce((sum, one) => sum + ("numbers" in one ? one.numbers.length : 1), 0);
  if (count > MOST_VALUES) throw tooMany(text, count);
  return entries.flatMap((entry): unknown[] => {
    if ("value" in entry) return [entry.value];
    const own = entry.unit === "" ? unit : entry.unit;
    return entry.numbers.map((value) => (own === "" ? value : `${value} ${own}`));
  });
}

function readEntry(series: string, text: string): Entry {
  if (text === "") throw bad(series, "there is nothing between two commas, or at one end.");
  const single = WITH_UNIT.exec(text);
  if (single !== null) {
    return { text, numbers: [Number(single[1])], unit: single[2]?.trim() ?? "" };
  }
  const range = RANGE.exec(text);
  if (range !== null) return readRange(text, range);
  if (LOOKS_LIKE_RANGE.test(text)) throw bad(text, `this is no complete range. ${HOW}`);
  return { text, value: readWritten(text) };
}

function readRange(text: string, match: RegExpExecArray): Entry {
  const [, from, fromUnit, to, toUnit, step, stepUnit, count] = match;
  const units = [fromUnit, toUnit, stepUnit].map((one) => one?.trim() ?? "");
  const unit = units.find((one) => one !== "") ?? "";
  const inUnit = (digits: string, own: string) =>
    own === "" || own === unit ? Number(digits) : converted(text, Number(digits), own, unit);
  const a = inUnit(from, units[0]);
  const b = inUnit(to, units[1]);
  const numbers =
    count === undefined
      ? stepped(text, a, b, inUnit(step, units[2]))
      : spread(text, a, b, Number(count));
  return { text, numbers, unit };
}

function stepped(text: string, a: number, b: number, step: number): number[] {
  if (step === 0) throw bad(text, `the step must not be zero. ${HOW}`);
  const steps = (b - a) / step;
  if (steps < 0) {
    throw bad(
      text,
      `with steps of ${step} one never gets from ${a} to ${b}: turn the step's sign.`,
    );
  }
  const whole = Math.round(steps);
  const hit = Math.abs(steps - whole) <= HIT;
  const last = hit ? whole : Math.floor(steps);
  if (!(last < MOST_VALUES)) throw tooMany(text, last + 1);
  return Array.from({ length: last + 1 }, (_, i) => (hit && i === last ? b : clean(a + i * step)));
}

function spread(text: string, a: number, b: number, count: number): number[] {
  if (count < 2)
    throw bad(text, `a range has at least its two ends, so "in 2" is the least. ${HOW}`);
  if (count > MOST_VALUES) throw tooMany(text, count);
  const step = (b - a) / (count - 1);
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? b : clean(a + i * step)));
}

/** 3.5 and not 3.5000000000000004; no negative zero. */
function clean(value: number): number {
  return Number(value.toPrecision(12)) + 0;
}

function converted(text: string, value: number, from: string, to: string): number {
  const [a, b] = [from, to].map((unit) => knownUnit(text, unit));
  if (a.dimension !== b.dimension) throw notTogether(text, from, to);
  return clean(toSI(value, a) / toSI(1, b));
}

function knownUnit(text: string, unit: string): KnownUnit {
  const known = lookUpUnit(unit);
  if (known === undefined) throw bad(text, `the unit ${shown(unit)} is not known.`);
  return known;
}

/** The unit of the numbers that have none: that of the last entry. "" where there is none. */
function commonUnit(series: string, entries: readonly Entry[]): string {
  const numbers = entries.filter((entry) => "numbers" in entry);
  const units = [...new Set(numbers.map(({ unit }) => unit).filter((unit) => unit !== ""))];
  if (units.length === 0) return "";
  const known = units.filter((unit) => lookUpUnit(unit) !== undefined);
  const odd = known.find((unit) => {
    return lookUpUnit(unit)?.dimension !== lookUpUnit(known[0])?.dimension;
  });
  if (odd !== undefined) throw notTogether(series, known[0], odd);
  const bare = numbers.find(({ unit }) => unit === "");
  const last = numbers.at(-1)?.unit ?? "";
  if (bare === undefined) return last;
  if (last === "" || units.length > 1) {
    throw bad(
      series,
      `${shown(bare.text)} has no unit where others have ${units.map(shown).join(", ")}. Give every value its unit, or all of them one, at the end.`,
    );
  }
  return last;
}

function notTogether(text: string, a: string, b: string): InputError {
  return bad(text, `the units ${shown(a)} and ${shown(b)} do not go together.`);
}

function tooMany(text: string, count: number): InputError {
  return bad(text, `it has ${count} values, and ${MOST_VALUES} is the most. Take a larger step.`);
}

function bad(text: string, why: string): InputError {
  return inputError("", `The series ${shown(text)} cannot be read: ${why}`);
}
