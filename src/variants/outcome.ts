/** What one variant is like, from its modes: masses, frequencies, shapes, crossings, and every spot. */

import { filterBurden } from "../filter/filter-burden.ts";
import type { Modes } from "../modes/types.ts";
import { grouped, type Heard, hear, type PlacedStack, placesOn } from "../ranking/assess.ts";
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

/** Modes with the stack where the file puts it, as sums of the bare frame's terms. */
export interface WholeModes {
  /** rad^2/s^2, ascending, of elastic modes (size m) */
  readonly lambda: Float64Array;
  readonly lossFactors: Float64Array;
  /** m x terms: elastic modes of the bare frame, then its rigid motions */
  readonly amplitudes: Float64Array;
}

/** Everything of a variant that its outcome is read from. */
export interface Shaken {
  readonly prepared: Prepared;
  /** without the stack; absent where nothing shakes it */
  readonly bare?: ShakenFrame;
  /** the spots, see `spotsOn` */
  readonly spots: readonly PlacedStack[];
  readonly whole: WholeModes;
  /** motions of the mesh in the terms of `whole`, known at the points at least */
  readonly terms: readonly Float64Array[];
  readonly points: readonly SamplePoint[];
  /** on which a place is ruled out */
  readonly overhangs: readonly Pick<
    Overhang,
    "plate" | "direction" | "supportAt" | "endAt" | "flagged"
  >[];
  readonly solution: Solution;
  /** in words, of `whole`; where they are known */
  readonly modeNames?: readonly string[];
  /** parts whose height followed a thickness */
  readonly moved: readonly string[];
}

/** @throws InputError for settings that do not go together, SolveError as `readPlaces` */
export function outcomeOf(shaken: Shaken, options: OutcomeOptions = {}): Outcome {
  const { prepared, whole, solution, moved, modeNames } = shaken;
  const { mass, excitation } = prepared;
  const spots = spotsOf(shaken, options);
  const frequencies = Float64Array.from(
    whole.lambda,
    (l) => Math.sqrt(Math.max(0, l)) / (2 * Math.PI),
  );
  const best = bestOf(spots);
  return {
    mass: mass.mass,
    cg: mass.cg,
    hover: excitation?.speeds.hover ?? 0,
    frequencies,
    lossFactors: whole.lossFactors,
    ...(modeNames && { modeNames }),
    shapes: shapesOf(shaken),
    spots,
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

function spotsOf({ prepared, bare, spots, overhangs }: Shaken, options: OutcomeOptions): Spot[] {
  const { file, model, bareMass, excitation } = prepared;
  if (!excitation || !bare) return [];
  const instruments = instrumentsOf(file, excitation, model.rotors.length);
  const heard = hear(bare, bareMass, instruments, spots);
  const out = heard.map((p) => ruledOutBy(model, bare, instruments, overhangs, p));
  const reference = referenceOf(instruments, heard, out);
  const weights = USE_WEIGHTS[instruments.use];
  return heard.map((p, i): Spot => {
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

/** The stack at every place that the file names; nothing without anything that shakes the frame. */
export function spotsOn({ file, model }: Prepared, bare: ShakenFrame | undefined): PlacedStack[] {
  return bare ? placesOn(bare, namedCandidates(file, model)) : [];
}

/** Modes with the stack where the file puts it: coupled there, or the bare frame's without one. */
export function wholeModesOf(modes: Modes, spots: readonly PlacedStack[]): WholeModes {
  const count = shownModes(modes.lambda.length);
  const terms = modes.lambda.length + modes.rigid.length;
  const designed = spots.find(({ candidate }) => candidate.designed);
  if (!designed?.place.stack) {
    const amplitudes = new Float64Array(count * terms);
    for (let k = 0; k < count; k++) amplitudes[k * terms + k] = 1;
    return {
      lambda: modes.lambda.slice(0, count),
      lossFactors: Float64Array.from(modes.described.slice(0, count), (d) => d.lossFactor),
      amplitudes,
    };
  }
  const rigid = modes.rigid.length;
  const { lambda, lossFactor, amplitudes } = coupledModes(modes, designed.place);
  return {
    lambda: lambda.slice(rigid, rigid + count),
    lossFactors: lossFactor.slice(rigid, rigid + count),
    amplitudes: amplitudes.slice(rigid * terms, (rigid + count) * terms),
  };
}

function shapesOf({ whole, terms, points }: Shaken): ShapeSamples {
  const own = sampleShapes(points, terms);
  const width = own.names.length;
  const values = new Float64Array(whole.lambda.length * width);
  for (let k = 0; k < whole.lambda.length; k++) {
    for (let t = 0; t < terms.length; t++) {
      const a = whole.amplitudes[k * terms.length + t];
      for (let i = 0; i < width; i++) values[k * width + i] += a * own.values[t * width + i];
    }
  }
  return { names: own.names, values };
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
