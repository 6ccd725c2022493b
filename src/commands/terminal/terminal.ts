/** Where a command prints to, apart from the process, so that it can be tested without one. */

import { type BarSigns, barSignsFor } from "./bar-signs.ts";
import { type Ink, inkFor } from "./ink.ts";

export interface Terminal {
  /** Results: standard output. */
  readonly print: (text: string) => void;
  /** Errors and progress: standard error. */
  readonly complain: (text: string) => void;
  /** Colours for `print`. */
  readonly ink: Ink;
  /** Signs of bars for `print`. */
  readonly bars: BarSigns;
  /** Whether somebody is watching the errors. */
  readonly watched: boolean;
  /** Seconds since the process started. */
  readonly elapsed: () => number;
}

/** The terminal of this process. From now on a reader that goes away early ends the process quietly. */
export function processTerminal(): Terminal {
  process.stdout.on("error", leaveQuietly);
  process.stderr.on("error", leaveQuietly);
  return {
    print: (text) => void process.stdout.write(text),
    complain: (text) => void process.stderr.write(text),
    ink: inkFor(process.stdout.isTTY === true, process.env),
    bars: barSignsFor(process.env),
    watched: process.stderr.isTTY === true,
    elapsed: () => performance.now() / 1000,
  };
}

/** `stillpoint ... | head` closes the pipe when it has seen enough: nothing is wrong then. */
function leaveQuietly(error: NodeJS.ErrnoException): void {
  if (error.code === "EPIPE") process.exit();
  process.exitCode = 2;
  // standard error may be what is broken
  if (error.syscall === "write" && process.stderr.writable) {
    process.stderr.write(`stillpoint: the output could not be written (${error.code}).\n`);
  }
  process.exit();
}
