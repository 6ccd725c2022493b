/** How every input of the file moves the modes and the noise at every spot. */

import { InputError, SolveError } from "../errors.ts";
import { changedFrame } from "../frame/change.ts";
import { type Input, inputsOf, withInput } from "../frame/inputs.ts";
import { assemble } from "../matrices/assemble.ts";
import { buildMesh } from "../mesh/build.ts";
import { solveModes } from "../modes/solve.ts";
import { matrixDerivatives } from "../reduced/derivatives.ts";
import { inputFrame, stepOf } from "../reduced/input-frame.ts";
import { type Meshed, meshed, withReduction } from "../reduced/meshed.ts";
import { type ModeRows, modeRows } from "../reduced/projected.ts";
import { clustersOf, slopesOf } from "../reduced/slopes.ts";
import { prepareVariant } from "../variants/prepare.ts";
import type { Outcome, Spot } from "../variants/types.ts";
import { reachOf } from "./reach.ts";
import type { StudyBase } from "./sensitivity-base.ts";
import type { Reach, SensitivityRow, SensitivityTable } from "./sensitivity-types.ts";

/** Lowest modes that are looked at where no number is asked for. */
export const SENSITIVE_MODES = 20;

export interface SensitivityOptions {
  /** lowest modes that are looked at; 20 where not given */
  readonly modes?: number;
  /** names of the inputs that are looked at; all where not given */
  readonly inputs?: readonly string[];
  /** told the input that is next, how many are done, and how many there are */
  readonly progress?: (input: string, done: number, all: number) => void;
}

/** The frame as drawn, with its modes. */
export interface DrawnBase {
  readonly meshed: Meshed;
  readonly known: KnownModes;
}

/** Plain data, fit to be sent between threads. */
export interface KnownModes {
  readonly modes: SensitivityTable["modes"];
  /** rad^2/s^2 */
  readonly lambda: Float64Array;
  readonly rows: ModeRows;
  /** positions in the list */
  readonly clusters: readonly (readonly number[])[];
}

/** What a row is made from. */
export type RowBase = Pick<StudyBase, "source" | "prepared" | "solver"> & {
  readonly spots: readonly Spot[];
};

/**
 * Slopes of frequencies are derivatives of the matrices seen by the modes (`reduced/derivatives.ts`); those
 * of close modes are the cluster's. Noise is that of two more frames, at either end of what the input can
 * really do, by the reduced model or exactly where that does not do.
 *
 * @throws InputError, SolveError
 */
export function sensitivities(base: StudyBase, options: SensitivityOptions = {}): SensitivityTable {
  const drawn = drawnBase(base, options.modes ?? SENSITIVE_MODES);
  const inputs = inputsOf(base.source).filter(({ name }) => options.inputs?.includes(name) ?? true);
  const rowBase = { ...base, spots: base.outcome.spots };
  const rows = inputs.map((input, i) => {
    options.progress?.(input.name, i, inputs.length);
    return sensitivityRow(rowBase, drawn, input);
  });
  return tableOf(base, drawn.known, rows);
}

export function tableOf(
  { outcome }: Pick<StudyBase, "outcome">,
  { modes, clusters }: KnownModes,
  rows: readonly SensitivityRow[],
): SensitivityTable {
  return {
    modes,
    clusters: clusters.map((group) => group.map((i) => i + 1)),
    spots: outcome.spots.map(({ name, plate, gyro, ruledOut }) => ({
      name,
      plate,
      gyro,
      ...(ruledOut !== undefined && { ruledOut }),
    })),
    ...(outcome.best !== undefined && { best: outcome.best }),
    rows,
  };
}

export function sensitivityRow(base: RowBase, drawn: DrawnBase, input: Input): SensitivityRow {
  const reach = reachOf(input);
  return {
    input,
    reach,
    ...slopesFor(base, drawn, input),
    ...(base.spots.length > 0 && noiseFor(base, input, reach)),
  };
}

export function drawnBase({ prepared }: Pick<StudyBase, "prepared">, count: number): DrawnBase {
  const { model, mass, mesh: bare } = prepared;
  const mesh = buildMesh(model, bare.size);
  const system = assemble(mesh, model);
  const { lambda, phi, described } = solveModes(model, mesh, system, mass.cg, count).modes;
  return {
    meshed: withReduction(model, mesh, system.reduction),
    known: {
      modes: described.map(({ number, frequency, name }) => ({ number, frequency, name })),
      lambda,
      rows: modeRows(phi, lambda.length),
      clusters: clustersOf(lambda),
    },
  };
}

/** The same where the modes are known already. */
export function drawnWith({ prepared }: Pick<StudyBase, "prepared">, known: KnownModes): DrawnBase {
  const mesh = buildMesh(prepared.model, prepared.mesh.size);
  return { meshed: meshed(prepared.model, mesh), known };
}

/** Hz per SI unit of the input. */
function slopesFor(
  { source, prepared }: RowBase,
  { meshed: base, known: { lambda, rows, clusters } }: DrawnBase,
  input: Input,
): Pick<SensitivityRow, "slopes" | "notSmooth"> {
  // Damping and places where the stack is not move no frequency.
  if (input.kind === "damping" || input.path[0] === "candidates") {
    return { slopes: new Float64Array(lambda.length) };
  }
  const at = inputFrame(source, input, prepared.mesh.size);
  const found = matrixDerivatives(base, rows, lambda, at, stepOf(input));
  if ("notSmooth" in found) return found;
  // f = sqrt(lambda)/(2 pi), so df = d lambda/(8 pi^2 f)
  const slopes = slopesOf(lambda, found, clusters).map(
    (slope, k) => slope / (4 * Math.PI * Math.sqrt(lambda[k])),
  );
  return { slopes };
}

function noiseFor(
  base: RowBase,
  input: Input,
  reach: Reach,
): Pick<SensitivityRow, "noise" | "impossible"> {
  try {
    const [from, to] = [reach.from, reach.to].map((value) => outcomeAt(base, input, value));
    const isExact = [from, to].every(({ solution }) => solution.method === "exact");
    const noise = {
      from: levels(base.spots, from.spots),
      to: levels(base.spots, to.spots),
      method: isExact ? ("exact" as const) : ("reduced" as const),
    };
    return { noise };
  } catch (error) {
    if (error instanceof InputError) return { impossible: error.findings[0].message };
    if (error instanceof SolveError) return { impossible: error.message };
    throw error;
  }
}

function outcomeAt({ source, prepared, solver }: RowBase, input: Input, value: number): Outcome {
  const { file } = changedFrame(source, [withInput(source, input, value)]);
  return solver.outcome(prepareVariant(file, prepared.mesh.size));
}

/** Gyro noise of each spot above that of the drawing, dB; NaN for one that is not there any more. */
function levels(before: readonly Spot[], after: readonly Spot[]): Float64Array {
  return Float64Array.from(before, ({ name, plate, gyro }) => {
    const now = after.find((s) => s.name === name && s.plate === plate);
    return now ? 20 * Math.log10(now.gyro / gyro) : Number.NaN;
  });
}
