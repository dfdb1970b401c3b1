"""Independent check of the machine model's stepping.

The smooth parts of the two-tank machine, written down once more as ordinary differential equations and integrated
by a general-purpose stiff solver at tight tolerance. Nothing is shared with the program but the typical figures.
Where ware changes zones, the integration stops and goes on, so that every piece is smooth.

    python3 machine_model.py > ../Rinsewright.Engine.Tests/Machines/Published/oracle.csv

Needs NumPy and SciPy; the versions that made the committed table stand in its head.
"""

import math
import platform

import numpy as np
import scipy
from scipy.integrate import solve_ivp

CP, RHO = 4186.0, 983.0
GALLON = 3.785411784e-3
GPM = GALLON / 60
LN10 = math.log(10)
ROOM, HUMIDITY = 24.0, 0.5
TIGHT = dict(method="LSODA", rtol=1e-10, atol=1e-10)


def saturation(t):
    return 133.322 * 10 ** (8.07131 - 1730.63 / (233.426 + t))


def humidity(p):
    return 0.62198 * p / (101325 - p)


def enthalpy(t, w):
    return 1006 * t + w * (2.501e6 + 1860 * t)


ROOM_W = humidity(HUMIDITY * saturation(ROOM))
ROOM_H = enthalpy(ROOM, ROOM_W)


def vent(air, t):
    """Heat and water that dry air (kg/s) takes from water at t."""
    leaves = ROOM + 0.6 * (t - ROOM)
    w = humidity(saturation(leaves))
    return air * (enthalpy(leaves, w) - ROOM_H), air * (w - ROOM_W)


# Typical two-tank conveyor: full, kg; metal, J/K; shell, W/K; air running and idle, kg/s; pump flow, kg/s; pump heat, W.
WASH = dict(full=18.5 * GALLON * RHO, metal=45e3, shell=15.0, run=8e-3, idle=1.2e-3, pump=165 * GPM * RHO, heat=800.0)
RINSE = dict(full=15 * GALLON * RHO, metal=40e3, shell=15.0, run=6e-3, idle=1.2e-3, pump=140 * GPM * RHO, heat=650.0)
FRESH = 2.8 * GPM * RHO
CROSS = 0.0005


def single(power, start, seconds, times):
    """The wash tank alone: heated or cooling, without fill."""

    def slope(_, y):
        mass, t = y
        lost, water = vent(WASH["idle"], t)
        energy = power - lost - WASH["shell"] * (t - ROOM)
        # E = (m cp + Cs) T
        return [-water, (energy + water * CP * t) / (mass * CP + WASH["metal"])]

    y = solve_ivp(slope, (0, seconds), [WASH["full"], start], t_eval=times, **TIGHT).y
    return y[1]


def dilution(times):
    """Detergent of the wash tank while the rinse runs and nothing is fed; pumps on, no vent, no film."""
    on, back = CROSS * WASH["pump"], CROSS * WASH["pump"]

    def slope(_, c):
        wash = back * c[1] + FRESH * c[1] - (on + FRESH) * c[0]
        rinse = on * c[0] - (back + FRESH) * c[1]
        return [wash / WASH["full"], rinse / RINSE["full"]]

    return solve_ivp(slope, (0, times[-1]), [1.5, 0.0], t_eval=times, **TIGHT).y


# Ware.
SPEED, RACK, GROUPS = 0.033, 0.508, 3
PIECES, AREA, THICK = 10, 0.082, 0.0059
K, PER_VOLUME = 1.5, 2400 * 1000.0
PIECE_HEAT = PIECES * PER_VOLUME * AREA / 2 * THICK
RACK_HEAT, RACK_AREA, RACK_HALF = 1.6 * 1900, 0.6, 0.0015
FILM = 0.15 / GROUPS
CELLS, DX = 4, THICK / 8
ZONES = [("wash", 0.15, 0.75), ("rinse", 0.85, 1.31), ("fresh", 1.40, 1.58)]
END = 1.68


def limited(h, length, water):
    area = (PIECES * AREA + RACK_AREA) * length / RACK
    carried = water * CP
    return carried / area * (1 - math.exp(-h * area / carried))


H = {
    "wash": limited(2000, 0.6, 0.7 * WASH["pump"]),
    "rinse": limited(2000, 0.46, 0.7 * RINSE["pump"]),
    "fresh": limited(3000, 0.18, 0.6 * FRESH),
    "gap": 30.0,
    "room": 80.0,
}
EXCHANGE = 0.3 * 0.6 * FRESH * (RACK / 0.18) / 0.15
EDGES = sorted({0.0, END} | {e for _, a, b in ZONES for e in (a, b)})


def place(x):
    for name, a, b in ZONES:
        if a <= x < b:
            return name
    return "gap" if 0 <= x < END else "room"


