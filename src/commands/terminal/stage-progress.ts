/** How far a run of several stages is. */

import type { Terminal } from "./terminal.ts";

export interface StageProgress {
  readonly show: (stage: string, done: number, of: number) => void;
  /** takes the line away; to be called before anything else is printed */
  readonly end: () => void;
}

/** Seconds before the first sign of life, and between two: on a terminal, and in a log. */
const PATIENCE = { watched: 1, unwatched: 10 };
const PERIOD = { watched: 0.2, unwatched: 10 };

export function stageProgressOn(terminal: Terminal): StageProgress {
  const mode = terminal.watched ? "watched" : "unwatched";
  let due = terminal.elapsed() + PATIENCE[mode];
  let width = 0;
  return {
    show: (stage, done, of) => {
      const seconds = terminal.elapsed();
      if (seconds < due) return;
      due = seconds + PERIOD[mode];
      const line = `${stage}: ${done} of ${of}`;
      if (mode === "unwatched") return terminal.complain(`stillpoint: ${line}\n`);
      terminal.complain(`\r${line.padEnd(width)}`);
      width = line.length;
    },
    end: () => {
      if (width > 0) terminal.complain(`\r${" ".repeat(width)}\r`);
      width = 0;
    },
  };
}
