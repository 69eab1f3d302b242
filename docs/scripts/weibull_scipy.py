#!/usr/bin/env python3
"""Likelihood intervals of Weibull distributions by SciPy, for lives that ended within an interval or not yet.

Independent of the product's code: other language, other parameters (logarithms of shape and of the hazard at one week),
other optimiser (Nelder-Mead, then BFGS), other root finder. Threshold: chi squared, one degree of freedom, 95 %.

usage: weibull_scipy.py FOLDER > weibull_scipy.csv
FOLDER holds seed-N.csv as written by RecoveryStudy: entry_days,alive_days,failed_days (empty: works still).
"""
import os
import sys
import zlib

import numpy as np
import scipy
from scipy.optimize import brentq, minimize
from scipy.stats import chi2

DROP = chi2.ppf(0.95, 1) / 2
TENTH = -np.log(0.9)


def read(path):
    raw = open(path, "rb").read()
    rows = [line.split(",") for line in raw.decode().splitlines()[1:]]
    entry = np.array([float(r[0]) for r in rows]) / 7
    alive = np.array([float(r[1]) for r in rows]) / 7
    failed = np.array([float(r[2]) if r[2] else np.inf for r in rows]) / 7
    return zlib.crc32(raw), entry, alive, failed


def minus_log_likelihood(data, log_shape, log_rate):
    """Hazard H(t) = rate t^shape; -ln of prod (exp(-H(alive)) - exp(-H(failed))) / exp(-H(entry))."""
    entry, alive, failed = data
    shape, rate = np.exp(log_shape), np.exp(log_rate)
    h_alive = rate * alive**shape
    found = np.isfinite(failed)
    h_failed = rate * failed[found] ** shape
    total = -h_alive + rate * entry**shape
    total[found] += np.log(-np.expm1(h_alive[found] - h_failed))
    value = -total.sum()
    return value if np.isfinite(value) else 1e300


def best(function, start):
    rough = minimize(function, start, method="Nelder-Mead", options={"xatol": 1e-7, "fatol": 1e-10, "maxiter": 4000})
    fine = minimize(function, rough.x, method="BFGS", options={"gtol": 1e-9})
    return fine if fine.fun < rough.fun else rough


def ends(profile, at, lowest):
    def above(x):
        return profile(x) - lowest - DROP

    found = []
    for sign in (-1, 1):
        step = 0.05
        while above(at + sign * step) < 0:
            step *= 2
            if step > 20:
                break
        found.append(np.exp(brentq(above, at, at + sign * step, xtol=1e-9)) if step <= 20 else np.inf)
    return found


def fit(data):
    optimum = best(lambda p: minus_log_likelihood(data, p[0], p[1]), np.array([0.4, -8.0]))
    log_shape, log_rate = optimum.x

    def by_shape(x):
        return best(lambda p: minus_log_likelihood(data, x, p[0]), np.array([log_rate * np.exp(x - log_shape)])).fun

    def by_age(hazard):
        def profile(log_age):
            def at(p):
                return minus_log_likelihood(data, p[0], np.log(hazard) - np.exp(p[0]) * log_age)

            return best(at, np.array([log_shape])).fun

        return profile

    shape = np.exp(log_shape)
    log_scale = -log_rate / shape
    log_tenth = (np.log(TENTH) - log_rate) / shape
    return (
        [shape, np.exp(log_scale)]
        + ends(by_shape, log_shape, optimum.fun)
        + ends(by_age(1.0), log_scale, optimum.fun)
        + ends(by_age(TENTH), log_tenth, optimum.fun)
    )


def main():
    folder = sys.argv[1]
    print("# 95 %% profile likelihood intervals by docs/scripts/weibull_scipy.py, Python %s, SciPy %s, NumPy %s"
          % (sys.version.split()[0], scipy.__version__, np.__version__))
    print("# lives: RecoveryStudy 200 FOLDER (truth: shape 1.6, scale 180 weeks; 60 positions, five years); ages in weeks")
    print("seed,crc32,shape,scale,shape_lower,shape_upper,scale_lower,scale_upper,b10_lower,b10_upper")
    seeds = sorted(int(name[5:-4]) for name in os.listdir(folder) if name.startswith("seed-"))
    for seed in seeds:
        crc, *data = read(os.path.join(folder, "seed-%d.csv" % seed))
        print("%d,%d," % (seed, crc) + ",".join("%.7g" % x for x in fit(data)))


main()
