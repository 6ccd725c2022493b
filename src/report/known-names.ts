/** Names from files, which stand in sentences as they are. */

import { NAMED_SECTIONS } from "../frame/names.ts";
import type { FrameFile } from "../frame/types.ts";
import type { ComparisonStudy } from "../study/results.ts";
import type { SweepStudy } from "../study/results-sweep.ts";
import type { SensitivityStudy } from "../study/sensitivity-study.ts";
import type { Analysed } from "./types.ts";

/** Of a frame: of its file, of the copies of its parts, and of places that were found. */
export function namesOfFrame({
  file,
  model,
  ranking,
}: Pick<Analysed, "file" | "model" | "ranking">): readonly string[] {
  const sections = NAMED_SECTIONS.flatMap((s) => Object.keys(file[s as keyof FrameFile] ?? {}));
  const { arms, standoffs, bodies, candidates } = model;
  const parts = [...arms, ...standoffs, ...bodies, ...candidates].map((part) => part.name);
  const places = ranking?.candidates.map((c) => c.candidate.name) ?? [];
  const mix = Array.isArray(file.flightMix) ? file.flightMix.flatMap((m) => m.name ?? []) : [];
  return [file.name, ...sections, ...parts, ...places, ...mix];
}

/** Of what was moved, and of the spots it was looked at. */
export function namesMoved({ table }: SensitivityStudy): readonly string[] {
  const spots = table.spots.flatMap((s) => [s.name, s.plate]);
  const parts = table.rows.flatMap(({ input }) => input.path.filter((s) => typeof s === "string"));
  return [...spots, ...parts];
}

/** Of the variants and their spots. */
export function namesCompared({ variants }: Pick<ComparisonStudy, "variants">): readonly string[] {
  return variants.flatMap(({ name, outcome }) => [name, ...spotNames(outcome)]);
}

/** Of what was swept and the spots. */
export function namesSwept({ parameters, rows }: SweepStudy): readonly string[] {
  const spots = new Set(rows.flatMap(({ outcome }) => spotNames(outcome)));
  return [...parameters.map((p) => p.name), ...spots];
}

function spotNames(outcome: SweepStudy["rows"][number]["outcome"]): string[] {
  return outcome?.spots.flatMap((s) => [s.name, s.plate]) ?? [];
}
