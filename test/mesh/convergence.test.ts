/** What the default mesh is worth, and whether beams and plates tell the same story. */

import { describe, expect, test } from "vitest";
import { analyseModes } from "../../src/analyse.ts";
import { readFrame } from "../../src/frame/read.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { buildModel } from "../../src/model/build.ts";
import { expectClose } from "../verification/compare.ts";
import { solveFrame } from "../verification/frequencies.ts";

describe("mesh convergence", () => {
  test("five-inch sample: first 15 elastic frequencies within 1.5 % of those at half the mesh size", () => {
    const file = readFrame("frames/five-inch.jsonc");
    const { size } = buildMesh(buildModel(file));
    const [asChosen, half] = [size, size / 2].map((meshSize) =>
      analyseModes(file, { modes: 15, meshSize }).modes.described.map((m) => m.frequency),
    );
    expectClose(asChosen, half, 0.015);
  });

  test("a foot, a screw or a pad has a size of its own: a point load does not sink in with the mesh", () => {
    // A heavy lump on one screw in the middle of a plate: its frequencies settle.
    const frame = {
      materials: { sheet: { kind: "isotropic", E: 60, nu: 0.3, density: 1.5 } },
      plates: {
        base: {
          material: "sheet",
          thickness: 2,
          z: 0,
          outline: [
            [24, 16],
            [-24, 16],
            [-24, -16],
            [24, -16],
          ],
        },
      },
      bodies: {
        lump: {
          mass: 40,
          at: [7, 3, 12],
          inertia: { xx: 3000, yy: 3000, zz: 3000 },
          on: "base",
          screws: [[7, 3]],
        },
      },
    };
    const at = (meshSize: number) =>
      solveFrame(frame, { modes: 3, meshSize }).modes.described.map((m) => m.frequency);
    const [coarse, middle, fine] = [4e-3, 2e-3, 1e-3].map(at);
    fine.forEach((f, i) => {
      const [first, second] = [coarse[i] - middle[i], middle[i] - f];
      // Steps shrink at least by half; on a single node the rocking modes would fall for ever.
      expect(Math.abs(second), `mode ${i + 1}`).toBeLessThan(0.6 * Math.abs(first) + 1e-4 * f);
      expect(Math.abs(second / f), `mode ${i + 1}`).toBeLessThan(0.02);
    });
  });
});

describe("an arm as a beam and the same arm drawn into the plate's outline", () => {
  const sheet = { kind: "isotropic", E: 60, nu: 0.3, density: 1.5 };
  const plate = (outline: readonly (readonly number[])[]) => ({
    beamTheory: "timoshenko",
    meshSize: 2.5,
    materials: { sheet },
    plates: { base: { material: "sheet", thickness: 2, z: 0, outline } },
  });
  // 60 mm long, 10 mm wide, in one piece with a plate of 80 mm x 40 mm, at both ends.
  const beams = {
    ...plate([
      [40, 20],
      [-40, 20],
      [-40, -20],
      [40, -20],
    ]),
    arms: {
      arm: {
        material: "sheet",
        thickness: 2,
        root: [40, 0],
        tip: [100, 0],
        width: 10,
        copies: "front and rear",
        joint: { kind: "one piece", plate: "base" },
      },
    },
  };
  const tongues = plate([
    [40, 20],
    [-40, 20],
    [-40, 5],
    [-100, 5],
    [-100, -5],
    [-40, -5],
    [-40, -20],
    [40, -20],
    [40, -5],
    [100, -5],
    [100, 5],
    [40, 5],
  ]);

  test("the first flat-bending modes and the twisting ones agree within 5 %", () => {
    const flat = (frame: object) =>
      solveFrame(frame, { modes: 14 })
        .modes.described.filter((m) => m.motion.armEdge + m.motion.plateInPlane < 0.5)
        .map((m) => m.frequency)
        .slice(0, 8);
    // The root of a beam turns as a rigid line, a tongue's corners give way: beams are 3 to 4 % high
    // in their first modes.
    expectClose(flat(beams), flat(tongues), 0.05);
  });

  test("a strip bends in its plane as a deep beam does, with the square of the cells across", () => {
    const strip = plate([
      [0, 0],
      [100, 0],
      [100, 10],
      [0, 10],
    ]);
    const inPlane = (cells: number) =>
      solveFrame({ ...strip, meshSize: 10 / cells }, { modes: 6 }).modes.described.find(
        (m) => m.motion.plateInPlane > 0.5,
      )!.frequency;
    const beam = {
      beamTheory: "timoshenko",
      materials: { sheet },
      points: { a: [0, 0, 0], b: [100, 0, 0] },
      members: {
        strip: {
          from: "a",
          to: "b",
          section: { shape: "rectangle", width: 10, height: 2 },
          material: "sheet",
          elements: 20,
        },
      },
    };
    const edgewise = solveFrame(beam, { modes: 6 }).modes.described.find((m) =>
      m.name.includes("edgewise"),
    )!.frequency;
    // n members side by side are stiffer by 2/n^2 than the solid strip: half of that in frequency and
    // some more for shear.
    const [six, twelve] = [6, 12].map((n) => inPlane(n) / edgewise - 1);
    expect(twelve).toBeLessThan(0.015);
    expect(twelve).toBeGreaterThan(0);
    expect(Math.log2(six / twelve)).toBeGreaterThan(1.5);
  });
});
