/** Numbered marks for the candidate places, kept apart where places coincide. */

import type { RankedCandidate } from "../ranking/types.ts";
import { circle, fine, label, line, type Point } from "./drawing.ts";
import { type Html, html } from "./html.ts";

/** Marks with a number; further candidates are dots only. */
const MOST_NUMBERS = 12;
/** Rounds of pushing marks apart. */
const ROUNDS = 200;

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
 * Points moved so that no two are nearer than `distance`; those that lie on each other part to the
 * sides, in the order of the list. All keep their distance from the fixed points too.
 */
export function apart(
  points: readonly Point[],
  distance: number,
  fixed: readonly Point[] = [],
): Point[] {
  const at = [...points, ...fixed].map(([x, y]) => [x, y] as [number, number]);
  const free = points.length;
  for (let round = 0; round < ROUNDS; round++) {
    let moved = false;
    for (let i = 0; i < free; i++) {
      for (let j = i + 1; j < at.length; j++) {
        const [dx, dy] = [at[j][0] - at[i][0], at[j][1] - at[i][1]];
        const gap = Math.hypot(dx, dy);
        if (gap >= distance - 1e-6) continue;
        moved = true;
        const [ux, uy] = gap > 1e-6 ? [dx / gap, dy / gap] : [(i + j) % 2 === 0 ? -1 : 1, 0];
        const push = (distance - gap) / (j < free ? 2 : 1) + 1e-4;
        at[i] = [at[i][0] - ux * push, at[i][1] - uy * push];
        if (j < free) at[j] = [at[j][0] + ux * push, at[j][1] + uy * push];
      }
    }
    if (!moved) break;
  }
  return at.slice(0, free);
}

/**
 * The marks of all candidates at their places on a drawing, best place last so that it lies on top.
 *
 * @param fixed points that no mark may cover
 * @param r radius of a mark, mm
 */
export function candidateMarks(
  candidates: readonly RankedCandidate[],
  places: readonly Point[],
  fixed: readonly Point[],
  r: number,
): Html[] {
  const shown = apart(places.slice(0, MOST_NUMBERS), 2.4 * r, fixed);
  const labels = placeLabels(candidates);
  const dots = places.slice(MOST_NUMBERS).map((p) => circle(p, 0.35 * r, "place-dot"));
  const marks = shown.map((at, i) => {
    const true_ = places[i];
    const away = Math.hypot(at[0] - true_[0], at[1] - true_[1]) > 0.3 * r;
    const leader =
      away && html`${line(true_, at, "leader")}${circle(true_, 0.22 * r, "place-dot")}`;
    return html`<g>${leader}${mark(at, r, standing(candidates[i], i), labels[i])}</g>`;
  });
  return [...dots, ...marks.reverse()];
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
