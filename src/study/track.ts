/** Modes followed along one parameter, through crossings and through veering. */

import { dot, sharedShapes } from "../variants/assurance.ts";
import type { Outcome } from "../variants/types.ts";
import { assign } from "./assignment.ts";
import { inDoubt, type Link, linkModes } from "./link.ts";
import { CLEAR_LIKENESS } from "./match-modes.ts";
import { type Crossing, findMeetings, type Path, type Veering } from "./veering.ts";

/** Lowest modes followed where no number is given. */
const TRACKED = 20;
/** An interval is halved at most so often. */
const HALVINGS = 4;
/** Modes closer than this share of their frequency have no shape of their own: any mixture will do. */
const COINCIDENT = 1e-4;

/** One mode followed from value to value. */
export interface Branch {
  /** its number at each value, from 1; undefined where it is not among those computed */
  readonly modes: readonly (number | undefined)[];
  /** Hz */
  readonly frequencies: readonly (number | undefined)[];
  /** how alike its shape is to that at the value before: the least of all steps between, 0..1 */
  readonly alike: readonly (number | undefined)[];
}

export interface Tracking {
  /** by frequency at the first value; then those that come in later */
  readonly branches: readonly Branch[];
  readonly veerings: readonly Veering[];
  readonly crossings: readonly Crossing[];
  /** outcomes that were asked for between the values */
  readonly asked: number;
}

export interface TrackOptions {
  /** lowest modes that are followed; 20 where not given */
  readonly count?: number;
  /** the parameter's values, rising; 0, 1, 2 ... where not given */
  readonly values?: readonly number[];
}

/** Somewhere along the parameter. */
interface Point {
  readonly outcome: Outcome;
  /** of the parameter */
  readonly at: number;
  /** the value that it is, -1 in between */
  readonly value: number;
  /** to the point before */
  readonly link?: Link;
}

/**
 * Follows modes by their shapes from value to value. Where shapes are in doubt an outcome half way is asked
 * for, down to a sixteenth of the interval. Frequencies that cross while the shapes stay are followed
 * through each other; where shapes stay in doubt the modes keep their order of frequency, for coupled
 * modes turn into one another without meeting (A. W. Leissa, "On a curve veering aberration", ZAMP 25,
 * 1974; N. C. Perkins & C. D. Mote, "Comments on curve veering in eigenvalue problems", J. Sound Vib.
 * 106, 1986, both from memory). Veering much sharper than the steps looks like a crossing and is taken
 * for one.
 *
 * @param outcomes at rising values of the parameter
 * @param between the outcome at fraction f of the way from value i to value i + 1; undefined where it fails
 */
export function track(
  outcomes: readonly Outcome[],
  between?: (i: number, f: number) => Outcome | undefined,
  options: TrackOptions = {},
): Tracking {
  const count = options.count ?? TRACKED;
  const values = options.values ?? outcomes.map((_, i) => i);
  if (values.length !== outcomes.length) throw new Error("as many values as outcomes are needed");
  const points: Point[] = [];
  /** Adds the points needed after value i between two fractions; returns the link of the last to b. */
  const lead = (i: number, a: Outcome, from: number, b: Outcome, to: number, level = 0): Link => {
    const link = linkModes(a, b);
    if (!between || level >= HALVINGS || !inDoubt(link, count)) return link;
    const f = (from + to) / 2;
    const outcome = between(i, f);
    if (!outcome) return link;
    const half = lead(i, a, from, outcome, f, level + 1);
    points.push({
      outcome,
      at: values[i] + f * (values[i + 1] - values[i]),
      value: -1,
      link: half,
    });
    return lead(i, outcome, f, b, to, level + 1);
  };
  outcomes.forEach((outcome, i) => {
    const link = i > 0 && lead(i - 1, outcomes[i - 1], 0, outcome, 1);
    points.push({ outcome, at: values[i], value: i, ...(link && { link }) });
  });

  const paths = follow(points).filter((path) =>
    points.some((p, k) => p.value >= 0 && path.modes[k] >= 0 && path.modes[k] < count),
  );
  const branches = paths.map((path) => branchOf(path, points, outcomes.length));
  const links = points.map((p) => p.link?.mixed ?? []);
  return {
    branches,
    ...findMeetings(paths, points, links, COINCIDENT),
    asked: points.length - outcomes.length,
  };
}

