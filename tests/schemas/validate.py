#!/usr/bin/env python3
"""Holds the schemas against files good and bad, with tools that are not ours: xmllint (RELAX NG and XSD) and
python3-jsonschema (JSON Schema 2020-12).

    validate.py good    every fiche and kitchen file of the project passes all the schemas of its spelling
    validate.py bad     each file of tests/schemas/bad is refused by exactly the schemas that bad.csv names
    validate.py rules   tamis check says about each of them exactly the rule that bad.csv names,
                        and nothing about the worked example
    validate.py twins   what tamis format writes as JSON is what as_json.py makes of the same XML, and passes
    validate.py page    every fragment in schemas/README.md stands in the worked example
    validate.py ajv     the JSON schema once more, by ajv
"""
import csv
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.dirname(os.path.dirname(HERE))
sys.path.insert(0, HERE)
import as_json  # noqa: E402

SCHEMAS = os.path.join(ROOT, "schemas")


def skip(reason):
    print("SKIPPED: " + reason)
    sys.exit(77)


def is_document(name):
    return name.endswith((".fiche.xml", ".fiche.json")) or name in ("kitchen.xml", "kitchen.json")


def good_files():
    """Every fiche and kitchen file of the project that is not meant to be wrong."""
    found = []
    for top in ("schemas", "tests", "plugins"):
        for folder, folders, names in os.walk(os.path.join(ROOT, top)):
            folders[:] = sorted(f for f in folders if f != "bad")
            found += [os.path.join(folder, n) for n in sorted(names) if is_document(n)]
    if len(found) < 15:
        sys.exit(f"only {len(found)} fiches found: is this the project?")
    return found


def xmllint(kind, schema, paths):
    """Those of the files that the schema refuses, each with xmllint's first line about it."""
    if shutil.which("xmllint") is None:
        skip("xmllint is not installed (Debian package libxml2-utils)")
    ran = subprocess.run(["xmllint", "--noout", kind, os.path.join(SCHEMAS, schema)] + paths, capture_output=True,
                         text=True)
    passed = {line[:-len(" validates")] for line in ran.stderr.splitlines() if line.endswith(" validates")}
    lines = ran.stderr.splitlines()
    return {p: next((x for x in lines if x.startswith(p + ":")), "refused") for p in paths if p not in passed}


