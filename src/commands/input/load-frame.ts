/** A frame file from disk, and errors of every stage after that told as errors of that file. */

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import type { AnalyseOptions } from "../../analyse.ts";
import { type Finding, InputError } from "../../errors.ts";
import { readFrame } from "../../frame/read.ts";
import type { FrameFile } from "../../frame/types.ts";
import { LIBRARY_NAMES } from "../../material/library-names.ts";
import { locateFindings } from "./locate.ts";
import { requireFrameFile } from "./missing-frame.ts";

export interface LoadedFrame {
  readonly path: string;
  readonly file: FrameFile;
  /** SHA-256 of the file's bytes, hexadecimal */
  readonly hash: string;
}

/** @throws InputError with everything that is wrong with the file */
export function loadFrame(path: string): LoadedFrame {
  requireFrameFile(path);
  const file = readFrame(path, LIBRARY_NAMES);
  return { path, file, hash: createHash("sha256").update(readFileSync(path)).digest("hex") };
}

/**
 * Does the work; its InputErrors get the name of the frame file and the lines their paths lead to. A
 * mesh size that was given as an option is told as that, since it takes the place of the file's.
 */
export function inFrame<T>({ path }: LoadedFrame, options: AnalyseOptions, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof InputError) || error.file !== undefined) throw error;
    if (options.meshSize !== undefined && error.findings.every(isOfMeshSize)) {
      throw new InputError(error.findings.map((one) => ({ ...one, path: "--mesh-size" })));
    }
    throw new InputError(locateFindings(readFileSync(path, "utf8"), error.findings), path);
  }
}

function isOfMeshSize({ path }: Finding): boolean {
  return path === "meshSize";
}
