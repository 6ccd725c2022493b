/** The frame of every JSON document that a command prints. */

import type { LoadedFrame } from "../input/load-frame.ts";
import { programVersion } from "../version.ts";

/** Goes up when a field is renamed, removed or changes its meaning; new fields leave it. */
const DOCUMENT_VERSION = 2;

export type DocumentKind =
  | "ranking"
  | "modes"
  | "check"
  | "materials"
  | "material"
  | "comparison"
  | "uncertainty"
  | "sensitivity";

/**
 * One JSON document, ended by a line break. Quantities are unrounded and in the unit that the field's
 * name ends with; numbers that do not exist (NaN, infinite) are null.
 */
export function documentText(
  kind: DocumentKind,
  fields: Readonly<Record<string, unknown>>,
): string {
  const document = { version: DOCUMENT_VERSION, kind, stillpoint: programVersion(), ...fields };
  return `${listsOnOneLine(JSON.stringify(document, plainArrays, 2))}\n`;
}

export interface FrameIdentity extends Pick<LoadedFrame, "path" | "hash"> {
  readonly file: Pick<LoadedFrame["file"], "name">;
}

/** Which frame the document is about. */
export function frameFields({
  path,
  file,
  hash,
}: FrameIdentity): Readonly<Record<string, unknown>> {
  return { frame: { name: file.name, file: path, sha256: hash } };
}

function plainArrays(_: string, value: unknown): unknown {
  return value instanceof Float64Array || value instanceof Int32Array ? Array.from(value) : value;
}

/** Lists of numbers, one line each; a line break never stands inside a JSON string. */
function listsOnOneLine(text: string): string {
  return text.replace(/\[\n\s*([^"[\]{}]*?)\n\s*\]/g, (_, numbers: string) => {
    return `[${numbers.replace(/\s+/g, " ")}]`;
  });
}
