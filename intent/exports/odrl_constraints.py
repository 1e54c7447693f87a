"""Constraints of ODRL: what is compared with what, as statements of one node each.

Source: W3C ODRL Information Model 2.2 (15 February 2018), section 2.5. Kept on a rule, a constraint says when the rule
applies; kept on an action as its refinement, how the action is done.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from intent.language.locale import ENGLISH
from intent.model.assertions import Aggregate, Assertion, Condition, Expression, Form
from intent.model.instruction_text import assertion_text
from intent.model.meaning import admitted_values, every_value, is_relative, scale
from intent.model.phrasing import characteristic_words
from intent.model.work import Work
from intent.names import EDTF, is_iri, local_iri
from intent.record.turtle_text import Statement, decimal_term, iri_term, text_term
from intent.values.dates import DaySpan
from intent.values.regions import Box, Interval
from intent.values.sets import Labels, ValueSet

Statements = list[Statement]
ANYTHING = "intent:anything"
"""Stands for every value, where an instruction leaves all of them open."""


def compared(left: str, operator: str, right: str, *further: Statement) -> Statements:
    """One constraint; all three as terms of Turtle."""
    head = [("a", "odrl:Constraint"), ("odrl:leftOperand", left)]
    return [*head, ("odrl:operator", f"odrl:{operator}"), ("odrl:rightOperand", right), *further]


def operand_name(work: Work, assertion: Assertion) -> str:
    """What is compared, in words: `technology`, `total power`, `below M1`."""
    return ENGLISH.say(characteristic_words(assertion, work.vocabulary))


def operand_of(work: Work, assertion: Assertion) -> str:
    """What is compared: a characteristic of the vocabulary, or a term of this policy for what several have together."""
    if assertion.aggregate is Aggregate.EACH and assertion.characteristic:
        return iri_term(assertion.characteristic)
    name = operand_name(work, assertion).replace(" ", "-")
    return iri_term(str(local_iri(work.iri, "odrl", "operand", name)))


def asked_of_value(work: Work, assertion: Assertion) -> Iterator[Statements]:
    """What the value is compared with: names, bounds with units, or, where that cannot be said, words."""
    vocabulary, left = work.vocabulary, operand_of(work, assertion)
    if assertion.aggregate in {Aggregate.SAME, Aggregate.DIFFERENT, Aggregate.RELATION}:
        yield compared(left, "eq", "true")
        return
    if is_relative(assertion.expression):
        yield compared(left, "eq", text_term(assertion.expression.written))
        return
    kind = scale(
        assertion.aggregate,
        vocabulary.characteristics.get(assertion.characteristic or ""),
        vocabulary,
    )
    unit = vocabulary.reference_unit(kind.quantity_kind)
    measured = [("odrl:unit", iri_term(unit.iri))] if unit else []
    admitted = admitted_values(assertion.expression, kind, vocabulary)
    if admitted is None or admitted == every_value(kind, vocabulary):
        yield compared(left, "isAnyOf", ANYTHING)
        return
    for operator, right in _operands(admitted, assertion.expression):
        yield compared(left, operator, right, *measured)


def _operands(admitted: ValueSet, expression: Expression) -> Iterator[tuple[str, str]]:
    if isinstance(admitted, Labels):
        names = sorted(iri_term(name) if is_iri(name) else text_term(name) for name in admitted.names)
        yield ("isNoneOf" if admitted.all_but else "isAnyOf"), ", ".join(names)
    elif len(admitted.boxes) == 1 and len(admitted.boxes[0]) == 1:
        yield from _bounds(_as_written(admitted.boxes[0][0], expression))
    else:
        yield "isAnyOf", ", ".join(text_term(_box_words(box)) for box in admitted.boxes)


def _as_written(interval: Interval, expression: Expression) -> Interval:
    """The ends that somebody wrote: `at most 900 W` has no lower one, though no power is less than nothing."""
    has_low, has_high = expression.form is not Form.AT_MOST, expression.form is not Form.AT_LEAST
    if expression.negated:
        has_low, has_high = has_high, has_low
    return replace(interval, low=interval.low if has_low else None, high=interval.high if has_high else None)


def _bounds(interval: Interval) -> Iterator[tuple[str, str]]:
    if interval.low is not None and interval.low == interval.high:
        yield "eq", decimal_term(interval.low)
        return
    if interval.low is not None:
        yield ("gt" if interval.low_strict else "gteq"), decimal_term(interval.low)
    if interval.high is not None:
        yield ("lt" if interval.high_strict else "lteq"), decimal_term(interval.high)


def _box_words(box: Box) -> str:
    """Several stretches, or several axes, as one text: `0.1/0.2`, an axis after the other."""
    return "; ".join(f"{_end(interval.low)}/{_end(interval.high)}" for interval in box)


def _end(end: Fraction | None) -> str:
    return ".." if end is None else decimal_term(end)


def conditional(work: Work, condition: Condition) -> Statements:
    """A fact to be attested, or an assertion about the installation, in words; not equal where it must fail."""
    operator = "neq" if condition.unless else "eq"
    if condition.fact is not None:
        return attested(condition.fact, operator)
    assert condition.assertion is not None  # a condition is a fact or an assertion
    words = assertion_text(condition.assertion, work.vocabulary)
    return compared("intent:holdsOfTheInstallation", operator, text_term(words))


def attested(fact: str, operator: str = "eq") -> Statements:
    """That somebody attests a fact."""
    return compared("intent:attested", operator, text_term(fact))


def until(day: DaySpan) -> Statements:
    """The last day of an end. ODRL's date is a day, so that an end which is not known to the day stays as written.

    Source: ODRL Vocabulary & Expression 2.2, `odrl:dateTime`: the right operand is an `xsd:date` or `xsd:dateTime`.
    """
    if day.has_uncertain_end:
        return compared("intent:lastDayOfRule", "lteq", edtf_term(day))
    return compared("odrl:dateTime", "lteq", f'"{day.last.isoformat()}"^^xsd:date')


def edtf_term(day: DaySpan) -> str:
    """A date as it was written, in the Extended Date/Time Format."""
    return f"{text_term(str(day))}^^{iri_term(str(EDTF))}"
