/** What an output file may take the place of: nothing, or an older file of the same kind. */

import { closeSync, openSync, readSync, realpathSync, statSync } from "node:fs";
import path from "node:path";
import { inputError } from "../errors.ts";
import { MAP_HEADER } from "./output/map-csv.ts";
import { UNKNOWNS_HEADER } from "./output/unknowns.ts";
import { requireWritable } from "./write-files.ts";

/** A kind of file that this program writes, known by how it begins. */
export interface OutputKind {
  readonly name: string;
  readonly begins: RegExp;
}

export const REPORT: OutputKind = {
  name: "a report",
  begins:
    /^<!DOCTYPE html>[\s\S]*(?:<meta name="generator" content="stillpoint|: where the sensor stack should sit<\/title>)/,
};

/** A frame file may have a "$schema" too, so the title decides. */
export const SCHEMA: OutputKind = {
  name: "a schema",
  begins: /^\s*\{\s*"\$schema":\s*"[^"]*json-schema\.org[^"]*",\s*"title":\s*"Frame file"/,
};

export const MATRIX: OutputKind = { name: "a matrix", begins: /^%%MatrixMarket / };

export const UNKNOWNS: OutputKind = {
  name: "a list of unknowns",
  begins: new RegExp(`^${UNKNOWNS_HEADER}\\r?\\n`),
};

export const MAP: OutputKind = {
  name: "a map",
  begins: new RegExp(`^${MAP_HEADER}\\r?\\n`),
};

/** As CSV, or as JSON Lines. */
export const ROWS: OutputKind = {
  name: "a list of variants",
  begins: /^(?:index,of,sweep,|\{"index":\d+,"of":\d+,"sweep":")/,
};

/** Enough for the head of a report with a long name. */
const HEAD_BYTES = 4096;

/**
 * Fails early, before work is done for a file that could not or must not be written. Devices, pipes
 * and empty files have nothing to lose.
 *
 * @param frame the frame file of the run, which is never written over, whatever links lead to it
 * @throws InputError that says what is in the way
 */
export function requireFree(file: string, kind: OutputKind, frame?: string): void {
  const there = statIfExact(file);
  if (there?.isFile()) {
    if (frame !== undefined && isSameFile(file, frame)) {
      throw inputError("", `${file} is the frame file itself; choose another name.`);
    }
    if (there.size > 0n && !kind.begins.test(headOf(file))) {
      throw inputError(
        "",
        `${file} exists and is not ${kind.name} of this program; choose another name or delete it.`,
      );
    }
  }
  requireWritable(file);
}

/**
 * Two outputs of one run must not be the same file, or the second would take the place of the first.
 * To be asked when both are known to be free, so that their folders are there.
 *
 * @throws InputError
 */
export function requireApart(one: string, other: string): void {
  const there = statIfExact(one);
  const isSame =
    there === undefined
      ? placeOf(one) === placeOf(other)
      : there.isFile() && isSameFile(one, other);
  if (isSame) {
    throw inputError(
      "",
      `${one} was given for two different outputs; choose another name for one.`,
    );
  }
}

/** Where a file that is not there yet would be, whatever links lead to its folder. */
function placeOf(file: string): string {
  return path.join(realpathSync(path.dirname(file)), path.basename(file));
}

/** undefined also for paths that lead nowhere, which `requireWritable` explains. */
function statIfExact(file: string) {
  try {
    return statSync(file, { bigint: true, throwIfNoEntry: false });
  } catch {
    return undefined;
  }
}

export function isSameFile(a: string, b: string): boolean {
  const [one, other] = [statIfExact(a), statIfExact(b)];
  return one !== undefined && other !== undefined && one.dev === other.dev && one.ino === other.ino;
}

/** The beginning of the file as text; empty when it may not be read, so that it passes for foreign. */
function headOf(file: string): string {
  try {
    const opened = openSync(file, "r");
    try {
      const bytes = Buffer.alloc(HEAD_BYTES);
      return bytes.toString("utf8", 0, readSync(opened, bytes, 0, HEAD_BYTES, 0));
    } finally {
      closeSync(opened);
    }
  } catch {
    return "";
  }
}
