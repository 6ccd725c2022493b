import { z } from "zod";
import { nearestName } from "./nearest-name.ts";
import { needed, QUANTITY_PATTERN, type Range, readQuantity } from "./quantity.ts";
import { KINDS, type QuantityKind } from "./quantity-kinds.ts";
import { choices, shown } from "./shown.ts";
import type { Copies, DofName } from "./types-basic.ts";

/** The pieces every section of the schema is made of; each carries its own words for what is wrong. */

// A frame is read once: compiling each section of the schema would cost 10 ms more than it saves
// (first parse of a 6 kB file 24 ms compiled, 14 ms without; Node 20, 2 cores).
z.config({ jitless: true });

/** Ranges that fields name by word. */
export const POSITIVE: Range = { above: 0 };
export const NOT_NEGATIVE: Range = { least: 0 };
export const ANY: Range = {};

/**
 * A finding of a rule that zod does not know. It ends the field: rules over several fields are not
 * tried on a value that is wrong by itself.
 */
export function finding(message: string, path: (string | number)[] = []) {
  return { code: "custom", message, path, continue: false } as const;
}

/** The same for zod's own rules about length: `.min(1, lengthRule("..."))`. */
export function lengthRule(message: string) {
  return { error: message, abort: true } as const;
}

/**
 * A quantity: a bare number in the unit of its kind, or a string with a unit. Comes out in SI.
 * The description ends with the unit, for editors.
 */
export function quantity(kind: QuantityKind, range: Range, meaning: string) {
  const written = z.union([z.number(), z.string().meta({ pattern: QUANTITY_PATTERN })], {
    error: (issue) => notAQuantity(issue.input, kind),
  });
  const units =
    kind === KINDS.fraction
      ? 'A number, or per cent: "5 %".'
      : `Bare number in ${kind.bareUnit}, or with a unit: ${shown(kind.example)}.`;
  return written
    .transform((value, context) => {
      const reading = readQuantity(value, kind, range);
      if ("value" in reading) return reading.value;
      context.issues.push({ code: "custom", message: reading.problem, input: value });
      return z.NEVER;
    })
    .describe(`${meaning} ${units}`);
}

function notAQuantity(input: unknown, kind: QuantityKind): string {
  if (input === undefined) return `Missing: ${needed(kind)}`;
  if (typeof input === "number") return `This number is too large to be read: ${needed(kind)}`;
  return `${sentence(shown(input))} was found: ${needed(kind)}`;
}

/** A length that may have any sign, for coordinates. */
export function coordinate(meaning: string) {
  return quantity(KINDS.length, ANY, meaning);
}

/** A fraction; 0 to 1 unless said otherwise. */
export function fraction(meaning: string, range: Range = { least: 0, most: 1 }) {
  return quantity(KINDS.fraction, range, meaning);
}

/** Loss factors of rubbers can be above 1. */
export function lossFactor(meaning: string) {
  return fraction(meaning, { least: 0, most: 3 });
}

/** A plain number without a unit. */
export function plainNumber(meaning: string, example: string, range: Range = ANY) {
  const say = (input: unknown) =>
    wrongType(input, `a number without a unit, for example ${example}`);
  return z
    .number({ error: (issue) => say(issue.input) })
    .superRefine((value, context) => {
      const problem = outOf(range, value);
      if (problem !== undefined) context.addIssue(finding(problem));
    })
    .describe(meaning);
}

function outOf({ above, least, most }: Range, value: number): string | undefined {
  if (above !== undefined && !(value > above)) return mustBe(value, `more than ${above}`);
  if (least !== undefined && !(value >= least)) return mustBe(value, `${least} or more`);
  if (most !== undefined && !(value <= most)) return mustBe(value, `${most} or less`);
  return undefined;
}

function mustBe(value: number, limit: string): string {
  return `${value} is not possible: it must be ${limit}.`;
}

