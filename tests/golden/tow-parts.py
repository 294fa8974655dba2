"""Parent of tow-parts.json: the drag of alder in tow-example.json by its parts, by numpy and scipy.

Run: python3 tests/golden/tow-parts.py > tests/golden/tow-parts.json

Its own code throughout, from the printed formulas: plate friction (Blasius; Prandtl and Schlichting; Prandtl's transition), form
factor, spray and junction (Hoerner, Fluid-Dynamic Drag, 1965), and scipy's least squares for the tare readings. The fit to the
whole craft is that of tow-example.py. The tare readings are invented.
"""
import contextlib
import io
import json
import runpy
import sys
from pathlib import Path

import numpy as np
import scipy
from scipy.optimize import least_squares
from scipy.stats import t as student

with contextlib.redirect_stdout(io.StringIO()):
    whole = runpy.run_path(str(Path(__file__).parent / "tow-example.py"))
Law, SHARED, DENSITY, DEGREE = (whole[name] for name in ("Law", "SHARED", "DENSITY", "DEGREE"))

VISCOSITY, TRANSITION = 1.1386e-6, 2e5
STRUTS = dict(count=1, chord=0.12, thickness=0.0144)
DEPTH, U_DEPTH_MEAN, U_DEPTH = 0.4, 0.01, 0.03
SHARES = dict(struts=0.4, spray=0.5, junction=0.6, rider=0.3)
# speed m/s, tension N, angle degrees, depth m: struts alone
TARES = np.array([[3.61, 4.1, 1.2, 0.41], [4.18, 5.4, 2.1, 0.38], [4.83, 6.7, 0.7, 0.40], [5.42, 8.9, 1.6, 0.42],
                  [5.97, 9.8, 1.9, 0.37], [6.66, 12.9, 0.9, 0.41]])
EXPONENT = 0.3


def plate(reynolds):
    turbulent = lambda re: 0.455 / np.log10(re) ** 2.58
    laminar = lambda re: 1.328229 / np.sqrt(re)
    mixed = turbulent(reynolds) - TRANSITION / reynolds * (turbulent(TRANSITION) - laminar(TRANSITION))
    return np.where(reynolds <= TRANSITION, laminar(reynolds), mixed)


def struts(v, depth):
    """Friction with form, spray, junction in N."""
    chord, thick, ratio = STRUTS["chord"], STRUTS["thickness"], STRUTS["thickness"] / STRUTS["chord"]
    q = DENSITY / 2 * v ** 2
    friction = q * chord * depth * 2 * plate(v * chord / VISCOSITY) * (1 + 2 * ratio + 60 * ratio ** 4)
    return friction, 0.24 * q * thick ** 2, q * thick ** 2 * (17 * ratio ** 2 - 0.05)


def rider(v):
    return 0.5 * 1.225 * 0.55 * v ** 2


class Tare:
    """Factor and exponent on the struts' friction and spray, with one shared error taken off the readings."""

    def __init__(self, error=None, sign=0, scale=None):
        off = {one: sign * u if one == error else 0.0 for one, u in SHARED.items()}
        v = TARES[:, 0] * (1 - off["speed scale"]) - off["speed zero"]
        pull = TARES[:, 1] * (1 - off["cell scale"]) - off["cell zero"]
        angle = TARES[:, 2] * DEGREE - off["angle zero"]
        depth = TARES[:, 3]
        drag = pull * np.cos(angle)
        self.v0 = scipy.stats.gmean(v)
        shape = lambda s, d: struts(s, d)[0] + struts(s, d)[1]
        base, log = shape(v, depth), np.log(v / self.v0)
        step = 1e-2
        by_speed = (shape(v * (1 + step), depth) - shape(v * (1 - step), depth)) / (2 * step * v)
        by_depth = (shape(v, depth * (1 + step)) - shape(v, depth * (1 - step))) / (2 * step * depth)
        law = lambda p: np.exp(p[0]) * base * np.exp(p[1] * log)
        p, k = np.array([np.log(drag.sum() / base.sum()), 0.0]), scale or 1.0
        for _ in range(60):
            here = law(p)
            u2 = ((np.cos(angle) * np.hypot(0.015 * here / np.cos(angle), 0.8)) ** 2
                  + (here * np.tan(angle) * 0.5 * DEGREE) ** 2
                  + (here / base * by_speed * 0.01 * v) ** 2 + (here / base * by_depth * U_DEPTH) ** 2)
            u = np.sqrt(u2)
            p = least_squares(lambda p: np.append((drag - law(p)) / u / np.sqrt(k), p[1] / EXPONENT), p,
                              xtol=1e-15, ftol=1e-15, gtol=1e-15).x
            j = np.column_stack([law(p), law(p) * log]) / u[:, None]
            normal = j.T @ j
            covariance = np.linalg.inv(normal / k + np.diag([0, EXPONENT ** -2]))
            paid = np.trace(covariance @ normal) / k
            if scale is None:
                k = max(1.0, np.sum(((drag - law(p)) / u) ** 2) / (len(v) - paid))
        self.p, self.k, self.covariance, self.shape = p, k, covariance, shape
        self.from_data = covariance @ normal @ covariance / k
        self.freedom = len(v) - paid

    def at(self, v, depth=DEPTH):
        return np.exp(self.p[0]) * self.shape(v, depth) * (v / self.v0) ** self.p[1]

    def variance(self, v, covariance):
        g = np.array([1.0, np.log(v / self.v0)])
        return g @ covariance @ g


