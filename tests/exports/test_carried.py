"""The table of what each standard carries names every section and field, and tells the truth.

The marked work has a word of its own in every field that can hold one; a word is in an export exactly where the table
does not say that it is lost.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from pathlib import Path

import pytest
from examples_read import vocabulary

from intent.exports.lido import export_lido
from intent.exports.linked_art import export_linked_art
from intent.exports.odrl import export_odrl
from intent.exports.premis import export_premis
from intent.exports.standards import STANDARDS
from intent.reading.documentation import read_documentation
from intent.redaction.leaving import what_may_leave

MARKED = Path(__file__).parent / "marked.md"
NAMES = {"SHACL": "shacl", "ODRL": "odrl", "LIDO": "lido", "Linked Art": "linked-art", "PREMIS": "premis"}
HEADS = {"work-head": "head of a work", "installation-head": "head of an installation"}
LOST = {"–", "left out"}
MARKS = {
    ("head of a work", "title"): "Title-mark",
    ("head of a work", "year"): "1961",
    ("head of a work", "number"): "number-mark",
    ("head of a work", "owner"): "owner-mark",
    ("head of a work", "medium"): "medium-mark",
    ("head of a work", "credit line"): "credit-mark",
    ("head of a work", "rights holder"): "holder-mark",
    ("head of a work", "rights"): "rights-mark",
    ("head of a work", "licence of the record"): "licence-mark",
    ("head of a work", "insurance value"): "insurance-mark",
    ("head of a work", "prose"): "Prose-mark",
    ("People", "person"): "person-mark",
    ("People", "name"): "Name-mark",
    ("People", "called"): "called-mark",
    ("People", "since"): "1962",
    ("People", "until"): "2063",
    ("People", "contact"): "contact-mark",
    ("People", "remark"): "person-remark",
    ("Parts", "part"): "PM1",
    ("Parts", "name"): "part-name-mark",
    ("Parts", "prose of groups"): "Group-prose-mark",
    ("Parts", "device"): "DV-mark",
    ("Parts", "remark"): "part-remark",
    ("Parts", "characteristics"): "17 deg",
    ("Parts", "origin"): "origin-mark",
    ("Devices", "device"): "DV-mark",
    ("Devices", "status"): "spare",
    ("Devices", "characteristics"): "maker-mark",
    ("Devices", "name"): "device-name",
    ("Devices", "remark"): "device-remark",
    ("Devices", "storage place"): "store-mark",
    ("Devices", "insurance value"): "device-insurance",
    ("Whole work", "characteristics"): "edition-mark",
    ("Sources", "source"): "SM1",
    ("Sources", "title"): "Source-title-mark",
    ("Sources", "kind"): "interview",
    ("Sources", "date"): "1964-03",
    ("Sources", "file"): "file-mark",
    ("Sources", "sha256"): "d7a8fbb3",
    ("Sources", "words"): "Source-words-mark",
    ("Sources", "prose"): "Source-prose-mark",
    ("Sources", "language"): "source-language",
    ("Sources", "held at"): "held-mark",
    ("Instructions", "sentence"): "fact-mark",
    ("Instructions", "duty"): "duty-mark",
    ("Instructions", "on"): "1965-04",
    ("Instructions", "source"): "0:14:05",
    ("Instructions", "heading"): "Heading-mark",
    ("Instructions", "words"): "Words-mark",
    ("Instructions", "reason"): "reason-mark",
    ("Instructions", "prose"): "Heading-prose-mark",
    ("Instructions", "withdrawn"): "1977",
    ("Material", "material"): "VM1",
    ("Material", "name"): "material-name",
    ("Material", "file"): "v-mark",
    ("Material", "characteristics"): "codec-mark",
    ("Material", "remark"): "material-remark",
    ("Connections", "characteristics"): "7.77",
    ("Connections", "remark"): "connection-remark",
    ("Boxes", "box"): "BX-1",
    ("Boxes", "name"): "box-name",
    ("Boxes", "remark"): "box-remark",
    ("Boxes", "storage place"): "box-store",
    ("Log", "date"): "1971",
    ("Log", "source"): "logged-source",
    ("Log", "remark"): "log-remark",
    ("Notes", "prose"): "Notes-mark",
}


@cache
def table() -> dict[tuple[str, str], dict[str, str]]:
    """What each standard does with a field, by section and field."""
    text = files("intent.exports").joinpath("standards.md").read_text(encoding="utf-8")
    rows = [cells(line) for line in text.split("| section |")[1].splitlines()[2:] if line.startswith("|")]
    names = list(NAMES)
    return {
        (row[0], field): dict(zip(names, row[2:], strict=True))
        for row in rows
        for field in row[1].split(", ")
    }


def cells(line: str) -> list[str]:
    return [cell.strip() for cell in line.strip().strip("|").split("|")]


def fields() -> Iterator[tuple[str, str]]:
    """Every field of every section of a work or an installation, as the vocabulary of the text form has it."""
    for section in vocabulary().sections.values():
        if section.documents & {"work", "installation"}:
            name = HEADS.get(section.iri.rpartition("/")[2], section.label)
            for field in vocabulary().fields.values():
                if section.iri in field.sections:
                    yield name, field.label
            if section.bearers:
                yield name, "characteristics"


@cache
def exported() -> dict[str, str]:
    documentation = read_documentation(MARKED, vocabulary())
    work = what_may_leave(documentation.work, documentation.reading.triples).work
    documents = export_linked_art(work).values()
    return {
        "ODRL": export_odrl(work),
        "LIDO": export_lido(work, datetime.date(2027, 3, 1)).decode(),
        "Linked Art": "\n".join(content.decode() for content in documents),
        "PREMIS": export_premis(work).decode(),
    }


def test_the_table_has_a_column_for_each_standard() -> None:
    assert list(NAMES.values()) == [name for name, _ in STANDARDS]


@pytest.mark.parametrize(("section", "field"), sorted(set(fields())))
def test_the_table_names_every_section_and_field(section: str, field: str) -> None:
    assert (section, field) in table()


@pytest.mark.parametrize("name", ["ODRL", "LIDO", "Linked Art", "PREMIS"])
@pytest.mark.parametrize("place", MARKS, ids="-".join)
def test_what_the_table_says_is_so(place: tuple[str, str], name: str) -> None:
    assert (MARKS[place] in exported()[name]) == (table()[place][name] not in LOST)


def test_what_never_leaves_is_in_none() -> None:
    for secret in (
        "insurance-mark",
        "device-insurance",
        "contact-mark",
        "store-mark",
        "box-store",
        "held-mark",
    ):
        assert secret in MARKED.read_text(encoding="utf-8")
        assert not [name for name, text in exported().items() if secret in text]
