"""What the nodes of a graph are called, and where they stand in the text that it is from."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import unquote

from rdflib import DCTERMS, RDF, RDFS, Literal
from rdflib.term import Node

from intent.diagnostics import Diagnostic, Severity, Span
from intent.language.message import Words, say
from intent.names import INTENT
from intent.record.indexed import IndexedGraph

_ROOTS = {"work": INTENT.Work, "installation": INTENT.Installation}
"""What a graph describes, with the class that says so."""
_NAMES = (DCTERMS.identifier, RDFS.label, DCTERMS.title)


@dataclass(frozen=True, slots=True)
class Places:
    """The names and places of the nodes of one graph."""

    data: IndexedGraph
    spans: Mapping[str, Span]
    root: str
    """The work or installation itself."""

    def finding(
        self, slug: str, message: Words, node: Node, severity: Severity = Severity.ERROR
    ) -> Diagnostic:
        """A finding about a node; one about a thing in the work begins with its name."""
        name = self.name(node)
        said = message if str(node) == self.root else say("`{name}`: {message}", name=name, message=message)
        return Diagnostic(slug=slug, message=said, span=self.span(node), severity=severity, subject=name)

    def about(self, focus: Node, value: Node | None) -> Node:
        """The thing that a result is about: its focus, or the last thing that has it, or else the value."""
        if isinstance(focus, Literal):
            having = [node for values in self.data.by_value.values() for node in values.get(focus, ())]
            named = [node for node in having if focus in self.data.objects(node, DCTERMS.identifier)]
            return max(named or having, key=lambda node: (self.span(node), str(node)))
        return value if value is not None and str(focus).startswith(str(INTENT)) else focus

    def name(self, node: Node) -> str:
        """Its identifier, or label, or title; or else the last step of its IRI."""
        if isinstance(node, Literal):
            return str(node)
        names = (min(map(str, self.data.objects(node, naming)), default="") for naming in _NAMES)
        return str(next(filter(None, names), "") or unquote(re.split("[#/]", str(node))[-1]) or node)

    def span(self, node: Node) -> Span:
        """Its place; or that of the thing it belongs to, as `M1.rotation` does to `M1`; or that of the whole."""
        iri = str(node)
        name = iri.rfind("#") + 1
        while iri not in self.spans and "." in iri[name:]:
            iri = iri[: iri.rfind(".")]
        return self.spans.get(iri) or self.spans.get(self.root) or Span(file="")


def places_of(data: IndexedGraph, spans: Mapping[str, Span], which: str) -> Places:
    """Those of the graph of a ``work`` or an ``installation``."""
    return Places(data, spans, min(map(str, data.subjects(RDF.type, _ROOTS[which])), default=""))
