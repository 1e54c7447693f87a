"""The light between a lens and its picture: how low it comes, and whether something is in it. Lengths in metres.

All is geometry of straight rays, in a frame in which the lens is at nothing and the picture straight ahead.
"""

from __future__ import annotations

from fractions import Fraction

from intent.formulas.directions import Arrow
from intent.values.bounds import (
    ONE,
    magnitude,
    minus,
    natural,
    over,
    plus,
    root,
    scaled,
    smaller,
    square,
    surely_within,
    times,
    total,
)
from intent.values.regions import Interval

HALF = Fraction(1, 2)


def distance(way: Arrow) -> Interval:
    """How long a way is. Pythagoras."""
    return root(total(map(square, way)))


def lowest(lens_height: Interval, picture_edge: Interval, reach: Interval, throw: Interval) -> Interval:
    """How low the light comes within some reach of the lens: at the lens, or as far on towards the lower edge.

    A ray falls or rises evenly, so that after a share of the way it has done that share of its fall. The reach is taken
    along the axis, which is never higher than along the ray.
    """
    share = smaller(ONE, over(reach, throw))
    return smaller(lens_height, plus(lens_height, times(share, minus(picture_edge, lens_height))))


def lower_edge(
    middle: Interval, sides: tuple[Interval, Interval], rises: tuple[Interval, Interval]
) -> Interval:
    """The height of the lowest corner of a picture, of which each side rises by some share of its length."""
    reach = total(times(magnitude(rise), side) for side, rise in zip(sides, rises, strict=True))
    return minus(middle, scaled(reach, HALF))


def is_inside(place: Arrow, picture: Arrow, sides: tuple[Interval, Interval]) -> bool:
    """Whether a place is surely in the light of a picture: nearer than it, and within the share of it that far on."""
    ahead, throw = place[2], natural(picture[2])
    if ahead.low is None or ahead.low <= 0 or not surely_within(ahead, throw):
        return False
    share = over(ahead, throw)
    return all(
        surely_within(
            magnitude(minus(aside, times(share, middle))),
            times(share, scaled(side, HALF)),
        )
        for aside, middle, side in zip(place[:2], picture[:2], sides, strict=True)
    )
