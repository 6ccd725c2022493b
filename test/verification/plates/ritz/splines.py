"""C1 splines of high degree in one coordinate, crowded towards given places."""

import numpy as np
from numpy.polynomial import Legendre
from scipy.sparse import csr_matrix

# Length of each crowded interval as a share of the next.
GRADING = 0.2
# Hermite cubics of [-1, 1] as Legendre series: value and slope at -1, value and slope at 1.
CUBICS = [
    np.polynomial.Polynomial(c).convert(kind=Legendre) / 4
    for c in ([2, -3, 0, 1], [1, -1, -1, 1], [2, 3, 0, -1], [-1, -1, 1, 1])
]


class Axis:
    """C1 functions of one coordinate: values and slopes at the grid lines, then bubbles."""

    def __init__(self, low, high, corners, size, levels, degree):
        self.lines, self.level = grid_lines(low, high, corners, size, levels)
        self.bubbles = degree - 3
        bubbles = [Legendre.basis(k).integ(2, lbnd=-1) for k in range(2, degree - 1)]
        self.shapes = CUBICS + bubbles
        self.slopes = [f.deriv(1) for f in self.shapes]
        self.curvatures = [f.deriv(2) for f in self.shapes]
        self.count = 2 * len(self.lines) + (len(self.lines) - 1) * self.bubbles

    def at(self, interval, x):
        """Numbers of the functions on an interval; their values, slopes, curvatures at points."""
        a, b = self.lines[interval : interval + 2]
        t, half = 2 * (x - a) / (b - a) - 1, (b - a) / 2
        first = 2 * len(self.lines) + interval * self.bubbles
        numbers = [*range(2 * interval, 2 * interval + 4), *range(first, first + self.bubbles)]
        scale = np.array([1, half, 1, half] + [1] * self.bubbles)
        value, slope, curvature = (
            np.stack([f(t) for f in functions], 1) * scale
            for functions in (self.shapes, self.slopes, self.curvatures)
        )
        return np.array(numbers), value, slope / half, curvature / half**2

    def hierarchy(self):
        """Columns: the basis whose functions of a level reach to the lines of that level or below."""
        T = np.eye(self.count)
        for level in range(self.level.max()):
            known = np.flatnonzero(self.level <= level)
            for a, b in zip(known, known[1:]):
                half = (self.lines[b] - self.lines[a]) / 2
                for new in range(a + 1, b):
                    t = (self.lines[new] - self.lines[a]) / half - 1
                    for line, value in ((a, 0), (b, 2)):
                        if self.level[line] != level:
                            continue
                        for d in (0, 1):
                            f, column = CUBICS[value + d], 2 * line + d
                            T[2 * new, column] = f(t) * half**d
                            T[2 * new + 1, column] = f.deriv(1)(t) * half ** (d - 1)
        return csr_matrix(T)


def grid_lines(low, high, corners, size, levels):
    """Grid lines at most `size` apart, crowded towards `corners`, and the level each belongs to."""
    level = {}
    bases = np.unique([low, high, *corners])
    for a, b in zip(bases, bases[1:]):
        n = int(np.ceil((b - a) / size - 1e-9))
        level |= {float(x): 0 for x in np.linspace(a, b, n + 1)}
        for k in range(1, levels + 1):
            step = (b - a) / n * GRADING**k
            level |= {c + s: k for c, s in ((a, step), (b, -step)) if c in corners}
    lines = np.array(sorted(level))
    return lines, np.array([level[x] for x in lines])
