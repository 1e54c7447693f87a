"""A lift by hand, as the revised lifting equation asks for it: from where to where, and what one person should lift.

Formula: `intent.formulas.niosh`, for one person; that people share a load is a rough rule.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.handling.travelling import Load
from intent.effects.scene import Scene
from intent.formulas.niosh import (
    METRIC,
    Lift,
    least_limit,
    lifting_index,
    people_needed,
    reach_around,
    recommended_limit,
)
from intent.values.bounds import (
    ONE,
    ZERO,
    apart,
    between,
    known,
    minus,
    natural,
    point,
    scaled,
    smaller,
    surely_above,
    surely_within,
)
from intent.values.regions import Interval
from intent.values.units import in_unit

KNUCKLES = point(Fraction(3, 4))
"""The height of a trolley or table, in metres, where a lift begins or ends of which nothing is given."""
LIGHT = point(least_limit())
"""What one person may lift, in kilograms, in whatever way the equation allows."""
GRIP_NAMES: Mapping[str, str] = {"grip-good": "good", "grip-fair": "fair", "grip-poor": "poor"}
"""What the equation calls each grip; a grip of which nothing is said may be any."""
HALF = Fraction(1, 2)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lifting:
    """A lift by hand; weights in kilograms."""

    weight: Interval
    origin: Interval
    """What one person should lift where it begins."""
    destination: Interval
    """What one person should lift where it ends."""
    index: Interval
    """The weight over the lesser of the two."""
    held_close: tuple[Lift, Lift]
    """Both ends of it for one of several people, who stands close to it."""

    @property
    def close(self) -> Interval:
        """What one of several people should lift, who stand close to it."""
        begin, end = (recommended_limit(lift) for lift in self.held_close)
        return smaller(begin, end)

    def people(self) -> Interval | None:
        """How many people it takes; none where the equation allows no lift at all, however many they are."""
        close = self.close
        return None if close.high == 0 else people_needed(self.index, lifting_index(self.weight, close))

    @property
    def is_too_much(self) -> bool:
        """Whether it is surely more than one person should lift, or nothing may be lifted so."""
        return 0 in (self.origin.high, self.destination.high) or surely_above(self.index, ONE)

    @property
    def is_fine(self) -> bool:
        """Whether one person may surely lift it."""
        return surely_within(self.index, ONE) or surely_within(self.weight, LIGHT)


def lift_of_part(scene: Scene, part: str) -> Lifting:
    """The lift of a device into its place; everything that it could be where its place or depth is not given."""
    begin = (
        natural(scene.bounds(part, "carrying-height")) if scene.states(part, "carrying-height") else KNUCKLES
    )
    depth = natural(scene.bounds(part, "outer-depth"))
    return _lifting(scene, part, depth=depth, begin=begin, end=_place(scene, part))


def lift_of_box(box: Load) -> Lifting:
    """A box from the floor to the height of a trolley, held by the middle of its height, a shorter side to the body."""
    length, width, height = box.extent
    is_stated = box.scene.states(box.identifier, "carrying-height")
    begin = natural(box.bounds("carrying-height")) if is_stated else scaled(height, HALF)
    return _lifting(box.scene, box.identifier, depth=smaller(length, width), begin=begin, end=KNUCKLES)


def _place(scene: Scene, part: str) -> Interval:
    """The height of the hands as they set it down: at its lower edge, or its middle where its height is not given."""
    middle = scene.bounds(part, "height")
    if scene.is_given(part, "outer-height"):
        middle = minus(middle, scaled(scene.bounds(part, "outer-height"), HALF))
    return natural(middle)


def _lifting(scene: Scene, subject: str, *, depth: Interval, begin: Interval, end: Interval) -> Lifting:
    """A lift between two heights, of a load of some depth, all in metres; the equation asks for centimetres."""
    low, high, deep = (in_unit(length, "cm") for length in (begin, end, depth))
    travel, turn = apart(high, low), _twist(scene, subject)
    grips = frozenset(GRIP_NAMES[name] for name in scene.names(subject, "grip") if name in GRIP_NAMES)
    reach = natural(scene.bounds(subject, "reach")) if scene.states(subject, "reach") else None
    measured = None if reach is None else in_unit(reach, "cm")

    def posture(height: Interval, out: Interval) -> Lift:
        return Lift(reach=measured or out, height=height, travel=travel, turn=turn, grips=grips)

    nearest = point(METRIC.nearest)
    origin, destination = (recommended_limit(posture(at, reach_around(deep, at))) for at in (low, high))
    weight = natural(scene.bounds(subject, "weight"))
    return Lifting(
        weight=weight,
        origin=origin,
        destination=destination,
        index=lifting_index(weight, smaller(origin, destination)),
        held_close=(posture(low, nearest), posture(high, nearest)),
    )


def _twist(scene: Scene, subject: str) -> Interval:
    """How far the body turns, by the shorter way; not at all where nothing is stated."""
    if not scene.states(subject, "twist"):
        return ZERO
    turn = known(scene.bounds(subject, "twist"))
    return between(0, 180) if turn is None else point(min(turn, 360 - turn))
