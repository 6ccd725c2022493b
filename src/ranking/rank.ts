/** Candidate places in order, with what each reads, why, and what it costs. */

import { reachWanted } from "../excitation/excite.ts";
import { spreadPower } from "../excitation/spread.ts";
import type { Excitation } from "../excitation/types.ts";
import type { Burden } from "../filter/burden-types.ts";
import type { FrameFile } from "../frame/types.ts";
import type { MassProperties } from "../matrices/mass.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Candidate, Model } from "../model/types.ts";
import type { Modes } from "../modes/types.ts";
import type { BareFrame } from "../response/bare-frame.ts";
import { isolatorModes } from "../response/mount-frequencies.ts";
import { type Assessed, assess, passedOrders } from "./assess.ts";
import { namedCandidates } from "./candidates.ts";
import { casesOf } from "./cases.ts";
import { causesOf } from "./causes.ts";
import { findCrossings } from "./crossings.ts";
import { detailsOf } from "./detail.ts";
import { flagsOf, onFlaggedOverhang } from "./flags.ts";
import { type Instruments, instrumentsOf } from "./instruments.ts";
import { keptPlaces } from "./kept.ts";
import { compareMounts, mountFlags } from "./mounts.ts";
import { foldingsOf, notesOf } from "./notes.ts";
import { FREQUENCY_BAND, figuresOf, orderOf, TIE_BAND } from "./order.ts";
import { findOverhangs } from "./overhang.ts";
import { quietMap } from "./quiet-map.ts";
import { closelyRuledOutBy } from "./ruled-out.ts";
import { fastShare, levelAt, modalMotions, spectraOf } from "./score.ts";
import { type MapOptions, search } from "./search.ts";
import type { Crossing, Flag, Overhang, RankedCandidate, Ranking } from "./types.ts";
import { score, scoreParts, USE_WEIGHTS } from "./use.ts";
import { writeVerdict } from "./verdict.ts";

export interface RankInput {
  readonly file: FrameFile;
  readonly model: Model;
  /** as drawn, with the stack where the file puts it */
  readonly mesh: Mesh;
  readonly modes: Modes;
  /** without the stack */
  readonly bareModel: Model;
  readonly bareMass: Pick<MassProperties, "mass" | "cg">;
  readonly bare: BareFrame;
  readonly excitation: Excitation;
  readonly map?: MapOptions;
}

const decibels = (a: number, b: number) => 20 * Math.log10(a / b);

/** undefined when there is no place to rank. @throws InputError for settings that do not go together */
export function rank(input: RankInput): Ranking | undefined {
  const { file, model, mesh, modes, bare, bareMass, excitation } = input;
  const instruments = instrumentsOf(file, excitation, model.rotors.length);
  const read = (places: readonly Candidate[]) => assess(bare, bareMass, instruments, places);
  const overhangs = findOverhangs(model, mesh, modes, reachWanted(excitation));
  const named = read(namedCandidates(file, model));
  const avoid = (p: Assessed) => onFlaggedOverhang(model, p.candidate, overhangs);
  const cost = costOf(instruments, avoid);
  const searched = search(file, model, read, cost, input.map);
  const kept = keptPlaces(
    named,
    searched,
    cost,
    (p) => avoid(p) || closelyRuledOutBy(bare, instruments, p) !== undefined,
  );
  if (kept.length === 0) return undefined;
  const rest = read(searched.others.map((o) => o.candidate));
  const crossings = findCrossings(modes.described, excitation);
  const { candidates, reference } = rankPlaces(input, instruments, overhangs, crossings, kept);
  const plain = (p: Assessed) =>
    score(
      scoreParts(figuresOf(p, instruments.control.attitudeError), reference),
      USE_WEIGHTS[instruments.use],
    );
  const [first] = candidates;
  const mounts = compareMounts(model, bare, bareMass, instruments, first.candidate);
  const folded = foldingsOf(instruments, excitation);
  return {
    candidates,
    use: instruments.use,
    weights: USE_WEIGHTS[instruments.use],
    controlBandwidth: instruments.bandwidth,
    residual: instruments.control.residual,
    mounts,
    map: quietMap(model, searched, rest, { score: plain, avoid }),
    overhangs,
    crossings,
    tieBand: TIE_BAND,
    frequencyBand: FREQUENCY_BAND,
    notes: notesOf(file, instruments, excitation, folded, reachOf(bare)),
    foldings: folded,
    verdict: writeVerdict(
      candidates,
      overhangs,
      {
        use: instruments.use,
        residual: instruments.control.residual,
        controlBandwidth: instruments.bandwidth,
      },
      mounts,
    ),
  };
}

/** Frequency of the highest mode computed, Hz. */
function reachOf({ modes }: BareFrame): number {
  return Math.max(0, ...modes.described.map((m) => m.frequency));
}