def load(times, fresh_celsius=85.0, power=18e3, interval=24.0, tolerance=1e-9):
    """Cascade under load: rinse and pumps on, wash heater at full, a rack every 24 s in three parts."""
    groups = []  # entered at, place
    offsets = [-(j + 0.5) * RACK / GROUPS for j in range(GROUPS)]
    stops = {0.0, *times}
    entries = []
    n = 0
    while n * interval < times[-1]:
        for o in offsets:
            entries.append((n * interval, o))
        n += 1
    for t0, o in entries:
        stops |= {t0} | {t0 + (e - o) / SPEED for e in EDGES}
    stops = sorted(s for s in stops if s <= times[-1] + 1e-9)

    fresh_vent, fresh_water = vent(4e-3, fresh_celsius)
    on_ware = fresh_celsius - fresh_vent / (FRESH * CP)
    capacity = [t["full"] * CP + t["metal"] for t in (WASH, RINSE)]
    y = np.array([66.0, 74.0])
    width = CELLS + 2  # slab, rack, film

    def slope(_, y, where):
        tw, tr = y[0], y[1]
        d = np.empty_like(y)
        heat = {"wash": 0.0, "rinse": 0.0, "fresh": 0.0}
        swapped, swapped_heat = 0.0, 0.0
        fluids = {"wash": tw, "rinse": tr, "fresh": on_ware, "gap": ROOM + 0.6 * (max(tw, tr) - ROOM), "room": ROOM}
        g = K / DX
        fresh = []
        for i, name in enumerate(where):
            at = 2 + i * width
            s = y[at : at + CELLS]
            h, fluid = H[name], fluids[name]
            u = 1 / (1 / h + DX / (2 * K))
            flow = np.concatenate(([u * (fluid - s[0])], g * (s[:-1] - s[1:]), [0.0]))
            d[at : at + CELLS] = (flow[:-1] - flow[1:]) / (PER_VOLUME * DX)
            tau = 905 * 1900 * RACK_HALF * (1 / h + RACK_HALF / (3 * 0.2))
            d[at + CELLS] = (fluid - y[at + CELLS]) / tau
            taken = (PIECE_HEAT * d[at : at + CELLS].mean() + RACK_HEAT * d[at + CELLS]) / GROUPS
            d[at + CELLS + 1] = 0.0
            if name in heat:
                heat[name] += taken
            if name == "fresh":
                fresh.append(at + CELLS + 1)
                swapped += EXCHANGE * FILM
                swapped_heat += EXCHANGE * FILM * CP * y[at + CELLS + 1]
        spent = (FRESH * CP * fresh_celsius - fresh_vent - heat["fresh"]) / ((FRESH - fresh_water) * CP)
        for at in fresh:
            d[at] = EXCHANGE * (spent - y[at])
        cross = CROSS * WASH["pump"]
        lost_w, water_w = vent(WASH["run"], tw)
        lost_r, water_r = vent(RINSE["run"], tr)
        over_r = FRESH - fresh_water - water_r
        over_w = over_r - water_w
        e_r = ((FRESH - fresh_water - swapped) * CP * spent + swapped_heat + cross * CP * (tw - tr) - over_r * CP * tr
               - lost_r - RINSE["shell"] * (tr - ROOM) + RINSE["heat"] - heat["rinse"])
        e_w = (over_r * CP * tr - over_w * CP * tw + cross * CP * (tr - tw) - lost_w
               - WASH["shell"] * (tw - ROOM) + WASH["heat"] + power - heat["wash"])
        d[0], d[1] = e_w / capacity[0], e_r / capacity[1]
        return d

    out = []
    now, pending = 0.0, list(entries)
    for stop in stops:
        if stop > now:
            where = [g[2] for g in groups]
            y = solve_ivp(slope, (now, stop), y, args=(where,), method="LSODA", rtol=tolerance, atol=tolerance).y[:, -1]
            now = stop
        if any(abs(stop - t) < 1e-9 for t in times):
            out.append((y[0], y[1]))
        for i, g in enumerate(groups):
            new = place(g[1] + SPEED * (now - g[0]) + 1e-9)
            if new == g[2]:
                continue
            film = 2 + i * width + CELLS + 1
            f = FILM * CP
            if g[2] == "wash":
                y[film] = y[0]
            elif g[2] == "rinse":
                y[film] = y[1]
                y[0] -= f * (y[1] - y[0]) / capacity[0]  # so much less runs over
            if new == "wash":
                y[0] += f * (y[film] - y[0]) / capacity[0]
            elif new == "rinse":
                was = y[1]
                y[1] += f * (y[film] - y[1]) / capacity[1]
                y[0] += f * (was - y[0]) / capacity[0]
            g[2] = new
        while groups and groups[0][1] + SPEED * (now - groups[0][0]) > END + 30 * SPEED:
            groups.pop(0)  # out in the room
            y = np.concatenate((y[:2], y[2 + width :]))
        while pending and pending[0][0] <= now + 1e-9:
            t0, o = pending.pop(0)
            groups.append([t0, o, place(o)])
            y = np.concatenate((y, np.full(width, 24.0)))
    return out


def main():
    for name, value in [
        ("quantity", "Smooth parts of the typical two-tank conveyor, integrated apart from the program by tests/oracle/machine_model.py"),
        ("source", "service"),
        (
            "locator",
            f"Python {platform.python_version()}, NumPy {np.__version__}, SciPy {scipy.__version__}; LSODA, relative tolerance 1e-10 (load: 1e-9)",
        ),
        ("units", "degC; detergent g/kg"),
        ("range", "the program, stepped, has to agree within 0.02 degC (0.1 % for detergent)"),
        ("uncertainty", "tolerance of the integration"),
        ("transcribed", "output of that script"),
        ("rights", "ours"),
    ]:
        print(f"# {name:<12} {value}")
    print("case,seconds,wash,rinse")
    times = [30, 60, 120, 180, 213]
    for t, w in zip(times, single(18e3, 60.0, times[-1], times)):
        print(f"heat-up,{t},{w:.6f},")
    times = [600, 1800, 3600, 7200]
    for t, w in zip(times, single(0.0, 70.0, times[-1], times)):
        print(f"cooling,{t},{w:.6f},")
    times = [60, 300, 600, 1200]
    for t, w, r in zip(times, *dilution(times)):
        print(f"dilution,{t},{w:.7f},{r:.7f}")
    times = [120, 300, 600, 900, 1200]
    for t, (w, r) in zip(times, load(times)):
        print(f"load,{t},{w:.6f},{r:.6f}")


if __name__ == "__main__":
    main()
