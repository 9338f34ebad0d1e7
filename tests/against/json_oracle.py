#!/usr/bin/env python3
"""The JSON reader against Python's json module (https://docs.python.org/3/library/json.html), on files made at random
and damaged at random, always the same ones.

Python says whether a file is JSON at all and what its values are; the few lines of Shape below say whether it is
spelled as schemas/README.md asks. Where both agree, `tamis check` must have nothing to say about the reading, and
`tamis format --as json` must give the same elements, attributes and letters back; where either refuses, `tamis check`
must refuse as well, with a line of its own.
"""
import json
import os
import random
import re
import subprocess
import sys
import tempfile

TAMIS = os.environ["TAMIS"]
READING = {"not-well-formed", "not-utf-8", "over-limit", "undeclared-prefix", "prefix-below-root", "wrong-namespace",
           "duplicate-key", "doctype", "unknown-entity"}
NAME = re.compile(r"[^\W\d][\w.-]*\Z")  # near enough to XML's for the letters the made files have
PREFIXED = re.compile(r"([^\W\d][\w.-]*:)?[^\W\d][\w.-]*\Z")
NOT_XML = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]")


class Refused(Exception):
    pass


def pairs(members):
    names = [name for name, _ in members]
    if len(names) != len(set(names)):
        raise Refused("a name twice")
    return dict(members)


def constant(word):
    raise Refused(word)


def number(text):
    if float(text) in (float("inf"), float("-inf")):
        raise Refused("too large")
    return Number(text)


class Number(str):
    """A number as it is spelled."""


class Shape:
    """The fiche's spelling in JSON, as a list of what it holds."""

    def __init__(self, top):
        self.seen = []
        self.check(isinstance(top, dict), "an object")
        roots = [name for name in top if name not in ("#before", "#after")]
        self.check(len(roots) == 1, "one root")
        self.leaves(top.get("#before", []))
        self.prefixes = set()
        self.element(roots[0], top[roots[0]], True)
        self.leaves(top.get("#after", []))
        for _, name, _ in (entry for entry in self.seen if entry[0] == "attribute"):
            prefix = name.rpartition(":")[0]
            self.check(not prefix or prefix in self.prefixes | {"xmlns", "xml"}, "a declared prefix")

    @staticmethod
    def check(held, what):
        if not held:
            raise Refused("expected " + what)

    def text(self, value):
        self.check(isinstance(value, str) and not isinstance(value, Number), "a text")
        self.check(not NOT_XML.search(value), "letters")
        return value

    def leaves(self, items):
        self.check(isinstance(items, list), "an array")
        for item in items:
            self.check(isinstance(item, dict) and len(item) == 1, "a leaf")
            self.leaf(*next(iter(item.items())))

    def leaf(self, name, value):
        self.check(name == "#comment", "a comment")
        value = self.text(value).replace("\r\n", "\n").replace("\r", "\n")
        self.check("--" not in value and not value.endswith("-"), "single dashes")
        self.seen.append(("comment", value))

    def element(self, name, body, root):
        self.check(NAME.match(name), "a name")
        self.seen.append(("element", name))
        if isinstance(body, str):
            self.seen.append(("text", self.text(body)))
        else:
            self.check(isinstance(body, dict), "a body")
            for attribute, value in body.items():
                if attribute != "content":
                    self.attribute(attribute, value, root)
            content = body.get("content", [])
            self.check(isinstance(content, list), "an array")
            for piece in content:
                self.piece(piece)
        self.seen.append(("end", name))

    def attribute(self, name, value, root):
        self.check(PREFIXED.match(name), "a name")
        self.check(isinstance(value, str), "a text")
        self.check(not NOT_XML.search(value), "letters")
        if name.startswith("xmlns:"):
            self.check(root and value and name != "xmlns:xmlns", "a prefix of the root")
            self.prefixes.add(name[6:])
        self.check(name != "xmlns" or (root and value == "urn:tamis:fiche:1"), "our namespace")
        self.seen.append(("attribute", name, str(value)))

    def piece(self, piece):
        if isinstance(piece, str):
            self.seen.append(("text", self.text(piece)))
            return
        self.check(isinstance(piece, dict) and len(piece) == 1, "an element")
        name, value = next(iter(piece.items()))
        if name.startswith("#"):
            self.leaf(name, value)
        else:
            self.element(name, value, False)


def meaning(data):
    """What the bytes hold, or why they are refused. Blank in texts does not count."""
    try:
        text = data.decode("utf-8-sig")
        if NOT_XML.search(text):
            raise Refused("letters")
        top = json.loads(text, object_pairs_hook=pairs, parse_constant=constant, parse_float=number, parse_int=number)
        seen = Shape(top).seen
    except (Refused, ValueError, RecursionError):
        return None
    out, letters = [], ""
    for entry in seen:
        if entry[0] == "text":
            letters += re.sub("[ \t\n]+", "", entry[1])
            continue
        if letters:
            out.append(("text", letters))
        letters = ""
        if entry[:2] != ("attribute", "xmlns"):
            out.append(entry)
    return out


