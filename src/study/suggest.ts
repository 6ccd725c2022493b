/** Changes that would help, each verified by a whole solution of the changed frame. */

import { InputError, SolveError } from "../errors.ts";
import { changedFrame } from "../frame/change.ts";
import type { Model } from "../model/types.ts";
import { namedCandidates } from "../ranking/candidates.ts";
import { inTheWay } from "../ranking/room.ts";
import { score, scoreParts, USE_WEIGHTS } from "../ranking/use.ts";
import { isolatorFlags } from "../response/isolator-flags.ts";
import { isolatorModes } from "../response/mount-frequencies.ts";
import { controlBandwidth } from "../sensing/control-bandwidth.ts";
import { exactOutcome } from "../variants/exact.ts";
import { type Prepared, prepareVariant } from "../variants/prepare.ts";
import type { Outcome, Spot } from "../variants/types.ts";
import { clashesOf } from "./clash.ts";
import { modeChanges } from "./compare-modes.ts";
import { type Idea, ideasFor } from "./ideas.ts";
import { spotMovers } from "./movers.ts";
import type { StudyBase } from "./sensitivity-base.ts";
import type { SensitivityTable } from "./sensitivity-types.ts";
import type { MovedMode, Suggestion, Suggestions } from "./suggest-types.ts";
import { noneWords, suggestionWords } from "./suggest-words.ts";

/** Less than this is no help, dB; common practice, no source. */
const LEAST_HELP = 0.3;
/** What a prediction may fall short of it and still be looked at, dB. */
const DOUBT = 0.1;
/** Changes of one kind that are predicted: those that move the noise most, whichever way at first ... */
const PREDICTED = 8;
/** ... and by at least this, dB. A level need not go straight on: half a millimetre more may do what one does not. */
const LEVERAGE = 0.05;
/** Suggestions of one kind, for different parts: the second only where other kinds do not help. */
const ALIKE = 2;
/** Lowest modes that are matched with those of the changed frame. */
const MODES = 30;

export interface SuggestOptions {
  /** most suggestions; 3 where not given */
  readonly most?: number;
  /** number of the spot they are for; the best where not given */
  readonly spot?: number;
  /** told what is being tried, how many are done, and how many there are */
  readonly progress?: (idea: string, done: number, all: number) => void;
}

/** A change with what is found of it. */
interface Tried {
  readonly idea: Idea;
  readonly prepared: Prepared;
  readonly moved: readonly string[];
  readonly outcome: Outcome;
  readonly level: Level;
}

/** At the spot, dB above the drawing. */
interface Level {
  readonly gyro: number;
  readonly accel: number;
  /** gyro, accelerometer and tilt weighed by use */
  readonly score: number;
}

/**
 * Of each kind of change those with most effect are predicted by the reduced model; the best of each kind
 * is solved anew, exactly, and kept if the gyro's noise still falls by 0.3 dB, what the accelerometer makes
 * of it does not cost more (weighed by use, as in the ranking), and nothing rules the spot out.
 */
export function suggestions(
  base: StudyBase,
  table: SensitivityTable,
  options: SuggestOptions = {},
): Suggestions {
  const { source, prepared, outcome } = base;
  const at = options.spot ?? outcome.best;
  const spot = at === undefined ? undefined : outcome.spots[at];
  if (at === undefined || !spot) return { found: [], tried: 0, none: noneWords(undefined, 0) };
  const ideas = promising(ideasFor(source, prepared.mass.mass, spot.name), table, at);
  const tried = ideas.flatMap((idea, i) => {
    options.progress?.(idea.words, i, ideas.length);
    return predicted(base, idea, spot);
  });
  const hopeful = tried
    .filter(({ level }) => level.gyro <= DOUBT - LEAST_HELP && level.score < DOUBT)
    .toSorted((a, b) => a.level.score - b.level.score);
  const found: Suggestion[] = [];
  const refused = new Set<Tried>();
  for (let alike = 1; alike <= ALIKE; alike++) {
    for (const one of hopeful) {
      if (found.length >= (options.most ?? 3)) break;
      const { kind, part } = one.idea;
      const ofKind = found.filter((f) => f.kind === kind);
      if (refused.has(one) || ofKind.length >= alike || ofKind.some((f) => f.part === part)) {
        continue;
      }
      const verified = verify(base, one, spot);
      if (verified) found.push(verified);
      else refused.add(one);
    }
  }
  found.sort((a, b) => a.score - b.score);
  const none = found.length === 0 && { none: noneWords(spot.name, ideas.length) };
  return { spot: spot.name, found, tried: ideas.length, ...none };
}

/** Those of each kind that move the noise most; mounts have no slope and are all looked at. */
function promising(ideas: readonly Idea[], table: SensitivityTable, spot: number): Idea[] {
  const steepest = new Map(
    spotMovers(table, spot).map(({ input, reach, from, to }) => {
      // A spread may begin or end at the value itself: that side says nothing.
      const slope = (level: number, way: number) => (way > 0 ? level / way : 0);
      const sides = [slope(from, input.value - reach.from), slope(to, reach.to - input.value)];
      return [input.name, Math.max(...sides.map(Math.abs))];
    }),
  );
  const leverage = ({ moves }: Idea) =>
    moves.reduce((sum, { input, by }) => sum + (steepest.get(input.name) ?? 0) * Math.abs(by), 0);
  const kinds = new Set(ideas.map((idea) => idea.kind));
  return [...kinds].flatMap((kind) => {
    const own = ideas.filter((idea) => idea.kind === kind);
    if (kind === "mount") return own;
    return own
      .filter((idea) => leverage(idea) >= LEVERAGE)
      .toSorted((a, b) => leverage(b) - leverage(a))
      .slice(0, PREDICTED);
  });
}

