"""How much room a text takes, without knowing the reader's fonts: rather too much than too little."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator

LEAST = 2.5
"""Millimetres of the smallest type: 7 points (of 25.4/72 mm) are 2.47 mm."""
LABEL, NOTE, TITLE, FIGURES = LEAST, LEAST, 3.6, LEAST
"""Sizes of type in millimetres: of identifiers, of sentences, of the title, of dimensions."""
LEADING = 1.25
"""From line to line, as a share of the size."""
_NARROW = frozenset("ijlftrI.,:;'|!()[]/ ·")
_WIDE = frozenset("mwMWQO@%—")


def width_of(text: str, size: float) -> float:
    """The width of a line in millimetres; the shares of the size are those of wide common faces (measured)."""
    return size * sum(_share(sign) for sign in text)


def _share(sign: str) -> float:
    if sign in _NARROW:
        return 0.41
    if sign in _WIDE:
        return 0.98
    if not sign.isascii():
        if unicodedata.combining(sign):
            return 0.0
        if unicodedata.east_asian_width(sign) in "WF":
            return 1.05
    return 0.72 if sign.isupper() else 0.64


def prose_width(text: str, size: float) -> float:
    """The width of a line in a face with serifs, which is narrower."""
    return 0.88 * width_of(text, size)


def broken(text: str, size: float, room: float) -> Iterator[str]:
    """A text with serifs in lines that fit into the room; a longer word has a line of its own."""
    current = ""
    for word in text.split():
        longer = f"{current} {word}" if current else word
        if current and prose_width(longer, size) > room:
            yield current
            current = word
        else:
            current = longer
    if current:
        yield current
