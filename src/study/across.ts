/** A study's modes, spots and crossings side by side: one row each, one cell per variant. */

import { HOVER_MARGIN } from "../ranking/crossings.ts";
import type { MeetingPoint, Outcome, Spot } from "../variants/types.ts";
import type { Band } from "./bands.ts";
import type { CrossingChange } from "./compare-types.ts";
import type { ComparisonStudy, SampledSpot, VariantResult } from "./results.ts";

/** A mode in one variant. */
export interface ModeCell {
  /** from 1 */
  readonly number: number;
  /** Hz, as drawn */
  readonly frequency: number;
  /** against the reference, 0.1 = 10 % higher; absent in the reference itself */
  readonly share?: number;
  /** of the shape to the reference's, 0..1; of close modes that of the group */
  readonly likeness?: number;
  /** over the samples, Hz */
  readonly band?: Band;
}

/** One mode that was matched over the variants; undefined where it is not found. */
export interface ModeRow {
  readonly name: string;
  readonly cells: readonly (ModeCell | undefined)[];
}

/** Rows in the order of the reference's modes, then those that only one variant has. */
export function modesAcross({ variants, comparison }: ComparisonStudy): ModeRow[] {
  const [reference] = variants;
  const told = Math.max(
    0,
    ...comparison.differences.flatMap((d) => d.modes.map((m) => m.number ?? 0)),
  );
  const count = comparison.differences.length > 0 ? told : reference.outcome.frequencies.length;
  const rows = Array.from({ length: count }, (_, k): ModeRow => {
    const cells = comparison.differences.map((d, i) => {
      const m = d.modes.find(({ number }) => number === k + 1);
      return m?.now === undefined ? undefined : cell(variants[i + 1], m.now, m);
    });
    return { name: modeName(reference.outcome, k + 1), cells: [cell(reference, k + 1), ...cells] };
  });
  const alone = comparison.differences.flatMap(({ modes }, i) =>
    modes.flatMap(({ number, now, name }): ModeRow[] => {
      if (number !== undefined || now === undefined) return [];
      return [{ name, cells: variants.map((v, j) => (j === i + 1 ? cell(v, now) : undefined)) }];
    }),
  );
  return [...rows, ...alone];
}

/** Changes of a frequency below this share are not worth a line. */
const LEAST_SHARE = 0.005;

/** The greatest change of a row against the reference, as a share. */
export function changeOfRow({ cells }: ModeRow): number {
  return Math.max(0, ...cells.map((c) => Math.abs(c?.share ?? 0)));
}

/**
 * The rows that change most, at most so many, in their own order: the lowest modes are often those of
 * soft mounts, which hardly change. Those that change too little to tell are left out.
 */
export function mostChanged(rows: readonly ModeRow[], count: number): ModeRow[] {
  const least = [...rows].map(changeOfRow).sort((a, b) => b - a)[count - 1] ?? 0;
  return rows.filter((r) => changeOfRow(r) >= Math.max(least, LEAST_SHARE)).slice(0, count);
}

/** The lowest rows that say how the variants differ: found in all, and moved half as far as any at least. */
export function tellingModes(rows: readonly ModeRow[], count: number): ModeRow[] {
  const whole = rows.filter((r) => r.cells.every((c) => c !== undefined));
  const least = Math.max(LEAST_SHARE, 0.5 * Math.max(0, ...whole.map(changeOfRow)));
  const moved = whole.filter((r) => changeOfRow(r) >= least);
  return (moved.length > 0 ? moved : rows).slice(0, count);
}

function cell(
  { outcome, sampled }: VariantResult,
  number: number,
  change: { readonly share?: number; readonly mac?: number; readonly together?: number } = {},
): ModeCell {
  const band = sampled?.modes.find((m) => m.number === number)?.band;
  const likeness = change.together ?? change.mac;
  return {
    number,
    frequency: outcome.frequencies[number - 1],
    ...(change.share !== undefined && { share: change.share }),
    ...(likeness !== undefined && { likeness }),
    ...(band && { band }),
  };
}

export function modeName({ modeNames }: Outcome, number: number): string {
  return modeNames?.[number - 1] || `mode ${number}`;
}

/** A spot in one variant, as drawn and over the samples. */
export interface SpotCell extends Partial<SampledSpot> {
  readonly spot: Spot;
  /** the best of its variant */
  readonly best: boolean;
}

export interface SpotRow {
  readonly name: string;
  readonly plate: string;
  readonly cells: readonly (SpotCell | undefined)[];
}

/** Rows in the order of the reference's spots, then those of others; on another plate it is another spot. */
export function spotsAcross({ variants }: Pick<ComparisonStudy, "variants">): SpotRow[] {
  const rows: { readonly name: string; readonly plate: string }[] = [];
  for (const { name, plate } of variants.flatMap((v) => v.outcome.spots)) {
    if (!rows.some((r) => r.name === name && r.plate === plate)) rows.push({ name, plate });
  }
  return rows.map(({ name, plate }) => ({
    name,
    plate,
    cells: variants.map((v) =>
      spotCell(
        v,
        v.outcome.spots.findIndex((s) => s.name === name && s.plate === plate),
      ),
    ),
  }));
}

/** undefined where every spot is ruled out. */
export function bestSpot(variant: VariantResult): SpotCell | undefined {
  return spotCell(variant, variant.outcome.best ?? -1);
}

function spotCell({ outcome, sampled }: VariantResult, i: number): SpotCell | undefined {
  const spot = outcome.spots[i];
  if (spot === undefined) return undefined;
  return { spot, best: i === outcome.best, ...sampled?.spots.find((s) => s.name === spot.name) };
}

/** Where an order meets a mode near hover. */
export interface NearCrossing extends CrossingChange {
  /** the reference has none like it */
  readonly gained: boolean;
}

/** What a variant meets near hover, the nearest first, and what it no longer meets. */
export interface CrossingRow {
  readonly name: string;
  readonly near: readonly NearCrossing[];
  readonly lost: readonly CrossingChange[];
}

export function crossingsAcross({ variants, comparison }: ComparisonStudy): CrossingRow[] {
  return variants.map(({ name, outcome }, i) => {
    const change = comparison.differences[i - 1]?.crossings;
    const isNew = (m: MeetingPoint) =>
      change?.gained.some((g) => g.mode === m.mode && g.multiple === m.multiple) ?? false;
    const near = outcome.meetings
      .filter((m) => Math.abs(m.fromHover) <= HOVER_MARGIN)
      .sort((a, b) => Math.abs(a.fromHover) - Math.abs(b.fromHover))
      .map(({ mode, order, multiple, fromHover, ...m }): NearCrossing => {
        const frequency = outcome.frequencies[mode - 1];
        const gained = isNew({ mode, order, multiple, fromHover, ...m });
        return {
          mode,
          name: modeName(outcome, mode),
          frequency,
          order,
          multiple,
          fromHover,
          gained,
        };
      });
    return { name, near, lost: change?.lost ?? [] };
  });
}