def split(v, tared):
    law, moved = study
    friction, spray, junction = (float(one) for one in struts(v, DEPTH))
    parts = dict(junction=(junction, (SHARES["junction"] * junction) ** 2), rider=(rider(v), (SHARES["rider"] * rider(v)) ** 2))
    deeper = struts(v, DEPTH + U_DEPTH_MEAN)
    changes = {e: (a.at(v) - b.at(v)) / 2 for e, (a, b) in moved.items()}
    lifts = {e: np.log(a.lift / b.lift) / 2 for e, (a, b) in moved.items()}
    g = law.row(v)
    own, scatter = g @ law.covariance @ g, [(g @ law.from_data @ g, law.freedom)]
    if tared:
        value = tare.at(v)
        by_depth = (tare.at(v, DEPTH + U_DEPTH_MEAN) - value) ** 2
        tare_changes = {e: (a.at(v) - b.at(v)) / 2 for e, (a, b) in tares.items()}
        parts["strutsAndSpray"] = (value, value ** 2 * tare.variance(v, tare.covariance) + by_depth)
        scatter.append((value ** 2 * tare.variance(v, tare.from_data), tare.freedom))
        changes = {e: c - tare_changes[e] for e, c in changes.items()}
        struts_u = np.sqrt(parts["strutsAndSpray"][1] + sum(c ** 2 for c in tare_changes.values()))
    else:
        parts["struts"] = (friction, (SHARES["struts"] * friction) ** 2 + (deeper[0] - friction) ** 2)
        parts["spray"] = (spray, (SHARES["spray"] * spray) ** 2)
        struts_u = np.sqrt(parts["struts"][1])
    wing = law.at(v) - sum(value for value, _ in parts.values())
    own = own + sum(variance for _, variance in parts.values())
    variance = own + sum(c ** 2 for c in changes.values())
    freedom = variance ** 2 / sum(a ** 2 / nu for a, nu in scatter)
    inverse = wing / law.lift
    of_ratio = (own + sum((c - wing * lifts[e]) ** 2 for e, c in changes.items())) / law.lift ** 2
    ratio_freedom = of_ratio ** 2 / sum((a / law.lift ** 2) ** 2 / nu for a, nu in scatter)
    reach = student.ppf(0.975, ratio_freedom) * np.sqrt(of_ratio)
    return dict(speed=v, total=law.at(v), parts={name: value for name, (value, _) in parts.items()}, strutsUncertainty=struts_u,
                wing=wing, wingUncertainty=np.sqrt(variance), wingFreedom=freedom,
                liftToDrag=1 / inverse, low=1 / (inverse + reach), high=1 / (inverse - reach), ratioFreedom=ratio_freedom)


study = whole["study"]("alder")[:2]
tare = Tare()
tares = {error: [Tare(error, sign, tare.k) for sign in (1, -1)] for error in SHARED}
json.dump(dict(
    versions=dict(python=sys.version.split()[0], numpy=np.__version__, scipy=scipy.__version__),
    viscosity=VISCOSITY, struts=STRUTS, depth=DEPTH, meanDepthUncertainty=U_DEPTH_MEAN, depthUncertainty=U_DEPTH,
    readings=TARES.tolist(),
    tare=dict(factor=np.exp(tare.p[0]), exponent=tare.p[1], covariance=tare.covariance.tolist(),
              fromData=tare.from_data.tolist(), scale=tare.k, freedom=tare.freedom),
    formulas=[dict(speed=v, depth=d, friction=float(struts(v, d)[0]), spray=struts(v, d)[1], junction=struts(v, d)[2])
              for v, d in ((1.5, 0.3), (3.6, 0.4), (5.0, 0.4), (8.0, 0.6))],
    tared=[split(v, True) for v in (3.7, 4.5, 6.5)], byFormula=[split(v, False) for v in (3.7, 4.5, 6.5)],
), sys.stdout, indent=1)
print()
