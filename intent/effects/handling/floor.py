"""What the floor bears: what lies on it spread over an area, and what presses on it by a single foot.

Two limits, as EN 1991-1-1:2002, 6.1 and 6.3.1.2, has them (from memory): the uniformly distributed load qk, and the
concentrated load Qk, for what a small base does to the floor under it. The area over which the distributed load is
meant is stated by the venue, or else a square metre, which is told.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from intent.effects.handling.footings import STANDARD_GRAVITY, Footing, footings, on_an_area
from intent.effects.limits_kept import Limited, at_most, inputs, obstacles, unchecked
from intent.effects.scene import Sides
from intent.effects.unsaid import Missing, unsaid_effects
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.naming import runs
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import larger, natural, over, surely_above, surely_within, times
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic

LOAD_OVER_AREA = say(
    "weight × 9.80665 m/s² over the standing area (outer width × outer depth where none is stated; of a box, length × "
    "width), with what stands on it; boxes set down apart"
)
FLOOR_LIMIT, FLOOR_AREA, FOOT_LIMIT = "floor-load-limit", "floor-load-area", "floor-point-load-limit"
UNSURE_FLOOR = say("whether the floor bears it cannot be said from what is given")
UNSURE_FOOT = say("whether the floor bears it on one foot cannot be said from what is given")
ON_THE_FLOOR = say("load on the floor")


def floor_effects(sides: Sides) -> Iterator[Effect | Obstacle | Unchecked]:
    """What the venue's floor is asked to bear, where it says what it may."""
    scene = sides.proposed
    has_limit, has_foot_limit = (scene.states(THE_VENUE, name) for name in (FLOOR_LIMIT, FOOT_LIMIT))
    found = footings(sides)
    if any(footing.is_sure for footing in found):
        yield from unchecked(sides, THE_VENUE, FLOOR_LIMIT, FOOT_LIMIT)
    if has_limit:
        yield from _spread(sides, found)
    if has_foot_limit:
        limit = natural(scene.venue(FOOT_LIMIT))
        for footing in found:
            yield from obstacles(sides, at_most(footing.foot_force, limit), _on_a_foot(sides, footing, limit))


def _spread(sides: Sides, found: Sequence[Footing]) -> Iterator[Effect | Obstacle]:
    scene = sides.proposed
    limit, least = natural(scene.venue(FLOOR_LIMIT)), natural(scene.venue(FLOOR_AREA))
    below: list[Footing] = []
    unsure: dict[str, Missing] = {}
    for footing in found:
        around = on_an_area(footing, found, least)
        answer = _bears(footing, around, limit=limit, least=least)
        if answer is Answer.OUT:
            yield _overloading(footing, limit)
        elif answer is Answer.OPEN:
            unsure[footing.identifier] = footing.missing
        elif surely_within(footing.pressure, limit):
            below.append(footing)
        elif surely_above(footing.pressure, limit):
            yield _small_base(sides, footing, around, limit=limit)
        yield from obstacles(sides, answer, _too_much(sides, footing, found, limit=limit))
    if below:
        yield _most_of_all(below, limit)
    yield from unsaid_effects(
        unsure,
        topic=EffectTopic.HANDLING,
        quantity=ON_THE_FLOOR,
        unit="kPa",
        sentence=UNSURE_FLOOR,
        source=LOAD_OVER_AREA,
    )


def _bears(footing: Footing, around: Interval, *, limit: Interval, least: Interval) -> Answer:
    """Whether the floor bears it: on the area on which it stands, or else on the least area that is meant."""
    if surely_within(footing.pressure, limit):
        return Answer.IN
    if surely_above(over(footing.force, larger(footing.area, least)), limit):
        return Answer.OUT
    return Answer.IN if surely_within(around, limit) else Answer.OPEN


def _most_of_all(below: Sequence[Footing], limit: Interval) -> Effect:
    most = max(below, key=lambda footing: footing.pressure.high or Fraction(0))
    if most.carried:
        words = say(
            "the most that anything lays on the floor under it, of {limit}; {others} counted with it",
            limit=figure(limit, "kPa"),
            others=runs(list(most.carried)),
        )
    else:
        words = say(
            "the most that anything lays on the floor by itself, of {limit}", limit=figure(limit, "kPa")
        )
    return _pressed(most, words)


