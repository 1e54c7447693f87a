"""The terms as somebody meets them who was sent them: header, schemes with their top, definitions, published matches.

Sources: W3C, SKOS Reference (18 August 2009), sections 4 (top concepts), 7 (definitions), 10 (matches); W3C, OWL 2
(ontology headers) and RDF Schema 1.1 (isDefinedBy); the documentation of Linked Art 1.0, as listed in
``tests/exports/aat.md``; QUDT, as extracted in the folder of standards.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterable
from functools import cache
from importlib.resources import files
from pathlib import Path

import pytest
from exports.published_terms import AAT, published_aat
from rdflib import DCTERMS, OWL, RDF, RDFS, SKOS, Graph, Literal, Namespace, URIRef
from rdflib.term import Node

from intent.names import INTENT, TERM
from intent.version import VERSION
from intent.vocabulary.loader import TERM_FILES

STANDARDS = Path(os.environ.get("INTENT_STANDARDS") or Path(__file__).parents[3] / "shared" / "standards")
VANN = Namespace("http://purl.org/vocab/vann/")
ONTOLOGY = URIRef("https://w3id.org/intent-record/ns")
MATCHES = (SKOS.exactMatch, SKOS.closeMatch, SKOS.broadMatch)
SAYS = {"Feet": "foot", "Inches": "inch"}
"""The English plurals that are not made with an s."""


def read(name: str) -> Graph:
    return Graph().parse(data=files("intent.vocabulary").joinpath(f"{name}.ttl").read_text(encoding="utf-8"))


@cache
def ontology() -> Graph:
    return read("record")


@cache
def terms() -> Graph:
    graph = Graph()
    for name in (*TERM_FILES, "published"):
        graph += read(name)
    return graph


def languages(texts: Iterable[Node]) -> set[str | None]:
    return {text.language for text in texts if isinstance(text, Literal)}


@pytest.mark.parametrize(
    ("graph", "header", "prefix", "namespace"),
    [(ontology, ONTOLOGY, "intent", INTENT), (terms, URIRef(str(TERM)), "term", TERM)],
    ids=["ontology", "terms"],
)
def test_a_header_says_licence_version_prefix_and_namespace(
    graph: object, header: URIRef, prefix: str, namespace: Namespace
) -> None:
    assert callable(graph)
    found = graph()
    assert (header, RDF.type, OWL.Ontology) in found
    assert str(found.value(header, OWL.versionInfo)) == VERSION
    assert str(found.value(header, DCTERMS.license)) == "https://spdx.org/licenses/MIT"
    assert str(found.value(header, VANN.preferredNamespacePrefix)) == prefix
    assert str(found.value(header, VANN.preferredNamespaceUri)) == str(namespace)


def test_the_licence_is_the_projects() -> None:
    project = (Path(__file__).parents[2] / "pyproject.toml").read_text()
    assert re.search(r'^license = "MIT"$', project, re.MULTILINE)


def test_every_term_of_the_ontology_says_where_it_is_defined() -> None:
    own = {node for node in ontology().subjects(RDF.type, None) if str(node).startswith(str(INTENT))}
    assert len(own) > 300
    assert [node for node in own if ontology().value(node, RDFS.isDefinedBy) != ONTOLOGY] == []


def test_a_scheme_names_its_top_concepts_and_they_name_it() -> None:
    """What is narrower than nothing is on top of its scheme, and nothing else is: SKOS Reference, S7 and S8."""
    graph, schemes = terms(), set(terms().subjects(RDF.type, SKOS.ConceptScheme))
    tops = {
        (graph.value(node, SKOS.inScheme), node)
        for node in graph.subjects(RDF.type, SKOS.Concept)
        if graph.value(node, SKOS.broader) is None
    }
    assert set(graph.subject_objects(SKOS.hasTopConcept)) == tops
    assert {(scheme, node) for node, scheme in graph.subject_objects(SKOS.topConceptOf)} == tops
    assert {scheme for scheme, _ in tops} == schemes


def test_every_concept_and_scheme_is_defined_in_english() -> None:
    for kind in (SKOS.Concept, SKOS.ConceptScheme):
        for node in terms().subjects(RDF.type, kind):
            assert "en" in languages(terms().objects(node, SKOS.definition)), node


def test_every_label_and_definition_says_its_language() -> None:
    for graph in (terms(), ontology()):
        for said in (SKOS.prefLabel, SKOS.altLabel, SKOS.definition, RDFS.label, RDFS.comment, DCTERMS.title):
            assert None not in languages(graph.objects(None, said)), said


def test_what_is_matched_is_a_term_of_ours_and_a_published_one() -> None:
    matched = [triple for match in MATCHES for triple in terms().triples((None, match, None))]
    assert matched
    assert {one for one, _, _ in matched} <= set(terms().subjects(RDF.type, None))
    assert {str(other) for _, _, other in matched if str(other).startswith(AAT)} <= set(published_aat())


def test_a_unit_is_matched_to_the_published_unit_of_its_name() -> None:
    """The published names are English plurals of America: `Centimeters` is our `centimetre`."""
    for unit, other in terms().subject_objects(SKOS.exactMatch):
        if str(other).startswith(AAT):
            name = published_aat()[str(other)]
            labels = {
                str(text).lower().replace("metre", "meter").replace("gramme", "gram")
                for said in (SKOS.prefLabel, SKOS.altLabel)
                for text in terms().objects(unit, said)
            }
            assert labels & {name.lower(), name.lower().rstrip("s"), SAYS.get(name, name)}, (unit, name)


def test_what_is_matched_to_qudt_is_there() -> None:
    path = STANDARDS / "qudt" / "units.ttl"
    if not path.exists():
        pytest.skip(f"the extract of QUDT is not at {path}; set INTENT_STANDARDS to the folder of standards")
    known = {str(node) for node in Graph().parse(path).all_nodes()}
    matched = {str(other) for match in MATCHES for other in terms().objects(None, match)}
    assert {other for other in matched if "qudt.org" in other} <= known
