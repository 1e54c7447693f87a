"""Sentences with places for names and figures, so that they can be said in another language too.

A saying is its English text, and keeps the pattern and the places that it was made from. The English pattern is
its name: a catalogue gives another pattern for it, with the same places. Whatever reads text reads a saying; only
what tells a reader something asks for it in the reader's language.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import floor, log10

from intent.values.bounds import scaled
from intent.values.regions import Interval


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
    english: str


@dataclass(frozen=True, slots=True)
class Written:
    """Numbers as they were written, with decimal points: `13.5 in`, `(1.2 m, 0 m, 1 m)`."""

    text: str


AND, OR = "{some} and {last}", "{some} or {last}"


@dataclass(frozen=True, slots=True)
class Listing:
    """Several things in one sentence: `a, b and c`."""

    items: tuple[object, ...]
    pattern: str = AND


@dataclass(frozen=True, slots=True)
class Joined:
    """Texts one after another."""

    items: tuple[object, ...]
    separator: str


@dataclass(frozen=True, slots=True)
class Shaped:
    """A text that gets its shape, a capital first or a full stop last, when it is in its language."""

    text: str
    shape: Callable[[str], str]


class Saying(str):
    """The English text of a pattern (`the picture is {share} of what it was`), and what stands in its places."""

    __slots__ = ("pattern", "places")
    pattern: str
    places: tuple[tuple[str, object], ...]
    """Texts, figures, terms, sayings, or a tuple of any of these, which is listed."""

    def __new__(cls, pattern: str, places: tuple[tuple[str, object], ...] = ()) -> Saying:
        made = super().__new__(cls, _filled(pattern, places, ENGLISH))
        made.pattern, made.places = pattern, places
        return made

    def __getnewargs__(self) -> tuple[str, tuple[tuple[str, object], ...]]:  # type: ignore[override]
        return self.pattern, self.places


def say(pattern: str, /, **places: object) -> Saying:
    """A saying; its places by name."""
    return Saying(pattern, tuple(places.items()))


def say_of(number: int, one: str, several: str, /, **places: object) -> Saying:
    """A saying with the pattern for one thing, or that for several."""
    return say(one if number == 1 else several, **places)


def words(*patterns: str) -> tuple[Saying, ...]:
    """Sayings without places, for a table of words."""
    return tuple(map(Saying, patterns))


def listed(items: Iterable[object], conjunction: str = "and") -> Saying:
    """`a`, `a and b`, `a, b and c`; with the conjunction `or`: `a, b or c`."""
    return say("{all}", all=Listing(tuple(items), AND if conjunction == "and" else OR))


def joined(items: Iterable[str], separator: str = " ") -> Saying:
    """The texts one after another, without those that are empty."""
    return say("{all}", all=Joined(tuple(filter(None, items)), separator))


def shaped(text: str, shape: Callable[[str], str]) -> str:
    """The text in a shape; of a saying, in whatever language it is said."""
    return say("{text}", text=Shaped(text, shape)) if isinstance(text, Saying) else shape(text)


def figure(bounds: Interval, unit: str = "", factor: Fraction | int = 1, digits: int = 3) -> Figure:
    """A figure in another unit than the reference unit: ``factor`` of it make one of that."""
    return Figure(scaled(bounds, factor), unit, digits)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tongue:
    """How a language says patterns, terms and numbers."""

    pattern: Callable[[str], str] = str
    """The pattern of this language for the English one."""
    term: Callable[[Term], str] = lambda term: term.english
    decimal_mark: str = "."
    language: str = "en"
    """The language tag (BCP 47)."""

    def tell(self, text: str) -> str:
        """A saying in this language; any other text as it is."""
        return said(text, self) if isinstance(text, Saying) else text

    def say(self, pattern: str, /, **places: object) -> str:
        """A pattern with its places, in this language."""
        return _filled(pattern, tuple(places.items()), self)


ENGLISH = Tongue()


def said(saying: Saying, tongue: Tongue) -> str:
    """A saying in a language."""
    return _filled(saying.pattern, saying.places, tongue)


def _filled(pattern: str, places: tuple[tuple[str, object], ...], tongue: Tongue) -> str:
    if not places:
        return tongue.pattern(pattern)
    return tongue.pattern(pattern).format_map({name: _placed(value, tongue) for name, value in places})


def _placed(value: object, tongue: Tongue) -> str:
    match value:
        case str():
            return tongue.tell(value)
        case Figure():
            return figure_words(value, tongue)
        case Term():
            return tongue.term(value)
        case Written():
            return _marked(value.text, tongue)
        case Listing():
            return _listed([_placed(one, tongue) for one in value.items], value.pattern, tongue)
        case Joined():
            return tongue.pattern(value.separator).join(_placed(one, tongue) for one in value.items)
        case Shaped():
            return value.shape(tongue.tell(value.text))
        case tuple():
            return _placed(Listing(value), tongue)
        case _:
            return str(value)


def _listed(items: list[str], pattern: str, tongue: Tongue) -> str:
    if len(items) < 2:
        return "".join(items)
    return tongue.pattern(pattern).format(some=", ".join(items[:-1]), last=items[-1])


def _marked(written: str, tongue: Tongue) -> str:
    """Numbers with the language's decimal mark; where that is the comma, those of a position part at `;`."""
    if tongue.decimal_mark == ".":
        return written
    return re.sub(r"(?<=\d)\.(?=\d)", tongue.decimal_mark, written.replace(", ", "; "))


def figure_words(figure: Figure, tongue: Tongue = ENGLISH) -> str:
    """`12.5 W`, `between 1.2 and 1.4 m`, `at least 40 W`, `not known`."""
    low, high, unit = figure.bounds.low, figure.bounds.high, tongue.pattern(figure.unit)
    lowest, highest = (None if end is None else _number(end, figure.digits, tongue) for end in (low, high))
    if lowest is not None and lowest == highest:
        return _with_unit(lowest, unit)
    if lowest is None or highest is None:
        return _one_bound(low, lowest, highest, unit, tongue)
    return tongue.say("between {low} and {high}", low=lowest, high=_with_unit(highest, unit))


def _one_bound(
    low: Fraction | None, lowest: str | None, highest: str | None, unit: str, tongue: Tongue
) -> str:
    if highest is not None:
        return tongue.say("at most {most}", most=_with_unit(highest, unit))
    if lowest is None or low == 0:
        return tongue.say("not known")
    return tongue.say("at least {least}", least=_with_unit(lowest, unit))


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
