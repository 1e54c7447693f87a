"""Computed values in words, for the documented and proposed columns of a row."""

from __future__ import annotations

from decimal import Decimal, localcontext
from fractions import Fraction

from intent.assertions import Aggregate
from intent.meaning import scale
from intent.names import NO, YES
from intent.phrasing import NOT_GIVEN, decimal, listed, region_words
from intent.regions import Region
from intent.values import Labels, ValueSet
from intent.variance.aggregates import Amount
from intent.variance.case import Case
from intent.variance.topics import Topic

_PAIRWISE = {Aggregate.DIFFERENCE, Aggregate.DISTANCE}


def presence_words(case: Case, subject: str) -> tuple[str, str]:
    """Whether a part is documented as there, and proposed to be."""
    return tuple(
        "present" if subject in state.present else "absent" for state in (case.documented, case.proposed)
    )  # type: ignore[return-value]


def amount_words(case: Case, topic: Topic, amount: Amount, documented: ValueSet | None) -> tuple[str, str]:
    """An aggregate's documented and proposed values; of a pair, with its members."""
    assert topic.assertion is not None
    of_pair = f" ({listed(amount.members)})" if topic.assertion.aggregate in _PAIRWISE else ""
    before = NOT_GIVEN if documented is None else _words(case, topic, documented)
    return before, _words(case, topic, amount.value) + of_pair


def _words(case: Case, topic: Topic, values: ValueSet) -> str:
    if isinstance(values, Labels):
        return {frozenset({YES}): "yes", frozenset({NO}): "no"}.get(values.names, "cannot be told")
    assert topic.assertion is not None
    compared = scale(topic.assertion.aggregate, topic.characteristic, case.vocabulary)
    if topic.assertion.aggregate is Aggregate.DISTANCE:
        return _distance(values)
    return region_words(values, compared, case.vocabulary)


def _distance(values: Region) -> str:
    low, high = values.bounds.low or Fraction(0), values.bounds.high
    if high is None:
        return NOT_GIVEN if not low else f"at least {_root(low)} m"
    return f"{_root(low)} m" if low == high else f"between {_root(low)} and {_root(high)} m"


def _root(square: Fraction) -> str:
    """The length of a square, to the millimetre."""
    with localcontext() as context:
        context.prec = 30
        root = (Decimal(square.numerator) / Decimal(square.denominator)).sqrt()
        return decimal(Fraction(root.quantize(Decimal("0.001"))))
