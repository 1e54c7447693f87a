"""A small fault in a graph is named when it is read, or changes no verdict.

The one exception is a graph that says something else outright: one that a text would say word for word, since writing
it as text and reading that gives it back. It is another record, and no fault in this one.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from pathlib import Path
from random import Random

import pytest
from examples_read import FIRST_OF_EACH, proposal
from rdflib import Literal
from rdflib.term import Node

from intent.diagnostics import has_errors
from intent.dossier.work_text import read_work
from intent.dossier.write_work import write_work
from intent.effects.assess import assess
from intent.language.locale import ENGLISH
from intent.model.work import Work
from intent.names import INTENT, Triple
from intent.reading.proposal import Proposal
from intent.record.closed import closed_findings
from intent.record.consistency import consistency_findings
from intent.record.known_terms import term_findings
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.record.ontology import read_ontology
from intent.record.validate import validate_record
from intent.record.written_again import belied_sentences
from properties.faulty_graphs import Faults

NUMBER = 25
"""So many faults are tried on every run."""


def is_noticed(graph: tuple[Triple, ...], iri: str, of: Work) -> bool:
    """Whether reading a work's graph ends with an error."""
    vocabulary = of.vocabulary
    if (
        has_errors(closed_findings(graph, {}, vocabulary, "work"))
        or has_errors(validate_record(graph, {}, "work"))
        or has_errors(term_findings(graph, {}, vocabulary, "work"))
    ):
        return True
    work = load_work(graph, iri, vocabulary)
    return has_errors([*consistency_findings(work, {}), *belied_sentences(work, {})])


def verdicts(graph: Iterable[Triple], found: Proposal) -> tuple[object, object]:
    of = found.documentation
    work = load_work(graph, of.reading.iri, of.work.vocabulary)
    installation = load_installation(found.reading.triples, found.reading.iri, work, graph)
    variance = assess(work, installation)
    rows = Counter(
        (frozenset(row.subject.members), row.subject.group, ENGLISH.say(row.characteristic), row.verdict)
        for row in variance.rows
    )
    return rows, variance.outcome


def is_another_record(graph: tuple[Triple, ...], iri: str, of: Work) -> bool:
    """Whether a text says exactly this."""
    again = read_work(write_work(load_work(graph, iri, of.vocabulary)), "", of.vocabulary)
    return not has_errors(again.findings) and told(graph) == told(again.triples)


def told(graph: Iterable[Triple]) -> Counter[object]:
    """What a graph says, whatever its things are called and in whatever order they stand."""
    said: dict[Node, list[tuple[str, Node]]] = {}
    kept = [one for one in graph if one[1] != INTENT.order]
    for subject, predicate, value in kept:
        said.setdefault(subject, []).append((str(predicate), value))

    def name(node: Node) -> str:
        return "a thing" if node in said and not isinstance(node, Literal) else str(node)

    about = {node: tuple(sorted((each, name(value)) for each, value in all_)) for node, all_ in said.items()}
    return Counter(
        (about[subject], str(each), about.get(value, name(value))) for subject, each, value in kept
    )


@pytest.mark.parametrize("path", FIRST_OF_EACH[:1], ids=lambda path: path.parents[1].name)
def test_a_small_fault_is_named_or_changes_nothing(path: Path) -> None:
    found = proposal(path)
    of = found.documentation
    triples, iri = tuple(of.reading.triples), of.reading.iri
    before, noticed = verdicts(triples, found), 0
    for fault in Faults(triples, read_ontology()).some(Random(11), NUMBER):
        if is_noticed(fault.graph, iri, of.work):
            noticed += 1
            continue
        assert verdicts(fault.graph, found) == before or is_another_record(fault.graph, iri, of.work), str(
            fault
        )
    assert noticed > NUMBER // 2
