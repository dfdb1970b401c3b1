"""The carbonate equilibrium with SciPy, written for comparison: for each water the pH after closed heating (charge balance) and the
calcium carbonate that falls out until calcite is just saturated, each one root by scipy.optimize.brentq.

    python3 carbonate_baseline.py WATERS RESULTS

WATERS: a line for each water, semicolons: calcium mol/L, alkalinity eq/L, pH of the sample, its temperature, hot temperature (both degC), ionic strength mol/L.
Prints seconds of the processor;waters;peak bytes and writes pH;fallen mol/L for each water, as the C# side finds them.
"""

import math
import resource
import sys
import time

from scipy.optimize import brentq


def constants(celsius, strength):
    """Plummer and Busenberg 1982 with Davies activities: pK1, pK2, pKs of calcite, pKw, and -log10 of the activity of a single charge."""
    t = celsius + 273.15
    log = math.log10(t)
    pk1 = 356.3094 + 0.06091964 * t - 21834.37 / t - 126.8339 * log + 1684915 / t**2
    pk2 = 107.8871 + 0.03252849 * t - 5151.79 / t - 38.92561 * log + 563713.9 / t**2
    pks = 171.9065 + 0.077993 * t - 2839.319 / t - 71.595 * log
    pkw = 4471 / t + 0.01706 * t - 6.0875
    dielectric = 60954 / (t + 116) - 68.937
    a = 1.82e6 * (dielectric * t) ** -1.5
    root = math.sqrt(strength)
    return pk1, pk2, pks, pkw, a * (root / (1 + root) - 0.3 * strength)


def shares(ph, k):
    """Share of the carbonate that is CO3, charge of a mol of carbonate, charge of the water itself."""
    pk1, pk2, _, pkw, pf = k
    one = 10 ** (ph - pk1 + pf)
    two = one * 10 ** (ph - pk2 + 3 * pf)
    total = 1 + one + two
    return two / total, (one + 2 * two) / total, 10 ** (ph + pf - pkw) - 10 ** (pf - ph)


def solve(calcium, alkalinity, ph, cold, hot, strength):
    _, charge, free = shares(ph, constants(cold, strength))
    carbon = (alkalinity - free) / charge
    k = constants(hot, strength)

    def gap(p):
        _, b, w = shares(p, k)
        return carbon * b + w - alkalinity

    heated = brentq(gap, 0, 14, xtol=1e-13, rtol=8.9e-16)

    def fallen(p):
        _, b, w = shares(p, k)
        return (alkalinity - w - carbon * b) / (2 - b)

    def over(p):
        x = fallen(p)
        if x >= calcium or x >= carbon:
            return -1e3
        two, _, _ = shares(p, k)
        return math.log10((calcium - x) * (carbon - x) * two) - 8 * k[4] + k[2]

    return heated, fallen(brentq(over, 0, 14, xtol=1e-13, rtol=8.9e-16))


def main(waters, results):
    rows = [tuple(map(float, line.split(";"))) for line in open(waters, encoding="ascii")]
    start = time.process_time()
    found = [solve(*row) for row in rows]
    seconds = time.process_time() - start
    with open(results, "w", encoding="ascii") as file:
        file.writelines(f"{ph!r};{x!r}\n" for ph, x in found)
    print(f"{seconds};{len(rows)};{resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024}")


if __name__ == "__main__":
    main(*sys.argv[1:])
