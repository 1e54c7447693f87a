"""Canonical Turtle: the same graph gives the same bytes on every machine and run, so that files diff well."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from rdflib import XSD, Graph, Literal, URIRef
from rdflib.term import Node

from intent.record.lexical import (
    XSD_BOOLEAN,
    XSD_DECIMAL,
    XSD_INTEGER,
    Shortener,
    canonical_value,
    full_iri,
    prefixes_of,
    quoted_at_length,
)
from intent.record.ordering import TYPE, Properties, natural, things_in_order

_BARE = {
    XSD_BOOLEAN: re.compile(r"true|false"),
    XSD_INTEGER: re.compile(r"-?[0-9]+"),
    XSD_DECIMAL: re.compile(r"-?[0-9]+\.[0-9]+"),
}
"""What Turtle reads as a value of its datatype without quotation marks."""


def canonical_turtle(graph: Graph) -> str:
    """The graph in Turtle: prefixes, things, properties and values each in a fixed order."""
    things, blank = things_in_order(graph)
    writer = _Writer(Shortener(prefixes_of(graph)), blank)
    body = [f"\n{_block(writer, subject, properties)}" for subject, properties in things]
    heading = [
        f"@prefix {prefix}: {full_iri(name)} .\n" for prefix, name in sorted(writer.shortener.used.items())
    ]
    return "".join([*heading, *body])


@dataclass(frozen=True, slots=True)
class _Writer:
    """Writes each term once."""

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
        return self._literal(node) if isinstance(node, Literal) else self.blank[node]

    def _literal(self, literal: Literal) -> str:
        if literal.language:
            return f"{quoted_at_length(str(literal))}@{literal.language.lower()}"
        if literal.datatype is None or literal.datatype == XSD.string:
            return quoted_at_length(str(literal))
        datatype = str(literal.datatype)
        text = canonical_value(str(literal), datatype)
        bare = _BARE.get(datatype)
        if bare is not None and bare.fullmatch(text):
            return text
        return f"{quoted_at_length(text)}^^{self.shortener.short(datatype) or full_iri(datatype)}"


def _block(writer: _Writer, subject: Node, properties: Properties) -> str:
    lines = sorted(
        f"{writer.term(predicate)}{_values(writer, values)}"
        for predicate, values in properties.items()
        if predicate != TYPE
    )
    kinds = sorted({writer.term(kind) for kind in properties.get(TYPE, ())})
    if kinds:
        lines.insert(0, "a " + ", ".join(kinds))
    return f"{writer.term(subject)} " + " ;\n    ".join(lines) + " .\n"


def _values(writer: _Writer, values: list[Node]) -> str:
    written = {writer.term(value) for value in values}
    if len(written) == 1:
        return f" {written.pop()}"
    return "\n        " + ",\n        ".join(sorted(written, key=natural))
