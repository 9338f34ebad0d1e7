#!/usr/bin/env python3
"""The order of the demo kitchen, read by Python's csv module (RFC 4180 in its strict form) and reckoned again by Python.

Every line has the header's fields; every line end is CRLF; no text begins as a formula does (OWASP, CSV Injection); packs,
stock, what is left and the sums agree with one another and with the packs and prices of tests/kitchen/kitchen.xml.
"""
import csv
import io
import os
import pathlib
import subprocess
import sys
import xml.etree.ElementTree as ElementTree
from decimal import Decimal

ROOT = pathlib.Path(__file__).resolve().parents[2]
TAMIS = pathlib.Path(os.environ["TAMIS"]).resolve()
KITCHEN = ROOT / "tests" / "kitchen"
SPACE = "{urn:tamis:fiche:1}"
SETTINGS = ["", "whole=egg-yolk egg-white;stock=sugar-white=30kg egg-whole=12;make=damson-almond-tart=480 braised-ox-cheek=12x"]


def order(settings):
    folders = [str(KITCHEN / name) for name in ("desserts", "mains", "base", "bakes", "soups", "preserves")]
    command = [str(TAMIS), "export", "--as", "order"] + (["--set", settings] if settings else []) + folders
    done = subprocess.run(command, capture_output=True, check=False)
    if done.returncode != 0:
        sys.exit(f"{done.returncode}: {done.stderr.decode()}")
    return done.stdout


def prices():
    """Name of a food → pack as written, price: the latest of each."""
    out = {}
    for food in ElementTree.parse(KITCHEN / "kitchen.xml").getroot().iter(SPACE + "food"):
        stated = [food] + list(food.iter(SPACE + "bought"))
        latest = max(stated, key=lambda one: one.get("since", ""))
        out[food.get("name")] = (latest.get("pack"), Decimal(latest.get("price").split()[0]))
    return out


def check(raw):
    text = raw.decode("utf-8")
    assert "\n" not in text.replace("\r\n", ""), "a line end that is not CRLF"
    lines = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    head, rows = lines[0], lines[1:]
    assert len(set(head)) == len(head) == 17, head
    known = prices()
    packs = 0
    for fields in rows:
        assert len(fields) == len(head), fields
        assert not any(field.startswith(("=", "+", "-", "@", "\t", "\r")) for field in fields), fields
        row = dict(zip(head, fields))
        if row["Supplier"] == "made in the house":
            continue
        assert row["For"], row
        if row["Needed"]:
            assert Decimal(row["Needed"]) <= Decimal(row["As bought"]), row
            short = max(Decimal(0), Decimal(row["As bought"]) - Decimal(row["In stock"] or 0))
            assert abs(Decimal(row["To buy"]) - short) <= Decimal("0.1"), row
        if not row["Packs"]:
            continue
        packs += 1
        assert (row["Pack"], Decimal(row["Price of a pack"])) == known[row["Food"]], row
        size, number = Decimal(row["Pack"].split()[0]), int(row["Packs"])
        assert Decimal(row["Sum"]) == number * Decimal(row["Price of a pack"]), row
        left = Decimal(row["In stock"] or 0) + number * size - Decimal(row["As bought"])
        assert abs(Decimal(row["Left over"]) - left) <= Decimal("0.002"), (row, left)
        assert number == 0 or number * size - Decimal(row["To buy"]) < size, row
        assert number * size >= Decimal(row["To buy"]) - Decimal("0.001"), row
    assert packs >= 15, packs
    return len(rows)


for settings in SETTINGS:
    print(f"{check(order(settings))} lines agree ({settings or 'as written'})")
