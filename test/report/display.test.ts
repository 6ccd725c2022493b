import { beforeAll, describe, expect, test } from "vitest";
import { sumMoments } from "../../src/model/polygon.ts";
import { lineVertices, vertexMotion } from "../../src/report/client/geometry.ts";
import { type DisplayData, displayData } from "../../src/report/display.ts";
import { carrierMotion } from "../../src/report/display-draft.ts";
import { armOutline } from "../../src/report/plan.ts";
import { unpackUnit } from "../../src/report/shape-codec.ts";
import type { Analysed } from "../../src/report/types.ts";
import { fixture } from "./fixture.ts";

let analysed: Analysed;
let data: DisplayData;
let rest: Float64Array;

beforeAll(() => {
  analysed = fixture();
  data = displayData(analysed);
  rest = vertexMotion(data, data.places);
});

/** Area seen from above of triangles, mm^2. */
function area(triangles: readonly number[]): number {
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => triangles[t + k]);
    const cross = (i: number, j: number) =>
      (rest[3 * b + i] - rest[3 * a + i]) * (rest[3 * c + j] - rest[3 * a + j]);
    sum += Math.abs(cross(0, 1) - cross(1, 0)) / 2;
  }
  return sum;
}

describe("the surface at rest", () => {
  test("has the area of the plates less their holes, and of the arms", () => {
    const { plates, arms } = analysed.model;
    const plate = sumMoments(plates.flatMap((p) => [p.outline, ...p.holes])).area;
    // Of an arm only its free length is drawn.
    const free = arms.map((a) => ({ ...a, held: { kind: "point", point: "" } as const }));
    const arm = sumMoments(free.map(armOutline)).area;
    expect(area(data.surface) / 1e6).toBeCloseTo(plate + arm, 6);
  });

  test("lies at the parts' own heights and reaches as far as they do", () => {
    const xs = data.surface.map((v) => rest[3 * v]);
    const zs = new Set(data.surface.map((v) => Number(rest[3 * v + 2].toFixed(3))));
    expect([...zs].sort()).toEqual([0, 3.5]);
    expect(Math.min(...xs)).toBeCloseTo(-90, 1);
  });

  test("has borders that close", () => {
    const outline = data.lines[0];
    expect(outline[0]).toBe(outline.at(-1));
    expect(outline.length).toBeGreaterThan(30);
  });

  test("has a box with twelve triangles for every body with a size and every motor", () => {
    expect(data.boxes.surface.length).toBe(3 * 12 * (1 + 1 + 4));
    const [x, y, z] = [0, 1, 2].map((k) => {
      const at = data.boxes.surface.slice(-36).map((v) => rest[3 * v + k]);
      return Math.max(...at) - Math.min(...at);
    });
    expect([x, y, z].map((v) => Number(v.toFixed(2)))).toEqual([36, 36, 15]);
  });

  test("marks the best place on its plate and at its chip", () => {
    const [plate, chip] = data.mark ?? [Number.NaN, Number.NaN];
    expect(Array.from(rest.subarray(3 * plate, 3 * plate + 3))).toEqual([0, 0, 3.5]);
    expect(rest[3 * chip + 2]).toBeCloseTo(3.5 + 1 + 9, 6);
  });
});

describe("a mode", () => {
  test("moves every vertex of the plate as its shape says", () => {
    // w = x y is bilinear, so the followers between the nodes are exact too.
    const motion = vertexMotion(data, unpackUnit(data.shapes[1]));
    const plate = [...new Set(data.surface)].filter((v) => Math.abs(rest[3 * v + 2] - 3.5) < 1e-6);
    const at = (v: number) => rest[3 * v] * rest[3 * v + 1] * 1e-6;
    const far = plate.reduce((a, b) => (Math.abs(at(b)) > Math.abs(at(a)) ? b : a));
    const scale = motion[3 * far + 2] / at(far);
    const worst = Math.max(...plate.map((v) => Math.abs(motion[3 * v + 2] - scale * at(v))));
    expect(worst).toBeLessThan(1.5 / 2047);
  });

  test("is scaled so that the largest motion is 1", () => {
    for (const shape of data.shapes) {
      const carriers = unpackUnit(shape);
      const lengths = Array.from({ length: carriers.length / 3 }, (_, i) =>
        Math.hypot(...carriers.subarray(3 * i, 3 * i + 3)),
      );
      expect(Math.max(...lengths)).toBeCloseTo(1, 3);
    }
  });

  test("turns what is fixed to a node about the node: u + theta x r", () => {
    const mesh = { ...analysed.mesh, xyz: Float64Array.of(0, 0, 0) };
    const shape = Float64Array.of(0, 0, 0, 0, 0, 1);
    const motion = carrierMotion({ mesh, nodes: [0, 0], places: [2, 0, 0, 0, 1, 5] }, shape);
    expect(Array.from(motion, (v) => v + 0)).toEqual([0, 1, 0, -0.5, 0, 0]);
  });
});

test("lines are put one after the other with gaps", () => {
  expect(lineVertices([[1, 2], [3]])).toEqual([1, 2, -1, 3, -1]);
});
