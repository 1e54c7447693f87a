"""What bears the work: loads on the floor, and on the points from which something hangs.

Formula: weight × g over the standing area; g = 9.80665 m/s² (standard gravity, ISO 80000-3, from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.handling.travelling import travelling_boxes
from intent.effects.limits_kept import Input, Limited, at_most, inputs, inputs_of_box, obstacles, unchecked
from intent.effects.scene import Sides
from intent.effects.unsaid import Missing, unsaid_effects
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import is_known, natural, over, point, times
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic

STANDARD_GRAVITY = point(Fraction("9.80665"))
"""In m/s²."""
LOAD_OVER_AREA = say(
    "weight × 9.80665 m/s² over the standing area (outer width × outer depth where none is stated; of a box, length × "
    "width); what stands on or beside it is not counted"
)
ARITHMETIC = say("arithmetic; all of the weight on one point")
FLOOR_LIMIT, POINT_LIMIT = "floor-load-limit", "hanging-load-limit"
UNSURE_FLOOR = say("whether the floor bears it cannot be said from what is given")
UNSURE_POINT = say(
    "whether a hanging point bears it cannot be said; a rigger licensed for it judges fixings and points"
)
ON_THE_FLOOR, ON_A_POINT = say("load on the floor"), say("hanging load")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Footing:
    """What stands on the floor."""

    identifier: str
    weight: Interval
    """In kilograms."""
    area: Interval
    """In square metres."""
    missing: Missing
    """What would have to be given to know its pressure."""
    inputs: tuple[Input, ...]
    """On which it depends."""

    @property
    def pressure(self) -> Interval:
        """In pascals."""
        return over(times(self.weight, STANDARD_GRAVITY), self.area)


def floor_effects(sides: Sides) -> Iterator[Effect | Obstacle | Unchecked]:
    """What the venue's floor and hanging points are asked to bear, where it says what they may."""
    if sides.proposed.states(THE_VENUE, FLOOR_LIMIT):
        yield from _on_the_floor(sides, natural(sides.proposed.venue(FLOOR_LIMIT)))
    elif any((*_standing(sides), *_boxes(sides))):
        yield from unchecked(sides, THE_VENUE, FLOOR_LIMIT)
    yield from _hanging(sides)


def _on_the_floor(sides: Sides, limit: Interval) -> Iterator[Effect | Obstacle]:
    below: list[_Footing] = []
    unsure: dict[str, Missing] = {}
    for footing in (*_standing(sides), *_boxes(sides)):
        answer = at_most(footing.pressure, limit)
        if answer is Answer.OUT:
            yield _overloading(footing, limit)
        elif answer is Answer.IN:
            below.append(footing)
        else:
            unsure[footing.identifier] = footing.missing
        yield from obstacles(sides, answer, _too_much(sides, footing, limit))
    if below:
        most = max(below, key=lambda footing: footing.pressure.high or Fraction(0))
        words = say(
            "the most that anything lays on the floor by itself, of {limit}", limit=figure(limit, "kPa")
        )
        yield _pressed(most, words)
    yield from unsaid_effects(
        unsure,
        topic=EffectTopic.HANDLING,
        quantity=ON_THE_FLOOR,
        unit="kPa",
        sentence=UNSURE_FLOOR,
        source=LOAD_OVER_AREA,
    )


def _standing(sides: Sides) -> Iterator[_Footing]:
    """The parts that stand on the floor, or of which the area of what carries them is stated."""
    scene = sides.proposed
    for part in scene.one_a_device(part.identifier for part in scene.parts()):
        on_floor = scene.is_(part, "support", "on-floor")
        if scene.states(part, "standing-area") or on_floor is Answer.IN:
            yield _Footing(
                identifier=part,
                weight=natural(scene.bounds(part, "weight")),
                area=natural(scene.bounds(part, "standing-area")),
                missing=scene.unknown(part, "weight", "standing-area"),
                inputs=inputs(sides, part, "weight", "standing-area"),
            )


