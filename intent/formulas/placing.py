"""Rectangles on a wall: the outline of a device as it lies, and the room that an opening leaves it.

All is arithmetic and the geometry of rectangles. Lengths are in metres, angles in degrees.
"""

from __future__ import annotations

from fractions import Fraction
from math import cos, radians, sin

from intent.values.bounds import Number, minus, plus, point, times
from intent.values.regions import Interval

PLACES = 12
"""Decimals after which a sine is cut off, so that a quarter turn is exact."""
Outline = tuple[Interval, Interval]
"""Width and height."""


def outline(width: Interval, height: Interval, rotation: Number) -> Outline:
    """The width and height that a rectangle takes up when it is rotated: of the upright rectangle about it."""
    turn = radians(float(rotation))
    along, across = (point(Fraction(round(abs(wave(turn)), PLACES))) for wave in (cos, sin))
    return (
        plus(times(width, along), times(height, across)),
        plus(times(width, across), times(height, along)),
    )


def margin(opening: Interval, side: Interval) -> Interval:
    """What an opening is wider than what stands in it; less than nothing where that is too wide."""
    return minus(opening, side)
