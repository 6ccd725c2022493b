/** Derivatives of eigenvalues by brute force: whole frames solved anew on both sides of the drawing. */

import type { FrameSource } from "../../src/frame/change.ts";
import { type Input, inputsOf } from "../../src/frame/inputs.ts";
import { assemble } from "../../src/matrices/assemble.ts";
import { massFromDrawing } from "../../src/matrices/mass.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { buildModel } from "../../src/model/build.ts";
import { type SolvedModes, solveModes } from "../../src/modes/solve.ts";
import {
  type Drawn,
  type MatrixDerivatives,
  matrixDerivatives,
} from "../../src/reduced/derivatives.ts";
import { inputFrame, stepOf } from "../../src/reduced/input-frame.ts";
import { meshed } from "../../src/reduced/meshed.ts";
import { modeRows } from "../../src/reduced/projected.ts";

export interface Subject {
  readonly source: FrameSource;
  readonly meshSize: number;
  readonly count: number;
  readonly drawn: Drawn;
  readonly lambda: Float64Array;
  readonly phi: Float64Array;
}

export function solved({ model, mesh }: Drawn, count: number): SolvedModes {
  const { cg } = massFromDrawing(model, mesh);
  return solveModes(model, mesh, assemble(mesh, model), cg, count);
}

export function subject(source: FrameSource, count: number, meshSize?: number): Subject {
  const model = buildModel(source.file);
  const mesh = buildMesh(model, meshSize);
  const { lambda, phi } = solved({ model, mesh }, count).modes;
  return { source, meshSize: mesh.size, count, drawn: { model, mesh }, lambda, phi };
}

export function inputNamed({ source }: Pick<Subject, "source">, name: string): Input {
  const found = inputsOf(source).find((one) => one.name === name);
  if (found === undefined) throw new Error(`no input ${name}`);
  return found;
}

export function derivativesOf(of: Subject, input: Input): MatrixDerivatives {
  const at = inputFrame(of.source, input, of.meshSize);
  const { model, mesh } = of.drawn;
  const rows = modeRows(of.phi, of.count);
  const found = matrixDerivatives(meshed(model, mesh), rows, of.lambda, at, stepOf(input));
  if ("notSmooth" in found) throw new Error(`${input.name}: ${found.notSmooth}`);
  return found;
}

/** Of every eigenvalue in ascending order: central differences over two steps, extrapolated. */
export function bySolutions(of: Subject, input: Input, step: number): Float64Array {
  const at = inputFrame(of.source, input, of.meshSize);
  const slope = (h: number) => {
    const [up, down] = [h, -h].map((change) => solved(at(change), of.count).modes.lambda);
    return up.map((l, k) => (l - down[k]) / (2 * h));
  };
  const [wide, narrow] = [slope(step), slope(step / 2)];
  return narrow.map((v, k) => v + (v - wide[k]) / 3);
}

/**
 * Largest difference of two sets of slopes, against the largest slope of this input or against a frequency
 * that moves by 1 % for 1 % of the input (for 1 mm of a position), whichever is more.
 */
export function largestError(
  { lambda }: Subject,
  { kind, value }: Input,
  found: Float64Array,
  expected: Float64Array,
): number {
  const unit = kind === "position" ? 1e-3 : value;
  const share = (v: number, k: number) => Math.abs((v * unit) / lambda[k]);
  const largest = Math.max(...expected.map(share));
  const error = Math.max(...found.map((v, k) => share(v - expected[k], k)));
  return error / Math.max(largest, 2e-3);
}
