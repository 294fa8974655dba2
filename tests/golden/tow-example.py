"""Parent of tow-example.json: two invented designs towed at nine speeds twice, by numpy and scipy.

Run: python3 tests/golden/tow-example.py > tests/golden/tow-example.json

No free surface (phi = 1) and no depth, so that nothing but the recipe is compared.
"""
import json
import sys

import numpy as np
import scipy
from scipy.optimize import brentq, minimize_scalar
from scipy.stats import f as fisher, t as student

GRAVITY, DENSITY = 9.80665, 999.1
DEGREE = np.pi / 180
# One standard uncertainty of each error that all readings share.
SHARED = {"cell scale": 0.01, "cell zero": 0.3, "speed scale": 0.01, "speed zero": 0.02, "angle zero": 0.3 * DEGREE,
          "mass": 0.5, "volume": 0.10}
OWN = {"volume"}
DESIGNS = {
    "alder": dict(mass=86.0, volume=0.0021, area=0.162, span=0.98),
    "birch": dict(mass=86.0, volume=0.0026, area=0.178, span=1.12),
}
# speed m/s, tension N, angle degrees; rows 1 and 2 are repeats of one set speed, and so on
READINGS = {
    "alder": """3.682 59.572 5.444  3.503 68.147 7.768  3.979 58.163 7.332  4.030 60.640 7.800  4.426 56.871 8.541
        4.377 58.222 7.708  4.663 55.668 9.021  4.803 58.973 6.924  5.236 59.809 9.112  5.207 57.243 7.217
        5.450 62.659 8.061  5.620 64.060 9.156  6.113 68.886 6.809  6.028 69.628 6.282  6.352 73.428 7.361
        6.266 73.050 7.679  6.816 79.936 9.214  6.810 79.545 8.817""",
    "birch": """3.692 52.555 9.499  3.595 56.151 5.721  4.007 54.500 8.641  4.058 52.801 8.742  4.402 57.929 7.695
        4.378 56.437 10.463  4.790 60.434 8.009  4.761 58.230 8.111  5.088 66.181 7.846  5.297 66.998 7.518
        5.807 71.516 7.717  5.702 69.812 10.176  5.996 74.337 7.983  5.939 74.108 7.290  6.565 83.696 8.270
        6.224 82.673 8.653  6.709 89.044 7.819  6.853 87.987 5.862""",
}


def table(name):
    return np.array(READINGS[name].split(), float).reshape(-1, 3)


