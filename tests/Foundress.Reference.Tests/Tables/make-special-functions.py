# Makes special-functions.tsv: gamma, beta and normal functions to 40 digits. Run: python3 make-special-functions.py > special-functions.tsv
import sys
import mpmath as mp
import scipy
from scipy import special

mp.mp.dps = 60
print("# log-gamma, incomplete gamma and beta (both tails), their inverses, and the normal distribution")
print("# made by make-special-functions.py with mpmath", mp.__version__, "at 60 digits or more (first guesses SciPy", scipy.__version__ + "), Python", sys.version.split()[0])
print("function\ta\tb\tx\tvalue")


def row(name, a, b, x, value):
    if value == 0 or abs(value) < mp.mpf("1e-290") or abs(value) > mp.mpf("1e300"):
        return
    print(name, repr(a) if a is not None else "", repr(b) if b is not None else "", repr(x), mp.nstr(value, 22), sep="\t")


def p(a, x):  # lower tail by its series: no cancellation anywhere
    a, x = mp.mpf(a), mp.mpf(x)
    term = s = mp.mpf(1)
    n = 1
    while term > s * mp.mpf(10) ** -(mp.mp.dps + 2):
        term *= x / (a + n)
        s += term
        n += 1
    return mp.exp(a * mp.log(x) - x - mp.loggamma(a + 1)) * s


def q(a, x):
    mp.mp.dps = 400 if x > a else 60
    try:
        return +(1 - p(a, x))
    finally:
        mp.mp.dps = 60


def ibeta(a, b, x):  # DLMF 8.17.8 : all terms positive
    a, b, x = mp.mpf(a), mp.mpf(b), mp.mpf(x)
    term = s = mp.mpf(1)
    n = 0
    while term > s * mp.mpf(10) ** -(mp.mp.dps + 2):
        term *= (a + b + n) / (a + 1 + n) * x
        s += term
        n += 1
    return mp.exp(a * mp.log(x) + b * mp.log(1 - x) - mp.log(a) - (mp.loggamma(a) + mp.loggamma(b) - mp.loggamma(a + b))) * s


for x in [1e-8, 1e-3, 0.1, 0.5, 0.75, 0.999999, 1.0000001, 1.25, 1.5, 1.7, 1.9999, 2.00001, 2.25, 2.5, 3.3, 7.7, 9.99, 10.0, 14.5, 100.25, 1234.5, 1e5, 1e9]:
    row("logGamma", None, None, x, mp.loggamma(mp.mpf(x)))

shapes = [0.05, 0.3, 0.5, 1.0, 1.5, 3.5, 9.5, 10.0, 14.5, 43.5, 120.5, 500.5, 2400.5, 20000.5]
for a in shapes:
    for f in [1e-4, 0.02, 0.2, 0.5, 0.8, 0.95, 0.999, 1.0, 1.001, 1.04, 1.2, 1.6, 2.5, 6.0, 20.0]:
        x = a * f
        row("gammaLower", a, None, x, p(a, x))
        if x < 650 + a:
            row("gammaUpper", a, None, x, q(a, x))
for a in [0.05, 0.3, 0.5, 1.0]:
    for x in [0.01, 0.4, 1.0, 1.09, 1.11, 2.0, 30.0, 200.0]:
        row("gammaLower", a, None, x, p(a, x))
        row("gammaUpper", a, None, x, q(a, x))



def polish(x, f, slope):  # Newton steps at 60 digits from a double-precision start
    x = mp.mpf(x)
    for _ in range(5):
        x -= f(x) / slope(x)
    return x


tails = [1e-12, 1e-6, 0.005, 0.025, 0.1, 0.4, 0.5, 0.75, 0.975, 0.9999]
for a in [0.3, 0.5, 1.0, 2.0, 3.5, 14.5, 43.5, 120.5, 2400.5]:
    density = lambda x: mp.exp((a - 1) * mp.log(x) - x - mp.loggamma(a))
    for t in tails:
        row("gammaInverseLower", a, None, t, polish(special.gammaincinv(a, t), lambda x: p(a, x) - mp.mpf(t), density))
        row("gammaInverseUpper", a, None, t, polish(special.gammainccinv(a, t), lambda x: p(a, x) - (1 - mp.mpf(t)), density))

pairs = [(0.3, 0.5), (0.5, 0.5), (0.5, 4.5), (1.0, 299.0), (1.0, 1.0), (3.5, 300.5), (9.0, 292.0), (15.0, 306.0), (29.0, 9.0), (43.5, 267.5), (120.5, 2279.5), (2000.5, 1500.5), (0.5, 20000.0), (30000.5, 900.5)]
for a, b in pairs:
    mean = a / (a + b)
    for x in sorted({mean * f for f in [1e-3, 0.1, 0.5, 0.9, 0.999, 1.0, 1.01, 1.3, 2.0, 4.0, 12.0] if 0 < mean * f < 1} | {0.25, 0.9, 0.999}):
        if x < 0.985 or b < 50:
            mp.mp.dps = 380
            lower = ibeta(a, b, x) if x <= 0.9 else 1 - ibeta(b, a, 1 - mp.mpf(x))
            mp.mp.dps = 60
            row("betaLower", a, b, x, +lower)
            row("betaUpper", a, b, x, +(1 - lower) if 1 - lower > mp.mpf(10) ** -300 else mp.mpf(0))
mp.mp.dps = 60
for a, b in [(0.5, 0.5), (1.0, 299.0), (1.0, 1.0), (3.5, 300.5), (9.0, 292.0), (10.0, 291.0), (15.0, 306.0), (29.0, 9.0), (120.5, 2279.5), (2000.5, 1500.5)]:
    density = lambda x: mp.exp((a - 1) * mp.log(x) + (b - 1) * mp.log(1 - x) - mp.loggamma(a) - mp.loggamma(b) + mp.loggamma(a + b))
    lower = lambda x: ibeta(a, b, x) if x < 0.7 else 1 - ibeta(b, a, 1 - x)
    for t in tails:
        start = special.betaincinv(a, b, t)
        if start < 0.9999:
            row("betaInverseLower", a, b, t, polish(start, lambda x: lower(x) - mp.mpf(t), density))

for x in [-36.5, -20.0, -8.0, -5.0, -3.3, -1.96, -1.0, -0.3, -1e-6, 0.0, 0.2, 0.9, 1.96, 3.0, 6.0]:
    row("normal", None, None, x, mp.ncdf(mp.mpf(x)))
for t in [1e-280, 1e-100, 1e-30, 1e-16, 1e-12, 1e-6, 0.001, 0.025, 0.0749, 0.0751, 0.25, 0.4, 0.499999, 0.6, 0.9, 0.975, 0.999999]:
    mp.mp.dps = 340 if t < 1e-20 else 60
    row("normalQuantile", None, None, t, polish(special.ndtri(t), lambda z: mp.log(mp.ncdf(z)) - mp.log(mp.mpf(t)), lambda z: mp.npdf(z) / mp.ncdf(z)))
