/** The modes of one outcome led over to those of its neighbour along a parameter. */

import type { Outcome } from "../variants/types.ts";
import { CLEAR_LIKENESS, LEAST_LIKENESS, type Likeness, likeness } from "./match-modes.ts";

/**
 * Two modes whose frequencies change places either cross, and then neither takes anything of the other's
 * shape, or veer more sharply than the step shows. cos^2 of the angle between the shape of one and that of
 * the other: above the first a look between is worth while; above the second they are taken to veer. With
 * the shapes of two coupled modes (tan 2 theta = least gap / gap, in squares of frequency) the first stands
 * for a least gap of 3 % of that at the ends of the step, the second for 15 %.
 */
const LEAK_ASKS = 0.001;
const LEAK_VEERS = 0.02;
/** Modes less alike than this have nothing to do with each other. */
const MIXES = 0.15;

/** Modes are counted from 0 here. */
export interface Link {
  /** mode of b for each of a, -1 for none */
  readonly next: Int32Array;
  /** how alike each is to its partner, 0..1; 0 without one */
  readonly alike: Float64Array;
  /** modes of a whose partner is beyond doubt, alone or as one of a group */
  readonly sureA: Uint8Array;
  readonly sureB: Uint8Array;
  /** pairs of modes of a and b that changed places and may not have crossed */
  readonly suspect: readonly (readonly [number, number])[];
  /** modes of a, lower and upper, that mix with each other here and were led over in order of frequency */
  readonly mixed: readonly (readonly [number, number])[];
}

/**
 * Modes that are clearly alike go together, through each other where they cross; what mixes is led over in order of frequency, as modes do that
 * turn into one another while their frequencies keep apart.
 */
export function linkModes(a: Outcome, b: Outcome): Link {
  const [n, m] = [a.frequencies.length, b.frequencies.length];
  const next = new Int32Array(n).fill(-1);
  const alike = new Float64Array(n);
  const [sureA, sureB] = [new Uint8Array(n), new Uint8Array(m)];
  const mixed: [number, number][] = [];
  const suspect: [number, number][] = [];
  const all = likeness(a, b);
  if (!all) return { next, alike, sureA, sureB, suspect, mixed };
  const mac = (i: number, j: number) => all.mac.values[i * all.mac.columns + j];
  for (const { a: p, b: q, mac: own, together } of all.pairs) {
    const how = Math.max(own, together ?? 0);
    if (how < CLEAR_LIKENESS) continue;
    next[p - 1] = q - 1;
    alike[p - 1] = how;
    sureA[p - 1] = sureB[q - 1] = 1;
  }
  const veering: (readonly [number, number])[] = [];
  for (const [i, k, leak] of swapped(next, mac)) {
    if (leak < LEAK_ASKS) continue;
    suspect.push([i, next[i]], [k, next[k]]);
    if (leak >= LEAK_VEERS) veering.push([i, k]);
  }
  for (const rows of connected(veering)) {
    const columns = rows.map((i) => next[i]).sort((p, q) => p - q);
    rows.forEach((i, k) => {
      next[i] = columns[k];
      alike[i] = mac(i, columns[k]);
      if (k > 0) mixed.push([rows[k - 1], i]);
    });
  }
  for (const [rows, columns] of mixtures(all, sureA, sureB)) {
    const pairs = inOrder(rows, columns, mac);
    for (const [i, j] of pairs) {
      next[i] = j;
      alike[i] = mac(i, j);
    }
    if (rows.length < 2 || columns.length < 2) continue;
    for (let k = 1; k < pairs.length; k++) mixed.push([pairs[k - 1][0], pairs[k][0]]);
  }
  return { next, alike, sureA, sureB, suspect, mixed };
}

/** Whether one of the lowest modes of either is left in doubt. */
export function inDoubt({ sureA, sureB, suspect }: Link, count: number): boolean {
  return (
    [sureA, sureB].some((sure) => sure.subarray(0, count).includes(0)) ||
    suspect.some(([i, j]) => i < count || j < count)
  );
}

