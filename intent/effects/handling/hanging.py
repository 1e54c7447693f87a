"""What hangs, held against what a hanging point of the venue bears."""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.limits_kept import Limited, at_most, inputs, obstacles, unchecked
from intent.effects.scene import Sides
from intent.effects.unsaid import Missing
from intent.language.figures import figure
from intent.language.message import say
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import is_known, natural
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic

ARITHMETIC = say("arithmetic; all of the weight on one point")
POINT_LIMIT = "hanging-load-limit"
UNSURE_POINT = say(
    "whether a hanging point bears it cannot be said; a rigger licensed for it judges fixings and points"
)
ON_A_POINT = say("hanging load")


def hanging_effects(sides: Sides) -> Iterator[Effect | Obstacle | Unchecked]:
    """What hangs where it did not hang before, or where the venue says what a point bears."""
    scene = sides.proposed
    limit = natural(scene.venue(POINT_LIMIT))
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
            missing = (*scene.unknown(part, "weight"), *scene.unknown(THE_VENUE, POINT_LIMIT))
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
