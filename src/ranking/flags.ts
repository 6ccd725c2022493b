/** Reasons to avoid a place, each with its numbers. */

import { leverArmWords, placeWords } from "../attitude/lever-arm-words.ts";
import type { FrameFile } from "../frame/types.ts";
import type { Candidate, Model } from "../model/types.ts";
import type { Clipping } from "../sensing/clipping.ts";
import { patternFits } from "./candidates.ts";
import { type LoopCoupling, mainCoupling, UNSTABLE } from "./control-band.ts";
import type { Detail } from "./detail.ts";
import { inTheWay } from "./room.ts";
import type { Crossing, Flag, ModalMotion, Overhang } from "./types.ts";
import type { Use } from "./use.ts";

/** A place that turns at least this much of what the liveliest candidate does sits near an antinode ... */
const NEAR_ANTINODE = 0.9;
/** ... if another candidate turns no more than this: else the mode turns all of them alike. */
const CALM = 0.7;

/** Gain at a resonance that leaves the usual 6 dB before any filter; common practice, no source. */
const LITTLE_MARGIN = 0.5;

/** What is known of a place before its flags. */
export interface FlagInput {
  readonly candidate: Candidate;
  readonly motion: readonly ModalMotion[];
  readonly detail: Detail;
  /** of its isolators */
  readonly mountFlags: readonly Flag[];
}

/** What is known of the whole frame. */
export interface FlagFrame {
  readonly file: FrameFile;
  readonly model: Model;
  readonly overhangs: readonly Overhang[];
  readonly crossings: readonly Crossing[];
  /** multiples of the motors' speed up to this one count at hover */
  readonly bladePass: number;
  readonly use: Use;
  /** of the rate loop, Hz */
  readonly bandwidth: number;
}

export function flagsOf(frame: FlagFrame, place: FlagInput): Flag[] {
  return [
    ...overhanging(frame, place),
    ...offThePlate(frame, place),
    ...noRoom(frame, place),
    ...controlBand(frame, place.detail.couplings),
    ...clips(frame, place),
    ...place.mountFlags,
    ...nearAntinode(frame, place),
    ...offCentre(frame, place),
  ];
}

function overhanging({ model, overhangs }: FlagFrame, { candidate }: FlagInput): Flag[] {
  const { name } = model.plates[candidate.plate];
  return overhangs
    .filter((o) => o.plate === name && beyond(o, candidate))
    .map((o) => ({
      kind: o.flagged ? "cantilevered" : "overhanging",
      hard: o.flagged,
      text: o.text,
      brief: overhangBrief(o),
    }));
}

function overhangBrief({ length, thickness, frequency }: Overhang): string {
  const own =
    frequency === undefined ? "no mode of its own" : `a mode of its own at ${shown(frequency)} Hz`;
  return `the plate reaches ${shown(1e3 * length)} mm past its last support, ${shown(length / thickness)} times its thickness; ${own}`;
}

function offThePlate({ model }: FlagFrame, { candidate }: FlagInput): Flag[] {
  const plate = model.plates[candidate.plate];
  if (patternFits(plate, candidate)) return [];
  const text = `the screw pattern does not lie wholly on "${plate.name}"`;
  return [{ kind: "pattern off the plate", hard: true, text }];
}

/** The stack's box as it is drawn would cut something there. */
function noRoom({ file, model }: FlagFrame, { candidate }: FlagInput): Flag[] {
  const { x, y } = candidate;
  const side = candidate.side > 0 ? "above" : "below";
  const hit = inTheWay(file, model, model.plates[candidate.plate], x, y, side);
  return hit === undefined
    ? []
    : [{ kind: "no room", hard: false, text: `the stack's box would cut ${hit}` }];
}

/** A mode that the rate loop would drive. */
export function controlBand(
  { bandwidth }: Pick<FlagFrame, "bandwidth">,
  couplings: readonly LoopCoupling[],
): Flag[] {
  const worst = mainCoupling(couplings);
  if (!worst || worst.gain < LITTLE_MARGIN) return [];
  const { axis, frequency, gain } = worst;
  const hard = gain >= UNSTABLE;
  const limit =
    gain >= 1
      ? "above 1, the limit of stability where the phase is unlucky"
      : "where the usual margin asks for 0.5 or less";
  const filters = hard
    ? "more than filters could take away that are fast enough for the loop"
    : "before any filter";
  const usual = gain >= 1 ? ", above 1 it may oscillate" : ", the usual limit is 0.5";
  const beyond = hard ? ", and filters cannot take that away" : "";
  return [
    {
      kind: "in the control band",
      hard,
      brief: `mode at ${shown(frequency)} Hz in ${axis}: loop gain ${shown(gain)}${usual}${beyond}`,
      text: `a mode at ${shown(frequency)} Hz turns the stack in ${axis}: the rate loop (${shown(bandwidth)} Hz) meets what it adds with a gain of ${shown(gain)}, ${limit}, ${filters}`,
    },
  ];
}

