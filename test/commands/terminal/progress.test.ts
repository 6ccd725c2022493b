import { expect, test } from "vitest";
import { NO_INK } from "../../../src/commands/terminal/ink.ts";
import { progressOn } from "../../../src/commands/terminal/progress.ts";
import { recorder } from "../recorder.ts";

function stagesAt(seconds: readonly number[], watched: boolean): string {
  const clock = [...seconds];
  const { terminal, err } = recorder(NO_INK, watched, () => clock.shift() ?? 0);
  const progress = progressOn(terminal);
  for (const [i] of seconds.entries()) progress(`stage ${i}`);
  return err();
}

test("names the stages that begin after the first second", () => {
  expect(stagesAt([0.2, 0.9, 1.1, 4], true)).toBe(
    "stillpoint: stage 2 (1 s)\nstillpoint: stage 3 (4 s)\n",
  );
});

test("stays silent in a log until the wait is long", () => {
  expect(stagesAt([1.1, 4], false)).toBe("");
  expect(stagesAt([4, 12], false)).toBe("stillpoint: stage 1 (12 s)\n");
});
