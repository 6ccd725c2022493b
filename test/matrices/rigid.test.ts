import { describe, expect, test } from "vitest";
import { multiply } from "../../src/linalg/product.ts";
import { assemble } from "../../src/matrices/assemble.ts";
import { freeRigidMotions } from "../../src/matrices/rigid.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { largest } from "../element/dense.ts";
import { modelOf, plateAt } from "../model/frame.ts";

/** A plate with two named points on it, held in some way. */
function freeMotions(held: object) {
  const model = modelOf({
    plates: { base: plateAt(0) },
    points: { a: [-30, 0, 0], b: [30, 10, 0] },
    links: {
      a: { point: "a", plate: "base", footprint: 6 },
      b: { point: "b", plate: "base", footprint: 6 },
    },
    ...held,
  });
  const mesh = buildMesh(model, 10e-3);
  const system = assemble(mesh, model);
  return { system, free: freeRigidMotions(mesh, system.reduction, [0.001, 0.002, 0]) };
}

const at = (point: string, fix: string | string[]) => ({ point, fix });
const corner = (x: number, y: number) => [x, y];
const EVERYWHERE = [corner(-50, -30), corner(50, -30), corner(50, 30), corner(-50, 30)];

describe("rigid-body motions that are left", () => {
  test.each([
    { how: "nothing held", held: {}, left: 6 },
    { how: "clamped", held: { supports: { a: at("a", "all") } }, left: 0 },
    { how: "a ball joint", held: { supports: { a: at("a", ["x", "y", "z"]) } }, left: 3 },
    {
      how: "two ball joints: turning about the line between them",
      held: { supports: { a: at("a", ["x", "y", "z"]), b: at("b", ["x", "y", "z"]) } },
      left: 1,
    },
    {
      how: "the plane of the plate held everywhere",
      held: { supports: { in: { plate: "base", within: EVERYWHERE, fix: ["x", "y", "rz"] } } },
      left: 3,
    },
    {
      how: "one edge hinged",
      held: {
        supports: {
          edge: { plate: "base", along: [corner(-40, -20), corner(-40, 20)], fix: ["x", "y", "z"] },
        },
      },
      left: 1,
    },
    { how: "one spring", held: { springs: { s: { between: ["a", "ground"], z: 5 } } }, left: 5 },
    {
      how: "springs between points of the frame",
      held: { springs: { s: { between: ["a", "b"], x: 5, rz: 2 } } },
      left: 6,
    },
  ])("$how: $left", ({ held, left }) => {
    const { system, free } = freeMotions(held);
    expect(free.length).toBe(left);
    const { K } = system;
    for (const q of free) {
      expect(largest(q)).toBeGreaterThan(0);
      const f = new Float64Array(q.length);
      multiply(f, K, q);
      expect(largest(f) / (largest(K.values) * largest(q))).toBeLessThan(1e-13);
    }
  });
});
