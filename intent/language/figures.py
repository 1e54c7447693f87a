"""Numbers that are told: known within bounds, with a unit; and numbers as somebody wrote them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor, log10

from intent.values.regions import Interval
from intent.values.units import in_unit

_MANY = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A number known within bounds, with its unit, as people write it."""

    bounds: Interval
    unit: str = ""
    digits: int = 3
    """How many digits are told; more of a whole number are kept."""
    is_grouped: bool = True
    """Whether its thousands are set apart. Not of what is measured off: no comma is set there, and four digits stand
    together (SI Brochure, 9th edition, 5.4.4)."""


@dataclass(frozen=True, slots=True)
class Written:
    """Numbers as they were written, with decimal points: `13.5 in`, `(1.2 m, 0 m, 1 m)`."""

    text: str


def figure(held: Interval, unit: str = "", digits: int = 3, *, is_grouped: bool = True) -> Figure:
    """The figure, in some unit, of a number as it is held."""
    return Figure(bounds=in_unit(held, unit), unit=unit, digits=digits, is_grouped=is_grouped)


def counted(figure: Figure) -> int:
    """The number by which a language chooses its plural: one only where just one is told, of a range its upper end."""
    if figure.bounds.high is None:
        return _MANY
    told = Fraction(rounded(figure.bounds.high, figure.digits))
    return int(told) if told.denominator == 1 else max(_MANY, ceil(told))


def rounded(number: Fraction, digits: int) -> str:
    """A number rounded to so many digits, with a decimal point and without zeros that say nothing."""
    if number == 0:
        return "0"
    places = max(0, digits - 1 - floor(log10(abs(number))))
    written = f"{float(number):.{places}f}"
    return written.rstrip("0").rstrip(".") if places else written


def decimal(number: Fraction) -> str:
    """An exact number as people write it, with a decimal point; a fraction where no decimal is exact."""
    places = 0
    while number * 10**places % 1 and places < 12:
        places += 1
    if number * 10**places % 1:
        return f"{number.numerator}/{number.denominator}"
    whole = abs(number.numerator * 10**places // number.denominator)
    digits = str(whole).rjust(places + 1, "0")
    sign = "-" if number < 0 else ""
    return sign + (f"{digits[:-places]}.{digits[-places:]}" if places else digits)


@dataclass(frozen=True, slots=True)
class Month:
    """A month of the year, 1 to 12, within a date."""

    number: int
