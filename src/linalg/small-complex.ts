/** Complex systems of a few unknowns, many of them one after the other: nothing is allocated. */

/**
 * X := A^-1 X by Gaussian elimination with row pivoting. A is destroyed.
 *
 * @param Ar, Ai n x n, row-major
 * @param Xr, Xi n x columns, row-major
 * @returns false where A is singular: X then holds no solution
 */
export function solveComplexInPlace(
  Ar: Float64Array,
  Ai: Float64Array,
  n: number,
  Xr: Float64Array,
  Xi: Float64Array,
  columns: number,
): boolean {
  for (let k = 0; k < n; k++) {
    let best = k;
    let size = 0;
    for (let i = k; i < n; i++) {
      const s = Math.abs(Ar[n * i + k]) + Math.abs(Ai[n * i + k]);
      if (s > size) {
        size = s;
        best = i;
      }
    }
    if (!(size > 0)) return false;
    if (best !== k) {
      swapRows(Ar, n, k, best);
      swapRows(Ai, n, k, best);
      swapRows(Xr, columns, k, best);
      swapRows(Xi, columns, k, best);
    }
    const pr = Ar[n * k + k];
    const pi = Ai[n * k + k];
    const d = 1 / (pr * pr + pi * pi);
    for (let i = k + 1; i < n; i++) {
      const ar = Ar[n * i + k];
      const ai = Ai[n * i + k];
      const fr = (ar * pr + ai * pi) * d;
      const fi = (ai * pr - ar * pi) * d;
      subtractTimes(Ar, Ai, n * i, n * k, k + 1, n, fr, fi);
      subtractTimes(Xr, Xi, columns * i, columns * k, 0, columns, fr, fi);
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    for (let j = k + 1; j < n; j++) {
      subtractTimes(Xr, Xi, columns * k, columns * j, 0, columns, Ar[n * k + j], Ai[n * k + j]);
    }
    const pr = Ar[n * k + k];
    const pi = Ai[n * k + k];
    const d = 1 / (pr * pr + pi * pi);
    for (let c = columns * k; c < columns * (k + 1); c++) {
      const xr = Xr[c];
      const xi = Xi[c];
      Xr[c] = (xr * pr + xi * pi) * d;
      Xi[c] = (xi * pr - xr * pi) * d;
    }
  }
  return true;
}

/** row at `to` -= (fr + i fi) row at `from`, from column `first` to before `end` */
function subtractTimes(
  R: Float64Array,
  I: Float64Array,
  to: number,
  from: number,
  first: number,
  end: number,
  fr: number,
  fi: number,
): void {
  for (let c = first; c < end; c++) {
    const xr = R[from + c];
    const xi = I[from + c];
    R[to + c] -= fr * xr - fi * xi;
    I[to + c] -= fr * xi + fi * xr;
  }
}

function swapRows(A: Float64Array, width: number, i: number, j: number): void {
  for (let c = 0; c < width; c++) {
    const a = A[width * i + c];
    A[width * i + c] = A[width * j + c];
    A[width * j + c] = a;
  }
}
