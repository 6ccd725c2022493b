/** Output files: written whole or not at all. */

import {
  accessSync,
  chmodSync,
  constants,
  mkdirSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { inputError } from "../errors.ts";
import { explained } from "../runs/disk.ts";

export interface OutputFile {
  readonly path: string;
  readonly text: string;
}

/**
 * Writes every file beside its place first and moves them there when all are complete, so that a full
 * disk or a mistake in the last name leaves what was there before. Missing folders are made.
 *
 * @throws InputError that says which file cannot be written and why
 */
export function writeFiles(files: readonly OutputFile[]): void {
  const moves: { readonly from: string; readonly to: string; readonly named: string }[] = [];
  try {
    for (const [i, file] of files.entries()) {
      explained(file.path, () => {
        const to = placeFor(file.path);
        if (to === undefined) return writeFileSync(file.path, file.text);
        const from = path.join(path.dirname(to), `.stillpoint-${process.pid}-${i}.tmp`);
        moves.push({ from, to, named: file.path });
        writeFileSync(from, file.text, { flag: "wx" });
        const before = statIfThere(to);
        if (before !== undefined) chmodSync(from, before.mode & 0o777);
      });
    }
    for (const { from, to, named } of moves) explained(named, () => renameSync(from, to));
  } catch (error) {
    for (const { from } of moves) rmSync(from, { force: true });
    throw error;
  }
}

/** Fails early, before work is done for a file that could not be written. */
export function requireWritable(file: string): void {
  explained(file, () => placeFor(file));
}

/**
 * The real place of the file, behind links, its folder made; undefined for a device or a pipe, which
 * takes the text as it is.
 */
function placeFor(file: string): string | undefined {
  const there = statIfThere(file);
  if (there === undefined) {
    mkdirSync(path.dirname(file), { recursive: true });
    accessSync(path.dirname(file), constants.W_OK);
    return file;
  }
  if (there.isDirectory()) throw inputError("", `${file} is a folder: give the name of a file.`);
  if (!there.isFile()) return undefined;
  accessSync(file, constants.W_OK);
  return realpathSync(file);
}

export function statIfThere(file: string): Stats | undefined {
  return statSync(file, { throwIfNoEntry: false });
}
