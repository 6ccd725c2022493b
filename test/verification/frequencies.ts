/**
 * The whole path from the text of a frame file to natural frequencies, for the published cases.
 *
 * Every case is written as the object a frame file would hold; it goes through the reader, the model,
 * the mesh, the matrices and the eigen-solver, exactly as a file on disk does.
 */

import { type Analysis, analyseModes } from "../../src/analyse.ts";
import { parseFrame } from "../../src/frame/read.ts";

export interface CaseOptions {
  /** number of elastic modes */
  readonly modes?: number;
  /** m; the file's or the default where not given */
  readonly meshSize?: number;
}

/** The frame read, meshed and solved. `sections` is the frame file but for its version and name. */
export function solveFrame(sections: object, options: CaseOptions = {}): Analysis {
  const text = JSON.stringify({ version: 1, name: "verification case", ...sections });
  return analyseModes(parseFrame(text, "case.jsonc"), options);
}

/** Elastic natural frequencies, Hz, ascending; rigid-body motions are not among them. */
export function frequencies(sections: object, options: CaseOptions = {}): number[] {
  return solveFrame(sections, options).modes.described.map((mode) => mode.frequency);
}

/** Every second value: of a beam that bends alike in both planes, one frequency of each pair. */
export function onePerPair(values: readonly number[]): number[] {
  return values.filter((_, i) => i % 2 === 0);
}
