/** How far a run of many variants is, how fast, and how long it will take. */

import type { Terminal } from "./terminal.ts";

export interface RunProgress {
  /** To be called with the number of finished rows: first with those that were there before. */
  readonly show: (rows: number) => void;
  /** Takes the line away; to be called before anything else is printed. */
  readonly end: () => void;
}

/** Seconds between two signs of life: a line that changes on a terminal, line after line in a log. */
const PERIOD = { watched: 0.2, unwatched: 10 };
/** Seconds before the first. */
const PATIENCE = { watched: 1, unwatched: 10 };
/** The rate is that of the last so many seconds: what was slow at first tells nothing later. */
const RATE_OVER = 30;

interface Moment {
  readonly seconds: number;
  readonly rows: number;
}

export function runProgressOn(terminal: Terminal, total: number): RunProgress {
  const mode = terminal.watched ? "watched" : "unwatched";
  const begun = terminal.elapsed();
  const moments: Moment[] = [];
  let due = begun + PATIENCE[mode];
  let width = 0;
  return {
    show: (rows) => {
      const seconds = terminal.elapsed();
      const now = { seconds, rows };
      if (seconds - (moments.at(-1)?.seconds ?? Number.NEGATIVE_INFINITY) >= 1) moments.push(now);
      // one that is old enough stays, so that slow rows have a rate too
      while (moments.length > 1 && moments[1].seconds <= seconds - RATE_OVER) moments.shift();
      if (seconds < due) return;
      due = seconds + PERIOD[mode];
      const line = progressLine(rows, total, rateOf(moments[0], now));
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

/** Rows per second; undefined while nothing can be said. */
function rateOf(first: Moment, last: Moment): number | undefined {
  const [seconds, rows] = [last.seconds - first.seconds, last.rows - first.rows];
  return rows > 0 && seconds > 0 ? rows / seconds : undefined;
}

/** "312 of 1000, 31 per second, 22 s left" */
export function progressLine(rows: number, total: number, rate: number | undefined): string {
  const done = `${rows} of ${total}`;
  if (rate === undefined) return done;
  return `${done}, ${perTime(rate)}, ${duration((total - rows) / rate)} left`;
}

function perTime(rate: number): string {
  const [value, time] = rate >= 1 ? [rate, "second"] : [60 * rate, "minute"];
  return `${value.toFixed(value >= 9.95 ? 0 : 1)} per ${time}`;
}

function duration(time: number): string {
  const seconds = Math.ceil(time);
  if (seconds < 60) return `${seconds} s`;
  const minutes = Math.ceil(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  return `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}
