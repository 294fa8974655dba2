"""Parent of tow-instruments.json: what instruments of a tow tell, by numpy and scipy.

Made with Python 3.11, numpy 2.4.6, scipy 1.17.1 (pip install numpy==2.4.6 scipy==1.17.1):
    python3 tow-instruments.py > tow-instruments.json
Readings are made up: an autoregressive signal of known memory, two sets of known loads, passes in a turning tide.
"""
import json

import numpy as np
from scipy import stats

rng = np.random.default_rng(20312)


def signal(n, step, memory, mean, slope, scatter):
    """First-order autoregression with a correlation time in s."""
    share = np.exp(-step / memory)
    noise = rng.normal(size=n + 500)
    x = np.zeros(n + 500)
    for i in range(1, n + 500):
        x[i] = share * x[i - 1] + np.sqrt(1 - share**2) * noise[i]
    time = np.arange(n) * step
    return time, np.round(mean + slope * (time - time.mean()) + scatter * x[500:], 4)


def window(n, step, memory, mean, slope, scatter):
    time, value = signal(n, step, memory, mean, slope, scatter)
    line = stats.linregress(time, value)
    rest = value - line.intercept - line.slope * time
    power = np.abs(np.fft.rfft(rest, 4 * n))**2
    correlation = np.fft.irfft(power)[:n]
    correlation /= correlation[0]
    sums = 0.5 + np.cumsum(correlation[1:])
    lags = np.arange(1, n)
    stop = np.argmax(lags >= 3 * np.maximum(sums, 0.5))
    first = (n * correlation[1] + 2) / (n - 4)
    steps = max(sums[stop], 0.5 + first / (1 - first), 0.5)
    variance = rest @ rest / (n - 4 * steps)
    return dict(step=step, values=list(value), mean=value.mean(), slope=line.slope, correlationTime=steps * step,
                standardUncertainty=np.sqrt(variance * 2 * steps / n),
                slopeUncertainty=np.sqrt(variance * 2 * steps / ((time - time.mean())**2).sum()),
                standardDeviation=np.sqrt(variance))


def least_squares(columns, observed):
    design = np.column_stack(columns)
    parameters = np.linalg.lstsq(design, observed, rcond=None)[0]
    rest = observed - design @ parameters
    free = len(observed) - design.shape[1]
    covariance = np.linalg.inv(design.T @ design) * (rest @ rest) / free
    return parameters, covariance, rest @ rest, free


def loads():
    applied = [np.array([0., 25, 50, 75, 100, 125, 150]), np.array([0., 50, 100, 150])]
    reading = [np.round(1.01 * applied[0] + 0.4 + 0.2 * rng.normal(size=7), 2),
               np.round(1.013 * applied[1] + 0.4 + 0.2 * rng.normal(size=4), 2)]
    r, y = np.concatenate(reading), np.concatenate(applied)
    late = np.repeat([0., 1.], [7, 4])
    x = r - r.mean()
    p, _, apart, free = least_squares([np.ones(11), x, late, late * x], y)
    _, _, one, _ = least_squares([np.ones(11), x], y)
    f = (one - apart) / 2 / (apart / free)
    return dict(applied=[list(a) for a in applied], reading=[list(a) for a in reading], atCentre=p[2], slope=p[3], f=f,
                degreesOfFreedom=free, pValue=stats.f.sf(f, 2, free))


def passes():
    group = np.repeat(np.arange(6), 4)
    sign = np.tile([1., -1, -1, 1, -1, 1, 1, -1], 3)
    time = np.round(np.cumsum(rng.uniform(0.5, 2, size=24)), 1)
    speed = np.round(3.6 + 0.5 * (group % 3) + sign * (0.12 + 0.006 * (time - 15)) + 0.05 * rng.normal(size=24), 3)
    dummies = [(group == g).astype(float) for g in range(6)]
    p, c, rest, free = least_squares([*dummies, sign, sign * time], speed)
    # About this time the two are independent.
    centre = -c[6, 7] / c[7, 7]
    at = np.array([1, centre])
    _, _, still, _ = least_squares(dummies, speed)
    f = (still - rest) / 2 / (rest / free)
    return dict(group=[int(g) for g in group], sign=list(sign), time=list(time), speed=list(speed), centre=centre,
                value=at @ p[6:], standardUncertainty=np.sqrt(at @ c[6:, 6:] @ at), slope=p[7],
                slopeUncertainty=np.sqrt(c[7, 7]), degreesOfFreedom=free, pValue=stats.f.sf(f, 2, free))


print(json.dumps(dict(
    windows=[window(120, 0.1, 0.3, 4.2, 0.004, 0.05), window(300, 0.05, 0.1, 61.0, -0.02, 1.5),
             window(60, 0.2, 0.05, 5.1, 0.0, 0.03)],
    loads=loads(), passes=passes())))
