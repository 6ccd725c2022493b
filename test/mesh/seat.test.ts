/** The board on its screws: exact for rigid motions, least squares for the rest. */

import fc from "fast-check";
import { Matrix, solve } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { rigidMotions } from "../../src/matrices/rigid.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { patchOn } from "../../src/mesh/patch.ts";
import { type Seat, seatBeside, seatMotion, seatOf } from "../../src/mesh/seat.ts";
import type { Mesh } from "../../src/mesh/types.ts";
import { buildModel } from "../../src/model/build.ts";
import { disc } from "../../src/model/polygon.ts";
import type { Candidate } from "../../src/model/types.ts";
import { frameOf, metal } from "../modes/toys.ts";

const OUTLINE = [
  [60, 24],
  [-60, 30],
  [-60, -30],
  [60, -24],
];

/** Two plates on four posts, with candidates. */
function build(candidates: object, chip = [7, -5, 3], size = 7) {
  const model = buildModel(
    frameOf({
      materials: { metal: metal({}) },
      plates: {
        low: { material: "metal", thickness: 2, z: -3, outline: OUTLINE },
        high: { material: "metal", thickness: 2, z: 20, outline: OUTLINE },
      },
      standoffs: {
        post: {
          at: [50, 20],
          copies: "all four corners",
          between: ["low", "high"],
          section: { shape: "rod", diameter: 4 },
          material: "metal",
        },
      },
      stack: {
        mass: 20,
        size: [36, 36, 12],
        plate: "low",
        at: [0, 0],
        height: 9,
        chip,
        holes: { spacing: 30 },
      },
      candidates,
    }),
  );
  return { model, mesh: buildMesh(model, size * 1e-3) };
}

const { model, mesh } = build({
  plain: { plate: "low", at: [3, -2] },
  turned: { plate: "low", at: [-20, 4], holes: { spacing: [26, 18], turned: "30 deg" } },
  below: { plate: "high", at: [10, 0], side: "below", height: 6 },
  "heads over the edge": { plate: "low", at: [44, 10], holes: { spacing: [28, 32], footprint: 5 } },
  "one hole off": {
    plate: "low",
    at: [46, 0],
    holes: { spacing: 28, turned: "45 deg", footprint: 5 },
  },
  "half off": { plate: "high", at: [54, 0], holes: { spacing: 24, footprint: 5 } },
});

const at = (m: Mesh, c: Candidate) => seatOf(m.grids[c.plate], c.holes, c.footprint, c.chip);

function seatAt(m: Mesh, c: Candidate): Seat {
  const seat = at(m, c);
  if (!seat) throw new Error("no plate there");
  return seat;
}

/** Screw heads that meet the plate. */
function heads(m: Mesh, c: Candidate) {
  return c.holes.flatMap(([x, y]) => {
    const patch = patchOn(m.grids[c.plate], disc(x, y, c.footprint, 12));
    return patch ? [patch] : [];
  });
}

describe("a rigid motion is read exactly", () => {
  test.each(model.candidates.map((c) => [c.name, c] as const))("at %s", (_, c) => {
    const seat = seatAt(mesh, c);
    const motion = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), {
      minLength: 6,
      maxLength: 6,
    });
    fc.assert(
      fc.property(motion, ([tx, ty, tz, p, q, r]) => {
        const R = rigidMotions(mesh, [0, 0, 0]);
        const u = R[0].map((_, i) => [tx, ty, tz, p, q, r].reduce((s, a, k) => s + a * R[k][i], 0));
        const [x, y, z] = c.chip;
        const expected = [tx + q * z - r * y, ty + r * x - p * z, tz + p * y - q * x, p, q, r];
        seatMotion(seat, u).forEach((v, i) => {
          expect(v).toBeCloseTo(expected[i], 11);
        });
      }),
      { numRuns: 20 },
    );
  });

  test("the places are what their names say", () => {
    expect(model.candidates.map((c) => heads(mesh, c).length)).toEqual([4, 4, 4, 4, 3, 2]);
    const z = model.candidates.map((c) => c.chip[2] * 1e3);
    // plate -3, half its thickness 1, height 9 and chip 3; below: 20 - 1 - 6 - 3
    expect(z[0]).toBeCloseTo(10, 9);
    expect(z[2]).toBeCloseTo(10, 9);
    const [a, b] = model.candidates[1].holes;
    expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo(18e-3, 12);
    expect(Math.atan2(a[0] - b[0], -(a[1] - b[1]))).toBeCloseTo((-150 * Math.PI) / 180, 9);
  });
});

