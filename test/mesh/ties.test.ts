import { describe, expect, test } from "vitest";
import { rigidMotions } from "../../src/matrices/rigid.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { arm, modelOf, plateAt, post } from "../model/frame.ts";

/** Every kind of tie: standoffs, joints, both kinds of roots, bodies, links to points and plates. */
const FRAME = {
  plates: { base: plateAt(0), lid: plateAt(2), top: plateAt(25) },
  arms: {
    cut: arm(),
    bolted: arm({
      root: [-30, 15],
      tip: [-66, 63],
      z: 4,
      thickness: 2,
      joint: { kind: "bolted", plates: ["lid"], inserted: 14 },
    }),
    sleeve: arm({ root: [-38, 0], tip: [-95, -12], joint: { kind: "point", point: "hub" } }),
  },
  standoffs: { post: post([30, 12], { between: ["lid", "top"], copies: "all four corners" }) },
  joints: {
    screw: { plates: ["base", "lid"], at: [20, 10], copies: "all four corners" },
    grommet: { plates: ["base", "lid"], at: [0, -15], stiffness: { z: 50, rx: 3 } },
  },
  points: { hub: [-38, 0, 0], eye: [12, 3, 40], ear: [12, 8, 47] },
  links: {
    hub: { point: "hub", plate: "base", footprint: 8 },
    eye: { point: "eye", plate: "top", footprint: 8 },
    ear: { points: ["eye", "ear"], ties: ["x", "y", "z", "rx", "ry"] },
  },
  springs: { ear: { between: ["ear", "hub"], rz: 2 } },
  bodies: {
    board: { mass: 20, at: [0, 0, 33], size: [30, 25, 14], on: "top" },
    brick: { mass: 20, at: [10, 0, 16], size: [30, 25, 14], on: "lid", hold: "spread" },
    cap: { mass: 3, at: [12, 8, 50], on: "ear" },
    clip: { mass: 2, at: [-20, 5, 30], on: "top", screws: [[-20, 4]] },
  },
};

describe("rigid ties", () => {
  test("no rigid-body motion breaks any of them, wherever the axes are taken", () => {
    const mesh = buildMesh(modelOf(FRAME));
    expect(mesh.ties.length).toBeGreaterThan(60);
    for (const about of [
      [0, 0, 0],
      [0.3, -0.2, 0.1],
    ]) {
      for (const R of rigidMotions(mesh, about)) {
        for (const { dofs, coefs } of mesh.ties) {
          const gap = coefs.reduce((s, c, k) => s + c * R[dofs[k]], 0);
          // Metres and radians of order 1, weights that sum to 1.
          expect(Math.abs(gap)).toBeLessThan(1e-14);
        }
      }
    }
  });

  test("each names an unknown of its own row to give up", () => {
    for (const tie of buildMesh(modelOf(FRAME)).ties) {
      const at = tie.dofs.indexOf(tie.prefer);
      expect(at).toBeGreaterThanOrEqual(0);
      expect(Math.abs(tie.coefs[at])).toBeGreaterThan(0);
    }
  });
});
