"""Values, assertions and clauses as triples of the record."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from rdflib import RDF, Literal, URIRef
from rdflib.term import Node

from intent.dossier.draft import Draft
from intent.dossier.duty_line import DutyLine
from intent.dossier.interpret import Line
from intent.dossier.register import Register
from intent.model.assertions import (
    Aggregate,
    Assertion,
    Condition,
    Dated,
    Expression,
    Form,
    Item,
    Measured,
    Named,
    Relative,
    Scope,
    Text,
)
from intent.model.duty import Timing
from intent.names import EDTF, INTENT, QUDT
from intent.values.dates import DaySpan
from intent.vocabulary.named_term import local_name
from intent.vocabulary.terms import Characteristic
from intent.vocabulary.unit_of_measure import Unit

_AXES = (INTENT.x, INTENT.y, INTENT.z)


def inscribe_statement(
    draft: Draft,
    subject: URIRef,
    local: tuple[str, ...],
    characteristic: Characteristic,
    expression: Expression,
) -> URIRef:
    """State a characteristic of a subject."""
    node = draft.node(*local, local_name(characteristic.iri))
    draft.add(subject, INTENT.states, node)
    draft.add(node, RDF.type, INTENT.Statement)
    draft.add(node, INTENT.characteristic, URIRef(characteristic.iri))
    inscribe_expression(draft, node, expression)
    return node


def inscribe_expression(draft: Draft, node: URIRef, expression: Expression) -> None:
    draft.add(node, INTENT.form, INTENT[expression.form])
    if expression.negated:
        draft.add(node, INTENT.negated, Literal(True))
    if expression.form is Form.BETWEEN:
        low, high = expression.items
        draft.add(node, INTENT.low, _item(draft, low))
        draft.add(node, INTENT.high, _item(draft, high))
        return
    for item in expression.items:
        draft.add(node, INTENT.value, _item(draft, item))


def _item(draft: Draft, item: Item) -> Node:
    """The node of a value; equal values, written alike, share one."""
    if isinstance(item, Named):
        return URIRef(item.concept)
    if isinstance(item, Text):
        return Literal(item.text)
    if isinstance(item, Dated):
        return edtf(item.span)
    node = draft.node("value", _digest(item))
    if isinstance(item, Relative):
        draft.add(node, RDF.type, INTENT.Share)
        draft.add(node, INTENT.percentOfDocumented, number(item.percent))
    else:
        _measured(draft, node, item)
    if item.tolerance is not None:
        unit = draft.vocabulary.units.get(item.unit or "") if isinstance(item, Measured) else None
        draft.add(
            node,
            INTENT.plusMinus,
            number(unit.length_of_reference(item.tolerance) if unit else item.tolerance),
        )
    if item.tolerance_percent is not None:
        draft.add(node, INTENT.plusMinusPercent, number(item.tolerance_percent))
    return node


def _digest(item: Measured | Relative) -> str:
    """A short name that only equal values share."""
    if isinstance(item, Relative):
        said = f"{item.percent} {item.tolerance} {item.tolerance_percent}"
    else:
        said = f"{item.written} {item.numbers} {item.unit} {item.tolerance} {item.tolerance_percent}"
    return hashlib.sha256(said.encode()).hexdigest()[:16]


def _measured(draft: Draft, node: URIRef, item: Measured) -> None:
    unit = draft.vocabulary.units.get(item.unit or "")
    draft.add(node, RDF.type, QUDT.QuantityValue if unit else INTENT.Number)
    draft.add(node, INTENT.written, Literal(item.written))
    if unit:
        draft.add(node, QUDT.hasUnit, URIRef(unit.iri))
    if len(item.numbers) == 1:
        draft.add(node, QUDT.numericValue, number(_in_unit(item.numbers[0], unit)))
        return
    for axis, value in zip(_AXES, item.numbers, strict=False):
        draft.add(node, axis, number(_in_unit(value, unit)))


def _in_unit(value: Fraction, unit: Unit | None) -> Fraction:
    return unit.of_reference(value) if unit else value


def number(value: Fraction) -> Literal:
    """An exact number: a decimal where one is exact, else numerator and denominator in a string."""
    denominator = value.denominator
    for prime in (2, 5):
        while denominator % prime == 0:
            denominator //= prime
    if denominator != 1:
        return Literal(f"{value.numerator}/{value.denominator}", datatype=INTENT.fraction)
    places = max(0, _places(value.denominator))
    scaled = value * 10**places
    return Literal(Decimal(scaled.numerator).scaleb(-places))


def _places(denominator: int) -> int:
    places = 0
    while 10**places % denominator:
        places += 1
    return places


def edtf(span: DaySpan) -> Literal:
    return Literal(span.written, datatype=EDTF)


def inscribe_line(draft: Draft, node: URIRef, line: Line, register: Register) -> None:
    """An instruction's assertion and clauses."""
    inscribe_assertion(draft, node, line.assertion, register)
    _conditions(draft, node, line.conditions, register)
    for person in line.consents:
        draft.add(node, INTENT.withConsentOf, URIRef(register.find(person).iri))
    if line.until is not None:
        draft.add(node, INTENT.until, edtf(line.until))
    if line.choice is not None:
        draft.add(node, INTENT.choice, Literal(line.choice))


