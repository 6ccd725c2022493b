/** Which modes moved, came and went, and which crossings with them. */

import { HOVER_MARGIN } from "../ranking/crossings.ts";
import type { MeetingPoint, Outcome } from "../variants/types.ts";
import type { CrossingChange, Difference, ModeChange } from "./compare-types.ts";
import { matchModes } from "./match-modes.ts";

const nameOf = ({ modeNames }: Outcome, number: number) =>
  modeNames?.[number - 1] ?? `mode ${number}`;

/** @param count lowest modes of either that are told */
export function modeChanges(
  from: Outcome,
  to: Outcome,
  count: number,
): Pick<Difference, "modes" | "crossings" | "unmatched"> {
  const match = matchModes(from, to, count);
  const f = (o: Outcome, number: number) => o.frequencies[number - 1];
  const both = match.pairs.map(({ a, b, mac, together }): ModeChange => {
    const change = f(to, b) - f(from, a);
    const name = to.modeNames && !from.modeNames ? nameOf(to, b) : nameOf(from, a);
    const grouped = together === undefined ? {} : { together };
    return {
      number: a,
      now: b,
      name,
      from: f(from, a),
      to: f(to, b),
      change,
      share: change / f(from, a),
      mac,
      ...grouped,
    };
  });
  const lost = match.lost.map((number): ModeChange => {
    return { number, name: nameOf(from, number), from: f(from, number) };
  });
  const gained = match.gained.map((now): ModeChange => {
    return { now, name: nameOf(to, now), to: f(to, now) };
  });
  const order = (m: ModeChange) => m.number ?? Number.POSITIVE_INFINITY;
  const modes = [...both, ...lost].sort((p, q) => order(p) - order(q));
  return {
    modes: [...modes, ...gained],
    crossings: crossingChanges(from, to),
    ...(match.reason !== undefined && { unmatched: match.reason }),
  };
}

/** Meetings near hover that have no counterpart: the same order with the same mode. */
function crossingChanges(from: Outcome, to: Outcome): Difference["crossings"] {
  const near = (o: Outcome) => o.meetings.filter((m) => Math.abs(m.fromHover) <= HOVER_MARGIN);
  const all = matchModes(from, to, Math.max(from.frequencies.length, to.frequencies.length));
  const partner = new Map(all.pairs.map((p) => [p.a, p.b]));
  const matched = new Set(all.pairs.map((p) => p.b));
  const [before, after] = [near(from), near(to)];
  // Modes that cannot be told again are not said to come and go at the same order.
  const same = (a: MeetingPoint, b: MeetingPoint) =>
    a.multiple === b.multiple &&
    (partner.has(a.mode) ? partner.get(a.mode) === b.mode : !matched.has(b.mode));
  const told = (o: Outcome, { mode, order, multiple, fromHover }: MeetingPoint) => {
    const frequency = o.frequencies[mode - 1];
    return { mode, name: nameOf(o, mode), frequency, order, multiple, fromHover };
  };
  return {
    gained: after
      .filter((b) => !before.some((a) => same(a, b)))
      .map((m): CrossingChange => told(to, m)),
    lost: before
      .filter((a) => !after.some((b) => same(a, b)))
      .map((m): CrossingChange => told(from, m)),
  };
}
