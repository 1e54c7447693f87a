"""Canonical Turtle: the same graph gives the same bytes on every machine and run, so that files diff well."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from rdflib import Graph, Literal, URIRef
from rdflib.term import Node

from intent.record.lexical import Shortener, full_iri, prefixes_of
from intent.record.ordering import TYPE, Properties, natural, things_in_order
from intent.record.turtle_text import block_of_lines, literal_term, prefix_lines


def canonical_turtle(graph: Graph) -> str:
    """The graph in Turtle: prefixes, things, properties and values each in a fixed order."""
    things, blank = things_in_order(graph)
    terms = _Terms(Shortener(prefixes_of(graph)), blank)
    body = [f"\n{_block(terms, subject, properties)}" for subject, properties in things]
    return "".join([prefix_lines(terms.shortener.used), *body])


@dataclass(frozen=True, slots=True)
class _Terms:
    """The terms of a graph as they are written; each is made once."""

    shortener: Shortener
    blank: Mapping[Node, str]
    written: dict[Node, str] = field(default_factory=dict)

    def term(self, node: Node) -> str:
        found = self.written.get(node)
        if found is None:
            found = self.written[node] = self._write(node)
        return found

    def _write(self, node: Node) -> str:
        if isinstance(node, URIRef):
            return self.shortener.short(str(node)) or full_iri(str(node))
        return literal_term(node, self.shortener) if isinstance(node, Literal) else self.blank[node]


def _block(terms: _Terms, subject: Node, properties: Properties) -> str:
    lines = sorted(
        f"{terms.term(predicate)}{_values(terms, values)}"
        for predicate, values in properties.items()
        if predicate != TYPE
    )
    kinds = sorted({terms.term(kind) for kind in properties.get(TYPE, ())})
    if kinds:
        lines.insert(0, "a " + ", ".join(kinds))
    return block_of_lines(terms.term(subject), lines)


def _values(terms: _Terms, values: list[Node]) -> str:
    written = {terms.term(value) for value in values}
    if len(written) == 1:
        return f" {written.pop()}"
    return "\n        " + ",\n        ".join(sorted(written, key=natural))