def inscribe_duty(draft: Draft, node: URIRef, line: DutyLine, register: Register) -> None:
    """What is to be done, by whom, when, and on what conditions."""
    draft.say(node, INTENT.toBeDone, line.what)
    if line.person is not None:
        draft.add(node, INTENT.dutyOf, URIRef(register.find(line.person).iri))
    if line.role is not None:
        draft.add(node, INTENT.dutyOf, URIRef(line.role))
    _timing(draft, node, line.timing)
    _conditions(draft, node, line.conditions, register)
    if line.until is not None:
        draft.add(node, INTENT.until, edtf(line.until))


def _timing(draft: Draft, node: URIRef, timing: Timing) -> None:
    if timing.phase is not None:
        draft.add(node, INTENT.inPhase, INTENT[f"{timing.phase}-the-showing"])
    if timing.every is not None:
        draft.add(node, INTENT.everyDays, Literal(timing.every))
    if timing.within is not None and timing.of is not None:
        draft.add(node, INTENT.withinDays, Literal(timing.within))
        draft.add(node, INTENT.countedFrom, INTENT[f"the-{timing.of}"])


def _conditions(draft: Draft, node: URIRef, conditions: Sequence[Condition], register: Register) -> None:
    for place, condition in enumerate(conditions, start=1):
        inner = URIRef(f"{node}.condition-{place}")
        draft.add(node, INTENT.condition, inner)
        _condition(draft, inner, condition, register)


def _condition(draft: Draft, node: URIRef, condition: Condition, register: Register) -> None:
    draft.add(node, RDF.type, INTENT.Condition)
    if condition.unless:
        draft.add(node, INTENT.unless, Literal(True))
    draft.say(node, INTENT.fact, condition.fact or "")
    if condition.assertion is not None:
        inscribe_assertion(draft, node, condition.assertion, register)


def inscribe_assertion(draft: Draft, node: URIRef, assertion: Assertion, register: Register) -> None:
    draft.add(node, INTENT.aggregate, INTENT[assertion.aggregate])
    _scope(draft, node, assertion.scope, register)
    if assertion.characteristic:
        draft.add(node, INTENT.characteristic, URIRef(assertion.characteristic))
    if assertion.relation is not None and assertion.other is not None:
        draft.add(node, INTENT.standsTo, INTENT[assertion.relation.replace(" ", "-")])
        draft.add(node, INTENT.relatedTo, URIRef(register.find(assertion.other).iri))
    elif assertion.aggregate not in {Aggregate.SAME, Aggregate.DIFFERENT}:
        inscribe_expression(draft, node, assertion.expression)


def _scope(draft: Draft, node: URIRef, scope: Scope, register: Register) -> None:
    draft.add(node, INTENT.scope, INTENT[scope.kind])
    for name in scope.names:
        draft.add(node, INTENT.about, URIRef(register.find(name).iri))
    if scope.part_kind:
        draft.add(node, INTENT.everyKind, URIRef(scope.part_kind))
    for name in scope.excepted:
        draft.add(node, INTENT["except"], URIRef(register.find(name).iri))