describe("a plate that bends", () => {
  /** A motion of every node that is anything but rigid. */
  const wild = Float64Array.from(
    { length: 2 * mesh.xyz.length },
    (_, i) => Math.sin(1.7 * i) * 1e-3,
  );

  test.each(model.candidates.slice(0, 5).map((c) => [c.name, c] as const))(
    "the board at %s follows its screws by least squares",
    (_, c) => {
      const patches = heads(mesh, c);
      // rows of t + theta x d = mean motion under each head, unknowns t and theta about the origin
      const rows: number[][] = [];
      const right: number[] = [];
      for (const { nodes, weights, centre } of patches) {
        const [x, y, z] = centre;
        rows.push([1, 0, 0, 0, z, -y], [0, 1, 0, -z, 0, x], [0, 0, 1, y, -x, 0]);
        for (let d = 0; d < 3; d++) {
          right.push(nodes.reduce((sum, n, k) => sum + weights[k] * wild[6 * n + d], 0));
        }
      }
      const x = solve(new Matrix(rows), Matrix.columnVector(right), true).to1DArray();
      const [tx, ty, tz, p, q, r] = x;
      const [cx, cy, cz] = c.chip;
      const chip = [tx + q * cz - r * cy, ty + r * cx - p * cz, tz + p * cy - q * cx];
      seatMotion(seatAt(mesh, c), wild).forEach((v, i) => {
        expect(v).toBeCloseTo([...chip, p, q, r][i], 11);
      });
    },
  );

  test("a plate bent to a cylinder tips the board by its slope there", () => {
    const [c] = model.candidates;
    const curvature = 0.8;
    const u = new Float64Array(2 * mesh.xyz.length);
    for (let n = 0; n < mesh.xyz.length / 3; n++) {
      const x = mesh.xyz[3 * n];
      u[6 * n + 2] = (curvature * x * x) / 2;
      u[6 * n + 4] = -curvature * x; // ry = -dw/dx
    }
    const [, , , rx, ry, rz] = seatMotion(seatAt(mesh, c), u);
    // the field under a head is taken as bilinear between grid points: not quite a parabola
    expect(ry / (-curvature * c.x)).toBeCloseTo(1, 2);
    expect(Math.hypot(rx, rz)).toBeLessThan(1e-9);
  });
});

test.each(model.candidates.map((c) => [c.name, c] as const))(
  "another point of the board at %s has the seat that is computed for it",
  (_, c) => {
    const lever = [12e-3, -7e-3, 5e-3] as const;
    const other = seatAt(mesh, {
      ...c,
      chip: [c.chip[0] + lever[0], c.chip[1] + lever[1], c.chip[2] + lever[2]],
    });
    const beside = seatBeside(seatAt(mesh, c), lever);
    expect(beside.dofs).toEqual(other.dofs);
    beside.rows.forEach((v, k) => {
      expect(v).toBeCloseTo(other.rows[k], 13);
    });
  },
);

test("with no plate under it there is no reading", () => {
  const [c] = model.candidates;
  const away = {
    ...c,
    x: 0.5,
    y: 0.5,
    holes: c.holes.map(([x, y]) => [x + 0.5, y + 0.5] as const),
  };
  expect(at(mesh, away)).toBeUndefined();
});
