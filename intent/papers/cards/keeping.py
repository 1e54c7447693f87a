"""What has to be kept to with a part during the showing: the requirements that speak of it, with their tolerance."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from intent.language.figures import Written
from intent.language.message import Words, joined, named, say
from intent.model.assertions import Aggregate, Assertion, Form, Measured
from intent.model.phrasing import characteristic_words, compared_words, scope_words
from intent.model.work import Instruction, Modality
from intent.names import PRESENCE
from intent.papers.cards.card import CardRow
from intent.papers.cards.forbidding import condition_words
from intent.papers.statements_told import characterised
from intent.variance.case import Case
from intent.vocabulary.terms import Vocabulary

_TOLD = {Aggregate.EACH, Aggregate.RELATION, Aggregate.DISTANCE, Aggregate.DIFFERENCE, Aggregate.SAME}
"""What concerns the part itself or how it stands to others; totals and numbers are nobody's to keep at one part."""


def keeping_rows(
    case: Case, speaking: Iterable[Instruction], set_aside: Collection[str]
) -> Iterator[CardRow]:
    """One row with all of them, each with the line that says so; nothing where nothing is required.

    What is ``set_aside`` for this part, by the identifiers of its lines, is not to be kept to here.
    """
    told = list(_kept(case, (line for line in speaking if line.identifier not in set_aside)))
    if told:
        yield CardRow(say("required"), (joined(told, "; "),))


def _kept(case: Case, speaking: Iterable[Instruction]) -> Iterator[Words]:
    for line in speaking:
        assertion = line.assertion
        if (
            line.modality is not Modality.REQUIRED
            or assertion.aggregate not in _TOLD
            or assertion.characteristic == PRESENCE
        ):
            continue
        conditions = [condition_words(case, one) for one in line.conditions]
        what = joined([_what(assertion, case.vocabulary), *conditions], ", ")
        yield say("{what} ({line})", what=what, line=line.identifier)


def _what(assertion: Assertion, vocabulary: Vocabulary) -> Words:
    """`rotation upside down ± 3 deg`; `B7 above B1`; `distance between Long Table at least 60 cm`."""
    scope = scope_words(assertion.scope, vocabulary)
    subject = characteristic_words(assertion, vocabulary)
    match assertion.aggregate:
        case Aggregate.EACH:
            return characterised(
                named(vocabulary.named(assertion.characteristic or "")), _value(assertion, vocabulary)
            )
        case Aggregate.RELATION:
            return joined([scope, subject])
        case Aggregate.SAME:
            return say("{characteristic} of {subject}", characteristic=subject, subject=scope)
    told = say("{characteristic} between {subject}", characteristic=subject, subject=scope)
    return joined([told, _value(assertion, vocabulary)])


def _value(assertion: Assertion, vocabulary: Vocabulary) -> Words:
    """The value, with the vocabulary's tolerance where it is a single one and none is stated."""
    expression = assertion.expression
    value = compared_words(expression, vocabulary)
    characteristic = vocabulary.characteristics.get(assertion.characteristic or "")
    if characteristic is None or expression.form is not Form.ONE_OF or len(expression.items) != 1:
        return value
    item, tolerance = expression.items[0], characteristic.tolerance or characteristic.tolerance_percent
    if not isinstance(item, Measured) or not characteristic.is_measured or not tolerance:
        return value
    if item.tolerance is not None or item.tolerance_percent is not None:
        return value
    return say(
        "{value} ± {tolerance}", value=value, tolerance=Written(_close(characteristic.tolerance_written))
    )


def _close(written: str) -> str:
    """`1°`; a degree alone stands close to its number (SI Brochure, 9th edition, 5.4.3)."""
    return written.replace(" °", "°") if written.endswith(" °") else written