class Law:
    """The fit to one design, with one shared error taken off the readings."""

    def __init__(self, name, error=None, sign=0, scale=None):
        spec, rows = DESIGNS[name], table(name)
        off = {one: sign * u if one == error else 0.0 for one, u in SHARED.items()}
        self.v = rows[:, 0] * (1 - off["speed scale"]) - off["speed zero"]
        self.pull = rows[:, 1] * (1 - off["cell scale"]) - off["cell zero"]
        self.angle = rows[:, 2] * DEGREE - off["angle zero"]
        volume = spec["volume"] * (1 - off["volume"])
        self.lift = GRAVITY * (spec["mass"] - off["mass"] - DENSITY * volume)
        self.share = 1 - self.pull * np.sin(self.angle) / self.lift
        self.drag = self.pull * np.cos(self.angle)
        self.v0 = scipy.stats.gmean(self.v)
        factor = spec["area"] / (0.93 * np.pi * spec["span"] ** 2) + 0.0095
        self.e0 = 2 * factor * self.lift ** 2 / (DENSITY * spec["area"] * self.v0 ** 2)
        self.mean = np.array([0.0, -0.006 * self.lift, self.e0])
        self.precision = np.diag([0.0, (0.008 * self.lift) ** -2.0, (0.2 * self.e0) ** -2.0])
        self.fixed = scale
        self.settle()

    def terms(self, s, share):
        return np.column_stack([(s / self.v0) ** 2, share * np.ones_like(s), (share * self.v0 / s) ** 2])

    def slopes(self, s, share):
        return np.column_stack([2 * s / self.v0 ** 2, 0 * s, -2 * (share * self.v0) ** 2 / s ** 3])

    def settle(self):
        n = len(self.v)
        pairs = np.arange(n) // 2
        count = pairs[-1] + 1
        s, y, weight, k, p = self.v, self.drag, np.ones(n), self.fixed or 1.0, None
        for _ in range(200):
            if p is not None:
                fitted, steep = self.terms(s, self.share) @ p, self.slopes(s, self.share) @ p
                pulled = fitted / np.cos(self.angle)
                u_pull = np.hypot(0.015 * pulled, 0.8)
                u_drag2 = (np.cos(self.angle) * u_pull) ** 2 + (pulled * np.sin(self.angle) * 0.5 * DEGREE) ** 2
                u_speed2 = (0.01 * self.v) ** 2
                gap = self.drag - fitted - steep * (self.v - s)
                s = self.v + u_speed2 * steep * gap / (u_drag2 + steep ** 2 * u_speed2)
                steep = self.slopes(s, self.share) @ p
                weight = 1 / (u_drag2 + steep ** 2 * u_speed2)
                y = self.drag - steep * (self.v - s)
            x = self.terms(s, self.share)
            normal = x.T @ np.diag(weight) @ x
            covariance = np.linalg.inv(normal / k + self.precision)
            p = covariance @ (x.T @ (weight * y) / k + self.precision @ self.mean)
            z = np.sqrt(weight) * (y - x @ p)
            paid = np.trace(covariance @ normal) / k
            within = z @ z / (n - paid)
            between = np.sum(np.bincount(pairs, z) ** 2 / np.bincount(pairs)) / (count - paid)
            if self.fixed is None:
                k = max(1.0, within, between)
        self.p, self.covariance, self.k, self.paid = p, covariance, k, paid
        self.from_data = covariance @ normal @ covariance / k
        self.within, self.between = within, between
        self.freedom = count - paid if k == between and k > within else n - paid

    def row(self, v):
        return np.array([(v / self.v0) ** 2, 1.0, (self.v0 / v) ** 2])

    def at(self, v):
        return self.row(v) @ self.p

    def best(self):
        return self.v0 * (self.p[2] / self.p[0]) ** 0.25

    def least_power(self):
        return minimize_scalar(lambda v: v * self.at(v), bounds=(1, 9), method="bounded", options=dict(xatol=1e-10)).x


QUANTITIES = {
    "bestLiftToDrag": lambda law: np.log(law.lift / law.at(law.best())),
    "bestSpeed": lambda law: np.log(law.best()),
    "dragAt4": lambda law: np.log(law.at(4.0)),
    "dragAt5": lambda law: np.log(law.at(5.0)),
}


def gradient(law, quantity):
    p, slopes = law.p, []
    for j in range(3):
        step = 1e-3 * np.eye(3)[j]
        values = []
        for factor in (2, 1, -1, -2):
            law.p = p + factor * step
            values.append(quantity(law))
        slopes.append((-values[0] + 8 * values[1] - 8 * values[2] + values[3]) / (12 * 1e-3))
    law.p = p
    return np.array(slopes)


def study(name):
    law = Law(name)
    moved = {error: [Law(name, error, sign, law.k) for sign in (1, -1)] for error in SHARED}
    parts = {}
    for what, quantity in QUANTITIES.items():
        g = gradient(law, quantity)
        parts[what] = dict(log=quantity(law), own=g @ law.covariance @ g, data=g @ law.from_data @ g,
                           shared={e: (quantity(a) - quantity(b)) / 2 for e, (a, b) in moved.items()})
    return law, moved, parts


def told(log, variance, scatter):
    freedom = variance ** 2 / sum(one ** 2 / nu for one, nu in scatter)
    reach = student.ppf(0.975, freedom) * np.sqrt(variance)
    return dict(value=np.exp(log), low=np.exp(log - reach), high=np.exp(log + reach), u=np.sqrt(variance), freedom=freedom)


