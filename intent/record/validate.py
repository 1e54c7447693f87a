"""Validates a record with its SHACL shapes, and says what is wrong where it stands in the text.

The shapes are the files under ``shapes``; which of them a record is to meet is told here. What they find is named
after the shape that finds it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from urllib.parse import unquote

import pyshacl
from rdflib import DCTERMS, RDF, RDFS, Graph, Literal
from rdflib.namespace import SH
from rdflib.term import Node

from intent.dates import read_date
from intent.diagnostics import Diagnostic, Severity, Span, in_order
from intent.names import EDTF, INTENT
from intent.record.indexed import IndexedGraph
from intent.record.parse import parse_triples

SHAPES = {"work": ("record", "work"), "installation": ("record", "installation")}
"""The files of shapes for each sort of record."""

_ROOTS = {"work": INTENT.Work, "installation": INTENT.Installation}
_SEVERITIES = {SH.Violation: Severity.ERROR, SH.Warning: Severity.WARNING, SH.Info: Severity.NOTE}
_PARTS = (SH.sourceShape, SH.focusNode, SH.value, SH.resultMessage, SH.resultSeverity)
_NAMES = (DCTERMS.identifier, RDFS.label, DCTERMS.title)
_DATE = re.compile(r"[0-9X./~?%-]{4,60}")
_DATES = {DCTERMS.date, INTENT.since, INTENT.until, INTENT.withdrawn, INTENT.dates}


def shapes_file(name: str) -> Traversable:
    """A file of shapes: in the package where it is installed, beside it in a checkout."""
    shipped = files("intent") / "shapes" / f"{name}.ttl"
    return shipped if shipped.is_file() else Path(__file__).parents[2] / "shapes" / f"{name}.ttl"


def validate_record(
    graph: Graph,
    spans: Mapping[str, Span],
    which: str,
    earlier: Iterable[Diagnostic] = (),
    beside: Graph | None = None,
) -> tuple[Diagnostic, ...]:
    """What the shapes for a ``work`` or an ``installation`` find in a graph.

    ``spans`` tells where its nodes stand. Where there is an error ``earlier`` on a line, nothing more is said of
    that line. What an installation names of its work is looked up in the graph ``beside``.
    """
    data = IndexedGraph(graph, beside)
    places = _Places(data, spans, _root(data, _ROOTS[which]))
    spoken = {(found.span.file, found.span.line) for found in earlier if found.is_error}
    found = [*_dates(data, places), *_results(data, places, which)]
    return in_order(one for one in found if (one.span.file, one.span.line) not in spoken)


def _results(data: IndexedGraph, places: _Places, which: str) -> Iterator[Diagnostic]:
    shapes = IndexedGraph(
        triple
        for name in SHAPES[which]
        for triple in parse_triples(shapes_file(name).read_bytes(), name, "turtle")
    )
    _, report, _ = pyshacl.validate(data, shacl_graph=shapes, inplace=True, advanced=False, js=False)
    for result in report.objects(None, SH.result):
        shape, focus, value, message, severity = (report.value(result, part) for part in _PARTS)
        node = places.about(focus, value)
        shown = f"; here `{places.name(value)}`" if value not in {None, node} else ""
        yield places.finding(str(shape).rsplit("#", 1)[-1], f"{message}{shown}", node, _SEVERITIES[severity])


def _dates(data: IndexedGraph, places: _Places) -> Iterator[Diagnostic]:
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


@dataclass(frozen=True, slots=True)
class _Places:
    """What the nodes of a graph are called, and where they stand."""

    data: IndexedGraph
    spans: Mapping[str, Span]
    root: str
    """The work or installation itself."""

    def finding(self, slug: str, message: str, node: Node, severity: Severity = Severity.ERROR) -> Diagnostic:
        name = self.name(node)
        said = message if str(node) == self.root else f"`{name}`: {message}"
        return Diagnostic(slug, said, self.span(node), severity, name)

    def about(self, focus: Node, value: Node | None) -> Node:
        """The thing that a result is about: its focus, unless that is an identifier or a term of the record."""
        if isinstance(focus, Literal):
            named = self.data.subjects(DCTERMS.identifier, focus)
            return max(named, key=lambda node: (self.span(node), str(node)))
        return value if value is not None and str(focus).startswith(str(INTENT)) else focus

    def name(self, node: Node) -> str:
        """Its identifier, or label, or title; or else the last step of its IRI."""
        if isinstance(node, Literal):
            return str(node)
        names = (name for naming in _NAMES for name in self.data.objects(node, naming))
        return str(next(names, None) or unquote(re.split("[#/]", str(node))[-1]) or node)

    def span(self, node: Node) -> Span:
        """Its place; or that of the thing it belongs to, as `M1.rotation` does to `M1`; or that of the whole."""
        iri = str(node)
        name = iri.rfind("#") + 1
        while iri not in self.spans and "." in iri[name:]:
            iri = iri[: iri.rfind(".")]
        return self.spans.get(iri) or self.spans.get(self.root) or Span("")


def _root(data: IndexedGraph, kind: Node) -> str:
    return min(map(str, data.subjects(RDF.type, kind)), default="")
