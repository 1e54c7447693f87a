"""Computed values in words, for the documented and proposed columns of a row."""

from __future__ import annotations

from decimal import Decimal, localcontext
from fractions import Fraction

from intent.language.figures import Written, decimal
from intent.language.message import Words, say
from intent.model.assertions import Aggregate
from intent.model.meaning import scale
from intent.model.phrasing import NOT_GIVEN, region_words
from intent.names import NO, PRESENCE, YES
from intent.values.regions import Region
from intent.values.sets import Labels, ValueSet
from intent.variance.aggregates import Amount
from intent.variance.case import Case
from intent.variance.topics import Topic

HOLDS = say("yes")
"""Of a relation and of what is the same or different for all: that it is so."""
_ANSWERS = {frozenset({YES}): HOLDS, frozenset({NO}): say("no")}
_PAIRWISE = {Aggregate.DIFFERENCE, Aggregate.DISTANCE}


def presence_words(case: Case, subject: str) -> tuple[Words, Words]:
    """Whether a part is documented as there, and proposed to be."""
    presence = case.vocabulary.characteristics[PRESENCE]
    return case.documented.words(subject, presence), case.proposed.words(subject, presence)


def amount_words(
    case: Case, topic: Topic, amount: Amount, documented: ValueSet | None
) -> tuple[Words, Words]:
    """An aggregate's documented and proposed values; of a pair, with its members."""
    assert topic.assertion is not None
    before = NOT_GIVEN if documented is None else _words(case, topic, documented)
    after = _words(case, topic, amount.value)
    if topic.assertion.aggregate in _PAIRWISE:
        after = say("{value} ({members})", value=after, members=amount.members)
    return before, after


def _words(case: Case, topic: Topic, values: ValueSet) -> Words:
    if isinstance(values, Labels):
        return _ANSWERS.get(values.names, say("cannot be told"))
    assert topic.assertion is not None
    compared = scale(topic.assertion.aggregate, topic.characteristic, case.vocabulary)
    if topic.assertion.aggregate is Aggregate.DISTANCE:
        return _distance(values)
    return region_words(values, compared, case.vocabulary)


def _distance(values: Region) -> Words:
    low, high = values.bounds.low or Fraction(0), values.bounds.high
    if high is None:
        return say("at least {least}", least=_metres(low)) if low else NOT_GIVEN
    if low == high:
        return say("{number}", number=_metres(low))
    return say("between {low} and {high}", low=Written(_root(low)), high=_metres(high))


def _metres(square: Fraction) -> Written:
    return Written(f"{_root(square)} m")


def _root(square: Fraction) -> str:
    """The length of a square, to the millimetre."""
    with localcontext() as context:
        context.prec = 30
        root = (Decimal(square.numerator) / Decimal(square.denominator)).sqrt()
        return decimal(Fraction(root.quantize(Decimal("0.001"))))