/** A whole number from `least` to `most`. */
export function count(meaning: string, least: number, most: number) {
  const say = `a whole number from ${least} to ${most}`;
  return z
    .int({ error: (issue) => wrongType(issue.input, say) })
    .min(least, { error: (issue) => wrongType(issue.input, say), abort: true })
    .max(most, { error: (issue) => wrongType(issue.input, say), abort: true })
    .describe(meaning);
}

/** One of a few words. */
export function oneOf<const T extends readonly [string, ...string[]]>(words: T, meaning: string) {
  return z.enum(words, { error: (issue) => notAChoice(issue.input, words) }).describe(meaning);
}

/** Says what the choices are, and which of them was probably meant. */
export function notAChoice(input: unknown, words: readonly string[]): string {
  if (input === undefined) return `Missing: write ${choices(words)}.`;
  const near = typeof input === "string" ? nearestName(input, words) : undefined;
  const hint = near === undefined ? "" : ` Did you mean ${shown(near)}?`;
  return `${sentence(shown(input))} is not one of the choices.${hint} Write ${choices(words)}.`;
}

/** A text, such as a name or a remark. */
export function text(meaning: string, longest = 200) {
  return z
    .string({ error: (issue) => wrongType(issue.input, "a text in quotes") })
    .max(longest, { error: `This text is too long: at most ${longest} characters.` })
    .describe(meaning);
}

/** The name of something else in the file; whether it exists is checked after the shape. */
export function nameOf(what: string, meaning: string) {
  return z
    .string({ error: (issue) => wrongType(issue.input, `the name of ${what} in quotes`) })
    .describe(meaning);
}

/** One name or a list of them; comes out as a list without repeats. */
export function namesOf(what: string, meaning: string) {
  const one = z.string({
    error: (issue) => wrongType(issue.input, `the name of ${what} in quotes`),
  });
  const say = `the name of ${what} in quotes, or a list of such names`;
  return z
    .union([one, z.array(one).min(1, lengthRule("Write at least one name."))], {
      error: ({ input }) => (Array.isArray(input) ? undefined : wrongType(input, say)),
    })
    .transform((names) => [...new Set(typeof names === "string" ? [names] : names)])
    .describe(meaning);
}

/** Two different names. */
export function pairOf(what: "plate" | "point", meaning: string) {
  const name = z.string({
    error: (issue) => wrongType(issue.input, `the name of a ${what} in quotes`),
  });
  const say = `the names of two ${what}s in a list`;
  return z
    .tuple([name, name], { error: (issue) => wrongType(issue.input, say) })
    .refine(([a, b]) => a !== b, {
      error: (issue) =>
        `Both names are ${shown((issue.input as string[])[0])}: two different ones are needed.`,
    })
    .describe(meaning);
}

export const COPIES = ["none", "left and right", "front and rear", "all four corners"] as const;

export function copies() {
  return oneOf(
    COPIES satisfies readonly Copies[],
    "Mirrored copies of this part: left and right, front and rear, or at all four corners. Default: none.",
  ).default("none");
}

export const DOF_NAMES = ["x", "y", "z", "rx", "ry", "rz"] as const satisfies readonly DofName[];

/** Directions: a list, or "all"; comes out in the order x, y, z, rx, ry, rz. */
export function directions(meaning: string) {
  const list = z
    .array(oneOf(DOF_NAMES, "A direction."))
    .min(1, lengthRule("Name at least one direction."));
  return z
    .union([z.literal("all"), list], {
      error: (issue) =>
        Array.isArray(issue.input)
          ? undefined
          : wrongType(issue.input, `"all" or a list of directions such as ["x", "y", "rz"]`),
    })
    .transform((chosen) => DOF_NAMES.filter((name) => chosen === "all" || chosen.includes(name)))
    .describe(meaning);
}

/** What was found and what to write: "A list was found: write a number." */
export function wrongType(input: unknown, need: string): string {
  if (input === undefined) return `Missing: write ${need}.`;
  return `${sentence(shown(input))} was found: write ${need}.`;
}

function sentence(text: string): string {
  return text[0].toUpperCase() + text.slice(1);
}
