import { checkBodyFields } from "./body-fields.ts";
import { numberFields } from "./inputs-fields.ts";
import { fallbackMessage, findingsOf, type PlacedFinding } from "./issue-findings.ts";
import { checkNames, isRecord, namesIn } from "./names.ts";
import { checkReferences, type LibraryNames } from "./references.ts";
import { frameSchema } from "./schema-frame.ts";
import { shown } from "./shown.ts";
import { spreadsOf } from "./spread-of.ts";
import type { FrameFile } from "./types.ts";

/** The file, or everything that is wrong with it. */
export type RawReading =
  | { readonly file: FrameFile }
  | { readonly findings: readonly PlacedFinding[] };

/** Reads the raw values of a frame file, as they stand in its text or as somebody changed them. */
export function readRaw(raw: unknown, library: LibraryNames | undefined): RawReading {
  if (!isRecord(raw)) return { findings: [{ path: [], message: notASection(raw) }] };
  const parsed = frameSchema.safeParse(raw, { error: fallbackMessage });
  const findings = [
    ...findingsOf(parsed.success ? [] : parsed.error.issues),
    ...checkNames(raw),
    ...checkReferences(raw, library),
    ...checkBodyFields(raw),
  ];
  return parsed.success && findings.length === 0 ? { file: parsed.data } : { findings };
}

/**
 * Whether the spreads of a file that is right otherwise are those of its numbers. Not part of `readRaw`: a
 * change may well take away a number that has one, such as the stiffness of mounts.
 */
export function checkSpreads(raw: unknown, file: FrameFile): readonly PlacedFinding[] {
  const keys = isRecord(raw) ? namesIn(raw, "spreads") : [];
  if (keys.length === 0) return [];
  // zod passes over "__proto__" in silence
  const lost = keys.filter((key) => !Object.hasOwn(file.spreads, key));
  return [
    ...lost.map((key) => ({ path: ["spreads", key], message: "This is no path.", atKey: true })),
    ...spreadsOf(raw, numberFields(raw, file), file.spreads).findings,
  ];
}

export function notASection(raw: unknown): string {
  return `The file holds ${shown(raw)}; a frame file is one section in { }.`;
}
