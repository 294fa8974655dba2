"""Parent of infer-scipy.json: intervals and tests of one sample and of two, by scipy.

Made with Python 3.11, numpy 2.4.6, scipy 1.17.1 (pip install numpy==2.4.6 scipy==1.17.1):
    python3 infer-scipy.py > infer-scipy.json
The readings are made up, skewed on purpose.
"""
import json

import numpy as np
from scipy import stats

skewed = [41.2, 43.0, 40.1, 42.2, 47.9, 41.4, 42.7, 40.9, 43.3, 42.1, 51.3, 40.4]
baseline = [40.3, 42.1, 41.7, 44.0, 39.2, 41.1, 42.9]
candidate = [44.2, 46.9, 43.1, 47.7, 45.0]
rng = np.random.default_rng(20311)


def bca(statistic, level):
    result = stats.bootstrap((np.array(skewed),), statistic, confidence_level=level, method="BCa",
                             n_resamples=499_999, vectorized=True, rng=rng, batch=20_000)
    low, high = result.confidence_interval
    return {"low": low, "high": high, "standardError": result.standard_error}


welch = stats.ttest_ind(candidate, baseline, equal_var=False)
interval = welch.confidence_interval(0.95)
mean = stats.t.interval(0.95, len(baseline) - 1, np.mean(baseline), stats.sem(baseline))


def permutation(a, b):
    # Two-sided by size of the difference; scipy's own "two-sided" doubles the smaller tail instead.
    result = stats.permutation_test((np.array(a), np.array(b)),
                                    lambda x, y, axis: abs(x.mean(axis=axis) - y.mean(axis=axis)),
                                    vectorized=True, n_resamples=np.inf, alternative="greater")
    return {"difference": result.statistic, "pValue": result.pvalue}


print(json.dumps({
    "skewed": skewed, "baseline": baseline, "candidate": candidate,
    "bcaMean95": bca(lambda x, axis: x.mean(axis=axis), 0.95),
    "bcaVariance90": bca(lambda x, axis: x.var(axis=axis, ddof=1), 0.90),
    "welch": {"t": welch.statistic, "degreesOfFreedom": welch.df, "pValue": welch.pvalue,
              "low": interval.low, "high": interval.high},
    "meanInterval": {"low": mean[0], "high": mean[1]},
    "permutation": permutation(candidate, baseline),
    "permutationSmall": permutation(candidate[:3], baseline[:4]),
}, indent=1))
