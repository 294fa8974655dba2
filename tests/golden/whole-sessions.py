"""Parent of whole-sessions.json: awkward invented sessions from their rows to ratio, variance and degrees of freedom.

Written apart from the library: numpy's least squares for blocks, scipy's Bessel functions and adaptive quadrature for the
surface, numpy's Gauss-Legendre of 40 points for means along the path, plain loops for everything that is left out or moved.

Run: python3 tests/golden/whole-sessions.py > tests/golden/whole-sessions.json
"""
import copy
import functools
import json
import math
import sys

import numpy as np
import scipy
from numpy.polynomial import chebyshev
from scipy.integrate import quad
from scipy.special import j1
from scipy.stats import t as student

G = 9.80665
USUAL = dict(launch_speed=(0.08, 0.0), end_speed=(0.08, 0.0), drop=(0.02, 0.0), distance=(0.15, 0.012))
DESIGNS = dict(
    alder=dict(span=0.9, area=0.15, volume=0.0020), birch=dict(span=1.15, area=0.17, volume=0.0028))
NODES, WEIGHTS = np.polynomial.legendre.leggauss(40)


def density(celsius, salinity):
    """EOS-80 at zero pressure; salinity in kg/kg."""
    t, s = 1.00024 * celsius, salinity / 0.03516504 * 35
    pure = np.polyval([6.536332e-9, -1.120083e-6, 1.001685e-4, -9.09529e-3, 6.793952e-2, 999.842594], t)
    return (pure + s * np.polyval([5.3875e-9, -8.2467e-7, 7.6438e-5, -4.0899e-3, 0.824493], t)
            + s**1.5 * np.polyval([-1.6546e-6, 1.0227e-4, -5.72466e-3], t) + 4.8314e-4 * s * s)


def phi_exact(v, span, depth):
    k, h = G * span / v**2, depth / span
    lid = quad(lambda z: 2 * math.exp(-4 * h * z) * j1(z)**2 / z, 0, np.inf, epsabs=1e-12, limit=400)[0]
    wave = quad(lambda x: (1 + x * x)**1.5 * math.exp(-2 * k * h * (1 + x * x))
                * (j1(k / 2 * x * math.sqrt(1 + x * x)) / (k / 2 * x * math.sqrt(1 + x * x)))**2 if x > 0 else
                math.exp(-2 * k * h) / 4, 0, math.sqrt(40 / (2 * k * h)), epsabs=1e-12, limit=800)[0]
    return 1 - lid + 2 * k * k * wave


@functools.lru_cache(maxsize=None)
def phi_of(span, depth):
    """Chebyshev fit over 1.8 to 6.5 m/s, all speeds that these sessions hold."""
    points = 4.15 + 2.35 * np.cos(np.pi * (np.arange(28) + 0.5) / 28)
    fit = chebyshev.Chebyshev.fit(points, [phi_exact(v, span, depth) for v in points], 27, domain=[1.8, 6.5])
    return fit


def craft(name, mass, depth, rho):
    d = DESIGNS[name]
    carried = mass - rho * d["volume"]
    weight, chord = carried * G, d["area"] / d["span"]
    still = math.pi / 4 * rho * chord**2 * d["span"]
    moving = mass + still * (0.12**2 * math.cos(0.15)**2 + math.sin(0.15)**2)
    a = rho / 2 * (0.0135 * d["area"] + 0.0095 * 0.12 * depth + 0.24 * 0.0144**2) + 0.5 * 1.225 * 0.55
    k = d["area"] / (math.pi * d["span"]**2 * 0.93) + 0.0095
    return dict(weight=weight, kappa=moving / carried, a=a, e=2 * k * weight**2 / (rho * d["area"]),
                phi=phi_of(d["span"], depth))


