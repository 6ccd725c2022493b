/**
 * A first-order lag, e' = (m - e)/tau, followed over pairs of equal steps.
 *
 * Over a pair of length h, with x = h/tau, the input is the parabola through its three values:
 *
 *   e(h) = exp(-x) e(0) + sum over k of c_k I_k,   m = c_0 + c_1 u + c_2 u^2,  u = t/h
 *   I_k = integral of x exp(-x (1 - u)) u^k over u from 0 to 1
 *
 * Exact for inputs that are constant, linear or quadratic over each pair, whatever x; for smooth ones
 * the error falls with the fourth power of h, as in Simpson's rule.
 */

/** e(h) = decay e(0) + w[0] m(0) + w[1] m(h/2) + w[2] m(h) */
export interface PairWeights {
  readonly decay: number;
  readonly w: readonly [number, number, number];
}

/** Below this x the recursion for I_k would lose digits. */
const SMALL = 1;
/** Terms of the series for x up to SMALL, to rounding. */
const TERMS = 18;

/** @param x length of a pair of steps over the time constant, above 0 */
export function pairWeights(x: number): PairWeights {
  const [I0, I1, I2] = x < SMALL ? bySeries(x) : byParts(x);
  return { decay: Math.exp(-x), w: [I0 - 3 * I1 + 2 * I2, 4 * (I1 - I2), 2 * I2 - I1] };
}

/**
 * The lag after each pair.
 *
 * @param m input at the ends and middles of the pairs (size 2 n + 1)
 * @param start e before the first pair
 * @returns e at the ends of the pairs, `start` first (size n + 1)
 */
export function follow(
  { decay, w }: PairWeights,
  m: ArrayLike<number>,
  start: number,
): Float64Array {
  const e = new Float64Array((m.length + 1) / 2);
  e[0] = start;
  for (let i = 1; i < e.length; i++) {
    e[i] = decay * e[i - 1] + w[0] * m[2 * i - 2] + w[1] * m[2 * i - 1] + w[2] * m[2 * i];
  }
  return e;
}

/** I_0 = 1 - exp(-x), I_k = 1 - k I_(k-1)/x */
function byParts(x: number): readonly number[] {
  const I0 = -Math.expm1(-x);
  const I1 = 1 - I0 / x;
  return [I0, I1, 1 - (2 * I1) / x];
}

/** I_k = k! times the sum over j of (-1)^j x^(j+1)/(j + k + 1)! */
function bySeries(x: number): readonly number[] {
  return [0, 1, 2].map((k) => {
    let term = x / (k + 1); // k! x/(k + 1)!
    let sum = 0;
    for (let j = 0; j < TERMS; j++) {
      sum += term;
      term *= -x / (j + k + 2);
    }
    return sum;
  });
}
