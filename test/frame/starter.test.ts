import { describe, expect, test } from "vitest";
import { starterFrame } from "../../src/frame/starter.ts";
import { SIZE_CLASSES } from "../../src/frame/starter-classes.ts";
import type { FrameFile, PlateDef } from "../../src/frame/types.ts";
import type { Vec2 } from "../../src/frame/types-basic.ts";
import { linesOf, read } from "./helpers.ts";
import { weigh } from "./weigh.ts";

/** Typical ranges of the classes, common practice, no source: wheelbase in mm, masses in g. */
const RANGES = {
  "3 inch": { wheelbase: [130, 150], frame: [25, 45], all: [150, 300] },
  "5 inch": { wheelbase: [210, 235], frame: [100, 150], all: [600, 900] },
  "7 inch": { wheelbase: [295, 330], frame: [160, 260], all: [1000, 1700] },
  "10 inch": { wheelbase: [400, 460], frame: [450, 750], all: [2500, 4500] },
} as const;

const densityOf = (material: string) => (material.startsWith("carbon") ? 1550 : 2810);

/** Half width at x of a plate drawn by its front-left quarter. */
function halfWidth({ outline }: PlateDef, x: number): number {
  const at = Math.abs(x);
  const [lastX, lastY] = outline[outline.length - 1];
  if (at <= lastX) return lastY;
  const after = outline.findIndex(([px]) => px <= at);
  if (after < 1) return 0;
  const [[x1, y1], [x2, y2]] = [outline[after - 1], outline[after]];
  return y1 + ((x1 - at) / (x1 - x2)) * (y2 - y1);
}

function expectOn(plate: PlateDef, [x, y]: Vec2, margin: number): void {
  expect(Math.abs(y) + margin).toBeLessThanOrEqual(halfWidth(plate, Math.abs(x) + margin));
}

function within(value: number, [low, high]: readonly [number, number]): void {
  expect(value).toBeGreaterThanOrEqual(low);
  expect(value).toBeLessThanOrEqual(high);
}

function frameWithoutEquipment(frame: FrameFile): FrameFile {
  const { stack: _stack, ...rest } = frame;
  const { motor, propeller } = frame.propulsion!;
  const screws = frame.bodies["screws and prints"];
  return {
    ...rest,
    bodies: { screws },
    propulsion: {
      ...frame.propulsion!,
      motor: { ...motor, mass: 0, screwMass: 0 },
      propeller: { ...propeller, mass: 0, nutMass: 0 },
    },
  };
}

describe.each(SIZE_CLASSES)("a new %s frame", (sizeClass) => {
  const text = starterFrame(sizeClass, "My frame");
  const frame = read(text);

  test("is good as it stands, and full of comments", () => {
    expect(linesOf(text)).toEqual([]);
    expect(frame.name).toBe("My frame");
    expect(text).toMatch(/"frontLeftTurns": "anticlockwise", \/\/ /);
    expect(frame.propulsion?.frontLeftTurns).toBe("anticlockwise");
    expect(text.match(/\/\//g)?.length).toBeGreaterThan(20);
    expect(text).toContain("common practice, no\n// source");
  });

  test("is of its class", () => {
    const { wheelbase, frame: bare, all } = RANGES[sizeClass];
    const [x, y] = frame.arms.arm.tip;
    within(2e3 * Math.hypot(x, y), wheelbase);
    within(1e3 * weigh(frameWithoutEquipment(frame), densityOf).mass, bare);
    within(1e3 * weigh(frame, densityOf).mass, all);
    within(Number.parseInt(sizeClass, 10) * 0.0254 * 1e3, [
      1e3 * frame.propulsion!.propeller.diameter - 0.01,
      1e3 * frame.propulsion!.propeller.diameter + 0.01,
    ]);
  });

  test("has propellers that clear each other", () => {
    const [x, y] = frame.arms.arm.tip;
    expect(2 * Math.min(x, y)).toBeGreaterThan(frame.propulsion!.propeller.diameter);
  });

  test("has arms between bottom and middle plate, reaching into both", () => {
    const { root, thickness, joint, width } = frame.arms.arm;
    if (joint.kind !== "bolted") throw new Error("not expected here");
    const inner = 1 - joint.inserted / Math.hypot(...root);
    for (const plate of joint.plates.map((name) => frame.plates[name])) {
      expect(Math.abs(plate.z)).toBeCloseTo((plate.thickness + thickness) / 2, 9);
      expectOn(plate, root, 0);
      expectOn(plate, [inner * root[0], inner * root[1]], 0);
    }
    // neighbouring arms do not run into each other inside
    expect(inner * Math.hypot(...root)).toBeGreaterThanOrEqual(width[0].width / 2);
  });

  test("has posts that stand on both plates and beside the arms", () => {
    const { at, between, section } = frame.standoffs.post;
    const radius = section.shape === "tube" ? section.outer / 2 : 0;
    for (const [x, y] of at) {
      for (const name of between) expectOn(frame.plates[name], [x, y], radius);
      const offAxis = Math.abs(x - y) / Math.SQRT2;
      const inside = Math.hypot(x, y) < Math.hypot(...frame.arms.arm.root);
      if (inside) expect(offAxis - radius).toBeGreaterThan(frame.arms.arm.width[0].width / 2);
    }
  });

  test("has room for the hole patterns of stack and candidates", () => {
    const patterns = [frame.stack!, ...Object.values(frame.candidates)];
    for (const { plate, at, holes = frame.stack!.holes } of patterns) {
      const [dx, dy] = holes.spacing.map((one) => one / 2);
      for (const sign of [1, -1]) {
        expectOn(frame.plates[plate], [at[0] + sign * dx, at[1] + dy], 0.001);
      }
    }
  });
});
