"""The JSON spelling of an XML fiche, by the rules of schemas/README.md and by nobody else's code: xml.dom.minidom reads
(Expat underneath), this file spells. What Tamis writes is compared with it."""
import re
import xml.dom.minidom as dom

NAMESPACE = "urn:tamis:fiche:1"


def load(path):
    return dom.parse(path)


def foreign(node):
    """The element as it stands in the file, as near as a reader that lost the spelling can say."""
    return {"#xml": node.toxml()}


def item(node):
    if node.nodeType == node.COMMENT_NODE:
        return {"#comment": node.data}
    if node.nodeType == node.PROCESSING_INSTRUCTION_NODE:
        return {"#instruction": node.target + (" " + node.data if node.data else "")}
    if node.nodeType in (node.TEXT_NODE, node.CDATA_SECTION_NODE):
        return node.data
    return {node.tagName: body(node)} if node.namespaceURI == NAMESPACE else foreign(node)


def content(node):
    """Blank text between elements that hold no prose is layout, not content."""
    parts = [item(child) for child in node.childNodes]
    if all(not isinstance(p, str) or not p.strip(" \t\r\n") for p in parts):
        return [p for p in parts if not isinstance(p, str)]
    return parts


def body(node):
    names = [node.attributes.item(i) for i in range(node.attributes.length)]
    members = {a.name: a.value for a in names if a.name != "xmlns"}
    parts = content(node)
    if not members and all(isinstance(p, str) for p in parts) and parts:
        return "".join(parts)
    if parts:
        members["content"] = parts
    return members


def document(tree):
    before, after, root = [], [], None
    for child in tree.childNodes:
        if child.nodeType == child.ELEMENT_NODE:
            root = {child.tagName: body(child)}
        else:
            (before if root is None else after).append(item(child))
    return {**({"#before": before} if before else {}), **root, **({"#after": after} if after else {})}


def folded(value):
    """The same with white space folded and the blank ends of lists and texts gone, so that two layouts compare."""
    if isinstance(value, str):
        return re.sub(r"[ \t\r\n]+", " ", value).strip(" ")
    if isinstance(value, dict):
        return {k: v if k in ("#comment", "#instruction", "#xml") else folded(v) for k, v in value.items()}
    if isinstance(value, list):
        return [v for v in (folded(v) for v in value) if v != ""]
    return value
