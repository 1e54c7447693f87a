"""Points, rectangles and outlines on a sheet of paper, in millimetres; y runs down."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import ceil, hypot
from typing import NamedTuple

Point = tuple[float, float]
Segment = tuple[Point, Point]
_NOTHING = 1e-9


class Box(NamedTuple):
    """An upright rectangle."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        return self.right - self.left

    @property
    def height(self) -> float:
        return self.bottom - self.top

    @property
    def centre(self) -> Point:
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    @property
    def corners(self) -> tuple[Point, ...]:
        return (
            (self.left, self.top),
            (self.right, self.top),
            (self.right, self.bottom),
            (self.left, self.bottom),
        )

    def grown(self, by: float) -> Box:
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def overlaps(self, other: Box) -> bool:
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def nearest(self, point: Point) -> Point:
        """The point of the rectangle that is nearest to another point."""
        x, y = point
        left, top, right, bottom = self
        return min(max(x, left), right), min(max(y, top), bottom)

    def is_crossed(self, segment: Segment) -> bool:
        """Whether a straight line between two points runs through the rectangle (Liang and Barsky's clipping)."""
        (x, y), (end_x, end_y) = segment
        left, top, right, bottom = self
        if (x <= left and end_x <= left) or (x >= right and end_x >= right):
            return False
        if (y <= top and end_y <= top) or (y >= bottom and end_y >= bottom):
            return False
        first, last = 0.0, 1.0
        for start, step, low, high in ((x, end_x - x, left, right), (y, end_y - y, top, bottom)):
            if abs(step) < _NOTHING:
                if not low < start < high:
                    return False
                continue
            enters, leaves = (low - start) / step, (high - start) / step
            if step < 0:
                enters, leaves = leaves, enters
            first, last = max(first, enters), min(last, leaves)
        return first < last


def around(points: Iterable[Point]) -> Box:
    """The upright rectangle around some points."""
    every = list(points)
    xs, ys = [x for x, _ in every], [y for _, y in every]
    return Box(min(xs), min(ys), max(xs), max(ys))


def outline(points: Iterable[Point]) -> tuple[Point, ...]:
    """The convex outline of some points, each corner once (Andrew's monotone chain); two points for a line."""
    ordered = sorted({(round(x, 6), round(y, 6)) for x, y in points})
    if len(ordered) < 3:
        return tuple(ordered)
    return (*_chain(ordered)[:-1], *_chain(ordered[::-1])[:-1])


def _chain(ordered: Sequence[Point]) -> list[Point]:
    chain: list[Point] = []
    for point in ordered:
        while len(chain) > 1 and _turn(chain[-2], chain[-1], point) <= 1e-6:
            chain.pop()
        chain.append(point)
    return chain


def _turn(one: Point, two: Point, three: Point) -> float:
    return (two[0] - one[0]) * (three[1] - one[1]) - (two[1] - one[1]) * (three[0] - one[0])


def area(corners: Sequence[Point]) -> float:
    """The area within an outline, whichever way it runs."""
    following = (*corners[1:], corners[0]) if corners else ()
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(corners, following, strict=True))) / 2


def is_inside(point: Point, corners: Sequence[Point]) -> bool:
    """Whether a point lies in a convex outline."""
    x, y = point
    left = right = False
    before_x, before_y = corners[-1]
    for here_x, here_y in corners:
        turn = (here_x - before_x) * (y - before_y) - (here_y - before_y) * (x - before_x)
        left, right = left or turn < 0, right or turn > 0
        if left and right:
            return False
        before_x, before_y = here_x, here_y
    return True


def distance(one: Point, two: Point) -> float:
    return hypot(two[0] - one[0], two[1] - one[1])


def is_crossing(one: Segment, two: Segment) -> bool:
    """Whether two straight lines between points meet."""
    (a, b), (c, d) = one, two
    return _turn(a, b, c) * _turn(a, b, d) <= 0 and _turn(c, d, a) * _turn(c, d, b) <= 0


def apart(box: Box, corners: Sequence[Point], is_filled: bool) -> float:
    """How far an upright rectangle is from an outline; from all that is within it, where that is filled.

    An outline of two points is a line, and of one a point.
    """
    if is_filled and len(corners) > 2 and is_inside(box.centre, corners):
        return 0.0
    if len(corners) < 3:
        return _from_line(box, (corners[0], corners[-1]))
    return min(_from_line(box, side) for side in _pairs(corners))


def _from_line(box: Box, line: Segment) -> float:
    if box.is_crossed(line):
        return 0.0
    ends = (distance(box.nearest(end), end) for end in line)
    return min(*ends, *(distance(corner, _foot(corner, line)) for corner in box.corners))


def _foot(point: Point, line: Segment) -> Point:
    """The point of a line between two ends that is nearest to another point."""
    (x, y), (end_x, end_y) = line
    across, down = end_x - x, end_y - y
    square = across * across + down * down
    if square < _NOTHING:
        return x, y
    share = min(max(((point[0] - x) * across + (point[1] - y) * down) / square, 0.0), 1.0)
    return x + share * across, y + share * down


def along(corners: Sequence[Point], step: float) -> Iterator[Box]:
    """Small upright rectangles that together hold the whole line of an outline, each no longer than a step."""
    for start, end in _pairs(corners):
        pieces = 1 if start[0] == end[0] or start[1] == end[1] else max(ceil(distance(start, end) / step), 1)
        for piece in range(pieces):
            one, two = piece / pieces, (piece + 1) / pieces
            yield around(
                (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)
                for share in (one, two)
            )


def towards(start: Point, end: Point, length: float) -> Point:
    """The point so far from the start in the direction of the end; the start where there is no direction."""
    whole = distance(start, end)
    if whole < _NOTHING:
        return start
    return start[0] + (end[0] - start[0]) * length / whole, start[1] + (end[1] - start[1]) * length / whole


def offset(corners: Sequence[Point], by: float) -> tuple[Point, ...]:
    """A convex outline moved outwards on every side by a distance."""
    if len(corners) < 3:
        return tuple(corners)
    sign = 1 if sum(_turn((0, 0), a, b) for a, b in _pairs(corners)) > 0 else -1
    moved = []
    for before, here, after in zip(
        (corners[-1], *corners[:-1]), corners, (*corners[1:], corners[0]), strict=True
    ):
        one, two = _normal(before, here, sign), _normal(here, after, sign)
        share = by / max(1 + one[0] * two[0] + one[1] * two[1], 0.2)
        moved.append((here[0] + (one[0] + two[0]) * share, here[1] + (one[1] + two[1]) * share))
    return tuple(moved)


def _pairs(corners: Sequence[Point]) -> Iterable[Segment]:
    return zip(corners, (*corners[1:], corners[0]), strict=True)


def _normal(one: Point, two: Point, sign: int) -> Point:
    length = distance(one, two) or 1.0
    return sign * (two[1] - one[1]) / length, -sign * (two[0] - one[0]) / length
