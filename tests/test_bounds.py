"""Reckoning with numbers known between two ends: no result leaves what is told, and no end is told too wide.

Each law is tried by brute force: on the numbers themselves that an interval with whole ends stands for, its ends among
them. An interval without an end stands for a very large number as well.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from itertools import product
from operator import add, mul, sub, truediv

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intent.values import bounds
from intent.values.bounds import NATURAL, ONE, ZERO, between, point
from intent.values.regions import EVERYTHING, Interval

VERY_LARGE = 10**9
WHOLE = st.integers(-6, 6)


@st.composite
def closed(draw: st.DrawFn, least: int = -6) -> Interval:
    low, high = sorted(draw(st.tuples(*[st.integers(least, 6)] * 2)))
    return between(low, high)


@st.composite
def intervals(draw: st.DrawFn) -> Interval:
    """Some have no end on one side or on both."""
    one, (is_low, is_high) = draw(closed()), draw(st.tuples(st.booleans(), st.booleans()))
    return Interval(one.low if is_low else None, one.high if is_high else None)


def numbers(one: Interval) -> list[Fraction]:
    """Numbers that an interval stands for: its ends, and the halves between them."""
    low = Fraction(-VERY_LARGE) if one.low is None else one.low
    high = Fraction(VERY_LARGE) if one.high is None else one.high
    halves = (Fraction(number, 2) for number in range(-14, 15))
    return sorted({low, high, *(half for half in halves if low <= half <= high)})


def is_in(number: Fraction, one: Interval) -> bool:
    return (one.low is None or one.low <= number) and (one.high is None or number <= one.high)


OPERATIONS: list[
    tuple[Callable[[Interval, Interval], Interval], Callable[[Fraction, Fraction], Fraction]]
] = [
    (bounds.plus, add),
    (bounds.minus, sub),
    (bounds.times, mul),
    (bounds.apart, lambda one, two: abs(one - two)),
    (bounds.smaller, min),
    (bounds.larger, max),
]
named = pytest.mark.parametrize(
    ("told", "reckoned"), OPERATIONS, ids=[told.__name__ for told, _ in OPERATIONS]
)


@named
@given(one=intervals(), two=intervals())
def test_no_result_lies_outside(
    told: Callable[[Interval, Interval], Interval],
    reckoned: Callable[[Fraction, Fraction], Fraction],
    one: Interval,
    two: Interval,
) -> None:
    found = told(one, two)
    assert all(is_in(reckoned(a, b), found) for a, b in product(numbers(one), numbers(two)))


@named
@given(one=closed(), two=closed())
def test_both_ends_are_reached(
    told: Callable[[Interval, Interval], Interval],
    reckoned: Callable[[Fraction, Fraction], Fraction],
    one: Interval,
    two: Interval,
) -> None:
    every = [reckoned(a, b) for a, b in product(numbers(one), numbers(two))]
    assert told(one, two) == Interval(min(every), max(every))


@given(one=intervals(), two=closed(least=0))
def test_no_quotient_lies_outside(one: Interval, two: Interval) -> None:
    found = bounds.over(one, two)
    assert all(is_in(a / b, found) for a, b in product(numbers(one), numbers(two)) if b)


@given(one=closed(), two=closed(least=1))
def test_both_ends_of_a_quotient_are_reached(one: Interval, two: Interval) -> None:
    every = [truediv(a, b) for a, b in product(numbers(one), numbers(two))]
    assert bounds.over(one, two) == Interval(min(every), max(every))


def test_what_is_divided_by_something_without_end() -> None:
    """A length shared among at least two: from nothing to a half of it."""
    assert bounds.over(point(6), Interval(Fraction(2), None)) == between(0, 3)
    assert bounds.over(point(6), between(0, 2)) == Interval(Fraction(3), None)
    assert bounds.over(point(6), ZERO) == EVERYTHING
    assert bounds.over(point(6), between(-1, 2)) == EVERYTHING
    assert bounds.over(point(6), Interval(None, Fraction(2))) == EVERYTHING


def test_products_of_what_is_not_less_than_nothing() -> None:
    """Nothing times anything, however great, is nothing; a number of either sign without end leaves all open."""
    assert bounds.times(NATURAL, ZERO) == ZERO
    assert bounds.times(ZERO, NATURAL) == ZERO
    assert bounds.times(between(2, 3), Interval(Fraction(4), None)) == Interval(Fraction(8), None)
    assert bounds.times(between(-1, 3), NATURAL) == EVERYTHING


@given(one=intervals(), factor=st.integers(1, 9))
def test_in_another_unit(one: Interval, factor: int) -> None:
    assert bounds.scaled(one, factor) == Interval(
        None if one.low is None else one.low * factor, None if one.high is None else one.high * factor
    )


@given(one=closed())
def test_squares_and_roots(one: Interval) -> None:
    squares = [number**2 for number in numbers(one)]
    assert bounds.square(one) == Interval(
        Fraction(0) if is_in(Fraction(0), one) else min(squares), max(squares)
    )
    assert bounds.root(bounds.square(one)) == bounds.magnitude(one)


def test_a_root_that_is_no_fraction_has_twelve_decimals() -> None:
    assert bounds.root(point(2)) == point(Fraction(1414213562373, 10**12))
    assert bounds.root(point(Fraction(1, 3))) == point(Fraction(577350269189, 10**12))
    assert bounds.root(between(-4, 9)) == between(0, 3)
    assert bounds.root(Interval(None, None)) == NATURAL


@given(one=intervals())
def test_how_far_from_nothing(one: Interval) -> None:
    found = bounds.magnitude(one)
    assert all(is_in(abs(number), found) for number in numbers(one))
    assert found.low == min(map(abs, numbers(one)))


@given(one=intervals())
def test_what_is_known_exactly(one: Interval) -> None:
    stands_for = numbers(one)
    assert bounds.is_known(one) == (len(stands_for) == 1)
    assert bounds.known(one) == (stands_for[0] if len(stands_for) == 1 else None)


@given(several=st.lists(intervals(), min_size=1, max_size=4))
def test_one_of_several(several: list[Interval]) -> None:
    found = bounds.hull(several)
    every = sorted(number for one in several for number in numbers(one))
    assert all(is_in(number, found) for number in every)
    assert (found.low, found.high) == (
        None if any(one.low is None for one in several) else every[0],
        None if any(one.high is None for one in several) else every[-1],
    )


@given(several=st.lists(closed(), max_size=4))
def test_totals(several: list[Interval]) -> None:
    assert bounds.total(several) == Interval(
        sum((numbers(one)[0] for one in several), Fraction(0)),
        sum((numbers(one)[-1] for one in several), Fraction(0)),
    )


@given(one=intervals())
def test_what_is_not_less_than_nothing(one: Interval) -> None:
    found, zero = bounds.natural(one), Fraction(0)
    low = zero if one.low is None else max(one.low, zero)
    assert found == Interval(low, None if one.high is None else max(one.high, zero))
    assert Interval(zero, None) == NATURAL


@given(one=intervals(), limit=intervals())
def test_surely_above_and_surely_within(one: Interval, limit: Interval) -> None:
    pairs = list(product(numbers(one), numbers(limit)))
    assert bounds.surely_above(one, limit) == all(a > b for a, b in pairs)
    assert bounds.surely_within(one, limit) == all(a <= b for a, b in pairs)


def test_a_change_counts_from_the_least_on() -> None:
    assert bounds.differs_by(point(1), point(3), Fraction(2))
    assert bounds.differs_by(point(3), point(1), Fraction(2))
    assert not bounds.differs_by(point(1), between(1, 1), Fraction(1))
    assert not bounds.differs_by(point(2), point(3), Fraction(2))
    assert bounds.differs_by(point(2), between(2, 3), Fraction(9))
    assert not bounds.differs_by(between(2, 3), between(2, 3), Fraction(0))
    assert not bounds.differs_by(NATURAL, NATURAL, Fraction(0))


def test_a_rising_formula_is_asked_at_both_ends() -> None:
    assert bounds.rising(lambda number: number + 1, between(1, 3)) == between(2, 4)
    assert bounds.rising(lambda number: number + 1, NATURAL) == Interval(ONE.low, None)
