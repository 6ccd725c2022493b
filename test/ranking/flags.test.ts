/** Reasons to avoid a place. */

import { describe, expect, test } from "vitest";
import { buildModel } from "../../src/model/build.ts";
import { flagsOf } from "../../src/ranking/flags.ts";
import type { Crossing, ModalMotion, Overhang } from "../../src/ranking/types.ts";
import { crossFrame } from "../modes/toys.ts";

const model = buildModel(crossFrame());
const AT_CG = [0, 0] as const;
const [middle, nose] = model.candidates;

const kinds = (...args: Parameters<typeof flagsOf>) => flagsOf(...args).map((f) => f.kind);

/** Yaw at 400 deg/s, place in mm: false tilt in degrees, atan(omega^2 r/g), worked by hand. */
test.each([
  { x: -30, y: 0, degrees: "8.5", low: "rear" },
  { x: 30, y: 0, degrees: "8.5", low: "front" },
  { x: 0, y: 63, degrees: "17", low: "left" },
  { x: 0, y: -63, degrees: "17", low: "right" },
])("$x, $y mm from the centre of gravity: $degrees degrees, $low low", (place) => {
  const [flag] = flagsOf(model, middle, [], [], [], [place.x * 1e-3, place.y * 1e-3]);
  expect(flag.kind).toBe("far from the centre of gravity");
  expect(flag.hard).toBe(false);
  expect(flag.text).toContain(`${Math.hypot(place.x, place.y)} mm`);
  expect(flag.text).toContain(`${place.degrees} degrees of tilt with the ${place.low} low`);
  expect(flag.text).toContain("in rate flight it has no effect");
});

test("close to the centre of gravity there is nothing to say", () => {
  expect(kinds(model, middle, [], [], [], [-0.019, 0])).toEqual([]);
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
    expect(kinds(model, nose, [front], [], [], AT_CG)).toEqual(["cantilevered"]);
    expect(kinds(model, middle, [front], [], [], AT_CG)).toEqual([]);
    expect(flagsOf(model, nose, [front], [], [], AT_CG)[0].hard).toBe(true);
  });

  test("to the other sides likewise", () => {
    const rear = { ...front, direction: "rear" as const, supportAt: -0.03, endAt: -0.06 };
    expect(kinds(model, nose, [rear], [], [], AT_CG)).toEqual([]);
    expect(
      kinds(model, { ...nose, x: -0.044, holes: middle.holes }, [rear], [], [], AT_CG),
    ).toEqual(["cantilevered"]);
    const left = { ...front, direction: "left" as const, supportAt: 0.02, endAt: 0.04 };
    const right = { ...front, direction: "right" as const, supportAt: -0.02, endAt: -0.04 };
    expect(kinds(model, { ...middle, y: 0.024 }, [left, right], [], [], AT_CG)).toEqual([
      "cantilevered",
    ]);
    expect(kinds(model, { ...middle, y: -0.024 }, [left], [], [], AT_CG)).toEqual([]);
  });

  test("of another plate do not count; those that nothing shakes are no reason to rule out", () => {
    expect(kinds(model, nose, [{ ...front, plate: "other" }], [], [], AT_CG)).toEqual([]);
    const [calm] = flagsOf(model, nose, [{ ...front, flagged: false }], [], [], AT_CG);
    expect([calm.kind, calm.hard]).toEqual(["overhanging", false]);
  });
});

describe("antinodes", () => {
  const crossing: Crossing = {
    mode: 2,
    frequency: 180,
    modeName: "arms flap",
    order: "unbalance",
    speed: 1131,
    rpm: 10800,
    fromHover: 0.04,
    nearHover: true,
  };
  const motion = (rotationShare: number, calmestShare: number): ModalMotion[] => [
    {
      mode: 2,
      frequency: 180,
      rotation: 1,
      displacement: 1,
      rotationShare,
      calmestShare,
      displacementShare: 1,
    },
  ];

  test("the place that turns most in a mode met at hover is told so", () => {
    const [flag] = flagsOf(model, middle, [], motion(0.97, 0.3), [crossing], AT_CG);
    expect([flag.kind, flag.hard]).toEqual(["near an antinode", false]);
    for (const part of ["mode 2", "180 Hz", "97 %", "unbalance", "4 % above hover"]) {
      expect(flag.text).toContain(part);
    }
  });

  test("not away from hover, not where it turns less, not where all turn alike", () => {
    const away = { ...crossing, fromHover: 0.3, nearHover: false };
    expect(kinds(model, middle, [], motion(1, 0.3), [away], AT_CG)).toEqual([]);
    expect(kinds(model, middle, [], motion(0.8, 0.3), [crossing], AT_CG)).toEqual([]);
    expect(kinds(model, middle, [], motion(1, 0.95), [crossing], AT_CG)).toEqual([]);
    // a single candidate is its own liveliest and calmest
    expect(kinds(model, middle, [], motion(1, 1), [crossing], AT_CG)).toEqual([]);
  });
});