def single(one, what):
    law, _, parts = one
    part = parts[what]
    variance = part["own"] + sum(c ** 2 for c in part["shared"].values())
    return told(part["log"], variance, [(part["data"], law.freedom)])


def ratio(one, two, what):
    a, b = one[2][what], two[2][what]
    shared = sum(a["shared"][e] ** 2 + b["shared"][e] ** 2 if e in OWN else (b["shared"][e] - a["shared"][e]) ** 2
                 for e in SHARED)
    return told(b["log"] - a["log"], a["own"] + b["own"] + shared, [(a["data"], one[0].freedom), (b["data"], two[0].freedom)])


def band(one, two, low=3.7, high=6.8, count=63):
    speeds = np.linspace(low, high, count)
    rows = [np.array([side[0].row(v) for v in speeds]) for side in (one, two)]
    gap = rows[1] @ two[0].p - rows[0] @ one[0].p
    k = sum(x @ side[0].covariance @ x.T for x, side in zip(rows, (one, two)))
    for error in SHARED:
        moved = [np.array([(a.at(v) - b.at(v)) / 2 for v in speeds]) for a, b in (side[1][error] for side in (one, two))]
        for change in (moved if error in OWN else [moved[1] - moved[0]]):
            k = k + np.outer(change, change)
    u = np.sqrt(np.diag(k))
    data = [np.einsum("ij,jk,ik->i", x, side[0].from_data, x) for x, side in zip(rows, (one, two))]
    freedom = np.min(u ** 4 / (data[0] ** 2 / one[0].freedom + data[1] ** 2 / two[0].freedom))
    length = sum(np.arccos(min(1.0, k[i, i + 1] / (u[i] * u[i + 1]))) for i in range(count - 1))
    c = brentq(lambda c: length / np.pi * (1 + c * c / freedom) ** (-freedom / 2) + 2 * student.sf(c, freedom) - 0.05, 1, 20,
               xtol=1e-13)
    at = [0, count // 2, count - 1]
    joint = gap[at] @ np.linalg.solve(k[np.ix_(at, at)], gap[at]) / 3
    return dict(freedom=freedom, length=length, factor=c, f=joint, pValue=fisher.sf(joint, 3, freedom),
                speeds=speeds[at].tolist(), difference=gap[at].tolist(), u=u[at].tolist(),
                less=speeds[gap < -c * u].tolist(), more=speeds[gap > c * u].tolist())


def shown(one):
    law, _, parts = one
    part = parts["bestLiftToDrag"]
    se = np.sqrt(np.diag(law.covariance))
    return dict(
        lift=law.lift, referenceSpeed=law.v0, expectedLiftTerm=law.e0, parameters=law.p.tolist(), standardErrors=se.tolist(),
        correlations=[law.covariance[i, j] / (se[i] * se[j]) for i, j in ((0, 1), (0, 2), (1, 2))],
        effectiveParameters=law.paid, within=law.within, between=law.between, scale=law.k, freedom=law.freedom,
        a=law.p[0] / law.v0 ** 2, d=law.p[1], e=law.p[2] * law.v0 ** 2, leastPowerSpeed=law.least_power(),
        partsOfBestLiftToDrag=dict(data=np.sqrt(part["data"]), planform=np.sqrt(part["own"] - part["data"]), shared=part["shared"]),
        **{what: single(one, what) for what in QUANTITIES},
    )


sides = {name: study(name) for name in DESIGNS}
pair = list(sides.values())
json.dump(dict(
    versions=dict(python=sys.version.split()[0], numpy=np.__version__, scipy=scipy.__version__),
    gravity=GRAVITY, density=DENSITY, shared=SHARED, designs=DESIGNS,
    readings={name: table(name).tolist() for name in DESIGNS},
    fits={name: shown(one) for name, one in sides.items()},
    ratios={what: ratio(*pair, what) for what in QUANTITIES},
    band=band(*pair),
), sys.stdout, indent=1)
print()
