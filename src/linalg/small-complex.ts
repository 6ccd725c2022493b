/** Complex systems of a few unknowns, many of them one after the other: nothing is allocated. */

/**
 * P A = L U by Gaussian elimination with row pivoting: A holds U with the reciprocals of its diagonal,
 * and below it L, whose diagonal is 1.
 *
 * @param Ar, Ai n x n, row-major
 * @param order row of A that stands at each place, for `solveFactored` (size n)
 * @returns false where a pivot is zero or not a number
 */
export function factorComplexInPlace(
  Ar: Float64Array,
  Ai: Float64Array,
  n: number,
  order: Int32Array,
): boolean {
  for (let k = 0; k < n; k++) order[k] = k;
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
      const row = order[k];
      order[k] = order[best];
      order[best] = row;
    }
    const d = n * k + k;
    const square = Ar[d] * Ar[d] + Ai[d] * Ai[d];
    const pr = Ar[d] / square;
    const pi = -Ai[d] / square;
    Ar[d] = pr;
    Ai[d] = pi;
    for (let i = n * (k + 1); i < n * n; i += n) {
      const ar = Ar[i + k];
      const ai = Ai[i + k];
      const fr = ar * pr - ai * pi;
      const fi = ar * pi + ai * pr;
      Ar[i + k] = fr;
      Ai[i + k] = fi;
      for (let j = k + 1; j < n; j++) {
        const ur = Ar[n * k + j];
        const ui = Ai[n * k + j];
        Ar[i + j] -= fr * ur - fi * ui;
        Ai[i + j] -= fr * ui + fi * ur;
      }
    }
  }
  return true;
}

function swapRows(A: Float64Array, n: number, i: number, j: number): void {
  for (let c = 0; c < n; c++) {
    const a = A[n * i + c];
    A[n * i + c] = A[n * j + c];
    A[n * j + c] = a;
  }
}

/**
 * X := A^-1 B with the factors of A.
 *
 * @param half columns of B
 * @param B, X n x 2 half, row-major: in each row the real parts, then the imaginary parts; not the same array
 */
export function solveFactored(
  Ar: Float64Array,
  Ai: Float64Array,
  n: number,
  order: Int32Array,
  X: Float64Array,
  B: Float64Array,
  half: number,
): void {
  const width = 2 * half;
  for (let i = 0; i < n; i++) {
    const row = width * i;
    const from = width * order[i];
    for (let c = 0; c < width; c++) X[row + c] = B[from + c];
    for (let k = 0; k < i; k++) subtractRow(X, row, width * k, half, Ar[n * i + k], Ai[n * i + k]);
  }
  for (let i = n - 1; i >= 0; i--) {
    const row = width * i;
    for (let k = i + 1; k < n; k++) {
      subtractRow(X, row, width * k, half, Ar[n * i + k], Ai[n * i + k]);
    }
    const pr = Ar[n * i + i];
    const pi = Ai[n * i + i];
    for (let c = row; c < row + half; c++) {
      const re = X[c];
      const im = X[c + half];
      X[c] = re * pr - im * pi;
      X[c + half] = re * pi + im * pr;
    }
  }
}

/** Row that begins at `to` -= (ar + i ai) row that begins at `from`. */
function subtractRow(
  X: Float64Array,
  to: number,
  from: number,
  half: number,
  ar: number,
  ai: number,
): void {
  for (let c = 0; c < half; c++) {
    const re = X[from + c];
    const im = X[from + half + c];
    X[to + c] -= ar * re - ai * im;
    X[to + half + c] -= ar * im + ai * re;
  }
}
