/**
 * Gauss-Legendre rules and exact integration of polynomials over polygons.
 * Points and weights: M. Abramowitz & I. A. Stegun, Handbook of Mathematical Functions, table 25.4
 * (from memory; the tests check that each rule integrates every monomial of its degree).
 */

export interface Rule {
  /** Abscissae on [0, 1] (size n). */
  readonly x: Float64Array;
  /** Weights, summing to 1 (size n). */
  readonly w: Float64Array;
}

function onUnitInterval(points: readonly number[], weights: readonly number[]): Rule {
  return {
    x: Float64Array.from(points, (p) => (1 + p) / 2),
    w: Float64Array.from(weights, (w) => w / 2),
  };
}

/** Four points: exact to degree 7, which is a Hermite beam's mass with a linear taper. */
export const GAUSS_4: Rule = onUnitInterval(
  [-0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526],
  [0.34785484513745385, 0.6521451548625461, 0.6521451548625461, 0.34785484513745385],
);

/** Five points: exact to degree 9. */
export const GAUSS_5: Rule = onUnitInterval(
  [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664],
  [
    0.23692688505618908, 0.47862867049936647, 0.5688888888888889, 0.47862867049936647,
    0.23692688505618908,
  ],
);

/** Points and signed weights for integrating over a plane region. */
export interface PlanePoints {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly w: Float64Array;
}

/**
 * Points that integrate every polynomial of total degree <= 8 exactly over a polygon.
 *
 * The polygon is split into the triangles (centre, v_i, v_i+1) with signed area, so any simple
 * polygon works, convex or not, and the degenerate bridges that clipping leaves cancel. Each
 * triangle takes a collapsed 5 x 5 Gauss rule: x = c + s (v_i - c) + s t (v_i+1 - v_i), dA = 2 A s ds dt.
 *
 * @param polygons vertex lists x0, y0, x1, y1, ...; anticlockwise counts plus, clockwise (holes) minus
 */
export function polygonPoints(
  polygons: readonly Float64Array[],
  centreX: number,
  centreY: number,
): PlanePoints {
  const n = polygons.reduce((sum, p) => sum + p.length / 2, 0) * 25;
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  const w = new Float64Array(n);
  let k = 0;
  for (const p of polygons) {
    for (let i = 0; i < p.length; i += 2) {
      const j = (i + 2) % p.length;
      const ax = p[i] - centreX;
      const ay = p[i + 1] - centreY;
      const ex = p[j] - p[i];
      const ey = p[j + 1] - p[i + 1];
      const twiceArea = ax * ey - ay * ex;
      if (twiceArea === 0) continue;
      for (let a = 0; a < 5; a++) {
        const s = GAUSS_5.x[a];
        for (let b = 0; b < 5; b++) {
          const t = GAUSS_5.x[b];
          x[k] = centreX + s * (ax + t * ex);
          y[k] = centreY + s * (ay + t * ey);
          w[k++] = twiceArea * s * GAUSS_5.w[a] * GAUSS_5.w[b];
        }
      }
    }
  }
  return { x: x.subarray(0, k), y: y.subarray(0, k), w: w.subarray(0, k) };
}
