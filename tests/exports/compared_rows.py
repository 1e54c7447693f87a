"""What an engine finds with the shapes of a work, and what the program finds, row by row."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from unittest.mock import patch

import pytest
from examples_read import vocabulary
from oracle.cases import Case as Drawn
from oracle.program import loaded
from oracle.writing import installation_text, work_text
from pyshacl import validate
from rdflib import Graph, URIRef
from rdflib.namespace import SH
from rdflib.plugins.sparql import processor
from rdflib.plugins.sparql.algebra import translateQuery
from rdflib.plugins.sparql.parser import parseQuery

from intent.exports.work_shapes.instruction_shapes import bare_case
from intent.exports.work_shapes.shape_names import THE_SHOWING
from intent.exports.work_shapes.shown_data import installation_data
from intent.exports.work_shapes.undecided import undecided_lines
from intent.names import THE_VENUE, THE_WORK
from intent.variance.case import Case, lay_out
from intent.variance.judge import rulings
from intent.variance.result import BROKEN
from intent.variance.topics import TopicKind, index_lines, topics_of

NAMES = {"the-showing": THE_SHOWING, "the-work": THE_WORK, "the-venue": THE_VENUE}
Place = tuple[str, str]
"""A line, and the subject of which it was found."""


@dataclass(frozen=True)
class ByEngine:
    """What an engine found: lines that stand against a subject, lines that are not decided, and what else failed."""

    broken: frozenset[Place]
    undecided: frozenset[Place]
    """Of a line as a whole the subject is blank."""
    canaries: frozenset[str]
    missing: frozenset[str]


@dataclass(frozen=True)
class RowOf:
    """One row as both find it."""

    name: str
    is_broken: bool
    is_found_broken: bool
    is_decided: bool


_understood: dict[tuple[object, ...], object] = {}


def _understand_once(parsed: str, base: str | None, prefixes: object) -> object:
    """What a query means: pySHACL asks the same of each node, and reading it takes most of the time."""
    key = (parsed, base)
    if key not in _understood:
        _understood[key] = translateQuery(parseQuery(parsed), base, prefixes)  # type: ignore[arg-type]
    return _understood[key]


def found_by_engine(shapes: Graph, data: Graph) -> ByEngine:
    """What pySHACL finds, as it comes out of the box but for reading each query once."""
    with (
        patch.object(processor, "parseQuery", lambda text: text),
        patch.object(processor, "translateQuery", _understand_once),
    ):
        _, report, _ = validate(data, shacl_graph=shapes)
    assert isinstance(report, Graph)
    return sorted_out(
        (
            str(report.value(result, SH.focusNode)),
            _owner(shapes, report.value(result, SH.sourceShape)),
            str(report.value(result, SH.resultSeverity)).rpartition("#")[2],
        )
        for result in report.objects(None, SH.result)
    )


def found_by_rudof(shapes: str, data: str) -> ByEngine:
    """What Rudof finds, over Oxigraph: an engine in another language, by other people."""
    rudof = pytest.importorskip("pyrudof", reason="the second engine, pyrudof, is not installed")
    engine = rudof.Rudof(rudof.RudofConfig())
    engine.read_data(data)
    engine.read_shacl(shapes)
    return sorted_out(
        (one.focus_node.strip("<>"), one.source_shape.strip("<>").rpartition("#")[2], one.severity)
        for one in engine.validate_shacl()
    )


def sorted_out(results: Iterable[tuple[str, str, str]]) -> ByEngine:
    """Results by what they are, each with its focus, its shape where that has a name, and its severity."""
    broken, undecided, canaries, missing = set[Place](), set[Place](), set[str](), set[str]()
    for focus, shape, severity in results:
        name = focus.rpartition("#")[2].removeprefix("shown.")
        subject = NAMES.get(name, name)
        word, _, rest = shape.partition(":")
        line = rest.partition(":")[0]
        if word == "canary" or name.startswith("canary"):
            canaries.add(rest)
        elif word not in {"shape", "undecided"}:
            missing.add(rest or shape)
        elif severity == "Violation":
            broken.add((line, subject))
        else:
            undecided.add((line, subject if ":number" in rest else ""))
    return ByEngine(frozenset(broken), frozenset(undecided), frozenset(canaries), frozenset(missing))


def _owner(shapes: Graph, source: object) -> str:
    """The name of the shape to which a part of it belongs."""
    node = source
    while not isinstance(node, URIRef):
        node = next(shapes.subjects(None, node))  # type: ignore[arg-type]
    return str(node).rpartition("#")[2]


def rows_compared(case: Case, found: ByEngine) -> list[RowOf]:
    """Every row of a case beside what the engine says of it."""
    broken = {(one.topic.subject.key, one.topic.name) for one in rulings(case) if one.row.verdict in BROKEN}
    unsure = {(one.line.identifier, one.part or "") for one in undecided_lines(bare_case(case.work))}
    unsure |= found.undecided
    rows = []
    for topic in topics_of(case, index_lines(case)):
        subject = THE_SHOWING if topic.kind is TopicKind.AGGREGATE else topic.members[0]
        lines = [line.identifier for line in topic.lines]
        counters = [line.identifier for line in topic.counters]
        rows.append(
            RowOf(
                name=f"{topic.subject.written}: {topic.order}",
                is_broken=(topic.subject.key, topic.name) in broken,
                is_found_broken=any((line, subject) in found.broken for line in lines),
                is_decided=not any((line, place) in unsure for line in lines for place in ("", subject))
                and not any((line, subject) in unsure for line in counters),
            )
        )
    return rows


def places_of_rows(case: Case) -> set[Place]:
    """The lines and subjects that have a row at all."""
    found = set[Place]()
    for topic in topics_of(case, index_lines(case)):
        subject = THE_SHOWING if topic.kind is TopicKind.AGGREGATE else topic.members[0]
        found |= {(line.identifier, subject) for line in topic.lines}
    return found


def case_of_drawn(drawn: Drawn) -> Case:
    found = loaded(work_text(drawn), installation_text(drawn), vocabulary())
    return lay_out(found.work, found.installation)


def data_of(case: Case) -> Graph:
    return Graph().parse(data=installation_data(case), format="turtle")
