"""A received record that its shapes and the vocabulary accept can be loaded and judged; any other is refused.

The records are those of an example with one thing wrong: something left out, put in another's place, or added.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rdflib import RDF, Graph
from rdflib.term import Node

import intent
from intent.diagnostics import has_errors
from intent.names import INTENT
from intent.record.consistency import consistency_findings
from intent.record.known_terms import term_findings
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.record.parse import parse_rdf
from intent.record.validate import validate_record
from intent.variance.judge import judge
from intent.vocabulary.loader import read_vocabulary
from intent.vocabulary.terms import Vocabulary

EXAMPLE = Path(__file__).parents[2] / "examples" / "kestrel-held"
FILES = {"work": EXAMPLE / "work.md", "installation": EXAMPLE / "installations" / "2026-river-museum.md"}

Triple = tuple[Node, Node, Node]


@cache
def vocabulary() -> Vocabulary:
    return read_vocabulary()


@cache
def triples(which: str) -> tuple[Triple, ...]:
    text, _ = intent.convert(FILES[which], "n-triples")
    return tuple(parse_rdf(text.encode(), which, "n-triples"))


def iri(which: str) -> Node:
    kind = INTENT.Work if which == "work" else INTENT.Installation
    return next(
        subject for subject, predicate, value in triples(which) if predicate == RDF.type and value == kind
    )


def with_something_wrong(draw: st.DrawFn, record: tuple[Triple, ...]) -> list[Triple]:
    subject, predicate, value = one = draw(st.sampled_from(record))
    other = draw(st.sampled_from(record))
    rest = [triple for triple in record if triple != one]
    return draw(
        st.sampled_from(
            [
                rest,
                [triple for triple in record if triple[0] != subject],
                [*rest, (subject, predicate, other[2])],
                [*rest, (subject, other[1], value)],
                [*record, (subject, predicate, other[2])],
            ]
        )
    )


@st.composite
def spoilt(draw: st.DrawFn, which: str) -> list[Triple]:
    return with_something_wrong(draw, triples(which))


def is_refused(record: list[Triple], which: str) -> bool:
    beside = triples("work") if which == "installation" else ()
    found = validate_record(record, {}, which, beside=beside)
    return has_errors(found) or has_errors(term_findings(record, {}, vocabulary(), which))


def judged(work: list[Triple] | tuple[Triple, ...], installation: list[Triple] | tuple[Triple, ...]) -> str:
    documented = load_work(work, str(iri("work")), vocabulary())
    consistency_findings(documented, {})
    loaded = load_installation(graph(installation), str(iri("installation")), documented, graph(work))
    return str(judge(documented, loaded).outcome)


def graph(record: list[Triple] | tuple[Triple, ...]) -> Graph:
    found = Graph()
    for triple in record:
        found.add(triple)
    return found


@pytest.mark.parametrize("which", FILES)
def test_the_example_itself_is_accepted(which: str) -> None:
    assert not is_refused(list(triples(which)), which)


@settings(deadline=None, max_examples=60)
@given(spoilt("work"))
def test_a_work_is_refused_or_can_be_judged(record: list[Triple]) -> None:
    if iri("work") in {subject for subject, _, _ in record} and not is_refused(record, "work"):
        assert judged(record, triples("installation"))


@settings(deadline=None, max_examples=60)
@given(spoilt("installation"))
def test_an_installation_is_refused_or_can_be_judged(record: list[Triple]) -> None:
    if iri("installation") in {subject for subject, _, _ in record} and not is_refused(
        record, "installation"
    ):
        assert judged(triples("work"), record)
