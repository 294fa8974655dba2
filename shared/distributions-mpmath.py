"""Parent of distributions-mpmath.csv: tail probabilities and quantiles to 20 digits.

Made with Python 3.11 and mpmath 1.3.0 (pip install mpmath==1.3.0):
    python3 distributions-mpmath.py > distributions-mpmath.csv
Arguments are doubles as written; quantiles are found by halving on the tail itself.
"""
from mpmath import betainc, erfc, erfinv, exp, gammainc, log, loggamma, mp, mpf, nstr, quad, sqrt

mp.dps = 60
half = mpf(1) / 2
rows = []


def add(function, arguments, value):
    cells = [repr(a) for a in arguments] + [""] * (3 - len(arguments))
    rows.append(",".join([function, *cells, nstr(value, 20)]))


def beta(a, b, z):
    """Regularised, from the end where the series converges."""
    a, b, z = mpf(a), mpf(b), mpf(z)
    if z < half:
        return betainc(a, b, 0, z, regularized=True).real
    return 1 - betainc(b, a, 0, 1 - z, regularized=True).real


def t_above(x, n):
    return beta(mpf(n) / 2, half, n / (n + mpf(x) ** 2)) / 2


def gamma_below(x, k):
    return gammainc(mpf(k) / 2, 0, mpf(x) / 2, regularized=True)


def f_below(x, a, b):
    return beta(mpf(a) / 2, mpf(b) / 2, a * mpf(x) / (a * mpf(x) + b))


def halving(rising, low, high):
    """exp of the root of a rising function."""
    low, high = mpf(low), mpf(high)
    assert rising(low) < 0 < rising(high)
    for _ in range(230):
        middle = (low + high) / 2
        if rising(middle) < 0:
            low = middle
        else:
            high = middle
    return exp(low)


for t, n in [(0.5, 1), (2, 1), (63.656741, 1), (0.1, 2.5), (1.5, 3), (4.0621, 9), (2.228, 10),
             (8, 10), (0.01, 30), (3, 30), (20, 30), (1.96, 1000), (5, 100000), (10, 100000),
             (0.3, 1000000), (6, 1000000)]:
    add("studentTUpperTail", [t, n], t_above(t, n))
for p, n in [(1e-300, 5), (1e-20, 3), (1e-06, 1), (0.0005, 4), (0.025, 9), (0.025, 5.7), (0.2, 10),
             (0.3, 2), (0.49, 12), (0.4999999, 7), (0.025, 100000), (1e-10, 1000000)]:
    add("studentTQuantile", [p, n],
        -halving(lambda u: log(mpf(p)) - log(t_above(exp(u), n)), -18, 250))
for x, k in [(1e-05, 1), (0.5, 1), (3.84, 1), (30, 1), (2, 2), (11.07, 5), (100, 5), (500, 5),
             (0.8, 7.3), (95, 100), (1000, 100), (10200, 10000)]:
    add("chiSquareLowerTail", [x, k], gamma_below(x, k))
    add("chiSquareUpperTail", [x, k], gammainc(mpf(k) / 2, mpf(x) / 2, regularized=True))
for x, a, b in [(0.01, 1, 1), (1, 4, 4), (3.5, 2, 7), (50, 3, 12), (0.2, 10, 20.5), (2.5, 30, 5),
                (7, 1, 1000), (400, 6, 40)]:
    add("fisherFLowerTail", [x, a, b], f_below(x, a, b))
    add("fisherFUpperTail", [x, a, b], beta(mpf(b) / 2, mpf(a) / 2, b / (a * mpf(x) + b)))
for p, k in [(1e-100, 3), (1e-06, 1), (0.05, 5), (0.5, 2), (0.975, 10), (0.9999, 40)]:
    add("chiSquareQuantile", [p, k], halving(lambda u: gamma_below(exp(u), k) - mpf(p), -170, 6))
for p, a, b in [(1e-10, 3, 9), (0.025, 5, 7), (0.5, 4, 4), (0.95, 2, 11.5), (0.999, 10, 10)]:
    add("fisherFQuantile", [p, a, b], halving(lambda u: f_below(exp(u), a, b) - mpf(p), -30, 10))
for z in [-30, -10, -3, -1, -0.001, 0.5, 2]:
    add("normalLowerTail", [z], erfc(-mpf(z) / sqrt(mpf(2))) / 2)
mp.dps = 320
for p in [1e-300, 1e-16, 1e-06, 0.025, 0.3, 0.49999, 0.975]:
    add("normalQuantile", [p], sqrt(mpf(2)) * erfinv(2 * mpf(p) - 1))
mp.dps = 30


def noncentral(t, n, d, sign):
    """T = (Z + d) / U, n U^2 chi-square: the normal tail averaged over the density of U."""
    t, n, d = mpf(t), mpf(n), mpf(d)
    constant = log(2) + n / 2 * log(n / 2) - loggamma(n / 2)

    def integrand(u):
        if u == 0 and n > 1:
            return mpf(0)
        density = exp(constant + ((n - 1) * log(u) if n > 1 else 0) - n * u * u / 2)
        return density * erfc(-sign * (t * u - d) / sqrt(mpf(2))) / 2

    width = 1 / sqrt(2 * n)
    points = {mpf(0)} | {1 + k * width for k in range(-40, 60) if 1 + k * width > 0}
    if t != 0:
        points |= {(d + k * half) / t for k in range(-20, 21) if (d + k * half) / t > 0}
    points = sorted(points)
    return quad(integrand, points + [points[-1] + 5, points[-1] + 20])


for t, n, d in [(0, 5, 1), (2, 5, 0), (2.015, 5, 2.5), (1.8124611228107335, 10, 3), (-1.5, 4, 1),
                (-3, 8, 2), (5, 3, 1), (12, 2, 4), (2.5, 30, -1), (6, 20, 3), (1.5, 1, 0.7),
                (30, 1.5, 2), (3.3, 200, 3), (10, 1000, 9), (2, 100000, 4), (-4, 12, 3)]:
    add("noncentralTLowerTail", [t, n, d], noncentral(t, n, d, 1))
    add("noncentralTUpperTail", [t, n, d], noncentral(t, n, d, -1))

print("function,first,second,third,value")
print("\n".join(rows))
