"""Steady flight of three invented craft, written apart from the library: forces at given speeds, solved speeds.

Run: python3 tests/golden/steady-flight.py > tests/golden/steady-flight.json
Needs numpy and scipy (made with numpy 2.4, scipy 1.17). phi: 200-point Gauss-Legendre rule cut at exp(-36).
"""
import json
import math

import numpy as np
from scipy.optimize import brentq
from scipy.special import j1

NODES, WEIGHTS = np.polynomial.legendre.leggauss(200)
NODES, WEIGHTS = (NODES + 1) / 2, WEIGHTS / 2
CUT = 36.0


def phi(froude, depth):
    """Induced and wave drag of an elliptic line over its induced drag in unbounded water; depth in spans."""
    k = froude ** -2
    load = lambda z: (j1(z) / z) ** 2
    stretch = math.sqrt(CUT / (2 * k * depth))
    t = stretch * NODES
    image = CUT * NODES**2 / (4 * depth)
    faded = WEIGHTS * np.exp(-CUT * NODES**2)
    root = np.sqrt(1 + t * t)
    sigma = np.sum(faded * 2 * image * load(image) * CUT * NODES / (2 * depth))
    waves = 2 * k * k * stretch * math.exp(-2 * k * depth) * np.sum(faded * root**3 * load(k / 2 * t * root))
    return 1 - sigma + waves


def turbulent(reynolds):
    return 0.455 / math.log10(reynolds) ** 2.58


def friction(reynolds, transition):
    laminar = lambda r: 1.328229 / math.sqrt(r)
    if reynolds <= transition:
        return laminar(reynolds)
    return turbulent(reynolds) - transition / reynolds * (turbulent(transition) - laminar(transition))


def form(ratio):
    return 1 + 2 * ratio + 60 * ratio**4


def state(f, v, h):
    """All forces at speed v and depth h (no depth in air)."""
    in_air = f["medium"] == "air"
    chord, aspect = f["S"] / f["b"], f["b"] ** 2 / f["S"]
    q = f["rho"] * v * v / 2
    struts = 0 if in_air else f["n"]
    strut_ratio = f["ts"] / f["cs"]
    buoyancy = f["rho"] * f["g"] * (f["V"] + struts * 0.685 * f["cs"] * f["ts"] * (0 if in_air else h))
    surface = 1.0 if in_air else phi(v / math.sqrt(f["g"] * f["b"]), h / f["b"])
    least = 2 * friction(v * chord / f["nu"], f["Retr"]) * form(f["tc"])
    induced = surface / (math.pi * aspect * f["e"])
    strut = 0.0 if in_air else struts * q * 2 * f["cs"] * h * friction(v * f["cs"] / f["nu"], f["Retr"]) * form(strut_ratio)
    spray = struts * 0.24 * q * f["ts"] ** 2
    junction = struts * q * f["ts"] ** 2 * max(0, 17 * strut_ratio**2 - 0.05)
    rider = 0.0 if in_air else 1.225000018 / 2 * v * v * f["CdA"]
    rest = strut + spray + junction + rider
    slope = math.tan(f["theta"])
    qs = q * f["S"]
    # slope*(kv + Ki) CL^2 + (1 - 2 slope kv CLm) CL + slope (C0 + kv CLm^2 + rest/qS) - (W - B)/qS = 0
    a = slope * (f["kv"] + induced)
    b = 1 - 2 * slope * f["kv"] * f["CLm"]
    d = slope * (least + f["kv"] * f["CLm"] ** 2 + rest / qs) - (f["m"] * f["g"] - buoyancy) / qs
    lift = -2 * d / (b + math.sqrt(b * b - 4 * a * d))
    parts = dict(
        wingFriction=qs * least,
        viscousLift=qs * f["kv"] * (lift - f["CLm"]) ** 2,
        inducedAndWave=qs * induced * lift**2,
    )
    wing = sum(parts.values())
    total = wing + rest
    return dict(
        speed=v, reynolds=v * chord / f["nu"], liftCoefficient=lift, phi=surface, leastDragCoefficient=least, **parts,
        struts=strut, spray=spray, junction=junction, air=rider, wing=wing, total=total,
        tension=total / math.cos(f["theta"]), power=total * v,
    )


def slowest(f, share, h, low, high):
    def excess(v):
        s = state(f, v, h)
        return s["liftCoefficient"] - share * f["CLmax"] * (s["reynolds"] / 4e5) ** f["p"]
    return brentq(excess, low, high, xtol=1e-13)


def flat(f, key, h, low, high):
    return brentq(lambda v: state(f, v * 1.00001, h)[key] - state(f, v * 0.99999, h)[key], low, high, xtol=1e-12)


def crossing(f, key, value, h, low, high):
    return brentq(lambda v: state(f, v, h)[key] - value, low, high, xtol=1e-13)


COMMON = dict(medium="water", g=9.8107021356, tc=0.12, e=0.95, kv=0.010, CLm=0.2, p=0.10, theta=0.0, CdA=0.55, Retr=2e5)
SMALL = dict(COMMON, m=88, b=0.9, S=0.15, V=0.0016, CLmax=1.05, n=1, cs=0.12, ts=0.0144, rho=999.1010317, nu=1.13857136e-6)
WIDE = dict(COMMON, m=92, b=3.8, S=0.55, V=0.007, CLmax=1.0, n=2, cs=0.10, ts=0.012, theta=math.radians(-8),
            rho=1024.76174, nu=1.050791959e-6)
