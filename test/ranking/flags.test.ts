/** Reasons to avoid a place. */

import { describe, expect, test } from "vitest";
import { leverArm } from "../../src/attitude/lever-arm.ts";
import { buildModel } from "../../src/model/build.ts";
import type { Vec3 } from "../../src/model/types.ts";
import type { Detail } from "../../src/ranking/detail.ts";
import { type FlagFrame, type FlagInput, flagsOf } from "../../src/ranking/flags.ts";
import type { Crossing, Flag, ModalMotion, Overhang } from "../../src/ranking/types.ts";
import type { Clipping } from "../../src/sensing/clipping.ts";
import { crossFrame } from "../modes/toys.ts";

const file = crossFrame();
const model = buildModel(file);
const [middle, nose] = model.candidates;
const RATE = (400 * Math.PI) / 180;

/** What a place far from any trouble is like, 2 mm off the centre of gravity. */
function detail(lever: Vec3 = [0.002, 0, 0], more: Partial<Detail> = {}): Detail {
  return {
    leverArm: leverArm(lever, { yawRate: RATE }),
    couplings: [],
    rectified: { gyro: 0, accelerometer: 0, tilt: 0 },
    clipping: {},
    ...more,
  };
}

const calmFrame: FlagFrame = {
  file,
  model,
  overhangs: [],
  crossings: [],
  bladePass: 3,
  use: "both",
  bandwidth: 40,
};
const calm: FlagInput = { candidate: middle, motion: [], detail: detail(), mountFlags: [] };

const flags = (frame: Partial<FlagFrame>, place: Partial<FlagInput> = {}) =>
  flagsOf({ ...calmFrame, ...frame }, { ...calm, ...place });
const kinds = (...args: Parameters<typeof flags>) => flags(...args).map((f) => f.kind);

test("where nothing is wrong there is nothing to say", () => {
  for (const use of ["rate", "self-level", "both"] as const) expect(kinds({ use })).toEqual([]);
});

describe("away from the centre of gravity", () => {
  /** Yaw at 400 deg/s, place in mm: false tilt in degrees, atan(omega^2 r/g), worked by hand. */
  test.each([
    { x: -30, y: 0, degrees: "8.5", low: "nose up" },
    { x: 30, y: 0, degrees: "8.5", low: "nose down" },
    { x: 0, y: 63, degrees: "17", low: "left side down" },
    { x: 0, y: -63, degrees: "17", low: "right side down" },
  ])("$x, $y mm: $degrees degrees $low", ({ x, y, degrees, low }) => {
    const [flag] = flags({}, { detail: detail([x * 1e-3, y * 1e-3, 0]) });
    expect(flag.kind).toBe("far from the centre of gravity");
    expect(flag.hard).toBe(false);
    expect(flag.text).toContain(`${Math.hypot(x, y)} mm`);
    expect(flag.text).toContain(`${degrees} degrees ${low}`);
    expect(flag.text).toContain("in rate flight it has no effect");
  });

  test("is put up with as far as the tilt is: tan 1 degree g/omega^2 = 3.5 mm", () => {
    expect(kinds({}, { detail: detail([0.0034, 0, 0.04]) })).toEqual([]);
    expect(kinds({}, { detail: detail([0.0036, 0, 0]) })).toEqual([
      "far from the centre of gravity",
    ]);
  });

  test("does not matter to rate flight", () => {
    expect(kinds({ use: "rate" }, { detail: detail([0.06, 0, 0]) })).toEqual([]);
    expect(kinds({ use: "self-level" }, { detail: detail([0.06, 0, 0]) }).length).toBe(1);
  });
});

describe("overhangs", () => {
  const front: Overhang = {
    plate: "hub",
    direction: "front",
    length: 0.03,
    thickness: 0.003,
    supportAt: 0.03,
    endAt: 0.06,
    mass: 0.01,
    flagged: true,
    text: "reaches 30 mm",
  };

  test("rule out what sits beyond their support, and nothing before it", () => {
    expect(kinds({ overhangs: [front] }, { candidate: nose })).toEqual(["cantilevered"]);
    expect(kinds({ overhangs: [front] })).toEqual([]);
    expect(flags({ overhangs: [front] }, { candidate: nose })[0].hard).toBe(true);
  });

  test("to the other sides likewise", () => {
    const rear = { ...front, direction: "rear" as const, supportAt: -0.03, endAt: -0.06 };
    const tail = { ...nose, x: -0.044, holes: middle.holes };
    expect(kinds({ overhangs: [rear] }, { candidate: nose })).toEqual([]);
    expect(kinds({ overhangs: [rear] }, { candidate: tail })).toEqual(["cantilevered"]);
    const left = { ...front, direction: "left" as const, supportAt: 0.02, endAt: 0.04 };
    const right = { ...front, direction: "right" as const, supportAt: -0.02, endAt: -0.04 };
    const [port, starboard] = [0.024, -0.024].map((y) => ({ ...middle, y }));
    expect(kinds({ overhangs: [left, right] }, { candidate: port })).toEqual(["cantilevered"]);
    expect(kinds({ overhangs: [left] }, { candidate: starboard })).toEqual([]);
  });

  test("of another plate do not count; those that nothing shakes are no reason to rule out", () => {
    const other = { ...front, plate: "other" };
    expect(kinds({ overhangs: [other] }, { candidate: nose })).toEqual([]);
    const quiet = { ...front, flagged: false };
    const [flag] = flags({ overhangs: [quiet] }, { candidate: nose });
    expect([flag.kind, flag.hard]).toEqual(["overhanging", false]);
  });
});

