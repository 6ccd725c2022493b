/** Reasons to avoid a place, each with its numbers. */

import { specificForce } from "../attitude/specific-force.ts";
import { apparentTilt, gravityInBody, lowSide } from "../attitude/tilt.ts";
import type { Candidate, Model } from "../model/types.ts";
import { patternFits } from "./candidates.ts";
import type { Crossing, Flag, ModalMotion, Overhang } from "./types.ts";

/** Horizontal distance from the centre of gravity above which self-level flight is worth a word, m. */
const FAR = 0.02;
/** Yaw rate of the false-tilt example, rad/s. */
const YAW = (400 * Math.PI) / 180;
/** A place that turns at least this much of what the liveliest candidate does sits near an antinode ... */
const NEAR_ANTINODE = 0.9;
/** ... if another candidate turns no more than this: else the mode turns all of them alike. */
const CALM = 0.7;

/** @param lever the chip from the centre of gravity along x and y, m */
export function flagsOf(
  model: Model,
  candidate: Candidate,
  overhangs: readonly Overhang[],
  motion: readonly ModalMotion[],
  crossings: readonly Crossing[],
  lever: readonly [number, number],
): Flag[] {
  const plate = model.plates[candidate.plate];
  const flags: Flag[] = [];
  for (const o of overhangs) {
    if (o.plate !== plate.name || !beyond(o, candidate)) continue;
    flags.push({ kind: o.flagged ? "cantilevered" : "overhanging", hard: o.flagged, text: o.text });
  }
  if (!patternFits(plate, candidate)) {
    flags.push({
      kind: "pattern off the plate",
      hard: true,
      text: `the screw pattern does not lie wholly on "${plate.name}"`,
    });
  }
  const atHover = crossings
    .filter((c) => c.nearHover)
    .sort((a, b) => Math.abs(a.fromHover) - Math.abs(b.fromHover))
    .map((c) => ({ c, m: motion.find((m) => m.mode === c.mode) }))
    .find(({ m }) => m && m.rotationShare >= NEAR_ANTINODE && m.calmestShare <= CALM);
  if (atHover?.m) {
    const { c, m } = atHover;
    const percent = (v: number) => `${Math.round(100 * v)} %`;
    flags.push({
      kind: "near an antinode",
      hard: false,
      text: `${m.rotationShare > 0.995 ? "of all candidates it turns most" : `it turns ${percent(m.rotationShare)} as much as the candidate that turns most`} in mode ${c.mode} (${Math.round(c.frequency)} Hz), the calmest ${percent(m.calmestShare)} as much; "${c.order}" meets that mode ${percent(Math.abs(c.fromHover))} ${c.fromHover < 0 ? "below" : "above"} hover`,
    });
  }
  if (Math.hypot(...lever) > FAR) flags.push(falseTilt(lever));
  return flags;
}

/** What a level craft seems to do in steady yaw, by what the accelerometer then reads. */
function falseTilt([x, y]: readonly [number, number]): Flag {
  const turning = { acceleration: [0, 0, 0], omega: [0, 0, YAW], alpha: [0, 0, 0] } as const;
  const force = specificForce(turning, [x, y, 0], gravityInBody({ roll: 0, pitch: 0 }));
  const degrees = ((apparentTilt(force) * 180) / Math.PI).toPrecision(2);
  const low = lowSide(force);
  const distance = Math.round(Math.hypot(x, y) * 1e3);
  return {
    kind: "far from the centre of gravity",
    hard: false,
    text: `${distance} mm from the centre of gravity: in self-level flight a yaw of 400 deg/s, held for seconds, reads as ${degrees} degrees of tilt with the ${low} low, so that the craft lifts its ${low} (at 200 deg/s about a quarter of that); in rate flight it has no effect`,
  };
}

/** Whether a place sits on an overhang that is flagged. */
export function onFlaggedOverhang(
  model: Model,
  candidate: Candidate,
  overhangs: readonly Overhang[],
): boolean {
  const { name } = model.plates[candidate.plate];
  return overhangs.some((o) => o.flagged && o.plate === name && beyond(o, candidate));
}

function beyond(o: Overhang, c: Candidate): boolean {
  const at = o.direction === "front" || o.direction === "rear" ? c.x : c.y;
  return o.endAt > o.supportAt ? at > o.supportAt : at < o.supportAt;
}
