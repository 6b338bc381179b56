"""The work of bench/Inference in SciPy: python3 same_work.py FOLDER. Prints milliseconds, best of several."""
import sys, time, os
import numpy as np
from scipy import stats, special

folder = sys.argv[1]
def read(name):
    return np.loadtxt(os.path.join(folder, name), delimiter=",", skiprows=1)

def best(what, times, work):
    work()
    low = 1e300
    for _ in range(times):
        start = time.perf_counter(); work(); low = min(low, 1e3 * (time.perf_counter() - start))
    print(f"{low:9.1f} ms  SciPy: {what}")
    return low

def apiary(a, unsampled=40, line=0.03):
    """Gamma-Poisson over a plain 200 x 200 grid of log mean and log shape: mean interval, chances, every colony's tail."""
    y, n = a[:, 0][:, None, None], a[:, 1][:, None, None]
    mu = np.exp(np.linspace(np.log(1e-4), np.log(0.5), 200))[None, :, None]
    k = np.exp(np.linspace(np.log(0.05), np.log(200), 200))[None, None, :]
    m = n * mu
    logp = (special.gammaln(y + k) - special.gammaln(k) + k * np.log(k / (k + m)) + y * np.log(m / (k + m))).sum(0)
    w = np.exp(logp - logp.max()); w /= w.sum()
    over = stats.gamma.sf(line, k[0], scale=mu[0] / k[0])
    any_over = (w * (1 - (1 - over) ** unsampled)).sum()
    colonies = [(w * stats.gamma.sf(line, yi + k[0], scale=1 / (ni + k[0] / mu[0]))).sum() for yi, ni in a]
    return any_over, colonies

def jars(j):
    y, n = j[:, 0], j[:, 1]
    low = np.where(y > 0, stats.chi2.ppf(0.025, 2 * y) / 2, 0) / n
    high = stats.chi2.ppf(0.975, 2 * y + 2) / 2 / n
    over = stats.gamma.sf(0.03, y + 0.5, scale=1 / n)
    return low, high, over

a, j = read("apiary.csv"), read("jars.csv")
with open(os.path.join(folder, "scipy.csv"), "w") as out:
    out.write(f"apiary,{best('the apiary on a 200 x 200 grid', 3, lambda: apiary(a))}\n")
    out.write(f"jars,{best('10,000 jars: exact interval and chance over the line, vectorised', 5, lambda: jars(j))}\n")