/** Pairs of modes of a, lower and upper, that changed places, with how much of one is in the other. */
function swapped(next: Int32Array, mac: (i: number, j: number) => number) {
  const out: (readonly [number, number, number])[] = [];
  for (let i = 0; i < next.length; i++) {
    for (let k = i + 1; k < next.length; k++) {
      if (next[i] < 0 || next[k] < 0 || next[i] < next[k]) continue;
      out.push([i, k, (mac(i, next[k]) + mac(k, next[i])) / 2]);
    }
  }
  return out;
}

/** Sets of numbers connected by pairs, each rising. */
function connected(pairs: readonly (readonly [number, number])[]): number[][] {
  let sets: number[][] = [];
  for (const pair of pairs) {
    const touched = sets.filter((set) => pair.some((k) => set.includes(k)));
    sets = sets.filter((set) => !touched.includes(set));
    sets.push([...new Set([...touched.flat(), ...pair])].sort((p, q) => p - q));
  }
  return sets;
}

/** The doubtful modes of both in sets that are connected by likeness, each rising. */
function mixtures({ mac }: Likeness, sureA: Uint8Array, sureB: Uint8Array): [number[], number[]][] {
  const { rows, columns, values } = mac;
  const seen = new Uint8Array(rows + columns);
  const neighbours = (k: number) => {
    const out: number[] = [];
    if (k < rows) {
      for (let j = 0; j < columns; j++) {
        if (!sureB[j] && values[k * columns + j] >= MIXES) out.push(rows + j);
      }
    } else {
      for (let i = 0; i < rows; i++) {
        if (!sureA[i] && values[i * columns + k - rows] >= MIXES) out.push(i);
      }
    }
    return out;
  };
  const sets: [number[], number[]][] = [];
  for (let i = 0; i < rows; i++) {
    if (sureA[i] || seen[i]) continue;
    const set = [i];
    seen[i] = 1;
    for (let at = 0; at < set.length; at++) {
      for (const k of neighbours(set[at])) {
        if (seen[k]) continue;
        seen[k] = 1;
        set.push(k);
      }
    }
    set.sort((p, q) => p - q);
    sets.push([set.filter((k) => k < rows), set.filter((k) => k >= rows).map((k) => k - rows)]);
  }
  return sets;
}

/** Pairs in order of frequency: all where both sides are as many and mostly alike, else the best that fit. */
function inOrder(
  rows: readonly number[],
  columns: readonly number[],
  mac: (i: number, j: number) => number,
): [number, number][] {
  const whole = rows.reduce((sum, i) => columns.reduce((s, j) => s + mac(i, j), sum), 0);
  if (rows.length === columns.length && whole >= LEAST_LIKENESS * rows.length) {
    return rows.map((i, k) => [i, columns[k]]);
  }
  // Greatest sum of likeness among pairings that keep the order, by dynamic programming from the end.
  const gain = (i: number, j: number) => {
    const own = mac(rows[i], columns[j]);
    return own >= LEAST_LIKENESS / 2 ? own : Number.NEGATIVE_INFINITY;
  };
  const width = columns.length + 1;
  const best = new Float64Array((rows.length + 1) * width);
  for (let i = rows.length - 1; i >= 0; i--) {
    for (let j = columns.length - 1; j >= 0; j--) {
      best[i * width + j] = Math.max(
        best[(i + 1) * width + j],
        best[i * width + j + 1],
        gain(i, j) + best[(i + 1) * width + j + 1],
      );
    }
  }
  const pairs: [number, number][] = [];
  let [i, j] = [0, 0];
  while (i < rows.length && j < columns.length) {
    const here = best[i * width + j];
    if (here === gain(i, j) + best[(i + 1) * width + j + 1]) pairs.push([rows[i++], columns[j++]]);
    else if (here === best[(i + 1) * width + j]) i++;
    else j++;
  }
  return pairs;
}
