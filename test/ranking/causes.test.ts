/** Why a place is noisy, and what would help: against the frame with the stack in its mesh, and with thicker arms. */

import { describe, expect, test } from "vitest";
import type { FrameFile } from "../../src/frame/types.ts";
import type { ModeDescription } from "../../src/modes/types.ts";
import { causesOf } from "../../src/ranking/causes.ts";
import { remedy, thicknessEffect } from "../../src/ranking/remedy.ts";
import type { Cause } from "../../src/ranking/types.ts";
import { coupledModes } from "../../src/response/coupled-modes.ts";
import { bareOf, joined, placeOf, smallCross } from "../response/joined.ts";

const NOSE = { plate: "hub", at: [44, 0], holes: { spacing: "20 mm" } };
const SOFT = { axial: "6 kN/m", lateral: "6 kN/m", lossFactor: 0.2 };
const candidates = {
  nose: NOSE,
  "nose, soft": { ...NOSE, isolators: SOFT },
  "left edge": { plate: "hub", at: [0, 26], holes: { spacing: "20 mm" } },
};
const frame = bareOf(smallCross({}, {}, { candidates }), 30, 10);
const ISOLATORS = "the stack's isolators";

describe.each(frame.model.candidates.map((c) => [c.name, c] as const))("%s", (_, c) => {
  const causes = causesOf(frame.model, frame.bare, placeOf(frame, c));
  const whole = joined(frame, c, 24).solved.modes.described;
  const elastic = causes.filter((k) => k.mode > 0);

  test("three causes, largest first, with no more than all of the noise together", () => {
    const shares = causes.map((k) => k.share);
    expect(shares.length).toBe(3);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(shares.reduce((a, b) => a + b)).toBeLessThanOrEqual(1);
    expect(shares[0]).toBeGreaterThan(0.2);
    expect(new Set(causes.map((k) => `${k.mode} ${k.order}`)).size).toBe(3);
  });

  test("their modes are those of frame and stack together", () => {
    expect(elastic.length).toBeGreaterThan(1);
    for (const { mode, frequency, modeName, parts } of elastic) {
      const own = whole[mode - 1];
      expect(frequency / own.frequency).toBeCloseTo(1, 5);
      if (!parts.some((p) => p.name === ISOLATORS)) expect(modeName).toBe(own.name);
    }
  });

  test("and so are the parts that hold their strain", () => {
    for (const { mode, parts } of elastic) {
      expect(parts.length).toBeGreaterThan(0);
      expect(parts.length).toBeLessThanOrEqual(3);
      for (const { name, share } of parts) {
        const kind = name === ISOLATORS ? "stack mount" : name;
        const own = whole[mode - 1].shares.find((s) => s.part === kind)?.strain;
        expect(Math.abs(share - (own ?? Number.NaN))).toBeLessThan(0.01);
        expect(share).toBeGreaterThanOrEqual(0.05);
      }
      const most = Math.max(...whole[mode - 1].shares.map((s) => s.strain));
      expect(Math.abs(parts[0].share - most)).toBeLessThan(0.01);
    }
  });

  test("an order meets its mode at the speed told, within the band or outside", () => {
    const { orders, speeds } = frame.excitation;
    for (const { frequency, order, rpm, met } of elastic) {
      const multiple = orders.find((o) => o.name === order)?.order ?? Number.NaN;
      expect((rpm / 60) * multiple).toBeCloseTo(frequency, 9);
      const speed = (rpm / 60) * 2 * Math.PI;
      expect(met).toBe(speed >= speeds.low && speed <= speeds.full);
    }
  });
});

test("on soft mounts the stack's own motions are causes, called so", () => {
  const soft = frame.model.candidates[1];
  const own = causesOf(frame.model, frame.bare, placeOf(frame, soft)).filter(
    (k) => k.modeName === "the stack moves on its isolators",
  );
  expect(own.length).toBeGreaterThan(0);
  for (const { parts, remedy: told } of own) {
    expect(parts[0].name).toBe(ISOLATORS);
    expect(parts[0].share).toBeGreaterThan(0.5);
    expect(told).toBe("stiffer or softer isolators move it");
  }
});

test("what the chip does not pass on is no cause", () => {
  const place = placeOf(frame, frame.model.candidates[0]);
  const [chief] = causesOf(frame.model, frame.bare, place);
  const { orders, grid } = frame.excitation;
  const without = orders.map((o) => grid.map(() => (o.name === chief.order ? 0 : 1)));
  const left = causesOf(frame.model, frame.bare, place, without);
  expect(left.map((k) => k.order)).not.toContain(chief.order);
  // half of everything is the same shares of less
  const half = orders.map(() => grid.map(() => 0.5));
  causesOf(frame.model, frame.bare, place, half).forEach(({ share }, i) => {
    expect(share).toBeCloseTo(causesOf(frame.model, frame.bare, place)[i].share, 12);
  });
});

test("a frame that hardly bends is shaken as one", () => {
  const rigid = bareOf(smallCross({ E: 99_000 }, {}, { candidates: { nose: NOSE } }), 12, 20);
  const [first] = causesOf(rigid.model, rigid.bare, placeOf(rigid, rigid.model.candidates[0]));
  expect(first).toMatchObject({ mode: 0, frequency: 0, met: false, remedy: "", parts: [] });
  expect(first.modeName).toBe("the whole craft moves as one");
  expect(first.share).toBeGreaterThan(0.5);
});

