"""A graph written out in a format of RDF; the same graph always gives the same text."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from rdflib import XSD, Graph, Literal, URIRef
from rdflib.term import Node

from intent.record.canonical import canonical_turtle
from intent.record.lexical import (
    XSD_BOOLEAN,
    XSD_INTEGER,
    Shortener,
    canonical_value,
    full_iri,
    prefixes_of,
    quoted,
)
from intent.record.ordering import TYPE, Properties, named_triples, natural, things_in_order

Json = str | int | bool | list["Json"] | dict[str, "Json"]

_INTEGER = re.compile(r"-?[0-9]{1,16}")
_EXACT = 2**53
"""JSON's numbers are exact up to here in every reader: RFC 8259, section 6."""


def serialize_rdf(graph: Graph, format: str) -> str:
    """The graph in ``turtle``, ``json-ld`` or ``n-triples``."""
    return _WRITERS[format](graph)


def n_triples(graph: Graph) -> str:
    """N-Triples, sorted. Source of the form of each line: RDF 1.1 N-Triples, section 4, canonical form."""
    triples, blank = named_triples(graph)
    return "".join(sorted({" ".join(_term(term, blank) for term in triple) + " .\n" for triple in triples}))


def _term(node: Node, blank: Mapping[Node, str]) -> str:
    if isinstance(node, Literal):
        text, datatype = quoted(canonical_value(str(node), str(node.datatype))), node.datatype
        if node.language:
            return f"{text}@{node.language.lower()}"
        return text if datatype in {None, XSD.string} else f"{text}^^{full_iri(str(datatype))}"
    return full_iri(str(node)) if isinstance(node, URIRef) else blank[node]


def json_ld(graph: Graph) -> str:
    """JSON-LD that needs nothing outside itself: its context holds the prefixes that it uses, and no more."""
    things, blank = things_in_order(graph)
    names = _Names(Shortener(_unmistakable(graph)), blank)
    nodes = [names.thing(subject, properties) for subject, properties in things]
    context: dict[str, Json] = {**dict(sorted(names.shortener.used.items()))}
    return json.dumps({"@context": context, "@graph": nodes}, ensure_ascii=False, indent=2) + "\n"


def _unmistakable(graph: Graph) -> dict[str, str]:
    """The prefixes, without any that is the scheme of an IRI in the graph: `work:1` would be taken apart."""
    schemes = {
        iri.partition(":")[0]
        for triple in graph
        for term in triple
        for iri in (term.datatype if isinstance(term, Literal) else term,)
        if isinstance(iri, URIRef)
    }
    return {prefix: name for prefix, name in prefixes_of(graph).items() if prefix not in schemes}


@dataclass(frozen=True, slots=True)
class _Names:
    shortener: Shortener
    blank: Mapping[Node, str]

    def thing(self, subject: Node, properties: Properties) -> dict[str, Json]:
        about: dict[str, Json] = {"@id": self.name(subject)}
        for predicate, values in sorted(
            properties.items(), key=lambda entry: (entry[0] != TYPE, str(entry[0]))
        ):
            kept = sorted(set(values), key=lambda value: natural(_term(value, self.blank)))
            if predicate == TYPE and not any(isinstance(kind, Literal) for kind in kept):
                about["@type"] = _one_or_all([self.name(kind) for kind in kept])
            else:
                about[self.name(predicate)] = _one_or_all([self.value(value) for value in kept])
        return about

    def name(self, node: Node) -> str:
        return self.blank.get(node) or self.shortener.short(str(node)) or str(node)

    def value(self, node: Node) -> Json:
        if not isinstance(node, Literal):
            return {"@id": self.name(node)}
        if node.language:
            return {"@language": node.language.lower(), "@value": str(node)}
        if node.datatype is None or node.datatype == XSD.string:
            return str(node)
        datatype = str(node.datatype)
        text = canonical_value(str(node), datatype)
        if datatype == XSD_BOOLEAN and text in {"true", "false"}:
            return text == "true"
        if datatype == XSD_INTEGER and _INTEGER.fullmatch(text) and abs(int(text)) <= _EXACT:
            return int(text)
        return {"@type": self.name(node.datatype), "@value": text}


def _one_or_all(values: list[Json]) -> Json:
    return values[0] if len(values) == 1 else values


_WRITERS: Mapping[str, Callable[[Graph], str]] = {
    "turtle": canonical_turtle,
    "json-ld": json_ld,
    "n-triples": n_triples,
}
