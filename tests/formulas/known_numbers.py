"""Numbers that are known exactly, put into a formula and taken out of it."""

from __future__ import annotations

from fractions import Fraction

from intent.values.bounds import known, point
from intent.values.regions import Interval


def exact(value: str | float) -> Interval:
    """A number within bounds that leave nothing open."""
    return point(Fraction(value))


def number(bounds: Interval) -> float:
    """The one number that there can be."""
    found = known(bounds)
    assert found is not None
    return float(found)
