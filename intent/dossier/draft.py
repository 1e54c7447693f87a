"""A text on its way to a graph: triples, the place of each node in the text, and what was found wrong."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from rdflib import Graph, Literal, URIRef
from rdflib.term import Node

from intent.diagnostics import Diagnostic, Severity, Span, has_errors, in_order
from intent.dossier.register import is_unknown_part
from intent.language.message import Words
from intent.names import PREFIXES, Triple, local_iri
from intent.vocabulary.terms import Vocabulary


@dataclass(frozen=True, kw_only=True)
class Reading:
    """What came of a text: a graph, the place of its nodes, findings. With errors the graph is partial."""

    iri: str
    """The work, installation or pool that the text is about."""
    triples: Iterable[Triple]
    spans: Mapping[str, Span]
    findings: tuple[Diagnostic, ...]
    forgotten: tuple[Diagnostic, ...] = ()
    """What follows from an earlier finding, and is not said besides."""

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


@dataclass(slots=True, kw_only=True)
class Draft:
    base: str
    vocabulary: Vocabulary
    file: str
    spans: dict[str, Span] = field(default_factory=dict)
    findings: list[Diagnostic] = field(default_factory=list)
    triples: dict[Triple, None] = field(default_factory=dict)
    orders: dict[str, int] = field(default_factory=dict)
    forgotten: list[Diagnostic] = field(default_factory=list)

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
        self, slug: str, message: Words, span: Span, severity: Severity = Severity.ERROR, subject: str = ""
    ) -> None:
        self.findings.append(
            Diagnostic(slug=slug, message=message, span=span, severity=severity, subject=subject)
        )

    def reading(self) -> Reading:
        return Reading(
            iri=self.base,
            triples=tuple(self.triples),
            spans=self.spans,
            findings=in_order(self.findings),
            forgotten=tuple(self.forgotten),
        )


def forget_what_follows(draft: Draft) -> None:
    """Let a section that is missing be found once, and not every name that it would have brought as well."""
    findings, slugs = draft.findings, {found.slug for found in draft.findings}
    if slugs & _WITHOUT_NAMES:
        draft.findings = [found for found in draft.findings if found.slug not in {"unknown-name", "no-parts"}]
    elif "no-parts" in slugs:
        kept = [found for found in draft.findings if not is_unknown_part(found.message)]
        if len(kept) < len(draft.findings):
            kept = [
                replace(found, severity=Severity.ERROR) if found.slug == "no-parts" else found
                for found in kept
            ]
        elif has_errors(kept):
            kept = [found for found in kept if found.slug != "no-parts"]
        draft.findings = kept
    draft.forgotten = [
        found for found in findings if found.slug == "unknown-name" and found not in draft.findings
    ]


_WITHOUT_NAMES = {"unknown-section", "nested-section", "open-comment", "not-a-table", "no-title"}
"""Errors that keep identifiers from being known."""
