"""Whether what travels can be turned round a right angle of the venue's corridor.

Formula: `intent.formulas.openings.longest_round_corner`. Whether the corridor has such a corner, the venue says.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.effects.handling.passage import UNLIMITED, stated_sides
from intent.effects.handling.travelling import Load
from intent.effects.limits_kept import Limited, any_of, inputs, obstacles, room_for, unchecked
from intent.effects.scene import Sides
from intent.formulas.openings import Opening, Turning, clearance_round_corner, surely_too_wide
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import ZERO, negative, surely_above
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic

LADDER = say("the ladder problem, for what is as wide as it is; both corridors as wide as the narrowest")
WIDTH, HEIGHT, CORNER = "corridor-width", "corridor-height", "corridor-corner"
UNSURE = say("whether it goes round a corner of the corridor cannot be said from what is given")


def corner_effects(sides: Sides, loads: Sequence[Load]) -> Iterator[Effect | Obstacle | Unchecked]:
    """What cannot surely be turned round a right angle, where the venue has one or does not say that it has none."""
    scene = sides.proposed
    has_none = scene.is_(THE_VENUE, CORNER, "no")
    if has_none is Answer.IN:
        return
    if not scene.states(THE_VENUE, WIDTH):
        if scene.states(THE_VENUE, CORNER):
            yield from unchecked(sides, THE_VENUE, WIDTH)
        return
    stated = stated_sides(scene, (WIDTH, HEIGHT))
    corridor = stated[WIDTH], stated.get(HEIGHT, UNLIMITED)
    for load in loads:
        if surely_above(ZERO, clearance_round_corner(load.extent, corridor, load.standing)):
            yield _does_not_stand(sides, load, corridor)
        if load.is_asked_about(*load.sides_named):
            answer = any_of([has_none, _passing(load, corridor)])
            yield from obstacles(sides, answer, _limited(sides, load, corridor, answer))


def _passing(load: Load, corridor: Opening) -> Answer:
    return load.passing(lambda turning: _goes_round(load, corridor, turning))


def _goes_round(load: Load, corridor: Opening, turning: Turning) -> Answer:
    """Whether it goes round, set down straight; whether it would on the slant, nobody computes here."""
    straight = room_for(clearance_round_corner(load.extent, corridor, turning))
    if turning is not Turning.ANY or straight is not Answer.OUT:
        return straight
    return Answer.OUT if surely_too_wide(load.extent, corridor[0]) else Answer.OPEN


def _limited(sides: Sides, load: Load, corridor: Opening, answer: Answer) -> Limited:
    names = [
        name for name in (CORNER, WIDTH, HEIGHT) if name == CORNER or sides.proposed.states(THE_VENUE, name)
    ]
    orientation = (
        () if load.scene.states(load.identifier, "transport-orientation") else ("transport-orientation",)
    )
    length, width, height = (figure(side, "cm") for side in load.extent)
    over = negative(clearance_round_corner(load.extent, corridor, load.freest))
    return Limited(
        slug="corner-too-tight",
        subject=one(load.identifier),
        inputs=[
            *inputs(sides, THE_VENUE, *names),
            *load.inputs(sides, *load.sides_named, *orientation),
        ],
        sure=say(
            "{name}, {length} × {width} × {height}, does not go round the right angle of the venue's corridor, "
            "{across} wide, in any way in which it may travel: it is {over} too large",
            name=load.identifier,
            length=length,
            width=width,
            height=height,
            across=figure(corridor[0], "cm"),
            over=figure(over, "cm"),
        ),
        unsure=UNSURE,
        names_subject=answer is Answer.OUT,
    )


def _does_not_stand(sides: Sides, load: Load, corridor: Opening) -> Effect:
    """What does not go round as it stands, and whether it does on another of its sides."""
    standing = clearance_round_corner(load.extent, corridor, load.standing)
    laid = clearance_round_corner(load.extent, corridor, load.freest)
    is_known = sides.proposed.states(THE_VENUE, HEIGHT)
    return Effect(
        topic=EffectTopic.HANDLING,
        subject=one(load.identifier),
        quantity=say("room to turn a corner"),
        unit="cm",
        proposed=in_unit(standing, "cm"),
        sentence=_words(room_for(laid) is Answer.IN and is_known),
        source=LADDER,
        missing=(*sides.proposed.unknown(THE_VENUE, HEIGHT, CORNER), *load.unknown("transport-orientation")),
    )


def _words(can_be_turned: bool) -> Message:
    if can_be_turned:
        return say(
            "it does not go round a right angle of the corridor as it stands, but does on another of its sides"
        )
    return say("it does not go round a right angle of the corridor unless it is tilted or stood on end")
