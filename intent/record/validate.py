"""Validates a record with its SHACL shapes, and says what is wrong where it stands in the text.

The shapes are the files under ``shapes``; which of them a record is to meet is told here. What they find is named
after the shape that finds it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Set
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from rdflib import DCTERMS, RDF, Literal
from rdflib.namespace import SH
from rdflib.term import Node

from intent.diagnostics import Diagnostic, Severity, Span, in_order
from intent.language.message import Message, say
from intent.names import EDTF, INTENT, Triple
from intent.record.indexed import IndexedGraph
from intent.record.parse import parse_triples
from intent.record.places import Places, places_of
from intent.values.dates import read_date

SHAPES = {"work": ("record", "work"), "installation": ("record", "installation")}
"""The files of shapes for each sort of record."""

_BEGIN = (INTENT.Heading, INTENT.Section, INTENT.Source, INTENT.Group)
_LAST_LINE = 10**9
_SEVERITIES = {SH.Violation: Severity.ERROR, SH.Warning: Severity.WARNING, SH.Info: Severity.NOTE}
_PARTS = (SH.sourceShape, SH.focusNode, SH.value, SH.resultMessage, SH.resultSeverity)
_DATE = re.compile(r"[0-9X./~?%-]{4,60}")
_DATES = {DCTERMS.date, INTENT.since, INTENT.until, INTENT.withdrawn, INTENT.dates}


def shapes_file(name: str) -> Traversable:
    """A file of shapes: in the package where it is installed, beside it in a checkout."""
    shipped = files("intent") / "shapes" / f"{name}.ttl"
    return shipped if shipped.is_file() else Path(__file__).parents[2] / "shapes" / f"{name}.ttl"


def validate_record(
    graph: Iterable[Triple],
    spans: Mapping[str, Span],
    which: str,
    earlier: Iterable[Diagnostic] = (),
    beside: Iterable[Triple] = (),
) -> tuple[Diagnostic, ...]:
    """What the shapes for a ``work`` or an ``installation`` find in a graph.

    ``spans`` tells where its nodes stand. Where there is an error ``earlier`` on a line, nothing more is said of
    that line. What an installation names of its work is looked up in the graph ``beside``.
    """
    own = tuple(graph)
    named = {value for _, _, value in own}
    data = IndexedGraph(own, IndexedGraph(triple for triple in beside if triple[0] in named))
    places = places_of(data, spans, which)
    spoken = {(found.span.file, found.span.line) for found in earlier if found.is_error}
    found = [*_dates(data, places), *_results(data, places, which)]
    extents = _extents(data, spans)
    return in_order(one for one in found if not _is_spoken_of(one, spoken, extents))


def _extents(data: IndexedGraph, spans: Mapping[str, Span]) -> Mapping[int, range]:
    """The lines of each heading of instructions, by its first."""
    begun = [(str(node), kind) for kind in _BEGIN for node in data.subjects(RDF.type, kind)]
    lines = sorted({spans[iri].line for iri, _ in begun if iri in spans})
    headings = {spans[iri].line for iri, kind in begun if iri in spans and kind == INTENT.Heading}
    ends = [*lines[1:], _LAST_LINE] if lines else []
    return {line: range(line, end) for line, end in zip(lines, ends, strict=True) if line in headings}


def _is_spoken_of(found: Diagnostic, spoken: Set[tuple[str, int]], extents: Mapping[int, range]) -> bool:
    """Whether an error on its line, or for a warning on any line under its heading, may be its cause."""
    file, line = found.span.file, found.span.line
    if (file, line) in spoken:
        return True
    lines = extents.get(line, range(0)) if not found.is_error else range(0)
    return any(file == where and number in lines for where, number in spoken)


def _results(data: IndexedGraph, places: Places, which: str) -> Iterator[Diagnostic]:
    import pyshacl  # takes longer than all that it does for a dossier, so only where it is wanted

    shapes = IndexedGraph(
        triple
        for name in SHAPES[which]
        for triple in parse_triples(shapes_file(name).read_bytes(), name, "turtle")
    )
    _, report, _ = pyshacl.validate(data, shacl_graph=shapes, inplace=True, advanced=False, js=False)
    for result in report.objects(None, SH.result):
        shape, focus, value, message, severity = (report.value(result, part) for part in _PARTS)
        node = places.about(focus, value)
        name = str(shape).rsplit("#", 1)[-1]
        said = _with_what_is_there(Message(pattern=str(message)), places, node, value)
        yield places.finding(name, said, node, _SEVERITIES[severity])


def _with_what_is_there(message: Message, places: Places, node: Node, value: Node | None) -> Message:
    """What a shape says, with what stands there instead where that is something else than the thing itself."""
    if value is None or places.name(value) == places.name(node):
        return message
    return say("{message}; here `{value}`", message=message, value=places.name(value))


def _dates(data: IndexedGraph, places: Places) -> Iterator[Diagnostic]:
    """Dates that no calendar has. How a date is written is left to the shapes."""
    for predicate, values in data.by_value.items():
        for value, subjects in values.items():
            if not isinstance(value, Literal) or not (predicate in _DATES or value.datatype == EDTF):
                continue
            try:
                read_date(str(value))
            except ValueError as error:
                if _DATE.fullmatch(value):
                    yield from (places.finding("bad-date", str(error), node) for node in subjects)
