"""The shapes for works and installations: each is shown to fail on a record that breaks it, with what it says then.

The cases are in ``cases``; each file says how they are written. Source: W3C, Shapes Constraint Language (SHACL),
Recommendation of 20 July 2017; its shapes for shapes graphs (appendix C) come with pySHACL, and the list of what
SHACL Core knows (sections 2 to 4) is written out below.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pyshacl
import pytest
from examples_read import INSTALLATIONS, WORKS, proposal
from rdflib import Graph
from rdflib.namespace import SH

import intent
from intent.diagnostics import Diagnostic, Severity, Span
from intent.language.locale import ENGLISH
from intent.record.parse import parse_rdf
from intent.record.validate import SHAPES, shapes_file, validate_record

FOLDER = Path(__file__).parent / "cases"
FILES = ("record", "work", "installation")
CORE = """
    path inversePath alternativePath oneOrMorePath zeroOrOnePath zeroOrMorePath
    targetClass targetNode targetSubjectsOf targetObjectsOf message severity property node
    minCount maxCount nodeKind class datatype in hasValue pattern minInclusive maxInclusive disjoint
    and or not qualifiedValueShape qualifiedMinCount
"""


@dataclass(frozen=True, slots=True)
class Case:
    file: str
    line: int
    slug: str
    expected: tuple[str, ...]
    turtle: str

    def __str__(self) -> str:
        return f"{self.file}.ttl:{self.line}:{self.slug}"


def read_cases() -> Iterator[Case]:
    for file in FILES:
        head, *found = re.split(
            r"^#### ", (FOLDER / f"{file}.ttl").read_text(encoding="utf-8"), flags=re.MULTILINE
        )
        line = head.count("\n") + 1
        for text in found:
            slug, *lines = text.split("\n")
            expected = tuple(each.removeprefix("#: ") for each in lines if each.startswith("#: "))
            yield Case(file, line, slug, expected, head + "\n".join(lines))
            line += len(lines)


CASES = list(read_cases())


def names(file: str) -> list[str]:
    """The shapes of a file that stand for themselves."""
    return re.findall(
        r"^shape:(\S+) a sh:\w+ ;$", shapes_file(file).read_text(encoding="utf-8"), re.MULTILINE
    )


def shapes(which: str) -> Graph:
    graph = Graph()
    for file in SHAPES[which]:
        graph.parse(data=shapes_file(file).read_text(encoding="utf-8"), format="turtle")
    return graph


def sort_of_record(case: Case) -> str:
    return "installation" if case.file == "installation" else "work"


@pytest.mark.parametrize("case", CASES, ids=str)
def test_a_shape_says_what_is_wrong(case: Case) -> None:
    found = validate_record(parse_rdf(case.turtle.encode(), str(case), "turtle"), {}, sort_of_record(case))
    said = tuple(f"{one.severity}: {ENGLISH.say(one.message)}" for one in found if one.slug == case.slug)
    assert said == case.expected
    assert case.expected


@pytest.mark.parametrize("file", FILES)
def test_every_shape_has_a_case(file: str) -> None:
    assert sorted(names(file)) == sorted(case.slug for case in CASES if case.file == file)


def test_a_slug_is_used_once() -> None:
    every = [name for file in FILES for name in names(file)]
    assert len(every) == len(set(every))


@pytest.mark.parametrize("which", SHAPES)
def test_the_shapes_are_well_formed(which: str) -> None:
    conforms, _, text = pyshacl.validate(Graph(), shacl_graph=shapes(which), meta_shacl=True)
    assert conforms, text


@pytest.mark.parametrize("which", SHAPES)
def test_the_shapes_are_of_shacl_core(which: str) -> None:
    used = {
        str(name).removeprefix(str(SH))
        for name in shapes(which).predicates()
        if str(name).startswith(str(SH))
    }
    assert used <= set(CORE.split())


@pytest.mark.parametrize("file", FILES)
def test_every_message_is_a_plain_sentence(file: str) -> None:
    for message in map(str, shapes_of(file).objects(None, SH.message)):
        assert not re.search(
            r"\b(?:node|value node|property|IRI|triple|literal|cardinality|sh:)\b", message
        ), message
        assert message[0] == "`" or message[0].islower()
        assert not message.endswith(".")


def shapes_of(file: str) -> Graph:
    return Graph().parse(data=shapes_file(file).read_text(encoding="utf-8"), format="turtle")


@pytest.mark.parametrize("case", CASES, ids=str)
def test_pyshacl_by_itself_finds_the_same(case: Case) -> None:
    """The dictionaries that a record is validated in give pySHACL the answers that rdflib's own graphs give."""
    graph, which = parse_rdf(case.turtle.encode(), "x", "turtle"), sort_of_record(case)
    plain = Graph().parse(data=graph.serialize(format="nt"), format="nt")
    _, report, _ = pyshacl.validate(plain, shacl_graph=shapes(which))
    theirs = {str(shape).rsplit("#", 1)[-1] for shape in report.objects(None, SH.sourceShape)}
    assert {found.slug for found in validate_record(graph, {}, which)} == theirs