def _boxes(sides: Sides) -> Iterator[_Footing]:
    for box in travelling_boxes(sides):
        length, width, _ = box.extent
        stated = box.scene.states(box.identifier, "standing-area")
        area = natural(box.bounds("standing-area")) if stated else times(length, width)
        missing = box.unknown("weight", *(() if stated else ("length", "width")))
        base = ("standing-area",) if stated else ("length", "width")
        yield _Footing(
            identifier=box.identifier,
            weight=box.weight,
            area=area,
            missing=missing,
            inputs=inputs_of_box(box.scene, box.identifier, "weight", *base),
        )


def _overloading(footing: _Footing, limit: Interval) -> Effect:
    enough = over(times(footing.weight, STANDARD_GRAVITY), limit)
    words = say(
        "spread over at least {area} it would stay within {limit}; a structural engineer judges what the floor bears",
        area=figure(enough, "m²"),
        limit=figure(limit, "kPa"),
    )
    return _pressed(footing, words)


def _too_much(sides: Sides, footing: _Footing, limit: Interval) -> Limited:
    return Limited(
        slug="floor-overloaded",
        subject=one(footing.identifier),
        inputs=[*footing.inputs, *inputs(sides, THE_VENUE, FLOOR_LIMIT)],
        sure=say(
            "it lays {pressure} on the floor under it, and the floor of the venue may carry {limit}",
            pressure=figure(footing.pressure, "kPa"),
            limit=figure(limit, "kPa"),
        ),
        unsure=UNSURE_FLOOR,
    )


def _pressed(footing: _Footing, words: Message) -> Effect:
    return Effect(
        topic=EffectTopic.HANDLING,
        subject=one(footing.identifier),
        quantity=ON_THE_FLOOR,
        unit="kPa",
        proposed=in_unit(footing.pressure, "kPa"),
        sentence=words,
        source=LOAD_OVER_AREA,
    )


def _hanging(sides: Sides) -> Iterator[Effect | Obstacle | Unchecked]:
    """What hangs where it did not hang before, or where the venue says what a point bears."""
    scene = sides.proposed
    limit = natural(scene.venue("hanging-load-limit"))
    for part in scene.one_a_device(part.identifier for part in scene.parts()):
        if scene.is_(part, "support", "hung") is not Answer.IN:
            continue
        weight = natural(scene.bounds(part, "weight"))
        is_new = not sides.was_there(part) or sides.documented.is_(part, "support", "hung") is not Answer.IN
        is_limited = scene.states(THE_VENUE, POINT_LIMIT)
        if is_limited:
            yield from obstacles(
                sides, at_most(weight, limit), _too_heavy(sides, part, weight=weight, limit=limit)
            )
        else:
            yield from unchecked(sides, THE_VENUE, POINT_LIMIT)
        if is_new or is_limited:
            missing = (*scene.unknown(part, "weight"), *scene.unknown(THE_VENUE, "hanging-load-limit"))
            yield _hung(part, weight=weight, limit=limit, missing=missing)


def _hung(part: str, *, weight: Interval, limit: Interval, missing: Missing) -> Effect:
    words = (
        UNSURE_POINT
        if missing or not is_known(limit)
        else say(
            "on one hanging point, which may carry {limit}; a rigger licensed for it judges fixings and safety factor",
            limit=figure(limit, "kg"),
        )
    )
    return Effect(
        topic=EffectTopic.HANDLING,
        subject=one(part),
        quantity=ON_A_POINT,
        unit="kg",
        proposed=None if weight.high is None and not weight.low else weight,
        sentence=words,
        source=ARITHMETIC,
        missing=missing,
    )


def _too_heavy(sides: Sides, part: str, *, weight: Interval, limit: Interval) -> Limited:
    return Limited(
        slug="hanging-point-overloaded",
        subject=one(part),
        inputs=[*inputs(sides, part, "weight"), *inputs(sides, THE_VENUE, POINT_LIMIT)],
        sure=say(
            "it weighs {weight}, and a hanging point of the venue may carry {limit}",
            weight=figure(weight, "kg"),
            limit=figure(limit, "kg"),
        ),
        unsure=UNSURE_POINT,
    )
