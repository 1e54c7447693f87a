"""What is said to a reader: a pattern, and what stands in its places.

A message is no text. It is made where something is known, travels as it is, and becomes words once, when a paper or
a terminal tells it in the reader's language. Its English pattern is its name: a catalogue gives another for it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import Enum
from typing import Protocol, TypeAlias

from intent.language.figures import Figure, Month, Written
from intent.values.dates import DaySpan


class Labelled(Protocol):
    """A term of the vocabulary, which has a label in each language."""

    def label_in(self, language: str) -> str:
        """The label in a language, else in English."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """A pattern (`the picture is {share} of what it was`), and what stands in its places."""

    pattern: str
    places: tuple[tuple[str, Place], ...] = ()
    several: str = ""
    """The English pattern for any number but one; empty where the message counts nothing."""
    number: int = 1
    """How many things it counts; a language chooses among its plural forms by it."""

    def filled(self, number: int = 1, /, **places: Place) -> Message:
        """A message out of a table, with what stands in its places, and how many things it counts."""
        return replace(self, places=tuple(places.items()), number=number)


Words: TypeAlias = "Message | str"
"""A message; or a text as its writer put it, which is the same in every language."""


class Joint(Enum):
    """What stands before the last of several things."""

    AND = "and"
    OR = "or"


@dataclass(frozen=True, slots=True)
class Listing:
    """Several things in one sentence: `a, b and c`."""

    items: tuple[Place, ...]
    joint: Joint = Joint.AND


@dataclass(frozen=True, slots=True)
class Joined:
    """Things one after another, with the same mark between them."""

    items: tuple[Words, ...]
    mark: str


class Shape(Enum):
    """What a text gets when it is in its language, since a capital or a full stop belongs to no pattern."""

    OPENED = "opened"
    """A capital first."""
    CLOSED = "closed"
    """A full stop last, unless it ends like a sentence already."""
    SENTENCE = "sentence"
    """Both."""


@dataclass(frozen=True, slots=True)
class Shaped:
    """A text that gets its shape once it is told."""

    words: Words
    shape: Shape


Place: TypeAlias = (
    "Message | str | int | Figure | Written | Month | Labelled | DaySpan | Listing | Joined | Shaped"
    " | tuple[Place, ...]"
)
"""What may stand in a place of a pattern; a tuple is a listing."""


def say(pattern: str, /, **places: Place) -> Message:
    """A message; its places by name."""
    return Message(pattern=pattern, places=tuple(places.items()))


def say_of(number: int, one: str, several: str, /, **places: Place) -> Message:
    """A message that counts: the pattern for one thing, that for several, and the number."""
    return Message(pattern=one, places=tuple(places.items()), several=several, number=number)


def words(*patterns: str) -> tuple[Message, ...]:
    """Messages without places, for a table of words."""
    return tuple(Message(pattern=pattern) for pattern in patterns)


def named(term: Labelled) -> Message:
    """A term by its label alone."""
    return say("{term}", term=term)


def term_of(words: Words) -> Place | None:
    """The term that a message consists of, as `named` makes it; of any other message, none."""
    if not isinstance(words, Message) or words.pattern != "{term}":
        return None
    return words.places[0][1]


def listed(items: Iterable[Place], joint: Joint = Joint.AND) -> Words:
    """`a`, `a and b`, `a, b and c`; an empty text where there is nothing to list."""
    found = tuple(items)
    return say("{all}", all=Listing(found, joint)) if found else ""


def joined(items: Iterable[Words], mark: str = " ") -> Words:
    """The texts one after another, without those that are empty; a single one as it is, an empty text of none."""
    found = tuple(item for item in items if item)
    if len(found) < 2:
        return found[0] if found else ""
    return say("{all}", all=Joined(found, mark))


def opened(words: Words) -> Words:
    """The text as the beginning of a sentence: its first letter a capital."""
    return _shaped(words, Shape.OPENED)


def closed(words: Words) -> Words:
    """The text with the full stop of a sentence."""
    return _shaped(words, Shape.CLOSED)


def sentence(words: Words) -> Words:
    """The text as a sentence: a capital first and a full stop last."""
    return _shaped(words, Shape.SENTENCE)


def _shaped(words: Words, shape: Shape) -> Words:
    return say("{text}", text=Shaped(words, shape)) if words else ""


def quoted(text: Words) -> Message:
    """The words between quotation marks, without any that a writer's own bring along."""
    return say("“{words}”", words=text.strip().strip('“”"') if isinstance(text, str) else text)
