/** What moves the modes and the noise, for other programs. */

import { formatPath } from "../../frame/file-path.ts";
import type { SensitivityRow, SensitivityTable } from "../../study/sensitivity-types.ts";
import type { Suggestion } from "../../study/suggest-types.ts";
import { documentText, frameFields } from "./document.ts";
import type { ToldSensitivity } from "./sensitivity-text.ts";

/** One document. */
export function sensitivityJson(
  { frame, ...study }: ToldSensitivity,
  written: { readonly report?: string },
): string {
  return documentText("sensitivity", {
    ...frameFields(frame),
    report: written.report ?? null,
    ...sensitivityFields(study),
  });
}

/**
 * Values of inputs are in the unit that stands beside them, that of a bare number in the file; per unit
 * means per one of these.
 */
export function sensitivityFields({
  table,
  suggested,
  spot,
}: Omit<ToldSensitivity, "frame">): Record<string, unknown> {
  return {
    modes: table.modes.map(({ number, frequency, name }) => ({
      number,
      frequencyHz: frequency,
      name,
    })),
    closeModes: table.clusters,
    spots: table.spots.map(({ name, plate, gyro, ruledOut }) => ({
      name,
      plate,
      sensedGyroDegPerSecRms: gyro,
      ruledOut: ruledOut ?? null,
    })),
    spot: spot === undefined ? null : table.spots[spot].name,
    inputs: table.rows.map((row) => inputFields(table, row)),
    suggestions: suggested
      ? {
          spot: suggested.spot ?? null,
          tried: suggested.tried,
          found: suggested.found.map(suggestionFields),
          none: suggested.none ?? null,
        }
      : null,
  };
}

function inputFields({ modes }: SensitivityTable, row: SensitivityRow): Record<string, unknown> {
  const { input, reach, slopes, noise } = row;
  const { name, kind, unit, value, perSI } = input;
  const percents =
    slopes && kind !== "position"
      ? slopes.map((slope, k) => (slope * value) / modes[k].frequency)
      : null;
  return {
    name,
    kind,
    unit,
    value: value * perSI,
    from: reach.from * perSI,
    to: reach.to * perSI,
    scale: reach.scale,
    reach: reach.why,
    hertzPerUnit: slopes?.map((slope) => slope / perSI) ?? null,
    percentPerPercent: percents,
    notSmooth: row.notSmooth ?? null,
    gyroDbFrom: noise?.from ?? null,
    gyroDbTo: noise?.to ?? null,
    gyroMethod: noise?.method ?? null,
    impossible: row.impossible ?? null,
  };
}

function suggestionFields(s: Suggestion): Record<string, unknown> {
  return {
    kind: s.kind,
    part: s.part,
    text: s.text,
    changes: s.changes.map(({ path, written }) => ({ path: formatPath(path), written })),
    massKg: s.mass,
    gyroDb: s.gyro,
    accelerometerDb: s.accel,
    scoreDb: s.score,
    mode: s.mode
      ? {
          number: s.mode.number,
          name: s.mode.name,
          fromHz: s.mode.from,
          toHz: s.mode.to,
        }
      : null,
    moved: s.moved,
  };
}
