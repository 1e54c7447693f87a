"""The order in which a graph is written: it depends on nothing but the graph.

A work comes first, then what belongs to it by kind and in the order of identifiers, each thing followed by
what is said within it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from rdflib import RDF, BNode, Graph
from rdflib.compare import to_canonical_graph
from rdflib.term import Node

from intent.names import INTENT, QUDT, Triple

Properties = dict[Node, list[Node]]
Natural = tuple[list[str | int], str]

TYPE = RDF.type
_KINDS = (
    ("Work",),
    ("Installation",),
    ("Section",),
    ("Person",),
    ("Group",),
    ("Part",),
    ("Device",),
    ("Material",),
    ("Connection",),
    ("Box",),
    ("LogEntry",),
    ("Task",),
    ("Source",),
    ("Heading", "Instruction"),
    ("Expectation",),
    ("Substitution",),
    ("Change",),
    ("Omission",),
    ("Consent",),
    ("Attestation",),
)
_MEASURED = (QUDT.QuantityValue, INTENT.Number, INTENT.Share)
_PLACES: Mapping[Node, int] = {
    **{INTENT[kind]: place for place, kinds in enumerate(_KINDS) for kind in kinds},
    **dict.fromkeys(_MEASURED, len(_KINDS)),
}
"""Measured values, which many may share, stand last."""
_DIGITS = re.compile(r"([0-9]{1,9})")


def things_in_order(graph: Graph) -> tuple[list[tuple[Node, Properties]], Mapping[Node, str]]:
    """Every subject with its properties, in order; and a name for each blank node."""
    triples, blank = named_triples(graph)
    subjects: dict[Node, Properties] = {}
    for subject, predicate, value in triples:
        subjects.setdefault(subject, {}).setdefault(predicate, []).append(value)
    return [(subject, subjects[subject]) for subject in _in_order(subjects, blank)], blank


def named_triples(graph: Graph) -> tuple[list[Triple], dict[Node, str]]:
    """The triples, and a name for each blank node that depends on nothing but the graph."""
    triples: list[Triple] = list(graph)
    if not _blank(triples):
        return triples, {}
    triples = list(to_canonical_graph(graph))
    blank = sorted(_blank(triples), key=str)
    width = len(str(len(blank)))
    return triples, {node: f"_:b{number:0{width}}" for number, node in enumerate(blank, start=1)}


def _blank(triples: Iterable[Triple]) -> set[Node]:
    return {end for subject, _, value in triples for end in (subject, value) if isinstance(end, BNode)}


def _in_order(subjects: Mapping[Node, Properties], blank: Mapping[Node, str]) -> list[Node]:
    places = {
        str(node): min((_PLACES[kind] for kind in properties.get(TYPE, ()) if kind in _PLACES), default=None)
        for node, properties in subjects.items()
    }

    def key(node: Node) -> tuple[int, Natural]:
        if isinstance(node, BNode):
            return len(_KINDS) + 1, natural(blank[node])
        return _place(str(node), places), natural(str(node))

    return sorted(subjects, key=key)


def _place(iri: str, places: Mapping[str, int | None]) -> int:
    """The place of a thing's kind; of what is said within it, that of the thing."""
    name = max(iri.rfind("#"), iri.rfind("/")) + 1
    step = len(iri)
    while step > name:
        place = places.get(iri[:step])
        if place is not None:
            return place
        step = iri.rfind(".", name, step)
    base = places.get(iri[: name - 1])
    return len(_KINDS) if base is None else base


def natural(text: str) -> Natural:
    """A text as people sort it: `M2` before `M10`."""
    return [int(step) if place % 2 else step for place, step in enumerate(_DIGITS.split(text))], text
