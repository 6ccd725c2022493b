import type { FilePath } from "./file-path.ts";
import { frameJsonSchema, type JsonSchema } from "./json-schema.ts";
import { isRecord } from "./names.ts";

/** What the schema knows about the parts of a section, by way of its JSON Schema. */

let schema: JsonSchema | undefined;

/** Keys that may stand in the section at `path` of the raw file, written there or not. */
export function knownKeys(raw: unknown, path: FilePath): string[] {
  const keys = schemasAt(raw, path).flatMap(({ properties }) =>
    isRecord(properties) ? Object.keys(properties) : [],
  );
  return [...new Set(keys)];
}

/** Sections whose parts the user names, and which hold values rather than sections or lists. */
export function takesNewNames(raw: unknown, path: FilePath): boolean {
  return schemasAt(raw, path).some(({ additionalProperties: part, properties }) => {
    if (!isRecord(part) || properties !== undefined) return false;
    return branches(part).some(({ type }) => type === "number");
  });
}

/** The schemas that may hold at `path`: more than one where sections differ by a word. */
function schemasAt(raw: unknown, path: FilePath): JsonSchema[] {
  schema ??= frameJsonSchema();
  let value = raw;
  let found = fitting(branches(schema), value);
  for (const step of path) {
    value = isRecord(value) && typeof step === "string" ? value[step] : entryOf(value, step);
    found = fitting(
      found.flatMap((one) => branchesOf(partOf(one, step))),
      value,
    );
  }
  return found;
}

function entryOf(value: unknown, step: string | number): unknown {
  return Array.isArray(value) && typeof step === "number" ? value[step] : undefined;
}

function partOf(whole: JsonSchema, step: string | number): unknown {
  if (typeof step === "number") {
    return Array.isArray(whole.items) ? whole.items[step] : whole.items;
  }
  const { properties, additionalProperties } = whole;
  if (isRecord(properties) && Object.hasOwn(properties, step)) return properties[step];
  return additionalProperties;
}

function branchesOf(part: unknown): JsonSchema[] {
  return isRecord(part) ? branches(part) : [];
}

function branches(one: JsonSchema): JsonSchema[] {
  const inner = one.anyOf ?? one.oneOf;
  return Array.isArray(inner) ? inner.flatMap(branchesOf) : [one];
}

/** Without the sections whose fixed word, such as "kind", is not the one written. */
function fitting(schemas: readonly JsonSchema[], value: unknown): JsonSchema[] {
  if (!isRecord(value)) return [...schemas];
  return schemas.filter(({ properties }) => {
    if (!isRecord(properties)) return true;
    return Object.entries(properties).every(([key, field]) => {
      const fixed = isRecord(field) ? field.const : undefined;
      return fixed === undefined || !Object.hasOwn(value, key) || value[key] === fixed;
    });
  });
}
