/** Outcomes of made-up systems whose modes are known beforehand. */

import { symmetricEigen } from "../../src/linalg/dense.ts";
import type { Outcome, ShapeSamples } from "../../src/variants/types.ts";

/** Numbers that each degree of freedom stands for, so that enough names are shared. */
const EACH = 7;

/** Samples of shapes given in a few orthonormal coordinates. */
export function samplesOf(
  shapes: readonly (readonly number[])[],
  part = (dof: number) => `part ${dof}`,
): ShapeSamples {
  const n = shapes[0]?.length ?? 0;
  const names = Array.from({ length: n * EACH }, (_, k) => {
    return `${part(Math.floor(k / EACH))}, place ${k % EACH}, z`;
  });
  const values = Float64Array.from(
    shapes.flatMap((shape) => names.map((_, k) => shape[Math.floor(k / EACH)] * ((k % EACH) + 1))),
  );
  return { names, values };
}

export function madeOutcome(
  frequencies: readonly number[],
  shapes: readonly (readonly number[])[],
  more: Partial<Outcome> = {},
): Outcome {
  return {
    mass: 0.5,
    cg: [0, 0, 0],
    hover: 1500,
    frequencies: Float64Array.from(frequencies),
    lossFactors: new Float64Array(frequencies.length).fill(0.02),
    shapes: samplesOf(shapes),
    spots: [],
    meetings: [],
    solution: { method: "exact", error: 0 },
    warnings: [],
    moved: [],
    ...more,
  };
}

/** Masses of 1 kg on springs: K in (rad/s)^2, row after row. */
export function massesOnSprings(K: readonly (readonly number[])[]): Outcome {
  const n = K.length;
  const { values, vectors } = symmetricEigen(Float64Array.from(K.flat()), n);
  return madeOutcome(
    Array.from(values, (l) => Math.sqrt(l) / (2 * Math.PI)),
    Array.from({ length: n }, (_, k) => Array.from(vectors.subarray(k * n, (k + 1) * n))),
  );
}

/** (rad/s)^2 of a frequency in Hz. */
export const square = (f: number) => (2 * Math.PI * f) ** 2;

/** e_i turned by an angle in the plane of i and j. */
export function turned(
  n: number,
  turns: readonly (readonly [number, number, number])[],
): number[][] {
  const Q = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => +(i === j)));
  for (const [i, j, angle] of turns) {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const [a, b] = [Q[i], Q[j]];
    Q[i] = a.map((v, k) => c * v + s * b[k]);
    Q[j] = b.map((v, k) => c * v - s * a[k]);
  }
  return Q;
}
