"""One legend for several drawings: what their marks mean, each said once."""

from __future__ import annotations

from collections.abc import Iterable

from intent.drawings.below import entries_of
from intent.drawings.compose import Drawing
from intent.drawings.depicted import LEFT, RIGHT, DrawingStyle
from intent.drawings.legend import entries_drawn
from intent.drawings.patterns import Channel, definitions
from intent.drawings.svg import Element, number, said_of, shape
from intent.language.message import say

_ABOVE, _BELOW = 1.0, 1.0
"""Millimetres left free."""


def legend_of(
    drawings: Iterable[Drawing], channels: Iterable[Channel], width: float, style: DrawingStyle
) -> Element:
    """The legend of drawings of one work, so many millimetres wide, under a name of its own."""
    prefix = f"drawing-{style.name}-legend"
    patterns = tuple(channels)
    seen = [glyph for one in drawings for glyph in one.seen]
    room = (LEFT, _ABOVE, width - LEFT - RIGHT)
    drawn, bottom = entries_drawn(entries_of(seen, patterns, style.locale), room, prefix)
    high = bottom + _BELOW
    return shape(
        "svg",
        said_of("title", style.locale.say(say("What the marks in the drawings mean")), f"{prefix}-title"),
        definitions(patterns, prefix),
        drawn,
        role="img",
        aria_labelledby=f"{prefix}-title",
        class_="drawing",
        id=prefix,
        viewBox=f"0 0 {number(width)} {number(high)}",
        width=f"{number(width)}mm",
        height=f"{number(high)}mm",
    )
