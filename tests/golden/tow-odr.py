"""Parent of tow-odr.json: the same points by scipy's orthogonal distance regression and curve fitting.

Run: python3 -W ignore tests/golden/tow-odr.py > tests/golden/tow-odr.json

Level pulls at the speeds and tensions of tow-example.json (alder), planform off, uncertainties fixed.
"""
import json
import sys
from pathlib import Path

import numpy as np
import scipy
from scipy import odr
from scipy.optimize import curve_fit

points = np.array(json.loads((Path(__file__).parent / "tow-example.json").read_text())["readings"]["alder"])
speed, pull = points[:, 0], points[:, 1]
u_speed, u_pull = 0.05 + 0.004 * speed, 0.9 + 0.001 * speed ** 3
v0 = scipy.stats.gmean(speed)


def law(p, v):
    return p[0] * (v / v0) ** 2 + p[1] + p[2] * (v0 / v) ** 2


def regress(model, x, y, ux, uy, start):
    run = odr.ODR(odr.RealData(x, y, sx=ux, sy=uy), odr.Model(model), beta0=start, sstol=1e-15, partol=1e-15, maxit=2000)
    run.set_job(fit_type=0, deriv=1)
    out = run.run()
    return dict(parameters=out.beta.tolist(), covariance=out.cov_beta.tolist(), squares=out.sum_square)


# The line: drag over dynamic pressure against lift coefficient squared, errors taken as apart.
lift, drag = (822.8 / (80 * speed ** 2)) ** 2, pull / (80 * speed ** 2)
exact, covariance = curve_fit(lambda v, *p: law(p, v), speed, pull, p0=[40, -5, 25], sigma=u_pull, absolute_sigma=True,
                              xtol=1e-15, ftol=1e-15, gtol=1e-15)
json.dump(dict(
    versions=dict(python=sys.version.split()[0], numpy=np.__version__, scipy=scipy.__version__),
    points=[dict(speed=a, pull=b, uSpeed=c, uPull=d) for a, b, c, d in zip(speed, pull, u_speed, u_pull)],
    law=regress(law, speed, pull, u_speed, u_pull, [40, -5, 25]),
    lawWithExactSpeeds=dict(parameters=exact.tolist(), covariance=covariance.tolist()),
    line=dict(
        x=lift.tolist(), y=drag.tolist(), ux=(0.04 * lift).tolist(), uy=(0.02 * drag).tolist(),
        **regress(lambda p, x: p[0] + p[1] * x, lift, drag, 0.04 * lift, 0.02 * drag, [0.02, 0.07]),
    ),
), sys.stdout, indent=1)
print()
