#!/usr/bin/env python3
"""Every made file carries the SHA-256 of the schemas/tamis.rnc it was made from; where trang is installed, making them
again must change nothing."""
import hashlib
import os
import shutil
import subprocess
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
MADE = ["schemas/tamis.rng", "schemas/tamis.xsd", "schemas/tamis.schema.json", "core/fiche/vocabulary.inc"]

with open(os.path.join(ROOT, "schemas/tamis.rnc"), "rb") as source:
    digest = hashlib.sha256(source.read()).hexdigest()
stale = [path for path in MADE if digest not in open(os.path.join(ROOT, path), encoding="utf-8").read()]
if stale:
    sys.exit("made from another tamis.rnc, run scripts/schemas: " + ", ".join(stale))
if shutil.which("trang") is not None:
    sys.exit(subprocess.run([sys.executable, os.path.join(ROOT, "scripts", "schemas"), "--check"]).returncode)
print("trang is not installed: the stamps agree, the text was not made again")
