"""Parent of contrast.json: contrasts within blocks by ordinary least squares (numpy), numbers of runs by scipy.

Run: python3 tests/golden/contrast.py > tests/golden/contrast.json
"""
import json
import sys

import numpy as np
import scipy
from scipy import stats

BASELINE = [2.07, 1.95, 1.92, 1.73, 1.98, 1.81, 1.89]
CANDIDATE = [2.09, 2.24, 2.08, 2.09, 2.06, 2.04, 1.93]
TWO = ("aabbabb", "abbabab")
UNLIKE = ("aaaabbb", "abbbbaa")
FOUR = ("aabbccd", "abbccdd")


def least_squares(blocks):
    values = np.array(BASELINE + CANDIDATE)
    design = np.array([0.0] * 7 + [1.0] * 7)
    labels = list(blocks[0] + blocks[1])
    names = sorted(set(labels))
    x = np.column_stack([design] + [[float(one == name) for one in labels] for name in names])
    coefficients, *_ = np.linalg.lstsq(x, values, rcond=None)
    residual = values - x @ coefficients
    freedom = len(values) - len(names) - 1
    variance = residual @ residual / freedom * np.linalg.inv(x.T @ x)[0, 0]
    return dict(logRatio=coefficients[0], variance=variance, degreesOfFreedom=freedom)


def own_scatters(blocks):
    """The same contrast, each design's scatter from its own runs inside the blocks."""
    labels = list(blocks[0] + blocks[1])
    names = sorted(set(labels))
    x = np.column_stack([[0.0] * 7 + [1.0] * 7] + [[float(one == name) for one in labels] for name in names])
    weights = np.linalg.pinv(x)[0]
    parts = []
    for values, own, which in ((BASELINE, blocks[0], weights[:7]), (CANDIDATE, blocks[1], weights[7:])):
        cells = [np.array([v for v, b in zip(values, own) if b == name]) for name in names]
        freedom = len(values) - len(names)
        parts.append((sum(((c - c.mean()) ** 2).sum() for c in cells) / freedom * (which @ which), freedom))
    variance = sum(v for v, _ in parts)
    return dict(logRatio=float(weights @ (BASELINE + CANDIDATE)), variance=variance,
                degreesOfFreedom=variance**2 / sum(v * v / f for v, f in parts))


def wider(blocks, expected):
    """The wider of the two; `expected` says which, so that both stay covered."""
    both = dict(one=least_squares(blocks), own=own_scatters(blocks))
    width = {key: stats.t.ppf(0.975, c["degreesOfFreedom"]) * c["variance"] ** 0.5 for key, c in both.items()}
    assert max(width, key=width.get) == expected, width
    return both[expected]


def paired(blocks):
    gaps = [np.mean([v for v, b in zip(CANDIDATE, blocks[1]) if b == name])
            - np.mean([v for v, b in zip(BASELINE, blocks[0]) if b == name]) for name in sorted(set(blocks[0]))]
    test = stats.ttest_1samp(gaps, 0)
    return dict(logRatio=np.mean(gaps), variance=np.var(gaps, ddof=1) / len(gaps), degreesOfFreedom=int(test.df))


def needed(spread, fixed, ratio):
    gap = np.log(ratio)
    for n in range(2, 3000):
        v = 2 * spread**2 / n + fixed
        freedom = v**2 / (2 * (spread**2 / n) ** 2 / (n - 1))
        if stats.nct.sf(stats.t.ppf(0.975, freedom), freedom, gap / np.sqrt(v)) >= 0.8:
            return n
    return None


json.dump(dict(
    scipy=scipy.__version__, numpy=np.__version__, baseline=BASELINE, candidate=CANDIDATE,
    two=dict(blocks=TWO, **wider(TWO, "one")), unlike=dict(blocks=UNLIKE, **wider(UNLIKE, "own")),
    four=dict(blocks=FOUR, **paired(FOUR)),
    runsNeeded=[dict(spread=s, fixed=f, ratio=r, runs=needed(s, f, r))
                for s, f in ((0.12, 0.0), (0.16, 0.0), (0.16, 0.0016)) for r in (1.05, 1.08, 1.10, 1.15, 1.20, 1.30, 1.50)
                if np.log(r) > 2.8 * np.sqrt(f)]), sys.stdout, indent=1)
print()
