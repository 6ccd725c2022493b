/** A variant solved exactly: its modes with their proof, and what it is like. */

import { reachWanted } from "../excitation/excite.ts";
import { assemble, type System } from "../matrices/assemble.ts";
import { describeModes } from "../modes/describe.ts";
import { type SolvedModes, solveEnoughModes, solveModes } from "../modes/solve.ts";
import { findOverhangs } from "../ranking/overhang.ts";
import type { Overhang } from "../ranking/types.ts";
import { type BareFrame, shakeBare } from "../response/bare-frame.ts";
import {
  type OutcomeOptions,
  outcomeOf,
  spotsOn,
  type WholeModes,
  wholeModesOf,
} from "./outcome.ts";
import type { Prepared } from "./prepare.ts";
import { samplePoints } from "./shape-samples.ts";
import type { Outcome } from "./types.ts";

export interface Solved {
  readonly prepared: Prepared;
  readonly system: System;
  /** the modes that are used */
  readonly solved: SolvedModes;
  /** undefined without propulsion: nothing shakes it */
  readonly bare?: BareFrame;
  readonly overhangs: readonly Overhang[];
}

export interface ExactOptions extends OutcomeOptions {
  /** number of elastic modes; enough for what the motors shake where not given */
  readonly modes?: number;
  /** modes in words */
  readonly names?: boolean;
  /** parts whose height followed a thickness, in words */
  readonly moved?: readonly string[];
}

/** @throws InputError, SolveError */
export function solveExactly(prepared: Prepared, modes?: number): Solved {
  const { bareModel, mesh, bareMass, excitation } = prepared;
  const system = assemble(mesh, bareModel);
  const reach = excitation && reachWanted(excitation);
  const solved =
    modes === undefined
      ? solveEnoughModes(bareModel, mesh, system, bareMass.cg, undefined, reach)
      : solveModes(bareModel, mesh, system, bareMass.cg, modes);
  return shaken(prepared, system, solved);
}

/** A frame whose modes are known, shaken by its motors. */
export function shaken(prepared: Prepared, system: System, solved: SolvedModes): Solved {
  const { bareModel, mesh, excitation } = prepared;
  const { rotors } = bareModel;
  const overhangs = excitation
    ? findOverhangs(bareModel, mesh, solved.modes, reachWanted(excitation))
    : [];
  const bare = excitation && shakeBare(mesh, system, solved, rotors, excitation);
  return { prepared, system, solved, ...(bare && { bare }), overhangs };
}

/** @throws InputError, SolveError */
export function exactOutcome(prepared: Prepared, options: ExactOptions = {}): Outcome {
  return outcomeOfSolved(solveExactly(prepared, options.modes), options);
}

export function outcomeOfSolved(solved: Solved, options: ExactOptions = {}): Outcome {
  const { prepared, overhangs } = solved;
  const spots = spotsOn(prepared, solved.bare);
  const whole = wholeModesOf(solved.solved.modes, spots);
  return outcomeOf(
    {
      prepared,
      ...(solved.bare && { bare: solved.bare }),
      spots,
      whole,
      terms: termsOf(solved),
      points: samplePoints(prepared.bareModel, prepared.mesh),
      overhangs,
      solution: { method: "exact", error: 0 },
      ...(options.names && { modeNames: namesOf(solved, whole) }),
      moved: options.moved ?? [],
    },
    options,
  );
}

/** Motions of the mesh in every term of the modes with the stack: elastic modes, then rigid motions. */
function termsOf({ solved }: Solved): Float64Array[] {
  return [...solved.modes.shapes, ...solved.rigidShapes];
}

/** The modes with the stack in place, in words. */
function namesOf(solved: Solved, whole: WholeModes): string[] {
  const { prepared, system } = solved;
  const { bareModel, mesh } = prepared;
  const terms = termsOf(solved);
  const shapes = Array.from(whole.lambda, (_, k) => {
    const out = new Float64Array(terms[0].length);
    terms.forEach((shape, t) => {
      const a = whole.amplitudes[k * terms.length + t];
      if (a !== 0) for (let i = 0; i < out.length; i++) out[i] += a * shape[i];
    });
    return out;
  });
  return describeModes(bareModel, mesh, system, whole.lambda, shapes).map((d) => d.name);
}