def fbar(c, v0, v1, factor):
    u0, u1 = v0 * v0, min(v1, v0 - 0.02)**2
    u = (u0 + u1) / 2 + (u0 - u1) / 2 * NODES
    return 1 / np.sum(WEIGHTS / 2 / ((c["a"] * u + c["e"] * factor * c["phi"](np.sqrt(u)) / u) / c["weight"]))


def condition(session, quantity, block):
    rows = [c for c in session["conditions"] if c["quantity"] == quantity]
    own = [c for c in rows if c["block"] == block and block is not None]
    both = [c for c in rows if c["block"] is None]
    return (own or both or [None])[0]


def prepare(sessions):
    """Rows of all sessions with block, water and uncertainties."""
    rows, media = [], []
    for place, session in enumerate(sessions):
        blocks = sorted({r["block"] for r in session["runs"]}, key=str)
        waters = {}
        for block in blocks:
            warm, salt = condition(session, "water_temperature", block), condition(session, "salinity", block)
            waters[block] = density(15 if warm is None else warm["value"] - 273.15, 0 if salt is None else salt["value"])
        media.append(np.mean(list(waters.values())))
        for r in session["runs"]:
            stated = condition(session, "drop", r["block"])
            taken = r["drop"] is None
            own = r.get("u", {})
            u = []
            for column in USUAL:
                fixed, share = USUAL[column]
                lines = [i for i in session["instruments"] if i["quantity"] == column and i["kind"] == "independent"]
                if lines:
                    fixed = math.sqrt(sum(i["uncertainty"]**2 for i in lines if not i["relative"]))
                    share = math.sqrt(sum(i["uncertainty"]**2 for i in lines if i["relative"]))
                reading = r[column] if r[column] is not None else stated["value"]
                u.append(own.get(column, math.hypot(fixed, share * reading)))
            rows.append(dict(
                session=place, block=(place, r["block"]), design=r["design"], v0=r["launch_speed"], v1=r["end_speed"],
                drop=stated["value"] if taken else r["drop"], x=r["distance"], mass=r["mass"], depth=r["depth"],
                stalled=r["ended"] == "stalled", rho=waters[r["block"]], u=u,
                took=stated["row"] if taken else None))
    return rows, float(np.mean(media))


def log_x(name, rows, at, factor=1.0):
    depth = float(np.mean([r["depth"] for r in rows]))
    ref = craft(name, at["mass"], at["depth"].get(name, depth), at["rho"])
    energy = predicted = 0.0
    ends = []
    for r in rows:
        c = craft(name, r["mass"], r["depth"], r["rho"])
        energy += r["drop"] + c["kappa"] * (r["v0"]**2 - r["v1"]**2) / (2 * G)
        predicted += r["x"] * fbar(c, r["v0"], r["v1"], factor)
        if r["stalled"]:
            ends.append(r["v1"] * math.sqrt(ref["weight"] / c["weight"]))
    end = at["end"] if at["end"] is not None else np.mean(ends)
    height = at["drop"] + ref["kappa"] * (at["speed"]**2 - end**2) / (2 * G)
    return math.log(height / (energy / predicted * fbar(ref, at["speed"], end, factor)))


def side(name, rows, at):
    full, n = log_x(name, rows, at), len(rows)
    pseudo = [n * full - (n - 1) * log_x(name, rows[:i] + rows[i + 1:], at) for i in range(n)]
    measured = 0.0
    for i in range(n):
        for field, u in zip(("v0", "v1", "drop", "x"), rows[i]["u"]):
            ends = []
            for sign in (1, -1):
                moved = copy.copy(rows)
                moved[i] = {**rows[i], field: rows[i][field] + sign * u / 100}
                ends.append(log_x(name, moved, at))
            measured += ((ends[0] - ends[1]) * 50)**2
    shape = (log_x(name, rows, at, math.exp(0.3)) - log_x(name, rows, at, math.exp(-0.3))) / 2
    return dict(full=full, pseudo=pseudo, n=n, measured=measured, shape=shape, blocks=[r["block"] for r in rows])


