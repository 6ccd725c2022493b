/** Slopes and noise of a small frame against frames solved anew. */

import { describe, expect, test } from "vitest";
import { analyseModes } from "../../src/analyse.ts";
import { changedFrame, parseFrameSource } from "../../src/frame/change.ts";
import { inputsOf, withInput } from "../../src/frame/inputs.ts";
import { sensitivities } from "../../src/study/sensitivity.ts";
import { studyBase } from "../../src/study/sensitivity-base.ts";
import { exactOutcome } from "../../src/variants/exact.ts";
import { prepareVariant } from "../../src/variants/prepare.ts";
import { crossSections } from "../modes/toys.ts";

const sourceOf = (sections: object) =>
  parseFrameSource(JSON.stringify({ version: 1, name: "cross", ...sections }), "cross.jsonc");

const source = sourceOf({
  ...crossSections({ lopsided: true, lossFactor: 0.2 }),
  spreads: { "plates.hub.thickness": [2.8, 3.2] },
});
const base = studyBase(source);
const NAMES = [
  "dampingFactor",
  "plates.hub.thickness",
  "arms.arm.tip#1",
  "bodies.lump.mass",
  "candidates.nose.at#1",
];
const table = sensitivities(base, { modes: 8, inputs: NAMES });
const named = (name: string) => {
  const found = table.rows.find((r) => r.input.name === name);
  if (found === undefined) throw new Error(name);
  return found;
};

function changed(name: string, value: number) {
  const input = inputsOf(source).find((one) => one.name === name);
  if (input === undefined) throw new Error(name);
  return changedFrame(source, [withInput(source, input, value)]).file;
}

test("has a row for each input and a column for each mode and spot", () => {
  expect(table.rows.map((r) => r.input.name)).toEqual(NAMES);
  expect(table.modes.map((m) => m.number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  expect(table.spots.map((s) => s.name)).toEqual(["middle", "nose", "left edge"]);
  for (const { slopes, noise } of table.rows) {
    expect(slopes).toHaveLength(8);
    expect(noise?.from).toHaveLength(3);
  }
});

test("modes are those of the frame with its stack", () => {
  const { modes } = analyseModes(source.file, { modes: 8 });
  expect(table.modes).toEqual(
    modes.described.map(({ number, frequency, name }) => ({ number, frequency, name })),
  );
});

describe.each([
  ["plates.hub.thickness", 1e-6],
  ["arms.arm.tip#1", 2e-5],
  ["bodies.lump.mass", 2e-5],
])("%s", (name, h) => {
  test("moves every frequency as frames on both sides do", () => {
    const { input, slopes } = named(name);
    const f = (v: number) =>
      analyseModes(changed(name, v), { modes: 8 }).modes.described.map((m) => m.frequency);
    const [up, down] = [f(input.value + h), f(input.value - h)];
    const expected = up.map((v, k) => (v - down[k]) / (2 * h));
    const largest = Math.max(...expected.map(Math.abs));
    slopes?.forEach((slope, k) => {
      expect(Math.abs(slope - expected[k]) / largest).toBeLessThan(1e-5);
    });
  });

  test("noise at the ends of its reach is that of whole solutions", () => {
    const { reach, noise } = named(name);
    for (const end of ["from", "to"] as const) {
      const prepared = prepareVariant(changed(name, reach[end]), base.prepared.mesh.size);
      const { spots } = exactOutcome(prepared, { modes: base.count });
      spots.forEach((spot, i) => {
        const level = 20 * Math.log10(spot.gyro / base.outcome.spots[i].gyro);
        expect(Math.abs((noise?.[end][i] ?? Number.NaN) - level)).toBeLessThan(0.03);
      });
    }
  });
});

test("the file's own spread is the reach", () => {
  const { reach } = named("plates.hub.thickness");
  expect([reach.from, reach.to]).toEqual([2.8e-3, 3.2e-3]);
});

test("damping moves the noise alone, and a place itself alone", () => {
  expect([...(named("dampingFactor").slopes ?? [])]).toEqual(new Array(8).fill(0));
  const { from, to } = named("dampingFactor").noise ?? { from: [], to: [] };
  for (const level of from) expect(level).toBeGreaterThan(0);
  for (const level of to) expect(level).toBeLessThan(0);
  const nose = named("candidates.nose.at#1").noise;
  expect([nose?.to[0], nose?.to[2]]).toEqual([
    expect.closeTo(0, 6) as number,
    expect.closeTo(0, 6) as number,
  ]);
  expect(Math.abs(nose?.to[1] ?? 0)).toBeGreaterThan(1e-3);
});

test("a frame without motors has slopes and no noise", () => {
  const { propulsion: _p, stack: _s, candidates: _c, ...sections } = crossSections();
  const still = sensitivities(studyBase(sourceOf(sections)), {
    modes: 3,
    inputs: ["arms.arm.thickness"],
  });
  expect(still.spots).toEqual([]);
  expect(still.best).toBeUndefined();
  expect(still.rows[0].noise).toBeUndefined();
  expect(Math.max(...(still.rows[0].slopes ?? []))).toBeGreaterThan(0);
});

test("an end of the reach where there is no frame is told", () => {
  const held = sourceOf({
    ...crossSections({ lossFactor: 0.2 }),
    // 1 mm further out the lump misses the hub
    bodies: { lump: { mass: 9, at: [59.8, 0, 6], size: [1, 1, 1], on: "hub", footprint: [1, 1] } },
  });
  const { rows } = sensitivities(studyBase(held), { modes: 3, inputs: ["bodies.lump.at#1"] });
  expect(rows[0].impossible).toMatch(/hub/);
  expect(rows[0].noise).toBeUndefined();
});
