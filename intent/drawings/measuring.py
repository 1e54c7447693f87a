"""What is known closely enough to be drawn: a value's middle, where its bounds lie near together."""

from __future__ import annotations

from fractions import Fraction

from intent.drawings.solid import Vector
from intent.effects.scene import Scene
from intent.values.regions import Interval, Region

CLOSE = Fraction(1, 10)
"""Metres between the least and the greatest value beyond which a place or a size is not drawn."""
CLOSE_ANGLE = Fraction(10)
"""The same for angles, in degrees. Both are about a line's width at the scales of these drawings."""
TURN = Fraction(360)


def middle(bounds: Interval, close: Fraction) -> float | None:
    """The middle of what is known within close bounds."""
    if bounds.low is None or bounds.high is None:
        return None
    if bounds.low == bounds.high:
        return float(bounds.low)
    if bounds.high - bounds.low > close:
        return None
    return float((bounds.low + bounds.high) / 2)


def length(scene: Scene, part: str, characteristic: str) -> float | None:
    """A size in metres, where it is known closely and is more than nothing."""
    return middle(scene.bounds(part, characteristic), CLOSE) or None


def place(scene: Scene, part: str) -> Vector | None:
    """A position, where all three of its numbers are known closely."""
    x, y, z = (middle(axis, CLOSE) for axis in scene.axes(part, "position"))
    return None if x is None or y is None or z is None else (x, y, z)


def angle(scene: Scene, part: str, characteristic: str) -> float | None:
    """An angle in degrees from 0 to 360, where it is known closely; an arc may run through 0."""
    value = scene.state.value(part, scene.characteristic(characteristic))
    if not isinstance(value, Region) or not value.boxes:
        return None
    arcs = [box[0] for box in value.boxes]
    if len(arcs) == 2 and arcs[0].low == 0 and arcs[1].high == TURN and arcs[0].high is not None:
        return _turned(middle(Interval(arcs[1].low, arcs[0].high + TURN), CLOSE_ANGLE))
    return _turned(middle(value.bounds, CLOSE_ANGLE))


def _turned(degrees: float | None) -> float | None:
    return None if degrees is None else degrees % float(TURN)
