import { readFileSync } from "node:fs";
import { parse } from "jsonc-parser";
import { describe, expect, test } from "vitest";
import { frameJsonSchema } from "../../src/frame/json-schema.ts";
import { starterFrame } from "../../src/frame/starter.ts";
import { SIZE_CLASSES } from "../../src/frame/starter-classes.ts";
import { fileWith, PLATE } from "./helpers.ts";
import { misfits } from "./json-schema-check.ts";

const schema = frameJsonSchema();

function fromText(text: string): unknown {
  return parse(text, [], { allowTrailingComma: true });
}

/** Every schema inside the schema. */
function parts(node: unknown): Readonly<Record<string, unknown>>[] {
  if (typeof node !== "object" || node === null) return [];
  const inner = Object.values(node).flatMap(parts);
  return Array.isArray(node) ? inner : [node as Readonly<Record<string, unknown>>, ...inner];
}

describe("the JSON Schema of the frame file", () => {
  test("says which draft it is and can be written as JSON", () => {
    expect(schema.$schema).toBe("http://json-schema.org/draft-07/schema#");
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
    expect(JSON.stringify(schema)).not.toContain('"$ref"');
  });

  test("needs version and name, and knows no other keys than the file's", () => {
    expect(schema.required).toEqual(["version", "name"]);
    expect(schema.additionalProperties).toBe(false);
  });

  test("allows only known keys in every section", () => {
    const sections = parts(schema).filter(
      (part) => part.type === "object" && part.properties !== undefined,
    );
    expect(sections.length).toBeGreaterThan(30);
    for (const section of sections) expect(section.additionalProperties).toBe(false);
  });

  test("describes every field, with the unit where there is one", () => {
    const sections = parts(schema).filter(
      (part) => part.type === "object" && part.properties !== undefined,
    );
    for (const section of sections) {
      for (const [key, field] of Object.entries(
        section.properties as Record<
          string,
          { description?: string; const?: string; anyOf?: unknown }
        >,
      )) {
        if (field.const !== undefined) continue;
        expect([key, field.description]).toEqual([key, expect.stringMatching(/\.$/)]);
      }
    }
    const plates = (schema.properties as Record<string, { additionalProperties: unknown }>).plates;
    const { thickness } = (plates.additionalProperties as { properties: Record<string, object> })
      .properties;
    expect(thickness).toEqual({
      description: 'Thickness of the plate. Bare number in mm, or with a unit: "5 mm".',
      anyOf: [{ type: "number" }, { type: "string", pattern: expect.any(String) }],
    });
  });

  test.each(["three-inch", "five-inch", "seven-inch", "ten-inch"])(
    "accepts the sample %s",
    (name) => {
      expect(misfits(fromText(readFileSync(`frames/${name}.jsonc`, "utf8")), schema)).toEqual([]);
    },
  );

  test.each(SIZE_CLASSES)("accepts a new %s frame", (sizeClass) => {
    expect(misfits(fromText(starterFrame(sizeClass, "x")), schema)).toEqual([]);
  });

  test("accepts spreads and factors as they are written", () => {
    const spreads = {
      "arms.*.thickness": "2 %",
      "bodies.battery.mass": 0.05,
      "arms.arm.joint.kappa": ["5.3", 28],
      "plates.base.thickness": "none",
    };
    const file = fileWith({ spreads, modulusFactors: { steel: 0.92 }, dampingFactor: 1.5 });
    expect(misfits(file, schema)).toEqual([]);
  });

  test.each<[string, object, string]>([
    ["a typo", fileWith({ plats: {} }), ": additionalProperties"],
    ["no name", { version: 1 }, ": required"],
    ["another version", fileWith({ version: 2 }), ".version: const"],
    ["a unit that is no text with a number", fileWith({ meshSize: "five mm" }), ".meshSize: anyOf"],
    ["a spread that is no share", fileWith({ spreads: { "a.b": "some" } }), ".spreads.a.b: anyOf"],
    ["a factor with a unit", fileWith({ modulusFactors: { a: "9 %" } }), ".modulusFactors.a: type"],
    ["a word that is no choice", fileWith({ beamTheory: "shear" }), ".beamTheory: enum"],
    [
      "a point with three numbers",
      fileWith({ candidates: { c: { plate: "base", at: [1, 2, 3] } } }),
      ".candidates.c.at: maxItems",
    ],
    [
      "a name that is too long",
      fileWith({ plates: { ["x".repeat(41)]: PLATE } }),
      `.plates.${"x".repeat(41)}: maxLength`,
    ],
  ])("refuses %s", (_name, file, misfit) => {
    expect(misfits(file, schema)).toContain(misfit);
  });
});
