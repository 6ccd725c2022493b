/** One frame through all stages. */

import { excite, reachWanted } from "./excitation/excite.ts";
import type { Excitation } from "./excitation/types.ts";
import type { FrameFile } from "./frame/types.ts";
import { assemble, type System } from "./matrices/assemble.ts";
import {
  type MassProperties,
  type MassReport,
  massDifference,
  massFromDrawing,
  massFromMatrices,
  requireMass,
} from "./matrices/mass.ts";
import { buildMesh, isHeld } from "./mesh/build.ts";
import type { Mesh } from "./mesh/types.ts";
import { buildModel } from "./model/build.ts";
import type { Model } from "./model/types.ts";
import { type SolvedModes, solveEnoughModes, solveModes } from "./modes/solve.ts";
import type { Modes } from "./modes/types.ts";
import { modeWarnings, reachWarning } from "./modes/warnings.ts";
import { rank } from "./ranking/rank.ts";
import type { MapOptions } from "./ranking/search.ts";
import type { Ranking } from "./ranking/types.ts";
import { type BareFrame, shakeBare } from "./response/bare-frame.ts";
import { controlBandwidth } from "./sensing/control-bandwidth.ts";
import { samplingWarnings } from "./sensing/warnings.ts";

export interface AnalyseOptions {
  /** m; the file's, or one chosen from the plates' size, where not given */
  readonly meshSize?: number;
  /** number of elastic modes; where not given 40, or more if the motors shake faster than those */
  readonly modes?: number;
  /** of the map of places; coarse where not given */
  readonly map?: MapOptions;
  /** told the name of each stage as it begins */
  readonly progress?: (stage: string) => void;
}

/** A frame before its modes are known. */
export interface Prepared {
  readonly file: FrameFile;
  readonly model: Model;
  readonly mesh: Mesh;
  readonly mass: MassReport;
  /** by supports, or springs to the ground */
  readonly held: boolean;
  /** undefined without propulsion */
  readonly excitation?: Excitation;
  readonly warnings: readonly string[];
}

export interface Analysis extends Prepared {
  readonly system: System;
  /** mass properties from R'MR; undefined where supports hold the frame */
  readonly assembledMass?: MassProperties;
  readonly modes: Modes;
  /** undefined without propulsion, without a place to rank, or when only modes were asked for */
  readonly ranking?: Ranking;
}

/** A centre of gravity further than this from the middle of the motors is worth a word, m. */
const OFF_CENTRE = 0.02;

function balanceWarning(model: Model, { cg }: MassReport): string[] {
  const off = Math.hypot(cg[0] - model.centre[0], cg[1] - model.centre[1]);
  if (off <= OFF_CENTRE) return [];
  return [
    `the centre of gravity lies ${Math.round(off * 1e3)} mm from the middle of the motors, so they cannot turn alike in hover as is assumed here; check the places of the heavy bodies`,
  ];
}

/** Also refuses settings of the loop that contradict each other, before anything is computed. */
function chipWarnings({ sensors, control, propulsion }: FrameFile): string[] {
  if (!propulsion) return [];
  return samplingWarnings(sensors, controlBandwidth(control, propulsion.propeller.diameter));
}

const HELD =
  "the frame is held to the ground, as on a bench: noise and verdict are for that, not for flight";

/** Model, mesh, masses and speeds. @throws InputError */
export function prepare(file: FrameFile, options: AnalyseOptions = {}): Prepared {
  options.progress?.("building the mesh");
  const model = buildModel(file);
  const mesh = buildMesh(model, options.meshSize);
  const mass = massFromDrawing(model, mesh);
  requireMass(mass);
  const excitation = excite(file, model.rotors, mass.mass);
  return {
    file,
    model,
    mesh,
    mass,
    held: isHeld(mesh),
    ...(excitation && { excitation }),
    warnings: [
      ...model.warnings,
      ...(excitation?.warnings ?? []),
      ...(excitation ? balanceWarning(model, mass) : []),
      ...chipWarnings(file),
    ],
  };
}

/** Everything up to the modes. @throws InputError, SolveError */
export function analyseModes(file: FrameFile, options: AnalyseOptions = {}): Analysis {
  return solve(prepare(file, options), options).analysis;
}

/** The whole way to the ranking. @throws InputError, SolveError */
export function analyse(file: FrameFile, options: AnalyseOptions = {}): Analysis {
  const { analysis, solved } = solve(prepare(file, options), options);
  const { model, mesh, modes, excitation } = analysis;
  if (!excitation) return analysis;
  const { bareModel, bareMass, bare } = bareFrame(analysis, solved, excitation, options);
  options.progress?.("placing the stack everywhere");
  const { map } = options;
  const base = { file, model, mesh, modes, bareModel, bareMass, bare, excitation };
  const input = { ...base, ...(map && { map }) };
  const ranking = rank(input);
  const warnings = [
    ...analysis.warnings,
    ...reachWarning(modes, reachWanted(excitation)),
    ...(analysis.held ? [HELD] : []),
  ];
  return ranking ? { ...analysis, warnings, ranking } : { ...analysis, warnings };
}

/** The frame without its stack, shaken at every speed; the frame as drawn where it has none. */
function bareFrame(
  analysis: Analysis,
  drawn: SolvedModes,
  excitation: Excitation,
  options: AnalyseOptions,
): { bareModel: Model; bareMass: MassProperties; bare: BareFrame } {
  const { model, mesh } = analysis;
  const rotors = model.rotors;
  const shake = "shaking the frame at every motor speed";
  const bodies = model.bodies.filter((b) => b.role !== "stack");
  if (bodies.length === model.bodies.length) {
    options.progress?.(shake);
    const bare = shakeBare(mesh, analysis.system, drawn, rotors, excitation);
    return { bareModel: model, bareMass: analysis.mass, bare };
  }
  options.progress?.("finding the natural frequencies without the stack");
  const bareModel = { ...model, bodies };
  const bareMesh = buildMesh(bareModel, mesh.size);
  const system = assemble(bareMesh, bareModel);
  const bareMass = massFromDrawing(bareModel, bareMesh);
  const solved = solveModes(bareModel, bareMesh, system, bareMass.cg, drawn.modes.lambda.length);
  options.progress?.(shake);
  const bare = shakeBare(bareMesh, system, solved, rotors, excitation);
  return { bareModel, bareMass, bare };
}

function solve(
  prepared: Prepared,
  options: AnalyseOptions,
): { analysis: Analysis; solved: SolvedModes } {
  const { model, mesh, mass } = prepared;
  options.progress?.("assembling stiffness and mass");
  const system = assemble(mesh, model);
  options.progress?.("finding the natural frequencies");
  const shaken = prepared.excitation && reachWanted(prepared.excitation);
  const solved = solveEnoughModes(model, mesh, system, mass.cg, options.modes, shaken);
  const assembledMass = prepared.held ? undefined : massFromMatrices(system, mesh, mass.cg);
  const warnings = [...prepared.warnings, ...modeWarnings(solved.modes, shaken)];
  if (assembledMass && massDifference(mass, assembledMass) > 1e-6) {
    warnings.push("the mass matrix does not agree with the drawing; please report this frame");
  }
  const analysis = {
    ...prepared,
    system,
    ...(assembledMass && { assembledMass }),
    modes: solved.modes,
    warnings,
  };
  return { analysis, solved };
}
