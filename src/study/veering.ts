/** Where two modes that were followed come close: through each other, or turning into one another. */

import { dot, sharedShapes } from "../variants/assurance.ts";
import type { Outcome } from "../variants/types.ts";

/** The mode of a path at each point, from 0; -1 where it has none. */
export interface Path {
  readonly modes: Int32Array;
}

interface Point {
  readonly outcome: Outcome;
  readonly at: number;
}

/** Two modes that approach, exchange their shapes and part again without meeting. */
export interface Veering {
  /** places in the list of branches, lower frequency first */
  readonly branches: readonly [number, number];
  /** their numbers where they are closest */
  readonly modes: readonly [number, number];
  /** of the parameter, where they are closest */
  readonly at: number;
  /** least distance of the frequencies, Hz */
  readonly gap: number;
  /** mean of the two there, Hz */
  readonly frequency: number;
  /** whether the points were close enough together to see the shapes turn */
  readonly resolved: boolean;
}

/** Two modes whose frequencies change places while their shapes stay. */
export interface Crossing {
  readonly branches: readonly [number, number];
  readonly at: number;
  /** Hz */
  readonly frequency: number;
}

/** Modes whose numbers are further apart than this do not veer from each other. */
const NEIGHBOURS = 2;
/** Shapes have changed places when each is this much like the other's, both together. */
const EXCHANGED = 0.7;

/** Two paths, the lower one first where they are compared. */
interface Pair {
  readonly p: Int32Array;
  readonly q: Int32Array;
  /** f_q - f_p at each point, Hz; 0 where they coincide, NaN where one is missing */
  readonly gaps: Float64Array;
}

/**
 * @param mixed per point: modes at the point before that could not be told apart on the way here
 * @param coincident frequencies closer than this share count as one
 */
export function findMeetings(
  paths: readonly Path[],
  points: readonly Point[],
  mixed: readonly (readonly (readonly [number, number])[])[],
  coincident: number,
): { readonly veerings: Veering[]; readonly crossings: Crossing[] } {
  const veerings: Veering[] = [];
  const crossings: Crossing[] = [];
  paths.forEach(({ modes: p }, i) => {
    paths.slice(i + 1).forEach(({ modes: q }, n) => {
      const j = i + 1 + n;
      const gaps = Float64Array.from(points, ({ outcome: { frequencies } }, k) => {
        if (p[k] < 0 || q[k] < 0) return Number.NaN;
        const gap = frequencies[q[k]] - frequencies[p[k]];
        return Math.abs(gap) > coincident * frequencies[p[k]] ? gap : 0;
      });
      for (const meeting of crossingsOf({ p, q, gaps }, points)) {
        crossings.push({ branches: [i, j], ...meeting });
      }
      for (const { upward, ...rest } of veeringsOf({ p, q, gaps }, points, mixed)) {
        veerings.push({ branches: upward ? [i, j] : [j, i], ...rest });
      }
    });
  });
  const along = (a: { at: number }, b: { at: number }) => a.at - b.at;
  return { veerings: veerings.sort(along), crossings: crossings.sort(along) };
}

function crossingsOf({ p, gaps }: Pair, points: readonly Point[]) {
  const found: Omit<Crossing, "branches">[] = [];
  let last = -1;
  gaps.forEach((gap, k) => {
    if (Number.isNaN(gap)) last = -1;
    if (Number.isNaN(gap) || gap === 0) return;
    if (last >= 0 && Math.sign(gap) !== Math.sign(gaps[last])) {
      const f = gaps[last] / (gaps[last] - gap);
      const between = (a: number, b: number) => a + f * (b - a);
      const frequency = (n: number) => points[n].outcome.frequencies[p[n]];
      found.push({
        at: between(points[last].at, points[k].at),
        frequency: between(frequency(last), frequency(k)),
      });
    }
    last = k;
  });
  return found;
}

type Found = Omit<Veering, "branches"> & { readonly upward: boolean };

