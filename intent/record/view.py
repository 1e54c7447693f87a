"""A graph as plain dictionaries, so that loading asks each node's properties without searching."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import chain

from rdflib import DCTERMS, RDF, RDFS, Literal, URIRef
from rdflib.term import Node

from intent.names import INTENT, Triple
from intent.values.dates import DaySpan, read_date
from intent.vocabulary.named_term import local_name

_Properties = dict[Node, list[Node]]
_NONE: _Properties = {}


@dataclass(frozen=True, slots=True)
class GraphView:
    subjects: dict[Node, _Properties]
    classes: dict[Node, list[Node]]
    """The things of each class."""

    def values(self, node: Node, property_iri: Node) -> Sequence[Node]:
        return self.subjects.get(node, _NONE).get(property_iri, ())

    def one(self, node: Node, property_iri: Node) -> Node | None:
        """The value; of several, the first in the order of their text, so that loading is the same each time."""
        found = self.values(node, property_iri)
        return found[0] if len(found) == 1 else min(found, key=str, default=None)

    def text(self, node: Node, property_iri: Node) -> str:
        found = self.one(node, property_iri)
        return "" if found is None else str(found)

    def iri(self, node: Node, property_iri: Node) -> str | None:
        found = self.one(node, property_iri)
        return None if found is None else str(found)

    def local(self, node: Node, property_iri: Node) -> str:
        """The last step of an IRI of the record's own namespace: `intent:between` is `between`."""
        return self.text(node, property_iri).removeprefix(str(INTENT))

    def flag(self, node: Node, property_iri: Node) -> bool:
        found = self.one(node, property_iri)
        return isinstance(found, Literal) and found.value is True

    def date(self, node: Node, property_iri: Node) -> DaySpan | None:
        found = self.one(node, property_iri)
        return None if found is None else read_date(str(found))

    def number(self, node: Node, property_iri: Node) -> Fraction | None:
        found = self.one(node, property_iri)
        return None if found is None else Fraction(str(found))

    def whole(self, node: Node, property_iri: Node) -> int | None:
        found = self.number(node, property_iri)
        return None if found is None else int(found)

    def identifier(self, node: Node) -> str:
        """The identifier of a thing that another refers to; its IRI's last step where it has none here."""
        return self.text(node, DCTERMS.identifier) or local_name(str(node))

    def group_or_identifier(self, node: Node) -> str:
        """How a sentence names a thing: a group by its name."""
        if INTENT.Group in self.values(node, RDF.type):
            return self.text(node, RDFS.label)
        return self.identifier(node)

    def identifiers(self, node: Node, property_iri: Node) -> tuple[str, ...]:
        return tuple(sorted(self.identifier(value) for value in self.values(node, property_iri)))

    def reference(self, node: Node, property_iri: Node) -> str | None:
        found = self.one(node, property_iri)
        return None if found is None else self.identifier(found)

    def of_class(self, kind: URIRef, within: Node | None = None) -> list[Node]:
        """The things of a class, in the writer's order; of one work or installation, where it is named."""
        found = self.classes.get(kind, ())
        if within is not None:
            found = [node for node in found if within in self.values(node, DCTERMS.isPartOf)]
        return self.in_order(found)

    def in_order(self, nodes: Iterable[Node]) -> list[Node]:
        return sorted(nodes, key=lambda node: (self._order(node), str(node)))

    def _order(self, node: Node) -> float:
        found = self.values(node, INTENT.order)
        return float(str(found[0])) if found else math.inf


def view_of(*graphs: Iterable[Triple]) -> GraphView:
    subjects: dict[Node, _Properties] = {}
    for subject, predicate, value in chain.from_iterable(graphs):
        subjects.setdefault(subject, {}).setdefault(predicate, []).append(value)
    classes: dict[Node, list[Node]] = {}
    for node, properties in subjects.items():
        for kind in properties.get(RDF.type, ()):
            classes.setdefault(kind, []).append(node)
    return GraphView(subjects, classes)
