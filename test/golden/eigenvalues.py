"""The lowest eigenvalues of K x = lambda M x by SciPy, refined until SciPy's own error is known to be
far below 1e-9; prints one object of JSON.

usage: eigenvalues.py K.mtx M.mtx rigid elastic [--dense]

K and M are Matrix Market files as `stillpoint matrices` writes them; `rigid` says how many of the
eigenvalues are zero, `elastic` how many are wanted above these. Needs Python 3 with NumPy and SciPy,
and runs on one thread.

eigsh (ARPACK, shift-invert) alone is good to 1e-8 on such frames: softly mounted bodies on a stiff
plate, and a factor of a matrix with entries from 1 to 1e8. So it only gives the start:

1. eigsh with a shift next to zero, then again with the shift at minus the first elastic eigenvalue;
2. three rounds of inverse iteration on all its vectors, every solution refined with residuals in
   extended precision (numpy.longdouble), and Rayleigh-Ritz;
3. Rayleigh quotients in extended precision of what has come out.

The error estimate of an eigenvalue is the sum of
- the bound of Temple and Kato on the Rayleigh quotient of an approximate vector, residual^2 / gap, for
  theta = 1 / (lambda - shift) in the energy norm of K - shift M (B. N. Parlett, The Symmetric
  Eigenvalue Problem, section 10 on gaps, from memory); the gap is taken from the values found;
- the rounding of that quotient: eps (|x|' |K| |x| + lambda |x|' |M| |x|) / lambda, eps of
  numpy.longdouble. Where that is no longer than a double this term says so.

With --dense the same eigenvalues are computed by LAPACK from full matrices as well (Cholesky of
K - shift M, then eigh of L^-1 M L'^-1), which no vector can escape: that proves the set complete. It
takes 8 bytes x 3 n^2 and 1 to 20 s for 1600 to 4800 unknowns.
"""

import json
import os
import platform
import sys

os.environ["OMP_NUM_THREADS"] = os.environ["OPENBLAS_NUM_THREADS"] = "1"

import numpy
import scipy
from scipy.io import mmread
from scipy.linalg import cholesky, eigh, solve_triangular
from scipy.sparse.linalg import eigsh, splu

ROUNDS = 3
REFINEMENTS = 3
EXTENDED = numpy.longdouble
# Of the highest value wanted: what lies below is zero. So near its shift eigsh may give a zero too many.
ZERO = 1e-9


def start_shift(K, M):
    """Below zero, next to nothing beside the lowest mode: from the diagonals alone."""
    k, m = K.diagonal(), M.diagonal()
    both = (k > 0) & (m > 0)
    return -1e-6 * float(numpy.min(k[both] / m[both]))


def lowest(K, M, count, shift):
    """eigsh, ascending, from a start vector that is the same every time."""
    v0 = numpy.random.default_rng(1).standard_normal(K.shape[0])
    values, vectors = eigsh(K, count, M, sigma=shift, v0=v0)
    order = numpy.argsort(values)
    return values[order], vectors[:, order]


class Pencil:
    """K and M in extended precision, and K - shift M factorised in double."""

    def __init__(self, K, M, shift):
        self.K, self.M, self.shift = K.astype(EXTENDED), M.astype(EXTENDED), shift
        self.lu = splu(
            (K - shift * M).tocsc(),
            permc_spec="MMD_AT_PLUS_A",
            diag_pivot_thresh=0.0,
            options={"SymmetricMode": True},
        )

    def solve(self, B):
        """(K - shift M)^-1 B with residuals in extended precision."""
        X = self.lu.solve(B.astype(float)).astype(EXTENDED)
        for _ in range(REFINEMENTS):
            residual = B - (self.K @ X - self.shift * (self.M @ X))
            X = X + self.lu.solve(residual.astype(float))
        return X

    def improve(self, X):
        """One step of inverse iteration with all vectors, and Rayleigh-Ritz."""
        Y = self.solve(self.M @ X)
        Y = Y / numpy.sqrt((Y * (self.M @ Y)).sum(axis=0))
        H, G = Y.T @ (self.K @ Y), Y.T @ (self.M @ Y)
        _, S = eigh(((H + H.T) / 2).astype(float), ((G + G.T) / 2).astype(float))
        return Y @ S.astype(EXTENDED)

    def judge(self, X):
        """Rayleigh quotients, ascending, and the error estimate of each, relative to itself."""
        X = X.astype(EXTENDED)
        KX, MX = self.K @ X, self.M @ X
        mass = (X * MX).sum(axis=0)
        values = (X * KX).sum(axis=0) / mass
        R = (KX - MX * values).astype(float)
        above = values - self.shift
        weighed = numpy.abs((R * self.lu.solve(R)).sum(axis=0)) / mass
        residual = numpy.sqrt(weighed / above)
        theta = 1 / above
        distance = numpy.abs(theta[:, None] - theta[None, :])
        numpy.fill_diagonal(distance, numpy.inf)
        temple_kato = theta * residual**2 / distance.min(axis=0) * above
        sizes = abs(X)
        stiff = (sizes * (abs(self.K) @ sizes)).sum(axis=0) / mass
        heavy = (sizes * (abs(self.M) @ sizes)).sum(axis=0) / mass
        rounding = numpy.finfo(EXTENDED).eps * (stiff + abs(values) * heavy)
        error = (temple_kato + rounding) / abs(values)
        order = numpy.argsort(values)
        return values[order].astype(float), error[order].astype(float)


def dense(K, M, count, shift):
    """The same eigenvalues from full matrices."""
    L = cholesky((K - shift * M).toarray(), lower=True)
    A = solve_triangular(L, M.toarray(), lower=True)
    A = solve_triangular(L, A.T, lower=True)
    n = K.shape[0]
    theta = eigh((A + A.T) / 2, eigvals_only=True, subset_by_index=[n - count, n - 1])
    return numpy.sort(shift + 1 / theta)


def main(stiffness, mass, rigid, elastic, *flags):
    K, M = mmread(stiffness).tocsc(), mmread(mass).tocsc()
    rigid, elastic = int(rigid), int(elastic)
    count = rigid + elastic
    rough, _ = lowest(K, M, count, start_shift(K, M))
    shift = -float(rough[rough > ZERO * rough[-1]][0])
    raw, X = lowest(K, M, count, shift)
    pencil = Pencil(K, M, shift)
    for _ in range(ROUNDS):
        X = pencil.improve(X)
    values, error = pencil.judge(X)
    zeros = int(numpy.sum(numpy.abs(values) < ZERO * values[-1]))
    if zeros != rigid:
        sys.exit(f"{zeros} eigenvalues are zero where {rigid} were announced")

    def furthest(other):
        return float(numpy.max(numpy.abs(other[rigid:] / values[rigid:] - 1)))

    report = {
        "python": platform.python_version(),
        "numpy": numpy.__version__,
        "scipy": scipy.__version__,
        "extendedEpsilon": float(numpy.finfo(EXTENDED).eps),
        "options": {"shift": shift, "rounds": ROUNDS, "refinements": REFINEMENTS},
        "rigid": values[:rigid].tolist(),
        "elastic": values[rigid:].tolist(),
        "largestErrorEstimate": float(numpy.max(error[rigid:])),
        "eigshAloneDiffersBy": furthest(raw),
    }
    if "--dense" in flags:
        report["denseDiffersBy"] = furthest(dense(K, M, count, shift))
        if not report["denseDiffersBy"] < 1e-9:
            sys.exit(f"eigsh and dense algebra differ by {report['denseDiffersBy']:.1e}")
    print(json.dumps(report))


main(*sys.argv[1:])
