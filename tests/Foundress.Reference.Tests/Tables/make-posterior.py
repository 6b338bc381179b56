# Makes posterior.tsv: chances over a line and quantiles of a colony's level, per bee. Run: python3 make-posterior.py > posterior.tsv
# Known bees: SciPy's incomplete gamma functions. Uncertain bees: the definition, prior level^-1/2 times the Poisson likelihood
# averaged over each jar's lognormal bees, integrated over the bees by adaptive quadrature (QUADPACK) with the level done by hand.
import itertools
import math
import sys
import numpy as np
import scipy
from scipy import integrate, optimize, special

print("# chance over a line (per bee) and lower-tail quantiles; jars as mites:medianBees:logSpread:recovery")
print("# made by make-posterior.py with SciPy", scipy.__version__, "NumPy", np.__version__ + ", Python", sys.version.split()[0])
print("jars\tkind\tat\tvalue")


def average(jars, f):
    """Mean of f(exposure) over the posterior of the jars' total exposure."""
    total = sum(y for y, _, _, _ in jars)
    fixed = sum(m * r for _, m, s, r in jars if s == 0)
    loose = [j for j in jars if j[2] > 0]
    if not loose:
        return f(fixed)

    def log_weight(zs):
        exposure = fixed + sum(m * r * math.exp(s * z) for (_, m, s, r), z in zip(loose, zs))
        return sum(-z * z / 2 + y * s * z for (y, _, s, _), z in zip(loose, zs)) - (total + 0.5) * math.log(exposure), exposure

    peak = optimize.minimize(lambda zs: -log_weight(zs)[0], [0.0] * len(loose)).x
    top = log_weight(peak)[0]

    def integral(g):
        def h(*zs):
            w, e = log_weight(zs)
            return math.exp(w - top) * g(e)
        if len(loose) == 1:
            a = [integrate.quad(h, peak[0] + k, peak[0] + k + 2, epsabs=0, epsrel=1e-12, limit=200)[0] for k in range(-10, 10, 2)]
            return sum(a)
        # two uncertain jars: tensor of Gauss-Legendre panels, 5 x 24 nodes a side
        x, w = np.polynomial.legendre.leggauss(24)
        nodes = np.concatenate([c + 1.8 * x for c in np.arange(-7.2, 7.3, 3.6)])
        weights = np.tile(1.8 * w, 5)
        return sum(u * v * h(peak[0] + p, peak[1] + q) for (p, u), (q, v) in itertools.product(zip(nodes, weights), repeat=2))

    return integral(f) / integral(lambda e: 1.0)


def emit(jars, lines, tails):
    total = sum(y for y, _, _, _ in jars)
    name = ",".join(f"{y}:{m!r}:{s!r}:{r!r}" for y, m, s, r in jars)
    for line in lines:
        value = average(jars, lambda e: special.gammaincc(total + 0.5, e * line))
        if value > 1e-14:
            print(name, "over", repr(line), repr(float(value)), sep="\t")
    guess = (total + 0.5) / sum(m * r for _, m, _, r in jars)
    for tail in tails:
        def gap(u):
            return math.log(max(1e-320, average(jars, lambda e: special.gammainc(total + 0.5, e * math.exp(u))))) - math.log(tail)
        if all(s == 0 for _, _, s, _ in jars):
            value = special.gammaincinv(total + 0.5, tail) / sum(m * r for _, m, _, r in jars)
        else:
            value = math.exp(optimize.brentq(gap, math.log(guess) - 14, math.log(guess) + 4, xtol=1e-13, rtol=1e-14))
        print(name, "quantile", repr(tail), repr(float(value)), sep="\t")
    mean = average(jars, lambda e: (total + 0.5) / e)
    print(name, "mean", "0", repr(float(mean)), sep="\t")


lines = [0.002, 0.01, 0.02, 0.03, 0.05, 0.1, 0.2]
for y, n, r in itertools.product([0, 1, 3, 9, 14, 43, 250], [35, 100, 300, 320, 900], [1.0, 0.9]):
    emit([(y, float(n), 0.0, r)], lines, [0.025, 0.5, 0.975])
for y, n, s in itertools.product([0, 1, 6, 14, 43, 200], [150, 300, 322.5], [0.05, 0.15, 0.3, 1.0]):
    emit([(y, float(n), s, 1.0)], lines, [0.025, 0.975] if n == 300 else [])
emit([(14, 320.0, 0.15, 0.9)], lines, [0.025, 0.975])
for jars in [
    [(3, 300.0, 0.0, 1.0), (7, 310.0, 0.0, 1.0)],
    [(0, 300.0, 0.0, 1.0), (0, 280.0, 0.0, 0.9), (2, 330.0, 0.0, 1.0)],
    [(3, 300.0, 0.0, 1.0), (7, 300.0, 0.15, 1.0)],
    [(0, 300.0, 0.0, 1.0), (0, 300.0, 0.2, 1.0)],
    [(30, 310.0, 0.0, 1.0), (45, 300.0, 0.3, 0.9)],
]:
    emit(jars, lines, [0.025, 0.975])
for jars in [
    [(5, 300.0, 0.15, 1.0), (9, 300.0, 0.15, 1.0)],
    [(0, 300.0, 0.15, 1.0), (1, 250.0, 0.1, 1.0)],
    [(4, 300.0, 0.2, 1.0), (20, 320.0, 0.1, 0.9)],
]:
    emit(jars, lines, [])
