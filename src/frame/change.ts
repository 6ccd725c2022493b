import { type Finding, InputError, inputError } from "../errors.ts";
import { checkSpreads, readRaw } from "./check-raw.ts";
import { type FilePath, formatPath } from "./file-path.ts";
import { followHeights, type HeightShift } from "./heights.ts";
import { withHeights } from "./heights-written.ts";
import { ANY_NAME, placesLike, problemOfPlace, withValueAt } from "./place.ts";
import { inOrder, parseFrameText, readFrameText } from "./read.ts";
import type { LibraryNames } from "./references.ts";
import type { FrameFile } from "./types.ts";

/** One value to put into a frame file. */
export interface Change {
  /** Place in the file as keys and list positions. */
  readonly path: FilePath;
  /** As it would stand in the file: a number in the field's own bare unit, a text with unit, a list. */
  readonly written: unknown;
}

/** A frame file's text read once, from which variants are made. */
export interface FrameSource {
  /** As the user named it. */
  readonly path: string;
  /** Plain values as in the text; objects without prototype. */
  readonly raw: unknown;
  readonly file: FrameFile;
}

export interface ChangeOptions {
  /** Leave every part at the height the file gives it, gaps or not. */
  readonly keepHeights?: boolean;
  /** Without it, names of materials and plies that the file does not define are let through. */
  readonly library?: LibraryNames;
}

export interface ChangedFrame {
  readonly file: FrameFile;
  /** Parts whose height followed a thickness. */
  readonly moved: readonly HeightShift[];
}

/** Reads a frame file from disk, once. Throws InputError as `readFrame` does. */
export function readFrameSource(path: string, library?: LibraryNames): FrameSource {
  return { path, ...readFrameText(path, library) };
}

/** The same for a text; `path` is its name for messages. */
export function parseFrameSource(text: string, path: string, library?: LibraryNames): FrameSource {
  return { path, ...parseFrameText(text, path, library) };
}

/**
 * The file with changes, one after the other, checked like any file; heights follow thicknesses as
 * `followHeights` says. Throws InputError for a place that does not exist and for everything that is
 * wrong with the changed file; findings have a path and no line.
 */
export function changedFrame(
  source: FrameSource,
  changes: readonly Change[],
  options: ChangeOptions = {},
): ChangedFrame {
  if (changes.length === 0) return { file: source.file, moved: [] };
  const given = readChanged(source, changes, changedRaw(source, changes), options);
  return options.keepHeights === true
    ? { file: given, moved: [] }
    : followHeights(source.file, given);
}

/**
 * The same as a source for further changes, with the heights that followed written into it. Throws
 * InputError as `changedFrame` does.
 */
export function changedSource(
  source: FrameSource,
  changes: readonly Change[],
  options: ChangeOptions = {},
): { readonly source: FrameSource; readonly moved: readonly HeightShift[] } {
  if (changes.length === 0) return { source, moved: [] };
  const raw = changedRaw(source, changes);
  const given = readChanged(source, changes, raw, options);
  if (options.keepHeights === true) return { source: { ...source, raw, file: given }, moved: [] };
  const { file, moved } = followHeights(source.file, given);
  return { source: { path: source.path, raw: withHeights(raw, given, file), file }, moved };
}

function readChanged(
  source: FrameSource,
  changes: readonly Change[],
  raw: unknown,
  { library }: ChangeOptions,
): FrameFile {
  const read = readRaw(raw, library);
  const touchesSpreads = changes.some(({ path }) => path[0] === "spreads");
  const placed =
    "findings" in read ? read.findings : touchesSpreads ? checkSpreads(raw, read.file) : [];
  if ("file" in read && placed.length === 0) return read.file;
  const findings = placed.map(({ path, message }): Finding => {
    return { path: formatPath(path), message };
  });
  throw new InputError(inOrder(findings), source.path);
}

function changedRaw(source: FrameSource, changes: readonly Change[]): unknown {
  return changes.reduce((raw, { path, written }) => {
    const problem = problemOfPlace(raw, path, written);
    if (problem !== undefined) throw noSuchPlace(source, path, problem);
    return withValueAt(raw, path, written);
  }, source.raw);
}

function noSuchPlace({ path: file }: FrameSource, path: FilePath, problem: string): InputError {
  return new InputError([{ path: formatPath(path), message: problem }], file);
}

/**
 * The places that a path means in which "*" stands for any name of a section, in the order of the file:
 * those where everything but the last step is written. A path without "*" is its own only place.
 * Throws InputError when there is none.
 */
export function expandPath(source: FrameSource, path: FilePath): FilePath[] {
  const found = placesLike(source.raw, path);
  if (found.length > 0) return found;
  if (!path.includes(ANY_NAME)) {
    const problem = problemOfPlace(source.raw, path);
    if (problem === undefined) return [path];
    throw noSuchPlace(source, path, problem);
  }
  throw inputError("", nothingLike(source, path));
}

function nothingLike({ raw, path: file }: FrameSource, path: FilePath): string {
  const text = formatPath(path).replaceAll('"*"', ANY_NAME);
  // the first step that fails, at the first place that got so far, says more than "nothing"
  const failing = path.findIndex((_, i) => placesLike(raw, path.slice(0, i + 1)).length === 0);
  const [reached] = placesLike(raw, path.slice(0, failing));
  const problem =
    reached === undefined || path[failing] === ANY_NAME
      ? undefined
      : problemOfPlace(raw, [...reached, path[failing]]);
  return `${text} fits nothing in ${file}.${problem === undefined ? "" : ` ${problem}`}`;
}
