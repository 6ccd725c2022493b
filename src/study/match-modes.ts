/** Which mode of one variant is which of another, by how they look. */

import { type Assurance, assuranceOf, sharedShapes } from "../variants/assurance.ts";
import type { Outcome } from "../variants/types.ts";
import { assign } from "./assignment.ts";
import { likestVectors } from "./subspace.ts";

/** Less alike than this is another mode. Common practice, no source. */
export const LEAST_LIKENESS = 0.5;
/** Alike enough to be taken without a second look. Common practice, no source. */
export const CLEAR_LIKENESS = 0.7;
/** A pair whose best rival comes this close could as well be paired otherwise. */
const AMBIGUOUS = 0.1;
/** Modes this close in frequency, as a share of it, may turn into one another. */
export const CLOSE = 0.02;
/** Close modes are the same group when this share of each lies in the space of the others'. */
const SAME_SPACE = 0.8;
/** More modes do not turn into one another at once: eight arms that flap. */
const MOST_IN_GROUP = 8;

/** Numbers of modes count from 1. */
export interface ModePair {
  readonly a: number;
  readonly b: number;
  /** modal assurance criterion, 0..1 */
  readonly mac: number;
  /**
   * Where close modes turned among themselves, so that only the group can be told again: the least share
   * of one of its shapes that lies in the space of the other's. Such pairs are in order of frequency.
   */
  readonly together?: number;
}

export interface ModeMatch {
  /** by the number in a */
  readonly pairs: readonly ModePair[];
  /** of a, not found in b */
  readonly lost: readonly number[];
  /** of b, not found in a */
  readonly gained: readonly number[];
  /** numbers of a shape on which they were compared */
  readonly shared: number;
  /** why nothing could be matched */
  readonly reason?: string;
}

/** All modes of both, and how alike each is to each. */
export interface Likeness {
  readonly mac: Assurance;
  readonly pairs: readonly ModePair[];
}

/**
 * Pairs the modes of two variants so that the sum of their likeness is greatest, and leaves out what is
 * less alike than a half or could as well be paired otherwise. Close modes that only turned among
 * themselves, as those of a symmetric frame do at any change, are matched as a group.
 *
 * @param count lowest modes of each that are asked about; partners are looked for among all
 */
export function matchModes(a: Outcome, b: Outcome, count: number): ModeMatch {
  const upTo = (o: Outcome) =>
    Array.from({ length: Math.min(count, o.frequencies.length) }, (_, k) => k + 1);
  const all = likeness(a, b);
  if (!all) {
    const reason = "the two frames share too few parts of the same name to tell their modes apart";
    return { pairs: [], lost: upTo(a), gained: upTo(b), shared: 0, reason };
  }
  const pairs = all.pairs.filter((p) => p.a <= count || p.b <= count);
  return {
    pairs,
    lost: upTo(a).filter((k) => !pairs.some((p) => p.a === k)),
    gained: upTo(b).filter((k) => !pairs.some((p) => p.b === k)),
    shared: all.mac.shared,
  };
}

/** @returns undefined where too few numbers of the shapes are shared */
export function likeness(a: Outcome, b: Outcome): Likeness | undefined {
  const both = sharedShapes(a.shapes, b.shapes);
  if (!both) return undefined;
  const mac = assuranceOf(both);
  const { rows, columns, values } = mac;
  const found = new Map<number, ModePair>();
  const taken = new Set<number>();
  const take = (i: number, j: number, together?: number) => {
    const pair = { a: i + 1, b: j + 1, mac: values[i * columns + j] };
    found.set(i, together === undefined ? pair : { ...pair, together });
    taken.add(j);
  };

  const best = assign(values, rows, columns);
  const single = (least: number) => {
    best.forEach((j, i) => {
      if (j < 0 || found.has(i) || taken.has(j)) return;
      const own = values[i * columns + j];
      if (own >= least && own - rival(mac, i, j) >= AMBIGUOUS) take(i, j);
    });
  };
  single(CLEAR_LIKENESS);

  const openRows = () => both.a.map((_, i) => i).filter((i) => !found.has(i));
  const openColumns = () => both.b.map((_, j) => j).filter((j) => !taken.has(j));
  for (const group of closeGroups(a.frequencies, openRows())) {
    if (group.some((i) => found.has(i))) continue;
    const like = likestVectors(both.a, group, both.b, openColumns());
    if (!like || like.share < SAME_SPACE) continue;
    for (const [k, i] of group.entries()) take(i, like.chosen[k], like.share);
  }
  for (const group of closeGroups(b.frequencies, openColumns())) {
    if (group.some((j) => taken.has(j))) continue;
    const like = likestVectors(both.b, group, both.a, openRows());
    if (!like || like.share < SAME_SPACE) continue;
    for (const [k, j] of group.entries()) take(like.chosen[k], j, like.share);
  }
  single(LEAST_LIKENESS);
  return { mac, pairs: [...found.values()].sort((p, q) => p.a - q.a) };
}

/** The greatest other likeness in the row or the column of a pair. */
function rival({ rows, columns, values }: Assurance, i: number, j: number): number {
  let most = 0;
  for (let k = 0; k < columns; k++) if (k !== j) most = Math.max(most, values[i * columns + k]);
  for (let k = 0; k < rows; k++) if (k !== i) most = Math.max(most, values[k * columns + j]);
  return most;
}

/** Runs of two and more of the modes asked about, each close to the one before; then the parts of these. */
function closeGroups(frequencies: Float64Array, modes: readonly number[]): number[][] {
  const runs: number[][] = [];
  for (const k of modes) {
    const last = runs[runs.length - 1];
    const before = last?.[last.length - 1];
    if (before !== undefined && frequencies[k] <= (1 + CLOSE) * frequencies[before]) last.push(k);
    else runs.push([k]);
  }
  return runs.flatMap((run) => {
    const parts: number[][] = [];
    for (let n = Math.min(MOST_IN_GROUP, run.length); n > 1; n--) {
      for (let i = 0; i + n <= run.length; i++) parts.push(run.slice(i, i + n));
    }
    return parts;
  });
}
