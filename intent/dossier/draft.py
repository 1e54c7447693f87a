"""A text on its way to a graph: triples, the place of each node in the text, and what was found wrong."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from rdflib import Graph, Literal, URIRef
from rdflib.term import Node

from intent.diagnostics import Diagnostic, Severity, Span, in_order
from intent.names import PREFIXES, local_iri
from intent.vocabulary.terms import Vocabulary

Triple = tuple[Node, Node, Node]


@dataclass(frozen=True)
class Reading:
    """What came of a text: a graph, the place of its nodes, findings. With errors the graph is partial."""

    iri: str
    """The work, installation or pool that the text is about."""
    triples: Iterable[Triple]
    spans: Mapping[str, Span]
    findings: tuple[Diagnostic, ...]

    @cached_property
    def graph(self) -> Graph:
        """The triples as a graph that can be searched and written."""
        if isinstance(self.triples, Graph):
            return self.triples
        graph = Graph(bind_namespaces="none")
        for prefix, namespace in PREFIXES.items():
            graph.bind(prefix, namespace)
        for triple in self.triples:
            graph.add(triple)
        return graph


@dataclass(slots=True)
class Draft:
    base: str
    vocabulary: Vocabulary
    file: str
    spans: dict[str, Span] = field(default_factory=dict)
    findings: list[Diagnostic] = field(default_factory=list)
    triples: dict[Triple, None] = field(default_factory=dict)
    orders: dict[str, int] = field(default_factory=dict)

    def node(self, *steps: str, span: Span | None = None) -> URIRef:
        iri = local_iri(self.base, *steps)
        if span is not None:
            self.spans.setdefault(str(iri), span)
        return iri

    def add(self, subject: Node, predicate: Node, value: Node) -> None:
        self.triples[(subject, predicate, value)] = None

    def say(self, subject: Node, predicate: Node, text: str) -> None:
        """Add a text, if there is one."""
        if text:
            self.add(subject, predicate, Literal(text))

    def next_order(self, sort: str) -> int:
        self.orders[sort] = self.orders.get(sort, 0) + 1
        return self.orders[sort]

    def wrong(
        self, slug: str, message: str, span: Span, severity: Severity = Severity.ERROR, subject: str = ""
    ) -> None:
        self.findings.append(Diagnostic(slug, message, span, severity, subject))

    def reading(self) -> Reading:
        return Reading(self.base, self.triples.keys(), self.spans, in_order(self.findings))
