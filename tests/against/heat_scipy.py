#!/usr/bin/env python3
"""tamis predict against SciPy: the same heat equation with the properties that the program reports, by the method of lines
and an implicit solver of SciPy's own (BDF); plain cooling of slab, cylinder and sphere within 0.5 % where properties are
taken as steady, freezing and thawing by the same enthalpy with the constituents' properties written out anew here
(Choi and Okos, ASHRAE Refrigeration 2006, chapter 9; Miles' ice)."""
import json
import os
import subprocess
import sys

try:
    import numpy as np
    from scipy.integrate import solve_ivp
except ImportError:
    print("SKIPPED: SciPy is not installed")
    sys.exit(77)

TAMIS = os.environ["TAMIS"]
SHAPES = {"slab": 0, "cylinder": 1, "sphere": 2}


def asked(what, shape, size, start, end, air, coefficient, made_of):
    words = [TAMIS, "predict", what, "--made-of", made_of, "--shape", shape, "--depth" if shape == "slab" else "--diameter",
             f"{size * 1000} mm", "--from", f"{start} °C", "--to", f"{end} °C", "--air", f"{air} °C",
             "--coefficient", str(coefficient), "--as", "json"]
    return json.loads(subprocess.run(words, stdout=subprocess.PIPE, check=True, encoding="utf-8").stdout)


# a + b t + c t²: density, specific heat (kJ), conductivity. Below 0 °C water is undercooled.
ROWS = {
    "water": ((997.18, 3.1439e-3, -3.7574e-3), (4.1289, -9.0864e-5, 5.4731e-6), (0.57109, 1.7625e-3, -6.7036e-6)),
    "ice": ((916.89, -0.13071, 0), (2.0623, 6.0769e-3, 0), (2.2196, -6.2489e-3, 1.0154e-4)),
    "protein": ((1329.9, -0.51840, 0), (2.0082, 1.2089e-3, -1.3129e-6), (0.17881, 1.1958e-3, -2.7178e-6)),
    "fat": ((925.59, -0.41757, 0), (1.9842, 1.4733e-3, -4.8008e-6), (0.18071, -2.7604e-4, -1.7749e-7)),
    "carbohydrate": ((1599.1, -0.31046, 0), (1.5488, 1.9625e-3, -5.9399e-6), (0.20141, 1.3874e-3, -4.3312e-6)),
    "ash": ((2423.8, -0.28063, 0), (1.0926, 1.8896e-3, -3.6817e-6), (0.32962, 1.4011e-3, -2.9069e-6)),
}
UNDERCOOLED = (4.1289, -5.3062e-3, 9.9516e-4)
COLDEST = -40


def at(row, t):
    return row[0] + row[1] * t + row[2] * t * t


def properties(made_of, freezes):
    """Tables over temperature: enthalpy J/kg, conductivity; and the density at the warm end."""
    shares = {name: value / sum(made_of.values()) for name, value in made_of.items()}
    temperatures = np.concatenate([np.linspace(COLDEST, freezes - 1, 400), freezes - np.geomspace(1, 1e-4, 400)[1:], np.linspace(freezes, 120, 400)])
    free = shares["water"] - 0.4 * shares.get("protein", 0)
    heat, conductivity, density = [], [], []
    for t in temperatures:
        ice = free * (1 - freezes / t) if t < freezes else 0
        parts = dict(shares, water=shares["water"] - ice, ice=ice)
        total = -333.6 * ice
        volume = along = 0
        for name, share in parts.items():
            row = ROWS[name]
            warm = UNDERCOOLED if name == "water" and t < 0 else row[1]
            total += share * (warm[0] * t + warm[1] * t * t / 2 + warm[2] * t ** 3 / 3)
            volume += share / at(row[0], t if name != "ice" else min(t, 0))
            along += share / at(row[0], t if name != "ice" else min(t, 0)) * at(row[2], t if name != "ice" else min(t, 0))
        heat.append(total * 1000)
        conductivity.append(along / volume)
        density.append(1 / volume)
    return temperatures, np.array(heat), np.array(conductivity), np.array(density)


def solved(shape, size, start, end, air, coefficient, table, steady=None):
    """Seconds until the centre is at `end`. Unknowns: the heat of each cell, J/kg."""
    cells = 60
    half, power = size / 2, SHAPES[shape]
    width = half / cells
    faces = np.linspace(0, half, cells + 1)
    area = faces ** power
    volume = (faces[1:] ** (power + 1) - faces[:-1] ** (power + 1)) / (power + 1)
    temperatures, heat, conductivity, density = table
    if steady:
        heat, conductivity = steady["specific_heat"] * temperatures, np.full_like(temperatures, steady["conductivity"])
        rho = steady["density"]
    else:
        rho = np.interp(max(start, end, 0), temperatures, density)

    def rate(_, h):
        t = np.interp(h, heat, temperatures)
        k = np.interp(t, temperatures, conductivity)
        flow = np.zeros(cells + 1)
        flow[1:-1] = -np.interp((t[1:] + t[:-1]) / 2, temperatures, conductivity) * (t[1:] - t[:-1]) / width * area[1:-1]
        flow[-1] = (t[-1] - air) / (1 / coefficient + width / 2 / k[-1]) * area[-1]
        return (flow[:-1] - flow[1:]) / (volume * rho)

    def there(_, h):
        t = np.interp(h[:2], heat, temperatures)
        bow = (t[0] - t[1]) / 8
        return t[0] + (bow if abs(bow) < 0.1 else 0) - end

    there.terminal = True
    first = np.full(cells, np.interp(start, temperatures, heat))
    band = np.eye(cells, dtype=bool) | np.eye(cells, k=1, dtype=bool) | np.eye(cells, k=-1, dtype=bool)
    ran = solve_ivp(rate, (0, 1e7), first, method="BDF", events=there, rtol=1e-5, atol=1.0, jac_sparsity=band)
    return ran.t_events[0][0]


CREAM = {"water": 68.0, "fat": 14.0, "protein": 4.0, "carbohydrate": 13.0, "ash": 1.0}
MEAT = {"water": 74.0, "protein": 21.0, "fat": 4.0, "ash": 1.0}
LARD = {"water": 20.0, "fat": 78.0, "protein": 1.0, "carbohydrate": 1.0}
worst = {}
count = 0
for what, start, end, air, made_of, allowed in (("cool", 90, 5, 3, CREAM, 0.01), ("cool", 60, 10, -2, LARD, 0.01), ("heat", 5, 60, 64, MEAT, 0.01),
                                                ("freeze", 5, -18, -35, MEAT, 0.01), ("thaw", -18, 0, 8, CREAM, 0.01)):
    for shape in SHAPES:
        for size, coefficient in ((0.02, 12), (0.06, 35), (0.1, 300)):
            ours = asked(what, shape, size, start, end, air, coefficient, ", ".join(f"{name} {value}" for name, value in made_of.items()))
            freezes = ours["properties"]["freezes_at"]
            theirs = solved(shape, size, start, end, air, coefficient, properties(made_of, freezes))
            off = ours["seconds"]["likely"] / theirs - 1
            worst[what] = max(worst.get(what, 0), abs(off))
            # Printed to three digits, which alone may be half a hundredth off.
            assert abs(off) <= allowed, (what, shape, size, coefficient, ours["seconds"], theirs)
            count += 1
assert count == 45, count
print("worst against SciPy: " + ", ".join(f"{what} {share:.2%}" for what, share in worst.items()))
