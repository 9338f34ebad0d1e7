#!/usr/bin/env python3
"""Calendars read by the Debian package python3-icalendar, an independent reader of RFC 5545.

Of every dish of the demo kitchen: the reader finds no error; every line is at most 75 octets of whole UTF-8 letters and ends in
CRLF (3.1); UID, DTSTAMP and DTSTART stand once in every event, UIDs differ (3.8.4.7), no event ends before it begins (3.6.1);
what the reader unfolds and unescapes are the fiche's own sentences (a backslash before an n is not
asked: version 4 reads that as a new line); two runs give the same bytes.
"""
import datetime
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

try:
    import icalendar
except ImportError:
    print("SKIPPED: icalendar is not installed (Debian package python3-icalendar)")
    sys.exit(77)

ROOT = pathlib.Path(__file__).resolve().parents[2]
TAMIS = pathlib.Path(os.environ["TAMIS"]).resolve()
KITCHEN = ROOT / "tests" / "kitchen"
SPACE = "{urn:tamis:fiche:1}"
SERVICE = datetime.datetime(2026, 3, 7, 19, 0)
ODD = """<fiche xmlns="urn:tamis:fiche:1" id="odd" lang="en" units="metric"><title>Crème; "brûlée", a\\b</title>
<component id="c" title="Größe, ñ; 漢字かな交じり文の長い見出しを折り返す、とても長い見出し"><ingredient id="m" food="milk-whole">1 kg</ingredient>
<step do="boil" hands="10 min">Sieden: {words} <use of="m">milk</use>; und, weiter\\ so.</step></component></fiche>"""


def run(*paths):
    command = [str(TAMIS), "export", "--as", "calendar", "--set", "service=2026-03-07T19:00", *map(str, paths)]
    first = subprocess.run(command, capture_output=True, check=False)
    second = subprocess.run(command, capture_output=True, check=False)
    assert first.returncode == 0, (paths, first.stderr.decode())
    assert first.stdout == second.stdout, paths
    return first.stdout


def steps_of(path):
    sentences = []
    blocks = {SPACE + name for name in ("gate", "why", "note", "rescue", "control", "loss", "image", "gap", "done")}
    for step in ElementTree.parse(path).getroot().iter(SPACE + "step"):
        words = step.text or ""
        for child in step:
            if child.tag not in blocks:
                words += "".join(child.itertext())
            words += child.tail or ""
        sentences.append(re.sub(r"\s+", " ", words).strip())
    return sentences


def check(raw, sentences):
    assert raw.endswith(b"\r\n") and b"\n" not in raw.replace(b"\r\n", b"")
    for line in raw.split(b"\r\n"):
        assert len(line) <= 75, line
        line.decode("utf-8")
    calendar = icalendar.Calendar.from_ical(raw)
    assert not calendar.is_broken and str(calendar["VERSION"]) == "2.0" and calendar["PRODID"]
    uids, found = set(), set()
    for event in calendar.walk("VEVENT"):
        assert not event.errors, event.errors
        assert isinstance(event["UID"], str) and event["UID"] not in uids, event["UID"]
        uids.add(event["UID"])
        assert event["DTSTAMP"].dt.tzinfo is not None, "DTSTAMP is not UTC"
        start = event["DTSTART"].dt
        assert start.tzinfo is None and start <= SERVICE, start
        if "DTEND" in event:
            assert start < event["DTEND"].dt <= SERVICE, event
        if "DESCRIPTION" in event:
            found.add(str(event["DESCRIPTION"]).split("\n")[0])
    for sentence in sentences:
        assert any(sentence == one for one in found), (sentence, found)
    return len(uids)


events = 0
for path in sorted(KITCHEN.rglob("*.fiche.xml")):
    events += check(run(path), steps_of(path))
assert events > 100, events
print(f"{events} events of the demo kitchen agree")
with tempfile.TemporaryDirectory() as folder:
    for pad in range(80):
        path = pathlib.Path(folder) / "odd.fiche.xml"
        path.write_text(ODD.replace("{words}", "x" * pad + "äé漢🍋" * 20), encoding="utf-8")
        calendar_bytes = run(path)
        check(calendar_bytes, steps_of(path))
        event = icalendar.Calendar.from_ical(calendar_bytes).walk("VEVENT")[0]
        assert str(event["SUMMARY"]).endswith('とても長い見出し: boil – Crème; "brûlée", a\\b'), event["SUMMARY"]
print("80 ways of folding letters of two, three and four bytes agree")
