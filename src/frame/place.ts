import { type FilePath, formatPath } from "./file-path.ts";
import { isRecord } from "./names.ts";
import { nearestName } from "./nearest-name.ts";
import { knownKeys, takesNewNames } from "./schema-at.ts";
import { choices, shown } from "./shown.ts";

/** Places of the raw file: whether something can be set there, and setting it. */

/** Stands for any name of a section. */
export const ANY_NAME = "*";

/** The value at `path` of the raw file; undefined where nothing is written. */
export function valueAt(raw: unknown, path: FilePath): unknown {
  let value = raw;
  for (const step of path) {
    if (typeof step === "number") value = Array.isArray(value) ? value[step] : undefined;
    else value = isRecord(value) && Object.hasOwn(value, step) ? value[step] : undefined;
  }
  return value;
}

/**
 * Why nothing can be set at `path` of the raw file; undefined when something can. What is not written
 * there can be set when the schema knows it; names that the user gives only where `value` is a whole
 * section.
 */
export function problemOfPlace(raw: unknown, path: FilePath, value?: unknown): string | undefined {
  let node = raw;
  for (const [i, step] of path.entries()) {
    const problem = problemOfStep(raw, path, i, node, value);
    if (problem !== undefined) return problem;
    node = valueAt(node, [step]);
  }
  return path.length === 0 ? "The path is empty: name a field of the file." : undefined;
}

function problemOfStep(
  raw: unknown,
  path: FilePath,
  i: number,
  node: unknown,
  value: unknown,
): string | undefined {
  const step = path[i];
  const here = i === 0 ? "the file" : formatPath(path.slice(0, i));
  const rest = formatPath(path.slice(i));
  if (Array.isArray(node)) {
    if (typeof step === "string") {
      return `${start(here)} is a list of ${node.length}, so ${shown(step)} is nothing in it: say which entry, for example ${formatPath([...path.slice(0, i), 0])}.`;
    }
    if (step < node.length) return undefined;
    return `${start(here)} has ${node.length === 0 ? "no entries" : `only ${node.length}, #1 to #${node.length}`}, so there is no #${step + 1}. Lists are not extended: to have more entries, set the whole list ${here}.`;
  }
  if (node !== undefined && !isRecord(node)) {
    return `${start(here)} is ${shown(node)}, with nothing in it called ${rest}: set ${here} itself.`;
  }
  if (typeof step === "number") {
    return node === undefined
      ? `${start(here)} is not written in the file, so it has no entries: set the whole list ${here}.`
      : `${start(here)} is a section and no list: name a part of it. ${partsIn(here, node)}`;
  }
  if (node !== undefined && Object.hasOwn(node, step)) return undefined;
  const above = path.slice(0, i);
  const known = knownKeys(raw, above);
  if (known.includes(step) || takesNewNames(raw, above)) return undefined;
  const isNewPart = known.length === 0 && i === path.length - 1;
  if (isNewPart && typeof value === "object" && value !== null) return undefined;
  return unknownStep(path, i, node ?? {}, known);
}

function unknownStep(path: FilePath, i: number, node: object, known: readonly string[]): string {
  const step = path[i] as string;
  const above = path.slice(0, i);
  const here = i === 0 ? "The file" : formatPath(above);
  const near = nearestName(step, [...Object.keys(node), ...known]);
  const hint =
    near === undefined
      ? ""
      : ` Did you mean ${formatPath([...above, near, ...path.slice(i + 1)])}?`;
  const adding = `To add one, set ${formatPath(path.slice(0, i + 1))} to all of it, as it would stand in the file.`;
  const rest =
    known.length > 0
      ? `Possible here: ${choices(known, 30)}.`
      : `${partsIn(here, node)}${near === undefined ? ` ${adding}` : ""}`;
  return `${here} has no ${shown(step)}.${hint} ${rest}`;
}

/** 'arms has only "arm".' */
function partsIn(here: string, node: object): string {
  const names = Object.keys(node);
  if (names.length === 0) return `${here} is empty.`;
  const list = choices(names, 30).replace(/ or (?="[^"]*"$)/, " and ");
  return `${here} has ${names.length === 1 ? "only " : ""}${list}.`;
}

function start(words: string): string {
  return words === "the file" ? "The file" : words;
}

/**
 * The places that a path with "*" for any name means, in the order of the file; those where the last
 * step is written or at least known, and everything above it is written.
 */
export function placesLike(raw: unknown, path: FilePath): FilePath[] {
  let found: FilePath[] = [[]];
  path.forEach((step, i) => {
    found = found.flatMap((above): FilePath[] => {
      const node = valueAt(raw, above);
      const one = [...above, step];
      if (step === ANY_NAME && isRecord(node) && !Object.hasOwn(node, ANY_NAME)) {
        return Object.keys(node).map((key) => [...above, key]);
      }
      if (i < path.length - 1) return valueAt(raw, one) === undefined ? [] : [one];
      return problemOfPlace(raw, one) === undefined ? [one] : [];
    });
  });
  return found;
}

/** A copy of the raw file with `value` at `path`; what is not on the way is shared. */
export function withValueAt(raw: unknown, path: FilePath, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof step === "number") {
    const list = [...(raw as readonly unknown[])];
    list[step] = withValueAt(list[step], rest, value);
    return list;
  }
  const section: Record<string, unknown> = Object.assign(Object.create(null), raw);
  section[step] = withValueAt(valueAt(section, [step]), rest, value);
  return section;
}
