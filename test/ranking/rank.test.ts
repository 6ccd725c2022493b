/** The whole ranking of small frames: uses, mounts, the stack's own weight, no stack at all. */

import { describe, expect, test } from "vitest";
import { type Analysis, analyse } from "../../src/analyse.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import type { MassReport } from "../../src/matrices/mass.ts";
import type { Vec3 } from "../../src/model/types.ts";
import type { RankedCandidate, Ranking } from "../../src/ranking/types.ts";
import { crossSections, frameOf } from "../modes/toys.ts";
import { smallCross } from "../response/joined.ts";

const QUICK = { modes: 15, map: { pitch: 0.016 } };

function ranked(file: FrameFile): Analysis & { readonly ranking: Ranking } {
  const { ranking, ...rest } = analyse(file, QUICK);
  if (!ranking) throw new Error("nothing to rank");
  return { ...rest, ranking };
}

const byName = ({ candidates }: Ranking, name: string) =>
  candidates.find((c) => c.candidate.name === name) as RankedCandidate;

/** The craft's centre of gravity, from the list of its parts, with the stack moved to a place. */
function cgWith(mass: MassReport, stack: number, at: Vec3): Vec3 {
  const parts = mass.parts.filter((p) => p.name !== "stack");
  const total = parts.reduce((m, p) => m + p.mass, stack);
  const along = (i: number) => parts.reduce((m, p) => m + p.mass * p.cg[i], stack * at[i]) / total;
  return [along(0), along(1), along(2)];
}

const LIMIT = Math.tan(Math.PI / 180) * 9.80665;