/** What the search makes least; places on a flagged overhang are out. */
function costOf(instruments: Instruments, avoid: (p: Assessed) => boolean) {
  const weights = USE_WEIGHTS[instruments.use];
  const one = { gyro: 1, accelerometer: 1, tilt: 0 };
  return (p: Assessed) =>
    avoid(p)
      ? Number.POSITIVE_INFINITY
      : score(scoreParts(figuresOf(p, instruments.control.attitudeError), one), weights);
}

function rankPlaces(
  { file, model, modes, bareModel, bare, excitation }: RankInput,
  instruments: Instruments,
  overhangs: readonly Overhang[],
  crossings: readonly Crossing[],
  kept: readonly Assessed[],
) {
  const motions = modalMotions(
    modes,
    kept.map((p) => p.seat),
  );
  const details = detailsOf(bare, instruments, kept);
  const { use, bandwidth } = instruments;
  const { bladePass } = excitation;
  const frame = { file, model, overhangs, crossings, bladePass, use, bandwidth };
  const flags = kept.map((p, i): Flag[] =>
    flagsOf(frame, {
      candidate: p.candidate,
      motion: motions[i],
      detail: details[i],
      mountFlags: mountFlags(bare, instruments, p.candidate),
    }),
  );
  const { order, tied, reference, shifted } = orderOf(bare, instruments, kept, flags);
  const open = order.filter((i) => !flags[i].some((f) => f.hard));
  const least = (f: (p: Assessed) => number) =>
    Math.min(...(open.length > 0 ? open : order).map((i) => f(kept[i])));
  // A chain that does not reach the residual is no measure for the others.
  const delayOf = ({ attainable, delay }: Burden) =>
    attainable ? delay : Number.POSITIVE_INFINITY;
  const shortest = (kind: "without" | "with") => {
    const delay = least((p) => delayOf(p.filter[kind]));
    return Number.isFinite(delay) ? delay : least((p) => p.filter[kind].delay);
  };
  const quickest = { without: shortest("without"), with: shortest("with") };
  const accel = least((p) => p.accel);
  const cases = casesOf(bare, instruments, kept);
  const candidates = order.map((i, position): RankedCandidate => {
    const p = kept[i];
    const parts = scoreParts(figuresOf(p, instruments.control.attitudeError), reference);
    const levels = shifted.map((level) => level[i].gyro);
    const spectra = spectraOf(bare.h, p.reading);
    const sensedTotal = totalOf(excitation, p.sensed.gyroPower);
    const mountModes = isolatorModes(p.candidate);
    return {
      candidate: p.candidate,
      plate: model.plates[p.candidate.plate].name,
      place: tied.has(i) ? 1 : position + 1,
      tied: tied.has(i),
      found: !p.candidate.named,
      sensed: {
        gyro: p.sensed.gyro,
        accel: p.sensed.accel,
        gyroAtHover: levelAt(bare.h, sensedTotal, excitation.speeds.hover),
      },
      score: score(parts, USE_WEIGHTS[use]),
      scoreParts: parts,
      filter: p.filter,
      delayOver: {
        without: p.filter.without.delay - quickest.without,
        with: p.filter.with.delay - quickest.with,
      },
      ...details[i],
      cases: cases[i],
      ...(mountModes && { mountModes }),
      gyro: p.gyro,
      gyroAxes: axes(p.reading.gyroAxes),
      accel: p.accel,
      accelAxes: axes(p.reading.accelAxes),
      gyroRange: [Math.min(...levels), Math.max(...levels)],
      decibel: decibels(p.sensed.gyro, reference.gyro),
      accelDecibel: decibels(p.accel, accel),
      fromCg: Math.hypot(p.lever[0], p.lever[1]),
      fromCg3d: Math.hypot(...p.lever),
      flags: flags[i],
      causes: causesOf(bareModel, bare, p.place, instruments.gyroGain),
      motion: motions[i],
      ...spectra,
      passed: passedOrders(instruments, p),
      gyroAtHover: levelAt(bare.h, spectra.gyroTotal, excitation.speeds.hover),
      fast: fastShare(bare.h, sensedTotal),
    };
  });
  return { candidates, reference };
}

/** rms against nominal speed of all orders together, the motors' spread in it. */
function totalOf({ grid, motorSpread }: Excitation, powers: readonly Float64Array[]): Float64Array {
  const sum = grid.map((_, s) => powers.reduce((t, p) => t + p[s], 0));
  return spreadPower(grid, sum, motorSpread).map(Math.sqrt);
}

const axes = (power: Float64Array): [number, number, number] => [
  Math.sqrt(power[0]),
  Math.sqrt(power[1]),
  Math.sqrt(power[2]),
];
