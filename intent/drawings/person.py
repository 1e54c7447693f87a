"""A standing person, to give the height of what is drawn."""

from __future__ import annotations

from intent.drawings.plane import Point
from intent.drawings.svg import Element, number, shape

_HALF = (
    (0.0, 0.875), (0.026, 0.872), (0.034, 0.845), (0.118, 0.826), (0.136, 0.79), (0.152, 0.62), (0.152, 0.45),
    (0.128, 0.435), (0.116, 0.6), (0.098, 0.7), (0.09, 0.6), (0.098, 0.5), (0.088, 0.25), (0.07, 0.05),
    (0.086, 0.0), (0.02, 0.0), (0.018, 0.25), (0.0, 0.47),
)  # fmt: skip
"""Across and up, as shares of the height, down one side: an outline of our own, no measured body."""
_HEAD_AT, _HEAD_WIDE, _HEAD_HIGH = 0.938, 0.044, 0.06


def person(feet: Point, height: float) -> Element:
    """The figure standing at a point of the paper, so many millimetres high."""
    mirrored = [(-x, y) for x, y in reversed(_HALF[1:-1])]
    body = [(feet[0] + x * height, feet[1] - y * height) for x, y in (*_HALF, *mirrored)]
    head = shape(
        "ellipse",
        cx=feet[0],
        cy=feet[1] - _HEAD_AT * height,
        rx=_HEAD_WIDE * height,
        ry=_HEAD_HIGH * height,
    )
    return shape(
        "g",
        head,
        shape("path", d=_rounded(body)),
        class_="person",
        fill="currentColor",
        fill_opacity=0.08,
        stroke="currentColor",
        stroke_width=0.16,
        stroke_linejoin="round",
    )


def _rounded(corners: list[Point]) -> str:
    """A closed line that runs through the middle of every side and bends at every corner."""
    middles = [
        ((x + next_x) / 2, (y + next_y) / 2)
        for (x, y), (next_x, next_y) in zip(corners, [*corners[1:], corners[0]], strict=True)
    ]
    bends = zip([*corners[1:], corners[0]], [*middles[1:], middles[0]], strict=True)
    return f"M{_at(middles[0])}" + "".join(f"Q{_at(corner)} {_at(end)}" for corner, end in bends) + "Z"


def _at(point: Point) -> str:
    return f"{number(point[0])} {number(point[1])}"