describe("screwed down and on isolators, for rate flight as the file says", () => {
  const isolators = { axial: "6 kN/m", lateral: "3 kN/m" };
  const candidates = {
    middle: { plate: "hub", at: [0, 0] },
    "middle, soft": { plate: "hub", at: [0, 0], isolators },
    "far out": { plate: "hub", at: [-40, 0], height: "20 mm" },
    below: { plate: "hub", at: [0, 0], side: "below" },
  };
  const control = { use: "rate", yawRate: "300 deg/s" };
  const { ranking, mass } = ranked(smallCross({}, { chip: [6, -4, 2] }, { candidates, control }));
  const named = Object.keys(candidates).map((name) => byName(ranking, name));
  const [screwed, soft, far, below] = named;

  test("the use is told, and the gyro alone decides", () => {
    expect(ranking.use).toBe("rate");
    expect(ranking.weights).toEqual({ gyro: 1, accelerometer: 0, tilt: 0 });
    for (const c of ranking.candidates) expect(c.score).toBeCloseTo(c.decibel, 12);
    for (const p of ranking.map.places) {
      const quietest = Math.min(...ranking.candidates.map((c) => c.sensed.gyro));
      expect(p.score).toBeCloseTo(20 * Math.log10(p.gyro / quietest), 9);
    }
    const kinds = ranking.candidates.flatMap((c) => c.flags.map((f) => f.kind));
    expect(kinds).not.toContain("far from the centre of gravity");
    expect(ranking.notes.join(" ")).toContain("ordered for rate flight");
  });

  test("of the same place only the one on screws is as drawn, and only the other has mount modes", () => {
    expect(named.map((c) => c.candidate.designed)).toEqual([true, false, false, false]);
    expect(named.map((c) => c.mountModes?.length ?? 0)).toEqual([0, 6, 0, 0]);
    const bounce = soft.mountModes?.find((m) => m.motion === "bounce")?.frequency ?? 0;
    expect(bounce).toBeCloseTo(Math.sqrt((4 * 6e3) / 0.02) / (2 * Math.PI), 6);
    const lists = (c: RankedCandidate) => c.flags.some((f) => f.kind.startsWith("isolators"));
    expect(named.map(lists)).toEqual([false, true, false, false]);
    expect(Math.abs(soft.sensed.gyro / screwed.sensed.gyro - 1)).toBeGreaterThan(0.05);
    expect(soft.fromCg).toBe(screwed.fromCg);
  });

  test("the first place is set beside other mounts", () => {
    const [first] = ranking.candidates;
    const [row, own] = ranking.mounts;
    const same = first.mountModes ? own : row;
    expect(same.gyro).toBe(first.sensed.gyro);
    expect(same.accel).toBe(first.sensed.accel);
    expect(same.filter).toEqual(first.filter);
  });

  test("lever arms are from the centre of gravity of the craft with the stack there", () => {
    // 8 mm above the face of a plate of 3 mm about z 0, the chip 6 ahead, 4 right and 2 on top; under the
    // plate it hangs turned about x, 4 left and 2 below
    const stacks: readonly Vec3[] = [
      [0, 0, 0.0095],
      [0, 0, 0.0095],
      [-0.04, 0, 0.0215],
      [0, 0, -0.0095],
    ];
    named.forEach((c, i) => {
      const cg = cgWith(mass, 0.02, stacks[i]);
      const side = i === 3 ? -1 : 1;
      const lever = [
        stacks[i][0] + 0.006 - cg[0],
        stacks[i][1] - side * 0.004 - cg[1],
        stacks[i][2] + side * 0.002 - cg[2],
      ];
      c.leverArm.lever.forEach((v, axis) => {
        expect(v).toBeCloseTo(lever[axis], 9);
      });
      expect(c.fromCg).toBeCloseTo(Math.hypot(lever[0], lever[1]), 9);
      const omega = (300 * Math.PI) / 180;
      expect(c.leverArm.within).toBe(c.fromCg < LIMIT / omega ** 2);
      expect(Math.tan(c.leverArm.reading.tilt)).toBeCloseTo((omega ** 2 * c.fromCg) / 9.80665, 9);
    });
    expect(far.leverArm.within).toBe(false);
    expect(below.leverArm.lever[2]).toBeLessThan(0);
  });

  test("delays are against the quickest open place, and what the gyro reads is in hover and beyond", () => {
    const least = Math.min(...ranking.candidates.map((c) => c.filter.without.delay));
    for (const c of ranking.candidates) {
      expect(c.delayOver.without).toBeCloseTo(c.filter.without.delay - least, 12);
      expect(c.filter.with.delay).toBeLessThanOrEqual(c.filter.without.delay);
      expect(c.filter.raw).toBeGreaterThanOrEqual(c.sensed.gyro);
      expect(c.sensed.gyroAtHover).toBeGreaterThan(0);
    }
    expect([ranking.controlBandwidth, ranking.residual]).toEqual([40, 1]);
  });

  test("the map says of a place what the table would", () => {
    for (const p of ranking.map.places) {
      const face = 0.0015 + 0.008;
      const cg = cgWith(mass, 0.02, [p.x, p.y, p.side * face]);
      const r = Math.hypot(p.x + 0.006 - cg[0], p.y - p.side * 0.004 - cg[1]);
      const omega = (300 * Math.PI) / 180;
      expect(Math.tan(p.tilt)).toBeCloseTo((omega ** 2 * r) / 9.80665, 9);
      expect(p.avoid).toBe(false);
    }
    const at = ranking.map.places.find(
      (p) => p.x === 0 && p.y === 0,
    ) as (typeof ranking.map.places)[0];
    const same = at.side > 0 ? screwed : below;
    expect(at.gyro / same.sensed.gyro).toBeCloseTo(1, 9);
    expect(at.accel / same.sensed.accel).toBeCloseTo(1, 9);
    expect(at.delayWithout).toBe(same.filter.without.delay);
  });
});

describe("a frame that describes no stack", () => {
  const { stack: _, candidates: __, ...rest } = crossSections({ armElements: 1 });
  const frame = ranked(frameOf({ ...rest, meshSize: 40 }));

  test("is ranked with a plain board of 9 g at places found all over it", () => {
    const { candidates, notes } = frame.ranking;
    expect(candidates.length).toBeGreaterThan(3);
    for (const c of candidates) {
      expect([c.found, c.candidate.named, c.candidate.designed]).toEqual([true, false, false]);
      expect(c.candidate.stack.mass).toBe(9e-3);
    }
    expect(notes.join(" ")).toContain("describes no stack: a single board of 9 g");
  });

  test("whose weight moves the centre of gravity of the craft as drawn", () => {
    expect(frame.mass.parts.map((p) => p.name)).not.toContain("stack");
    for (const { candidate, leverArm } of frame.ranking.candidates) {
      const cg = cgWith(frame.mass, 9e-3, candidate.cg);
      leverArm.lever.forEach((v, i) => {
        expect(v).toBeCloseTo(candidate.chip[i] - cg[i], 9);
      });
    }
  });
});
