"""Duties as obligations of a policy: something to be done by somebody, before, during or after the showing.

Source: W3C ODRL Information Model 2.2 (15 February 2018), section 2.6.3, and the left operands `event`, `timeInterval`
and `elapsedTime` of its vocabulary, whose right operands are events and durations of XML Schema.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.exports.catalogue import duty_text
from intent.exports.odrl_constraints import Statements, compared, conditional, edtf_term, until
from intent.exports.odrl_rules import constrained, party, rule_node
from intent.language.locale import ENGLISH
from intent.model.duty import Duty, Moment, Phase, Timing
from intent.model.work import Work
from intent.record.turtle_text import iri_term, subject_block, text_term

_SHOWING = {Phase.BEFORE: "lt", Phase.DURING: "eq", Phase.AFTER: "gt"}
_FIRST, _LAST = "intent:firstDayOfShowing", "intent:lastDayOfShowing"
_COUNTED = {
    (Phase.BEFORE, Moment.START): ("lt", _FIRST),
    (Phase.BEFORE, Moment.END): ("lt", _FIRST),
    (Phase.DURING, Moment.START): ("gteq", _FIRST),
    (Phase.DURING, Moment.END): ("lteq", _LAST),
    (Phase.AFTER, Moment.START): ("gt", _LAST),
    (Phase.AFTER, Moment.END): ("gt", _LAST),
    (None, Moment.START): ("gteq", _FIRST),
    (None, Moment.END): ("gteq", _LAST),
}
"""From which day on, or up to which, the days of a term are counted (planning.due_days has the same days)."""


def duty_rule(work: Work, duty: Duty) -> Iterator[str]:
    """A duty with its action, whoever has to do it, and when."""
    action = rule_node(work, duty.identifier, "action")
    statements = [
        ("a", "odrl:Rule, odrl:Duty"),
        ("odrl:action", action),
        ("odrl:target", iri_term(work.iri)),
        ("dcterms:identifier", text_term(duty.identifier)),
        ("rdfs:comment", text_term(duty_text(duty))),
    ]
    if duty.on is not None:
        statements.append(("dcterms:issued", edtf_term(duty.on)))
    for predicate, identifier in (("odrl:assigner", duty.by), ("odrl:assignee", duty.person)):
        person = work.person(identifier)
        if person is not None:
            statements.append((predicate, iri_term(person.iri)))
            yield party(person)
    role = work.vocabulary.concepts.get(duty.role or "")
    if role is not None:
        statements.append(("odrl:assignee", iri_term(role.iri)))
        label = text_term(role.label, ENGLISH.tag)
        yield subject_block(iri_term(role.iri), [("a", "odrl:Party"), ("rdfs:label", label)])
    yield from constrained(work, statements, "odrl:constraint", list(_when(work, duty)), duty.identifier)
    yield subject_block(rule_node(work, duty.identifier), statements)
    done = [
        ("a", "odrl:Action"),
        ("rdfs:label", text_term(duty.what)),
        ("odrl:includedIn", "odrl:use"),
    ]
    yield from constrained(work, done, "odrl:refinement", list(_how(duty.timing)), duty.identifier)
    yield subject_block(action, done)


def _when(work: Work, duty: Duty) -> Iterator[Statements]:
    """When it falls, as the showing goes; with nothing said, during the showing."""
    phase, of = duty.timing.phase, duty.timing.of
    if of is not None:
        operator, day = _COUNTED[phase, of]
        yield compared("odrl:event", operator, day)
    if of is None or phase is Phase.DURING:
        yield compared("odrl:event", _SHOWING[phase or Phase.DURING], "intent:showing")
    yield from (conditional(work, condition) for condition in duty.conditions)
    if duty.until is not None:
        yield until(duty.until)


def _how(timing: Timing) -> Iterator[Statements]:
    """How often, and within how many days of the day from which they are counted."""
    if timing.every is not None:
        yield compared("odrl:timeInterval", "eq", _days(timing.every))
    if timing.within is not None:
        yield compared("odrl:elapsedTime", "lteq", _days(timing.within))


def _days(number: int) -> str:
    return f'"P{number}D"^^xsd:duration'
