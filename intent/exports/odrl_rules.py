"""The rules of a policy, one for each instruction in force.

Source: W3C ODRL Information Model 2.2 (15 February 2018), sections 2.4 (actions and their refinements), 2.5
(constraints) and 2.6 (rules).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.analysis.exceptions import Exceptions
from intent.exports.catalogue import line_text, property_words, standing
from intent.exports.odrl_constraints import (
    Statements,
    asked_of_value,
    attested,
    compared,
    conditional,
    edtf_term,
    operand_name,
    operand_of,
    until,
)
from intent.language.locale import ENGLISH
from intent.model.instruction_text import assertion_text
from intent.model.work import Instruction, Modality, Person, Work
from intent.names import local_iri
from intent.record.turtle_text import iri_term, subject_block, text_term
from intent.variance.attesting import cannot_be_had
from intent.variance.scopes import scopes_of

RULES = {
    Modality.REQUIRED: ("odrl:obligation", "odrl:Duty"),
    Modality.ALLOWED: ("odrl:permission", "odrl:Permission"),
    Modality.FORBIDDEN: ("odrl:prohibition", "odrl:Prohibition"),
}


def rule_node(work: Work, *steps: str) -> str:
    """The node of a rule, or of something that belongs to it."""
    return iri_term(str(local_iri(work.iri, "odrl", *steps)))


def instruction_rule(work: Work, line: Instruction, exceptions: Exceptions) -> Iterator[str]:
    """An instruction as a rule: how the installing must, may or must not be done is the refinement of its action.

    When the rule applies are its constraints: its conditions, its end, and that nothing is done under what prevails
    over it.
    """
    node = rule_node(work, line.identifier)
    statements = [
        ("a", f"odrl:Rule, {RULES[line.modality][1]}"),
        ("odrl:action", rule_node(work, line.identifier, "action")),
        ("odrl:target", rule_node(work, line.identifier, "target")),
        ("dcterms:identifier", text_term(line.identifier)),
        ("rdfs:comment", text_term(line_text(work, line))),
        *(("rdfs:comment", text_term(f"{property_words(name)}: {text}")) for name, text in standing(line)),
    ]
    if line.on is not None:
        statements.append(("dcterms:issued", edtf_term(line.on)))
    giver = work.person(line.by)
    if giver is not None:
        statements.append(("odrl:assigner", iri_term(giver.iri)))
        yield party(giver)
    when = list(_when(work, line, exceptions))
    yield from constrained(work, statements, "odrl:constraint", when, line.identifier)
    if line.consents:
        duties = [rule_node(work, line.identifier, f"consent-{name}") for name in line.consents]
        statements.append(("odrl:duty", ", ".join(duties)))
        for name, duty in zip(line.consents, duties, strict=True):
            yield from _consent(work, name, duty)
    yield subject_block(node, statements)
    yield from _action(work, line)
    yield from _target(work, line)


def party(person: Person) -> str:
    """Somebody by name and role; by the role alone where the name stays in the house."""
    statements = [("a", "odrl:Party"), ("rdfs:label", text_term(person.name or person.identifier))]
    role = text_term(person.role.label, ENGLISH.tag)
    return subject_block(iri_term(person.iri), [*statements, ("rdfs:comment", role)])


def constrained(
    work: Work, statements: Statements, name: str, constraints: Sequence[Statements], *steps: str
) -> Iterator[str]:
    """The nodes of some constraints; the statement that names them is added to ``statements``."""
    if not constraints:
        return
    kind = name.removeprefix("odrl:")
    nodes = [rule_node(work, *steps, f"{kind}-{place}") for place in range(1, len(constraints) + 1)]
    statements.append((name, ", ".join(nodes)))
    yield from (subject_block(node, found) for node, found in zip(nodes, constraints, strict=True))


def _when(work: Work, line: Instruction, exceptions: Exceptions) -> Iterator[Statements]:
    """When the rule applies."""
    yield from (conditional(work, condition) for condition in line.conditions)
    known = {one.identifier: one for one in work.instructions}
    for earlier in exceptions.earlier.get(line.identifier, ()):
        yield attested(cannot_be_had(known[earlier]))
    prevailing = exceptions.to.get(line.identifier, ())
    if prevailing:
        rules = ", ".join(rule_node(work, identifier) for identifier in prevailing)
        yield compared("intent:doneUnder", "isNoneOf", rules)
    if line.until is not None:
        yield until(line.until)


def _consent(work: Work, name: str, duty: str) -> Iterator[str]:
    person = work.person(name)
    statements = [("a", "odrl:Rule, odrl:Duty"), ("odrl:action", "odrl:obtainConsent")]
    if person is not None:
        statements.append(("odrl:consentingParty", iri_term(person.iri)))
        yield party(person)
    yield subject_block(duty, statements)


def _action(work: Work, line: Instruction) -> Iterator[str]:
    """To install, refined to how: with these values of this characteristic."""
    action = rule_node(work, line.identifier, "action")
    statements = [
        ("a", "odrl:Action"),
        ("rdf:value", "intent:install"),
        ("odrl:includedIn", "intent:install"),
    ]
    how = list(asked_of_value(work, line.assertion))
    yield from constrained(work, statements, "odrl:refinement", how, line.identifier)
    yield subject_block(action, statements)
    label = text_term(operand_name(work, line.assertion), ENGLISH.tag)
    yield subject_block(operand_of(work, line.assertion), [("a", "odrl:LeftOperand"), ("rdfs:label", label)])


def _target(work: Work, line: Instruction) -> Iterator[str]:
    """The parts that are meant, as a collection; the work or the venue as an asset by itself."""
    target = rule_node(work, line.identifier, "target")
    label = line.assertion.scope.written or assertion_text(line.assertion, work.vocabulary)
    yield subject_block(target, [("a", "odrl:AssetCollection"), ("rdfs:label", text_term(label))])
    for member in scopes_of(work).of_work(line.assertion):
        part = work.part(member)
        if part is not None:
            name = text_term(part.name or part.identifier)
            yield subject_block(
                iri_term(part.iri), [("a", "odrl:Asset"), ("rdfs:label", name), ("odrl:partOf", target)]
            )
