"""Numbers that are told: known within bounds, with a unit; and numbers as somebody wrote them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor, log10

from intent.values.bounds import point
from intent.values.regions import Interval
from intent.values.units import in_unit

_MANY = 2
_WHOLE_DIGITS = 4
_GROUP, _TOGETHER = 3, 4
_APART = "\N{NARROW NO-BREAK SPACE}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A number known within bounds, with its unit, as people write it."""

    bounds: Interval
    unit: str = ""
    digits: int = 3
    """How many digits are told; a whole number that needs no more than four is told as it is."""


@dataclass(frozen=True, slots=True)
class Written:
    """Numbers as they were written, with decimal points: `13.5 in`, `(1.2 m, 0 m, 1 m)`."""

    text: str


def figure(held: Interval, unit: str = "", digits: int = 3) -> Figure:
    """The figure, in some unit, of a number as it is held."""
    return Figure(bounds=in_unit(held, unit), unit=unit, digits=digits)


def figure_of(number: int) -> Figure:
    """The figure of something that was counted."""
    return Figure(bounds=point(number))


def counted(figure: Figure) -> int:
    """The number by which a language chooses its plural: one only where just one is told, of a range its upper end."""
    if figure.bounds.high is None:
        return _MANY
    told = Fraction(rounded(figure.bounds.high, figure.digits))
    return int(told) if told.denominator == 1 else max(_MANY, ceil(told))


def rounded(number: Fraction, digits: int) -> str:
    """A number rounded to what its inputs bear, with a decimal point and without zeros that say nothing.

    What is measured or read off a plate bears three digits, seldom four: `385200` lx·h, but `123000` and not `122850`.
    A sum of whole watts is a whole number of few digits, and stays as it is. (Common practice, no source.)
    """
    if number == 0:
        return "0"
    places = digits - 1 - floor(log10(abs(number)))
    if (
        places < 0
        and number.denominator == 1
        and len(str(abs(number.numerator)).rstrip("0")) <= _WHOLE_DIGITS
    ):
        return str(number.numerator)
    written = f"{round(float(number), places):.{max(0, places)}f}"
    return written.rstrip("0").rstrip(".") if places > 0 else written


def grouped(number: str, mark: str) -> str:
    """Digits, with a decimal point, as they are set: 123 000, and four together: 1424.

    The groups of three, on either side of the decimal mark, stand apart by a narrow space that does not break
    (SI Brochure, 9th edition, 5.4.4).
    """
    sign, bare = ("−", number[1:]) if number.startswith("-") else ("", number)
    whole, _point, fraction = bare.partition(".")
    first = len(whole) % _GROUP
    groups = [whole[:first], *_threes(whole[first:])] if len(whole) > _TOGETHER else [whole]
    decimals = _threes(fraction) if len(fraction) > _TOGETHER else [fraction]
    told = _APART.join(group for group in groups if group)
    return f"{sign}{told}{mark}{_APART.join(decimals)}" if fraction else f"{sign}{told}"


def _threes(digits: str) -> list[str]:
    return [digits[start : start + _GROUP] for start in range(0, len(digits), _GROUP)]


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
