/** Shapes read at named places: their mass, their places, and whether modes stay apart on them. */

import path from "node:path";
import { describe, expect, test } from "vitest";
import { analyseModes } from "../../src/analyse.ts";
import { readFrame } from "../../src/frame/read.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { rigidMotions } from "../../src/matrices/rigid.ts";
import { assurance } from "../../src/variants/assurance.ts";
import { samplePoints, sampleShapes } from "../../src/variants/shape-samples.ts";

const sample = (name: string) =>
  readFrame(path.join(import.meta.dirname, "../../frames", `${name}.jsonc`));
const solved = (file: FrameFile, meshSize?: number) => {
  const a = analyseModes(file, { modes: 24, ...(meshSize && { meshSize }) });
  const points = samplePoints(a.model, a.mesh);
  return { ...a, points, samples: sampleShapes(points, a.modes.shapes) };
};

/** The greatest likeness between two different ones of the first modes. */
function mostAlike(frame: ReturnType<typeof solved>, count: number): number {
  const mac = assurance(frame.samples, frame.samples)!;
  let most = 0;
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < i; j++) most = Math.max(most, mac.values[i * mac.columns + j]);
  }
  return most;
}

const ten = solved(sample("ten-inch"));
const three = solved(sample("three-inch"));

describe("the samples of a frame", () => {
  const { model, mesh, mass, points } = ten;
  const rigid = sampleShapes(points, rigidMotions(mesh, mass.cg));
  const n = rigid.names.length;
  const value = (motion: number, name: string) =>
    rigid.values[motion * n + rigid.names.indexOf(name)];

  test("have names of their own", () => {
    expect(new Set(rigid.names).size).toBe(n);
  });

  test("hold the whole mass but the standoffs'", () => {
    const posts = mass.parts
      .filter((p) => p.kind === "standoff")
      .reduce((sum, p) => sum + p.mass, 0);
    for (const d of [0, 1, 2]) {
      const sum = rigid.values.subarray(d * n, (d + 1) * n).reduce((s, v) => s + v * v, 0);
      expect(sum / (mass.mass - posts)).toBeCloseTo(1, 9);
    }
  });

  test("hold the inertia nearly, as bodies turn too", () => {
    const { inertia } = mass;
    [inertia.xx, inertia.yy, inertia.zz].forEach((I, d) => {
      const turn = rigid.values.subarray((d + 3) * n, (d + 4) * n);
      expect(Math.abs(turn.reduce((s, v) => s + v * v, 0) / I - 1)).toBeLessThan(0.03);
    });
  });

  test("lie where their names say, between nodes of the mesh as on them", () => {
    const arm = model.arms[0];
    // a turn about y by 1 rad moves a point by -x upwards; the weight drops out of the ratio
    const x = (name: string) => -value(4, `${name}, z`) / value(2, `${name}, z`) + mass.cg[0];
    [0, 0.25, 0.5, 0.75, 1].forEach((f, i) => {
      const place = ["root", "1/4", "1/2", "3/4", "tip"][i];
      const expected = arm.root[0] + f * (arm.tip[0] - arm.root[0]);
      expect(x(`${arm.name}, ${place}`)).toBeCloseTo(expected, 12);
    });
    const body = model.bodies.find((b) => b.name === "battery")!;
    expect(x("battery")).toBeCloseTo(body.cg[0], 12);
    const plate = model.plates[0];
    const xs = plate.outline.filter((_, i) => i % 2 === 0);
    const [x0, x1] = [Math.min(...xs), Math.max(...xs)];
    expect(x(`${plate.name}, 2 of 5 forward, 2 of 3 left`)).toBeCloseTo(x0 + 0.3 * (x1 - x0), 12);
  });
});

test("different modes of a frame are nearly orthogonal on them", () => {
  // measured: below 0.001; the first forty stay below 0.02, those of the five-inch below 0.12
  expect(mostAlike(ten, 20)).toBeLessThan(0.01);
  expect(mostAlike(three, 20)).toBeLessThan(0.01);
});

test("a finer mesh has the same names, and the same modes look the same", () => {
  const fine = solved(sample("three-inch"), 0.7 * three.mesh.size);
  expect(fine.mesh.xyz.length).not.toBe(three.mesh.xyz.length);
  expect(fine.samples.names).toEqual(three.samples.names);
  const mac = assurance(three.samples, fine.samples)!;
  for (let k = 0; k < 12; k++) expect(mac.values[k * mac.columns + k]).toBeGreaterThan(0.98);
});
