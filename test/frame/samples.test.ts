import { describe, expect, test } from "vitest";
import { readFrame } from "../../src/frame/read.ts";
import type { FrameFile, PlateDef } from "../../src/frame/types.ts";
import type { Vec2 } from "../../src/frame/types-basic.ts";
import type { HolePattern } from "../../src/frame/types-stack.ts";
import { LIBRARY_MATERIALS } from "../../src/material/library-materials.ts";
import { LIBRARY_PLIES } from "../../src/material/library-plies.ts";
import { outlineMoments, weigh } from "./weigh.ts";

const LIBRARY = {
  libraryMaterials: LIBRARY_MATERIALS.map(({ id }) => id),
  libraryPlies: LIBRARY_PLIES.map(({ id }) => id),
};

/** The weights the four frames were drawn for (invented): g, mm. */
const SAMPLES = [
  { file: "three-inch", mass: 187.2, cg: [-2.0, 0, 19.7] },
  { file: "five-inch", mass: 734.4, cg: [-2.2, 0, 29.4] },
  { file: "seven-inch", mass: 1153.3, cg: [3.5, 0, 33.7] },
  { file: "ten-inch", mass: 3550.7, cg: [-2.7, 0, 13.8] },
];

function sample(file: string): FrameFile {
  return readFrame(`frames/${file}.jsonc`, LIBRARY);
}

function densityIn(frame: FrameFile): (name: string) => number {
  return (name) => {
    const own = frame.materials[name];
    if (own !== undefined && own.kind !== "laminate") return own.density;
    if (own !== undefined) return LIBRARY_PLIES.find(({ id }) => id === own.ply)!.ply.density;
    const { material } = LIBRARY_MATERIALS.find(({ id }) => id === name)!;
    if (material.kind === "laminate") throw new Error("no rule for a laminate of the library");
    return material.density;
  };
}

/** Half width of a plate at x, from the half or quarter that is drawn. */
function halfWidth({ outline, symmetry }: PlateDef, x: number): number {
  const at = symmetry === "all four corners" ? Math.abs(x) : x;
  for (let i = 1; i < outline.length; i++) {
    const [[x1, y1], [x2, y2]] = [outline[i - 1], outline[i]];
    if (at <= x1 && at >= x2) return y1 + ((x1 - at) / (x1 - x2)) * (y2 - y1);
  }
  const [lastX, lastY] = outline[outline.length - 1];
  return symmetry === "all four corners" && at <= lastX ? lastY : 0;
}

function isOn(plate: PlateDef, [x, y]: Vec2, margin = 0): boolean {
  return Math.abs(y) + margin <= halfWidth(plate, x);
}

function holesOf({ spacing: [a, b], turned }: HolePattern, [x, y]: Vec2): Vec2[] {
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  return [
    [a, b],
    [a, -b],
    [-a, b],
    [-a, -b],
  ].map(([u, v]): Vec2 => [x + (c * u - s * v) / 2, y + (s * u + c * v) / 2]);
}

