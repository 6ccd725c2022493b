import { readdirSync, readFileSync, statSync } from "node:fs";
import { basename, dirname } from "node:path";
import { type Finding, InputError } from "../errors.ts";
import { checkSpreads, notASection, readRaw } from "./check-raw.ts";
import { isRecord } from "./names.ts";
import { nearestName } from "./nearest-name.ts";
import type { LibraryNames } from "./references.ts";
import { choices, shown } from "./shown.ts";
import { duplicateKeys, locate, readSource } from "./source-text.ts";
import type { FrameFile } from "./types.ts";

const MOST_BYTES = 2_000_000;
const MOST_FINDINGS = 100;

/** A frame file as it stands in its text and as it was read. */
export interface FrameText {
  /** Plain values; objects without prototype. */
  readonly raw: unknown;
  readonly file: FrameFile;
}

/**
 * Reads a frame file from disk. Throws InputError for a file that cannot be read or is not a good
 * frame file, with everything that is wrong with it at once.
 */
export function readFrame(path: string, library?: LibraryNames): FrameFile {
  return readFrameText(path, library).file;
}

/** The same with the raw values. */
export function readFrameText(path: string, library?: LibraryNames): FrameText {
  return parseFrameText(readText(path), path, library);
}

/**
 * Reads the text of a frame file; `file` is its name for messages. Without `library`, names of
 * materials and plies that the file does not define are let through.
 */
export function parseFrame(text: string, file: string, library?: LibraryNames): FrameFile {
  return parseFrameText(text, file, library).file;
}

/** The same with the raw values. */
export function parseFrameText(text: string, file: string, library?: LibraryNames): FrameText {
  if (text.length > MOST_BYTES) throw fileError(file, tooLarge(text.length));
  const reading = readSource(text.replace(/^\uFEFF/, ""));
  if ("finding" in reading) throw new InputError([reading.finding], file);
  const { source } = reading;
  const raw = source.value;
  if (!isRecord(raw)) throw fileError(file, notASection(raw));
  const read = readRaw(raw, library);
  const placed = "file" in read ? checkSpreads(raw, read.file) : read.findings;
  const findings = [...duplicateKeys(source), ...placed.map((one) => locate(source, one))];
  if ("file" in read && findings.length === 0) return { raw, file: read.file };
  throw new InputError(inOrder(findings), file);
}

/** From top to bottom of the file, and no more than a person can use. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  const place = ({ line = 0, column = 0 }: Finding) => line * 1e7 + column;
  const sorted = findings.toSorted((a, b) => place(a) - place(b));
  const rest = sorted.length - MOST_FINDINGS;
  if (rest <= 0) return sorted;
  return [
    ...sorted.slice(0, MOST_FINDINGS),
    { path: "", message: `There are ${rest} more findings of this kind; mend these first.` },
  ];
}

function readText(path: string): string {
  try {
    const stats = statSync(path);
    if (stats.isDirectory()) throw fileError(path, "This is a folder: name the frame file in it.");
    if (!stats.isFile()) throw fileError(path, "This is not an ordinary file.");
    if (stats.size > MOST_BYTES) throw fileError(path, tooLarge(stats.size));
    return new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(path));
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw fileError(path, whyUnreadable(error, path));
  }
}

function whyUnreadable(error: unknown, path: string): string {
  const code = (error as { readonly code?: unknown }).code;
  if (code === "ENOENT" || code === "ENOTDIR") return `There is no such file.${similarFile(path)}`;
  if (code === "EACCES" || code === "EPERM")
    return "This file may not be read: check its permissions.";
  if (code === "ERR_ENCODING_INVALID_ENCODED_DATA") {
    return "This is not a text in UTF-8: save the file as plain text with UTF-8 encoding.";
  }
  return `This file cannot be read (${String(code ?? error)}).`;
}

/** A hint for a slip in the file's name, or at frame files in the same folder. */
function similarFile(path: string): string {
  let names: string[];
  try {
    names = readdirSync(dirname(path)).filter((name) => /\.jsonc?$/.test(name));
  } catch {
    return ""; // the folder does not exist either
  }
  const near = nearestName(basename(path), names.sort());
  if (near !== undefined) return ` Did you mean ${shown(near)} in the same folder?`;
  return names.length === 0 ? "" : ` In that folder there is ${choices(names, 6)}.`;
}

function tooLarge(size: number): string {
  const megabytes = (size / 1e6).toFixed(1);
  return `The file is too large (${megabytes} MB): a frame file has some kilobytes, at most ${MOST_BYTES / 1e6} MB are read.`;
}

function fileError(file: string, message: string): InputError {
  return new InputError([{ path: "", message }], file);
}
