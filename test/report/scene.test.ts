import { describe, expect, test } from "vitest";
import { readMotion, readScene, sceneMotion } from "../../src/report/client/scene.ts";
import { packIntegers, unpackIntegers } from "../../src/report/shape-codec.ts";
import { DRAWN, FIRST, moved } from "./drawn.ts";

const scene = readScene(DRAWN, unpackIntegers);
const count = scene.rest.length / 3;
const at = (values: Float64Array, v: number) => Array.from(values.subarray(3 * v, 3 * v + 3));

/** Volume enclosed by a part's triangles, by the divergence theorem; positive if they face outwards. */
function volume(part: number): number {
  let sum = 0;
  scene.partOf.forEach((p, t) => {
    if (p !== part) return;
    const [a, b, c] = [0, 1, 2].map((k) => at(scene.rest, scene.triangles[3 * t + k]));
    sum +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
  });
  return sum / 6;
}

describe("surfaces", () => {
  test("are closed and face outwards: they enclose the volumes of the bodies", () => {
    expect(volume(0)).toBeCloseTo(40 * 20 * 2, 9);
    expect(volume(1)).toBeCloseTo(12 * 6 * 8, 9);
    // Eight triangles of two radii at 45 degrees; places are written in hundredths.
    expect(volume(2)).toBeCloseTo(12 * 8 * 0.5 * 2 * 2 * Math.SQRT1_2, 0);
  });

  test("lie where the drawing has them", () => {
    expect(at(scene.rest, FIRST.inside)).toEqual([0, 0, 0]);
    expect(at(scene.rest, FIRST.inside + 1)).toEqual([-10, 6, 0].map((v) => expect.closeTo(v, 9)));
    expect([scene.low, scene.high]).toEqual([
      [-20, -10, -1],
      [20, 10, 13],
    ]);
  });

  test("have their edges, a round body's own among them", () => {
    expect(scene.edgePart.filter((p) => p === 0).length).toBe(8);
    expect(scene.edgePart.filter((p) => p === 1).length).toBe(12);
    expect(scene.soft.reduce((a, b) => a + b)).toBe(8);
  });
});

describe("motion of the vertices", () => {
  test("is a rigid rotation and shift where the carriers are moved so", () => {
    const [theta, shift] = [
      [0.01, -0.02, 0.03],
      [0.4, -0.1, 0.2],
    ];
    const rigid = (x: number, y: number, z: number) => [
      shift[0] + theta[1] * z - theta[2] * y,
      shift[1] + theta[2] * x - theta[0] * z,
      shift[2] + theta[0] * y - theta[1] * x,
    ];
    const { move, turn } = moved(scene, (x, y, z) => [...rigid(x, y, z), ...theta]);
    for (let v = 0; v < count; v++) {
      const [x, y, z] = at(scene.rest, v);
      rigid(x, y, z).forEach((u, k) => {
        expect(move[3 * v + k]).toBeCloseTo(u, 12);
      });
      expect(at(turn, v)).toEqual(theta.map((t) => expect.closeTo(t, 12)));
    }
  });

  // Bent surfaces that twelve terms hold: w with its slopes dw/dx, dw/dy.
  test.each<[string, (x: number, y: number) => readonly [number, number, number]]>([
    ["x^2", (x) => [x * x, 2 * x, 0]],
    ["xy", (x, y) => [x * y, y, x]],
    ["y^3", (_, y) => [y ** 3, 0, 3 * y * y]],
    ["x^3 y", (x, y) => [x ** 3 * y, 3 * x * x * y, x ** 3]],
    ["x y^3", (x, y) => [x * y ** 3, y ** 3, 3 * x * y * y]],
    ["x^2 y", (x, y) => [x * x * y, 2 * x * y, x * x]],
  ])("bends within a cell as %s says", (_, w) => {
    const { move, turn } = moved(scene, (x, y) => {
      const [deflection, along, across] = w(x, y);
      return [0, 0, deflection, across, -along, 0];
    });
    for (const v of [FIRST.inside, FIRST.inside + 1]) {
      const [x, y] = at(scene.rest, v);
      expect(move[3 * v + 2]).toBeCloseTo(w(x, y)[0], 8);
    }
    // The skins follow their middle surface with its rotation: the upper one is 1 mm above.
    const top = FIRST.skins;
    const under = scene.skins[scene.fixed.length];
    const lift = scene.rest[3 * top + 2] - scene.rest[3 * under + 2];
    expect(Math.abs(lift)).toBe(1);
    expect(move[3 * top] - move[3 * under]).toBeCloseTo(turn[3 * under + 1] * lift, 12);
    expect(move[3 * top + 1] - move[3 * under + 1]).toBeCloseTo(-turn[3 * under] * lift, 12);
  });

  test("comes back from the page within half a step", () => {
    const steps = { move: 300, turn: 120 };
    const random = (i: number) => Math.sin(12.9898 * (i + 1)); // any numbers from -1 to 1
    const n = 3 * scene.carriers;
    const moves = Array.from({ length: n }, (_, i) => random(i));
    const turns = Array.from({ length: n }, (_, i) => random(i + n));
    const turnPerMove = 0.04;
    const packed = {
      move: packIntegers(moves.map((v) => Math.round(v * steps.move))),
      turn: packIntegers(turns.map((v) => Math.round(v * steps.turn))),
      turnPerMove,
    };
    const back = readMotion(scene, packed, steps, unpackIntegers, sceneMotion);
    for (let i = 0; i < scene.carriers; i++) {
      for (let k = 0; k < 3; k++) {
        const [u, theta] = [moves, turns].map((list) => list[k * scene.carriers + i]);
        expect(Math.abs(back.move[3 * i + k] - u)).toBeLessThanOrEqual(0.5 / 300 + 1e-12);
        const off = Math.abs(back.turn[3 * i + k] / turnPerMove - theta);
        expect(off).toBeLessThanOrEqual(0.5 / 120 + 1e-12);
      }
    }
  });
});
