"""A picture thrown off the axis of its lens: the shift of the lens, and the trapezoid where it is tilted instead.

Slopes are tangents: how far aside over how far ahead, in the frame of the lens unless it says otherwise. A ray that
leaves a lens with the slope v meets the wall, where the lens leans by the slope t, at (v + t)/(1 − v·t) of the
distance, and its part of the picture is drawn 1/(1 − v·t) times as wide: the projection of one plane on another
through a point (R. Hartley, A. Zisserman, Multiple View Geometry, chapter 2; from memory). All the rest follows.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import atan, degrees

from intent.values.bounds import (
    ONE,
    larger,
    minus,
    natural,
    negative,
    over,
    plus,
    rising,
    root,
    scaled,
    smaller,
    square,
    times,
)
from intent.values.regions import Interval

HALF = Fraction(1, 2)


def shift(lens_from_middle: Interval, side: Interval) -> Interval:
    """How far a lens has to shift its picture, as a share of a side of it.

    The axis of a lens that is square to the wall meets it straight ahead of the lens, so that the shift is the way from
    there to the middle of the picture. Half a side puts the edge of the picture on the axis.
    """
    return negative(over(lens_from_middle, side))


def lean(wanted: Interval, shifted: Interval) -> Interval:
    """The slope by which a lens has to lean for its picture to land a slope away, of which its shift makes a part.

    The tangent of the difference of the two angles: (o − s)/(1 + o·s). Both are not less than nothing.
    """
    return natural(over(minus(wanted, shifted), plus(ONE, times(wanted, shifted))))


def angle(slope: Interval) -> Interval:
    """In degrees."""
    return rising(lambda tangent: degrees(atan(tangent)), slope)


@dataclass(frozen=True, slots=True, kw_only=True)
class Slanted:
    """A picture that is thrown by a leaning lens: slopes, towards the side to which it leans."""

    half: Interval
    """Of the middle of a side of the picture from its middle: half the side over the distance."""
    shifted: Interval
    """Of the middle of the picture, as far as the lens shifts it."""
    lean: Interval

    @property
    def wider(self) -> Interval:
        """The edge towards which the lens leans, over the one across from it.

        Without shift it is cos(ε − α/2)/cos(ε + α/2), with ε the lean and α the angle of the whole picture: the formula
        of the keystone effect that handbooks give.
        """
        return larger(ONE, over(natural(self._drawn(minus(self.shifted, self.half))), self._least))

    @property
    def lines_left(self) -> Interval:
        """The share of the rows (of a lean to the side: columns) that is left of the largest upright picture.

        That one reaches the wider edge; its height stands to its width as that of the whole picture does, so that of
        the lines (1 − v·t)/√(1 + t²) are left, with v the slope of the wider edge.
        """
        return smaller(ONE, over(self._least, root(plus(ONE, square(self.lean)))))

    @property
    def elements_left(self) -> Interval:
        """The share of the picture elements that is left: of the lines that are left, from all of the first to less."""
        first = minus(plus(self.shifted, self.half), scaled(times(self.half, self.lines_left), 2))
        narrowest = smaller(ONE, over(self._least, natural(self._drawn(first))))
        return times(self.lines_left, scaled(plus(ONE, narrowest), HALF))

    @property
    def _least(self) -> Interval:
        """How wide the widest edge is drawn, as its inverse; nothing where it never meets the wall."""
        return natural(self._drawn(plus(self.shifted, self.half)))

    def _drawn(self, slope: Interval) -> Interval:
        return minus(ONE, times(slope, self.lean))
