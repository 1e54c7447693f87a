"""Lines for a terminal, no wider than a width."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from intent.papers.prose import SPACES, shown

PLAIN = "\x1b[0m"
"""What ends a colour or bold type (ECMA-48, SGR)."""


@dataclass(frozen=True, slots=True)
class Piece:
    """Some text, and what a terminal is told so as to paint it."""

    text: str
    paint: str = ""

    @property
    def painted(self) -> str:
        return f"{self.paint}{self.text}{PLAIN}" if self.paint else self.text


def wrapped(text: str, width: int, first: str = "", rest: str | None = None) -> Iterator[str]:
    """The text in lines of at most ``width`` columns; a longer word has a line of its own."""
    return flowed([Piece(text)], width, first, rest)


def flowed(pieces: Iterable[Piece], width: int, first: str = "", rest: str | None = None) -> Iterator[str]:
    """The same of text in pieces, which are painted and may meet within a word."""
    line, end, empty = first, columns_of(first), True
    for word in _words(pieces):
        length = sum(columns_of(piece.text) for piece in word)
        if not empty and end + 1 + length > width:
            yield line
            line = first if rest is None else rest
            end, empty = columns_of(line), True
        space = "" if empty else " "
        line += space + "".join(piece.painted for piece in word)
        end, empty = end + len(space) + length, False
    if not empty:
        yield line


def _words(pieces: Iterable[Piece]) -> Iterator[list[Piece]]:
    """The words, each of one or several pieces."""
    word: list[Piece] = []
    for piece in pieces:
        for place, text in enumerate(SPACES.split(shown(piece.text))):
            if place and word:
                yield word
                word = []
            if text:
                word.append(Piece(text, piece.paint))
    if word:
        yield word


def columns_of(text: str) -> int:
    """The columns that a terminal gives to a text: two to a wide character, none to a combining one."""
    if text.isascii():
        return len(text)
    return sum(
        0 if unicodedata.combining(sign) else 2 if unicodedata.east_asian_width(sign) in "WF" else 1
        for sign in text
    )


def padded(text: str, columns: int) -> str:
    """The text with spaces up to so many columns."""
    return text + " " * (columns - columns_of(text))
