"""Where a part stands in the room, as far as position and outer size tell: its edges on the three axes, within bounds.

A position is the middle of the visible picture, which is the front of a display, or else that of the object. A part
of which no facing or tilt is given is taken to stand straight; one that does not may reach anywhere about its middle.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.handling.outline import outline_of
from intent.effects.scene import Scene
from intent.values.bounds import (
    NATURAL,
    ZERO,
    hull,
    known,
    minus,
    natural,
    plus,
    root,
    scaled,
    smaller,
    square,
    total,
)
from intent.values.regions import EVERYTHING, Interval
from intent.values.sets import Answer

HALF = Fraction(1, 2)
ACROSS, UPRIGHT, DEEP = range(3)


@dataclass(frozen=True, slots=True, kw_only=True)
class Edges:
    """Where something begins and ends on an axis, and its middle, in metres, each within bounds."""

    low: Interval
    middle: Interval
    high: Interval
    size: Interval

    def is_clear_of(self, other: Edges, space: Fraction = Fraction(0)) -> bool:
        """Whether the two surely do not reach into each other, with so much space between them."""
        return _ends_before(self, other, space) or _ends_before(other, self, space)

    def surely_holds(self, middle: Interval) -> bool:
        """Whether a point surely lies between the edges."""
        return (
            None not in (self.low.high, middle.low, middle.high, self.high.low)
            and (self.low.high or 0) <= (middle.low or 0)
            and (middle.high or 0) <= (self.high.low or 0)
        )


def _ends_before(one: Edges, two: Edges, space: Fraction) -> bool:
    return one.high.high is not None and two.low.low is not None and one.high.high + space <= two.low.low


@dataclass(frozen=True, slots=True)
class Footprint:
    """The edges of a part: across, upright and in depth."""

    edges: tuple[Edges, Edges, Edges]

    def is_clear_of(self, other: Footprint, space: Fraction = Fraction(0)) -> bool:
        """Whether the two, seen from above, surely stand so far apart."""
        return any(self.edges[axis].is_clear_of(other.edges[axis], space) for axis in (ACROSS, DEEP))

    def is_surely_over(self, other: Footprint) -> bool:
        """Whether its middle, seen from above, surely lies within another: else it would topple from it."""
        return all(other.edges[axis].surely_holds(self.edges[axis].middle) for axis in (ACROSS, DEEP))

    @property
    def bottom(self) -> Interval:
        return self.edges[UPRIGHT].low


def footprint_of(scene: Scene, part: str) -> Footprint:
    """The edges of a part; nothing is known of them where its place is not, or where the position is a projection's."""
    is_display = part in {display.identifier for display in scene.parts("display")}
    if is_display and scene.is_(part, "technology", "projector") is not Answer.OUT:
        anywhere = Edges(low=EVERYTHING, middle=EVERYTHING, high=EVERYTHING, size=NATURAL)
        return Footprint((anywhere, anywhere, anywhere))
    x, y, z = scene.axes(part, "position")
    height = scene.bounds(part, "height")
    outer = [natural(scene.bounds(part, side)) for side in ("outer-width", "outer-height", "outer-depth")]
    width, tall = outline_of(scene, part) if is_display else (outer[0], outer[1])
    centre, sides = (x, height if scene.is_given(part, "height") else y, z), (width, tall, outer[2])
    if not all(is_straight(scene, part, angle) for angle in ("facing", "tilt")):
        return _turned(centre, sides, is_display=is_display)
    behind = _behind(z, sides[2]) if is_display else _about(z, sides[2])
    return Footprint((_about(x, width), _about(centre[1], tall), behind))


def is_straight(scene: Scene, part: str, angle: str) -> bool:
    """Whether a part is not turned about an angle, as far as that is given."""
    return not scene.is_given(part, angle) or known(scene.bounds(part, angle)) == 0


def _about(centre: Interval, size: Interval) -> Edges:
    half = scaled(size, HALF)
    return Edges(low=minus(centre, half), middle=centre, high=plus(centre, half), size=size)


def _behind(front: Interval, depth: Interval) -> Edges:
    return Edges(low=minus(front, depth), middle=minus(front, scaled(depth, HALF)), high=front, size=depth)


def _turned(centre: Sequence[Interval], sides: Sequence[Interval], *, is_display: bool) -> Footprint:
    """Anywhere within its diagonal; of a display its position is on its front, half its depth from its middle."""
    diagonal = root(total(square(side) for side in sides))
    smallest = smaller(smaller(sides[0], sides[1]), sides[2])
    reach = hull([ZERO, diagonal if is_display else scaled(diagonal, HALF)])
    off = hull([ZERO, scaled(sides[2], HALF)]) if is_display else ZERO
    across, upright, deep = (
        Edges(
            low=minus(axis, reach),
            middle=hull([minus(axis, off), plus(axis, off)]),
            high=plus(axis, reach),
            size=hull([smallest, diagonal]),
        )
        for axis in centre
    )
    return Footprint((across, upright, deep))
