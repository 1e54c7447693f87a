"""The ontology of the record says what stands where: every term of the graphs is in it, and the graphs keep to it.

Sources: CIDOC CRM 7.1.2 in RDFS (September 2022), found where the environment variable INTENT_STANDARDS points or in
``../shared/standards``; W3C, RDF Schema 1.1 and PROV-O, whose terms come with rdflib; W3C, Web Annotation Vocabulary.
"""

from __future__ import annotations

import os
from collections.abc import Collection
from enum import StrEnum
from functools import cache
from importlib.resources import files
from pathlib import Path

import pytest
from examples_read import INSTALLATIONS, WORKS
from examples_read import graph as graph_of
from rdflib import OWL, PROV, RDF, RDFS, SKOS, XSD, Graph, Literal, URIRef
from rdflib.collection import Collection as RdfList
from rdflib.namespace import SH
from rdflib.term import Node

from intent.model.assertions import Aggregate, Form, Relation, ScopeKind
from intent.model.work import Modality
from intent.names import CRM, INTENT
from intent.record.parse import parse_rdf
from intent.record.validate import shapes_file
from intent.vocabulary.loader import TERM_FILES

ROOT = Path(__file__).parents[2]
STANDARDS = Path(os.environ.get("INTENT_STANDARDS", ROOT.parent / "shared" / "standards"))
REPORTS = (
    ROOT / "tests" / "papers" / "expected" / "loan.ttl",
    ROOT / "tests" / "planning" / "expected" / "duties.ttl",
    ROOT / "tests" / "analysis" / "history" / "expected" / "consent.ttl",
)
OF_REPORTS = {INTENT[name] for name in ("Variance", "Row", "SetAside", "Open", "Precedent", "DueDuty")}
WITHOUT_DOMAIN = {INTENT[name] for name in ("order", "note", "states")}
"""Properties that anything may have."""


def read(path: Path) -> Graph:
    return parse_rdf(path.read_bytes(), path.name, "turtle")


@cache
def ontology() -> Graph:
    return read(Path(str(files("intent.vocabulary") / "record.ttl")))


@cache
def examples() -> Graph:
    graph = Graph()
    for path in (*WORKS, *INSTALLATIONS):
        for triple in graph_of(path):
            graph.add(triple)
    return graph


@cache
def reports() -> Graph:
    graph = Graph()
    for path in REPORTS:
        for triple in read(path):
            graph.add(triple)
    return graph


@cache
def vocabulary() -> Graph:
    graph = Graph()
    for name in TERM_FILES:
        for triple in read(Path(str(files("intent.vocabulary") / f"{name}.ttl"))):
            graph.add(triple)
    return graph


def ours(nodes: Collection[Node]) -> set[Node]:
    """Those of the record's namespace; the name of the program in a report is none."""
    found = (node for node in nodes if isinstance(node, URIRef) and node.startswith(str(INTENT)))
    return {node for node in found if not node.startswith(str(INTENT.software))}


def terms(graph: Graph) -> set[Node]:
    """Every term of the record's namespace in a graph, as property, class, member of a list or datatype."""
    found = {term for triple in graph for term in triple}
    return ours(found | {node.datatype for node in found if isinstance(node, Literal) and node.datatype})


def declared() -> set[Node]:
    return ours(set(ontology().subjects(RDF.type)))


def properties() -> set[Node]:
    kinds = (OWL.ObjectProperty, OWL.DatatypeProperty, RDF.Property)
    return {node for kind in kinds for node in ontology().subjects(RDF.type, kind)}


def members(node: Node) -> set[Node]:
    """The classes of a union, or the class by itself."""
    union = ontology().value(node, OWL.unionOf)
    return {node} if union is None else set(RdfList(ontology(), union))


def admitted(predicate: Node, side: URIRef) -> set[Node]:
    return {one for node in ontology().objects(predicate, side) for one in members(node)}


@pytest.mark.parametrize("graph", [examples, vocabulary, reports], ids=["examples", "terms", "report"])
def test_every_term_that_is_used_is_declared(graph: object) -> None:
    assert callable(graph)
    assert terms(graph()) <= declared()


def test_every_shape_speaks_of_declared_terms() -> None:
    for file in ("record", "work", "installation"):
        assert terms(read(Path(str(shapes_file(file))))) <= declared()


