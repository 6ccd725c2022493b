"""Second-order digital filters by SciPy: standard input {orders, f}, standard output one line of JSON.

Coefficients from the analogue prototype by SciPy's bilinear transform, warped to keep f0; the flattest
low-pass (Q = 1/sqrt(2)) also as a Butterworth filter. Response by freqz, group delay by group_delay.
"""

import json
import sys
from math import pi, sqrt, tan

import scipy
from scipy.signal import bilinear, butter, freqz, group_delay


def sample(order, f):
    f0, Q, fs, kind = order["f0"], order["Q"], order["fs"], order["kind"]
    w = 2 * fs * tan(pi * f0 / fs)
    if kind == "low-pass" and abs(Q * sqrt(2) - 1) < 1e-12:
        b, a = butter(2, f0, fs=fs)
    else:
        top = [w * w] if kind == "low-pass" else [1, 0, w * w]
        b, a = bilinear(top, [1, w / Q, w * w], fs)
    _, H = freqz(b, a, worN=f, fs=fs)
    _, delay = group_delay((b, a), w=f, fs=fs)
    return {
        "b": list(b),
        "a": list(a),
        "re": list(H.real),
        "im": list(H.imag),
        "delay": [d / fs for d in delay],
    }


task = json.load(sys.stdin)
samples = [sample(order, task["f"]) for order in task["orders"]]
print(json.dumps({"scipy": scipy.__version__, "samples": samples}))
