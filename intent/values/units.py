"""The units in which figures are told, where those are not the units in which values are held.

Values are held in metres, kilograms, seconds, watts, lux … (the reference units of the vocabulary), and shares as such.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from intent.values.bounds import scaled
from intent.values.regions import Interval

SECONDS_A_MINUTE, SECONDS_AN_HOUR, SECONDS_A_DAY = 60, 3600, 86400

OF_ONE: Mapping[str, Fraction] = {
    "%": Fraction(100),
    "% of white": Fraction(100),
    "mm": Fraction(1000),
    "cm": Fraction(100),
    "in": 1 / Fraction("0.0254"),
    "cm²": Fraction(100**2),
    "mA": Fraction(1000),
    "kPa": Fraction(1, 1000),
    "kN": Fraction(1, 1000),
    "MHz": Fraction(1, 10**6),
    "ms": Fraction(1000),
    "h": Fraction(1, SECONDS_AN_HOUR),
    "′": Fraction(60),
    "days": Fraction(1, SECONDS_A_DAY),
}
"""How many of a unit make one of the unit in which such values are held; of any unit that is not here, one."""


def in_unit(held: Interval, unit: str) -> Interval:
    """A number in the unit in which it is told."""
    return scaled(held, OF_ONE.get(unit, Fraction(1)))
