"""One simulated hour of the two-tank machine under load with SciPy's solve_ivp (LSODA, rtol 1e-6): the equations of
tests/oracle/machine_model.py, integrated piece by piece between the moments at which ware changes zones.

    python3 machine_baseline.py SECONDS

Prints seconds;pieces of ware;peak bytes.
"""

import pathlib
import resource
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2] / "tests" / "oracle"))
import machine_model  # noqa: E402

simulated = float(sys.argv[1])
started = time.perf_counter()
machine_model.load([simulated], tolerance=1e-6)
took = time.perf_counter() - started
print(f"{took};{int(simulated / 24) * 3};{resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024}")