describe.each(SAMPLES)("$file", ({ file, mass, cg }) => {
  const frame = sample(file);

  test("weighs what it was drawn for, within 2 %", () => {
    const found = weigh(frame, densityIn(frame)).mass * 1e3;
    expect(Math.abs(found / mass - 1)).toBeLessThan(0.02);
  });

  test("balances where it was drawn to, within 1.5 mm", () => {
    const found = weigh(frame, densityIn(frame)).cg.map((value) => value * 1e3);
    for (const axis of [0, 1, 2]) expect(Math.abs(found[axis] - cg[axis])).toBeLessThan(1.5);
  });

  test("says that it is invented", () => {
    expect(frame.notes.join(" ")).toMatch(/^Invented /);
  });

  test("its arms lie between their plates, or are cut from one", () => {
    for (const { joint, thickness, z, root } of Object.values(frame.arms)) {
      if (joint.kind === "point") throw new Error("not expected in the samples");
      const plates = joint.kind === "bolted" ? joint.plates : [joint.plate];
      for (const plate of plates.map((name) => frame.plates[name])) {
        const apart = joint.kind === "bolted" ? (plate.thickness + thickness) / 2 : 0;
        expect(Math.abs(plate.z - z)).toBeCloseTo(apart, 12);
        expect(isOn(plate, root)).toBe(true);
      }
    }
  });

  test("its posts, joints, screws and stack holes are on their plates", () => {
    const places: (readonly [string, Vec2, number])[] = [
      ...Object.values(frame.standoffs).flatMap(({ at, between, section }) => {
        const radius = section.shape === "tube" ? section.outer / 2 : 0;
        return between.flatMap((plate) => at.map((one) => [plate, one, radius] as const));
      }),
      ...Object.values(frame.joints).flatMap(({ at, plates, footprint }) =>
        plates.flatMap((plate) => at.map((one) => [plate, one, footprint / 2] as const)),
      ),
      ...Object.values(frame.bodies).flatMap(({ on, screws = [] }) =>
        screws.map((one) => [on[0], one, 0.001] as const),
      ),
      ...holesOf(frame.stack!.holes, frame.stack!.at).map(
        (one) => [frame.stack!.plate, one, 0.001] as const,
      ),
    ];
    for (const [plate, at, margin] of places)
      expect([plate, at, isOn(frame.plates[plate], at, margin)]).toEqual([plate, at, true]);
  });

  test("every body that has a place is over its plate or at its arm", () => {
    for (const { on, at } of Object.values(frame.bodies)) {
      const plate = frame.plates[on[0]];
      if (at !== undefined && plate !== undefined) expect(isOn(plate, [at[0], at[1]])).toBe(true);
    }
  });

  test("the stack is one of the candidates", () => {
    const here = Object.values(frame.candidates).filter(
      ({ plate, at }) => plate === frame.stack?.plate && `${at}` === `${frame.stack.at}`,
    );
    expect(here).toHaveLength(1);
  });
});

describe("what makes each sample special", () => {
  test("three-inch is cut in one piece", () => {
    expect(sample("three-inch").arms.arm.joint).toEqual({ kind: "one piece", plate: "base" });
  });

  test("seven-inch: a deck that overhangs by 80 mm, and a laminate of its own for the arms", () => {
    const { plates, materials } = sample("seven-inch");
    const tail = (plate: PlateDef) => Math.min(...plate.outline.map(([x]) => x));
    expect(tail(plates["rear deck"])).toBeCloseTo(-0.156, 12);
    expect(tail(plates.middle)).toBeCloseTo(-0.076, 12);
    const gap = plates["rear deck"].z - plates.middle.z;
    expect(gap).toBeCloseTo((plates["rear deck"].thickness + plates.middle.thickness) / 2, 12);
    expect(materials["arm laminate"].kind).toBe("laminate");
  });

  test("ten-inch: the board is more than 50 mm ahead of the centre of gravity", () => {
    const frame = sample("ten-inch");
    const { cg } = weigh(frame, densityIn(frame));
    expect(frame.stack!.at[0] - cg[0]).toBeGreaterThan(0.05);
    expect(frame.materials["deck stock"].kind).toBe("measured");
  });
});

test("outlineMoments: a rectangle drawn by its half and by its quarter", () => {
  const rectangle = { ...sample("five-inch").plates.bottom };
  const half: Vec2[] = [
    [0.03, 0.01],
    [-0.01, 0.01],
  ];
  const byHalf = outlineMoments({ ...rectangle, symmetry: "left and right", outline: half });
  expect(byHalf.area).toBeCloseTo(0.04 * 0.02, 15);
  expect(byHalf.x).toBeCloseTo(0.01, 15);
  const quarter = outlineMoments({ ...rectangle, outline: [[0.03, 0.01]] });
  expect(quarter.area).toBeCloseTo(0.06 * 0.02, 15);
});
