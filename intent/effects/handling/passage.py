"""Whether what travels goes through an opening of the venue: a door, or the cross-section of a corridor."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from intent.effects.handling.travelling import Load
from intent.effects.limits_kept import Limited, inputs, obstacles, room_for, unchecked
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing, unsaid_effects
from intent.formulas.openings import Opening, Turning, clearance
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import ZERO, natural, negative, point, surely_above
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic

CRITERION = say(
    "arithmetic; on the slant, the criterion for a rectangle in another (Carver 1957, as quoted in Wetzel 2000)"
)

UNLIMITED = point(10**6)
"""Metres: the side of an opening that nobody states."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Passage:
    """An opening on the way in: what its size is called, and what is said of things that come to it."""

    slug: str
    """Of the finding that something does not go through."""
    across: str
    upright: str
    """The characteristics of the venue that give its width and its height."""
    quantity: Message
    as_it_stands: Message
    laid: Message
    slanting: Message
    unsure: Message
    blocked: Message


DOOR = Passage(
    slug="door-too-narrow",
    across="door-width",
    upright="door-height",
    quantity=say("clearance at the door"),
    as_it_stands=say("the tightest of all that travels: it goes through the door as it stands"),
    laid=say("it goes through the door only when it is turned onto another of its sides"),
    slanting=say("it goes through the door only when it is tilted on the slant"),
    unsure=say("whether it goes through the door cannot be said from what is given"),
    blocked=say(
        "{name}, {length} × {width} × {height}, does not go through the door of the venue, {hole}, "
        "in any way in which it may travel: it is {over} too large"
    ),
)
CORRIDOR = Passage(
    slug="corridor-too-narrow",
    across="corridor-width",
    upright="corridor-height",
    quantity=say("clearance in the corridor"),
    as_it_stands=say("the tightest of all that travels: it goes through the corridor as it stands"),
    laid=say("it goes through the corridor only when it is turned onto another of its sides"),
    slanting=say("it goes through the corridor only when it is tilted on the slant"),
    unsure=say("whether it goes through the corridor cannot be said from what is given"),
    blocked=say(
        "{name}, {length} × {width} × {height}, does not go through the corridor of the venue, {hole}, "
        "in any way in which it may travel: it is {over} too large"
    ),
)


def passage_effects(
    sides: Sides, loads: Sequence[Load], passage: Passage
) -> Iterator[Effect | Obstacle | Unchecked]:
    """The clearances at an opening, as far as the venue says how large it is."""
    scene = sides.proposed
    if loads:
        yield from unchecked(sides, THE_VENUE, passage.across, passage.upright)
    if not any(scene.states(THE_VENUE, name) for name in (passage.across, passage.upright)):
        return
    hole = natural(scene.venue(passage.across)), natural(scene.venue(passage.upright))
    standing: list[tuple[Load, Interval]] = []
    unsure: dict[str, Missing] = {}
    for load in loads:
        if load.is_asked_about(*load.sides_named):
            yield from _obstructed(sides, load, passage)
        as_it_stands = clearance(load.extent, hole, load.standing)
        if room_for(as_it_stands) is Answer.IN:
            standing.append((load, as_it_stands))
        elif surely_above(ZERO, clearance(load.extent, hole, load.freest)):
            continue
        elif (turned := _turned(load, hole, passage)) is not None:
            yield turned
        elif load.is_new or load.is_box or any(side.high is not None for side in load.extent):
            unknown_hole = scene.unknown(THE_VENUE, passage.across, passage.upright)
            unsure[load.identifier] = (*load.unknown(*load.sides_named), *unknown_hole)
    tightest = min((spare.low or 0 for _, spare in standing), default=0)
    for load, spare in standing:
        if spare.low == tightest:
            yield _clearance(load, passage, spare=spare, words=passage.as_it_stands)
    yield from unsaid_effects(
        unsure,
        topic=EffectTopic.HANDLING,
        quantity=passage.quantity,
        unit="cm",
        sentence=passage.unsure,
        source=CRITERION,
    )


def _turned(load: Load, hole: Opening, passage: Passage) -> Effect | None:
    """How it goes through when it is turned: laid on a side rather than slanting; none where neither is sure."""
    straight = Turning.LAID if load.freest is Turning.ANY else load.freest
    for turning, words in ((straight, passage.laid), (load.freest, passage.slanting)):
        spare = clearance(load.extent, hole, turning)
        if room_for(spare) is Answer.IN:
            return _clearance(
                load,
                passage,
                spare=spare,
                words=words,
                missing=load.unknown("transport-orientation"),
            )
    return None


def _clearance(
    load: Load, passage: Passage, *, spare: Interval, words: Message, missing: Missing = ()
) -> Effect:
    return Effect(
        topic=EffectTopic.HANDLING,
        subject=one(load.identifier),
        quantity=passage.quantity,
        unit="cm",
        proposed=in_unit(spare, "cm"),
        sentence=words,
        source=CRITERION,
        missing=missing,
    )


def stated_sides(scene: Scene, names: Iterable[str]) -> dict[str, Interval]:
    """The sides of an opening of the venue that are stated, in metres; one that nobody states limits nothing."""
    return {name: natural(scene.venue(name)) for name in names if scene.states(THE_VENUE, name)}


def _obstructed(sides: Sides, load: Load, passage: Passage) -> Iterator[Obstacle]:
    """What does not surely go through."""
    stated = stated_sides(sides.proposed, (passage.across, passage.upright))
    across, upright = hole = (
        stated.get(passage.across, UNLIMITED),
        stated.get(passage.upright, UNLIMITED),
    )

    def passes(turning: Turning) -> Answer:
        return room_for(clearance(load.extent, hole, turning))

    length, width, height = (figure(side, "cm") for side in load.extent)
    words = passage.blocked.filled(
        name=load.identifier,
        length=length,
        width=width,
        height=height,
        hole=say("{across} wide", across=figure(across, "cm"))
        if upright == UNLIMITED
        else say("{across} × {upright}", across=figure(across, "cm"), upright=figure(upright, "cm")),
        over=figure(negative(clearance(load.extent, hole, load.freest)), "cm"),
    )
    answer = load.passing(passes)
    limited = Limited(
        slug=passage.slug,
        subject=one(load.identifier),
        inputs=[*load.inputs(sides, *load.sides_named), *inputs(sides, THE_VENUE, *stated)],
        sure=words,
        unsure=passage.unsure,
        names_subject=answer is Answer.OUT,
    )
    yield from obstacles(sides, answer, limited)
