/** Candidate places in order of what the gyro would read there. */

import { highestFrequency } from "../excitation/excite.ts";
import type { Excitation } from "../excitation/types.ts";
import type { FrameFile } from "../frame/types.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model, Vec3 } from "../model/types.ts";
import type { Modes } from "../modes/types.ts";
import { type BareFrame, shiftedFrame } from "../response/bare-frame.ts";
import { shiftedPlace } from "../response/place.ts";
import { readPlace, rms } from "../response/reading.ts";
import { type Assessed, assess } from "./assess.ts";
import { candidatesOf } from "./candidates.ts";
import { causesOf } from "./causes.ts";
import { findCrossings } from "./crossings.ts";
import { flagsOf, onFlaggedOverhang } from "./flags.ts";
import { findOverhangs } from "./overhang.ts";
import { atSpeeds, modalMotions, spectraOf } from "./score.ts";
import type { Flag, RankedCandidate, Ranking } from "./types.ts";
import { writeVerdict } from "./verdict.ts";

/**
 * Natural frequencies may be this much off: modulus +-10 %, thickness +-3 % and joints together move
 * arm frequencies by about 7 % (common practice, no source).
 */
export const FREQUENCY_BAND = 0.07;
/** Closer than this, for some error of the frequencies within the band, is a tie, dB. */
export const TIE_BAND = 1;
/** Shifts at which ties are tried, as shares of the band. */
const SHIFTS = [-1, -0.5, 0, 0.5, 1];
/** Candidates found by the program that are kept for the table, and the quietest of them at least. */
const KEPT = 10;
const LEAST_KEPT = 3;
/** Found places closer than this count as one, m. */
const NEAR = 0.012;

const decibels = (a: number, b: number) => 20 * Math.log10(a / b);

export interface RankInput {
  readonly file: FrameFile;
  readonly model: Model;
  /** as drawn, with the stack where the file puts it */
  readonly mesh: Mesh;
  readonly modes: Modes;
  /** without the stack */
  readonly bareModel: Model;
  readonly bare: BareFrame;
  readonly excitation: Excitation;
  readonly cg: Vec3;
}

/** undefined when there is no place to rank. */
export function rank(input: RankInput): Ranking | undefined {
  const { file, model, mesh, modes, bare, excitation } = input;
  const overhangs = findOverhangs(model, mesh, modes, highestFrequency(excitation));
  const crossings = findCrossings(modes, excitation);
  const scored = assess(bare, candidatesOf(file, model));
  if (scored.length === 0) return undefined;
  const avoid = (s: Assessed) => onFlaggedOverhang(model, s.candidate, overhangs);
  const kept = model.candidates.length > 0 ? scored : bestAndWorst(scored, avoid);
  const motions = modalMotions(
    modes,
    kept.map((s) => s.seat),
  );
  const flags = kept.map((s, i) =>
    flagsOf(model, s.candidate, overhangs, motions[i], crossings, leverOf(s, input.cg)),
  );
  const shifted = shiftedLevels(bare, kept);
  const { order, quietest, tied } = placesOf(kept, flags, shifted);
  const candidates = order.map((i, position): RankedCandidate => {
    const s = kept[i];
    const levels = shifted.map((level) => level[i]);
    const spectra = spectraOf(bare.h, s.reading);
    return {
      candidate: s.candidate,
      plate: model.plates[s.candidate.plate].name,
      place: tied.has(i) ? 1 : position + 1,
      tied: tied.has(i),
      gyro: s.gyro,
      gyroAxes: axes(s.reading.gyroAxes),
      accel: s.accel,
      accelAxes: axes(s.reading.accelAxes),
      gyroRange: [Math.min(...levels), Math.max(...levels)],
      decibel: decibels(s.gyro, kept[quietest].gyro),
      accelDecibel: decibels(s.accel, kept[quietest].accel),
      fromCg: Math.hypot(...leverOf(s, input.cg)),
      fromCg3d: Math.hypot(...s.candidate.chip.map((v, k) => v - input.cg[k])),
      flags: flags[i],
      causes: causesOf(input.bareModel, bare, s.place),
      motion: motions[i],
      ...spectra,
      ...atSpeeds(bare.h, spectra.gyroTotal),
    };
  });
  return {
    candidates,
    overhangs,
    crossings,
    tieBand: TIE_BAND,
    frequencyBand: FREQUENCY_BAND,
    notes: NOTES,
    verdict: writeVerdict(candidates, overhangs),
  };
}