def scatter(a, b):
    """Log ratio, variance of its scatter, sum of variance squared over degrees of freedom."""
    names = sorted({*a["blocks"], *b["blocks"]}, key=str)
    shared = [k for k in names if k in a["blocks"] and k in b["blocks"]]
    if len(names) == 1:
        v = [max(np.var(s["pseudo"], ddof=1) / s["n"], s["measured"] / 4) for s in (a, b)]
        return b["full"] - a["full"], sum(v), sum(x * x / (s["n"] - 1) for x, s in zip(v, (a, b)))
    one_run = (a["measured"] * a["n"]**2 + b["measured"] * b["n"]**2) / (a["n"] + b["n"])
    pick = lambda s, k: [p for p, block in zip(s["pseudo"], s["blocks"]) if block == k]
    if len(shared) >= 4:
        gaps = [np.mean(pick(b, k)) - np.mean(pick(a, k)) for k in shared]
        floor = one_run / 4 * sum(1 / len(pick(a, k)) + 1 / len(pick(b, k)) for k in shared) / len(shared)**2
        v, freedom, ratio = max(np.var(gaps, ddof=1) / len(gaps), floor), len(gaps) - 1, np.mean(gaps)
    else:
        y = np.array(a["pseudo"] + b["pseudo"])
        x = np.column_stack([[0.0] * a["n"] + [1.0] * b["n"]]
                            + [[float(k == one) for one in a["blocks"] + b["blocks"]] for k in names])
        beta, *_ = np.linalg.lstsq(x, y, rcond=None)
        freedom = len(y) - len(names) - 1
        inverse = np.linalg.inv(x.T @ x)[0, 0]
        v, ratio = max(np.sum((y - x @ beta)**2) / freedom * inverse, one_run / 4 * inverse), beta[0]
        own = [[np.array(pick(s, k)) for k in names] for s in (a, b)]
        # Rows of the pseudo-inverse: what each run weighs in the contrast.
        weights = np.linalg.pinv(x)[0]
        parts = []
        for cells, which in zip(own, (weights[:a["n"]], weights[a["n"]:])):
            cells = [c for c in cells if len(c)]
            free = sum(len(c) for c in cells) - len(cells)
            parts.append((sum(np.sum((c - c.mean())**2) for c in cells) / free * np.sum(which**2), free)
                         if free else None)
        if None not in parts:
            apart = sum(p for p, _ in parts)
            fourth = sum(p * p / f for p, f in parts)
            if fourth > 0 and (student.ppf(0.975, apart**2 / fourth) * math.sqrt(apart)
                               > student.ppf(0.975, freedom) * math.sqrt(v)):
                return ratio, apart, fourth
    return ratio, v, v * v / freedom


def shifts(sessions):
    """Every shared source: a function of one row that moves it by sign."""
    found = []
    for place, session in enumerate(sessions):
        common = [i for i in session["instruments"] if i["kind"] == "common"]
        speeds = {}
        for i in common:
            if i["quantity"] in ("launch_speed", "end_speed"):
                key = (i["instrument"], i["relative"], sum(
                    1 for o in common[:common.index(i)] if o["quantity"] == i["quantity"]
                    and o["instrument"] == i["instrument"] and o["relative"] == i["relative"]))
                speeds.setdefault(key, []).append(i)
            else:
                found.append((place, [i], None))
        found += [(place, group, None) for group in speeds.values()]
        if not any(i["quantity"] == "carried_mass" for i in session["instruments"]):
            found.append((place, [dict(quantity="carried_mass", uncertainty=0.5, relative=False)], None))
        for c in session["conditions"]:
            if c["quantity"] == "drop":
                u = 0.02 if c["uncertainty"] is None else c["uncertainty"]
                found.append((place, [dict(quantity="drop", uncertainty=u, relative=False)], c["row"]))
    return found