def _overloading(footing: Footing, limit: Interval) -> Effect:
    enough = over(times(footing.weight, STANDARD_GRAVITY), limit)
    words = say(
        "spread over at least {area} it would stay within {limit}; a structural engineer judges what the floor bears",
        area=figure(enough, "m²"),
        limit=figure(limit, "kPa"),
    )
    return _pressed(footing, words)


def _small_base(sides: Sides, footing: Footing, around: Interval, *, limit: Interval) -> Effect:
    """Something on a base so small that it is no spread load: told with the area over which the limit is meant."""
    scene = sides.proposed
    is_stated = scene.states(THE_VENUE, FLOOR_AREA)
    parts = {
        "limit": figure(limit, "kPa"),
        "area": figure(natural(scene.venue(FLOOR_AREA)), "m²"),
        "most": figure(Interval(around.high, around.high), "kPa"),
    }
    words = (
        say(
            "on a small base: {limit} is meant over {area}, on which at most {most} lie with all that may stand there; "
            "a single foot is held against the point load limit",
            **parts,
        )
        if is_stated
        else say(
            "on a small base: {limit} is taken to be meant over {area}, which nobody states, and on which at most "
            "{most} lie with all that may stand there; a single foot is held against the point load limit",
            **parts,
        )
    )
    missing = () if is_stated else (scene.called(FLOOR_AREA),)
    return _pressed(footing, words, missing=(*missing, *scene.unknown(THE_VENUE, FOOT_LIMIT)))


def _overloaded(footing: Footing, *, limit: Interval, least: Interval) -> Message:
    if surely_within(least, footing.area):
        return say(
            "it lays {pressure} on the floor under it, and the floor of the venue may carry {limit}",
            pressure=figure(footing.pressure, "kPa"),
            limit=figure(limit, "kPa"),
        )
    return say(
        "it lays {pressure} on the {area} of floor about it, and the floor of the venue may carry {limit}",
        pressure=figure(over(footing.force, larger(footing.area, least)), "kPa"),
        area=figure(larger(footing.area, least), "m²"),
        limit=figure(limit, "kPa"),
    )


def _too_much(sides: Sides, footing: Footing, found: Sequence[Footing], *, limit: Interval) -> Limited:
    least = natural(sides.proposed.venue(FLOOR_AREA))
    others = (
        [] if footing.place is None else [other for other in found if other.place and other is not footing]
    )
    near = [
        each for other in others for each in (*other.inputs, *inputs(sides, other.identifier, "position"))
    ]
    own = [] if footing.place is None else inputs(sides, footing.identifier, "position")
    return Limited(
        slug="floor-overloaded",
        subject=one(footing.identifier),
        inputs=[*footing.inputs, *inputs(sides, THE_VENUE, FLOOR_LIMIT, FLOOR_AREA), *own, *near],
        sure=_overloaded(footing, limit=limit, least=least),
        unsure=UNSURE_FLOOR,
    )


def _on_a_foot(sides: Sides, footing: Footing, limit: Interval) -> Limited:
    return Limited(
        slug="foot-overloading",
        subject=one(footing.identifier),
        inputs=[*footing.foot_inputs, *inputs(sides, THE_VENUE, FOOT_LIMIT)],
        sure=say(
            "one foot of it lays {force} on the floor, and a point of the venue's floor may carry {limit}",
            force=figure(footing.foot_force, "kN"),
            limit=figure(limit, "kN"),
        ),
        unsure=UNSURE_FOOT,
    )


def _pressed(footing: Footing, words: Message, *, missing: Missing = ()) -> Effect:
    return Effect(
        topic=EffectTopic.HANDLING,
        subject=one(footing.identifier),
        quantity=ON_THE_FLOOR,
        unit="kPa",
        proposed=in_unit(footing.pressure, "kPa"),
        sentence=words,
        source=LOAD_OVER_AREA,
        missing=missing,
    )
