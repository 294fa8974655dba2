"""Parent of glide-level.json: drag from plain glides and its E_n against a tow, by numpy and scipy, written by itself.

Run: python3 tests/golden/glide-level.py > tests/golden/glide-level.json
"""
import json
import sys

import numpy as np
import scipy
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.stats import t

G, RHO = 9.81, 998.6
# Invented: mass, volume, water that moves along, span, area; launch, end, drop, distance of each run.
MASS, VOLUME, MOVING, SPAN, AREA = 85.0, 0.0024, 2.2, 1.05, 0.155
TOWED_MASS = 86.4
RUNS = [
    (4.52, 3.21, 0.19, 11.4), (4.31, 3.18, 0.17, 9.3), (4.66, 3.25, 0.20, 12.0),
    (4.44, 3.20, 0.16, 10.9), (4.25, 3.30, 0.18, 8.9),
]
U = dict(launch=0.06, end=0.06, drop=0.02, distance=0.12)
SHAPE = 0.30
TOW = dict(value=np.log(53.4), variance=0.011**2, degreesOfFreedom=60.0, scale=-0.0091, mass=-0.0052)


def lift(mass):
    return mass * G - RHO * G * VOLUME


def law(load):
    a = RHO / 2 * (0.0135 * AREA + 7e-4) + 0.5 * 1.225 * 0.55
    e = 2 * (AREA / (np.pi * SPAN**2 * 0.93) + 0.0095) * load**2 / (RHO * AREA)
    return a, e


def bend(v):
    """A free-surface factor of some kind, 1 far away."""
    return 1 + 0.4 * np.exp(-((v - 2.6) ** 2) / 2)


def mean_drag(load, v0, v1, share):
    a, e = law(load)
    u0, u1 = v0 * v0, v1 * v1
    f = lambda u: 1 / (a * u + share * e * bend(np.sqrt(u)) / u)
    return (u0 - u1) / quad(f, u1, u0, epsabs=0, epsrel=1e-12)[0]


def log_drag(runs, v, share=1.0, mass=MASS, towed=TOWED_MASS, moving=MOVING):
    load = lift(mass)
    spent = sum((mass + moving) * (v0 * v0 - v1 * v1) / 2 + load * z for v0, v1, z, x in runs)
    # Heights, as in the library: spent over the weight; the level does not care as all runs weigh the same.
    let = sum(x * mean_drag(load, v0, v1, share) for v0, v1, z, x in runs)
    a, e = law(lift(towed))
    return np.log(spent / let) + np.log(a * v * v + share * e * bend(v) / v**2)


H = 1e-4
slope = lambda v: (log_drag(RUNS, v, np.exp(H)) - log_drag(RUNS, v, np.exp(-H))) / (2 * H)
speed = brentq(slope, 3.18, 4.66, xtol=1e-12)
n = len(RUNS)
out = np.array([log_drag(RUNS[:i] + RUNS[i + 1:], speed) for i in range(n)])
jackknife = (n - 1) / n * np.sum((out - out.mean()) ** 2)
reading = 0.0
for i in range(n):
    for j, u in enumerate(U.values()):
        moved = [[list(r) for r in RUNS] for _ in range(2)]
        moved[0][i][j] += H * u
        moved[1][i][j] -= H * u
        reading += ((log_drag(moved[0], speed) - log_drag(moved[1], speed)) / (2 * H)) ** 2
own = max(jackknife, reading / 4)
# Errors taken off at plus and at minus one standard uncertainty: both speeds by 0.8 %, all that flies by 0.6 kg.
scaled = lambda s: [(v0 * (1 - s), v1 * (1 - s), z, x) for v0, v1, z, x in RUNS]
scale = (log_drag(scaled(0.008), speed) - log_drag(scaled(-0.008), speed)) / 2
mass = (log_drag(RUNS, speed, mass=MASS - 0.6, towed=TOWED_MASS - 0.6)
        - log_drag(RUNS, speed, mass=MASS + 0.6, towed=TOWED_MASS + 0.6)) / 2
variance = own + scale**2 + mass**2
freedom = variance**2 / (own**2 / (n - 1))
log = log_drag(RUNS, speed)
result = []
for name, c in (("a speed log of its own", TOW["mass"] * mass), ("one speed log", TOW["mass"] * mass + TOW["scale"] * scale)):
    k = [t.ppf(0.975, TOW["degreesOfFreedom"]), t.ppf(0.975, freedom)]
    J = np.array([k[0], -k[1]])
    C = np.array([[TOW["variance"], c], [c, variance]])
    result.append(dict(name=name, covariance=c, en=(TOW["value"] - log) / np.sqrt(J @ C @ J)))
json.dump(dict(
    versions=dict(python=sys.version.split()[0], numpy=np.__version__, scipy=scipy.__version__),
    gravity=G, density=RHO, mass=MASS, volume=VOLUME, moving=MOVING, span=SPAN, area=AREA, towedMass=TOWED_MASS,
    runs=RUNS, uncertainty=U, shape=SHAPE, tow=TOW, speed=speed, log=log,
    slopes=[dict(speed=v, slope=slope(v)) for v in (3.3, 4.5)],
    jackknife=jackknife, reading=reading, own=own, scale=scale, carried=mass, variance=variance, degreesOfFreedom=freedom,
    agreement=result,
), sys.stdout, indent=1)
