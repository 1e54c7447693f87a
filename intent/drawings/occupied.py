"""Rectangles on a sheet, found by where they are: each is kept in all squares of a grid that it reaches into."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from intent.drawings.plane import Box, Segment

_SIDE = 8.0
"""Millimetres of a square: about as much as a label with its part takes up, so that few share one."""
_NOTHING = 1e-6
Square = tuple[int, int]
"""By column and row."""
_Kept = tuple[int, str, Box]


class Occupied:
    """What is taken on a sheet, and by whom; to ask of a place costs no more where there is much elsewhere."""

    def __init__(self, boxes: Iterable[Box] = ()) -> None:
        self._squares: dict[Square, list[_Kept]] = {}
        """What reaches into each square, with its number: two may be in the very same place."""
        self._size = 0
        for box in boxes:
            self.add(box)

    def __len__(self) -> int:
        return self._size

    def add(self, box: Box, owner: str = "") -> None:
        kept = (self._size, owner, box)
        for square in _squares(box):
            self._squares.setdefault(square, []).append(kept)
        self._size += 1

    def is_free(self, box: Box, besides: Collection[str] = ()) -> bool:
        """Whether nothing overlaps a rectangle, but for what some owners have there."""
        left, top, right, bottom = box
        for square in _squares(box):
            for _, owner, (one_left, one_top, one_right, one_bottom) in self._squares.get(square, ()):
                # `Box.overlaps` written out: it is asked hundreds of thousands of times for one page
                is_apart = left >= one_right or one_left >= right or top >= one_bottom or one_top >= bottom
                if not is_apart and owner not in besides:
                    return False
        return True

    def crossed(self, segment: Segment) -> Iterator[tuple[str, Box]]:
        """What a straight line runs through, each once, with its owner."""
        seen = set[int]()
        for square in _squares_along(segment):
            for number, owner, box in self._squares.get(square, ()):
                if number not in seen:
                    seen.add(number)
                    if box.is_crossed(segment):
                        yield owner, box


def _squares(box: Box) -> list[Square]:
    rows = range(int(box.top // _SIDE), int(box.bottom // _SIDE) + 1)
    return [
        (column, row) for column in range(int(box.left // _SIDE), int(box.right // _SIDE) + 1) for row in rows
    ]


def _squares_along(segment: Segment) -> Iterator[Square]:
    """The squares through which a line runs, column by column."""
    (x, y), (end_x, end_y) = sorted(segment)
    rise = (end_y - y) / (end_x - x) if end_x - x > _NOTHING else 0.0
    for column in range(int(x // _SIDE), int(end_x // _SIDE) + 1):
        enters, leaves = y, end_y
        if rise:
            enters = y + rise * max(column * _SIDE - x, 0.0)
            leaves = y + rise * min((column + 1) * _SIDE - x, end_x - x)
        low, high = (enters, leaves) if enters < leaves else (leaves, enters)
        for row in range(int((low - _NOTHING) // _SIDE), int((high + _NOTHING) // _SIDE) + 1):
            yield column, row
