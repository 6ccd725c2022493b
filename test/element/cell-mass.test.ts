import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cellMass } from "../../src/element/cell-mass.ts";
import { polygonPoints } from "../../src/element/quadrature.ts";
import { clipToConvex, moments, oriented, rectangle } from "../../src/model/polygon.ts";
import { asymmetry, eigenvalues, form, largest, rigidMotions } from "./dense.ts";

const MASS = 3.1; // kg/m^2
const ROTARY = 0.017; // kg
const [A, B] = [1.3, 0.8];
const CORNERS = [
  [0, 0, 0],
  [A, 0, 0],
  [A, B, 0],
  [0, B, 0],
];
const CELL = rectangle(0, 0, A, B);

function massOver(polygons: readonly Float64Array[]): Float64Array {
  return cellMass(MASS, ROTARY, A, B, polygonPoints(polygons, A / 2, B / 2));
}

/** R'MR that a flat sheet of these area moments must have, about the cell's own corner. */
function sheetMass(m: ReturnType<typeof moments>): number[][] {
  const [S, x, y] = [MASS * m.area, MASS * m.x, MASS * m.y];
  const [xx, yy, xy] = [MASS * m.xx, MASS * m.yy, MASS * m.xy];
  const own = ROTARY * m.area;
  return [
    [S, 0, 0, 0, 0, -y],
    [0, S, 0, 0, 0, x],
    [0, 0, S, y, -x, 0],
    [0, 0, y, yy + own, -xy, 0],
    [0, 0, -x, -xy, xx + own, 0],
    [-y, x, 0, 0, 0, xx + yy],
  ];
}

function expectRigidMass(M: Float64Array, expected: readonly number[][]) {
  const R = rigidMotions(CORNERS);
  const scale = largest(expected.flat());
  expected.forEach((row, i) => {
    row.forEach((v, j) => {
      // 25 points per triangle of a polygon: some hundred products of order 1.
      expect(Math.abs(form(M, R[i], R[j]) - v) / scale, `entry ${i}, ${j}`).toBeLessThan(1e-13);
    });
  });
}

describe("mass of a plate cell", () => {
  test("whole cell: mass, first moments and inertia of the rectangle", () => {
    expectRigidMass(massOver([CELL]), sheetMass(moments(CELL)));
  });

  test("the part of any polygon in the cell, convex or not: its exact moments", () => {
    const coordinate = fc.double({ min: -0.6, max: 1.6, noNaN: true });
    const star = fc
      .array(fc.record({ r: coordinate, turn: fc.double({ min: 0.5, max: 1, noNaN: true }) }), {
        minLength: 4,
        maxLength: 9,
      })
      .map((spokes) => {
        // Around the cell's middle, anticlockwise: never crosses itself, seldom convex.
        const total = spokes.reduce((s, k) => s + k.turn, 0);
        let angle = 0;
        return Float64Array.from(
          spokes.flatMap(({ r, turn }) => {
            angle += (2 * Math.PI * turn) / total;
            const radius = 0.3 + Math.abs(r);
            return [A / 2 + radius * Math.cos(angle), B / 2 + radius * Math.sin(angle)];
          }),
        );
      });
    fc.assert(
      fc.property(star, (polygon) => {
        const part = clipToConvex(polygon, CELL);
        expectRigidMass(massOver([part]), sheetMass(moments(part)));
      }),
      { seed: 4, numRuns: 60 },
    );
  });

  test("a hole in the cell is taken away", () => {
    const hole = oriented(Float64Array.of(0.3, 0.2, 0.7, 0.25, 0.5, 0.6), -1);
    const [whole, less] = [moments(CELL), moments(hole)];
    const sum = Object.fromEntries(
      Object.entries(whole).map(([k, v]) => [k, v + less[k as keyof typeof less]]),
    ) as unknown as typeof whole;
    expectRigidMass(massOver([CELL, hole]), sheetMass(sum));
  });

  test("symmetric and positive semi-definite, also for a sliver", () => {
    const sliver = clipToConvex(CELL, rectangle(1.25, -1, 2, 2));
    for (const part of [CELL, sliver]) {
      const M = massOver([part]);
      expect(asymmetry(M, 24)).toBe(0);
      const m = eigenvalues(M, 24);
      expect(m[0]).toBeGreaterThan(-1e-14 * m[23]);
      expect(m[23]).toBeGreaterThan(0);
    }
  });

  test.each([
    {
      name: "w = x^3",
      field: (x: number) => [x ** 3, 0, -3 * x * x],
      kinetic: (A ** 7 / 7) * B,
      turning: ((3 * A * A) ** 2 * A * B) / 3,
    },
    {
      name: "w = x y",
      field: (x: number, y: number) => [x * y, x, -y],
      kinetic: (A ** 3 * B ** 3) / 9,
      turning: (A ** 3 * B + A * B ** 3) / 3,
    },
  ])("$name is followed exactly: integral of w^2, and of bilinear rotations", (shape) => {
    const u = CORNERS.flatMap(([x, y]) => {
      const [w, rx, ry] = shape.field(x, y);
      return [0, 0, w, rx, ry, 0];
    });
    // w,x = 3 x^2 is not bilinear: the linear interpolant 3 A x takes its place.
    const expected = MASS * shape.kinetic + ROTARY * shape.turning;
    expect(form(massOver([CELL]), u) / expected).toBeCloseTo(1, 13);
  });

  test("in the plane: u = y^2 with rz = -2 y is followed exactly, and rz bulges v between the nodes", () => {
    const u = CORNERS.flatMap(([, y]) => [y * y, 0, 0, 0, 0, -2 * y]);
    // v = -2 y A (s - 3 s^2 + 2 s^3), s = x/A: equal slopes at both ends; its square has 1/210.
    const expected = (A * B ** 5) / 5 + ((4 * B ** 3) / 3) * (A ** 3 / 210);
    expect(form(massOver([CELL]), u) / (MASS * expected)).toBeCloseTo(1, 13);
  });

  test("in the plane: v = x^2 with rz = 2 x likewise", () => {
    const u = CORNERS.flatMap(([x]) => [0, x * x, 0, 0, 0, 2 * x]);
    const expected = (A ** 5 * B) / 5 + ((4 * A ** 3) / 3) * (B ** 3 / 210);
    expect(form(massOver([CELL]), u) / (MASS * expected)).toBeCloseTo(1, 13);
  });
});
