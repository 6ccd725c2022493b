/** The same place on other mounts, against two stiff bodies with springs between them. */

import { describe, expect, test } from "vitest";
import { compareMounts } from "../../src/ranking/mounts.ts";
import type { Flag, MountRow } from "../../src/ranking/types.ts";
import { coupledModes } from "../../src/response/coupled-modes.ts";
import { isolatorModes } from "../../src/response/mount-frequencies.ts";
import { crossSections, frameOf } from "../modes/toys.ts";
import { bareOf, placeOf, smallCross } from "../response/joined.ts";
import { assessed, type Judged, judged } from "./judged.ts";

type Sections = Record<string, Record<string, object>>;

const MIDDLE = { plate: "hub", at: [0, 0] };
/** Bounce of 20 g on four: 174 Hz. */
const GROMMETS = { axial: "6 kN/m", lateral: "3 kN/m", lossFactor: 0.2 };
const PAIR = { screwed: MIDDLE, soft: { ...MIDDLE, isolators: GROMMETS } };

const NOTHING = {
  balanceGrade: 0,
  bladeDifference: 0,
  thrustRipple: 0,
  torqueRipple: 0,
  thrustRippleDouble: 0,
  torqueRippleDouble: 0,
};

/** A cross of a metal a thousand times as stiff as any, and thick: nothing bends below 18 kHz. */
function stiffCross(candidates: object, excitation: object, more: object = {}) {
  const s = crossSections({
    E: 99_000,
    lossFactor: 0.01,
    armElements: 1,
    armThickness: 16,
  }) as Sections;
  return frameOf({
    ...s,
    meshSize: 40,
    plates: { hub: { ...s.plates.hub, thickness: 12 } },
    stack: { ...s.stack, chip: [0, 0, 0] },
    candidates,
    excitation: { ...NOTHING, ...excitation },
    ...more,
  });
}

/**
 * |T (A + a)/(A + T a)|: how much less, or more, the body a moves on a spring k (1 + i eta) than held
 * fast to the free body A that is pushed; T = k (1 + i eta)/(k (1 + i eta) - omega^2 a).
 */
function passedOn(a: number, A: number, k: number, eta: number, omega: number): number {
  const [re, im] = [(k - a * omega ** 2) * A + k * a, k * eta * (A + a)];
  return (k * Math.hypot(1, eta) * (A + a)) / Math.hypot(re, im);
}

describe.each([0.5, 1, 2])("on a frame that does not bend, %d times per turn", (order) => {
  const under = (of: string) =>
    judged(stiffCross(PAIR, { orders: [{ order, of, fraction: 0.02 }] }), 6, 20);

  test("thrust makes the stack bounce by what one mass on another on springs passes on", () => {
    const frame = under("thrust");
    const [screwed, soft] = assessed(frame).map((p) => p.reading.accelAxisPower[2]);
    frame.excitation.grid.forEach((speed, s) => {
      const expected = passedOn(0.02, frame.mass.mass, 4 * 6e3, 0.2, order * speed);
      expect(Math.sqrt(soft[s] / screwed[s]) / expected).toBeCloseTo(1, 3);
    });
  });

  test("torque makes it twist likewise", () => {
    const frame = under("torque");
    const [screwed, soft] = assessed(frame).map((p) => p.reading.gyroAxisPower[2]);
    // 36 x 36 mm, four mounts at the corners of a square of 30 mm
    const j = (0.02 * 2 * 0.036 ** 2) / 12;
    const k = 4 * 3e3 * 2 * 0.015 ** 2;
    frame.excitation.grid.forEach((speed, s) => {
      const expected = passedOn(j, frame.mass.inertia.zz, k, 0.2, order * speed);
      expect(Math.sqrt(soft[s] / screwed[s]) / expected).toBeCloseTo(1, 3);
    });
  });
});

test("on a frame that is held fast the mount's frequencies are those of frame and stack together", () => {
  const within = [
    [-50, -35],
    [50, -35],
    [50, 35],
    [-50, 35],
  ];
  const supports = { bench: { plate: "hub", within, fix: "all" } };
  const soft = { ...MIDDLE, isolators: GROMMETS };
  const edge = { plate: "hub", at: [20, 6], holes: { spacing: [30, 18] }, isolators: GROMMETS };
  const frame = bareOf(stiffCross({ soft, edge }, { balanceGrade: 16 }, { supports }), 12, 100);
  for (const c of frame.model.candidates) {
    const { lambda, isolatorShare } = coupledModes(frame.solved.modes, placeOf(frame, c));
    (isolatorModes(c) ?? []).forEach(({ frequency }, i) => {
      expect(Math.sqrt(lambda[i]) / (2 * Math.PI) / frequency).toBeCloseTo(1, 3);
      expect(isolatorShare[i]).toBeGreaterThan(0.999);
    });
    expect(isolatorModes(c)?.length).toBe(6);
    expect(isolatorShare[6]).toBeLessThan(0.05);
  }
});

