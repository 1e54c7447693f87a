"""The way into the room: what travels at the venue's doors and corridors, in its lift and on its stairs.

Formulas: `intent.formulas.openings`. What passes as it stands is told of the tightest alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import permutations

from intent.effects.handling.ascending import lift_effects, stair_effects
from intent.effects.handling.passage import CORRIDOR, DOOR, passage_effects
from intent.effects.handling.travelling import Load, travelling
from intent.effects.scene import Scene, Sides
from intent.formulas.openings import Turning, longest_round_corner
from intent.language.message import Message, say
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import ZERO, minus, natural, surely_above, surely_within
from intent.values.regions import Interval
from intent.values.units import in_unit
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic

LADDER = say("the ladder problem, for what is as wide as it is; both corridors as wide as the narrowest")


def route_effects(sides: Sides) -> Iterator[Effect | Obstacle | Unchecked]:
    """Whether all that travels reaches the room, and with what clearance, as far as the venue states its way in."""
    loads = travelling(sides)
    yield from passage_effects(sides, loads, DOOR)
    yield from passage_effects(sides, loads, CORRIDOR)
    yield from _corner(sides.proposed, loads)
    yield from lift_effects(sides, loads)
    yield from stair_effects(sides, loads)


def _corner(scene: Scene, loads: Sequence[Load]) -> Iterator[Effect]:
    """What cannot be turned round a right angle as it stands, should the corridor make one."""
    if not scene.states(THE_VENUE, "corridor-width"):
        return
    corridor, height = natural(scene.venue("corridor-width")), natural(scene.venue("corridor-height"))
    for load in loads:
        length, width, upright = load.on_the_floor
        standing = _spare(*_plan(length, width), corridor)
        if not surely_above(ZERO, standing):
            continue
        # the ways to set it on another side, under a ceiling that is known and lets it through
        turned = [
            _spare(*_plan(along, across), corridor)
            for along, across, tall in permutations((length, width, upright))
            if load.may_stand_up(tall) and height.high is not None and surely_within(tall, height)
        ]
        goes_round = any(surely_within(ZERO, spare) for spare in turned)
        may_be_laid = load.freest.value > Turning.ON_EDGE.value
        yield Effect(
            topic=EffectTopic.HANDLING,
            subject=one(load.identifier),
            quantity=say("room to turn a corner"),
            unit="cm",
            proposed=in_unit(standing, "cm"),
            sentence=_corner_words(goes_round and may_be_laid),
            source=LADDER,
            missing=scene.unknown(THE_VENUE, "corridor-height"),
        )


def _plan(along: Interval, across: Interval) -> tuple[Interval, Interval]:
    """The longer and the shorter side of what is seen from above."""
    return (across, along) if (along.low or 0) < (across.low or 0) else (along, across)


def _spare(length: Interval, width: Interval, corridor: Interval) -> Interval:
    return minus(longest_round_corner(width, corridor), length)


def _corner_words(can_be_turned: bool) -> Message:
    if can_be_turned:
        return say(
            "if the corridor turns a right angle, it does not go round as it stands, but does on another of its sides"
        )
    return say(
        "if the corridor turns a right angle, it does not go round it unless it is tilted or stood on end"
    )
