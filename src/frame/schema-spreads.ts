import { z } from "zod";
import { QUANTITY_PATTERN, readQuantity } from "./quantity.ts";
import { KINDS } from "./quantity-kinds.ts";
import { plainNumber, wrongType } from "./schema-fields.ts";
import { named } from "./schema-shapes.ts";
import type { Named } from "./types-basic.ts";
import type { SpreadDef, WrittenNumber } from "./types-inputs.ts";

/** How far real frames lie from the drawing: spreads of its numbers, factors on moduli and damping. */

/** A share of 1 would let a thickness be zero. */
const MOST_SHARE = 0.9;
const NEED = 'a share such as "2 %", both ends in a list such as ["4.8 mm", "5.1 mm"], or "none"';

const end = z.union([z.number(), z.string()]);

const spread = z
  .union(
    [z.number(), z.string().meta({ pattern: `^none$|${QUANTITY_PATTERN}` }), z.tuple([end, end])],
    {
      error: ({ input }) => wrongType(input, NEED),
    },
  )
  .transform((given, context): SpreadDef => {
    if (given === "none" || typeof given === "object") return given;
    const isShare = typeof given === "number" || /^\s*[\d.+-]/.test(given);
    const reading = isShare
      ? readQuantity(given, KINDS.fraction, { above: 0, most: MOST_SHARE })
      : { problem: wrongType(given, NEED) };
    if ("value" in reading) return reading.value;
    context.issues.push({ code: "custom", message: reading.problem, input: given });
    return z.NEVER;
  });

/** Keyed by path; whether there is such a number is checked on the whole file. */
export const spreads = z
  .record(z.string().meta({ minLength: 1, maxLength: 200 }), spread, {
    error: ({ input }) => wrongType(input, "{ } with spreads by path"),
  })
  .transform((record): Named<SpreadDef> => Object.assign(Object.create(null), record))
  .prefault({})
  .describe(
    'How far real frames lie from the drawing, by path such as "arms.arm.thickness" or "plates.*.thickness": 95 % of them within a share of the value ("2 %") or between two values in a list, in the field\'s unit; "none" for exact. Default: by the kind of number.',
  );

export const modulusFactors = named(
  plainNumber(
    "Factor on all moduli of the material of this name, above 0 and up to 10: 0.92 where a bend test shows a sheet 8 % softer than the table. Default: 1.",
    "0.92",
    { above: 0, most: 10 },
  ),
  "factors",
  "Factors on the moduli of materials, by the material's name.",
);

export const dampingFactor = plainNumber(
  "Factor on the damping of everything, soft mounts too, above 0 and up to 100. Default: 1.",
  "1.5",
  { above: 0, most: 100 },
).default(1);

/** Whether a written number has a unit of its own. */
export function hasUnit(written: WrittenNumber): boolean {
  return typeof written === "string" && /[^\d\s.eE+-]/.test(written);
}
