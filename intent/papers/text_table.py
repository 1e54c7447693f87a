"""A table for a terminal: in columns where its words find room in them, else each row with its cells below its head."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import zip_longest
from typing import TypeAlias

from intent.papers.layout import Piece, columns_of, flowed, padded

GAP = "  "
"""What stands between two columns."""
TO_FILL_IN = "_"
_NARROWEST_TO_FILL = 8

TextCell: TypeAlias = "list[list[Piece]] | None"
"""The lines of a cell; none of one that is to be filled in."""


@dataclass(frozen=True, slots=True)
class TextColumn:
    """A column with its cells, and its share of the width in per cent."""

    title: str
    share: int
    cells: tuple[TextCell, ...]

    @property
    def widest(self) -> int:
        """The columns that its longest line takes; of what is to be filled in, any number."""
        return max(columns_of(self.title), *map(_widest_line, self.cells), 1)

    @property
    def narrowest(self) -> int:
        """The columns that its longest word takes, since none is broken."""
        cells = (
            _NARROWEST_TO_FILL if cell is None else max((_longest_word(line) for line in cell), default=0)
            for cell in self.cells
        )
        return max(_longest_word([Piece(self.title)]), *cells, 1)


def table_lines(columns: Sequence[TextColumn], ticks: int, width: int, indent: str) -> Iterator[str]:
    """The lines of a table whose first so many columns are boxes to tick."""
    room = width - len(indent) - len(GAP) * (len(columns) - 1)
    widths = _widths([column.widest for column in columns], [column.share for column in columns], room)
    if all(column.narrowest <= given for column, given in zip(columns, widths, strict=True)):
        return _beside(columns, widths, indent)
    return _below([*columns[ticks:], *columns[:ticks]], width, indent)


def _widest_line(cell: TextCell) -> int:
    if cell is None:
        return 1000
    return max((columns_of(line) for text in cell for line in flowed(_unpainted(text), 10_000)), default=0)


def _longest_word(line: Sequence[Piece]) -> int:
    return max((columns_of(word) for word in flowed(_unpainted(line), 1)), default=0)


def _unpainted(line: Sequence[Piece]) -> list[Piece]:
    return [Piece(piece.text) for piece in line]


def _widths(wanted: Sequence[int], shares: Sequence[int], room: int) -> list[int]:
    """Each column its share of the room, or less where it wants less, which leaves more for the others."""
    given: dict[int, int] = {}
    while len(given) < len(wanted):
        waiting = [place for place in range(len(wanted)) if place not in given]
        left, whole = room - sum(given.values()), sum(shares[place] for place in waiting)
        share = {place: max(left * shares[place] // whole, 1) for place in waiting}
        modest = {place: wanted[place] for place in waiting if wanted[place] <= share[place]}
        given |= modest or share
    return [given[place] for place in range(len(wanted))]


def _beside(columns: Sequence[TextColumn], widths: Sequence[int], indent: str) -> Iterator[str]:
    yield from _row([[[Piece(column.title)]] for column in columns], widths, indent)
    yield indent + GAP.join("-" * width for width in widths)
    for place, row in enumerate(zip(*(column.cells for column in columns), strict=True)):
        yield from [""] if place and None in row else []
        yield from _row(row, widths, indent)


def _row(cells: Sequence[TextCell], widths: Sequence[int], indent: str) -> Iterator[str]:
    """The lines of a row; a cell that has fewer than another is empty below."""
    laid = [list(_cell(cell, width)) for cell, width in zip(cells, widths, strict=True)]
    for line in zip_longest(*laid):
        beside = (text or " " * width for text, width in zip(line, widths, strict=True))
        yield (indent + GAP.join(beside)).rstrip()


def _cell(cell: TextCell, width: int) -> Iterator[str]:
    """The lines of a cell, each as wide as its column."""
    if cell is None:
        yield TO_FILL_IN * width
        return
    for text in cell:
        bare = flowed(_unpainted(text), width)
        for line, plain in zip(flowed(text, width), bare, strict=True):
            yield line + " " * (width - columns_of(plain))


def _below(columns: Sequence[TextColumn], width: int, indent: str) -> Iterator[str]:
    """Each row by itself: its head, and under it the other cells after their titles."""
    label = max(columns_of(column.title) for column in columns[1:]) + 1
    beside = f"{indent}  "
    for head, *others in zip(*(column.cells for column in columns), strict=True):
        if head is None:
            yield indent + TO_FILL_IN * (width - len(indent))
        for place, text in enumerate(head or ()):
            yield from flowed(text, width, beside if place else indent, beside)
        for column, cell in zip(columns[1:], others, strict=True):
            first, rest = beside + padded(column.title, label), beside + " " * label
            if cell is None:
                yield first + TO_FILL_IN * max(width - columns_of(first), 1)
            for place, text in enumerate(cell or ()):
                yield from flowed(text, width, rest if place else first, rest)
