"""How much of a card each thing takes, and what goes on to a second card where one is not enough."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from intent.drawings.lettering import broken
from intent.drawings.svg import Element

WIDTH, HEIGHT, EDGE = 105.0, 148.5, 7.0
"""Millimetres: a quarter of an A4 sheet, and the margin on every side."""
ROOM = WIDTH - 2 * EDGE
HEAD, FOOT, GAP = 15.5, 13.0, 1.7
"""Millimetres of the heading, of the foot, and between two things."""
BODY, SMALL, QUOTE = 2.9, 2.5, 3.3
"""Sizes of type in millimetres: none is smaller, so that a photocopy can be read."""
LEADING = 1.3
HEIGHTS = (48.0, 42.0, 36.0, 31.0, 27.0, 23.0, 20.0, 17.0, 14.0)
"""Millimetres that a drawing may be high at most."""
LONGEST = 52.0
"""Millimetres of one thing that is not broken: two of them always go on one card."""
_NARROWER = 0.84
"""How much narrower the face of the cards is than the one that `broken` reckons with."""


@dataclass(frozen=True, slots=True)
class CardBlock:
    """Something that stays together on one card, and how high it is, in millimetres."""

    element: Element
    height: float


def text_height(text: str, size: float, room: float) -> float:
    return size * LEADING * max(1, sum(1 for _ in broken(text, size * _NARROWER, room)))


def pieces(text: str, size: float, room: float) -> list[str]:
    """A text in pieces of which each is at most `LONGEST` high, so that what is long goes on to the next card."""
    lines = list(broken(text, size * _NARROWER, room)) or [text]
    each = int(LONGEST / (size * LEADING))
    return [" ".join(lines[start : start + each]) for start in range(0, len(lines), each)]


def drawing_height(
    before: Sequence[CardBlock], after: Sequence[CardBlock], height: Callable[[float], float]
) -> float:
    """The height that a drawing may have at most: the largest of `HEIGHTS` that costs no further card.

    The drawing stands between two rows of blocks; ``height`` says what it takes, laid out for a height at most.
    """
    above, below = ([block.height for block in blocks] for blocks in (before, after))
    numbers = {high: len(_filled([*above, height(high), *below])) for high in HEIGHTS}
    return next(high for high in HEIGHTS if numbers[high] == min(numbers.values()))


def cards_of(blocks: Sequence[CardBlock]) -> tuple[tuple[CardBlock, ...], ...]:
    """The blocks card by card, in their order."""
    return tuple(tuple(blocks[on_card]) for on_card in _filled([block.height for block in blocks]))


def _filled(heights: Sequence[float]) -> list[slice]:
    """What of a row of things goes on each card; a card without anything, where there is nothing."""
    room = HEIGHT - 2 * EDGE - HEAD - FOOT
    starts, left = [0], room
    for place, height in enumerate(heights):
        if height > left and place > starts[-1]:
            starts.append(place)
            left = room
        left -= height + GAP
    return [slice(start, end) for start, end in pairwise([*starts, len(heights)])]
