"""Their side of benchmark B: python decay_fits.py FOLDER ROUNDS, by scipy's least_squares over odeint."""
import json, sys, time
import numpy as np
from scipy.integrate import odeint
from scipy.optimize import least_squares

folder, rounds = sys.argv[1], int(sys.argv[2])
traces = json.load(open(folder + "/traces.json"))
seconds, noise = np.array(traces["times"]), traces["standardDeviation"]
# B may be zero, and a step is a share of the number stepped: one is added to it.
shift = np.array([0.0, 0.0, 1.0, 0.0])
step = 1e-3


def rate(v, t, A, B, C):
    u = v * v
    return -(A * u + B + C / u)


def scaled(speeds):
    v0 = np.sqrt(speeds.min() * speeds.max())
    scale = np.array([1.0, 1 / v0**2, 1.0, v0**2])

    def residuals(x):
        q = (x - shift) * scale
        return (odeint(rate, q[0], seconds, args=(q[1], q[2], q[3]), rtol=1e-8, atol=1e-8)[:, 0] - speeds) / noise

    return residuals, scale


def fit(speeds):
    residuals, scale = scaled(speeds)
    slope = -np.polyfit(seconds, speeds, 1)[0]
    # The difference step: smaller ones lose the minimum in the integrator's own noise.
    found = least_squares(residuals, shift + [speeds[0], slope / 2, 0.0, slope / 2], method="lm", diff_step=step, xtol=1e-10, ftol=1e-10, gtol=1e-10)
    covariance = np.linalg.inv(found.jac.T @ found.jac)
    return found.x, np.sqrt(np.diag(covariance)) * scale


def answer(speeds, x):
    """Standard errors by differences to both sides: those to one side, which is what is timed, miss by up to 1 %."""
    residuals, scale = scaled(speeds)
    jacobian = np.stack([(residuals(x + step * one) - residuals(x - step * one)) / (2 * step) for one in np.eye(4)], axis=1)
    errors = np.sqrt(np.diag(np.linalg.inv(jacobian.T @ jacobian))) * scale
    return dict(parameters=((x - shift) * scale)[1:].tolist(), standardErrors=errors[1:].tolist())


times = []
for r in range(rounds):
    start = time.perf_counter()
    fits = [fit(np.array(one)) for one in traces["speeds"]]
    times.append(1000 * (time.perf_counter() - start))
# Only a run of several rounds is asked for its answers: the whole process of one is timed.
answers = [answer(np.array(one), x) for one, (x, _) in zip(traces["speeds"], fits)] if rounds > 1 else None
print(json.dumps(dict(times=times, fits=answers, oneSided=[errors[1:].tolist() for _, errors in fits])))
