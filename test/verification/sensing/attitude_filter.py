"""References of attitude-filter.ts: what an attitude filter makes of a sensor off the centre of gravity.

    python3 test/verification/sensing/attitude_filter.py      (made with mpmath 1.3.0; under a minute)

Nothing of the program is used. Angles: the integral over the past, e(T) = integral of
exp(-(T - t)/tau) m(t) dt/tau, by adaptive quadrature between the corners. Vector: the filter's equation
w' = (F - (F . w) w)/tau in a frame that stands still, by Taylor series. What a vector settles at: the
zero of the same equation along the body axes, by Newton's method. Axes x forward, y left, z up; angles in
degrees, roll right side down, pitch nose up.
"""

from mpmath import acos, atan2, cos, exp, findroot, hypot, mp, mpf, nstr, odefun, pi
from mpmath import quad, sin, sqrt, tan

mp.dps = 20
G = mpf("9.80665")
DEG = pi / 180

# alpha in units of rate/s, duration in s
TURN = [(5, mpf("0.2")), (0, mpf(2)), (-5, mpf("0.2"))]
REVERSAL = [(5, mpf("0.2")), (0, mpf("0.5")), (-5, mpf("0.4")), (0, mpf("0.5")), (5, mpf("0.2"))]
# of a roll snap with a peak of 500 deg/s
SNAP = [(10, mpf("0.1")), (-10, mpf("0.1"))]


def pieces_of(table, rate):
    """(start, end, rate and angle at the start, alpha) of each piece."""
    pieces, t, w, h = [], mpf(0), mpf(0), mpf(0)
    for alpha, duration in table:
        a = mpf(alpha) * rate
        pieces.append((t, t + duration, w, h, a))
        h += w * duration + a * duration**2 / 2
        w += a * duration
        t += duration
    return pieces


def state(piece, t):
    start, _, w, h, a = piece
    s = t - start
    return w + a * s, h + w * s + a * s * s / 2, a


def yaw_up(piece, t, r):
    """Apparent up in g at r of a craft that yaws."""
    w, _, a = state(piece, t)
    x, y, _ = r
    return (-w * w * x - a * y) / G, (-w * w * y + a * x) / G, mpf(1)


def roll_up(piece, t, r):
    """The same of a craft that rolls."""
    w, _, a = state(piece, t)
    _, y, z = r
    return mpf(0), (-w * w * y - a * z) / G, 1 + (-w * w * z + a * y) / G


def yaw_turn(h, v):
    """From the body to the frame that stands still."""
    return cos(h) * v[0] - sin(h) * v[1], sin(h) * v[0] + cos(h) * v[1], v[2]


def roll_turn(h, v):
    return v[0], cos(h) * v[1] - sin(h) * v[2], sin(h) * v[1] + cos(h) * v[2]


def attitude(u):
    return atan2(u[1], u[2]) / DEG, atan2(u[0], hypot(u[1], u[2])) / DEG


def angles(pieces, up, r, tau):
    end = pieces[-1][1]
    total = [mpf(0), mpf(0)]
    for piece in pieces:
        cuts = [piece[0] + (piece[1] - piece[0]) * k / 8 for k in range(9)]
        for i in (0, 1):
            total[i] += quad(
                lambda t: exp(-(end - t) / tau) * attitude(up(piece, t, r))[i] / tau, cuts
            )
    return total


def vector(pieces, up, turn, r, tau):
    w = [mpf(0), mpf(0), mpf(1)]
    for piece in pieces:

        def slope(t, w):
            f = up(piece, t, r)
            size = sqrt(sum(c * c for c in f))
            F = turn(state(piece, t)[1], [c / size for c in f])
            along = sum(a * b for a, b in zip(F, w))
            return [(a - along * b) / tau for a, b in zip(F, w)]

        # in steps: the series of a whole piece would take too many terms
        n = 8
        for k in range(n):
            a = piece[0] + (piece[1] - piece[0]) * k / n
            b = piece[0] + (piece[1] - piece[0]) * (k + 1) / n
            w = list(odefun(slope, a, w, tol=mpf("1e-15"))(b))
    return turn(-state(pieces[-1], pieces[-1][1])[1], w)


def settled(rate, x, tau):
    """Tilt and how far its low side trails, degrees: the sensor in front, yaw to the left."""
    lean = rate * rate * x / G
    f = [-lean / hypot(1, lean), mpf(0), 1 / hypot(1, lean)]

    def slope(a, b, c):
        along = f[0] * a + f[1] * b + f[2] * c
        return (
            rate * b + (f[0] - along * a) / tau,
            -rate * a + (f[1] - along * b) / tau,
            a * a + b * b + c * c - 1,
        )

    d = lean / (1 + (rate * tau) ** 2)
    a, b, c = findroot(slope, (-d, d * rate * tau, 1))
    return acos(c) / DEG, -atan2(-b, -a) / DEG


def show(name, values):
    print(f"{name}:", " ".join(nstr(v, 12, strip_zeros=False) for v in values))


def main():
    for error, degrees in ((1, 200), (1, 400), (2, 200), (5, 400)):
        show(f"radius, mm, {error} {degrees}", [G * tan(error * DEG) / (degrees * DEG) ** 2 * 1000])
    for T, tau in ((1, 1), (mpf("2.4"), 1), (2, 4)):
        show(f"share {nstr(mpf(T), 3)} {tau}", [1 - exp(-mpf(T) / tau)])
    for degrees, x, tau in ((200, "0.03", 1), (400, "0.03", 1), (400, "0.063", 2), (800, "0.3", 1)):
        show(f"settled {degrees} {x} {tau}", settled(degrees * DEG, mpf(x), tau))
    for name, table in (("turn", TURN), ("reversal", REVERSAL)):
        for degrees, x, tau in ((200, "-0.03", "1"), (400, "-0.03", "1"), (400, "0.063", "0.5")):
            pieces, r = pieces_of(table, degrees * DEG), (mpf(x), mpf(0), mpf(0))
            show(f"{name} {degrees} {x} {tau} angles", angles(pieces, yaw_up, r, mpf(tau)))
            u = vector(pieces, yaw_up, yaw_turn, r, mpf(tau))
            show(f"{name} {degrees} {x} {tau} vector", attitude(u))
    pieces, r = pieces_of(SNAP, 500 * DEG), (mpf(0), mpf("-0.01"), mpf("0.02"))
    show("snap angles", angles(pieces, roll_up, r, mpf(1)))
    off, centre = (vector(pieces, roll_up, roll_turn, at, mpf(1)) for at in (r, (0, 0, 0)))
    show("snap vector", [a - b for a, b in zip(attitude(off), attitude(centre))])


main()