/** Nothing for a frame that cannot be, or that the stack at the spot does not suit. */
function predicted(base: StudyBase, idea: Idea, spot: Spot): Tried[] {
  const { source, prepared: before, solver } = base;
  try {
    const { file, moved } = changedFrame(source, idea.changes);
    const prepared = prepareVariant(file, before.mesh.size);
    if (isUnfit(before, prepared, spot)) return [];
    const outcome = solver.outcome(prepared);
    const level = levelAt(prepared, outcome, spot);
    return level ? [{ idea, prepared, moved: moved.map(({ name }) => name), outcome, level }] : [];
  } catch (error) {
    if (error instanceof InputError || error instanceof SolveError) return [];
    throw error;
  }
}

/** Undefined where the spot is ruled out or not there. */
function levelAt(
  { file: { control } }: Prepared,
  { spots }: Outcome,
  spot: Spot,
): Level | undefined {
  const now = spots.find((s) => s.name === spot.name && s.plate === spot.plate);
  if (!now || now.ruledOut !== undefined) return undefined;
  const figures = ({ gyro, accel, tilt }: Spot) => ({
    gyro,
    accelerometer: accel,
    tilt: tilt / control.attitudeError,
  });
  const was = figures(spot);
  const weighed = (of: Spot) => score(scoreParts(figures(of), was), USE_WEIGHTS[control.use]);
  const { gyro, accelerometer } = scoreParts(figures(now), was);
  return { gyro, accel: accelerometer, score: weighed(now) - weighed(spot) };
}

function verify(base: StudyBase, tried: Tried, spot: Spot): Suggestion | undefined {
  const { idea, prepared, moved } = tried;
  try {
    const outcome =
      tried.outcome.solution.method === "exact"
        ? tried.outcome
        : exactOutcome(prepared, { modes: base.count });
    const level = levelAt(prepared, outcome, spot);
    if (!level || level.gyro > -LEAST_HELP || level.score >= 0) return undefined;
    const mode = mostMoved(base, outcome);
    const { kind, part, words, changes } = idea;
    const mass = outcome.mass - base.outcome.mass;
    const figures = { kind, part, words, changes, mass, ...level, ...(mode && { mode }), moved };
    return { ...figures, text: suggestionWords(figures, spot.name) };
  } catch (error) {
    if (error instanceof InputError || error instanceof SolveError) return undefined;
    throw error;
  }
}

/** Of the modes that the gyro's own low-pass lets through; the first mode counts in any case. */
function mostMoved({ outcome, prepared }: StudyBase, after: Outcome): MovedMode | undefined {
  const { bandwidth } = prepared.file.sensors.gyro;
  let most: (MovedMode & { readonly share: number }) | undefined;
  for (const { number, name, from, to, share } of modeChanges(outcome, after, MODES).modes) {
    if (number === undefined || from === undefined || to === undefined) continue;
    if (number > 1 && from > bandwidth) continue;
    if (Math.abs(share ?? 0) > Math.abs(most?.share ?? 0)) {
      most = { number, name, from, to, share: share ?? 0 };
    }
  }
  if (!most) return undefined;
  const { share: _share, ...mode } = most;
  return mode;
}

/** Something new is in the stack's way or in another body's, or its mounts are flagged. */
function isUnfit(before: Prepared, now: Prepared, spot: Spot): boolean {
  const was = placeOf(before, spot);
  const is = placeOf(now, spot);
  if (!was || !is) return true;
  const blocked = obstacle(now, is);
  if (blocked !== undefined && blocked !== obstacle(before, was)) return true;
  const known = clashesOf(before.model);
  if (clashesOf(now.model).some((pair) => !known.includes(pair))) return true;
  const changed = was.isolators?.name !== is.isolators?.name;
  return changed && isFlagged(now, is);
}

function placeOf({ file, model }: Prepared, spot: Spot) {
  return namedCandidates(file, model).find(
    (c) => c.name === spot.name && model.plates[c.plate].name === spot.plate,
  );
}

type Placed = Model["candidates"][number];

function obstacle({ file, model }: Prepared, { plate, x, y, side }: Placed): string | undefined {
  return inTheWay(file, model, model.plates[plate], x, y, side > 0 ? "above" : "below");
}

function isFlagged({ file, excitation }: Prepared, candidate: Placed): boolean {
  const modes = isolatorModes(candidate);
  const { isolators } = candidate;
  const { propulsion, control } = file;
  if (!modes || !isolators || !excitation || !propulsion) return false;
  const { axial, lossFactor } = isolators;
  const hover = excitation.speeds.hover / (2 * Math.PI);
  const bandwidth = controlBandwidth(control, propulsion.propeller.diameter);
  const flags = isolatorFlags({ modes, axial, lossFactor, hover, controlBandwidth: bandwidth });
  return flags.length > 0;
}
