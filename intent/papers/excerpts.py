"""The surroundings of what is quoted from a long text."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

WHOLE = 6000
"""A text of no more code points than this is shown whole."""
AROUND = 700
"""How many code points are shown before and after a passage, at least where there are as many."""
_FURTHER = 500
"""How many more an excerpt may have so as to begin or end with a paragraph."""


@dataclass(frozen=True, slots=True)
class Excerpt:
    """A stretch of a text, in code points."""

    start: int
    end: int


def excerpts(text: str, passages: Iterable[tuple[int, int]]) -> tuple[Excerpt, ...]:
    """What is shown of a text: the whole of a short one, else the surroundings of the passages."""
    if len(text) <= WHOLE:
        return (Excerpt(0, len(text)),)
    found: list[Excerpt] = []
    for start, end in sorted(passages):
        around = Excerpt(_beginning(text, start - AROUND), _ending(text, end + AROUND))
        if found and around.start <= found[-1].end + _FURTHER:
            found[-1] = Excerpt(found[-1].start, max(found[-1].end, around.end))
        else:
            found.append(around)
    return tuple(found)


def left_out(text: str, shown: Iterable[Excerpt]) -> int:
    """How many code points of a text are not shown."""
    return len(text) - sum(one.end - one.start for one in shown)


def _beginning(text: str, place: int) -> int:
    """The start of the paragraph before a place, if that is near; else the next word."""
    if place <= _FURTHER:
        return 0
    paragraph = text.rfind("\n\n", place - _FURTHER, place)
    if paragraph >= 0:
        return paragraph + 2
    return place + next((step for step, sign in enumerate(text[place : place + AROUND]) if sign.isspace()), 0)


def _ending(text: str, place: int) -> int:
    """The end of the paragraph after a place, if that is near; else the word before it."""
    if place + _FURTHER >= len(text):
        return len(text)
    paragraph = text.find("\n\n", place, place + _FURTHER)
    if paragraph >= 0:
        return paragraph
    before = text[place - AROUND : place]
    return place - next((step for step, sign in enumerate(reversed(before)) if sign.isspace()), 0)
