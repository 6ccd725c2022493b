"""Thin laminated rectangles by the Ritz method: the references of coupled-plates.ts and of the strips
in ../measured/carbon-strips.ts. Not run by the tests. Needs numpy and scipy: python3 ritz.py
"""

import numpy as np
from numpy.polynomial import Polynomial, legendre
from scipy.linalg import eigh


def stiffness(E1, E2, G12, nu12, degrees, thickness):
    """A, B, D of plies of one material, bottom first; z = 0 in the middle."""
    k = 1 - nu12**2 * E2 / E1
    Q = np.array([[E1 / k, nu12 * E2 / k, 0], [nu12 * E2 / k, E2 / k, 0], [0, 0, G12]])
    A, B, D = np.zeros((3, 3, 3))
    z = -len(degrees) * thickness / 2
    for angle in np.radians(degrees):
        c, s = np.cos(angle), np.sin(angle)
        R = np.array([[c * c, s * s, c * s], [s * s, c * c, -c * s], [-2 * c * s, 2 * c * s, c * c - s * s]])
        Qbar = R.T @ Q @ R
        A += Qbar * thickness
        B += Qbar * ((z + thickness) ** 2 - z**2) / 2
        D += Qbar * ((z + thickness) ** 3 - z**3) / 3
        z += thickness
    return A, B, D


def functions(count, length, clamped):
    """Legendre polynomials (times the square of the distance from a clamped end), their first and second
    derivatives at Gauss points, and the weights."""
    points, weights = legendre.leggauss(count + 6)
    table = []
    for i in range(count):
        p = legendre.Legendre.basis(i).convert(kind=Polynomial)
        if clamped:
            p = p * Polynomial([1, 1]) ** 2
        table.append([p.deriv(n)(points) * (2 / length) ** n if n else p(points) for n in range(3)])
    return np.array(table), weights * length / 2


def frequencies(ABD, a, b, mass, inertia, nx, ny, clamped=False, bending_only=False, number=14):
    """Hz, rigid motions first. mass = rho h, inertia = rho h^3/12; clamped along x = 0."""
    X, wx = functions(nx, a, clamped)
    Y, wy = functions(ny, b, False)

    def term(left, right):
        along = np.einsum("ig,jg,g->ij", X[:, left[0]], X[:, right[0]], wx)
        across = np.einsum("ig,jg,g->ij", Y[:, left[1]], Y[:, right[1]], wy)
        return np.kron(along, across)

    # Strains as (field, derivatives in x and y, factor); fields u, v, w.
    u, v, w = 0, 1, 2
    strains = [
        [(u, (1, 0), 1)],
        [(v, (0, 1), 1)],
        [(u, (0, 1), 1), (v, (1, 0), 1)],
        [(w, (2, 0), -1)],
        [(w, (0, 2), -1)],
        [(w, (1, 1), -2)],
    ]
    n = nx * ny
    K, M = np.zeros((2, 3 * n, 3 * n))
    block = lambda field: slice(field * n, (field + 1) * n)
    for r, c in np.argwhere(ABD):
        for f, df, sf in strains[r]:
            for g, dg, sg in strains[c]:
                K[block(f), block(g)] += ABD[r, c] * sf * sg * term(df, dg)
    for field in (u, v, w):
        M[block(field), block(field)] += mass * term((0, 0), (0, 0))
    M[block(w), block(w)] += inertia * (term((1, 0), (1, 0)) + term((0, 1), (0, 1)))
    if bending_only:
        K, M = K[block(w), block(w)], M[block(w), block(w)]
    values = eigh((K + K.T) / 2, M, eigvals_only=True, subset_by_index=[0, number - 1])
    return np.sqrt(np.abs(values)) / (2 * np.pi)


def whole(A, B, D):
    return np.block([[A, B], [B, D]])


T300 = (181e9, 10.3e9, 7.17e9, 0.28)
RECALLED = (129.11e9, 9.408e9, 5.157e9, 0.30)

if __name__ == "__main__":
    for side, degrees, ply in (
        (0.2, [45, -45, 0, 90, 90, 0, -45, 45], 0.25e-3),
        (1.5, [0, 30, -45], 5e-3),
    ):
        A, B, D = stiffness(*T300, degrees, ply)
        B[np.abs(B) < 1e-9 * np.abs(A).max() * ply] = 0
        h = ply * len(degrees)
        for count in (15, 18):
            found = frequencies(whole(A, B, D), side, side, 1600 * h, 1600 * h**3 / 12, count, count)
            print("free square", degrees, count, np.round(found[6:12], 4))
    h, rho = 3.175e-3, 1550.07
    for angle in (0, 15, 30, 90):
        ABD = whole(*stiffness(*RECALLED, [angle], h))
        for nx, ny in ((30, 14), (36, 16)):
            found = frequencies(
                ABD, 0.1905, 0.0127, rho * h, rho * h**3 / 12, nx, ny, clamped=True, bending_only=True, number=6
            )
            print("clamped strip", angle, nx, ny, np.round(found, 3))
