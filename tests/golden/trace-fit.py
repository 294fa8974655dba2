"""Parent of trace-fit.json: a drag law from three invented speed traces, by scipy.

Run: python3 -W ignore tests/golden/trace-fit.py > tests/golden/trace-fit.json

The motion is integrated by DOP853 at 1e-12, the fit is least squares on residuals whitened by the Cholesky factor of the
dense covariance (exp(-|t - s|/memory)), with the runs' own forces and the planform as extra residuals; derivatives are
central differences. The noise is then found by the restricted likelihood with dense matrices.
"""
import json
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import least_squares, minimize_scalar

rng = np.random.default_rng(20310705)
LIFT, V0 = 820.0, 4.4
TRUE = np.array([31.0, -4.0, 37.0])
EXPECTED = dict(constant=(-4.92, 6.56), liftTerm=(700.0, 140.0))
NOISE = dict(standardDeviation=0.05, memory=0.3)
phi = lambda v: 1 + 0.25 * np.exp(-((v - 2.6) / 0.9) ** 2)
RUNS = []
for weight, launch, hz, seconds, slope, steepening in ((820.0, 5.6, 10, 3.2, 0.024, 0.0), (812.0, 5.1, 4, 2.75, 0.02, 0.3), (835.0, 4.7, 20, 1.8, 0.03, -0.2)):
    times = np.arange(0, seconds + 1e-9, 1 / hz)
    RUNS.append(dict(times=times, effectiveMass=weight / 9.4, weight=weight, sinkThrust=slope * weight, sinkSteepening=steepening, offsetUncertainty=1.5, launch=launch))


def motion(run, p, v_start, offset, grow, steepening=0.0):
    l = run["weight"] / LIFT
    t0, t1 = run["times"][0], run["times"][-1]
    rate = lambda t, v: -(p[0] * (v / V0) ** 2 + p[1] * l + p[2] * l * l * phi(v) * (V0 / v) ** 2 + offset - run["sinkThrust"] - grow(t) - steepening * run.get("unit", lambda _: 0)(t)) / run["effectiveMass"]
    return solve_ivp(rate, (t0, t1), [v_start], t_eval=run["times"], method="DOP853", rtol=1e-12, atol=1e-12).y[0]


def growth(run, speeds):
    """Steepening linear in time, without mean over the distance as the samples tell it."""
    t = run["times"]
    part = np.diff(t) * (speeds[1:] + speeds[:-1]) / 2
    middle = (part * (t[1:] + t[:-1]) / 2).sum() / part.sum()
    rate = 2 * run["sinkThrust"] / (t[-1] - t[0])
    run["unit"] = lambda time: rate * (time - middle)
    return lambda time: run["sinkSteepening"] * run["unit"](time)


def covariance(t, memory):
    return np.exp(-np.abs(t[:, None] - t[None]) / memory)


for run in RUNS:
    clean = motion(run, TRUE, run["launch"], 1.5 * rng.standard_normal(), lambda t: 0)
    run["speeds"] = np.round(clean + NOISE["standardDeviation"] * np.linalg.cholesky(covariance(run["times"], NOISE["memory"])) @ rng.standard_normal(len(clean)), 3)
    run["grow"] = growth(run, run["speeds"])


def model(theta):
    """Three terms, launch speed and offset of each run, and the common steepening where there is a tenth number."""
    p, steepening = theta[:3], theta[9] if len(theta) > 9 else 0.0
    return [motion(run, p, theta[3 + 2 * i], theta[4 + 2 * i], run["grow"], steepening) for i, run in enumerate(RUNS)]


def residuals(theta):
    out = []
    for i, (run, speeds) in enumerate(zip(RUNS, model(theta))):
        factor = np.linalg.cholesky(NOISE["standardDeviation"] ** 2 * covariance(run["times"], NOISE["memory"]))
        out += [np.linalg.solve(factor, run["speeds"] - speeds), [theta[4 + 2 * i] / run["offsetUncertainty"]]]
    (d, ud), (e, ue) = EXPECTED["constant"], EXPECTED["liftTerm"]
    out.append([(theta[1] - d) / ud, (theta[2] - e / V0 ** 2) / (ue / V0 ** 2)])
    if len(theta) > 9:
        out.append([theta[9] / STEEPENING])
    return np.concatenate(out)


STEEPENING = 0.4
start = np.concatenate([TRUE] + [[run["launch"], 0.0] for run in RUNS])
fit = least_squares(residuals, start, jac="3-point", xtol=1e-14, ftol=1e-14, gtol=1e-14, x_scale=np.maximum(1, np.abs(start)))
C = np.linalg.inv(fit.jac.T @ fit.jac)
wide = least_squares(residuals, np.append(fit.x, 0.0), jac="3-point", xtol=1e-14, ftol=1e-14, gtol=1e-14, x_scale=np.maximum(1, np.abs(np.append(fit.x, 1.0))))
CW = np.linalg.inv(wide.jac.T @ wide.jac)

# Restricted likelihood of the noise with launch speed and offset of each run and the shape of the law projected out.
columns = []
for j in (0, 2, *range(3, 9)):
    h = 1e-4 * max(1, abs(fit.x[j]))
    up, down = fit.x.copy(), fit.x.copy()
    up[j] += h
    down[j] -= h
    columns.append((np.concatenate(model(up)) - np.concatenate(model(down))) / (2 * h))
X = np.array(columns).T
y = np.concatenate([run["speeds"] - speeds for run, speeds in zip(RUNS, model(fit.x))])


def restricted(log_memory):
    V = scipy.linalg.block_diag(*[covariance(run["times"], np.exp(log_memory)) for run in RUNS])
    W = np.linalg.inv(V)
    A = X.T @ W @ X
    r = y - X @ np.linalg.solve(A, X.T @ W @ y)
    free = len(y) - X.shape[1]
    variance = r @ W @ r / free
    return free * np.log(variance) + np.linalg.slogdet(V)[1] + np.linalg.slogdet(A)[1], variance


best = minimize_scalar(lambda x: restricted(x)[0], bounds=np.log((0.02, 3)), method="bounded", options=dict(xatol=1e-9))
json.dump(
    dict(
        versions=dict(python=sys.version.split()[0], numpy=np.__version__, scipy=scipy.__version__),
        lift=LIFT,
        referenceSpeed=V0,
        expected={name: dict(mean=m, standardUncertainty=u) for name, (m, u) in EXPECTED.items()},
        noise=NOISE,
        runs=[{**{name: run[name] for name in ("effectiveMass", "weight", "sinkThrust", "sinkSteepening", "offsetUncertainty")}, "times": run["times"].tolist(), "speeds": run["speeds"].tolist()} for run in RUNS],
        parameters=fit.x[:3].tolist(),
        covariance=C[:3, :3].tolist(),
        own=[dict(launchSpeed=fit.x[3 + 2 * i], offset=fit.x[4 + 2 * i]) for i in range(3)],
        steepened=dict(uncertainty=STEEPENING, steepening=wide.x[9], parameters=wide.x[:3].tolist(), covariance=CW[:3, :3].tolist()),
        restricted=dict(memory=float(np.exp(best.x)), standardDeviation=float(np.sqrt(restricted(best.x)[1]))),
    ),
    sys.stdout,
    indent=1,
)
