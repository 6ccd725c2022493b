import { beforeAll, describe, expect, test } from "vitest";
import { sumMoments } from "../../src/model/polygon.ts";
import { readMotion, readScene, sceneMotion } from "../../src/report/client/scene.ts";
import type { DrawnKind, Scene, SceneMotion } from "../../src/report/client/viewer-types.ts";
import { carrierMotion, type DisplayData, displayData } from "../../src/report/display.ts";
import { armOutline } from "../../src/report/plan.ts";
import { unpackIntegers } from "../../src/report/shape-codec.ts";
import type { Analysed } from "../../src/report/types.ts";
import { fixture } from "./fixture.ts";

let analysed: Analysed;
let data: DisplayData;
let scene: Scene;
const motionOf = (mode: number): SceneMotion =>
  readMotion(scene, data.motions[mode - 1], data.steps, unpackIntegers, sceneMotion);

beforeAll(() => {
  analysed = fixture();
  data = displayData(analysed);
  scene = readScene(data.frame, unpackIntegers);
});

/** Vertices of all triangles of parts of a kind, one after the other. */
function verticesOf(kind: DrawnKind): number[] {
  return Array.from(scene.triangles).filter((_, i) => {
    return scene.kinds[scene.partOf[Math.floor(i / 3)]] === kind;
  });
}

/** Volume inside the surfaces of a kind, mm^3, by the divergence theorem. */
function volume(kind: DrawnKind): number {
  const list = verticesOf(kind);
  const { rest } = scene;
  let sum = 0;
  for (let t = 0; t < list.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => rest.subarray(3 * list[t + k], 3 * list[t + k] + 3));
    for (let k = 0; k < 3; k++) {
      const [i, j] = [(k + 1) % 3, (k + 2) % 3];
      sum += a[k] * (b[i] * c[j] - b[j] * c[i]);
    }
  }
  return sum / 6;
}

describe("the surfaces at rest", () => {
  test("hold the volume of the plates less their holes, and of the arms", () => {
    const { plates, arms } = analysed.model;
    const plate = plates.reduce(
      (sum, p) => sum + p.thickness * sumMoments([p.outline, ...p.holes]).area,
      0,
    );
    const arm = arms[0].thickness * sumMoments(arms.map(armOutline)).area;
    expect(volume("plate") / (plate * 1e9)).toBeCloseTo(1, 3);
    expect(volume("arm") / (arm * 1e9)).toBeCloseTo(1, 3);
  });

  test("lie at the parts' own heights and reach as far as they do", () => {
    const heights = new Set(verticesOf("plate").map((v) => scene.rest[3 * v + 2].toFixed(2)));
    expect([...heights].sort()).toEqual(["2.50", "4.50"]);
    expect(Math.min(...verticesOf("plate").map((v) => scene.rest[3 * v]))).toBeCloseTo(-90, 1);
  });

  test("have a box for every body with a size and a cylinder for every motor", () => {
    expect(scene.kinds.filter((k) => k === "body").length).toBe(1);
    expect(volume("stack")).toBeCloseTo(36 * 36 * 15, 0);
    expect(verticesOf("motor").length / 3).toBe(4 * (2 * 18 + 2 * 20));
  });

  test("are told apart by name and mass", () => {
    const stack = data.frame.parts.find((p) => p.kind === "stack");
    expect(stack?.words).toBe("sensor stack, 24\u00a0g");
    expect(data.frame.parts.map((p) => p.name)).toContain("front left arm");
  });

  test("mark the best place on its plate and at its chip", () => {
    const [plate, chip] = data.frame.mark ?? [Number.NaN, Number.NaN];
    const at = (v: number) => Array.from(scene.rest.subarray(3 * v, 3 * v + 3));
    expect(at(plate)).toEqual([0, 0, 3.5].map((v) => expect.closeTo(v, 2)));
    expect(at(chip)[2]).toBeCloseTo(3.5 + 1 + 9, 2);
  });
});

describe("a mode", () => {
  test("moves and turns every vertex of the plate as its shape says", () => {
    // w = xy, with theta = (x, -y): its slopes are linear in a cell, so nothing is lost but the steps.
    const { move, turn } = motionOf(2);
    const plate = [...new Set(verticesOf("plate"))];
    const w = (v: number) => scene.rest[3 * v] * scene.rest[3 * v + 1];
    const far = plate.reduce((a, b) => (Math.abs(w(b)) > Math.abs(w(a)) ? b : a));
    const scale = move[3 * far + 2] / w(far);
    const step = 0.5 / data.steps.move;
    const largest = data.motions[1].turnPerMove;
    for (const v of plate) {
      expect(Math.abs(move[3 * v + 2] - scale * w(v))).toBeLessThan(5 * step);
      const [x, y] = [scene.rest[3 * v], scene.rest[3 * v + 1]];
      const off = Math.hypot(turn[3 * v] - scale * x, turn[3 * v + 1] + scale * y);
      expect(off / largest).toBeLessThan(6 * (0.5 / data.steps.turn));
    }
  });

  test("is scaled so that the largest displacement that is drawn is 1", () => {
    for (const mode of [1, 2, 3]) {
      const { move } = motionOf(mode);
      const lengths = Array.from(scene.triangles, (v) =>
        Math.hypot(...move.subarray(3 * v, 3 * v + 3)),
      );
      expect(Math.max(...lengths)).toBeGreaterThan(0.99);
      expect(Math.max(...lengths)).toBeLessThan(1.01);
    }
  });

  test("tells how much the best place moves and turns", () => {
    const chip = data.frame.mark?.[1] ?? 0;
    for (const mode of [1, 2, 3]) {
      const { move, turn } = motionOf(mode);
      const { [mode - 1]: at } = data.atMark ?? [];
      const length = (list: Float64Array) => Math.hypot(...list.subarray(3 * chip, 3 * chip + 3));
      expect(Math.abs(at.move - length(move))).toBeLessThan(0.01);
      const most = data.motions[mode - 1].turnPerMove;
      expect(Math.abs(at.turn - length(turn) / most)).toBeLessThan(0.02);
    }
  });
});

test("carriers take displacements in mm and rotations from their nodes", () => {
  const shape = Float64Array.from([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  const { move, turn } = carrierMotion({ nodes: [1, 0] }, shape);
  expect(Array.from(move)).toEqual([7000, 1000, 8000, 2000, 9000, 3000]);
  expect(Array.from(turn)).toEqual([10, 4, 11, 5, 12, 6]);
});
