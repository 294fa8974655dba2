"""Parent of glide-verdict.json: a glide comparison worked out apart from the library (numpy, scipy; invented data).

Run: python3 tests/golden/glide-verdict.py > tests/golden/glide-verdict.json
"""
import itertools
import json
import sys

import numpy as np
import scipy
from scipy import stats

GRAVITY, DENSITY, MASS, EFFECTIVE_MASS = 9.80665, 999.1, 84.0, 86.52
LAUNCH, DROP, SHAPE_UNCERTAINTY = 4.10, 0.18, 0.3
DESIGNS = {  # wet volume m3, a N s2/m2, e N m2/s2 of the prior shape
    "alder": (0.0020, 1.55, 512.0),
    "birch": (0.0028, 1.62, 341.0),
}
# launch speed, end speed, drop, distance, 1 stalled / 0 stopped early
RUNS = {
    "alder": np.array([
        [4.28, 2.89, 0.222, 9.48, 1], [4.45, 3.04, 0.164, 8.97, 1], [4.47, 3.18, 0.174, 9.05, 1],
        [4.54, 3.08, 0.250, 8.54, 1], [4.75, 3.19, 0.144, 10.95, 1], [4.62, 3.06, 0.233, 9.52, 1],
        [4.47, 3.17, 0.177, 8.79, 1]]),
    "birch": np.array([
        [3.90, 3.02, 0.255, 7.86, 1], [4.19, 2.91, 0.190, 9.63, 1], [3.47, 2.95, 0.168, 4.36, 1],
        [3.71, 2.99, 0.147, 5.39, 1], [3.94, 3.27, 0.085, 4.46, 0], [4.33, 2.98, 0.209, 9.49, 1],
        [3.69, 2.99, 0.221, 5.17, 1]]),
}


def weight(design):
    return (MASS - DENSITY * DESIGNS[design][0]) * GRAVITY


def inertia(design):
    return EFFECTIVE_MASS / (MASS - DENSITY * DESIGNS[design][0])


def mean_shape(design, start, end, induced):
    """Harmonic mean over u = v^2 of (a u + e/u)/W: antiderivative of u/(a u^2 + e) is ln(a u^2 + e)/(2 a)."""
    _, a, e = DESIGNS[design]
    e = e * induced
    inverse = (np.log(a * start**4 + e) - np.log(a * end**4 + e)) / (2 * a)
    return (start**2 - end**2) / inverse / weight(design)


def parts(design, runs, induced=1.0):
    start, end, drop, distance, stalled = np.asarray(runs, float).T
    energy = np.sum(drop + inertia(design) * (start**2 - end**2) / (2 * GRAVITY))
    path = np.sum(distance * mean_shape(design, start, end, induced))
    own_end = end[stalled == 1].mean()
    height = DROP + inertia(design) * (LAUNCH**2 - own_end**2) / (2 * GRAVITY)
    shape = mean_shape(design, LAUNCH, own_end, induced)
    return dict(sumEnergy=energy, sumPath=path, level=energy / path, endSpeed=own_end,
                energyHeight=height, meanShape=shape, logDistance=np.log(height * path / (energy * shape)))


def log_distance(design, runs, induced=1.0):
    return parts(design, runs, induced)["logDistance"]


def series(design, runs):
    n = len(runs)
    out = parts(design, runs)
    pseudo = [n * out["logDistance"] - (n - 1) * log_distance(design, np.delete(runs, i, 0)) for i in range(n)]
    measured = 0.0
    for i, column in itertools.product(range(n), range(4)):
        u = (0.08, 0.08, 0.02, np.hypot(0.012 * runs[i, 3], 0.15))[column]
        up, down = runs.copy(), runs.copy()
        up[i, column] += u / 100
        down[i, column] -= u / 100
        measured += ((log_distance(design, up) - log_distance(design, down)) * 50) ** 2
    bend = [log_distance(design, runs, np.exp(s * SHAPE_UNCERTAINTY)) for s in (1, -1)]
    return out | dict(weight=weight(design), inertia=inertia(design), distance=np.exp(out["logDistance"]),
                      pseudoValues=pseudo, jackknifeVariance=np.var(pseudo, ddof=1) / n,
                      measurementVariance=measured, shapeSensitivity=(bend[0] - bend[1]) / 2)


def needed(scatter, fixed, ratio):
    gap = np.log(ratio)
    if gap < 2.8 * np.sqrt(fixed):
        return None
    for n in range(2, 2000):
        per = [s / n for s in scatter]
        v = sum(per) + fixed
        freedom = v**2 / (sum(p**2 for p in per) / (n - 1))
        if stats.nct.sf(stats.t.ppf(0.975, freedom), freedom, gap / np.sqrt(v)) >= 0.8:
            return n
    return None


def compare(count):
    runs = {name: values[:count] for name, values in RUNS.items()}
    one, two = (series(name, runs[name]) for name in ("alder", "birch"))
    spread = [max(s["jackknifeVariance"], s["measurementVariance"] / 4) for s in (one, two)]
    bend = [s["shapeSensitivity"] for s in (one, two)]
    shape = max(bend[0] ** 2 + bend[1] ** 2, (bend[0] - bend[1]) ** 2)
    theta = two["logDistance"] - one["logDistance"]
    variance = sum(spread) + shape
    freedom = variance**2 / sum(s**2 / (count - 1) for s in spread)
    t = stats.t.ppf(0.975, freedom)
    half = t * np.sqrt(variance)
    energy_effect = two["energyHeight"] / one["energyHeight"]
    raw = runs["birch"][:, 3].mean() / runs["alder"][:, 3].mean()
    logs = [np.log(runs[name][:, 3]) for name in ("alder", "birch")]
    welch = stats.ttest_ind(logs[1], logs[0], equal_var=False)
    interval = welch.confidence_interval()
    pooled = np.array(one["pseudoValues"] + two["pseudoValues"])
    seen = abs(np.mean(two["pseudoValues"]) - np.mean(one["pseudoValues"]))
    total, extreme = 0, 0
    for chosen in itertools.combinations(range(2 * count), count):
        total += 1
        a = pooled[list(chosen)].sum()
        extreme += abs(a - (pooled.sum() - a)) / count >= seen - 1e-12
    scatter = [count * s for s in spread]
    return dict(
        alder=one, birch=two, shapeVariance=shape, logRatio=theta, standardError=np.sqrt(variance),
        degreesOfFreedom=freedom, t=t, ratio=np.exp(theta), low=np.exp(theta - half), high=np.exp(theta + half),
        probability=stats.t.cdf(theta / np.sqrt(variance), freedom), raw=raw, launchEffect=raw / np.exp(theta),
        dragEffect=np.exp(theta) / energy_effect, energyEffect=energy_effect,
        naive=dict(ratio=np.exp(logs[1].mean() - logs[0].mean()), low=np.exp(interval.low), high=np.exp(interval.high),
                   pValue=welch.pvalue),
        permutation=dict(extreme=int(extreme), total=total),
        runsNeeded={f"{r:.2f}": [needed(scatter, shape, r), needed(scatter, 0.0, r)] for r in (1.05, 1.10, 1.20)})


json.dump(dict(scipy=scipy.__version__, numpy=np.__version__, seven=compare(7), four=compare(4)), sys.stdout, indent=1)
print()