function veeringsOf(
  pair: Pair,
  points: readonly Point[],
  mixed: readonly (readonly (readonly [number, number])[])[],
): Found[] {
  const { p, q, gaps } = pair;
  const doubtful = (k: number) =>
    mixed[k].some(
      (two) => two.includes(p[k - 1]) && two.includes(q[k - 1]) && p[k - 1] !== q[k - 1],
    );
  const found: Found[] = [];
  const covered = new Uint8Array(gaps.length);
  const add = (least: number, from: number, to: number) => {
    const steps = Array.from({ length: to - from }, (_, n) => from + 1 + n);
    for (const k of steps) covered[k] = 1;
    const resolved = !steps.some(doubtful);
    const { frequencies } = points[least].outcome;
    const [f, g] = [frequencies[p[least]], frequencies[q[least]]];
    const modes = [p[least] + 1, q[least] + 1].sort((a, b) => a - b) as [number, number];
    const closest = closestApproach(pair, points, least);
    found.push({ modes, ...closest, frequency: (f + g) / 2, resolved, upward: f < g });
  };

  const alike = (k: number, l: number) => gaps[k] * gaps[l] > 0;
  const wider = (k: number, l: number) => alike(k, l) && Math.abs(gaps[l]) >= Math.abs(gaps[k]);
  gaps.forEach((gap, k) => {
    if (!(Math.abs(gap) > 0) || Math.abs(p[k] - q[k]) > NEIGHBOURS || covered[k]) return;
    const isLeast = [k - 1, k + 1].every((l) => !alike(k, l) || wider(k, l));
    if (!isLeast) return;
    let [from, to] = [k, k];
    for (;;) {
      const [left, right] = [wider(from, from - 1), wider(to, to + 1)];
      if (!left && !right) return;
      if (left) from--;
      if (right) to++;
      if (!exchanged(pair, points, from, to)) continue;
      add(k, from, to);
      return;
    }
  });
  gaps.forEach((_, k) => {
    if (k === 0 || covered[k] || !doubtful(k) || !alike(k - 1, k)) return;
    add(Math.abs(gaps[k]) < Math.abs(gaps[k - 1]) ? k : k - 1, k - 1, k);
  });
  return found;
}

/** Whether two modes that keep their order look like each other's former selves. */
function exchanged({ p, q }: Pair, points: readonly Point[], from: number, to: number): boolean {
  const both = sharedShapes(points[from].outcome.shapes, points[to].outcome.shapes);
  if (!both) return false;
  const mac = (a: Int32Array, b: Int32Array) => dot(both.a[a[from]], both.b[b[to]]) ** 2;
  const cross = mac(p, q) + mac(q, p);
  return cross >= EXCHANGED && cross > mac(p, p) + mac(q, q);
}

/**
 * Of two coupled modes (f_q^2 - f_p^2)^2 is nearly a parabola in the parameter: its least value from the
 * least point and those beside it, or the least point itself where these give none.
 */
function closestApproach({ p, q, gaps }: Pair, points: readonly Point[], k: number) {
  const f = (n: number) => points[n].outcome.frequencies;
  const sum = (n: number) => f(n)[p[n]] + f(n)[q[n]];
  const seen = { at: points[k].at, gap: Math.abs(gaps[k]) };
  if (!(gaps[k - 1] * gaps[k] > 0 && gaps[k + 1] * gaps[k] > 0)) return seen;
  const x = [k - 1, k, k + 1].map((n) => points[n].at - points[k].at);
  const D = [k - 1, k, k + 1].map((n) => (gaps[n] * sum(n)) ** 2);
  // D(x) = D1 + slope x + bend x^2
  const [left, right] = [(D[0] - D[1]) / x[0], (D[2] - D[1]) / x[2]];
  const bend = (right - left) / (x[2] - x[0]);
  const slope = left - bend * x[0];
  const at = -slope / (2 * bend);
  const least = D[1] - slope ** 2 / (4 * bend);
  if (!(bend > 0 && least > 0 && at >= x[0] && at <= x[2])) return seen;
  return { at: points[k].at + at, gap: Math.sqrt(least) / sum(k) };
}
