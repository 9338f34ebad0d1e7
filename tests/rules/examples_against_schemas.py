#!/usr/bin/env python3
"""Each rule says which schemas refuse its bad example; this holds it to that, with xmllint (RELAX NG and XSD) and
python3-jsonschema over the JSON spelling that tests/schemas/as_json.py makes. The good examples pass them all.
What has no JSON spelling is left to the two XML schemas."""
import json
import os
import subprocess
import sys
import tempfile
import xml.parsers.expat

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
sys.path.insert(0, os.path.join(ROOT, "tests", "schemas"))
import as_json  # noqa: E402
import validate  # noqa: E402


def rules():
    binary = os.environ.get("TAMIS", "")
    if not os.path.exists(binary):
        validate.skip("no tamis to run: the environment names none in TAMIS")
    ran = subprocess.run([binary, "explain", "--report", "json"], capture_output=True, timeout=60, check=True)
    found = json.loads(ran.stdout.decode("utf-8", "replace"))["rules"]
    found = [rule for rule in found if not rule["topic"].startswith("plugin ")]  # their own tests try those
    if len(found) < 30:
        sys.exit(f"only {len(found)} rules")
    return found


def write(folder, name, text):
    path = os.path.join(folder, name)
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)
    return path


def json_value(path):
    """None where the text has no JSON spelling: not well-formed, a DOCTYPE, a root of another namespace."""
    try:
        if path.endswith(".xml"):
            tree = as_json.load(path)
            if tree.doctype is not None or tree.documentElement.namespaceURI != as_json.NAMESPACE:
                return None
        return validate.instance(path)
    except (xml.parsers.expat.ExpatError, json.JSONDecodeError):
        return None


def refusals(paths):
    xml_paths = [p for p in paths if p.endswith(".xml")]
    values = {p: json_value(p) for p in paths}
    refused = {"rng": set(validate.xmllint("--relaxng", "tamis.rng", xml_paths)),
               "xsd": set(validate.xmllint("--schema", "tamis.xsd", xml_paths))}
    refused["json"] = set(validate.json_refusals(validate.json_validator(),
                                                 {p: v for p, v in values.items() if v is not None}))
    return refused, {p for p, v in values.items() if v is None}


def main():
    problems, expected = [], {}
    with tempfile.TemporaryDirectory() as folder:
        for rule in rules():
            if rule["topic"] == "record":
                continue  # logs, not fiches
            for which in ("bad", "good"):
                text = rule[which + "_document"]
                if "�" in text:
                    continue  # not UTF-8: no text to hand on
                ending = ".fiche.json" if text.startswith("{") else ".fiche.xml"
                path = write(folder, f"{rule['id']}.{which}{ending}", text)
                expected[path] = set(rule["schemas"]) if which == "bad" else set()
        refused, no_json = refusals(list(expected))
        for path, wanted in expected.items():
            found = {kind for kind, paths in refused.items() if path in paths}
            if path in no_json or path.endswith(".json"):
                wanted = wanted - {"json"} if path in no_json else wanted & {"json"}
            if found != wanted:
                problems.append((path, f"refused by {sorted(found)}, expected {sorted(wanted)}"))
    print(f"{len(expected)} examples")
    for path, why in problems:
        print(f"{os.path.basename(path)}: {why}")
    sys.exit(1 if problems else 0)


main()
