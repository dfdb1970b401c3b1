"""The same proof with pandas and NumPy, written for comparison: passes of a surface trace, each with its heat unit
equivalents, A0, and the bounds of both from sampling and instrument. Whole columns at once, no loop over rows.

    python3 proof_baseline.py FILE DOSES

Prints seconds;passes;peak bytes and writes one dose a line, as the jobs of the C# side do.
"""

import resource
import sys
import time

import numpy as np
import pandas as pd

WARM = 40.0  # degC, below it nothing is a pass
UNCERTAINTY = 1.5  # degC, half-width
HUE = (3.03438e-17, 0.265972, 165.0, 143.0)  # rate at 0 degF, exponent per degF, cap, floor
A0 = (10 ** (-(80 * 1.8 + 32) / 18), np.log(10) / 18, np.inf, 65 * 1.8 + 32)


def rate(f, scale):
    zero, exponent, cap, floor = scale
    return np.where(f < floor, 0.0, zero * np.exp(exponent * np.minimum(f, cap)))


def stretches(f, dt, scale):
    """Exact dose of each straight stretch between two samples."""
    zero, exponent, cap, floor = scale
    low, high = np.minimum(f[:-1], f[1:]), np.maximum(f[:-1], f[1:])
    span = high - low
    flat = span < 1e-9
    per_degree = dt / np.where(flat, 1.0, span)
    a, b = np.maximum(low, floor), np.minimum(high, cap)
    rising = np.where(b > a, zero * np.exp(exponent * a) * np.expm1(exponent * np.maximum(b - a, 0)) / exponent, 0.0)
    above = np.where(high > cap, (high - np.maximum(low, cap)) * zero * np.exp(exponent * min(cap, 1e3)), 0.0)
    return np.where(flat, rate(low, scale) * dt, per_degree * (rising + above))


def main(path, doses):
    started = time.perf_counter()
    table = pd.read_csv(path, parse_dates=[0])
    seconds = table.iloc[:, 0].to_numpy().astype("datetime64[ns]").astype(np.int64) / 1e9
    surface = table.iloc[:, 1].to_numpy()
    fahrenheit = surface * 1.8 + 32

    warm = np.diff((surface >= WARM).astype(np.int8), prepend=0, append=0)
    first, last = np.flatnonzero(warm == 1), np.flatnonzero(warm == -1)
    # One pass: from one sample before it is warm to one after.
    first, last = np.maximum(first - 1, 0), np.minimum(last, len(surface) - 1)
    windows = np.column_stack([first, np.minimum(last, len(surface) - 2)]).ravel()

    dt = np.diff(seconds)
    colder = np.minimum(fahrenheit[:-1], fahrenheit[1:]) - UNCERTAINTY * 1.8
    hotter = np.maximum(fahrenheit[:-1], fahrenheit[1:])
    hotter[1:] = np.maximum(hotter[1:], fahrenheit[:-2])
    hotter[:-1] = np.maximum(hotter[:-1], fahrenheit[2:])
    hotter += UNCERTAINTY * 1.8
    results = {}
    for name, scale in (("hue", HUE), ("a0", A0)):
        value = np.add.reduceat(stretches(fahrenheit, dt, scale), windows)[::2]
        low = np.add.reduceat(rate(colder, scale) * dt, windows)[::2]
        high = np.add.reduceat(rate(hotter, scale) * dt, windows)[::2]
        results[name] = (value, low, high)
    peak = np.maximum.reduceat(surface, windows)[::2]
    verdicts = np.where(results["hue"][1] >= 3600, 1, np.where(results["hue"][2] < 3600, -1, 0)) * (peak > 0)
    elapsed = time.perf_counter() - started

    np.savetxt(doses, results["hue"][0], fmt="%.17g")
    print(f"{elapsed};{len(verdicts)};{resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024}")


main(*sys.argv[1:])
