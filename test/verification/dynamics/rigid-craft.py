"""
Newton and Euler for the craft of rigid-craft.ts, in plain numbers: the references of its checks.

    python3 test/verification/dynamics/rigid-craft.py

Prints rms gyro (deg/s; all axes, x, y, z) and accelerometer (g; all axes, x, y, z). Imports nothing.
"""
from math import pi, sqrt
import itertools
g, rho = 9.80665, 1.225
# bodies
mb, zb, Ib = 0.4, -0.03, (5e-4, 9e-4, 11e-4)
X, Y = 0.085, 0.065
mm, zm, bell, d, hgt = 0.030, 0.030, 0.016, 0.028, 0.020
mp, zp, D, B = 0.005, 0.040, 0.127, 3
CT = 0.15
chip = (0.012, 0.007, 0.020 + 0.008)
M = mb + 4*(mm+mp)
zc = (mb*zb + 4*(mm*zm + mp*zp))/M
tilt = mm*(d*d/16 + hgt*hgt/12) + mp*(D/2)**2/6
Ixx = Ib[0] + mb*(zb-zc)**2 + 4*(tilt + mm*(Y*Y+(zm-zc)**2) + mp*(Y*Y+(zp-zc)**2))
Iyy = Ib[1] + mb*(zb-zc)**2 + 4*(tilt + mm*(X*X+(zm-zc)**2) + mp*(X*X+(zp-zc)**2))
Izz = Ib[2] + 4*((mm-bell)*d*d/8 + (mm+mp)*(X*X+Y*Y))
I = (Ixx, Iyy, Izz)
k = CT*rho*D**4/(2*pi)**2
U, et, eq = 2e-8, 0.05, 0.5
qT = sqrt(k/(2*rho*pi*D*D/4))/0.6
print("mass", M, "zc", zc, "I", I, "k", k, "Q/T", qT, "hover rev/s", sqrt(M*g/4/k)/2/pi)
cross = lambda a,b: (a[1]*b[2]-a[2]*b[1], a[2]*b[0]-a[0]*b[2], a[0]*b[1]-a[1]*b[0])
def unit(kind):
    """mean squares at Omega = 1: gyro (rad/s)^2 by axis [x Omega^2], accel (m/s2)^2 by axis [x Omega^4]"""
    G, A = [0]*3, [0]*3
    for sx, sy in itertools.product((1,-1),(1,-1)):
        p = (sx*X, sy*Y, zp-zc)
        loads = {"unbalance": [((U,0,0),(0,0,0)), ((0,U,0),(0,0,0))],
                 "thrust": [((0,0,et*k),(0,0,0))],
                 "torque": [((0,0,0),(0,0,eq*k*qT))]}[kind]
        n = 1 if kind == "unbalance" else B
        # sine and cosine parts are a quarter turn apart: squares add
        for F, C in loads:
            T = [a+b for a,b in zip(cross(p,F), C)]
            al = [T[i]/I[i] for i in range(3)]
            lev = cross(al, (chip[0], chip[1], chip[2]-zc))
            for i in range(3):
                G[i] += (al[i]/n)**2/2
                A[i] += (F[i]/M + lev[i])**2/2
    return G, A
deg = pi/180
row = lambda *v: print("  ", *["%.9e" % x if x else "0" for x in v])
def show(kinds, m2, m4, label):
    G = [sum(unit(kd)[0][i] for kd in kinds)*m2 for i in range(3)]
    A = [sum(unit(kd)[1][i] for kd in kinds)*m4 for i in range(3)]
    print(label, kinds)
    row(sqrt(sum(G))/deg, *[sqrt(v)/deg for v in G])
    row(sqrt(sum(A))/g, *[sqrt(v)/g for v in A])
W = 2*pi*200
for kd in ("unbalance","thrust","torque"):
    show([kd], W**2, W**4, "at 200 rev/s")
rows = [(160, 3), (300, 1)]
s = 0.03
m2 = sum(w*(2*pi*n)**2 for n,w in rows)/4*(1+s*s)
m4 = sum(w*(2*pi*n)**4 for n,w in rows)/4*(1+6*s*s+3*s**4)
show(["unbalance","thrust","torque"], m2, m4, "mix")
show(["unbalance","thrust","torque"], W**2*(1+s*s), W**4*(1+6*s*s+3*s**4), "mix one row 200")