def test_every_class_of_the_record_is_used() -> None:
    used = set(examples().objects(None, RDF.type))
    classes = {
        node
        for node in ours(set(ontology().subjects(RDF.type, OWL.Class)))
        if any(str(wider).startswith(str(CRM)) for wider in ontology().objects(node, RDFS.subClassOf))
    }
    assert classes - used == OF_REPORTS
    assert set(reports().objects(None, RDF.type)) >= OF_REPORTS


def test_every_field_of_the_text_form_has_a_declared_property() -> None:
    fields = ours(set(vocabulary().objects(None, INTENT.property)))
    assert fields <= properties()


def test_every_term_is_named_and_described() -> None:
    for node in declared():
        assert len(list(ontology().objects(node, RDFS.label))) == 1, node
        (comment,) = ontology().objects(node, RDFS.comment)
        assert str(comment).endswith("."), node


def test_every_property_has_a_domain_and_a_range() -> None:
    for node in properties():
        assert len(list(ontology().objects(node, RDFS.range))) == 1, node
        assert bool(list(ontology().objects(node, RDFS.domain))) == (node not in WITHOUT_DOMAIN), node


@pytest.mark.parametrize("graph", [examples, vocabulary], ids=["examples", "terms"])
def test_what_has_a_property_is_in_its_domain(graph: object) -> None:
    assert callable(graph)
    found = graph()
    for subject, predicate in set(found.subject_predicates()):
        domain = admitted(predicate, RDFS.domain)
        if domain and predicate in properties():
            assert set(found.objects(subject, RDF.type)) & domain, (subject, predicate)


@pytest.mark.parametrize("graph", [examples, vocabulary], ids=["examples", "terms"])
def test_what_a_property_points_to_is_in_its_range(graph: object) -> None:
    assert callable(graph)
    found = graph()
    for subject, predicate, value in found:
        if predicate in properties():
            assert is_within(found, value, admitted(predicate, RDFS.range)), (subject, predicate, value)


def is_within(graph: Graph, value: Node, admitted_kinds: set[Node]) -> bool:
    if RDFS.Resource in admitted_kinds:
        return True
    if isinstance(value, Literal):
        datatype = RDF.langString if value.language else value.datatype or XSD.string
        return datatype in admitted_kinds
    kinds = set(graph.objects(value, RDF.type)) | set(ontology().objects(value, RDF.type))
    kinds |= set(vocabulary().objects(value, RDF.type)) or {SKOS.Concept, INTENT.Characteristic}
    return (
        bool(kinds & admitted_kinds) or CRM["E53_Place"] in admitted_kinds or RDF.Property in admitted_kinds
    )


@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("Form", Form),
        ("Aggregate", Aggregate),
        ("Scope", ScopeKind),
        ("Relation", Relation),
        ("Modality", Modality),
    ],
)
def test_the_lists_are_those_of_the_program(name: str, values: type[StrEnum]) -> None:
    listed = {str(node).removeprefix(str(INTENT)) for node in ontology().subjects(RDF.type, INTENT[name])}
    assert listed == {value.replace(" ", "-") for value in values}


def test_the_shapes_admit_whole_lists() -> None:
    lists = [
        frozenset(RdfList(graph, node))
        for file in ("record", "work")
        for graph in [read(Path(str(shapes_file(file))))]
        for node in graph.objects(None, SH["in"])
    ]
    for name in ("Form", "Aggregate", "Scope", "Relation", "Modality"):
        assert frozenset(ontology().subjects(RDF.type, INTENT[name])) in lists, name


def test_what_is_reused_of_prov_exists() -> None:
    for node in {term for triple in ontology() for term in triple if str(term).startswith(str(PROV))}:
        assert str(node).removeprefix(str(PROV)) in {
            str(term).removeprefix(str(PROV)) for term in dir(PROV)
        }, node


def test_what_is_reused_of_cidoc_crm_exists() -> None:
    path = STANDARDS / "cidoc-crm" / "CIDOC_CRM_v7.1.2.rdf"
    if not path.exists():
        pytest.skip(f"CIDOC CRM 7.1.2 is not at {path}; set INTENT_STANDARDS to the folder of standards")
    model = Graph().parse(path, format="xml")
    classes, relations = (
        set(model.subjects(RDF.type, RDFS.Class)),
        set(model.subjects(RDF.type, RDF.Property)),
    )
    used = {node for node in ontology().objects() if str(node).startswith(str(CRM))}
    above = set(ontology().objects(None, RDFS.subPropertyOf))
    assert used
    assert used - above <= classes
    assert {node for node in above if str(node).startswith(str(CRM))} <= relations
