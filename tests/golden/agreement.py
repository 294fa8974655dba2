"""Parent of agreement.json: E_n and the combined value of two measurements, by numpy and scipy.

Run: python3 tests/golden/agreement.py > tests/golden/agreement.json
"""
import json
import sys

import numpy as np
import scipy
from scipy.stats import t

CASES = [
    ("independent", 2.53, 0.015, 40, 2.50, 0.04, 6.5, 0.0),
    ("sharing a scale", 4.21, 0.012, 18.2, 4.17, 0.031, 4.4, 1.1e-4),
    ("leaning on one planform", 4.05, 0.02, 25, 4.14, 0.035, None, 2.5e-4),
    ("further apart than they should be", 2.61, 0.012, 30, 2.48, 0.05, 8, 2e-5),
    ("one that adds nothing", 3.0, 0.010, 30, 3.02, 0.05, 8, 4.5e-4),
]
cases = []
for name, x1, u1, n1, x2, u2, n2, c in CASES:
    k = [t.ppf(0.975, n) if n else scipy.stats.norm.ppf(0.975) for n in (n1, n2)]
    J = np.array([k[0], -k[1]])
    C = np.array([[u1 * u1, c], [c, u2 * u2]])
    en = (x1 - x2) / np.sqrt(J @ C @ J)
    inverse = np.linalg.inv(C)
    one = np.ones(2)
    w = inverse @ one / (one @ inverse @ one)
    w = np.clip(w, 0, 1)
    apart = np.array([1, -1]) @ C @ np.array([1, -1])
    birge = max(1, (x1 - x2) ** 2 / apart)
    value = w @ np.array([x1, x2])
    cases.append(dict(
        name=name,
        tow=dict(value=x1, variance=u1 * u1, degreesOfFreedom=n1),
        glide=dict(value=x2, variance=u2 * u2, degreesOfFreedom=n2),
        covariance=c,
        en=en,
        combined=dict(value=value, variance=birge * (w @ C @ w)),
    ))
json.dump(dict(versions=dict(python=sys.version.split()[0], numpy=np.__version__, scipy=scipy.__version__), cases=cases), sys.stdout, indent=1)
