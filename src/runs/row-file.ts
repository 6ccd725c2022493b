/** The rows of a sweep on disk: appended whole, one by one, and found again after an interruption. */

import {
  closeSync,
  fstatSync,
  fsyncSync,
  ftruncateSync,
  mkdirSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
  writeSync,
} from "node:fs";
import path from "node:path";
import { inputError } from "../errors.ts";
import { explained } from "./disk.ts";
import type { Job } from "./jobs.ts";
import { type RowsThere, rowsThere } from "./rows-there.ts";
import type { Sheet } from "./sheet.ts";

/** After a power cut no more than this is to be computed again, s. */
const FLUSH_EVERY = 1;

export interface RowFile extends Pick<RowsThere, "rows" | "failed"> {
  /**
   * One row, the first with the header before it, or nothing of it.
   *
   * @throws InputError when it cannot be written, or another program changed the file
   */
  readonly append: (row: string) => void;
  /** Writes what is still in memory to the disk; a file that got no row is not left behind. */
  readonly close: () => void;
}

/**
 * Opens or begins the file that takes the rows of these jobs in their order. What is there must be
 * their first rows; one that was cut in the middle is taken away.
 *
 * @throws InputError when the file cannot be written or holds anything else, which is left as it is
 */
export function openRowFile(file: string, sheet: Sheet, jobs: readonly Job[]): RowFile {
  const opened = explained(file, () => {
    requireRegular(file);
    mkdirSync(path.dirname(file), { recursive: true });
    // reads, and appends whatever happens
    return openSync(file, "a+");
  });
  try {
    const { rows, failed, bytes } = rowsThere(file, readFileSync(opened), sheet, jobs);
    return { rows, failed, ...appender(file, opened, bytes, sheet.header) };
  } catch (error) {
    closeSync(opened);
    throw error;
  }
}

function requireRegular(file: string): void {
  const there = statSync(file, { throwIfNoEntry: false });
  if (there === undefined || there.isFile()) return;
  const what = there.isDirectory() ? "is a folder" : "is not a file";
  throw inputError("", `${file} ${what}: give the name of a file.`);
}

function appender(
  file: string,
  opened: number,
  bytes: number,
  header: string,
): Pick<RowFile, "append" | "close"> {
  explained(file, () => ftruncateSync(opened, bytes));
  const links = Math.min(1, fstatSync(opened).nlink);
  let size = bytes;
  let flushed = performance.now();
  const requireAlone = (): void => {
    const now = fstatSync(opened);
    if (now.size === size && now.nlink >= links) return;
    throw inputError(
      "",
      `${file} was changed or deleted by another program while its rows were computed; give every run a file of its own.`,
    );
  };
  return {
    append: (row) => {
      explained(file, () => {
        requireAlone();
        const text = Buffer.from(size === 0 ? header + row : row);
        try {
          for (let at = 0; at < text.length; ) at += writeSync(opened, text, at);
        } catch (error) {
          ftruncateSync(opened, size);
          throw error;
        }
        size += text.length;
        if (performance.now() - flushed < 1000 * FLUSH_EVERY) return;
        fsyncSync(opened);
        flushed = performance.now();
      });
    },
    close: () => {
      try {
        explained(file, () => fsyncSync(opened));
        if (fstatSync(opened).size === 0) rmSync(file, { force: true });
      } finally {
        closeSync(opened);
      }
    },
  };
}
