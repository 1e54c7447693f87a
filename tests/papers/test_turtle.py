"""The Turtle report is one that any reader of SHACL results can use."""

from __future__ import annotations

import hashlib
from dataclasses import replace

import pyshacl
import pytest
from rdflib import PROV, RDF, BNode, Graph, Literal, Namespace, URIRef
from rdflib.namespace import SH

from intent.papers import Evidence, write_report
from intent.variance.result import Variance, Verdict

INTENT = Namespace("https://w3id.org/intent-record/ns#")
FILE = "ni:///sha-256;"

# W3C SHACL (2017), section 3.6, "Validation Report": what a report and its results have, and how often.
RESULTS = """
@prefix sh: <http://www.w3.org/ns/shacl#> .
@prefix xsd: <http://www.w3.org/2001/XMLSchema#> .
@prefix : <https://example.org/shapes#> .

:Report a sh:NodeShape ; sh:targetClass sh:ValidationReport ;
    sh:property [ sh:path sh:conforms ; sh:minCount 1 ; sh:maxCount 1 ; sh:datatype xsd:boolean ] ;
    sh:property [ sh:path sh:result ; sh:class sh:ValidationResult ] .
:Result a sh:NodeShape ; sh:targetClass sh:ValidationResult ;
    sh:property [ sh:path sh:focusNode ; sh:minCount 1 ; sh:maxCount 1 ] ;
    sh:property [ sh:path sh:resultPath ; sh:maxCount 1 ] ;
    sh:property [ sh:path sh:value ; sh:maxCount 1 ] ;
    sh:property [ sh:path sh:sourceShape ; sh:maxCount 1 ; sh:nodeKind sh:BlankNodeOrIRI ] ;
    sh:property [ sh:path sh:sourceConstraintComponent ; sh:minCount 1 ; sh:maxCount 1 ;
        sh:nodeKind sh:IRI ] ;
    sh:property [ sh:path sh:resultSeverity ; sh:minCount 1 ; sh:maxCount 1 ;
        sh:in ( sh:Violation sh:Warning sh:Info ) ] ;
    sh:property [ sh:path sh:resultMessage ; sh:minCount 1 ; sh:or ( [ sh:datatype xsd:string ]
        [ sh:datatype <http://www.w3.org/1999/02/22-rdf-syntax-ns#langString> ] ) ] .
"""


@pytest.fixture
def graph(variance: Variance, evidence: Evidence) -> Graph:
    return Graph().parse(data=write_report(variance, "turtle", evidence), format="turtle")


def test_report_has_the_form_of_a_shacl_report(graph: Graph) -> None:
    shapes = Graph().parse(data=RESULTS, format="turtle")
    conforms, _, text = pyshacl.validate(graph, shacl_graph=shapes)
    assert conforms, text


def test_one_result_for_each_departure_and_finding(graph: Graph, variance: Variance) -> None:
    report = graph.value(predicate=RDF.type, object=SH.ValidationReport)
    assert graph.value(report, SH.conforms) == Literal(False)
    severities = [graph.value(result, SH.resultSeverity) for result in graph.objects(report, SH.result)]
    assert severities.count(SH.Violation) == 2
    assert severities.count(SH.Warning) == 4 + len(variance.obstacles)
    assert len(set(graph.subjects(RDF.type, INTENT.Row))) == len(variance.rows)


def test_result_names_the_part_and_the_instruction(graph: Graph) -> None:
    result = URIRef("https://example.org/closed-line/halmsee#validation-report.result-1")
    assert graph.value(result, SH.focusNode) == URIRef("https://example.org/closed-line/M2")
    assert graph.value(result, SH.sourceShape) == URIRef("https://example.org/closed-line/R2.1")


def test_what_is_simply_allowed_is_no_result(variance: Variance, evidence: Evidence) -> None:
    row = replace(variance.rows[4], verdict=Verdict.ALLOWED, open=())
    text = write_report(replace(variance, rows=(row,), obstacles=()), "turtle", evidence)
    graph = Graph().parse(data=text, format="turtle")
    assert not set(graph.subjects(RDF.type, SH.ValidationResult))
    assert len(set(graph.subjects(RDF.type, INTENT.Row))) == 1


def test_an_acceptable_proposal_conforms(unchanged: Variance, evidence: Evidence) -> None:
    graph = Graph().parse(data=write_report(unchanged, "turtle", evidence), format="turtle")
    assert graph.value(predicate=SH.conforms, object=Literal(True))


def test_files_are_named_by_their_digest(graph: Graph, evidence: Evidence) -> None:
    """RFC 6920, section 8.1: "Hello World!" has this name under SHA-256."""
    variance = graph.value(predicate=RDF.type, object=INTENT.Variance)
    files = [node for node in graph.objects(variance, PROV.wasDerivedFrom) if str(node).startswith(FILE)]
    assert len(files) == len(evidence.files)
    hello = replace(evidence.files[0], sha256=hashlib.sha256(b"Hello World!").hexdigest())
    from intent.papers.report_turtle import _file

    assert _file(Graph(), hello) == URIRef(FILE + "f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtkGk")


def test_every_node_has_an_iri(graph: Graph) -> None:
    assert not [node for triple in graph for node in triple if isinstance(node, BNode)]
    assert not [node for node in graph.all_nodes() if isinstance(node, URIRef) and str(node).count("#") > 1]