/**
 * The order of the candidates (indices): places without a hard flag first, by gyro noise; those that
 * tie with the quietest by number of flags, then by the accelerometer.
 */
function placesOf(
  kept: readonly Assessed[],
  flags: readonly (readonly Flag[])[],
  shifted: readonly (readonly number[])[],
) {
  const hard = (i: number) => +flags[i].some((f) => f.hard);
  const byNoise = kept
    .map((_, i) => i)
    .sort((a, b) => hard(a) - hard(b) || kept[a].gyro - kept[b].gyro);
  const quietest = byNoise[0];
  const ties = (i: number) =>
    hard(i) === hard(quietest) &&
    shifted.some((level) => decibels(level[i], level[quietest]) < TIE_BAND);
  const group = byNoise.filter(ties);
  group.sort((a, b) => flags[a].length - flags[b].length || kept[a].accel - kept[b].accel);
  const order = [...group, ...byNoise.filter((i) => !ties(i))];
  return { order, quietest, tied: new Set(group.length > 1 ? group : []) };
}

const NOTES = [
  "Gyro noise is the real rotation of the board at the candidate, all axes together, over the flight mix; the motors never share a phase, so their powers add.",
  "Each candidate carries the stack's mass itself: the frame without it is solved once, and the stack joined to it at each place.",
  "Places that tie are put in order by the number of their flags, then by the accelerometer.",
  "Comparisons between places are surer than the levels themselves, which follow the assumed unbalance and ripple in proportion.",
];

const axes = (power: Float64Array): [number, number, number] => [
  Math.sqrt(power[0]),
  Math.sqrt(power[1]),
  Math.sqrt(power[2]),
];

/** The chip from the centre of gravity in plan, m. */
const leverOf = ({ candidate: { chip } }: Assessed, cg: Vec3) =>
  [chip[0] - cg[0], chip[1] - cg[1]] as const;

/** Gyro level of every candidate (deg/s rms) with all natural frequencies shifted together. */
function shiftedLevels(bare: BareFrame, kept: readonly Assessed[]): number[][] {
  return SHIFTS.map((share) => {
    if (share === 0) return kept.map((s) => s.gyro);
    const factor = 1 + share * FREQUENCY_BAND;
    const frame = shiftedFrame(bare, factor);
    return kept.map((s) => rms(readPlace(frame, shiftedPlace(s.place, factor)).gyroAxes));
  });
}

/**
 * The quietest places found, the quietest of each plate, the place as drawn, and the noisiest for
 * comparison; places to avoid come after all others.
 */
function bestAndWorst(scored: readonly Assessed[], avoid: (s: Assessed) => boolean): Assessed[] {
  const sorted = [...scored].sort((a, b) => +avoid(a) - +avoid(b) || a.gyro - b.gyro);
  const perPlate = sorted.filter(
    (s, i) => sorted.findIndex((t) => t.candidate.plate === s.candidate.plate) === i,
  );
  const room = Math.max(LEAST_KEPT, KEPT - perPlate.length - 1);
  const apart: Assessed[] = [];
  for (const s of sorted) {
    const near = apart.some(
      (t) =>
        t.candidate.plate === s.candidate.plate &&
        Math.hypot(t.candidate.x - s.candidate.x, t.candidate.y - s.candidate.y) < NEAR,
    );
    if (!near && apart.length < room) apart.push(s);
  }
  const designed = sorted.filter((s) => s.candidate.designed);
  return [...new Set([...apart, ...perPlate, ...designed, sorted[sorted.length - 1]])];
}
