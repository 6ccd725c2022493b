/**
 * lambda = omega a^2 sqrt(rho h/D) of thin isotropic rectangles, a the side along x, from products of
 * orthonormal Legendre polynomials (Ritz, 24 x 24 of them for free plates, 32 x 32 for clamped ones):
 * upper bounds, converged to all digits; those of plates clamped at one edge are 1e-6 to 8e-5 high, for
 * the curvature at the ends of that edge is infinite.
 */

export interface RectangleValues {
  /** a/b, and how it is written */
  readonly ratio: number;
  readonly shown: string;
  readonly nu: number;
  readonly lambda: readonly number[];
}

const plate = (shown: string, nu: number, lambda: readonly number[]): RectangleValues => {
  const [over, under = 1] = shown.split("/").map(Number);
  return { ratio: over / under, shown, nu, lambda };
};

// biome-ignore format: one plate a line
export const FREE: readonly RectangleValues[] = [
  plate("1", 0.3, [13.4682, 19.59614, 24.2702, 34.80089, 34.80089, 61.09323, 61.09323, 63.68613]),
  plate("1", 0, [15.82263, 22.37329, 22.37329, 38.6943, 38.6943, 61.67282, 61.67282, 70.42757]),
  plate("2/3", 0.3, [8.93135, 9.51701, 20.59865, 22.1822, 25.65043, 29.79099, 38.1577, 43.92608]),
  plate("1.5", 0.3, [20.09554, 21.41326, 46.34697, 49.90994, 57.71348, 67.02974, 85.85482, 98.83367]),
  plate("2.5", 0.3, [21.45394, 32.989, 59.62873, 70.80316, 116.42083, 118.26814, 140.2939, 152.77476]),
];

// biome-ignore format: one plate a line
export const CLAMPED_AT_ONE_EDGE: readonly RectangleValues[] = [
  plate("1", 0.3, [3.471, 8.5062, 21.2839, 27.1987, 30.9543, 54.1838]),
  plate("1", 0, [3.516, 9.6757, 22.0345, 28.3465, 33.7025, 58.9752]),
  plate("0.5", 0.3, [3.4928, 5.3509, 10.1805, 19.0747, 21.8379, 24.6698]),
  plate("2/3", 0.3, [3.4851, 6.388, 14.4659, 21.9147, 25.9105, 31.448]),
  plate("1.5", 0.3, [3.4534, 11.6559, 21.4652, 39.3245, 53.5414, 61.6124]),
  plate("2.5", 0.3, [3.428, 17.9616, 21.3958, 57.2155, 60.1214, 105.9251]),
  plate("5", 0.3, [3.3975, 21.2652, 33.9136, 59.6687, 103.7333, 117.3297]),
];

/** Square, clamped all round, any nu. */
export const CLAMPED_SQUARE = [35.98519, 73.39385, 73.39385, 108.2165, 131.58077, 132.20479];

/** Square, simply supported: pi^2 (m^2 + n^2). */
export const HINGED_SQUARE = [2, 5, 5, 8, 10, 10, 13, 13].map((s) => Math.PI ** 2 * s);