/** All modes of all points as paths through them. */
function follow(points: readonly Point[]): (Path & { readonly alike: Float64Array })[] {
  const n = points.length;
  const paths: { modes: Int32Array; alike: Float64Array; seen: number }[] = [];
  const begin = (point: number, mode: number) => {
    const path = { modes: new Int32Array(n).fill(-1), alike: new Float64Array(n), seen: point };
    path.modes[point] = mode;
    paths.push(path);
  };
  points.forEach(({ outcome, link }, k) => {
    const taken = new Set<number>();
    if (link) {
      const moving = paths.filter((p) => p.modes[k - 1] >= 0 && link.next[p.modes[k - 1]] >= 0);
      for (const p of moving) {
        const mode = p.modes[k - 1];
        p.modes[k] = link.next[mode];
        p.alike[k] = link.alike[mode];
        taken.add(p.modes[k]);
      }
      tellApart(moving, points, k);
      for (const p of moving) if (ownShape(outcome, p.modes[k])) p.seen = k;
    }
    outcome.frequencies.forEach((_, mode) => {
      if (!taken.has(mode)) begin(k, mode);
    });
  });
  return paths;
}

/** Whether no other mode coincides with this one. */
function ownShape({ frequencies }: Outcome, mode: number): boolean {
  const f = frequencies[mode];
  const apart = (g: number | undefined) => g === undefined || Math.abs(g - f) > COINCIDENT * f;
  return apart(frequencies[mode - 1]) && apart(frequencies[mode + 1]);
}

/** Paths that coincided before are told apart by the shapes they last had alone, where these come back. */
function tellApart(
  moving: readonly { readonly modes: Int32Array; readonly seen: number }[],
  points: readonly Point[],
  k: number,
): void {
  const lost = moving.filter((p) => p.seen < k - 1).sort((p, q) => p.modes[k - 1] - q.modes[k - 1]);
  const { frequencies } = points[k - 1].outcome;
  const sets: (typeof lost)[] = [];
  for (const p of lost) {
    const last = sets[sets.length - 1];
    const mode = p.modes[k - 1];
    const before = last?.[last.length - 1].modes[k - 1];
    const same =
      before === mode - 1 &&
      frequencies[mode] - frequencies[before] <= COINCIDENT * frequencies[mode];
    if (same) last.push(p);
    else sets.push([p]);
  }
  for (const set of sets) {
    const targets = set.map((p) => p.modes[k]);
    const weights = set.flatMap((p) => {
      const both = sharedShapes(points[p.seen].outcome.shapes, points[k].outcome.shapes);
      const mine = both?.a[p.modes[p.seen]];
      return targets.map((t) => (both && mine ? dot(mine, both.b[t]) ** 2 : 0));
    });
    const chosen = assign(weights, set.length, set.length);
    if (chosen.some((t, i) => weights[i * set.length + t] < CLEAR_LIKENESS)) continue;
    set.forEach((p, i) => {
      p.modes[k] = targets[chosen[i]];
    });
  }
}

function branchOf(
  path: Path & { readonly alike: Float64Array },
  points: readonly Point[],
  values: number,
): Branch {
  const modes: (number | undefined)[] = new Array(values).fill(undefined);
  const frequencies: (number | undefined)[] = new Array(values).fill(undefined);
  const alike: (number | undefined)[] = new Array(values).fill(undefined);
  let least = 1;
  points.forEach(({ outcome, value, link }, k) => {
    const mode = path.modes[k];
    const came = link !== undefined && mode >= 0 && path.modes[k - 1] >= 0;
    least = came ? Math.min(least, path.alike[k]) : 0;
    if (value < 0) return;
    if (mode >= 0) {
      modes[value] = mode + 1;
      frequencies[value] = outcome.frequencies[mode];
      if (least > 0) alike[value] = least;
    }
    least = 1;
  });
  return { modes, frequencies, alike };
}
