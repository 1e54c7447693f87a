"""What the work takes from the mains and gives to the room as heat, before and after.

Nothing is told of a proposal that takes as much as documented, unless the venue says what it has to give.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.effects.limits_kept import Limited, at_most, inputs, obstacles, unchecked
from intent.effects.picture.size import grown
from intent.effects.power.circuits import circuit_effects
from intent.effects.power.consumers import (
    Sum,
    consumers,
    inputs_of_losses,
    inputs_taken,
    lacking_effects,
    losses,
    summed,
    supplies,
    taken_by,
    with_losses,
)
from intent.effects.power.mains import mains_effects
from intent.effects.power.plugs import plug_obstacles
from intent.effects.scene import Scene, Sides
from intent.formulas import electricity
from intent.language.figures import Figure, figure
from intent.language.message import Message, say, say_of
from intent.model.subject import WHOLE_VENUE, WHOLE_WORK
from intent.names import THE_VENUE
from intent.values.bounds import (
    ZERO,
    known,
    minus,
    natural,
    negative,
    surely_above,
    surely_within,
    total,
)
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic

SUM = say(
    "power of all devices, each once, while they work; transformers and power supplies are counted with what they "
    "feed, and their own losses where these are stated; 1 BTU is 1055.05585262 J"
)
HEAT = say(
    "what a device takes from the mains it gives to the room as heat; the heat of visitors and of the sun is not "
    "counted"
)
COOLING = "cooling-capacity"
SUPPLY = ("mains", "circuit-current", "circuits", "cooling-capacity")
"""What a venue may say of its supply."""


def power_effects(sides: Sides) -> Iterator[Effect | Obstacle | Unchecked]:
    """The effects of the proposal on the venue's mains and air conditioning."""
    takers = consumers(sides.proposed)
    venue_speaks = any(sides.proposed.states(THE_VENUE, name) for name in SUPPLY)
    yield from _in_all(sides, takers, venue_speaks)
    yield from _heat(sides, takers)
    yield from circuit_effects(sides, takers)
    running = [part for part in takers if sides.proposed.runs(part) is not Answer.OUT]
    yield from mains_effects(sides, running)
    yield from plug_obstacles(sides, running)


def _in_all(sides: Sides, takers: Sequence[str], venue_speaks: bool) -> Iterator[Effect]:
    earlier = consumers(sides.documented)
    change = _change(sides, earlier, takers)
    if change == ZERO and not (venue_speaks and takers):
        return
    before, after = (
        with_losses(scene, summed(scene, parts, "power"))
        for scene, parts in ((sides.documented, earlier), (sides.proposed, takers))
    )
    if not before.is_blank or not after.is_blank:
        yield Effect(
            topic=EffectTopic.POWER,
            subject=WHOLE_WORK,
            quantity=say("power in all"),
            unit="W",
            documented=before.total,
            proposed=after.total,
            sentence=_told(_difference(before, after, change), after),
            source=SUM,
        )
    yield from lacking_effects(
        sides.proposed,
        after.lacking,
        "power",
        quantity=sides.proposed.called("power"),
        sentence=say("not in the sum, for it is not given"),
        source=SUM,
    )
    yield from lacking_effects(
        sides.proposed,
        supplies(sides.proposed),
        "power-loss",
        quantity=sides.proposed.called("power-loss"),
        sentence=say("not in the sum, for it is not given"),
        source=SUM,
    )


def _change(sides: Sides, earlier: Sequence[str], takers: Sequence[str]) -> Interval:
    """By how much the power changes; what a device that stays takes cancels out, so that it need not be known."""
    before, after = _by_device(sides.documented, earlier), _by_device(sides.proposed, takers)
    gone = [power for device, power in before.items() if after.get(device) != power]
    come = [power for device, power in after.items() if before.get(device) != power]
    return minus(total(come), total(gone))


