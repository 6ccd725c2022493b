import { describe, expect, test } from "vitest";
import { PAD_TERMS, padConstant, padMatrix, padUnit } from "../../src/element/pad.ts";
import { polygonPoints } from "../../src/element/quadrature.ts";
import { asymmetry, eigenvalues, form, largest, rigidMotions, times } from "./dense.ts";

// A pad over a part of a cell of 0.3 x 0.2 m at (0.1, -0.2), plate mid-plane at z = 0.05.
const [CELL_X, CELL_Y, A, B, PLATE] = [0.1, -0.2, 0.3, 0.2, 0.05];
const FACE = 0.01;
const BODY = [0.8, 0.1, 0.4];
const K_PAD = [3, 5, 7];
const CORNERS = [
  [CELL_X, CELL_Y, PLATE],
  [CELL_X + A, CELL_Y, PLATE],
  [CELL_X + A, CELL_Y + B, PLATE],
  [CELL_X, CELL_Y + B, PLATE],
];

/** A rectangle with its lower left corner at (x, y), as the points a patch gives. */
function rectangular(x0: number, y0: number, lx: number, ly: number) {
  const shape = Float64Array.of(x0, y0, x0 + lx, y0, x0 + lx, y0 + ly, x0, y0 + ly);
  const { x, y, w } = polygonPoints([shape], CELL_X + A / 2, CELL_Y + B / 2);
  const s = x.map((v) => (v - CELL_X) / A);
  const t = y.map((v) => (v - CELL_Y) / B);
  return { s, t, x, y, w: w.map((v) => v / (lx * ly)) };
}

describe("a pad between a plate cell and a rigid body", () => {
  const points = rectangular(0.15, -0.15, 0.2, 0.1);
  const K = padMatrix(K_PAD, points, BODY, PLATE + FACE, FACE);

  test("symmetric and positive semi-definite", () => {
    expect(asymmetry(K, 30)).toBeLessThan(1e-15 * largest(K));
    const values = eigenvalues(K, 30);
    expect(values[0]).toBeGreaterThan(-1e-13 * values[29]);
  });

  test("no force when plate and body move as one", () => {
    for (const motion of rigidMotions([...CORNERS, BODY])) {
      expect(largest(times(K, motion))).toBeLessThan(1e-13 * largest(K));
    }
  });

  test("is the sum of its constants times their units", () => {
    const sum = new Float64Array(900);
    for (const term of PAD_TERMS) {
      const c = padConstant(term, K_PAD, FACE, PLATE + FACE - BODY[2]);
      padUnit(term, points, BODY).forEach((v, i) => {
        sum[i] += c * v;
      });
    }
    expect(largest(sum.map((v, i) => v - K[i]))).toBeLessThan(1e-14 * largest(K));
  });

  test("the body's shift alone stretches the whole pad", () => {
    K_PAD.forEach((k, axis) => {
      const u = new Array(30).fill(0);
      u[24 + axis] = 1;
      expect(form(K, u)).toBeCloseTo(k, 12);
    });
  });

  // Springs spread evenly over l: k l^2/12 about the pad's own middle, and the face's lever in sway.
  test("rocks as an even layer does", () => {
    const middle = [0.25, -0.1, PLATE + FACE];
    const centred = padMatrix(K_PAD, points, middle, PLATE + FACE, FACE);
    const turn = (axis: number) => {
      const u = new Array(30).fill(0);
      u[27 + axis] = 1;
      return form(centred, u);
    };
    expect(turn(0)).toBeCloseTo((K_PAD[2] * 0.1 ** 2) / 12, 14);
    expect(turn(1)).toBeCloseTo((K_PAD[2] * 0.2 ** 2) / 12, 14);
    expect(turn(2)).toBeCloseTo((K_PAD[0] * 0.1 ** 2 + K_PAD[1] * 0.2 ** 2) / 12, 14);
  });

  test("turning the plate sways its face", () => {
    const u = new Array(30).fill(0);
    for (let i = 0; i < 4; i++) u[6 * i + 4] = 1;
    expect(form(K, u)).toBeCloseTo(K_PAD[0] * FACE ** 2, 14);
  });
});
