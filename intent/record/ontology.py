"""What a record may hold of its own: the classes and properties that `vocabulary/record.ttl` declares.

Nothing about a particular class or property is written in code; what the ontology gains is known at once.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from importlib.resources import files

from rdflib import OWL, RDF, RDFS
from rdflib.collection import Collection
from rdflib.term import Node

from intent.names import INTENT
from intent.record.indexed import IndexedGraph
from intent.record.parse import parse_triples

_PROPERTIES = (OWL.ObjectProperty, OWL.DatatypeProperty, RDF.Property)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ontology:
    """The declared classes and properties, and what each property joins with what."""

    classes: frozenset[Node]
    properties: frozenset[Node]
    literal: frozenset[Node]
    """The properties whose values are texts, numbers and dates, never things."""
    domains: Mapping[Node, frozenset[Node]]
    """The classes that may have a property; a property that anything may have is not here."""
    ranges: Mapping[Node, frozenset[Node]]
    """The classes or datatypes of a property's values."""
    individuals: Mapping[Node, frozenset[Node]]
    """The classes of each thing that the ontology itself names: forms, modalities, relations."""
    wider: Mapping[Node, frozenset[Node]]
    """Each class with all that it is below, itself among them."""

    bearers: Mapping[Node, frozenset[str]]
    """As whose the characteristics of each class's things count: `device`, `place` …"""

    @property
    def names(self) -> frozenset[Node]:
        """Everything that is declared."""
        return self.classes | self.properties | frozenset(self.individuals)

    def with_wider(self, kinds: Iterable[Node]) -> frozenset[Node]:
        """Classes with all that they are below."""
        return frozenset().union(*(self.wider.get(kind, frozenset({kind})) for kind in kinds))


def read_ontology() -> Ontology:
    """The ontology of the record, as it is shipped."""
    content = files("intent.vocabulary").joinpath("record.ttl").read_bytes()
    graph = IndexedGraph(parse_triples(content, "record.ttl", "turtle"))
    declared = {node: frozenset(graph.objects(node, RDF.type)) for node in graph.subjects(RDF.type, None)}
    classes = frozenset(node for node, kinds in declared.items() if kinds & {OWL.Class, RDFS.Datatype})
    properties = frozenset(node for node, kinds in declared.items() if kinds & set(_PROPERTIES))
    return Ontology(
        classes=classes,
        properties=properties,
        literal=frozenset(node for node in properties if OWL.DatatypeProperty in declared[node]),
        domains=_joined(graph, properties, RDFS.domain),
        ranges=_joined(graph, properties, RDFS.range),
        individuals={
            node: kinds for node, kinds in declared.items() if node not in classes and node not in properties
        },
        bearers={node: frozenset(map(str, graph.objects(node, INTENT.bearer))) for node in classes},
        wider={
            node: frozenset(filter(None, graph.transitive_objects(node, RDFS.subClassOf))) for node in classes
        },
    )


def _joined(graph: IndexedGraph, properties: Iterable[Node], side: Node) -> dict[Node, frozenset[Node]]:
    """The classes on one side of each property that has any."""
    found = {
        each: frozenset(one for node in graph.objects(each, side) for one in _members(graph, node))
        for each in properties
    }
    return {each: kinds for each, kinds in found.items() if kinds}


def _members(graph: IndexedGraph, node: Node) -> Iterable[Node]:
    """The classes of a union, or the class by itself."""
    union = graph.value(node, OWL.unionOf)
    return (node,) if union is None else Collection(graph, union)