def moved(rows, shift, sign):
    place, parts, stated = shift
    fields = dict(launch_speed="v0", end_speed="v1", drop="drop", distance="x", carried_mass="mass")
    out = []
    for r in rows:
        r = dict(r)
        if r["session"] == place and (stated is None or r["took"] == stated):
            for p in parts:
                field = fields[p["quantity"]]
                r[field] += sign * p["uncertainty"] * (r[field] if p["relative"] else 1)
        out.append(r)
    return out


def compare(sessions):
    rows, rho = prepare(sessions)
    by = {name: [r for r in rows if r["design"] == name] for name in DESIGNS}
    mean = lambda field, which: float(np.mean([r[field] for r in which]))
    speed = round(np.mean([mean("v0", by[n]) for n in by]) * 10) / 10
    at = dict(speed=speed, drop=round(mean("drop", rows) * 100) / 100, mass=round(mean("mass", rows) * 10) / 10,
              rho=rho, depth={}, end=None)
    if min(sum(r["stalled"] for r in by[n]) for n in by) < 2:
        at["end"] = min(max(mean("v1", by[n]) for n in by), speed - 0.2)
    at["depth"] = {n: mean("depth", by[n]) for n in by}
    a, b = (side(n, by[n], at) for n in by)
    ratio, v, fourth = scatter(a, b)
    vs = max(a["shape"]**2 + b["shape"]**2, (a["shape"] - b["shape"])**2)
    vc = 0.0
    for shift in shifts(sessions):
        ends = [scatter(*(side(n, moved(by[n], shift, sign), at) for n in by))[0] for sign in (1, -1)]
        vc += ((ends[0] - ends[1]) / 2)**2
    total = v + vs + vc
    nu = total**2 / fourth
    half = student.ppf(0.975, nu) * math.sqrt(total)
    raw = mean("x", by["birch"]) / mean("x", by["alder"])
    return dict(speed=at["speed"], drop=at["drop"], mass=at["mass"], logRatio=float(ratio), scatter=float(v), shape=vs,
                common=float(vc), degreesOfFreedom=float(nu), low=float(math.exp(ratio - half)),
                high=float(math.exp(ratio + half)), probability=float(student.cdf(ratio / math.sqrt(total), nu)), raw=raw)


# --- the invented sessions ---------------------------------------------------------------------------------------------
ALDER = [(4.28, 2.89, .222, 9.48), (4.45, 3.04, .164, 8.97), (4.47, 3.18, .174, 9.05), (4.54, 3.08, .25, 8.54),
         (4.75, 3.19, .144, 10.95), (4.62, 3.06, .233, 9.52), (4.47, 3.17, .177, 8.79), (4.39, 3.02, .19, 8.6),
         (4.66, 3.11, .21, 10.1)]
BIRCH = [(3.9, 3.02, .255, 7.86), (4.19, 2.91, .19, 9.63), (3.47, 2.95, .168, 4.36), (3.71, 2.99, .147, 5.39),
         (3.94, 3.03, .085, 6.16), (4.33, 2.98, .209, 9.49), (3.69, 2.99, .221, 5.17), (4.05, 2.93, .2, 8.4),
         (3.8, 3.04, .18, 6.2)]


def runs(na, nb, edit=lambda r, i: {}):
    out = []
    for name, table, n in (("alder", ALDER, na), ("birch", BIRCH, nb)):
        for i in range(n):
            v0, v1, dz, x = table[i]
            r = dict(run=f"{name[0]}{i + 1}", design=name, launch_speed=v0, end_speed=v1, drop=dz, distance=x, mass=84.0,
                     depth=0.4, ended="stalled", block=None)
            out.append({**r, **edit(r, i)})
    return out


def session(rows, conditions=(), instruments=()):
    return dict(runs=rows, conditions=[dict(row=2 + i, block=None, uncertainty=None) | c for i, c in enumerate(conditions)],
                instruments=[dict(relative=False, instrument=None) | i for i in instruments])


