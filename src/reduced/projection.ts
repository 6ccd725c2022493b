/**
 * Symmetric matrices seen in the space, packed: the lower triangle of V'A V row after row, then W'A V
 * (probes x width, row-major).
 */

import { multiplyBlock } from "../linalg/product.ts";
import type { SymmetricSparse } from "../linalg/sparse.ts";
import { innerProducts, lowerProducts } from "../linalg/tall.ts";
import type { Space } from "./space.ts";

type Widths = Pick<Space, "width" | "probes">;

export function packedSize({ width, probes }: Widths): number {
  return (width * (width + 1)) / 2 + probes * width;
}

/**
 * [V W]'A V, packed.
 *
 * @param rows of V and W (order of A x (width + probes), column-major)
 */
export function projection(space: Widths, A: SymmetricSparse, rows: Float64Array): Float64Array {
  return symmetricProduct(space, rows, productOf(A, rows, space.width), A.pattern.n);
}

/**
 * X'Y, packed, where its first rows are symmetric.
 *
 * @param X m x (width + probes), column-major
 * @param Y m x width, column-major
 */
export function symmetricProduct(
  space: Widths,
  X: Float64Array,
  Y: Float64Array,
  m: number,
): Float64Array {
  const { width, probes } = space;
  const out = new Float64Array(packedSize(space));
  const square = new Float64Array(width * width);
  lowerProducts(square, X, Y, width, m);
  let at = 0;
  for (let i = 0; i < width; i++) {
    out.set(square.subarray(i * width, i * width + i + 1), at);
    at += i + 1;
  }
  innerProducts(out.subarray(at), X.subarray(width * m), probes, Y, width, m);
  return out;
}

/** A X for the first columns of X (order of A x columns, column-major). */
export function productOf(A: SymmetricSparse, X: Float64Array, columns: number): Float64Array {
  const out = new Float64Array(A.pattern.n * columns);
  multiplyBlock(out, A, X, columns);
  return out;
}

/** V'A V in full (width x width) of a packed projection. */
export function squareOf({ width }: Widths, packed: Float64Array): Float64Array {
  const out = new Float64Array(width * width);
  for (let i = 0, at = 0; i < width; i++) {
    for (let j = 0; j <= i; j++) out[i * width + j] = out[j * width + i] = packed[at++];
  }
  return out;
}

/** W'A V of a packed projection (probes x width, row-major). */
export function probesOf({ width }: Widths, packed: Float64Array): Float64Array {
  return packed.subarray((width * (width + 1)) / 2);
}

/** out += c a */
export function addScaled(out: Float64Array, c: number, a: Float64Array): void {
  if (c === 0) return;
  for (let i = 0; i < out.length; i++) out[i] += c * a[i];
}