@pytest.mark.parametrize("path", WORKS, ids=lambda path: path.parent.name)
def test_the_examples_meet_their_shapes(path: Path) -> None:
    assert all(not found.is_error for found in intent.validate(path))


@pytest.mark.parametrize("path", INSTALLATIONS, ids=lambda path: path.stem)
def test_the_installations_of_the_examples_meet_their_shapes(path: Path) -> None:
    assert all(not found.is_error for found in proposal(path).shaped())


# Where findings stand

SPANS = {
    "urn:work": Span(file="work.md", line=1, column=1, text="# Timetable"),
    "urn:work#M1": Span(file="work.md", line=9, column=3, text="| M1 | left |"),
    "urn:work#M1.rotation": Span(file="work.md", line=9, column=8, text="| M1 | left |"),
}
PLACED = """
@prefix dcterms: <http://purl.org/dc/terms/> .
@prefix intent: <https://w3id.org/intent-record/ns#> .
@prefix qudt: <http://qudt.org/schema/qudt/> .
<urn:work> a intent:Work .
<urn:work#M1> a intent:Part ; dcterms:identifier "M1" ; dcterms:isPartOf <urn:work> ;
    intent:states <urn:work#M1.rotation> .
<urn:work#M1.rotation> a intent:Statement ; intent:form intent:one-of .
<urn:work#M1.rotation.value-1> a qudt:QuantityValue ; intent:written "3" ; qudt:numericValue 3.0 .
<urn:work#M2> a intent:Part ; dcterms:identifier "M2" ; dcterms:isPartOf <urn:work> .
"""


def found_in_text(*earlier: Diagnostic) -> set[tuple[str, int, int]]:
    found = validate_record(parse_rdf(PLACED.encode(), "x", "turtle"), SPANS, "work", earlier)
    return {(one.slug, one.span.line, one.span.column) for one in found}


def test_a_finding_stands_where_its_thing_does_or_what_that_belongs_to() -> None:
    assert found_in_text() == {
        ("title", 1, 1),
        ("kind-of-part", 1, 1),  # of M2, which stands nowhere
        ("kind-of-part", 9, 3),
        ("statement", 9, 8),
        ("value", 9, 8),
        ("unit", 9, 8),
    }


def test_nothing_more_is_said_of_a_line_with_an_error() -> None:
    error = Diagnostic(slug="no-kind", message="M1 has no kind", span=SPANS["urn:work#M1"])
    assert {line for _, line, _ in found_in_text(error)} == {1}
    warning = Diagnostic(
        slug="not-usual", message="rather odd", span=SPANS["urn:work#M1"], severity=Severity.WARNING
    )
    assert found_in_text(warning) == found_in_text()


def test_a_date_that_no_calendar_has_is_found() -> None:
    text = '<urn:work#S1> <http://purl.org/dc/terms/date> "1999-02-30"^^<http://id.loc.gov/datatypes/edtf/EDTF> .'
    found = validate_record(parse_rdf(text.encode(), "x", "turtle"), {}, "work")
    assert [(one.slug, ENGLISH.say(one.message)) for one in found] == [
        ("bad-date", "`S1`: `1999-02-30` is not a day of the calendar")
    ]


def test_an_installation_finds_the_things_of_its_work_beside_it() -> None:
    prefix = "@prefix intent: <https://w3id.org/intent-record/ns#> . @prefix dcterms: <http://purl.org/dc/terms/> .\n"
    work = parse_rdf(f"{prefix} <urn:work#M1> a intent:Part .".encode(), "x", "turtle")
    text = (
        f"{prefix} <urn:loan#o> a intent:Omission ; dcterms:isPartOf <urn:loan> ; intent:part <urn:work#M1> ."
    )
    loan = parse_rdf(text.encode(), "x", "turtle")
    assert {found.slug for found in validate_record(loan, {}, "installation")} == {"omitted", "altered"}
    assert validate_record(loan, {}, "installation", beside=work) == ()
