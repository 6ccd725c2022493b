/** The rows of a comparison, on outcomes whose differences are known. */

import { describe, expect, test } from "vitest";
import { compareOutcomes } from "../../src/study/compare.ts";
import type { Outcome } from "../../src/variants/types.ts";
import { meeting, reference, reshaped, spot, variant } from "./compare-fixtures.ts";

const between = (from: Outcome, to: Outcome, count?: number) =>
  compareOutcomes(
    [
      { name: "as filed", outcome: from },
      { name: "changed", outcome: to },
    ],
    count,
  ).differences[0];

test("every variant is compared with the first", () => {
  const { reference: name, differences } = compareOutcomes(
    [0.5, 0.6, 0.4].map((mass, i) => ({ name: `v${i}`, outcome: variant({ mass }) })),
  );
  expect(name).toBe("v0");
  expect(differences.map((d) => [d.name, d.mass.from, d.mass.to])).toEqual([
    ["v1", 0.5, 0.6],
    ["v2", 0.5, 0.4],
  ]);
  expect(() => compareOutcomes([{ name: "alone", outcome: reference }])).toThrow("two outcomes");
});

test("mass, centre of gravity and hover", () => {
  const d = between(reference, variant({ mass: 0.512, cg: [-0.0022, 0.0011, 0.01], hover: 1530 }));
  expect(d.mass.change).toBeCloseTo(0.012, 12);
  expect(d.hover.change).toBe(30);
  expect(d.cg.words).toBe("3.2 mm back and 1.1 mm to the left");
});

describe("modes", () => {
  test("are followed by shape, with their change", () => {
    // arms flap and arms twist change places
    const d = between(reference, variant(reshaped([80, 120, 140, 200, 300], [0, 2, 1, 3, 4])));
    expect(d.modes.map((m) => [m.number, m.now])).toEqual([
      [1, 1],
      [2, 3],
      [3, 2],
      [4, 4],
      [5, 5],
    ]);
    expect(d.modes[1]).toMatchObject({ name: "arms flap", from: 100, to: 140, change: 40 });
    expect(d.modes[1].share).toBeCloseTo(0.4, 12);
    expect(d.modes[1].mac).toBeCloseTo(1, 12);
    expect(d.unmatched).toBeUndefined();
  });

  test("that are in one only stand alone", () => {
    const few = reshaped([80, 150, 200, 300], [0, 2, 3, 4]);
    const forth = between(reference, variant({ ...few, meetings: [] })).modes;
    expect(forth.find((m) => m.now === undefined)).toEqual({
      number: 2,
      name: "arms flap",
      from: 100,
    });
    const back = between(variant({ ...few, meetings: [] }), reference).modes;
    expect(back.at(-1)).toEqual({ now: 2, name: "arms flap", to: 100 });
  });

  test("take their names from where there are any, else their numbers", () => {
    const { modeNames: _, ...bare } = reference;
    expect(between(bare, reference).modes[1].name).toBe("arms flap");
    expect(between(bare, bare).modes[1].name).toBe("mode 2");
    expect(between(reference, reference, 2).modes.length).toBe(2);
  });

  test("of frames with other parts are not compared", () => {
    const names = reference.shapes.names.map((n) => `other ${n}`);
    const d = between(reference, variant({ shapes: { ...reference.shapes, names } }));
    expect(d.unmatched).toContain("too few parts");
  });
});

describe("crossings near hover", () => {
  test("come and go with the mode, not with its number", () => {
    const swap = reshaped([80, 90, 110, 200, 300], [0, 2, 1, 3, 4]);
    const same = between(reference, variant({ ...swap, meetings: [meeting(3, 0.08)] }));
    expect(same.crossings).toEqual({ gained: [], lost: [] });
    const other = between(reference, variant({ ...swap, meetings: [meeting(2, 0.08)] }));
    expect(other.crossings.gained).toMatchObject([
      { mode: 2, name: "arms twist", fromHover: 0.08 },
    ]);
    expect(other.crossings.lost).toMatchObject([{ mode: 2, name: "arms flap", frequency: 100 }]);
  });

  test("end at a tenth from hover, and orders count apart", () => {
    const out = between(reference, variant({ meetings: [meeting(2, -0.11)] }));
    expect(out.crossings.gained).toEqual([]);
    expect(out.crossings.lost.length).toBe(1);
    const both = [meeting(2, 0.03), meeting(2, 0.05, 1)];
    expect(between(reference, variant({ meetings: both })).crossings.gained).toMatchObject([
      { order: "unbalance", multiple: 1 },
    ]);
  });

  test("of modes that cannot be told again do not come and go at once", () => {
    const names = reference.shapes.names.map((n) => `other ${n}`);
    const d = between(reference, variant({ shapes: { ...reference.shapes, names } }));
    expect(d.crossings).toEqual({ gained: [], lost: [] });
  });
});

describe("spots", () => {
  const changed = variant({
    spots: [
      spot("centre", { gyro: 6, delay: Number.POSITIVE_INFINITY, tilt: 0.03, score: 6 }),
      spot("nose", { gyro: 3, delay: 2.5e-3 }),
      spot("post", { plate: "top", delay: Number.POSITIVE_INFINITY }),
    ],
    best: 1,
  });
  const d = between(reference, changed);
  const of = (name: string) => d.spots.find((s) => s.name === name)!;

  test("carry levels in dB and delays in seconds where there are any", () => {
    expect(of("centre").gyro.decibel).toBeCloseTo(20 * Math.log10(2), 12);
    expect(of("centre").delay).toEqual({ from: 3e-3, unreached: "to" });
    expect(of("centre").tilt.change).toBeCloseTo(0.02, 12);
    expect(of("nose").delay).toEqual({ to: 2.5e-3, unreached: "from" });
    expect(of("nose").delayWithNotches.change).toBe(0);
  });

  test("may be missing on either side", () => {
    expect(d.spots.map((s) => [s.name, s.where])).toEqual([
      ["centre", "both"],
      ["nose", "both"],
      ["tail", "reference"],
      ["post", "variant"],
    ]);
    expect(of("tail").gyro).toEqual({ from: 9 });
    expect(of("tail").ruledOut).toEqual({ from: "cantilevered" });
    expect(of("post").gyro).toEqual({ to: 3 });
    expect(of("post").delay).toEqual({ unreached: "to" });
  });

  test("the best of each, and how far the new one is ahead of the old", () => {
    expect(d.best).toMatchObject({ changed: true, decibel: 0, lead: 6 });
    expect([d.best.from?.name, d.best.to?.name]).toEqual(["centre", "nose"]);
    expect(d.best.delay.change).toBeCloseTo(-0.5e-3, 12);
    const { best: _, ...closed } = changed;
    expect(between(reference, closed).best).toEqual({
      from: { name: "centre", plate: "middle", gyro: 3 },
      changed: true,
      delay: { from: 3e-3, unreached: "neither" },
    });
  });

  test("everything survives being written as JSON", () => {
    expect(JSON.parse(JSON.stringify(d))).toEqual(d);
  });
});
