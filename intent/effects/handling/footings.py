"""What stands on the floor, and what it lays on it: its own weight, and that of all that stands on it.

Formula: weight × g over the standing area; g = 9.80665 m/s² (standard gravity, ISO 80000-3, from memory).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.handling.footprint import Footprint, footprint_of
from intent.effects.handling.resting import Resting, resting
from intent.effects.handling.travelling import Load, travelling_boxes
from intent.effects.limits_kept import Input, inputs, inputs_of_box
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.values.bounds import NATURAL, ZERO, hull, natural, over, plus, point, root, smaller, times
from intent.values.regions import Interval
from intent.values.sets import Answer

STANDARD_GRAVITY = point(Fraction("9.80665"))
"""In m/s²."""
PLACE = ("position", "outer-width", "outer-depth")
"""What tells what a part stands on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Footing:
    """Something that stands on the floor, or may."""

    identifier: str
    weight: Interval
    """What it lays on the floor, in kilograms: with all that stands on it."""
    area: Interval
    """In square metres."""
    heaviest_foot: Interval
    """What one foot of it lays on the floor, in kilograms."""
    place: Footprint | None
    """Where it stands; of a box nobody says it."""
    is_sure: bool
    """Whether it surely stands on the floor."""
    carried: tuple[str, ...]
    """What stands on it, or may."""
    missing: Missing
    """What would have to be given to know its load."""
    inputs: tuple[Input, ...]
    """On which its load depends."""
    foot_inputs: tuple[Input, ...]
    """On which it depends what one foot lays on the floor."""

    @property
    def force(self) -> Interval:
        """In newtons."""
        return times(self.weight, STANDARD_GRAVITY)

    @property
    def foot_force(self) -> Interval:
        """Of the heaviest foot, in newtons."""
        return times(self.heaviest_foot, STANDARD_GRAVITY)

    @property
    def pressure(self) -> Interval:
        """On the area on which it stands, in pascals."""
        return over(self.force, self.area)


def footings(sides: Sides) -> tuple[Footing, ...]:
    """The parts that stand on the floor or may, and the boxes."""
    every = resting(sides.proposed)
    standing = [_of_part(sides, found, every) for found in every if found.on_floor is not Answer.OUT]
    return (*standing, *_boxes(sides))


def _of_part(sides: Sides, found: Resting, every: Sequence[Resting]) -> Footing:
    scene, part = sides.proposed, found.part
    carried = {one.part: one.carriers[part] for one in every if part in one.carriers}
    own = _weight(scene, part)
    weight = own if found.on_floor is Answer.IN else hull([ZERO, own])
    for other, is_on in carried.items():
        bears = _weight(scene, other)
        weight = plus(weight, bears if is_on is Answer.IN else hull([ZERO, bears]))
    area = natural(scene.bounds(part, "standing-area")) if found.own_base else NATURAL
    support = () if found.own_base and not scene.is_given(part, "support") else ("support",)
    base = inputs(sides, part, "standing-area", "weight", *support)
    load = (*base, *_inputs_carried(sides, part, carried))
    stated = scene.states(part, "foot-load")
    return Footing(
        identifier=part,
        weight=weight,
        area=area,
        heaviest_foot=_weight(scene, part, "foot-load") if stated else hull([ZERO, weight]),
        place=footprint_of(scene, part),
        is_sure=found.on_floor is Answer.IN,
        carried=tuple(carried),
        missing=scene.unknown(part, "weight", "standing-area"),
        inputs=load,
        foot_inputs=inputs(sides, part, "foot-load")
        if stated
        else (*inputs(sides, part, "foot-load"), *load[1:]),
    )


def _inputs_carried(sides: Sides, part: str, carried: dict[str, Answer]) -> Iterator[Input]:
    """What its load depends on of the things that stand on it; of those that may, what would tell it as well."""
    for other, is_on in carried.items():
        yield from inputs(sides, other, "weight")
        if is_on is Answer.OPEN:
            yield from inputs(sides, other, "support", *PLACE)
    if Answer.OPEN in carried.values():
        yield from inputs(sides, part, *PLACE)


def _weight(scene: Scene, subject: str, name: str = "weight") -> Interval:
    return natural(scene.bounds(subject, name))


def _boxes(sides: Sides) -> Iterator[Footing]:
    return (_of_box(box) for box in travelling_boxes(sides))


def _of_box(box: Load) -> Footing:
    length, width, _ = box.extent
    has_area = box.scene.states(box.identifier, "standing-area")
    base = ("standing-area",) if has_area else ("length", "width")
    has_foot = box.scene.states(box.identifier, "foot-load")
    load = inputs_of_box(box.scene, box.identifier, *base, "weight")
    foot = inputs_of_box(box.scene, box.identifier, "foot-load", *(() if has_foot else ("weight",)))
    return Footing(
        identifier=box.identifier,
        weight=box.weight,
        area=natural(box.bounds("standing-area")) if has_area else times(length, width),
        heaviest_foot=natural(box.bounds("foot-load")) if has_foot else hull([ZERO, box.weight]),
        place=None,
        is_sure=True,
        carried=(),
        missing=box.unknown("weight", *base),
        inputs=load,
        foot_inputs=foot,
    )


def on_an_area(footing: Footing, others: Sequence[Footing], least: Interval) -> Interval:
    """What lies on the least area over which a limit is meant, about something that stands on a smaller base.

    At least what it lays there by itself; at most that with all that may stand on the same area, of which nothing
    lays more than its own pressure on each part of it. In pascals.
    """
    alone = over(footing.force, least)
    most = over(_most(footing, least), least)
    for other in others:
        if other is not footing and _may_be_near(footing, other, least):
            most = plus(most, over(_most(other, least), least))
    return Interval(alone.low, most.high)


def _most(footing: Footing, least: Interval) -> Interval:
    """What of it may lie on an area, in newtons."""
    spread = times(footing.pressure, least)
    return footing.force if spread.high is None else smaller(footing.force, spread)


def _may_be_near(one: Footing, two: Footing, least: Interval) -> bool:
    """Whether two may stand on one square of an area; boxes are set down apart."""
    if one.place is None or two.place is None:
        return False
    side = root(least).high
    return side is None or not one.place.is_clear_of(two.place, side)
