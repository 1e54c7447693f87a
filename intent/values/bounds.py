"""Arithmetic with numbers that are known only within bounds.

Every result holds whatever the true numbers may give: what is less well known never gives a narrower answer.
Ends are closed. Reference for the rules: IEEE 1788, interval arithmetic for real numbers (from memory).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction
from math import isqrt

from intent.values.regions import EVERYTHING, Interval

NATURAL = Interval(Fraction(0), None)
"""What is known of a length, a weight or a power of which nothing is said."""
_PLACES = 10**12
"""A root that is no fraction is cut off here: far beyond what anybody measures, and never in the wrong order."""

Number = int | Fraction


def point(number: Number) -> Interval:
    exact = Fraction(number)
    return Interval(exact, exact)


ZERO, ONE = point(0), point(1)


def between(low: Number, high: Number) -> Interval:
    return Interval(Fraction(low), Fraction(high))


def is_known(bounds: Interval) -> bool:
    """Whether a number is known exactly."""
    return bounds.low is not None and bounds.low == bounds.high


def known(bounds: Interval) -> Fraction | None:
    """The number, where it is known exactly."""
    return bounds.low if is_known(bounds) else None


def plus(one: Interval, two: Interval) -> Interval:
    return Interval(_sum(one.low, two.low), _sum(one.high, two.high))


def total(summands: Iterable[Interval]) -> Interval:
    found = ZERO
    for summand in summands:
        found = plus(found, summand)
    return found


def minus(one: Interval, two: Interval) -> Interval:
    return plus(one, negative(two))


def negative(one: Interval) -> Interval:
    return Interval(
        None if one.high is None else -one.high,
        None if one.low is None else -one.low,
    )


def times(one: Interval, two: Interval) -> Interval:
    """The product; of a number of either sign without end nothing is known but that."""
    if _is_natural(one) and _is_natural(two):
        return Interval(_product(one.low, two.low), _product_above(one.high, two.high))
    corners = [_product(a, b) for a in (one.low, one.high) for b in (two.low, two.high)]
    ends = [corner for corner in corners if corner is not None]
    return Interval(min(ends), max(ends)) if len(ends) == len(corners) else EVERYTHING


def over(one: Interval, two: Interval) -> Interval:
    """The quotient of a number by one that is not less than nothing; without end where that may be nothing."""
    if two.low is None or two.low < 0:
        return EVERYTHING
    above = None if two.low == 0 else 1 / two.low
    below = Fraction(0) if two.high is None else 1 / two.high if two.high else None
    return EVERYTHING if below is None else times(one, Interval(below, above))


def scaled(one: Interval, factor: Number) -> Interval:
    """A number in another unit, of which ``factor`` make one of this; a factor is above nothing."""
    low, high = (None if end is None else end * factor for end in (one.low, one.high))
    return Interval(low, high)


def square(one: Interval) -> Interval:
    size = magnitude(one)
    return times(size, size)


def magnitude(one: Interval) -> Interval:
    """How far from nothing, whatever the sign."""
    if one.low is not None and one.low >= 0:
        return one
    if one.high is not None and one.high <= 0:
        return negative(one)
    furthest = None if one.low is None or one.high is None else max(-one.low, one.high)
    return Interval(Fraction(0), furthest)


def apart(one: Interval, two: Interval) -> Interval:
    """How far apart two numbers lie."""
    return magnitude(minus(one, two))


def root(one: Interval) -> Interval:
    """The square root, exact where it is a fraction, else cut off after twelve decimals."""
    low, high = (None if end is None else _root(max(end, Fraction(0))) for end in (one.low, one.high))
    return Interval(low or Fraction(0), high)


def smaller(one: Interval, two: Interval) -> Interval:
    """The smaller of two numbers."""
    lows = None if one.low is None or two.low is None else min(one.low, two.low)
    highs = [high for high in (one.high, two.high) if high is not None]
    return Interval(lows, min(highs) if highs else None)


def larger(one: Interval, two: Interval) -> Interval:
    """The larger of two numbers."""
    return negative(smaller(negative(one), negative(two)))


def natural(one: Interval) -> Interval:
    """What is known of a length, a weight or a life: it is not less than nothing."""
    return larger(one, ZERO)


def hull(alternatives: Iterable[Interval]) -> Interval:
    """What is known of a number that is one of several, nobody knows which; of at least one."""
    every = list(alternatives)
    lows, highs = [one.low for one in every], [one.high for one in every]
    return Interval(
        None if None in lows else min(low for low in lows if low is not None),
        None if None in highs else max(high for high in highs if high is not None),
    )


def rising(formula: Callable[[float], float], one: Interval) -> Interval:
    """A formula that grows with its number, at both ends."""
    low, high = (None if end is None else Fraction(formula(float(end))) for end in (one.low, one.high))
    return Interval(low, high)


def surely_above(one: Interval, limit: Interval) -> bool:
    """Whether one number is above another whatever the two may be."""
    return one.low is not None and limit.high is not None and one.low > limit.high


def surely_within(one: Interval, limit: Interval) -> bool:
    """Whether one number is at most another whatever the two may be."""
    return one.high is not None and limit.low is not None and one.high <= limit.low


def differs_by(before: Interval, after: Interval, least: Fraction) -> bool:
    """Whether a number changes by at least so much; of numbers not known exactly, whether their bounds differ."""
    one, two = known(before), known(after)
    return before != after if one is None or two is None else abs(two - one) >= least


def _sum(one: Fraction | None, two: Fraction | None) -> Fraction | None:
    return None if one is None or two is None else one + two


def _product(one: Fraction | None, two: Fraction | None) -> Fraction | None:
    return None if one is None or two is None else one * two


def _product_above(one: Fraction | None, two: Fraction | None) -> Fraction | None:
    """The upper end of a product of naturals: nothing times anything, however great, is nothing."""
    return Fraction(0) if 0 in (one, two) else _product(one, two)


def _is_natural(one: Interval) -> bool:
    return one.low is not None and one.low >= 0


def _root(number: Fraction) -> Fraction:
    over_whole, under_whole = isqrt(number.numerator), isqrt(number.denominator)
    if over_whole**2 == number.numerator and under_whole**2 == number.denominator:
        return Fraction(over_whole, under_whole)
    return Fraction(isqrt(number.numerator * _PLACES**2 // number.denominator), _PLACES)
