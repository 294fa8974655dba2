"""Their side of benchmark B: python decay_fits.py FOLDER ROUNDS, by scipy's least_squares over odeint."""
import json, sys, time
import numpy as np
from scipy.integrate import odeint
from scipy.optimize import least_squares

folder, rounds = sys.argv[1], int(sys.argv[2])
traces = json.load(open(folder + "/traces.json"))
seconds, noise = np.array(traces["times"]), traces["standardDeviation"]


def rate(v, t, A, B, C):
    u = v * v
    return -(A * u + B + C / u)


def fit(speeds):
    v0 = np.sqrt(speeds.min() * speeds.max())
    slope = -np.polyfit(seconds, speeds, 1)[0]
    scale = np.array([1.0, 1 / v0**2, 1.0, v0**2])

    def residuals(x):
        q = x * scale
        return (odeint(rate, q[0], seconds, args=(q[1], q[2], q[3]), rtol=1e-8, atol=1e-8)[:, 0] - speeds) / noise

    # The difference step: smaller ones lose the minimum in the integrator's own noise.
    found = least_squares(residuals, [speeds[0], slope / 2, 0.0, slope / 2], method="lm", diff_step=1e-3, xtol=1e-10, ftol=1e-10, gtol=1e-10)
    covariance = np.linalg.inv(found.jac.T @ found.jac)
    q = found.x * scale
    return dict(parameters=q[1:].tolist(), standardErrors=(np.sqrt(np.diag(covariance)) * scale)[1:].tolist())


times = []
for r in range(rounds):
    start = time.perf_counter()
    fits = [fit(np.array(one)) for one in traces["speeds"]]
    times.append(1000 * (time.perf_counter() - start))
print(json.dumps(dict(times=times, fits=fits)))