/** The frame with arms thicker by a factor. */
function thicker(file: FrameFile, factor: number): FrameFile {
  const arms = Object.entries(file.arms).map(([name, arm]) => [
    name,
    { ...arm, thickness: factor * arm.thickness },
  ]);
  return { ...file, arms: Object.fromEntries(arms) };
}

/** "arms 20 % thicker raise that frequency by up to 23 %" */
const promised = (c: Cause) => Number(/up to (\d+) %/.exec(c.remedy)?.[1]) / 100;

describe("arms a fifth thicker", () => {
  const thick = bareOf(thicker(frame.file, 1.2), 30, 100);
  const rises = [0, 2].flatMap((i) => {
    const [place, other] = [frame, thick].map((b) => placeOf(b, b.model.candidates[i]));
    const { lambda } = coupledModes(thick.solved.modes, other);
    return causesOf(frame.model, frame.bare, place).map((cause) => ({
      cause,
      rise: Math.sqrt(lambda[5 + cause.mode]) / (2 * Math.PI) / cause.frequency - 1,
    }));
  });

  test("raise arm modes by what is promised or a little less: the shape gives way", () => {
    expect(rises.length).toBe(6);
    for (const { cause, rise } of rises) {
      expect(cause.remedy).toMatch(/^arms 20 % thicker raise that frequency by up to \d+ %$/);
      // measured: 1 to 4 hundredths less than promised
      expect(promised(cause) - rise).toBeLessThan(0.045);
      expect(promised(cause) - rise).toBeGreaterThan(-0.005);
    }
  });
});

describe("the effect of a thickness", () => {
  test("is that of a cantilever: with its own mass as t, with a heavy tip as t^1.5", () => {
    expect(thicknessEffect(1, 1, 3, 0.2)).toBeCloseTo(0.2, 12);
    expect(thicknessEffect(1, 0, 3, 0.2)).toBeCloseTo(1.2 ** 1.5 - 1, 12);
  });

  test("of mass without strain is a fall", () => {
    expect(thicknessEffect(0, 1, 3, 0.2)).toBeCloseTo(1.2 ** -0.5 - 1, 12);
  });

  test("of a little is its derivative, which keeping the shape gives exactly", () => {
    const d = 0.01;
    const before = frame.solved.modes;
    const after = bareOf(thicker(frame.file, 1 + d), 12, 100).solved.modes;
    for (const mode of [2, 3]) {
      const { motion, shares } = before.described[mode];
      const kinetic = shares.filter((s) => s.kind === "arm").reduce((sum, s) => sum + s.kinetic, 0);
      const told = thicknessEffect(motion.armFlat + motion.armTorsion, kinetic, 3, d);
      const rise = Math.sqrt(after.lambda[mode] / before.lambda[mode]) - 1;
      // measured: 3 % of it, since twist does not quite go with t^3
      expect(Math.abs(told / rise - 1)).toBeLessThan(0.06);
    }
  });
});

describe("what would move a mode", () => {
  const none: ModeDescription["motion"] = {
    armFlat: 0,
    armEdge: 0,
    armTorsion: 0,
    plateBending: 0,
    plateInPlane: 0,
    member: 0,
    standoff: 0,
    joint: 0,
    softMount: 0,
    other: 0,
  };
  const mode = (motion: Partial<ModeDescription["motion"]>): ModeDescription => ({
    number: 1,
    frequency: 100,
    name: "",
    symmetry: "",
    shares: [{ part: "battery mount", kind: "mount", strain: 0.5, kinetic: 0 }],
    motion: { ...none, ...motion },
    lossFactor: 0.02,
    damping: 0.01,
    shearEffect: 0,
  });

  test.each([
    [{ armFlat: 0.3, armTorsion: 0.3, plateBending: 0.4 }, "arms 20 % thicker"],
    [{ armEdge: 0.6, armFlat: 0.3 }, "arms 20 % wider"],
    [{ plateBending: 0.5, standoff: 0.3 }, "a standoff near the middle of the bend"],
    [{ plateInPlane: 0.5 }, "plates 20 % thicker"],
    [{ standoff: 0.5 }, "standoffs"],
    [{ joint: 0.4, armFlat: 0.3 }, "held over a greater length"],
    [{ softMount: 0.6, armFlat: 0.4 }, 'the soft mount of "battery"'],
    [{ member: 0.6 }, "stiffer members"],
  ])("%o: %s", (motion, words) => {
    expect(remedy(mode(motion), 0)).toContain(words);
  });

  test("counts the part's own mass: 0.8 of the strain and 0.3 of the motion give 22 %", () => {
    const shares = [
      { part: "arms", kind: "arm", strain: 0.8, kinetic: 0.3 },
      { part: "hub", kind: "plate", strain: 0.2, kinetic: 0.5 },
    ];
    // sqrt((1 + 0.8 (1.2^3 - 1))/(1 + 0.2 0.3)) = 1.222; with the plate's 0.5 it would be 1.199
    const bending = { ...mode({ armFlat: 0.6, armTorsion: 0.2, plateBending: 0.2 }), shares };
    expect(remedy(bending, 0)).toBe("arms 20 % thicker raise that frequency by up to 22 %");
  });

  test("is not told where the strain is spread thinly", () => {
    expect(remedy(mode({ armFlat: 0.15, plateBending: 0.15, joint: 0.15, member: 0.15 }), 0)).toBe(
      "",
    );
  });
});
