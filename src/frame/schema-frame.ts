import { z } from "zod";
import { KINDS } from "./quantity-kinds.ts";
import { arms } from "./schema-arms.ts";
import { bodies } from "./schema-bodies.ts";
import { control } from "./schema-control.ts";
import { excitation, flightMix } from "./schema-excitation.ts";
import {
  lengthRule,
  lossFactor,
  oneOf,
  POSITIVE,
  quantity,
  text,
  wrongType,
} from "./schema-fields.ts";
import { materials, plies } from "./schema-materials.ts";
import { plates } from "./schema-plates.ts";
import { propulsion } from "./schema-propulsion.ts";
import { sensors } from "./schema-sensors.ts";
import { section } from "./schema-shapes.ts";
import { dampingFactor, modulusFactors, spreads } from "./schema-spreads.ts";
import { candidates, stack } from "./schema-stack.ts";
import {
  joints,
  links,
  members,
  points,
  springs,
  standoffs,
  supports,
} from "./schema-structure.ts";
import type { FrameFile } from "./types.ts";

/** The whole file. References between its sections are checked in `references.ts`, on the raw file. */

const note = text("A remark.", 2000);

export const frameSchema = section("the frame file", {
  $schema: text("Where the editor finds this schema; not used by the program.", 2000).optional(),
  version: z
    .literal(1, { error: (issue) => wrongVersion(issue.input) })
    .describe("Version of the file format: 1."),
  name: text("Name of the frame.").min(1, lengthRule("The frame needs a name.")),
  notes: z
    .union([note, z.array(note)], {
      error: (issue) =>
        Array.isArray(issue.input)
          ? undefined
          : wrongType(issue.input, "a text or a list of texts"),
    })
    .transform((notes) => (typeof notes === "string" ? [notes] : notes))
    .prefault([])
    .describe("Remarks: a text or a list of texts."),
  beamTheory: oneOf(
    ["euler-bernoulli", "rayleigh", "timoshenko"],
    "rayleigh: bending with the rotary inertia of the section; timoshenko: with shear as well; euler-bernoulli: neither. Default: rayleigh.",
  ).default("rayleigh"),
  meshSize: quantity(
    KINDS.length,
    POSITIVE,
    "Wanted size of the plate cells. Default: chosen by the program.",
  ).exactOptional(),
  assemblyLossFactor: lossFactor(
    "Loss factor of screws, wires and straps, in every mode, except in soft mounts. Default: 0.02, common practice, no source.",
  ).default(0.02),
  dampingFactor,
  plies,
  materials,
  modulusFactors,
  plates,
  arms,
  standoffs,
  points,
  members,
  joints,
  links,
  springs,
  supports,
  bodies,
  propulsion: propulsion.exactOptional(),
  excitation,
  flightMix,
  sensors,
  control,
  stack: stack.exactOptional(),
  candidates,
  spreads,
})
  .refine(
    (file) => [file.plates, file.arms, file.members].some((parts) => Object.keys(parts).length > 0),
    {
      error: "There is nothing to model: the file needs at least one of plates, arms or members.",
    },
  )
  .transform(({ $schema: _ignored, ...file }): FrameFile => file);

function wrongVersion(input: unknown): string {
  if (input === undefined) return 'Missing: write "version": 1.';
  return wrongType(input, "1, the only version of the file that this program reads");
}
