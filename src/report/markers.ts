/** The candidate places: a dot where each is, and a numbered mark that points to it. */

import type { RankedCandidate } from "../ranking/types.ts";
import { circle, fine, label, line, type Point } from "./drawing.ts";
import { type Html, html } from "./html.ts";

/** Marks with a number; further candidates are dots only. */
export const MOST_NUMBERS = 12;

/** A place to avoid whatever its figure. */
export function isToAvoid(c: RankedCandidate): boolean {
  return c.flags.some((f) => f.hard);
}

/** The kind of mark: the best place, one that will do, one to avoid. */
export function standing(c: RankedCandidate, index: number): "best" | "fine" | "avoid" {
  if (isToAvoid(c)) return "avoid";
  return index === 0 ? "best" : "fine";
}

/** What stands on the marks: the place; places that are shared get letters, 1a, 1b, to tell them apart. */
export function placeLabels(candidates: readonly RankedCandidate[]): string[] {
  return candidates.map(({ place }, i) => {
    if (candidates.filter((c) => c.place === place).length === 1) return String(place);
    const before = candidates.slice(0, i).filter((c) => c.place === place).length;
    const letter = String.fromCharCode(97 + (before % 26));
    return `${place}${letter.repeat(1 + Math.floor(before / 26))}`;
  });
}

/**
 * Numbers spread so that neighbours are at least `distance` apart and within the limits where there
 * is room; each moves as little as its crowd allows, and their order stays.
 */
export function spread(
  values: readonly number[],
  distance: number,
  [low, high]: readonly [number, number],
): number[] {
  const order = values.map((_, i) => i).sort((a, b) => values[a] - values[b] || a - b);
  // Crowds: each holds its members evenly about the mean of where they would like to be.
  const crowds: { members: number[]; centre: number }[] = [];
  const half = (c: { readonly members: number[] }) => ((c.members.length - 1) * distance) / 2;
  for (const i of order) {
    let crowd = { members: [i], centre: values[i] };
    let before = crowds.at(-1);
    while (before && crowd.centre - half(crowd) - before.centre - half(before) < distance) {
      const members = [...before.members, ...crowd.members];
      const mean = members.reduce((sum, m) => sum + values[m], 0) / members.length;
      crowds.pop();
      crowd = { members, centre: mean };
      before = crowds.at(-1);
    }
    crowds.push(crowd);
  }
  const out = values.map(() => 0);
  for (const c of crowds) {
    for (const [k, m] of c.members.entries()) out[m] = c.centre - half(c) + k * distance;
  }
  let least = low;
  for (const i of order) {
    out[i] = Math.max(out[i], least);
    least = out[i] + distance;
  }
  let most = high;
  for (const i of order.toReversed()) {
    out[i] = Math.min(out[i], most);
    most = out[i] - distance;
  }
  return out;
}

/** Where callouts may stand: in two lines, one on either side of the places. */
export interface CalloutLines {
  /** 0: lines to the left and right of the places; 1: above and below them */
  readonly axis: 0 | 1;
  /** coordinate of the two lines along the axis; the first one is preferred */
  readonly at: readonly [number, number];
  /** how far the lines reach across the axis */
  readonly limits: readonly [number, number];
}

/**
 * Where the callouts of places stand. Of places in line with each other the nearest goes to the
 * preferred line and the others to the second, so that no leader runs over another place's dot.
 *
 * @param r radius of a mark, mm
 */
export function calloutPlaces(points: readonly Point[], lines: CalloutLines, r: number): Point[] {
  const { axis, at, limits } = lines;
  const across = axis === 0 ? 1 : 0;
  const far = points.map((p) => Math.abs(p[axis] - at[0]));
  const second = points.map((p, i) =>
    points.some((q, j) => {
      const inLine = j !== i && Math.abs(q[across] - p[across]) < 1.2 * r;
      return inLine && (far[j] < far[i] - 1e-6 || (Math.abs(far[j] - far[i]) <= 1e-6 && j < i));
    }),
  );
  const out = points.map((): Point => [0, 0]);
  for (const k of [0, 1]) {
    const members = points.map((_, i) => i).filter((i) => second[i] === (k === 1));
    const values = members.map((i) => points[i][across]);
    for (const [n, v] of spread(values, 2.9 * r, limits).entries()) {
      out[members[n]] = axis === 0 ? [at[k], v] : [v, at[k]];
    }
  }
  return out;
}

/** The marks of a drawing, and the points that their callouts need room around. */
export interface Marks {
  readonly layers: readonly Html[];
  readonly callouts: readonly Point[];
}

/**
 * A dot exactly at every candidate's place, and its mark as a callout well outside it,
 * joined by a leader. Dots lie on top of everything, the best place's last.
 *
 * @param r radius of a mark, mm
 */
export function candidateMarks(
  candidates: readonly RankedCandidate[],
  places: readonly Point[],
  lines: CalloutLines,
  r: number,
): Marks {
  const callouts = calloutPlaces(places.slice(0, MOST_NUMBERS), lines, r);
  const labels = placeLabels(candidates);
  const leaders = callouts.flatMap((at, i) => [
    line(places[i], at, "leader-ground"),
    line(places[i], at, "leader"),
  ]);
  const marks = callouts.map((at, i) => mark(at, r, standing(candidates[i], i), labels[i]));
  const dots = places.map((p, i) => circle(p, 0.36 * r, `place-dot ${standing(candidates[i], i)}`));
  return { layers: [...leaders, ...marks, ...dots.reverse()], callouts };
}

/** One mark: a full disc for the best place, a ring for the others, a diamond for places to avoid. */
export function mark(at: Point, r: number, kind: "best" | "fine" | "avoid", text: string): Html {
  const [x, y] = at;
  const d = 1.25 * r;
  const shape =
    kind === "avoid"
      ? html`<path class="mark avoid" d="M${fine(x - d)} ${fine(y)}L${fine(x)} ${fine(y - d)}L${fine(x + d)} ${fine(y)}L${fine(x)} ${fine(y + d)}Z"/>`
      : circle(at, kind === "best" ? 1.15 * r : r, `mark ${kind}`);
  const halo = kind === "best" && circle(at, 1.5 * r, "mark-halo");
  return html`${halo}${shape}${label([x, y + 0.36 * r], (text.length > 1 ? 0.95 : 1.15) * r, text, `mark-number ${kind}`)}`;
}

/** The same mark standing in a line of text. */
export function inlineMark(kind: "best" | "fine" | "avoid", text: string): Html {
  return html`<svg class="inline-mark" viewBox="-18 -18 36 36" aria-hidden="true">${mark([0, 0], 10, kind, text)}</svg>`;
}
