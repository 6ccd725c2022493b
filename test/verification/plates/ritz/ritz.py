#!/usr/bin/env python3
"""Natural frequencies of thin plates of any outline by the method of Ritz: the reference values of the
plates in shapes.json, computed independently of the program.

Deflections are C1 splines of high degree on a grid of rectangles: products of one-dimensional Hermite
cubics and bubbles (twice integrated Legendre polynomials). Strain and kinetic energy of a Kirchhoff
plate, rotary inertia rho h^3/12 included, are integrated over the covered part of each rectangle, round
holes as true circles. The space is a conforming one, so every value is an upper bound.

Bending at a corner that points into the plate has infinite curvature there. Grid lines run through such
corners and crowd towards them, each interval a fifth of the next; functions of the crowded lines are
added level by level (hierarchical basis), which keeps the matrices well conditioned.

    python3 -B ritz.py     solves every plate on two meshes, writes ritz.json; three minutes
    npm run format         lays ritz.json out as the project does
"""

import json
import platform
from math import pi
from pathlib import Path

import numpy as np
import scipy
from outline import Outline, gauss_rule
from scipy.linalg import eigh
from scipy.sparse import coo_matrix, diags, kron
from scipy.sparse.linalg import LinearOperator, eigsh, splu
from splines import Axis

HERE = Path(__file__).parent
MODES = 8
# Stiffness of the void in cut cells, as a share: keeps functions apart that hardly touch the plate.
FILLER = 1e-11


def energies(outline, x, y, degree, D, mass, rotary):
    """Sparse G and R in the nodal basis: strain energy |G c|^2/2, kinetic energy |omega R c|^2/2."""
    root = np.linalg.cholesky(D).T  # D = root' root
    cells, strains, motions = [], [], []
    for i, (x0, x1) in enumerate(zip(x.lines, x.lines[1:])):
        for j, (y0, y1) in enumerate(zip(y.lines, y.lines[1:])):
            px, py, weight = outline.points(x0, x1, y0, y1, degree)
            if len(weight) == 0:
                continue
            strain, motion = cell_rows(x.at(i, px), y.at(j, py), weight, root)
            if weight.sum() < (1 - 1e-12) * (x1 - x0) * (y1 - y0):
                (qx, wx), (qy, wy) = gauss_rule(degree + 1, x0, x1), gauss_rule(degree + 1, y0, y1)
                whole = x.at(i, np.repeat(qx, len(qy))), y.at(j, np.tile(qy, len(qx)))
                filler, _ = cell_rows(*whole, FILLER * np.outer(wx, wy).ravel(), root)
                strain = np.concatenate([strain, filler])
            strains.append(strain)
            motions.append(motion * np.sqrt(np.repeat([mass, rotary, rotary], len(weight)))[:, None])
            cells.append((x.at(i, px)[0][:, None] * y.count + y.at(j, py)[0]).ravel())
    return [stacked(blocks, cells, x.count * y.count) for blocks in (strains, motions)]


def cell_rows(in_x, in_y, weight, root):
    """Rows of curvatures (times root) and of deflection and slopes at the points of one cell."""
    (_, u, du, ddu), (_, v, dv, ddv) = in_x, in_y
    q = np.sqrt(weight)[:, None]

    def product(f, g):
        return q * (f[:, :, None] * g[:, None, :]).reshape(len(weight), -1)

    curvature = np.stack([-product(ddu, v), -product(u, ddv), -2 * product(du, dv)])
    strain = np.einsum("ab,bqn->aqn", root, curvature).reshape(-1, curvature.shape[2])
    return strain, np.concatenate([product(u, v), product(du, v), product(u, dv)])


def stacked(blocks, cells, columns):
    rows = sum(len(block) for block in blocks)
    column = np.concatenate([np.tile(c, len(b)) for b, c in zip(blocks, cells)])
    row = np.repeat(np.arange(rows), np.concatenate([np.full(len(b), b.shape[1]) for b in blocks]))
    values = np.concatenate([b.ravel() for b in blocks])
    return coo_matrix((values, (row, column)), (rows, columns)).tocsr()


