"""The same matrices through SciPy's eigsh (shift-invert), one thread; prints one line of JSON.

usage: eigsh.py K.mtx M.mtx modes shift
"""

import json
import os
import sys
import time

os.environ["OMP_NUM_THREADS"] = os.environ["OPENBLAS_NUM_THREADS"] = "1"

import numpy
import scipy
from scipy.io import mmread
from scipy.sparse.linalg import eigsh, splu

K = mmread(sys.argv[1]).tocsc()
M = mmread(sys.argv[2]).tocsc()
modes, shift = int(sys.argv[3]), float(sys.argv[4])


def best(f, runs=3):
    """Least time of a few runs, s, and the last result."""
    least = float("inf")
    for _ in range(runs):
        start = time.perf_counter()
        result = f()
        least = min(least, time.perf_counter() - start)
    return least, result


factorise, _ = best(lambda: splu((K - shift * M).tocsc()))
solve, values = best(lambda: eigsh(K, modes, M, sigma=shift, return_eigenvectors=True)[0])
print(
    json.dumps(
        {
            "scipy": scipy.__version__,
            "numpy": numpy.__version__,
            "factorise": factorise,
            "solve": solve,
            "lambda": sorted(values),
        }
    )
)