def lopsided(r, i):
    return dict(block="evening" if i == 6 and r["design"] == "alder" or i > 0 and r["design"] == "birch" else "morning")


CASES = {
    "three runs against nine": [session(runs(3, 9))],
    "one run of a design in a block": [session(runs(7, 7, lopsided))],
    "a block with one design only": [session(runs(
        7, 7, lambda r, i: dict(block="late" if r["design"] == "birch" and i > 4 else "a" if i % 2 else "b")))],
    "two blocks, nine runs against four that scatter more": [session(runs(9, 4, lambda r, i: dict(
        block="ab"[i % 2], distance=r["distance"] * (1 if r["design"] == "alder" else 1.25 if i < 2 else 0.8))))],
    "four shared blocks": [session(runs(9, 7, lambda r, i: dict(block="abcd"[i % 4])))],
    "four shared blocks of equal rows, where the floor counts": [session(runs(8, 8, lambda r, i: dict(
        block="abcd"[i % 4], launch_speed=4.2, end_speed=3.0, drop=0.2, distance=9.0 if r["design"] == "alder" else 9.5)))],
    "two lopsided blocks of equal rows, where the floor counts": [session(runs(8, 8, lambda r, i: dict(
        block="a" if (r["design"] == "alder") != (i < 2) else "b", launch_speed=4.2, end_speed=3.0, drop=0.2,
        distance=9.0 if r["design"] == "alder" else 9.5)))],
    "boards that only touched, or stopped early": [session(runs(
        7, 7, lambda r, i: dict(ended="touched" if i > 2 else "stopped early", end_speed=r["end_speed"] + 0.05 * i)))],
    "some stopped early": [session(runs(
        7, 7, lambda r, i: dict(ended="stopped early", end_speed=3.3) if i in (1, 4) else {}))],
    "riders of other mass in each run": [session(runs(7, 7, lambda r, i: dict(mass=70.0 + 4 * i)))],
    "runs with uncertainties of their own": [session(runs(4, 4, lambda r, i: dict(
        launch_speed=4.4, end_speed=3.0, drop=0.2, distance=9.0,
        u=dict(launch_speed=0.3) if i == 0 else dict(distance=0.01, drop=0.05) if i == 1 else {})))],
    "a drop stated for each block": [session(
        runs(7, 7, lambda r, i: dict(block="ab"[i % 2], drop=None)),
        [dict(quantity="drop", value=0.18, uncertainty=0.05, block="a"), dict(quantity="drop", value=0.24, block="b")])],
    "two sources of one instrument, and a tape": [session(runs(7, 7), (), [
        dict(quantity="launch_speed", instrument="posts", uncertainty=0.01, relative=True, kind="common"),
        dict(quantity="launch_speed", instrument="posts", uncertainty=0.06, kind="common"),
        dict(quantity="end_speed", instrument="posts", uncertainty=0.01, relative=True, kind="common"),
        dict(quantity="end_speed", instrument="camera", uncertainty=0.04, kind="common"),
        dict(quantity="distance", instrument="tape", uncertainty=0.02, relative=True, kind="common"),
        dict(quantity="drop", instrument="pole", uncertainty=0.03, kind="common"),
        dict(quantity="drop", instrument="pole", uncertainty=0.01, kind="independent"),
        dict(quantity="drop", instrument="eye", uncertainty=0.02, kind="independent")])],
    "a lake and the sea": [
        session(runs(5, 0) + runs(0, 3), [dict(quantity="water_temperature", value=288.15)]),
        session(runs(2, 4, lambda r, i: dict(run="s" + r["run"], depth=0.5)), [
            dict(quantity="water_temperature", value=293.15), dict(quantity="salinity", value=0.035)])],
}

json.dump(dict(scipy=scipy.__version__, numpy=np.__version__, cases=[
    dict(name=name, sessions=sessions, expected=compare(sessions)) for name, sessions in CASES.items()]),
    sys.stdout, indent=1)
print()
