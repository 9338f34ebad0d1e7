#!/usr/bin/env python3
"""All pairs of units of a kind, as the program answers at the desk, against pint (Debian package python3-pint).

Run by ctest with TAMIS naming the program. Exit 77: pint is not installed.
"""
import json
import os
import subprocess
import sys

try:
    import pint
except ModuleNotFoundError:
    system_python = "/usr/bin/python3"
    if os.path.exists(system_python) and os.path.realpath(sys.executable) != os.path.realpath(system_python):
        found = subprocess.run([system_python, "-c", "import pint"], capture_output=True)
        if found.returncode == 0:
            os.execv(system_python, [system_python, *sys.argv])
    print("SKIPPED: python3-pint is not installed")
    sys.exit(77)

# Our unit and pint's name for it, by kind.
KINDS = {
    "mass": {"mg": "milligram", "g": "gram", "dag": "decagram", "kg": "kilogram", "oz": "ounce", "lb": "pound",
             "grain": "grain"},
    "volume": {"ml": "milliliter", "cl": "centiliter", "dl": "deciliter", "l": "liter", "cm3": "centimeter**3",
               "dm3": "decimeter**3", "tsp-us": "teaspoon", "tbsp-us": "tablespoon", "floz-us": "fluid_ounce",
               "gill-us": "gill", "cup-us": "cup", "pint-us": "pint", "quart-us": "quart", "gallon-us": "gallon",
               "dry-pint-us": "dry_pint", "dry-quart-us": "dry_quart", "peck-us": "peck", "bushel-us": "bushel",
               "floz-imperial": "imperial_fluid_ounce", "gill-imperial": "imperial_gill",
               "cup-imperial": "imperial_cup", "pint-imperial": "imperial_pint", "quart-imperial": "imperial_quart",
               "gallon-imperial": "imperial_gallon"},
    "length": {"mm": "millimeter", "cm": "centimeter", "m": "meter", "in": "inch", "ft": "foot", "yd": "yard"},
    "time": {"s": "second", "min": "minute", "h": "hour", "day": "day", "week": "week", "month": "month",
             "year": "year"},
    "temperature": {"degc": "degree_Celsius", "degf": "degree_Fahrenheit", "kelvin": "kelvin"},
}
# The spoons of Britain and the metric countries, the labels' measures and the metric pound have no name in pint.
RELATIVE = 1e-12


def ours(amount, unit):
    answer = subprocess.run([os.environ["TAMIS"], "measure", amount, "--in", unit, "--as", "json"],
                            capture_output=True, text=True)
    if answer.returncode != 0:
        sys.exit(f"tamis measure \"{amount}\" --in {unit} gave {answer.returncode}: {answer.stderr}")
    return json.loads(answer.stdout)


def figure_of(answer):
    """The exact ratio where there is one, which must agree with the value beside it."""
    if answer["exact"] is None:
        return answer["value"]
    top, _, bottom = answer["exact"].partition("/")
    exact = int(top) / int(bottom or 1)
    if abs(exact - answer["value"]) > RELATIVE * max(1, abs(exact)):
        sys.exit(f"exact and value differ in {answer}")
    return exact


def main():
    registry = pint.UnitRegistry(autoconvert_offset_to_baseunit=True)
    wrong = 0
    pairs = 0
    for kind, names in KINDS.items():
        number = 350 if kind == "temperature" else 1
        for have, pint_have in names.items():
            for want, pint_want in names.items():
                answer = figure_of(ours(f"{number} {have}", want))
                theirs = registry.Quantity(number, pint_have).to(pint_want).magnitude
                pairs += 1
                # A scale's zero is a floating-point figure in pint.
                slack = RELATIVE * max(abs(theirs), 1000 if kind == "temperature" else 0)
                if abs(answer - theirs) > slack:
                    wrong += 1
                    print(f"{number} {have} in {want}: {answer}, pint says {theirs}")
    print(f"{pairs} pairs, {wrong} differ")
    sys.exit(1 if wrong else 0)


main()
