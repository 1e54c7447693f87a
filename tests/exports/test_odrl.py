"""The instructions exported as ODRL: valid against the W3C shapes, and each rule says what its sentence says.

Sources: W3C ODRL Information Model 2.2 and Vocabulary & Expression 2.2 (Recommendations of 15 February 2018), with
the shapes published by the same group.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from examples_read import WORKS, documentation, vocabulary
from pyshacl import validate
from rdflib import DCTERMS, RDF, RDFS, Graph, Literal, URIRef
from rdflib.namespace import Namespace
from rdflib.term import Node
from test_cases import Case as TextCase
from test_cases import read, whole_work

from exports.published_schemas import standard
from intent.dossier.work_text import read_work
from intent.exports.odrl import PROFILE, export_odrl
from intent.names import EDTF, INTENT, TERM, UNIT
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
- required: technology of Monitors is cathode-ray tube
- required: total power of Monitors is at most 900 W, if rotation of M1 is upright
- required: total weight of Monitors is at least 10 kg, unless "the floor is of glass"
- allowed: rotation of M3 is any
- duty: "wipe the glass", by borrower, every 3 days
- duty: "send the photographs back", by estate, within 14 days of the end
- duty: "switch on an hour ahead", before, if "the tubes are cold"
- by: artist
- on: 1999

### R2 Choices

- allowed: casing of M1 is altered, first choice
- allowed: casing of M1 is none, second choice
- by: artist
- on: 1999~

### R3 Not known to the day

- allowed: tilt of M1 is any, until 2031~
- by: artist
- on: 1999-05-14

### R4 Later

- required: technology of M3 is plasma panel
- by: artist
- on: 2004

### R5 Once

- allowed: technology of M2 is slide projector, until 2009
- by: artist
- on: 2004
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


def how(graph: Graph, identifier: str) -> set[tuple[str, ...]]:
    """The refinements of the action of a rule: what is compared, how, and with what."""
    action = graph.value(rule(graph, identifier), ODRL.action)
    return {_compared(graph, one) for one in graph.objects(action, ODRL.refinement)}


def when(graph: Graph, identifier: str) -> set[tuple[str, ...]]:
    """The constraints of a rule."""
    return {_compared(graph, one) for one in graph.objects(rule(graph, identifier), ODRL.constraint)}


def _compared(graph: Graph, one: Node) -> tuple[str, ...]:
    left, operator = (graph.value(one, name) for name in (ODRL.leftOperand, ODRL.operator))
    right = sorted(_local(value) for value in graph.objects(one, ODRL.rightOperand))
    return _local(left), _local(operator), *right


def _local(node: Node | None) -> str:
    return str(node) if isinstance(node, Literal) else re.split("[/#]", str(node))[-1]


def test_how_the_installing_is_done_is_a_refinement_of_the_action(policy: Graph) -> None:
    """ODRL Information Model 2.2, section 2.4: 12 in is 0.3048 m exactly, 14 in 0.3556 m."""
    action = policy.value(rule(policy, "R1.1"), ODRL.action)
    assert policy.value(action, RDF.value) == INTENT.install
    assert how(policy, "R1.1") == {
        ("visible-diagonal", "gteq", "0.3048"),
        ("visible-diagonal", "lteq", "0.3556"),
    }
    assert when(policy, "R1.1") == set()
    assert how(policy, "R1.4") == {("odrl.operand.number", "eq", "3.0")}
    assert how(policy, "R1.5") == {("odrl.operand.same-model", "eq", "true")}
    units = {policy.value(one, ODRL.unit) for one in policy.objects(action, ODRL.refinement)}
    assert units == {UNIT.M}


def test_only_the_ends_that_somebody_wrote_are_there(policy: Graph) -> None:
    assert how(policy, "R1.7") == {("odrl.operand.total-power", "lteq", "900.0")}
    assert how(policy, "R1.8") == {("odrl.operand.total-weight", "gteq", "10.0")}


def test_what_leaves_every_value_open_still_says_of_what(policy: Graph) -> None:
    assert how(policy, "R1.9") == {("rotation", "isAnyOf", "anything")}


def test_a_constraint_says_when_a_rule_applies(policy: Graph) -> None:
    """A fact that must hold, one that must not, and an assertion about the installation."""
    assert when(policy, "R1.7") == {("holdsOfTheInstallation", "eq", "rotation of M1 is upright")}
    assert when(policy, "R1.8") == {("attested", "neq", "the floor is of glass")}
    assert when(policy, "R1.2") == {
        ("attested", "eq", "no tube can be had"),
        ("dateTime", "lteq", "2030-12-31"),
    }


def test_a_permission_calls_for_consent_as_a_duty_of_its_own(policy: Graph) -> None:
    duty = policy.value(rule(policy, "R1.2"), ODRL.duty)
    assert policy.value(duty, ODRL.action) == ODRL.obtainConsent
    assert str(policy.value(policy.value(duty, ODRL.consentingParty), RDFS.label)) == "Quarrow Estate"


def test_what_prevails_over_a_rule_is_named_there(policy: Graph) -> None:
    """An exception to a requirement, an exception to a prohibition, and a later requirement of fewer parts."""
    assert when(policy, "R1.6") == {("doneUnder", "isNoneOf", "odrl.R1.2", "odrl.R4.1", "odrl.R5.1")}
    assert when(policy, "R1.3") == {("doneUnder", "isNoneOf", "odrl.R5.1")}
    assert when(policy, "R4.1") == set()


def test_a_later_choice_waits_for_the_earlier_one(policy: Graph) -> None:
    assert when(policy, "R2.1") == set()
    assert when(policy, "R2.2") == {("attested", "eq", "R2.1 cannot be had")}


def test_a_date_that_is_not_known_to_the_day_stays_so(policy: Graph) -> None:
    """ODRL Vocabulary 2.2, `dateTime`: its right operand is a day; so an uncertain one is said otherwise."""
    issued = {line: policy.value(rule(policy, line), DCTERMS.issued) for line in ("R1.1", "R2.1", "R3.1")}
    assert issued == {
        "R1.1": Literal("1999", datatype=EDTF),
        "R2.1": Literal("1999~", datatype=EDTF),
        "R3.1": Literal("1999-05-14", datatype=EDTF),
    }
    assert when(policy, "R3.1") == {("lastDayOfRule", "lteq", "2031~")}
    assert not [one for one in policy.objects(None, ODRL.rightOperand) if str(one).startswith("199")]


def test_duties_are_duties(policy: Graph) -> None:
    """ODRL Vocabulary 2.2: `event`, `timeInterval` and `elapsedTime`, with durations of XML Schema."""
    every, within, before = (rule(policy, line) for line in ("R1.10", "R1.11", "R1.12"))
    assert (every, RDF.type, ODRL.Duty) in policy
    assert policy.value(None, ODRL.obligation, every)
    assert str(policy.value(policy.value(every, ODRL.action), RDFS.label)) == "wipe the glass"
    assert policy.value(every, ODRL.assignee) == TERM.borrower
    assert when(policy, "R1.10") == {("event", "eq", "showing")}
    assert how(policy, "R1.10") == {("timeInterval", "eq", "P3D")}
    assert str(policy.value(policy.value(within, ODRL.assignee), RDFS.label)) == "Quarrow Estate"
    assert when(policy, "R1.11") == {("event", "gteq", "lastDayOfShowing")}
    assert how(policy, "R1.11") == {("elapsedTime", "lteq", "P14D")}
    assert policy.value(before, ODRL.assignee) is None
    assert when(policy, "R1.12") == {("event", "lt", "showing"), ("attested", "eq", "the tubes are cold")}


def test_parties_have_names_and_roles(policy: Graph) -> None:
    giver = policy.value(rule(policy, "R1.1"), ODRL.assigner)
    assert str(policy.value(giver, RDFS.label)) == "Ottiline Quarrow"
    assert str(policy.value(giver, RDFS.comment)) == "artist"


def test_the_target_holds_the_parts_that_are_meant(policy: Graph) -> None:
    target = policy.value(rule(policy, "R1.3"), ODRL.target)
    assert len(list(policy.subjects(ODRL.partOf, target))) == 3
