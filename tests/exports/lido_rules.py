"""The Schematron rules that the LIDO schema embeds, taken out and made a schema of their own.

Source: ISO/IEC 19757-3, Schematron: an abstract rule gives its assertions to every rule that extends it. The rules
of LIDO extend across patterns, which the skeleton in lxml does not follow, so that it is done here.
"""

from __future__ import annotations

from copy import deepcopy
from pathlib import Path

from lxml import etree
from lxml.isoschematron import Schematron

SCHEMATRON = "http://purl.oclc.org/dsdl/schematron"
_S = f"{{{SCHEMATRON}}}"


def embedded_rules(schema: Path) -> Schematron:
    """All the rules of the schema, each in a pattern of its own."""
    document = etree.parse(schema)
    found = list(document.iter(f"{_S}rule"))
    abstract = {rule.get("id"): rule for rule in found if rule.get("abstract") == "true"}
    root = etree.Element(f"{_S}schema", nsmap={"sch": SCHEMATRON})
    for namespace in document.iter(f"{_S}ns"):
        etree.SubElement(root, f"{_S}ns", dict(namespace.attrib))
    for rule in found:
        if rule.get("abstract") != "true":
            pattern = etree.SubElement(root, f"{_S}pattern")
            made = etree.SubElement(pattern, f"{_S}rule", context=rule.get("context", ""))
            made.extend(deepcopy(check) for check in checks(rule, abstract))
    return Schematron(root, store_report=True)


def checks(rule: etree._Element, abstract: dict[str | None, etree._Element]) -> list[etree._Element]:
    """The assertions of a rule and of what it extends, without their prose, which may hold foreign elements."""
    extended = [abstract[one.get("rule")] for one in rule.findall(f"{_S}extends")]
    members = [one for found in (rule, *extended) for one in found]
    order = (f"{_S}let", f"{_S}assert", f"{_S}report")
    return [bare(one) for tag in order for one in members if one.tag == tag]


def bare(check: etree._Element) -> etree._Element:
    made = etree.Element(check.tag, {str(name): str(value) for name, value in check.attrib.items()})
    made.text = " ".join("".join(map(str, check.itertext())).split())
    return made
