"""Channels told apart by pattern, never by colour; which part shows which is said in words beside."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from intent.drawings.svg import Element, shape
from intent.language.message import Words

_LINE = 0.18
_TILES: tuple[tuple[float, str, str], ...] = (
    (1.5, "M-.375 .375L.375 -.375M0 1.5L1.5 0M1.125 1.875L1.875 1.125", ""),
    (1.4, "", "M.35 .35h.28v.28h-.28zM1.05 1.05h.28v.28h-.28z"),
    (1.2, "M0 .6H1.2", ""),
    (1.5, "M-.375 1.125L.375 1.875M0 0L1.5 1.5M1.125 -.375L1.875 .375", ""),
    (1.2, "M.6 0V1.2", ""),
    (1.8, "M0 1.8L1.8 0M0 0L1.8 1.8", ""),
    (2.0, "M.5 .2V.8M.2 .5H.8M1.5 1.2V1.8M1.2 1.5H1.8", ""),
    (1.5, "M0 .75H1.5M.75 0V1.5", ""),
    (2.0, "M.1 .5H.9M1.1 1.5H1.9", ""),
    (2.0, "M0 .5Q.5 0 1 .5T2 .5M0 1.5Q.5 1 1 1.5T2 1.5", ""),
    (2.4, "M.3 .6a.3 .3 0 1 0 .6 0a.3 .3 0 1 0 -.6 0M1.5 1.8a.3 .3 0 1 0 .6 0a.3 .3 0 1 0 -.6 0", ""),
    (2.0, "M0 .7L.5 .2L1 .7L1.5 .2L2 .7M0 1.7L.5 1.2L1 1.7L1.5 1.2L2 1.7", ""),
)
"""The side of a square that repeats, in millimetres; the lines in it; the filled forms in it."""


@dataclass(frozen=True, slots=True)
class Channel:
    """A channel with the pattern that stands for it in a drawing."""

    name: Words
    pattern: int

    def fill(self, prefix: str) -> str:
        return f"url(#{prefix}-channel-{self.pattern + 1})"


def channels_of(names: Iterable[Words]) -> dict[Words, Channel]:
    """Every channel by name."""
    return {name: Channel(name, place % len(_TILES)) for place, name in enumerate(names)}


def definitions(channels: Iterable[Channel], prefix: str) -> Element:
    """The patterns of some channels; their names begin with the drawing's, which is its own on a page."""
    numbers = sorted({channel.pattern for channel in channels})
    return shape("defs", (_pattern(number, f"{prefix}-channel-{number + 1}") for number in numbers))


def _pattern(number: int, name: str) -> Element:
    side, lines, forms = _TILES[number]
    drawn = []
    if lines:
        drawn.append(shape("path", d=lines, fill="none", stroke="currentColor", stroke_width=_LINE))
    if forms:
        drawn.append(shape("path", d=forms, fill="currentColor"))
    return shape("pattern", drawn, id=name, width=side, height=side, patternUnits="userSpaceOnUse")
