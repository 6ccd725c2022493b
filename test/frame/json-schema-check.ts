/**
 * A small check of values against JSON Schema draft 7: the keywords that the frame schema uses, and
 * an error for any other, so that nothing passes unread.
 */
type Schema = Readonly<Record<string, unknown>>;

const REMARKS = new Set([
  "$schema",
  "title",
  "description",
  "default",
  "allowComments",
  "allowTrailingCommas",
]);

/** What does not fit, as "path: keyword"; empty when the value fits. */
export function misfits(value: unknown, schema: Schema, path = ""): string[] {
  return Object.entries(schema).flatMap(([keyword, rule]) => {
    if (REMARKS.has(keyword)) return [];
    const check = CHECKS[keyword];
    if (check === undefined) throw new Error(`no check for the keyword ${keyword} at ${path}`);
    return check(value, rule as never, path, schema).map((inner) =>
      inner === "" ? `${path}: ${keyword}` : inner,
    );
  });
}

/** Answers "" for a misfit of the keyword itself, or the misfits further in. */
type Check = (value: unknown, rule: never, path: string, schema: Schema) => string[];

const ok: string[] = [];
const when = (bad: boolean) => (bad ? [""] : ok);

const CHECKS: Readonly<Record<string, Check>> = {
  type: (value, rule: string | readonly string[]) =>
    when(![rule].flat().some((type) => hasType(value, type))),
  const: (value, rule: unknown) => when(value !== rule),
  enum: (value, rule: readonly unknown[]) => when(!rule.includes(value)),
  pattern: (value, rule: string) =>
    when(typeof value === "string" && !new RegExp(rule).test(value)),
  minLength: (value, rule: number) => when(typeof value === "string" && value.length < rule),
  maxLength: (value, rule: number) => when(typeof value === "string" && value.length > rule),
  minimum: (value, rule: number) => when(typeof value === "number" && value < rule),
  maximum: (value, rule: number) => when(typeof value === "number" && value > rule),
  minItems: (value, rule: number) => when(Array.isArray(value) && value.length < rule),
  maxItems: (value, rule: number) => when(Array.isArray(value) && value.length > rule),
  anyOf: (value, rule: readonly Schema[], path) =>
    when(!rule.some((one) => misfits(value, one, path).length === 0)),
  oneOf: (value, rule: readonly Schema[], path) =>
    when(rule.filter((one) => misfits(value, one, path).length === 0).length !== 1),
  required: (value, rule: readonly string[]) =>
    when(isSection(value) && !rule.every((key) => Object.hasOwn(value, key))),
  properties: (value, rule: Readonly<Record<string, Schema>>, path) =>
    Object.entries(isSection(value) ? value : {}).flatMap(([key, inner]) =>
      Object.hasOwn(rule, key) ? misfits(inner, rule[key], `${path}.${key}`) : ok,
    ),
  additionalProperties: (value, rule: Schema | boolean, path, schema) => {
    const known = (schema.properties ?? {}) as Schema;
    const extra = Object.keys(isSection(value) ? value : {}).filter(
      (key) => !Object.hasOwn(known, key),
    );
    if (typeof rule === "boolean") return when(!rule && extra.length > 0);
    return extra.flatMap((key) => misfits((value as Schema)[key], rule, `${path}.${key}`));
  },
  propertyNames: (value, rule: Schema, path) =>
    Object.keys(isSection(value) ? value : {}).flatMap((key) =>
      misfits(key, rule, `${path}.${key}`),
    ),
  items: (value, rule: Schema | readonly Schema[], path) =>
    (Array.isArray(value) ? value : []).flatMap((inner, i) => {
      const one = Array.isArray(rule) ? rule[i] : rule;
      return one === undefined ? ok : misfits(inner, one, `${path}[${i}]`);
    }),
  additionalItems: (value, rule: boolean, _path, schema) => {
    const known = (schema.items as readonly Schema[]).length;
    return when(!rule && Array.isArray(value) && value.length > known);
  },
};

function hasType(value: unknown, type: string): boolean {
  if (type === "integer") return Number.isInteger(value);
  if (type === "array") return Array.isArray(value);
  if (type === "object") return isSection(value);
  return typeof value === type;
}

function isSection(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
