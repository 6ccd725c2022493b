/** An arm as a strip of varying width: its section at any place. */

import { type BeamSection, stripSection } from "../material/section.ts";
import type { ArmPart } from "./types.ts";

/** Width of the arm at the fraction s of its free length, m (linear between the profile's points). */
export function widthAt(arm: ArmPart, s: number): number {
  const p = arm.profile;
  if (s <= p[0].s) return p[0].width;
  for (let i = 1; i < p.length; i++) {
    if (s <= p[i].s) {
      const t = (s - p[i - 1].s) / (p[i].s - p[i - 1].s);
      return p[i - 1].width + t * (p[i].width - p[i - 1].width);
    }
  }
  return p[p.length - 1].width;
}

/** Width lost to a slot at s, m; the widest where slots overlap. */
export function slotAt(arm: ArmPart, s: number): number {
  return arm.slots.reduce((w, k) => (s >= k.from && s <= k.to ? Math.max(w, k.width) : w), 0);
}

export function armSection(arm: ArmPart, s: number): BeamSection {
  return stripSection(arm.strip, widthAt(arm, s), slotAt(arm, s));
}

/** The fractions at which the width or a slot has a corner; elements end there. */
export function armBreaks(arm: ArmPart): number[] {
  return [0, 1, ...arm.profile.map((p) => p.s), ...arm.slots.flatMap((k) => [k.from, k.to])];
}
