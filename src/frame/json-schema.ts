import { z } from "zod";
import { frameSchema } from "./schema-frame.ts";

export type JsonSchema = Readonly<Record<string, unknown>>;

/**
 * The frame file as JSON Schema (draft 7, the one editors know best): what may be written, with
 * quantities as a number or a text with a unit. References between sections and rules between
 * fields are beyond it; `parseFrame` checks those.
 */
export function frameJsonSchema(): JsonSchema {
  const schema = z.toJSONSchema(frameSchema, {
    io: "input",
    target: "draft-7",
    reused: "inline",
  });
  return {
    $schema: schema.$schema,
    title: "Frame file",
    description:
      "A multirotor frame: plates, arms, masses, propulsion, and places for the sensor stack.",
    allowComments: true,
    allowTrailingCommas: true,
    ...schema,
  };
}