def json_validator():
    try:
        import jsonschema
    except ImportError:
        skip("python3-jsonschema is not installed")
    with open(os.path.join(SCHEMAS, "tamis.schema.json"), encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def deepest(error):
    while error.context:
        error = max(error.context, key=lambda e: len(e.absolute_path))
    return f"at {list(error.absolute_path)}: {error.message[:160]}"


def json_refusals(validator, instances):
    """instances: path → value. Those that the schema refuses, each with why."""
    refused = {}
    for path, value in instances.items():
        error = next(iter(validator.iter_errors(value)), None)
        if error is not None:
            refused[path] = deepest(error)
    return refused


def instance(path):
    if path.endswith(".json"):
        with open(path, encoding="utf-8") as file:
            return json.load(file)
    return as_json.document(as_json.load(path))


def report(problems):
    for path, why in problems:
        print(f"{os.path.relpath(path, ROOT)}: {why}")
    sys.exit(1 if problems else 0)


def good():
    paths = good_files()
    xml = [p for p in paths if p.endswith(".xml")]
    problems = [(p, "RELAX NG: " + w) for p, w in xmllint("--relaxng", "tamis.rng", xml).items()]
    problems += [(p, "XSD: " + w) for p, w in xmllint("--schema", "tamis.xsd", xml).items()]
    problems += [(p, "JSON Schema: " + w)
                 for p, w in json_refusals(json_validator(), {p: instance(p) for p in paths}).items()]
    print(f"{len(paths)} files, {len(xml)} of them XML")
    report(problems)


def bad_rows():
    with open(os.path.join(HERE, "bad.csv"), encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    names = sorted(os.listdir(os.path.join(HERE, "bad")))
    if names != sorted(r["file"] for r in rows):
        sys.exit("bad.csv and the folder bad differ: " + ", ".join(set(names) ^ {r["file"] for r in rows}))
    return [(os.path.join(HERE, "bad", r["file"]), r) for r in rows]


def bad():
    rows = bad_rows()
    xml = [p for p, _ in rows if p.endswith(".xml")]
    refused = {"rng": xmllint("--relaxng", "tamis.rng", xml), "xsd": xmllint("--schema", "tamis.xsd", xml),
               "json": json_refusals(json_validator(), {p: instance(p) for p, _ in rows})}
    problems = []
    for path, row in rows:
        found = [schema for schema in ("rng", "xsd", "json") if path in refused[schema]]
        if found != row["refused by"].split():
            problems.append((path, f"refused by {found}, expected {row['refused by'].split()}"))
    print(f"{len(rows)} bad files")
    report(problems)


def tamis(*arguments):
    binary = os.environ.get("TAMIS", "")
    if not os.path.exists(binary):
        skip("no tamis to run: the environment names none in TAMIS")
    return subprocess.run([binary, *arguments], capture_output=True, text=True, timeout=60)


def rules():
    problems = []
    for path, row in bad_rows():
        ran = tamis("check", "--report", "json", path)
        if ran.returncode not in (0, 1):
            problems.append((path, f"exit {ran.returncode}: {ran.stderr.strip()}"))
            continue
        found = sorted({f["rule"] for file in json.loads(ran.stdout)["files"] for f in file["findings"]})
        if found != [row["rule"]]:
            problems.append((path, f"check says {found}, expected {row['rule']}"))
    if tamis("check", "--strict", SCHEMAS).returncode != 0:
        problems.append((SCHEMAS, "check has something to say about the worked example"))
    report(problems)


def twins():
    problems, written = [], {}
    for path in (p for p in good_files() if p.endswith(".xml")):
        ran = tamis("format", "--as", "json", path)
        if ran.returncode != 0:
            problems.append((path, f"exit {ran.returncode}: {ran.stderr.strip()}"))
            continue
        written[path] = json.loads(ran.stdout)
        if without_foreign(as_json.folded(written[path])) != without_foreign(as_json.folded(instance(path))):
            problems.append((path, "tamis format --as json differs from as_json.py"))
        problems += back_again(path, ran.stdout)
    problems += [(p, "JSON Schema: " + w) for p, w in json_refusals(json_validator(), written).items()]
    print(f"{len(written)} files written as JSON")
    report(problems)


def without_foreign(value):
    """Foreign XML is verbatim in ours and respelled by minidom: compared by its white space folded, quotes alike."""
    if isinstance(value, dict):
        return {k: re.sub(r"\s+", " ", v.replace("'", '"')).replace("/>", " />").replace("  />", " />")
                if k == "#xml" else without_foreign(v) for k, v in value.items()}
    return [without_foreign(v) for v in value] if isinstance(value, list) else value


def back_again(path, text):
    """XML → JSON → XML gives the bytes of the formatted file."""
    ending = ".fiche.json" if path.endswith(".fiche.xml") else ".json"
    with tempfile.TemporaryDirectory() as folder:
        twin = os.path.join(folder, "twin" + ending)
        with open(twin, "w", encoding="utf-8") as file:
            file.write(text)
        back = tamis("format", "--as", "xml", twin)
    laid_out = tamis("format", path)
    return [] if back.stdout == laid_out.stdout and back.returncode == 0 else [(path, "XML → JSON → XML differs")]


def parts_of(value):
    yield value
    for inner in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from parts_of(inner)


def page():
    """Layout may differ between page and example, so white space is folded on both sides."""
    def read(name):
        with open(os.path.join(SCHEMAS, name), encoding="utf-8") as file:
            return file.read()

    def fold(text):
        return " ".join(re.sub(r">\s+<", "><", text).split())
    fragments = re.findall(r"```(xml|json)\n(.*?)```", read("README.md"), re.S)
    example, twin = fold(read("example.fiche.xml")), list(parts_of(json.loads(read("example.fiche.json"))))
    lost = [text for kind, text in fragments
            if not (fold(text) in example if kind == "xml" else json.loads(text) in twin)]
    print(f"{len(fragments)} fragments")
    if len(fragments) < 20:
        sys.exit("fragments are missing from the page")
    report([(os.path.join(SCHEMAS, "README.md"), "not in the example: " + text) for text in lost])


def ajv():
    command = shutil.which("ajv")
    if command is None:
        skip("ajv is not installed (npm packages ajv, ajv-cli)")
    with tempfile.TemporaryDirectory() as folder:
        def validate(values):
            paths = []
            for number, value in enumerate(values):
                paths.append(os.path.join(folder, f"{number}.json"))
                with open(paths[-1], "w", encoding="utf-8") as file:
                    json.dump(value, file)
            ran = subprocess.run([command, "validate", "--spec=draft2020", "--strict=false", "-s",
                                  os.path.join(SCHEMAS, "tamis.schema.json"), "-d", os.path.join(folder, "*.json")],
                                 capture_output=True, text=True)
            said = (ran.stdout + ran.stderr).splitlines()
            return [f"{p} valid" in said for p in paths]
        rows = bad_rows()
        paths = good_files() + [p for p, _ in rows]
        wanted = [True] * len(good_files()) + ["json" not in r["refused by"].split() for _, r in rows]
        got = validate([instance(p) for p in paths])
    report([(p, f"ajv says {'valid' if g else 'invalid'}") for p, w, g in zip(paths, wanted, got) if w != g])


if __name__ == "__main__":
    {"good": good, "bad": bad, "rules": rules, "twins": twins, "page": page, "ajv": ajv}[sys.argv[1]]()
