"""Lines for a terminal: wrapped to a width, with labels in a column of their own."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator

from intent.papers.prose import SPACES, shown

LABEL = 14
"""Columns of the labels on the left of a departure."""


def items(texts: Iterable[str], width: int, indent: str = "") -> Iterator[str]:
    """A list, each text with a dash before it."""
    for text in texts:
        yield from wrapped(text, width, f"{indent}- ", f"{indent}  ")


def labelled(label: str, text: str, width: int, indent: str = "") -> Iterator[str]:
    """A label on the left and the text beside it, wrapped in its own column."""
    return wrapped(text, width, f"{indent}{label:<{LABEL}}", indent + " " * LABEL)


def wrapped(text: str, width: int, first: str = "", rest: str | None = None) -> Iterator[str]:
    """The text in lines of at most ``width`` columns; a longer word has a line of its own."""
    line, empty = first, True
    for word in filter(None, SPACES.split(shown(text))):
        if not empty and columns_of(line) + 1 + columns_of(word) > width:
            yield line
            line, empty = first if rest is None else rest, True
        line, empty = (line if empty else f"{line} ") + word, False
    if not empty:
        yield line


def columns_of(text: str) -> int:
    """The columns that a terminal gives to a text: two to a wide character, none to a combining one."""
    if text.isascii():
        return len(text)
    return sum(
        0 if unicodedata.combining(sign) else 2 if unicodedata.east_asian_width(sign) in "WF" else 1
        for sign in text
    )
