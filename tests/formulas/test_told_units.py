"""The units in which figures are told, against the definitions of an independent table; and how figures are counted."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest

from intent.language.figures import counted, figure
from intent.language.locale import ENGLISH
from intent.language.message import say
from intent.values.bounds import apart, between, differs_by, point
from intent.values.regions import EVERYTHING, Interval
from intent.values.units import OF_ONE, in_unit

PINT = {
    "%": ("percent", "dimensionless"),
    "% of white": ("percent", "dimensionless"),
    "mm": ("millimetre", "metre"),
    "cm": ("centimetre", "metre"),
    "in": ("inch", "metre"),
    "cm²": ("centimetre ** 2", "metre ** 2"),
    "mA": ("milliampere", "ampere"),
    "kPa": ("kilopascal", "pascal"),
    "kN": ("kilonewton", "newton"),
    "MHz": ("megahertz", "hertz"),
    "ms": ("millisecond", "second"),
    "′": ("arcminute", "degree"),
    "h": ("hour", "second"),
    "days": ("day", "second"),
}
"""What pint calls each unit, and the unit in which values are held."""


def test_every_unit_is_compared() -> None:
    assert set(PINT) == set(OF_ONE)


@pytest.mark.parametrize("unit", sorted(PINT))
def test_units_are_pints(unit: str) -> None:
    written, held = PINT[unit]
    registry: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
    one = registry.Quantity(Fraction(1), written).to(held).magnitude
    assert in_unit(point(one), unit) == point(1)


def test_other_units_are_told_as_they_are_held() -> None:
    assert in_unit(between(1, 2), "W") == between(1, 2)


@pytest.mark.parametrize(
    ("held", "unit", "number", "told"),
    [
        (point(1), "", 1, "1"),
        (point(Fraction(9999, 10000)), "", 1, "1"),
        (point(Fraction(3, 2)), "", 2, "1.5"),
        (point(Fraction(1, 2)), "", 2, "0.5"),
        (point(0), "", 0, "0"),
        (point(Fraction(1, 100)), "cm", 1, "1 cm"),
        (between(0, 1), "", 1, "at most 1"),
        (between(1, 5), "", 5, "between 1 and 5"),
        (Interval(Fraction(1), None), "", 2, "at least 1"),
    ],
)
def test_a_plural_follows_the_figure_that_is_told(held: Interval, unit: str, number: int, told: str) -> None:
    """Of what is not one, a language with two forms takes the second (Unicode CLDR, plural rules of English)."""
    found = figure(held, unit)
    assert counted(found) == number
    assert ENGLISH.say(say("{figure}", figure=found)) == told


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        (point(5), point(2), point(3)),
        (point(2), point(5), point(3)),
        (between(0, 4), point(1), between(0, 3)),
        (between(0, 1), between(3, 7), between(2, 7)),
        (Interval(Fraction(6), None), point(2), Interval(Fraction(4), None)),
        (Interval(None, Fraction(1)), point(2), Interval(Fraction(1), None)),
        (EVERYTHING, point(2), Interval(Fraction(0), None)),
    ],
)
def test_how_far_two_numbers_lie_apart(one: Interval, other: Interval, expected: Interval) -> None:
    # arithmetic
    assert apart(one, other) == expected == apart(other, one)


def test_a_change_is_told_from_the_least_that_counts() -> None:
    least = Fraction(1, 10)
    assert differs_by(point(1), point(Fraction(11, 10)), least)
    assert differs_by(point(Fraction(11, 10)), point(1), least)
    assert not differs_by(point(1), point(Fraction(109, 100)), least)
    assert differs_by(between(0, 1), point(1), least)
    assert not differs_by(between(0, 1), between(0, 1), least)