LIGHT = dict(WIDE, m=75, theta=0.0)
IN_AIR = dict(medium="air", rho=1.225000018, nu=1.460718573e-5, theta=0.0)
HIGH = dict(medium="air", rho=1.00655375, nu=1.71474362e-5, theta=0.0)
SMALL_AIR, WIDE_AIR = dict(SMALL, **IN_AIR), dict(WIDE, **IN_AIR)

takeoff = slowest(SMALL, 0.85, 0.65, 2, 6)
up, steep = dict(SMALL, theta=math.radians(10)), dict(SMALL, theta=math.radians(-80))
v_up, v_steep = slowest(up, 0.85, 0.65, 2, 6), slowest(steep, 0.85, 0.65, 4.9, 8)
best, power = flat(SMALL, "total", 0.4, 4.6, 5.4), flat(SMALL, "power", 0.4, 3.4, 4.4)
air_best, air_power = flat(SMALL_AIR, "total", 0, 140, 190), flat(SMALL_AIR, "power", 0, 100, 150)
wide_best, wide_air_best = flat(WIDE, "total", 0.3, 2.3, 3.0), flat(WIDE_AIR, "total", 0, 56, 75)
wide_takeoff = slowest(WIDE, 0.85, 0.45, 1.2, 3)
light_stall = slowest(LIGHT, 1, 0.3, 1, 3)
light_top, light_dip = flat(LIGHT, "total", 0.3, 1.65, 1.95), flat(LIGHT, "total", 0.3, 2.0, 2.4)
print(json.dumps(dict(
    small=dict(
        states=[state(SMALL, v, 0.4) for v in (3.5, 4.5, 6.0)],
        takeoffState=state(SMALL, takeoff, 0.65),
        stall=slowest(SMALL, 1, 0.4, 2, 6), takeoff=takeoff,
        leastDragSpeed=best, leastDrag=state(SMALL, best, 0.4)["total"],
        leastPowerSpeed=power, leastPower=state(SMALL, power, 0.4)["power"],
        held65=[crossing(SMALL, "tension", 65, 0.4, 3.5, best), crossing(SMALL, "tension", 65, 0.4, best, 9)],
        held70=[crossing(SMALL, "tension", 70, 0.4, 3.3, best), crossing(SMALL, "tension", 70, 0.4, best, 9)],
        held280W=[crossing(SMALL, "power", 280, 0.4, 3.3, power), crossing(SMALL, "power", 280, 0.4, power, 9)],
        up10=dict(takeoff=v_up, tension=state(up, v_up, 0.65)["tension"]),
        down80=dict(takeoff=v_steep, tension=state(steep, v_steep, 0.65)["tension"]),
    ),
    smallInAir=dict(
        states=[state(SMALL_AIR, v, 0) for v in (100, 130, 170)],
        stall=slowest(SMALL_AIR, 1, 0, 60, 160), takeoff=slowest(SMALL_AIR, 0.85, 0, 60, 160),
        leastDragSpeed=air_best, leastDrag=state(SMALL_AIR, air_best, 0)["total"],
        leastPowerSpeed=air_power, leastPower=state(SMALL_AIR, air_power, 0)["power"],
        stallAt2000=slowest(dict(SMALL, **HIGH), 1, 0, 60, 160),
    ),
    wide=dict(
        states=[state(WIDE, v, 0.3) for v in (1.7, 2.2, 3.0, 4.0)],
        takeoffState=state(WIDE, wide_takeoff, 0.45),
        stall=slowest(WIDE, 1, 0.3, 1.2, 3), takeoff=wide_takeoff,
        leastDragSpeed=wide_best, leastDrag=state(WIDE, wide_best, 0.3)["total"],
        powerAtStall=state(WIDE, slowest(WIDE, 1, 0.3, 1.2, 3), 0.3)["power"],
    ),
    wideInAir=dict(
        stall=slowest(WIDE_AIR, 1, 0, 30, 90), takeoff=slowest(WIDE_AIR, 0.85, 0, 30, 90),
        leastDragSpeed=wide_air_best, leastDrag=state(WIDE_AIR, wide_air_best, 0)["total"],
        powerAtStall=state(WIDE_AIR, slowest(WIDE_AIR, 1, 0, 30, 90), 0)["power"],
    ),
    lightWithHump=dict(
        stall=light_stall, dragAtStall=state(LIGHT, light_stall, 0.3)["total"],
        top=light_top, dragAtTop=state(LIGHT, light_top, 0.3)["total"],
        dip=light_dip, dragAtDip=state(LIGHT, light_dip, 0.3)["total"],
        held=[crossing(LIGHT, "tension", 32.5, 0.3, light_stall, light_top),
              crossing(LIGHT, "tension", 32.5, 0.3, light_top, light_dip),
              crossing(LIGHT, "tension", 32.5, 0.3, light_dip, 4)],
    ),
), indent=1))
