"""The way up: what travels in the venue's lift, and on stairs with no lift beside them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.effects.handling.passage import UNLIMITED, stated_sides
from intent.effects.handling.travelling import Load
from intent.effects.limits_kept import Limited, at_most, inputs, obstacles, room_for, unchecked
from intent.effects.scene import Sides
from intent.effects.unsaid import Missing, unsaid_effects
from intent.formulas.niosh import METRIC
from intent.formulas.openings import Sides as Extent
from intent.formulas.openings import Turning, clearance_in_car, surely_larger
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one, several
from intent.names import THE_VENUE
from intent.values.bounds import ZERO, natural, over, point, surely_above
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic

CAR = ("lift-width", "lift-depth", "lift-height")
ARITHMETIC = say("arithmetic; standing straight in the car")
LOAD_CONSTANT = say("DHHS (NIOSH) 94-110: 23 kg in the best of postures, for one person who does not walk")
LIFT_LIMIT = "lift-load-limit"
CLEARANCE = say("clearance in the lift")
UNSURE_CAR = say("whether it goes into the lift cannot be said from what is given")


def lift_effects(sides: Sides, loads: Sequence[Load]) -> Iterator[Effect | Obstacle | Unchecked]:
    """Whether all that travels goes into the lift, where the venue says how large it is or what it bears."""
    scene = sides.proposed
    if any(scene.states(THE_VENUE, name) for name in CAR):
        yield from _into_the_car(sides, loads)
    has_lift = any(scene.states(THE_VENUE, name) for name in (*CAR, LIFT_LIMIT))
    if loads and has_lift:
        yield from unchecked(sides, THE_VENUE, *CAR, LIFT_LIMIT)
    if not scene.states(THE_VENUE, LIFT_LIMIT):
        return
    limit = natural(scene.venue(LIFT_LIMIT))
    for load in loads:
        if load.is_asked_about("weight"):
            yield from obstacles(sides, at_most(load.weight, limit), _too_heavy(sides, load, limit))
    weights = [load for load in loads if load.weight.low and not surely_above(load.weight, limit)]
    heaviest = max((load.weight.low or 0 for load in weights), default=0)
    for load in weights:
        if load.weight.low == heaviest:
            yield _heaviest(load, limit)


def _too_heavy(sides: Sides, load: Load, limit: Interval) -> Limited:
    return Limited(
        slug="lift-overloaded",
        subject=one(load.identifier),
        inputs=[*load.inputs(sides, "weight"), *inputs(sides, THE_VENUE, LIFT_LIMIT)],
        sure=say(
            "it weighs {weight}, and the lift of the venue may carry {limit}",
            weight=figure(load.weight, "kg"),
            limit=figure(limit, "kg"),
        ),
        unsure=say("whether the lift carries it cannot be said from what is given"),
    )


def _heaviest(load: Load, limit: Interval) -> Effect:
    return Effect(
        topic=EffectTopic.HANDLING,
        subject=one(load.identifier),
        quantity=say("share of what the lift may carry"),
        unit="%",
        proposed=in_unit(over(load.weight, limit), "%"),
        sentence=say("the heaviest of all that goes into the lift; those who go with it are not counted"),
        source=say("arithmetic"),
    )


def _into_the_car(sides: Sides, loads: Sequence[Load]) -> Iterator[Effect | Obstacle]:
    scene = sides.proposed
    width, deep, high = (natural(scene.venue(name)) for name in CAR)
    car = (width, deep, high)
    standing: list[tuple[Load, Interval]] = []
    unsure: dict[str, Missing] = {}
    for load in loads:
        if load.is_asked_about(*load.sides_named):
            yield from _obstructed(sides, load)
        as_it_stands = clearance_in_car(load.extent, car, load.standing)
        laid = clearance_in_car(load.extent, car, load.freest)
        if room_for(as_it_stands) is Answer.IN:
            standing.append((load, as_it_stands))
        elif surely_larger(load.extent, car, load.freest):
            continue
        elif room_for(laid) is Answer.IN:
            words = say("it goes into the lift only when it is turned onto another of its sides")
            yield _clearance(load, laid, words, missing=load.unknown("transport-orientation"))
        elif surely_above(ZERO, laid):
            yield _clearance(load, laid, say("it goes into the lift on the slant at most, if at all"))
        elif load.is_new or load.is_box:
            unsure[load.identifier] = (*load.unknown(*load.sides_named), *scene.unknown(THE_VENUE, *CAR))
    words = say("the tightest of all that travels: it goes into the lift as it stands")
    tightest = min((spare.low or 0 for _, spare in standing), default=0)
    for load, spare in standing:
        if spare.low == tightest:
            yield _clearance(load, spare, words)
    yield from unsaid_effects(
        unsure,
        topic=EffectTopic.HANDLING,
        quantity=CLEARANCE,
        unit="cm",
        sentence=UNSURE_CAR,
        source=ARITHMETIC,
    )


def _clearance(load: Load, spare: Interval, words: Message, *, missing: Missing = ()) -> Effect:
    return Effect(
        topic=EffectTopic.HANDLING,
        subject=one(load.identifier),
        quantity=CLEARANCE,
        unit="cm",
        proposed=in_unit(spare, "cm"),
        sentence=words,
        source=ARITHMETIC,
        missing=missing,
    )


def _obstructed(sides: Sides, load: Load) -> Iterator[Obstacle]:
    """What does not surely go into the car."""
    stated = stated_sides(sides.proposed, CAR)
    wide, deep, high = (stated.get(name, UNLIMITED) for name in CAR)
    car = (wide, deep, high)

    def passes(turning: Turning) -> Answer:
        if surely_larger(load.extent, car, turning):
            return Answer.OUT
        is_in = room_for(clearance_in_car(load.extent, car, turning)) is Answer.IN
        return Answer.IN if is_in else Answer.OPEN

    answer = load.passing(passes)
    limited = Limited(
        slug="lift-too-small",
        subject=one(load.identifier),
        inputs=[*load.inputs(sides, *load.sides_named), *inputs(sides, THE_VENUE, *stated)],
        sure=_too_large(load, car),
        unsure=UNSURE_CAR,
        names_subject=answer is Answer.OUT,
    )
    yield from obstacles(sides, answer, limited)


def _too_large(load: Load, car: Extent) -> Message:
    length, width, height = (figure(side, "cm") for side in load.extent)
    across, deep, high = (figure(side, "cm") for side in car)
    return say(
        "{name}, {length} × {width} × {height}, does not go into the lift of the venue "
        "(width {across}, depth {deep}, height {high}) in any way in which it may travel",
        name=load.identifier,
        length=length,
        width=width,
        height=height,
        across=across,
        deep=deep,
        high=high,
    )


def stair_effects(sides: Sides, loads: Sequence[Load]) -> Iterator[Effect]:
    """What is too heavy for one person, where there are stairs with no lift beside them."""
    scene = sides.proposed
    if not scene.states(THE_VENUE, "stairs") or scene.is_(THE_VENUE, "stairs", "yes") is not Answer.IN:
        return
    heavy = [load for load in loads if surely_above(load.weight, point(METRIC.load))]
    if not heavy:
        return
    words = say(
        "heavier than {limit} and to be brought up or down stairs, for which the lifting equation does not hold: "
        "plan a stair trolley or hoist and people trained for it; local rules prevail",
        limit=figure(point(METRIC.load), "kg"),
    )
    yield Effect(
        topic=EffectTopic.HANDLING,
        subject=several(load.identifier for load in heavy),
        quantity=say("heavy loads on stairs"),
        proposed=point(len(heavy)),
        sentence=words,
        source=LOAD_CONSTANT,
    )
