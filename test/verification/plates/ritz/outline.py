"""The area of a plate: where its borders run, and integration points on the covered part of a cell."""

from math import pi

import numpy as np


class Outline:
    """Straight borders x1, y1, x2, y2 and circles x, y, r; inside is where an odd number lies below."""

    def __init__(self, plate):
        holes = plate.get("holes", [])
        rings = [plate["outline"], *(h["outline"] for h in holes if "outline" in h)]
        self.corners = [p for i, ring in enumerate(rings) for p in inward_corners(ring, i > 0)]
        self.box = np.array([np.min(rings[0], axis=0), np.max(rings[0], axis=0)], float)
        sides = [(*p, *q) for ring in rings for p, q in zip(ring, ring[1:] + ring[:1])]
        self.sides = np.array(sides, float)
        self.circles = []
        for hole in holes:
            at = hole.get("at", [])
            centres = at if at and isinstance(at[0], list) else [at] if at else []
            self.circles += [(x, y, hole["diameter"] / 2) for x, y in centres]

    def crossings(self, value, along):
        """Where the borders cross the line x = value (along 0) or y = value (along 1), ascending."""
        u1, v1, u2, v2 = self.sides[:, [along, 1 - along, 2 + along, 3 - along]].T
        hit = (u1 <= value) != (u2 <= value)
        slope = (v2[hit] - v1[hit]) / (u2[hit] - u1[hit])
        found = list(v1[hit] + (value - u1[hit]) * slope)
        for circle in self.circles:
            beside = circle[2] ** 2 - (value - circle[along]) ** 2
            if beside > 0:
                found += [circle[1 - along] + s * beside**0.5 for s in (-1, 1)]
        return sorted(found)

    def askew(self):
        """Whether a border cuts the cells of every grid: a circle or a side that is not square."""
        x1, y1, x2, y2 = self.sides.T
        return len(self.circles) > 0 or bool(np.any((x1 != x2) & (y1 != y2)))

    def points(self, x0, x1, y0, y1, degree):
        """Integration points x, y and weights of the covered part of a rectangle, column by column."""
        middle, half = np.array([x0 + x1, y0 + y1]) / 2, np.array([x1 - x0, y1 - y0]) / 2
        near = [c for c in self.circles if np.all(np.abs(middle - c[:2]) < half + c[2])]
        rule = (sine_rule, 2 * degree + 8) if near else (gauss_rule, 2 * degree + 2)
        breaks = [x0, x1, *self.sides[:, 0], *self.crossings(y0, 1), *self.crossings(y1, 1)]
        breaks += [c[0] + s * c[2] for c in near for s in (-1, 1)]
        breaks = np.unique([b for b in breaks if x0 <= b <= x1])
        found = [np.empty((3, 0))]
        for a, b in zip(breaks, breaks[1:]):
            if b - a < 1e-9 * (x1 - x0):
                continue
            for x, wx in zip(*rule[0](rule[1], a, b)):
                borders = self.crossings(x, 0)
                for low, high in zip(borders[::2], borders[1::2]):
                    if min(high, y1) > max(low, y0):
                        y, wy = gauss_rule(degree + 1, max(low, y0), min(high, y1))
                        found.append(np.stack([np.full_like(y, x), y, wx * wy]))
        return np.concatenate(found, axis=1)


def inward_corners(ring, hole):
    """Corners of a ring with more than a half turn of plate around them."""
    p = np.array(ring, float)
    before, after = p - np.roll(p, 1, 0), np.roll(p, -1, 0) - p
    turn = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    area = np.sum(p[:, 0] * np.roll(p[:, 1], -1) - p[:, 1] * np.roll(p[:, 0], -1))
    return p[turn * area > 0] if hole else p[turn * area < 0]


def gauss_rule(n, a, b):
    t, w = np.polynomial.legendre.leggauss(n)
    return (a + b) / 2 + (b - a) / 2 * t, (b - a) / 2 * w


def sine_rule(n, a, b):
    """Gauss points of an angle: smooth also where a circle has a vertical tangent."""
    t, w = gauss_rule(n, -pi / 2, pi / 2)
    return (a + b) / 2 + (b - a) / 2 * np.sin(t), (b - a) / 2 * w * np.cos(t)
