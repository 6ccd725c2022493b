/** Modes followed on a real mesh: along a symmetric family no mode may change its symmetry. */

import { expect, test } from "vitest";
import { analyseModes } from "../../src/analyse.ts";
import { track } from "../../src/study/track.ts";
import { samplePoints, sampleShapes } from "../../src/variants/shape-samples.ts";
import { crossFrame } from "../modes/toys.ts";
import { madeOutcome } from "./made-outcomes.ts";

const COUNT = 14;
const family = (armThickness: number) => {
  const { model, mesh, modes } = analyseModes(crossFrame({ armThickness }), { modes: 24 });
  const outcome = madeOutcome(
    modes.described.map((m) => m.frequency),
    [],
    { shapes: sampleShapes(samplePoints(model, mesh), modes.shapes) },
  );
  return { outcome, symmetry: modes.described.map((m) => m.symmetry) };
};

test("arms grow thicker: flapping passes swinging, and every branch keeps its symmetry", () => {
  const values = [4, 5, 6.5, 8, 10, 12];
  const solved = values.map(family);
  let asked = 0;
  const between = (i: number, f: number) => {
    asked++;
    return family(values[i] + f * (values[i + 1] - values[i])).outcome;
  };
  const { branches, crossings } = track(
    solved.map((s) => s.outcome),
    between,
    { count: COUNT, values },
  );
  const whole = branches.filter((b) => b.modes.every((m) => m !== undefined));
  expect(whole.length).toBeGreaterThanOrEqual(COUNT);
  for (const { modes } of whole) {
    expect(new Set(modes.map((m, i) => solved[i].symmetry[m! - 1])).size).toBe(1);
  }
  // by frequency alone some modes would change theirs
  const byNumber = Array.from({ length: COUNT }, (_, k) => solved.map((s) => s.symmetry[k]));
  expect(byNumber.some((row) => new Set(row).size > 1)).toBe(true);
  expect(crossings.length).toBeGreaterThan(0);
  expect(asked).toBeLessThan(40);
});
