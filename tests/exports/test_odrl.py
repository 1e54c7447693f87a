"""The instructions exported as ODRL: valid against the W3C shapes, and each rule says what its sentence says.

Sources: W3C ODRL Information Model 2.2 and Vocabulary & Expression 2.2 (Recommendations of 15 February 2018), with
the shapes published by the same group.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from examples_read import WORKS, documentation, vocabulary
from pyshacl import validate
from rdflib import DCTERMS, RDF, Graph, Literal, URIRef
from rdflib.namespace import Namespace
from test_cases import Case as TextCase
from test_cases import read, whole_work

from exports.published_schemas import standard
from intent.dossier.work_text import read_work
from intent.exports.odrl import PROFILE, export_odrl
from intent.record.load_work import load_work

ODRL = Namespace("http://www.w3.org/ns/odrl/2/")
INSTRUCTIONS = """
## Instructions

### R1 What may be

- required: visible diagonal of M1 is between 12 in and 14 in
- allowed: technology of Monitors is flat panel, if "no tube can be had", with consent of estate, until 2030
- forbidden: technology of Monitors is projector
- required: number of Monitors is 3
- required: model of M1 and M2 is the same for all
- by: artist
- on: 1999
"""


def exported(text: str) -> Graph:
    return Graph().parse(data=text, format="turtle")


def rule(graph: Graph, identifier: str) -> URIRef:
    found = graph.value(None, DCTERMS.identifier, Literal(identifier))
    assert isinstance(found, URIRef)
    return found


@pytest.fixture(scope="module")
def policy() -> Graph:
    text = whole_work(TextCase(Path(), 0, "Three windows", "", INSTRUCTIONS, "", "", ""))
    reading = read(read_work(text, "work.md", vocabulary()))
    return exported(export_odrl(load_work(reading.triples, reading.iri, vocabulary())))


@pytest.mark.parametrize("file", WORKS, ids=lambda file: file.parent.name)
def test_policies_of_the_examples_meet_the_published_shapes(file: Path) -> None:
    graph = exported(export_odrl(documentation(file).work))
    shapes = Graph().parse(standard("odrl", "shapes.ttl"))
    conforms, _, report = validate(graph, shacl_graph=shapes)
    assert conforms, report
    broken = Graph() + graph
    broken.remove((None, ODRL.operator, None))
    assert not validate(broken, shacl_graph=shapes)[0]


@pytest.mark.parametrize("file", WORKS, ids=lambda file: file.parent.name)
def test_every_term_of_odrl_that_is_used_exists(file: Path) -> None:
    graph = exported(export_odrl(documentation(file).work))
    known = set(Graph().parse(standard("odrl", "ODRL22.ttl")).subjects())
    used = {node for triple in graph for node in triple if str(node).startswith(str(ODRL))}
    assert used <= known


def test_a_conflict_strategy_and_the_profile_are_stated(policy: Graph) -> None:
    """ODRL Information Model 2.2, section 3.2: with none stated, a conflict voids the policy."""
    one = policy.value(None, RDF.type, ODRL.Set)
    assert policy.value(one, ODRL.conflict) == ODRL.prohibit
    assert policy.value(one, ODRL.profile) == URIRef(PROFILE)


def test_each_modality_is_a_rule_of_its_own_kind(policy: Graph) -> None:
    assert policy.value(None, ODRL.obligation, rule(policy, "R1.1"))
    assert policy.value(None, ODRL.permission, rule(policy, "R1.2"))
    assert policy.value(None, ODRL.prohibition, rule(policy, "R1.3"))


def test_a_measure_has_bounds_and_a_unit(policy: Graph) -> None:
    """12 in is 0.3048 m exactly, 14 in 0.3556 m."""
    bounds = {
        (policy.value(one, ODRL.operator), str(policy.value(one, ODRL.rightOperand)))
        for one in policy.objects(rule(policy, "R1.1"), ODRL.constraint)
        if policy.value(one, ODRL.unit)
    }
    assert bounds == {(ODRL.gteq, "0.3048"), (ODRL.lteq, "0.3556")}


def test_a_permission_carries_its_fact_its_consent_and_its_end(policy: Graph) -> None:
    permission = rule(policy, "R1.2")
    operands = {
        str(operand)
        for one in policy.objects(permission, ODRL.constraint)
        for operand in policy.objects(one, ODRL.rightOperand)
    }
    assert "no tube can be had" in operands
    assert "2030-12-31" in operands
    duty = policy.value(permission, ODRL.duty)
    assert policy.value(duty, ODRL.action) == ODRL.obtainConsent


def test_the_target_holds_the_parts_that_are_meant(policy: Graph) -> None:
    target = policy.value(rule(policy, "R1.3"), ODRL.target)
    assert len(list(policy.subjects(ODRL.partOf, target))) == 3
