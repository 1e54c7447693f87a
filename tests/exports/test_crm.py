"""Every term of CIDOC CRM that the record and its exports use exists, with the domain and range it is used in.

Source: ICOM/CIDOC, CIDOC Conceptual Reference Model 7.1.2 (June 2022), in RDFS; scope note of E55 Type on terms of
thesauri; RDF Schema 1.1 (W3C, 25 February 2014) on what a subclass and a subproperty imply.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from pathlib import Path

import pytest
from examples_read import INSTALLATIONS, WORKS, ontology
from examples_read import graph as graph_of
from rdflib import OWL, RDF, RDFS, Graph, Literal, URIRef
from rdflib.collection import Collection
from rdflib.term import Node

from exports.published_schemas import standard
from exports.test_linked_art import expanded_of
from intent.names import CRM, INTENT

DIGITAL_OBJECT = URIRef("http://www.ics.forth.gr/isl/CRMdig/D1_Digital_Object")


@cache
def model() -> Graph:
    """The model, with the one class of its extension CRMdig that Linked Art has for digital objects."""
    graph = Graph().parse(standard("cidoc-crm", "CIDOC_CRM_v7.1.2.rdf"), format="xml")
    return graph.add((DIGITAL_OBJECT, RDFS.subClassOf, CRM["E73_Information_Object"]))


def is_crm(node: Node) -> bool:
    return str(node).startswith(str(CRM))


def above(node: Node, relation: Node) -> set[Node]:
    """The node with every class or property above it, in the ontology and in the model."""
    found, waiting = set[Node](), [node]
    while waiting:
        one = waiting.pop()
        if one not in found:
            found.add(one)
            waiting += [*ontology().objects(one, relation), *model().objects(one, relation)]
    return found


def classes(graph: Graph, node: Node) -> set[Node]:
    """What a thing is, by its types and all above them; a literal is only that."""
    if isinstance(node, Literal):
        return {RDFS.Literal, node.datatype or RDFS.Literal}
    kinds = [*graph.objects(node, RDF.type), *ontology().objects(node, RDF.type)]
    return {wider for kind in kinds for wider in above(kind, RDFS.subClassOf)}


def members(node: Node) -> list[Node]:
    """The classes of a union, or the class by itself."""
    union = ontology().value(node, OWL.unionOf)
    return [node] if union is None else list(Collection(ontology(), union))


def implied(predicate: Node) -> Iterator[Node]:
    """The properties of the model that a statement with a property makes as well."""
    yield from (one for one in above(predicate, RDFS.subPropertyOf) if is_crm(one))


def faults(graph: Graph) -> Iterator[str]:
    """Each use of a property of the model by something that is not in its domain, or of something not in its range."""
    for subject, predicate, value in graph:
        for one in implied(predicate):
            ends = ((subject, RDFS.domain), (value, RDFS.range))
            for node, side in ends:
                for wanted in model().objects(one, side):
                    if wanted not in classes(graph, node):
                        yield f"{subject} {predicate} {value}: {side.split('#')[-1]} of {one} is {wanted}"


def test_every_term_of_the_model_that_the_ontology_names_exists() -> None:
    used = {node for triple in ontology() for node in triple if is_crm(node)}
    assert used
    assert used <= set(model().subjects(RDF.type))


def test_a_class_is_below_classes_and_a_property_below_properties() -> None:
    for node, wider in ontology().subject_objects(RDFS.subClassOf):
        if is_crm(wider):
            assert (wider, RDF.type, RDFS.Class) in model(), node
    for node, wider in ontology().subject_objects(RDFS.subPropertyOf):
        if is_crm(wider):
            assert (wider, RDF.type, RDF.Property) in model(), node


def test_domain_and_range_lie_within_those_of_the_property_above() -> None:
    """A property's own domain and range are no wider than what its superproperty implies."""
    for node, wider in ontology().subject_objects(RDFS.subPropertyOf):
        for one in implied(wider):
            for side in (RDFS.domain, RDFS.range):
                own = [kind for found in ontology().objects(node, side) for kind in members(found)]
                for wanted in model().objects(one, side):
                    is_literal = wanted == RDFS.Literal
                    fits = [is_literal or wanted in above(kind, RDFS.subClassOf) for kind in own]
                    assert all(fits), (node, side, wanted)


@pytest.mark.parametrize("file", [*WORKS, *INSTALLATIONS], ids=lambda file: file.stem)
def test_what_is_serialised_keeps_to_domains_and_ranges(file: Path) -> None:
    graph = Graph() + graph_of(file)
    for term in vocabulary_types():
        graph.add(term)
    assert not list(faults(graph))
    used = {node for triple in graph for node in triple if is_crm(node)}
    assert used <= set(model().subjects(RDF.type))


@cache
def vocabulary_types() -> tuple[tuple[Node, Node, Node], ...]:
    """What the shipped terms are; a work's own terms are concepts as well, and are not named by these properties."""
    found = Graph()
    for name in ("kinds", "roles", "values", "technologies"):
        found.parse(data=files("intent.vocabulary").joinpath(f"{name}.ttl").read_text(encoding="utf-8"))
    return tuple(found.triples((None, RDF.type, None)))


@pytest.mark.parametrize("file", WORKS, ids=lambda file: file.parent.name)
def test_linked_art_documents_keep_to_domains_and_ranges(file: Path) -> None:
    text = "\n".join(f"{quad.subject} {quad.predicate} {quad.object} ." for quad in expanded_of(file))
    graph = Graph().parse(data=text, format="nt")
    assert not list(faults(graph))


def test_a_wrong_use_is_found() -> None:
    graph = Graph()
    graph.add((INTENT.one, CRM["P46_is_composed_of"], INTENT.two))
    graph.add((INTENT.one, RDF.type, CRM["E73_Information_Object"]))
    graph.add((INTENT.two, RDF.type, CRM["E18_Physical_Thing"]))
    (fault,) = faults(graph)
    assert "domain" in fault
