"""Which way a device looks, and where something lies as seen from it: across its face, up its face, and ahead of it.

Positions are x to the right seen from the front, y up, z towards the viewer, in metres; facing, tilt and rotation are
in degrees, as the vocabulary defines them. All is the geometry of turned axes. Numbers known within bounds give bounds.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from math import atan, ceil, cos, degrees, radians, sin

from intent.formulas.placing import PLACES
from intent.values.bounds import (
    ZERO,
    between,
    magnitude,
    minus,
    negative,
    over,
    plus,
    rising,
    root,
    square,
    times,
    total,
)
from intent.values.regions import Interval

Arrow = tuple[Interval, Interval, Interval]
"""How far in x, y and z."""
QUARTER, HALF_TURN = Fraction(90), Fraction(180)
ANY_WAVE = between(-1, 1)


@dataclass(frozen=True, slots=True)
class Looking:
    """The axes of a device: to the right and up on its face as it is seen, and straight ahead of it."""

    right: Arrow
    up: Arrow
    ahead: Arrow

    def parts_of(self, way: Arrow) -> Arrow:
        """How far a way leads across the face to the right, up the face, and ahead."""
        return _along(way, self.right), _along(way, self.up), _along(way, self.ahead)


def looking(facing: Interval, tilt: Interval, rotation: Interval) -> Looking:
    """The axes of a device that faces, leans and is rotated so. Facing turns clockwise seen from above."""
    about, lean = (_cosine(facing), _sine(facing)), (_cosine(tilt), _sine(tilt))
    ahead = (negative(times(about[1], lean[0])), lean[1], times(about[0], lean[0]))
    across = (about[0], ZERO, about[1])
    upright = (times(about[1], lean[1]), lean[0], negative(times(about[0], lean[1])))
    along, aside = _cosine(rotation), _sine(rotation)
    right = tuple(
        minus(times(along, one), times(aside, two)) for one, two in zip(across, upright, strict=True)
    )
    up = tuple(plus(times(along, two), times(aside, one)) for one, two in zip(across, upright, strict=True))
    return Looking((right[0], right[1], right[2]), (up[0], up[1], up[2]), ahead)


def way(start: Arrow, end: Arrow) -> Arrow:
    """The way from one place to another."""
    x, y, z = (minus(to, since) for since, to in zip(start, end, strict=True))
    return x, y, z


def off_axis(aside: Interval, ahead: Interval) -> Interval:
    """The angle in degrees, from straight ahead, at which something lies: the arc tangent of aside over ahead.

    What is level with the face lies at 90°, what is behind it further.
    """
    if ahead.low is not None and ahead.low > 0:
        return rising(lambda slope: degrees(atan(slope)), over(magnitude(aside), ahead))
    if ahead.high is not None and ahead.high <= 0:
        return Interval(QUARTER, HALF_TURN)
    return Interval(Fraction(0), HALF_TURN)


def distance_aside(across: Interval, up: Interval) -> Interval:
    """How far from the axis, whichever way. Pythagoras."""
    return root(plus(square(across), square(up)))


def _along(way: Arrow, axis: Arrow) -> Interval:
    return total(times(one, two) for one, two in zip(way, axis, strict=True))


def _cosine(angle: Interval) -> Interval:
    return _wave(cos, angle, Fraction(0))


def _sine(angle: Interval) -> Interval:
    return _wave(sin, angle, QUARTER)


def _wave(wave: Callable[[float], float], angle: Interval, crest: Fraction) -> Interval:
    """A sine or cosine over all the angles that it may be; its crests are at ``crest`` and every turn from there."""
    if angle.low is None or angle.high is None:
        return ANY_WAVE
    ends = [Fraction(round(wave(radians(float(end))), PLACES)) for end in (angle.low, angle.high)]
    if _passes(angle.low, angle.high, crest):
        ends.append(Fraction(1))
    if _passes(angle.low, angle.high, crest + HALF_TURN):
        ends.append(Fraction(-1))
    return between(min(ends), max(ends))


def _passes(low: Fraction, high: Fraction, angle: Fraction) -> bool:
    """Whether some whole turns from an angle lie between two others."""
    turn = 2 * HALF_TURN
    return angle + ceil((low - angle) / turn) * turn <= high
