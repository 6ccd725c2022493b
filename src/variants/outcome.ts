/** What one variant is like, from its modes: masses, frequencies, shapes, crossings, and every spot. */

import { filterBurden } from "../filter/filter-burden.ts";
import { grouped, type Heard, hear } from "../ranking/assess.ts";
import { namedCandidates } from "../ranking/candidates.ts";
import { findCrossings } from "../ranking/crossings.ts";
import { type Instruments, instrumentsOf } from "../ranking/instruments.ts";
import { figuresOf } from "../ranking/order.ts";
import { ruledOutBy } from "../ranking/ruled-out.ts";
import type { Overhang } from "../ranking/types.ts";
import { type Figures, score, scoreParts, USE_WEIGHTS } from "../ranking/use.ts";
import type { ShakenFrame } from "../response/bare-frame.ts";
import { coupledModes } from "../response/coupled-modes.ts";
import type { Prepared } from "./prepare.ts";
import type { SamplePoint } from "./sample-point.ts";
import { sampleShapes } from "./shape-samples.ts";
import type { MeetingPoint, Outcome, ShapeSamples, Solution, Spot } from "./types.ts";

export interface OutcomeOptions {
  /** filter delays too, which take about as long as all the rest of a reduced solution */
  readonly delays?: boolean;
}

/** Everything of a variant that its outcome is read from. */
export interface Shaken {
  readonly prepared: Prepared;
  /** without the stack */
  readonly bare: ShakenFrame;
  readonly points: readonly SamplePoint[];
  /** on which a place is ruled out */
  readonly overhangs: readonly Pick<
    Overhang,
    "plate" | "direction" | "supportAt" | "endAt" | "flagged"
  >[];
  readonly solution: Solution;
  /** in words, of the modes with the stack in place; where they are known */
  readonly modeNames?: readonly string[];
  /** parts whose height followed a thickness */
  readonly moved: readonly string[];
}

/** @throws InputError for settings that do not go together, SolveError as `readPlaces` */
export function outcomeOf(shaken: Shaken, options: OutcomeOptions = {}): Outcome {
  const { prepared, bare, points, solution, moved, modeNames } = shaken;
  const { mass, excitation } = prepared;
  const spots = spotsOf(shaken, options);
  const { frequencies, lossFactors, shapes } = wholeModes(bare, points, spots.designed);
  const best = bestOf(spots.all);
  return {
    mass: mass.mass,
    cg: mass.cg,
    hover: excitation?.speeds.hover ?? 0,
    frequencies,
    lossFactors,
    ...(modeNames && { modeNames }),
    shapes,
    spots: spots.all,
    ...(best !== undefined && { best }),
    meetings: meetingsOf(prepared, frequencies),
    solution,
    warnings: prepared.warnings,
    moved,
  };
}

/** The best of the spots that are not ruled out. */
function bestOf(spots: readonly Spot[]): number | undefined {
  let best: number | undefined;
  spots.forEach((s, i) => {
    if (s.ruledOut === undefined && (best === undefined || s.score < spots[best].score)) best = i;
  });
  return best;
}

function spotsOf(shaken: Shaken, options: OutcomeOptions) {
  const { prepared, bare } = shaken;
  const { file, model, bareMass, excitation } = prepared;
  if (!excitation) return { all: [], designed: undefined };
  const instruments = instrumentsOf(file, excitation, model.rotors.length);
  const heard = hear(bare, bareMass, instruments, namedCandidates(file, model));
  const out = heard.map((p) => ruledOutBy(model, bare, instruments, shaken.overhangs, p));
  const reference = referenceOf(instruments, heard, out);
  const weights = USE_WEIGHTS[instruments.use];
  const all = heard.map((p, i): Spot => {
    const why = out[i];
    const figures = figuresOf(p, instruments.control.attitudeError);
    return {
      name: p.candidate.name,
      plate: model.plates[p.candidate.plate].name,
      gyro: p.sensed.gyro,
      accel: p.sensed.accel,
      ...(options.delays && delaysOf(instruments, p)),
      tilt: p.tilt,
      score: score(scoreParts(figures, reference), weights),
      ...(why !== undefined && { ruledOut: why }),
    };
  });
  return { all, designed: heard.find((p) => p.candidate.designed)?.place };
}

/** Least figures of the spots that are not ruled out; of all where every one is. */
function referenceOf(
  { control }: Instruments,
  heard: readonly Heard[],
  out: readonly (string | undefined)[],
): Figures {
  const open = heard.filter((_, i) => out[i] === undefined);
  const figures = (open.length > 0 ? open : heard).map((p) => figuresOf(p, control.attitudeError));
  return {
    gyro: Math.min(...figures.map((f) => f.gyro)),
    accelerometer: Math.min(...figures.map((f) => f.accelerometer)),
    tilt: 0,
  };
}

function delaysOf(instruments: Instruments, { sensed }: Heard) {
  const burden = filterBurden(instruments.filters(), grouped(instruments, sensed.gyroPower));
  const delay = (kind: "without" | "with") =>
    burden[kind].attainable ? burden[kind].delay : Number.POSITIVE_INFINITY;
  return { delay: delay("without"), delayWithNotches: delay("with") };
}

/** Modes with the stack where the file puts it: coupled there, or the bare frame's without one. */
function wholeModes(
  { modes, h }: ShakenFrame,
  points: readonly SamplePoint[],
  designed: Heard["place"] | undefined,
): { frequencies: Float64Array; lossFactors: Float64Array; shapes: ShapeSamples } {
  const own = sampleShapes(points, h.shapes);
  const count = shownModes(modes.lambda.length);
  const hertz = (l: number) => Math.sqrt(Math.max(0, l)) / (2 * Math.PI);
  if (!designed?.stack) {
    return {
      frequencies: Float64Array.from(modes.lambda.subarray(0, count), hertz),
      lossFactors: Float64Array.from(modes.described.slice(0, count), (d) => d.lossFactor),
      shapes: { names: own.names, values: own.values.slice(0, count * own.names.length) },
    };
  }
  const { lambda, lossFactor, amplitudes } = coupledModes(modes, designed);
  const rigid = modes.rigid.length;
  const terms = h.shapes.length;
  const width = own.names.length;
  const values = new Float64Array(count * width);
  for (let k = 0; k < count; k++) {
    for (let t = 0; t < terms; t++) {
      const a = amplitudes[(rigid + k) * terms + t];
      for (let i = 0; i < width; i++) values[k * width + i] += a * own.values[t * width + i];
    }
  }
  return {
    frequencies: Float64Array.from(lambda.subarray(rigid, rigid + count), hertz),
    lossFactors: lossFactor.slice(rigid, rigid + count),
    shapes: { names: own.names, values },
  };
}

/** Of the highest modes the stack's coupling knows too little. */
function shownModes(known: number): number {
  return Math.max(1, Math.floor(0.75 * known));
}

function meetingsOf({ excitation }: Prepared, frequencies: Float64Array): MeetingPoint[] {
  if (!excitation) return [];
  const modes = Array.from(frequencies, (frequency, k) => ({ number: k + 1, frequency, name: "" }));
  return findCrossings(modes, excitation).map(({ mode, order, multiple, speed, fromHover }) => ({
    mode,
    order,
    multiple,
    speed,
    fromHover,
  }));
}
