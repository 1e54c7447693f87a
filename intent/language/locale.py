"""How a language tells messages: its patterns, its plural forms, its numbers, lists and months.

`Locale` is English, which needs no catalogue and no data; `languages.locale_of` gives any other.
"""

from __future__ import annotations

from collections.abc import Sequence

from intent.language.calendar import span_words
from intent.language.figures import Figure, Month, Written, grouped, rounded
from intent.language.message import (
    Joined,
    Joint,
    Labelled,
    Listing,
    Message,
    Place,
    Shape,
    Shaped,
    Words,
    say,
)
from intent.values.dates import DaySpan

_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December",
)  # fmt: skip
_SENTENCE_ENDS = ".!?…"


class Locale:
    """English, as it is written in Britain; the languages of catalogues derive from it."""

    tag = "en"
    """The language tag (BCP 47)."""
    mark = "."
    """The decimal mark."""

    def say(self, words: Words) -> str:
        """A message in this language; a writer's own text as it is."""
        if isinstance(words, str):
            return words
        pattern = self.pattern(words)
        if not words.places:
            return pattern
        return pattern.format_map({name: self._place(value) for name, value in words.places})

    def pattern(self, message: Message) -> str:
        """The pattern of this language, in the plural form that the message's number asks for."""
        return message.several if message.several and message.number != 1 else message.pattern

    def number(self, digits: str) -> str:
        """A number with a decimal point, with this language's decimal mark; its minus is a minus sign."""
        return grouped(digits, self.mark)

    def month(self, number: int) -> str:
        """The name of a month within a date, 1 to 12."""
        return _MONTHS[number - 1]

    def listing(self, items: Sequence[str], joint: Joint) -> str:
        """`a`, `a and b`, `a, b and c`, as this language writes it."""
        if len(items) < 2:
            return "".join(items)
        return f"{', '.join(items[:-1])} {joint.value} {items[-1]}"

    def written(self, numbers: str) -> str:
        """Numbers as somebody wrote them, with this language's decimal mark."""
        return numbers

    def label(self, term: Labelled) -> str:
        """The label of a term, set as this language is printed."""
        return term.label_in(self.tag)

    def _place(self, value: Place) -> str:
        match value:
            case str():
                return value
            case Message():
                return self.say(value)
            case Figure():
                return self._figure(value)
            case Written():
                return self.written(value.text)
            case Listing():
                return self.listing([self._place(item) for item in value.items], value.joint)
            case tuple():
                return self.listing([self._place(item) for item in value], Joint.AND)
            case Joined():
                return self.say(Message(pattern=value.mark)).join(self.say(item) for item in value.items)
            case Shaped():
                return _shaped(self.say(value.words), value.shape)
            case Month():
                return self.month(value.number)
            case DaySpan():
                return self.say(span_words(value))
            case int():
                return str(value)
        return self.label(value)

    def _figure(self, figure: Figure) -> str:
        """`12.5 W`, `between 1.2 and 1.4 m`, `at least 40 W`, `not known`."""
        low, high = figure.bounds.low, figure.bounds.high
        unit = self.say(say(figure.unit)) if figure.unit else ""
        least, most = (
            None if end is None else self.number(rounded(end, figure.digits)) for end in (low, high)
        )
        if least is not None and least == most:
            return _with_unit(least, unit)
        if most is None:
            if least is None or low == 0:
                return self.say(say("not known"))
            return self.say(say("at least {least}", least=_with_unit(least, unit)))
        if least is None or (low == 0 and not unit.startswith("°")):
            # "Between 0 and 30.5 cm" says no more: nothing but a temperature or an angle goes below 0.
            return self.say(say("at most {most}", most=_with_unit(most, unit)))
        return self.say(say("between {low} and {high}", low=least, high=_with_unit(most, unit)))


ENGLISH = Locale()


def _with_unit(number: str, unit: str) -> str:
    return number + unit if unit == ":1" else f"{number} {unit}" if unit else number


def _shaped(text: str, shape: Shape) -> str:
    if shape in {Shape.CLOSED, Shape.SENTENCE}:
        text = text.strip()
        text = f"{text}." if text and text[-1] not in _SENTENCE_ENDS else text
    return text if shape is Shape.CLOSED else text[:1].upper() + text[1:]
