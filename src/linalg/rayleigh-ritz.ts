/** The best approximations to modes within the span of given vectors. */

import { symmetricEigen } from "./dense.ts";
import { emptyBasis, extendBasis, type MassProduct, type MBasis } from "./m-basis.ts";
import { multiplyBlock } from "./product.ts";
import type { SymmetricSparse } from "./sparse.ts";
import { innerProducts, product } from "./tall.ts";

/**
 * Rayleigh-Ritz: V = orthonormalised Y, V' K V s = lambda s, phi = V s; kept M-orthogonal to
 * `rigid`. Jacobi's method for H gained no digit over reduction to tridiagonal form, even with
 * stiffness over nine decades.
 *
 * @param Y n x k, column-major
 * @returns n x (at most k), column-major, ascending
 */
export function rayleighRitz(
  K: SymmetricSparse,
  mass: MassProduct,
  rigid: MBasis,
  Y: Float64Array,
): Float64Array {
  const { n, count: r } = rigid;
  const columns = Y.length / n;
  const basis = emptyBasis(n, r + columns);
  basis.V.set(rigid.V.subarray(0, r * n));
  basis.MV.set(rigid.MV.subarray(0, r * n));
  basis.count = r;
  basis.V.set(Y, r * n);
  const { added } = extendBasis(basis, columns, mass);
  const V = basis.V.subarray(r * n, (r + added) * n);
  const KV = new Float64Array(V.length);
  multiplyBlock(KV, K, V, added);
  const H = new Float64Array(added * added);
  innerProducts(H, V, added, KV, added, n);
  for (let i = 0; i < added; i++) {
    for (let j = 0; j < i; j++) {
      H[i * added + j] = H[j * added + i] = (H[i * added + j] + H[j * added + i]) / 2;
    }
  }
  const { vectors } = symmetricEigen(H, added);
  const S = new Float64Array(added * added); // row by row
  for (let c = 0; c < added; c++) {
    for (let i = 0; i < added; i++) S[i * added + c] = vectors[c * added + i];
  }
  const out = new Float64Array(V.length);
  product(out, added, V, added, S, n);
  return out;
}