describe("a mode that the rate loop can drive", () => {
  const met = (gain: number, ratio = 3): Partial<FlagInput> => {
    const worst = { axis: "pitch", frequency: 65.13, mode: 3, ratio, gain } as const;
    return {
      detail: detail(undefined, { couplings: [worst, { ...worst, axis: "roll", gain: 0.1 }] }),
    };
  };

  test.each([
    [0.45, []],
    [0.49, []],
    [0.5, [false]],
    [1, [false]],
    [1.9, [false]],
    [2, [true]],
    [7.4, [true]],
  ])("with a gain of %d: %o", (gain, hard) => {
    const found = flags({ bandwidth: 20 }, met(gain));
    expect(found.map((f) => f.hard)).toEqual(hard);
    for (const { kind, text } of found) {
      expect(kind).toBe("in the control band");
      for (const part of ["65.1 Hz", "in pitch", "20 Hz", gain.toPrecision(2)]) {
        expect(text).toContain(part.replace(/\.?0$/, ""));
      }
    }
  });

  test("counts whatever is flown", () => {
    for (const use of ["rate", "self-level", "both"] as const) {
      expect(kinds({ use }, met(1.5))).toEqual(["in the control band"]);
    }
  });
});

describe("a chip at the end of its range", () => {
  const at = (clipped: boolean): Clipping => ({
    axis: 2,
    speed: 1047.2,
    peak: clipped ? 17.3 : 15,
    range: 16,
    share: 1,
    clipped,
  });
  const clipping = (given: Detail["clipping"]) => ({
    detail: detail(undefined, { clipping: given }),
  });

  test("rules a place out: the gyro always, the accelerometer where self-level flight needs it", () => {
    const both = clipping({ gyro: at(true), levelling: at(true), accelerometer: at(true) });
    for (const use of ["self-level", "both"] as const) {
      const found = flags({ use }, both);
      expect(found.map((f) => [f.kind, f.hard])).toEqual([
        ["gyro clips", true],
        ["accelerometer clips", true],
      ]);
      for (const part of ["10000 rpm", "17.3 g", "along z", "16 g"]) {
        expect(found[1].text).toContain(part);
      }
    }
    expect(kinds({ use: "rate" }, both)).toEqual(["gyro clips"]);
  });

  test("not at full throttle alone, and not short of it", () => {
    expect(kinds({}, clipping({ accelerometer: at(true), levelling: at(false) }))).toEqual([]);
    expect(kinds({}, clipping({ gyro: at(false), levelling: at(false) }))).toEqual([]);
  });
});

test("what is wrong with its mounts is said of a place, after what rules it out", () => {
  const soft: Flag = { kind: "isolators too soft", hard: false, text: "soft" };
  const worst = { axis: "roll", frequency: 60, mode: 1, ratio: 5, gain: 2 } as const;
  const place = { mountFlags: [soft], detail: detail(undefined, { couplings: [worst] }) };
  expect(kinds({}, place)).toEqual(["in the control band", "isolators too soft"]);
});

describe("antinodes", () => {
  const crossing: Crossing = {
    mode: 2,
    frequency: 180,
    modeName: "arms flap",
    order: "unbalance",
    multiple: 1,
    speed: 1131,
    rpm: 10800,
    fromHover: 0.04,
    nearHover: true,
  };
  const motion = (rotationShare: number, calmestShare: number): Partial<FlagInput> => {
    const one: ModalMotion = {
      mode: 2,
      frequency: 180,
      rotation: 1,
      displacement: 1,
      rotationShare,
      calmestShare,
      displacementShare: 1,
    };
    return { motion: [one] };
  };

  test("the place that turns most in a mode met at hover is told so", () => {
    const [flag] = flags({ crossings: [crossing] }, motion(0.97, 0.3));
    expect([flag.kind, flag.hard]).toEqual(["near an antinode", false]);
    for (const part of ["mode 2", "180 Hz", "97 %", "unbalance", "4 % above hover"]) {
      expect(flag.text).toContain(part);
    }
  });

  test("not away from hover, not where it turns less, not where all turn alike", () => {
    const away = { ...crossing, fromHover: 0.3, nearHover: false };
    expect(kinds({ crossings: [away] }, motion(1, 0.3))).toEqual([]);
    expect(kinds({ crossings: [crossing] }, motion(0.8, 0.3))).toEqual([]);
    expect(kinds({ crossings: [crossing] }, motion(1, 0.95))).toEqual([]);
    // a single candidate is its own liveliest and calmest
    expect(kinds({ crossings: [crossing] }, motion(1, 1))).toEqual([]);
  });

  test("not at multiples beyond blade pass", () => {
    const high = { ...crossing, multiple: 6 };
    expect(kinds({ crossings: [high] }, motion(1, 0.3))).toEqual([]);
    expect(kinds({ crossings: [{ ...crossing, multiple: 3 }] }, motion(1, 0.3)).length).toBe(1);
  });
});

test("the numbers alone stand beside the sentence", () => {
  const [flag] = flags({}, { detail: detail([0.063, 0, 0]) });
  // atan(omega^2 r/g) at 400 deg/s = 17.4 degrees; 1 degree is reached at g tan(1 deg)/omega^2 = 3.5 mm.
  expect(flag.brief).toBe(
    "63 mm ahead of the centre of gravity: 17.4 deg of false tilt at 400 deg/s of yaw, less than 1 deg within 3.5 mm",
  );
});
