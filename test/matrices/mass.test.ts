import { describe, expect, test } from "vitest";
import type { Inertia } from "../../src/element/rigid-mass.ts";
import { assemble } from "../../src/matrices/assemble.ts";
import {
  type MassProperties,
  massDifference,
  massFromDrawing,
  massFromMatrices,
} from "../../src/matrices/mass.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { arm, BASE, modelOf, plateAt, post } from "../model/frame.ts";

const METAL = { kind: "isotropic", E: 70, nu: 0.3, density: 2.7 };
const materials = { metal: METAL };
const weighed = (sections: object) => {
  const model = modelOf({ materials, ...sections });
  return massFromDrawing(model, buildMesh(model));
};

describe("from the drawing, against a calculation by hand", () => {
  test("a plate with a hole and a body on a point", () => {
    const hole = {
      outline: [
        [10, -5],
        [20, -5],
        [20, 5],
        [10, 5],
      ],
    };
    const report = weighed({
      plates: { base: plateAt(4, { material: "metal", holes: [hole] }) },
      points: { eye: [0, 0, 4] },
      links: { eye: { point: "eye", plate: "base", footprint: 6 } },
      bodies: { ball: { mass: 10, at: [0, 12, 24], on: "eye" } },
    });
    // 2.7 g/cm^3 of 80 x 40 x 2 mm less 10 x 10 x 2 mm at x = 15
    const [full, cut, ball] = [17.28e-3, 0.54e-3, 10e-3];
    const mass = full - cut + ball;
    expect(report.mass).toBeCloseTo(mass, 15);
    const cg = [
      (-cut * 0.015) / mass,
      (ball * 0.012) / mass,
      ((full - cut) * 0.004 + ball * 0.024) / mass,
    ];
    cg.forEach((c, i) => {
      expect(report.cg[i]).toBeCloseTo(c, 15);
    });
    // Rectangular boxes 2 mm thick about their own middles, and a point; about z.
    const box = (m: number, a: number, b: number, x: number, y: number) =>
      m * ((a * a + b * b) / 12 + (x - cg[0]) ** 2 + (y - cg[1]) ** 2);
    const zz =
      box(full, 0.08, 0.04, 0, 0) - box(cut, 0.01, 0.01, 0.015, 0) + box(ball, 0, 0, 0, 0.012);
    expect(report.inertia.zz).toBeCloseTo(zz, 16);
    // And Iyz = -sum m y z.
    const yz = -(
      (full - cut) * (0 - cg[1]) * (0.004 - cg[2]) +
      ball * (0.012 - cg[1]) * (0.024 - cg[2])
    );
    expect(report.inertia.yz).toBeCloseTo(yz, 16);
    expect(report.parts.map((p) => [p.name, p.kind])).toEqual([
      ["base", "plate"],
      ["ball", "body"],
    ]);
  });

  test("a tapered arm between plates: free length, inserted end, pad", () => {
    const given = arm({
      material: "metal",
      thickness: 4,
      width: [16, 10],
      root: [40, 0],
      tip: [100, 0],
      z: 3,
      motorPad: 24,
      padFill: 1,
      joint: { kind: "bolted", plates: ["base"], inserted: 20 },
    });
    const { parts } = weighed({ ...BASE, arms: { arm: given } });
    const part = parts.find((p) => p.name === "arm")!;
    // Half strip of width 10 in the circle of radius 12: 10 sqrt(119)/2 + 144 asin(5/12).
    const half = 5 * Math.sqrt(144 - 25) + 144 * Math.asin(5 / 12);
    const pad = Math.PI * 144 - half;
    const area = 60 * 13 + 20 * 16 + pad; // mm^2
    expect(part.mass).toBeCloseTo(2.7e-6 * 4 * area, 14);
    // First moments about the root: taper 16 -> 10, end behind it, pad by its own centroid.
    const taper = (60 * 60 * (16 + 2 * 10)) / 6;
    const beyond = 5 * 144 - 125 / 3; // integral of x over the pad, from the tip
    const x = 40 + (taper - 20 * 16 * 10 + pad * 60 + beyond) / area;
    expect(part.cg[0]).toBeCloseTo(x * 1e-3, 12);
    expect(part.cg[2]).toBeCloseTo(3e-3, 15);
  });

  test("standoffs and smeared screws", () => {
    const { parts, mass } = weighed({
      plates: { base: plateAt(0), top: plateAt(20) },
      standoffs: { post: post([30, 10], { material: "metal", copies: "left and right" }) },
      bodies: { screws: { mass: 6, on: ["base", "top"], hold: "smeared" } },
    });
    const one = parts.find((p) => p.name === "right post")!;
    expect(one.mass).toBeCloseTo(2.7e3 * (Math.PI / 4) * 25e-6 * 18e-3, 15);
    expect(one.cg.map((c) => Math.round(c * 1e6) / 1e3)).toEqual([30, -10, 10]);
    expect(parts.find((p) => p.name === "screws")?.mass).toBeCloseTo(6e-3, 15);
    expect(parts.reduce((s, p) => s + p.mass, 0)).toBeCloseTo(mass, 14);
  });
});

describe("from the matrices", () => {
  const frame = {
    materials,
    plates: { base: plateAt(0), top: plateAt(20) },
    arms: { arm: arm({ copies: "all four corners", motorPad: 20, width: [14, 9] }) },
    standoffs: { post: post([30, 12], { copies: "all four corners" }) },
    points: { a: [0, 0, 20], b: [15, 10, 60] },
    links: { a: { point: "a", plate: "top", footprint: 6 } },
    members: {
      mast: {
        from: "a",
        to: "b",
        section: { shape: "rectangle", width: 6, height: 3 },
        material: "metal",
      },
    },
    bodies: {
      pack: { mass: 50, at: [3, 1, 30], size: [40, 25, 16], on: "top", hold: "spread" },
      tape: { mass: 6, on: ["base", "arm"], hold: "smeared" },
    },
  };

  test.each(["euler-bernoulli", "rayleigh", "timoshenko"])(
    "R'MR is the drawing's, %s",
    (theory) => {
      const model = modelOf({ ...frame, beamTheory: theory });
      for (const size of [13e-3, 6e-3]) {
        const mesh = buildMesh(model, size);
        const drawn = massFromDrawing(model, mesh);
        const assembled = massFromMatrices(assemble(mesh, model), mesh, [0.01, 0.02, -0.05]);
        expect(massDifference(drawn, assembled)).toBeLessThan(1e-11);
      }
    },
  );
});

test("the difference of two masses is relative and sees every entry", () => {
  const I: Inertia = { xx: 2, yy: 3, zz: 4, xy: 0.1, xz: 0.2, yz: 0.3 };
  const a: MassProperties = { mass: 2, cg: [0, 0, 0], inertia: I };
  expect(massDifference(a, a)).toBe(0);
  expect(massDifference(a, { ...a, mass: 2.02 })).toBeCloseTo(0.01, 12);
  expect(massDifference(a, { ...a, cg: [0, 0.3, 0] })).toBeCloseTo(0.3 / Math.sqrt(4.5), 12);
  for (const k of ["xx", "yy", "zz", "xy", "xz", "yz"] as const) {
    const off = { ...a, inertia: { ...I, [k]: I[k] + 0.09 } };
    expect(massDifference(a, off)).toBeCloseTo(0.01, 12);
  }
});