const rowsOf = ({ model, bare, mass, instruments }: Judged, candidate = model.candidates[0]) =>
  compareMounts(model, bare, mass, instruments, candidate);

const figures = ({ gyro, accel, filter }: MountRow) => [gyro, accel, filter.without.delay];

describe("side by side", () => {
  // the largest stiffness that still counts as a mount
  const stiff = {
    ...MIDDLE,
    isolators: { axial: "999 kN/m", lateral: "999 kN/m", lossFactor: 0.05 },
  };
  const frame = judged(smallCross({}, {}, { candidates: { ...PAIR, stiff } }), 30, 4);
  const own = assessed(frame).map((p) => [p.sensed.gyro, p.sensed.accel, p.filter.without.delay]);
  const [ofScrewed, ofSoft, ofStiff] = frame.model.candidates.map((c) => rowsOf(frame, c));

  test("first screwed down, then as in the file where that is soft, then usual kinds", () => {
    const usual = [
      "silicone grommets, soft",
      "silicone grommets, usual",
      "silicone grommets, stiff",
      "soft gel pads, usual",
    ];
    const names = (rows: readonly MountRow[]) => rows.map((r) => r.name);
    expect(names(ofScrewed)).toEqual(["screwed down", ...usual]);
    expect(names(ofSoft)).toEqual([
      "screwed down",
      "mounts of 6 kN/m each (as in the file)",
      ...usual,
    ]);
    for (const rows of [ofScrewed, ofSoft]) {
      expect(rows.map((r) => r.modes?.length ?? 0)).toEqual(rows.map((_, i) => (i === 0 ? 0 : 6)));
    }
  });

  test("the row of what the place has is the place itself", () => {
    expect(figures(ofScrewed[0])).toEqual(own[0]);
    expect(figures(ofSoft[0])).toEqual(own[0]);
    expect(figures(ofSoft[1])).toEqual(own[1]);
    // 6 and 3 kN/m with 0.2 are what grommets usually are
    expect(figures(ofSoft[3])).toEqual(own[1]);
  });

  test("very stiff mounts are next to screws", () => {
    const [screwed, asInFile] = ofStiff;
    expect(asInFile.gyro / screwed.gyro).toBeCloseTo(1, 1);
    expect(asInFile.accel / screwed.accel).toBeCloseTo(1, 1);
    const [gyro, soft] = [ofStiff[1], ofSoft[1]].map((r) => Math.abs(r.gyro / screwed.gyro - 1));
    expect(gyro).toBeLessThan(0.1 * soft);
  });

  test("bounces are those of 20 g on four springs", () => {
    const bounces = ofScrewed.map((r) => r.modes?.find((m) => m.motion === "bounce")?.frequency);
    [2e3, 6e3, 20e3, 450].forEach((axial, i) => {
      const expected = Math.sqrt((4 * axial) / 0.02) / (2 * Math.PI);
      expect((bounces[i + 1] ?? 0) / expected).toBeCloseTo(1, 9);
    });
  });

  test("mounts in resonance magnify, and soft ones isolate", () => {
    const [screwed, , , , gel] = ofScrewed;
    // the gel's bounce is at 48 Hz, less than half the lowest speed
    expect(frame.excitation.speeds.low / (2 * Math.PI)).toBeGreaterThan(2 * 48);
    expect(gel.accel).toBeLessThan(0.5 * screwed.accel);
    expect(Math.max(...ofScrewed.map((r) => r.gyro))).toBeGreaterThan(1.3 * screwed.gyro);
    expect(Math.min(...ofScrewed.map((r) => r.gyro))).toBeLessThan(0.7 * screwed.gyro);
  });

  test("what is wrong with mounts is told of each row, and never rules a place out", () => {
    const own = (flags: readonly Flag[]) => flags.filter((f) => f.kind.startsWith("isolators"));
    const kinds = ofScrewed.map((r) => own(r.flags).map((f) => f.kind));
    expect(kinds[0]).toEqual([]);
    // 2.5 times the bandwidth of 40 Hz is 100 Hz
    expect(kinds[4]).toContain("isolators too soft");
    expect(kinds[3]).toContain("isolators do not isolate");
    for (const { flags } of ofScrewed) expect(own(flags).filter((f) => f.hard)).toEqual([]);
  });
});
