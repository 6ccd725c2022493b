import { describe, expect, test } from "vitest";
import { NO_INK } from "../../../src/commands/terminal/ink.ts";
import { progressLine, runProgressOn } from "../../../src/commands/terminal/run-progress.ts";
import { recorder } from "../recorder.ts";

/** What is shown when rows 0, 1, 2 ... are finished at these seconds. */
function shownAt(seconds: readonly number[], watched: boolean): string {
  const clock = [0, ...seconds];
  const { terminal, err } = recorder(NO_INK, watched, () => clock.shift() ?? 0);
  const progress = runProgressOn(terminal, 100);
  for (const [row] of seconds.entries()) progress.show(row);
  progress.end();
  return err();
}

describe("on a terminal", () => {
  test("one line changes and goes away at the end", () => {
    const text = shownAt([0, 0.5, 1, 1.1, 2], true);
    const lines = ["2 of 100, 2.0 per second, 49 s left", "4 of 100, 2.0 per second, 48 s left"];
    expect(text).toBe(`\r${lines[0]}\r${lines[1]}\r${" ".repeat(lines[1].length)}\r`);
  });

  test("nothing is shown when it does not take long", () => {
    expect(shownAt([0, 0.3, 0.6], true)).toBe("");
  });

  test("nothing of a longer line stays behind", () => {
    const text = shownAt([0, 50, 50.5], true);
    const [, first, second] = text.split("\r");
    expect(first).toBe("1 of 100, 1.2 per minute, 1 h 23 min left");
    expect(second).toBe("2 of 100, 2.4 per minute, 42 min left".padEnd(first.length));
  });
});

test("in a log a line is added every ten seconds", () => {
  const text = shownAt([0, 4, 9, 11, 19, 22], false);
  expect(text).toBe(
    "stillpoint: 3 of 100, 16 per minute, 6 min left\nstillpoint: 5 of 100, 14 per minute, 7 min left\n",
  );
});

test("the rate is that of the last half minute", () => {
  const slowThenFast = [0, 10, 20, 30, 40, 50, ...Array.from({ length: 30 }, (_, i) => 51 + i)];
  const last = shownAt(slowThenFast, true).trimEnd().split("\r").at(-1);
  expect(last).toBe("35 of 100, 1.0 per second, 2 min left");
});

test("rows that were there before do not count for the rate", () => {
  const clock = [0, 0, 10];
  const { terminal, err } = recorder(NO_INK, true, () => clock.shift() ?? 0);
  const progress = runProgressOn(terminal, 1000);
  progress.show(900);
  progress.show(910);
  expect(err()).toBe("\r910 of 1000, 1.0 per second, 2 min left");
});

test.each([
  [312, 1000, 31, "312 of 1000, 31 per second, 23 s left"],
  [0, 1000, undefined, "0 of 1000"],
  [999, 1000, 200, "999 of 1000, 200 per second, 1 s left"],
  [10, 100_000, 0.01, "10 of 100000, 0.6 per minute, 2777 h 30 min left"],
  [1000, 1000, 9.96, "1000 of 1000, 10 per second, 0 s left"],
])("%i of %i at %s per second", (rows, total, rate, text) => {
  expect(progressLine(rows, total, rate)).toBe(text);
});
