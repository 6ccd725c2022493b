import { describe, expect, test } from "vitest";
import {
  bestSpot,
  crossingsAcross,
  modesAcross,
  mostChanged,
  spotsAcross,
  tellingModes,
} from "../../src/study/across.ts";
import { madeStudy, madeVariants } from "./made-study.ts";

const study = madeStudy();
const alone = madeStudy(madeVariants().slice(0, 1));

describe("modes side by side", () => {
  const rows = modesAcross(study);

  test("stand in the order of the reference, with change and likeness against it", () => {
    expect(rows.map((r) => r.cells.map((c) => c?.frequency))).toEqual([
      [62, 61.2, 62.5],
      [128, 97, 158],
      [176, 134, 214],
      [262, 258, 265],
      [331, 322, 339],
    ]);
    const [reference, thin, thick] = rows[1].cells;
    expect(reference?.share).toBeUndefined();
    expect(thin?.share).toBeCloseTo(97 / 128 - 1, 12);
    // Turned by 0.3 rad: cos^2.
    expect(thick?.likeness).toBeCloseTo(Math.cos(0.3) ** 2, 6);
    expect(thick?.band?.low.value).toBeLessThan(158);
  });

  test("that change most are told apart from those that stay", () => {
    expect(mostChanged(rows, 2).map((r) => r.name)).toEqual([rows[1].name, rows[2].name]);
    expect(mostChanged(rows, 9).length).toBe(5);
    expect(tellingModes(rows, 2).map((r) => r.cells[0]?.number)).toEqual([2, 3]);
  });

  test("of one variant are its own, and none tells a change", () => {
    const own = modesAcross(alone);
    expect(own.map((r) => r.cells[0]?.frequency)).toEqual([62, 128, 176, 262, 331]);
    expect(mostChanged(own, 5)).toEqual([]);
    expect(tellingModes(own, 2).map((r) => r.cells[0]?.number)).toEqual([1, 2]);
  });

  test("that only one variant has stand in rows of their own", () => {
    const [a, b] = madeVariants();
    const few = { ...b.outcome, frequencies: b.outcome.frequencies.slice(0, 4) };
    const values = b.outcome.shapes.values.slice(0, 4 * b.outcome.shapes.names.length);
    const lost = { ...b, outcome: { ...few, shapes: { ...b.outcome.shapes, values } } };
    const there = modesAcross(madeStudy([a, lost], 0));
    expect(there[4].cells.map((c) => c?.frequency)).toEqual([331, undefined]);
    const came = modesAcross(madeStudy([lost, a], 0));
    expect(came[4].cells.map((c) => c?.frequency)).toEqual([undefined, 331]);
  });
});

describe("spots side by side", () => {
  test("are the same by name and plate", () => {
    const [a, b] = madeVariants();
    const spots = b.outcome.spots.map((s, i) => (i === 2 ? { ...s, plate: "top" } : s));
    const rows = spotsAcross(madeStudy([a, { ...b, outcome: { ...b.outcome, spots } }], 0));
    expect(rows.map((r) => `${r.name} ${r.plate}`)).toEqual([
      "sandwich middle",
      "under the top plate top",
      "nose middle",
      "tail middle",
      "nose top",
    ]);
    expect(rows[2].cells.map((c) => c?.spot.gyro)).toEqual([5.1, undefined]);
    expect(rows[4].cells.map((c) => c?.spot.gyro)).toEqual([undefined, 6.4]);
  });

  test("carry their samples, none where a spot is never open", () => {
    const rows = spotsAcross(study);
    expect(rows[0].cells[0]?.noise?.perSecond.of).toBe(128);
    expect(rows[3].cells[0]?.noise).toBeUndefined();
    expect(bestSpot(study.variants[1])?.spot.name).toBe("sandwich");
    const { best: _, ...closed } = study.variants[1].outcome;
    expect(bestSpot({ ...study.variants[1], outcome: closed })).toBeUndefined();
  });
});

test("crossings near hover are told as new, and those that went", () => {
  const [reference, thin, thick] = crossingsAcross(study);
  expect(reference.near.map((c) => [c.mode, c.gained])).toEqual([[3, false]]);
  expect([thin.near.length, thin.lost.map((c) => c.mode)]).toEqual([0, [3]]);
  expect(thick.near.map((c) => [c.mode, c.frequency, c.gained])).toEqual([[2, 158, true]]);
});
