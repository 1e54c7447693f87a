"""Sentences with places for names and figures, so that they can be said in another language too.

The English pattern is the sentence's name: a catalogue gives another pattern for it, with the same places.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import floor, log10

from intent.regions import Interval


@dataclass(frozen=True, slots=True)
class Figure:
    """A number known within bounds, with its unit, as people write it."""

    bounds: Interval
    unit: str = ""
    digits: int = 3
    """How many digits are told; more of a whole number are kept."""


@dataclass(frozen=True, slots=True)
class Term:
    """A name in the vocabulary, by IRI: said with its label in the reader's language."""

    iri: str


@dataclass(frozen=True, slots=True)
class Saying:
    """A pattern (`the picture is {share} of what it was`) and what stands in its places."""

    pattern: str
    places: tuple[tuple[str, object], ...] = ()
    """Texts, figures, terms, sayings, or a tuple of any of these, which is listed."""

    def __str__(self) -> str:
        return said(self, ENGLISH)


def say(pattern: str, **places: object) -> Saying:
    """A saying; its places by name."""
    return Saying(pattern, tuple(places.items()))


def figure(bounds: Interval, unit: str = "", factor: Fraction | int = 1, digits: int = 3) -> Figure:
    """A figure in another unit than the reference unit: ``factor`` of it make one of that."""
    low, high = (None if end is None else end * factor for end in (bounds.low, bounds.high))
    return Figure(Interval(low, high), unit, digits)


@dataclass(frozen=True, slots=True)
class Tongue:
    """How a language says patterns, terms and numbers."""

    pattern: Callable[[str], str] = str
    """The pattern of this language for the English one."""
    term: Callable[[str], str] = lambda iri: iri.rsplit("/", 1)[-1].replace("-", " ")
    decimal_mark: str = "."


ENGLISH = Tongue()


def said(saying: Saying, tongue: Tongue) -> str:
    """A saying in a language."""
    places = {name: _placed(value, tongue) for name, value in saying.places}
    return tongue.pattern(saying.pattern).format_map(places)


def _placed(value: object, tongue: Tongue) -> str:
    match value:
        case Saying():
            return said(value, tongue)
        case Figure():
            return figure_words(value, tongue)
        case Term():
            return tongue.term(value.iri)
        case tuple():
            return _listed([_placed(one, tongue) for one in value], tongue)
        case _:
            return str(value)


def _listed(items: list[str], tongue: Tongue) -> str:
    if len(items) < 2:
        return "".join(items)
    return tongue.pattern("{some} and {last}").format(some=", ".join(items[:-1]), last=items[-1])


def figure_words(figure: Figure, tongue: Tongue = ENGLISH) -> str:
    """`12.5 W`, `between 1.2 and 1.4 m`, `at least 40 W`, `not known`."""
    low, high = figure.bounds.low, figure.bounds.high
    lowest, highest = (None if end is None else _number(end, figure.digits, tongue) for end in (low, high))
    if lowest is not None and lowest == highest:
        return _with_unit(lowest, figure.unit)
    if lowest is None or highest is None:
        return _one_bound(low, lowest, highest, figure.unit, tongue)
    words = {"low": lowest, "high": _with_unit(highest, figure.unit)}
    return tongue.pattern("between {low} and {high}").format_map(words)


def _one_bound(
    low: Fraction | None, lowest: str | None, highest: str | None, unit: str, tongue: Tongue
) -> str:
    if highest is not None:
        return tongue.pattern("at most {most}").format(most=_with_unit(highest, unit))
    if lowest is None or low == 0:
        return tongue.pattern("not known")
    return tongue.pattern("at least {least}").format(least=_with_unit(lowest, unit))


def _with_unit(number: str, unit: str) -> str:
    return number + unit if unit == ":1" else f"{number} {unit}" if unit else number


def _number(number: Fraction, digits: int, tongue: Tongue) -> str:
    """A number rounded to so many digits, without zeros that say nothing."""
    if number == 0:
        return "0"
    places = max(0, digits - 1 - floor(log10(abs(number))))
    written = f"{float(number):.{places}f}"
    if places:
        written = written.rstrip("0").rstrip(".")
    return written.replace(".", tongue.decimal_mark).replace("-", "−")


def catalogue(patterns: Mapping[str, str]) -> Callable[[str], str]:
    """The pattern of a language where it has one, else the English one."""
    return lambda pattern: patterns.get(pattern, pattern)