function clips({ use }: FlagFrame, { detail }: FlagInput): Flag[] {
  const { gyro, levelling } = detail.clipping;
  const found: Flag[] = [];
  if (gyro?.clipped) {
    const text = clipText("the gyro", gyro, "deg/s");
    found.push({ kind: "gyro clips", hard: true, text, brief: clipBrief(gyro, "deg/s") });
  }
  if (levelling?.clipped && use !== "rate") {
    const text = clipText("the accelerometer", levelling, "g");
    const brief = clipBrief(levelling, "g");
    found.push({ kind: "accelerometer clips", hard: true, text, brief });
  }
  return found;
}

function clipBrief({ axis, speed, peak, range }: Clipping, unit: string): string {
  const rpm = shown((speed * 60) / (2 * Math.PI));
  return `${shown(peak)} ${unit} in ${"xyz"[axis]} at ${rpm} rpm, range ${shown(range)} ${unit}`;
}

function clipText(chip: string, { axis, speed, peak, range }: Clipping, unit: string): string {
  const rpm = shown((speed * 60) / (2 * Math.PI));
  const where =
    unit === "g" ? `along ${"xyz"[axis]}, thrust and vibration together,` : `about ${"xyz"[axis]}`;
  return `at ${rpm} rpm ${chip} has to read up to ${shown(peak)} ${unit} ${where} but its range ends at ${shown(range)} ${unit}`;
}

function nearAntinode({ crossings, bladePass }: FlagFrame, { motion }: FlagInput): Flag[] {
  const atHover = crossings
    .filter((c) => c.nearHover && c.multiple <= bladePass)
    .sort((a, b) => Math.abs(a.fromHover) - Math.abs(b.fromHover))
    .map((c) => ({ c, m: motion.find((m) => m.mode === c.mode) }))
    .find(({ m }) => m && m.rotationShare >= NEAR_ANTINODE && m.calmestShare <= CALM);
  if (!atHover?.m) return [];
  const { c, m } = atHover;
  const percent = (v: number) => `${Math.round(100 * v)} %`;
  const most =
    m.rotationShare > 0.995
      ? "of all candidates it turns most"
      : `it turns ${percent(m.rotationShare)} as much as the candidate that turns most`;
  const meets = `${percent(Math.abs(c.fromHover))} ${c.fromHover < 0 ? "below" : "above"} hover`;
  return [
    {
      kind: "near an antinode",
      hard: false,
      brief: `mode ${c.mode} at ${shown(c.frequency)} Hz, which ${c.order} meets ${meets}; the calmest place turns ${percent(m.calmestShare)} as much`,
      text: `${most} in mode ${c.mode} (${Math.round(c.frequency)} Hz), the calmest ${percent(m.calmestShare)} as much; "${c.order}" meets that mode ${meets}`,
    },
  ];
}

/** Outside the rule of thumb; in rate flight the accelerometer is not used. */
function offCentre({ use }: FlagFrame, { detail: { leverArm } }: FlagInput): Flag[] {
  if (use === "rate" || leverArm.within) return [];
  const [read, filter] = leverArmWords(leverArm);
  const text = `${read} ${filter}`.replace(/\.$/, "");
  const { reading, yawRate, radius } = leverArm;
  const deg = 180 / Math.PI;
  const brief = `${placeWords(leverArm)}: ${shown(deg * reading.tilt)} deg of false tilt at ${shown(deg * yawRate)} deg/s of yaw, less than ${shown(deg * leverArm.error)} deg within ${shown(1e3 * radius)} mm`;
  return [{ kind: "far from the centre of gravity", hard: false, text: lowered(text), brief }];
}

const lowered = (text: string) => `${text[0].toLowerCase()}${text.slice(1)}`;
const shown = (v: number) => String(Number(v.toPrecision(v < 9.95 ? 2 : 3)));

/** Whether a place sits on an overhang that is flagged. */
export function onFlaggedOverhang(
  model: Model,
  candidate: Candidate,
  overhangs: readonly Pick<Overhang, "plate" | "direction" | "supportAt" | "endAt" | "flagged">[],
): boolean {
  const { name } = model.plates[candidate.plate];
  return overhangs.some((o) => o.flagged && o.plate === name && beyond(o, candidate));
}

function beyond(o: Pick<Overhang, "direction" | "supportAt" | "endAt">, c: Candidate): boolean {
  const at = o.direction === "front" || o.direction === "rear" ? c.x : c.y;
  return o.endAt > o.supportAt ? at > o.supportAt : at < o.supportAt;
}
