"""Parent of tow-robust.json: the same points, one of them 30 % too high, by scipy's robust least squares.

Run: python3 tests/golden/tow-robust.py > tests/golden/tow-robust.json

Level pulls at the speeds and tensions of tow-odr.json, speeds exact, planform off. The loss is that of Student's t with four degrees of
freedom; scipy minimises it for a given scale, and the scale (1.4826 times the median size of the scaled residuals, not
under 1) is found by going round until it rests.
"""
import json
import sys
from pathlib import Path

import numpy as np
import scipy
from scipy.optimize import least_squares

NU = 4
points = json.loads((Path(__file__).parent / "tow-odr.json").read_text())["points"]
speed = np.array([one["speed"] for one in points])
v0 = scipy.stats.gmean(speed)
terms = np.stack([(speed / v0) ** 2, np.ones_like(speed), (v0 / speed) ** 2], 1)


def loss(squares):
    return np.array([(NU + 1) * np.log1p(squares / NU), (NU + 1) / (NU + squares), -(NU + 1) / (NU + squares) ** 2])


def fit(pull, stated):
    p, scale = np.linalg.lstsq(terms / stated[:, None], pull / stated, rcond=None)[0], 1.0
    for _ in range(500):
        found = least_squares(lambda q: (terms @ q - pull) / stated, p, loss=loss, f_scale=scale, xtol=1e-15, ftol=1e-15, gtol=1e-15)
        z = (pull - terms @ found.x) / stated
        p, before, scale = found.x, scale, max(1.0, 1.4826 * np.median(np.abs(z)))
        if abs(scale - before) < 1e-12:
            break
    u2 = (z / scale) ** 2
    steep = np.mean((NU + 1) * (NU - u2) / (NU + u2) ** 2)
    drawn = z * (NU + 1) / (NU + u2) / steep
    return dict(parameters=p.tolist(), scale=scale, weights=((NU + 1) / (NU + u2)).tolist(), within=float(drawn @ drawn / (len(z) - 3)))


pull = np.array([one["pull"] for one in points])
wild = pull * np.where(np.arange(len(pull)) == 7, 1.3, 1)
json.dump(dict(
    versions=dict(python=sys.version.split()[0], numpy=np.__version__, scipy=scipy.__version__),
    wildPoint=7,
    asStated=fit(wild, np.array([one["uPull"] for one in points])),
    statedTooSmall=fit(wild, np.full(len(pull), 0.4)),
), sys.stdout, indent=1)
print()