def frequencies(outline, D, mass, rotary, clamped, size, levels, degree):
    """The first elastic frequencies, in units of sqrt(D/mass)/length^2."""
    (x0, y0), (x1, y1) = outline.box
    corners = np.array([*outline.corners, *([outline.box[0]] if clamped else [])]).reshape(-1, 2)
    # a clamped edge has infinite curvature at its two ends
    ends = [y0, max(y for y in outline.crossings(x0 + 1e-9, 0))] if clamped else []
    x = Axis(x0, x1, set(corners[:, 0]), size, levels, degree)
    y = Axis(y0, y1, {*corners[:, 1], *ends}, size, levels, degree)
    T = kron(x.hierarchy(), y.hierarchy()).tocsr()
    G, R = (matrix @ T for matrix in energies(outline, x, y, degree, D, mass, rotary))
    stiff = np.asarray(G.multiply(G).sum(0)).ravel()
    heavy = np.asarray(R.multiply(R).sum(0)).ravel()
    kept = (stiff > 0) & (heavy > 1e-16 * heavy.max())  # not those that miss the plate
    if clamped:
        kept.reshape(x.count, y.count)[:2] = False  # value and slope at the first line
    scale = diags(1 / np.sqrt(stiff[kept]))
    G, R = (G[:, kept] @ scale).tocsr(), (R[:, kept] @ scale).tocsr()
    K, M = (G.T @ G).tocsc(), (R.T @ R).tocsc()
    shift = -np.sqrt(D[0, 0] * D[1, 1]) / mass / np.max(outline.box[1] - outline.box[0]) ** 4
    factors = splu(K - shift * M)
    rigid = 0 if clamped else 3
    inverse = LinearOperator(K.shape, factors.solve)
    start = np.random.default_rng(1).standard_normal(K.shape[0])
    squares, X = eigsh(K, MODES + rigid + 2, M, sigma=shift, OPinv=inverse, tol=1e-12, v0=start)
    for _ in range(3):
        # Energies from strains, not from the rounded K; then a correction by inverse iteration.
        squares, V = eigh((G @ X).T @ (G @ X), (R @ X).T @ (R @ X))
        X = X @ V
        X = X - factors.solve(G.T @ (G @ X) - R.T @ (R @ X) * squares)
    return np.sqrt(squares[rigid : rigid + MODES]) / (2 * pi)


def bending_stiffness(material, thickness, warp):
    """D of a plate of one material, its main direction at `warp` degrees from x."""
    E1 = material.get("E1", material.get("E"))
    E2 = material.get("E2", E1)
    nu = material.get("nu12", material.get("nu"))
    G = material.get("G12", E1 / (2 * (1 + nu)))
    Q = np.array([[E1, nu * E2, 0], [nu * E2, E2, 0], [0, 0, 0]]) / (1 - nu * nu * E2 / E1)
    Q[2, 2] = G
    c, s = np.cos(np.radians(warp)), np.sin(np.radians(warp))
    p, q, r = c * c, s * s, c * s
    strains = np.array([[p, q, r], [q, p, -r], [-2 * r, 2 * r, p - q]])
    return strains.T @ Q @ strains * thickness**3 / 12


# Largest interval as a share of the longer side, levels towards corners, degree; coarse and fine.
MESHES = {
    "smooth": ((1 / 12, 0, 6), (1 / 16, 0, 7)),
    "corners": ((1 / 4, 2, 6), (1 / 4, 3, 6)),
    "corners and cut cells": ((1 / 8, 2, 6), (1 / 10, 3, 6)),
}


def solve(shape, number):
    """Hz, with the mesh of that number. In the file's mm, GPa, g/cm^3 frequencies come out in 1e6/s."""
    plate, material = shape["plate"], shape["material"]
    outline = Outline(plate)
    corners = outline.corners or shape.get("clamped")
    kind = "smooth" if not corners else "corners and cut cells" if outline.askew() else "corners"
    size, levels, degree = MESHES[kind][number]
    size *= np.max(outline.box[1] - outline.box[0])
    h = plate["thickness"]
    D = bending_stiffness(material, h, plate.get("warp", 0))
    mass = material["density"] * h
    clamped = shape.get("clamped", False)
    return 1e6 * frequencies(outline, D, mass, mass * h * h / 12, clamped, size, levels, degree)


# Rectangles whose thin-plate values are known from elsewhere: a/b, Poisson's ratio, clamped at x = 0.
RECTANGLES = [
    *((ratio, 0.3, False) for ratio in (1, 2 / 3, 1.5, 2.5)),
    (1, 0, False),
    *((ratio, 0.3, True) for ratio in (1, 0.5, 2 / 3, 1.5, 2.5, 5)),
    (1, 0, True),
]


def rectangle(ratio, nu, clamped):
    """omega a^2 sqrt(mass/D) of an isotropic rectangle without rotary inertia, a = 1."""
    b = 1 / ratio
    D = np.array([[1, nu, 0], [nu, 1, 0], [0, 0, (1 - nu) / 2]])
    outline = Outline({"outline": [[0, 0], [1, 0], [1, b], [0, b]]})
    levels = 4 if clamped else 0
    return 2 * pi * frequencies(outline, D, 1, 0, clamped, max(1, b) / 6, levels, 7)


def rounded(values):
    return [float(f"{v:.7g}") for v in values]


if __name__ == "__main__":
    shapes = json.loads((HERE / "shapes.json").read_text())
    plates = {}
    for name, shape in shapes.items():
        coarse, fine = solve(shape, 0), solve(shape, 1)
        change = float(f"{np.max(np.abs(coarse / fine - 1)):.1e}")
        plates[name] = {"frequencies": rounded(fine), "change": change}
        print(name, plates[name], flush=True)
    rectangles = [
        {"ratio": float(f"{r:.6g}"), "nu": nu, "clamped": c, "lambda": rounded(rectangle(r, nu, c))}
        for r, nu, c in RECTANGLES
    ]
    record = {
        "note": "Written by ritz.py: Hz; change is the largest relative one from the coarse mesh.",
        "python": platform.python_version(),
        "numpy": np.__version__,
        "scipy": scipy.__version__,
        "plates": plates,
        "rectangles": rectangles,
    }
    (HERE / "ritz.json").write_text(json.dumps(record, indent=2) + "\n")
