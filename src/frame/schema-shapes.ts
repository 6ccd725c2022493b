import { z } from "zod";
import { nearestName } from "./nearest-name.ts";
import { KINDS } from "./quantity-kinds.ts";
import {
  coordinate,
  lengthRule,
  notAChoice,
  POSITIVE,
  quantity,
  wrongType,
} from "./schema-fields.ts";
import { choices, shown } from "./shown.ts";
import type { Named } from "./types-basic.ts";

/** Sections in braces, records of named parts, points and lists of points. */

/**
 * A section in braces in which only the keys of `shape` may stand. Its message for unknown keys has
 * one line per key, in zod's order of them; `issue-findings.ts` gives each line to its key.
 */
export function section<S extends z.core.$ZodLooseShape>(what: string, shape: S) {
  const known = Object.keys(shape);
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === "unrecognized_keys"
        ? issue.keys.map((key) => unknownKey(key, what, known)).join("\n")
        : wrongType(issue.input, `${what} in { }`),
  });
}

function unknownKey(key: string, what: string, known: readonly string[]): string {
  const near = nearestName(key, known);
  const hint = near === undefined ? "" : ` Did you mean ${shown(near)}?`;
  return `${shown(key)} is not known for ${what}.${hint} Possible here: ${choices(known, 30)}.`;
}

/** Sections that differ by one key with fixed words, such as "kind" or "shape". */
export function sectionBy<
  const K extends string,
  Options extends readonly [z.core.$ZodTypeDiscriminable, ...z.core.$ZodTypeDiscriminable[]],
>(key: K, what: string, words: readonly string[], options: Options) {
  return z.discriminatedUnion(key, options, {
    error: (issue) => {
      const { input } = issue;
      if (issue.code !== "invalid_union") return wrongType(input, `${what} in { }`);
      const written = (input as Readonly<Record<string, unknown>>)[key];
      return notAChoice(written, words);
    },
  });
}

/** Sections that differ by their keys alone: the one with the least to mend speaks. */
export function sectionOf<
  Options extends readonly [z.core.$ZodType, z.core.$ZodType, ...z.core.$ZodType[]],
>(what: string, options: Options) {
  return z.union(options, {
    error: ({ input }) => {
      const isSection = typeof input === "object" && input !== null && !Array.isArray(input);
      return isSection ? undefined : wrongType(input, `${what} in { }`);
    },
  });
}

/**
 * Named parts. The record that comes out has no prototype, so that no name can be mistaken for a
 * property every object has. What a name may look like is checked in `names.ts`, on the raw file,
 * because a zod record passes over some names in silence.
 */
export function named<S extends z.ZodType>(part: S, what: string, meaning: string) {
  const name = z.string().meta({ minLength: 1, maxLength: 40 });
  return z
    .record(name, part, { error: (issue) => wrongType(issue.input, `{ } with named ${what}`) })
    .transform((record): Named<z.output<S>> => withoutPrototype(record))
    .prefault({})
    .describe(meaning);
}

function withoutPrototype<T>(record: Readonly<Record<string, T>>): Readonly<Record<string, T>> {
  return Object.assign(Object.create(null), record);
}

export function vec2(meaning: string) {
  return z
    .tuple([coordinate("x, forward."), coordinate("y, left.")], {
      error: (issue) => wrongType(issue.input, "a point [x, y]"),
    })
    .describe(meaning);
}

export function vec3(meaning: string) {
  return z
    .tuple([coordinate("x, forward."), coordinate("y, left."), coordinate("z, up.")], {
      error: (issue) => wrongType(issue.input, "a point [x, y, z]"),
    })
    .describe(meaning);
}

/** Lengths along x, y and z of a box, each more than zero. */
export function boxSize(meaning: string) {
  const side = (axis: string) => quantity(KINDS.length, POSITIVE, `Length along ${axis}.`);
  return z
    .tuple([side("x"), side("y"), side("z")], {
      error: (issue) => wrongType(issue.input, "three lengths [along x, along y, along z]"),
    })
    .describe(meaning);
}

/** Two lengths, each more than zero. */
export function twoLengths(need: string, meaning: string) {
  const length = quantity(KINDS.length, POSITIVE, "Length.");
  return z
    .tuple([length, length], { error: (issue) => wrongType(issue.input, need) })
    .describe(meaning);
}

/** One point or a list of points; comes out as a list. */
export function points2(meaning: string) {
  const point = vec2("One point [x, y].");
  return z
    .union([point, z.array(point).min(1, lengthRule("Write at least one point [x, y]."))])
    .transform((at): readonly z.output<typeof point>[] => (isOnePoint(at) ? [at] : at))
    .describe(meaning);
}

function isOnePoint(at: readonly unknown[]): at is readonly [number, number] {
  return typeof at[0] === "number";
}

/** The corners of a polygon in order; closed by the program. */
export function polygon(least: number, meaning: string) {
  return z
    .array(vec2("A corner [x, y]."), {
      error: (issue) => wrongType(issue.input, "a list of corners [x, y]"),
    })
    .min(
      least,
      lengthRule("An outline needs at least 3 corners [x, y], or 2 where it is mirrored."),
    )
    .describe(meaning);
}
