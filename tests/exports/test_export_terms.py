"""Every term of the record that an export uses is in its ontology, with label, comment, and for a property its ends.

Source: W3C, RDF Schema 1.1 (25 February 2014), sections 3.1 (range), 3.2 (domain), 3.6 (label), 3.7 (comment).
"""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path
from random import Random

import pytest
from examples_read import INSTALLATIONS, WORKS, documentation, ontology, vocabulary
from oracle.drawing import draw_case
from oracle.drawing_together import draw_together
from oracle.program import loaded
from oracle.world import small_world
from oracle.writing import installation_text, work_text
from rdflib import OWL, RDF, RDFS, Graph, URIRef
from rdflib.term import Node

from exports.test_shacl import shapes_of
from intent.exports.odrl import export_odrl
from intent.exports.shacl import export_shacl
from intent.names import INTENT
from intent.variance.case import lay_out

SOURCES = [
    str(files("intent.exports").joinpath(f"{name}.py"))
    for name in ("shacl", "value_shapes", "odrl", "odrl_constraints", "odrl_duties", "odrl_rules")
]
AXES = ("", "1", "2", "3")
ENDS = ("atLeast", "moreThan", "atMost", "lessThan")


def declared() -> set[Node]:
    return set(ontology().subjects(RDF.type))


def ours(*texts: str) -> set[Node]:
    """The terms of the record's namespace in Turtle, as subject, property or object."""
    found = set[Node]()
    for text in texts:
        graph = Graph().parse(data=text)
        found |= {node for triple in graph for node in triple if str(node).startswith(str(INTENT))}
    return found


@pytest.mark.parametrize("file", INSTALLATIONS, ids=lambda file: file.stem)
def test_every_term_in_the_shapes_of_the_examples_is_declared(file: Path) -> None:
    exported = shapes_of(file)
    assert ours(exported.shapes, exported.data) <= declared()


@pytest.mark.parametrize("file", WORKS, ids=lambda file: file.parent.name)
def test_every_term_in_the_policies_of_the_examples_is_declared(file: Path) -> None:
    assert ours(export_odrl(documentation(file).work)) <= declared()


@pytest.mark.parametrize("seed", range(20))
def test_every_term_in_the_exports_of_drawn_cases_is_declared(seed: int) -> None:
    drawn = draw_case(Random(seed), small_world()) if seed % 2 else draw_together(Random(seed))
    found = loaded(work_text(drawn), installation_text(drawn), vocabulary())
    exported = export_shacl(lay_out(found.work, found.installation))
    assert ours(exported.shapes, exported.data) <= declared()


def test_every_term_that_the_modules_name_is_declared() -> None:
    """What no example happens to use is found in the modules' text; a name that is put together, by its pieces."""
    text = "\n".join(Path(file).read_text(encoding="utf-8") for file in SOURCES)
    named = {INTENT[name] for name in re.findall(r"\bintent:([A-Za-z][A-Za-z0-9-]*)(?![\w{-])", text)}
    named |= {INTENT[f"{end}{axis}"] for end in ENDS for axis in AXES}
    assert {INTENT.Fact, INTENT.given, INTENT.install, INTENT.attested} <= named
    assert named <= declared()
    assert URIRef(INTENT["odrl-profile"]) in declared()


def test_the_terms_of_exports_are_described_and_have_ends() -> None:
    known = {INTENT[f"{end}{axis}"] for end in ENDS for axis in AXES}
    known |= {INTENT[name] for name in ("given", "counted", "openText", "fails", "subjectName")}
    for node in known:
        assert (node, RDFS.label, None) in ontology()
        assert (node, RDFS.comment, None) in ontology()
        assert (node, RDFS.domain, None) in ontology()
        assert (node, RDFS.range, None) in ontology()


def test_no_term_is_a_property_and_something_else() -> None:
    """OWL 2 would bear it (punning); whoever reads the ontology would not."""
    kinds = (OWL.ObjectProperty, OWL.DatatypeProperty, RDF.Property)
    properties = {node for kind in kinds for node in ontology().subjects(RDF.type, kind)}
    for node in properties:
        assert set(ontology().objects(node, RDF.type)) <= set(kinds), node