def _by_device(scene: Scene, takers: Sequence[str]) -> dict[tuple[str, bool], Interval]:
    """What each device takes, and what each supply loses."""
    taken = {part: taken_by(scene, part, "power") for part in takers} | losses(scene)
    return {_device(scene, part): power for part, power in taken.items()}


def _device(scene: Scene, part: str) -> tuple[str, bool]:
    """By what a device is found again on the other side: its name, or its place, unless it is replaced."""
    is_proposed = scene.state.documented is not None
    is_other = is_proposed and part in scene.case.substituted
    return scene.device(part) or f" {part}", is_other and scene.device(part) is None


def _difference(before: Sum, after: Sum, change: Interval) -> Message:
    if change == ZERO:
        return say("as much as documented")
    if known(before.total) is not None and known(after.total) is not None:
        return grown(before.total, after.total)
    if surely_within(ZERO, change):
        return say("{much} more than documented", much=figure(change, "W"))
    if surely_within(change, ZERO):
        return say("{much} less than documented", much=figure(negative(change), "W"))
    return say("by how much it differs cannot be said from what is given")


def _told(difference: Message, after: Sum) -> Message:
    """The change with the heat that the power becomes, and of how many devices the power is not given."""
    heat = _btu(after.total)
    if not after.lacking:
        return say("{difference}; it becomes heat: {heat}", difference=difference, heat=heat)
    return say_of(
        after.of,
        "{difference}; no less than this, for it is not given of the only device; it becomes heat: {heat}",
        "{difference}; no less than this, for it is not given of {some} of {all} devices; it becomes heat: {heat}",
        difference=difference,
        some=len(after.lacking),
        all=after.of,
        heat=heat,
    )


def _btu(watts: Interval) -> Figure:
    return figure(electricity.in_btu_an_hour(watts), "BTU/h")


def _heat(sides: Sides, takers: Sequence[str]) -> Iterator[Effect | Obstacle | Unchecked]:
    """The heat of all devices against what the air conditioning carries away for the work."""
    scene = sides.proposed
    if not takers:
        return
    if not scene.states(THE_VENUE, COOLING):
        yield from unchecked(sides, THE_VENUE, COOLING)
        return
    capacity = natural(scene.venue(COOLING))
    found = with_losses(scene, summed(scene, takers, "heat-output"))
    yield from obstacles(
        sides, at_most(found.total, capacity), _warming(sides, takers, found.total, capacity)
    )
    if found.is_blank:
        return
    yield Effect(
        topic=EffectTopic.POWER,
        subject=WHOLE_WORK,
        quantity=say("heat in all"),
        unit="W",
        proposed=found.total,
        sentence=_heat_words(found.total, capacity),
        source=HEAT,
    )


def _warming(sides: Sides, takers: Sequence[str], heat: Interval, capacity: Interval) -> Limited:
    scene = sides.proposed
    found = [
        each
        for part in takers
        for each in inputs_taken(sides, part, "heat-output" if scene.states(part, "heat-output") else "power")
    ]
    return Limited(
        slug="heat",
        subject=WHOLE_VENUE,
        inputs=[*found, *inputs_of_losses(sides), *inputs(sides, THE_VENUE, COOLING)],
        sure=say(
            "the devices give off {heat} of heat, and the air conditioning of the venue carries away {capacity}",
            heat=figure(heat, "W"),
            capacity=figure(capacity, "W"),
        ),
        unsure=say("whether the air conditioning keeps up cannot be said from what is given"),
        names_subject=True,
    )


def _heat_words(heat: Interval, capacity: Interval) -> Message:
    given, carried = _btu(heat), figure(capacity, "W")
    if surely_above(heat, capacity):
        return say(
            "{heat}, more than the {capacity} that the air conditioning carries away: the room warms up",
            heat=given,
            capacity=carried,
        )
    if surely_within(heat, capacity):
        return say(
            "{heat}, within the {capacity} that the air conditioning carries away",
            heat=given,
            capacity=carried,
        )
    return say(
        "{heat}; whether the air conditioning, which carries away {capacity}, keeps up cannot be said",
        heat=given,
        capacity=carried,
    )