# ---------------------------------------------------------------- the files

TEXTS = ["a", "Warm the milk ", "½ cup", "180 °C", "🍰", "\u00a0", "\"", "\\", "\n", "\t", "\r", "&<>]]>", "", " ", "é", "/", "x-"]


def some_text(rng):
    return "".join(rng.choice(TEXTS) for _ in range(rng.randrange(4)))


def some_element(rng, depth):
    name = rng.choice(["title", "component", "step", "use", "until", "note", "novelty"])
    if rng.random() < 0.3:
        return {name: some_text(rng)}
    body = {}
    for attribute in ["id", "of", "pieces", "h:mark", "zest"]:
        if rng.random() < 0.3:
            body[attribute] = rng.choice([some_text(rng), rng.randrange(1000), 0.5])
    pieces = []
    for _ in range(rng.randrange(4 if depth < 5 else 1)):
        kind = rng.random()
        if kind < 0.4:
            pieces.append(some_text(rng))
        elif kind < 0.5:
            pieces.append({"#comment": some_text(rng).replace("-", "+")})
        else:
            pieces.append(some_element(rng, depth + 1))
    if pieces or rng.random() < 0.5:
        body["content"] = pieces
    if rng.random() < 0.3:
        body = dict(sorted(body.items()))
    return {name: body}


def some_file(rng):
    (_, body), = some_element(rng, 0).items()
    if not isinstance(body, dict):
        body = {"content": [body]}
    body["xmlns:h"] = "urn:example:house"
    top = {"fiche": body}
    if rng.random() < 0.3:
        top["#before"] = [{"#comment": "before"}]
    if rng.random() < 0.3:
        top = {"#after": [{"#comment": "after"}], **top}
    text = json.dumps(top, ensure_ascii=rng.random() < 0.5, indent=rng.choice([None, 1, 2]))
    return (rng.choice(["", "", "\ufeff"]) + text + rng.choice(["", "\n"])).encode()


BITS = [b"{", b"}", b"[", b"]", b",", b":", b'"', b"\\", b"/", b"//", b"'", b"0", b"-", b".", b"e9", b"1e999", b"true", b"null", b"NaN",
        b"\\u0000", b"\\ud83c", b"\\udf70", b"\\u00e9", b"\xc3", b"\xe9", b"\n", b"\t", b" ", b"a", b'"id": "b", ', b'"content": [], ',
        b'{"step": "a"}', b'{"a": 1, "b": 2}', b'"#comment"', b"h:", b"01"]


def damaged(rng, data):
    at = rng.randrange(len(data))
    kind = rng.randrange(4)
    if kind == 0:
        return data[:at] + data[at + 1:]
    if kind == 1:
        return data[:at] + rng.choice(BITS) + data[at:]
    if kind == 2:
        return data[:at] + rng.choice(BITS) + data[at + 1:]
    return data[:at] + data[at + rng.randrange(1, 9):]


def main():
    rng = random.Random(20260211)
    files = []
    for _ in range(250):
        good = some_file(rng)
        files.append(good)
        files += [damaged(rng, good) for _ in range(7)]
    files = [data for data in files if data.strip()]

    faults = []
    taken = refused = 0
    with tempfile.TemporaryDirectory() as folder:
        names = ["%05d.fiche.json" % i for i in range(len(files))]
        for name, data in zip(names, files):
            with open(os.path.join(folder, name), "wb") as out:
                out.write(data)
        check = subprocess.run([TAMIS, "check", "--report", "json", "."], cwd=folder, capture_output=True, timeout=300)
        report = json.loads(check.stdout)
        said = {os.path.basename(entry["path"]): entry["findings"] for entry in report["files"]}
        write = subprocess.run([TAMIS, "format", "--as", "json", "--write", "."], cwd=folder, capture_output=True, timeout=300)
        if check.returncode not in (0, 1) or write.returncode not in (0, 1):
            sys.exit("tamis could not do its work: %r %r" % (check.stderr[-500:], write.stderr[-500:]))
        for name, data in zip(names, files):
            expected = meaning(data)
            stops = [f for f in said.get(name, []) if f["rule"] in READING]
            if expected is None:
                refused += 1
                if not stops:
                    faults.append("taken, but must be refused: %r" % data)
                continue
            taken += 1
            if stops:
                faults.append("refused (%s), but is good: %r" % (stops[0]["message"], data))
                continue
            with open(os.path.join(folder, name), "rb") as again:
                found = meaning(again.read())
            if found != expected:
                faults.append("read otherwise: %r\n  %r\n  %r" % (data, expected, found))
    if taken < 400 or refused < 400:
        faults.append("too little was compared: %d taken, %d refused" % (taken, refused))
    print("%d files taken, %d refused" % (taken, refused))
    print("\n".join(faults[:20]))
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
