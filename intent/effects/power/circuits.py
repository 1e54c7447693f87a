"""The current that the work draws, in all and on each circuit, against what the venue's circuits may carry.

Where no part names its circuit, it is told how many circuits the work needs. What a circuit bears is for a licensed
electrician to judge by the local code: what is told here is for planning.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.effects.limits_kept import unchecked
from intent.effects.power.circuit_limits import UNSURE, Loads, circuit_obstacles
from intent.effects.power.consumers import lacking_effects, supplies
from intent.effects.power.feeds import (
    Circuits,
    Feed,
    circuits_of,
    current_of,
    feeds_of,
    with_losses_on_the_way,
)
from intent.effects.power.surges import surge_effects
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.formulas import electricity
from intent.language.figures import figure
from intent.language.message import Message, Place, say
from intent.model.subject import WHOLE_WORK, several
from intent.names import THE_VENUE
from intent.values.bounds import over, surely_above, surely_within, total
from intent.values.regions import Interval
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic

CURRENT = say(
    "apparent power over the venue's mains voltage, of three phases also over √3, of one where nothing is said; "
    "where the venue states no share, 80 % of the rating: in North America after NEC (NFPA 70) 210.20(A), as "
    "quoted, for loads of three hours or more, elsewhere common practice without a source; the local code comes "
    "first, and a licensed electrician judges"
)
IN_ALL = say("current in all")
PHASES = "supply-phases"


def circuit_effects(sides: Sides, takers: Sequence[str]) -> Iterator[Effect | Obstacle | Unchecked]:
    """The effects of the devices that take power on the venue's circuits, where it says what these carry."""
    circuits = circuits_of(sides.proposed)
    feeds = feeds_of(sides.proposed, takers, circuits.number)
    if takers and sides.proposed.states(THE_VENUE, "circuit-current"):
        yield from _currents(sides, circuits, feeds)
    elif takers:
        yield from unchecked(sides, THE_VENUE, "circuit-current")
    yield from surge_effects(sides, feeds)


def _currents(
    sides: Sides, circuits: Circuits, feeds: Sequence[Feed]
) -> Iterator[Effect | Obstacle | Unchecked]:
    scene = sides.proposed
    loads = with_losses_on_the_way(
        sides, {part: current_of(scene, part) for feed in feeds for part in feed.parts}
    )
    yield from circuit_obstacles(sides, circuits, feeds, loads)
    if not any(load.low for load in loads.values()):
        missing = scene.unknown(THE_VENUE, "mains")
        if missing:
            yield _in_all(None, UNSURE, missing)
        return
    if not any(feed.name for feed in feeds):
        yield from _unassigned(scene, circuits, loads)
    else:
        yield _in_all(
            total(loads.values()), _taken(scene, say("of all circuits together")), _phases_unsaid(scene)
        )
        yield from _by_circuit(sides, circuits, feeds, loads)
    yield from _least(scene, loads)


def _in_all(drawn: Interval | None, words: Message, missing: Missing = ()) -> Effect:
    return Effect(
        topic=EffectTopic.POWER,
        subject=WHOLE_WORK,
        quantity=IN_ALL,
        unit="A",
        proposed=drawn,
        sentence=words,
        source=CURRENT,
        missing=missing,
    )


def _unassigned(scene: Scene, circuits: Circuits, loads: Loads) -> Iterator[Effect]:
    """How many circuits the work needs, where none is named."""
    drawn = total(loads.values())
    needed = electricity.circuits_needed(loads.values(), circuits.allowed)
    unsaid = _phases_unsaid(scene)
    if not circuits.is_stated:
        unsaid = (scene.called("continuous-load-share"), *unsaid)
    yield _in_all(drawn, _taken(scene, _needed_words(needed, circuits)), unsaid)


def _phases_unsaid(scene: Scene) -> Missing:
    """Whether the supply has one phase or three, where nobody says, or where it is said to have either."""
    is_known = len(scene.names(THE_VENUE, PHASES)) == 1
    return () if is_known else (scene.called(PHASES),)


def _taken(scene: Scene, words: Message) -> Message:
    """With what is taken for granted of the supply, beside the figure that rests on it."""
    if not _phases_unsaid(scene):
        return words
    return say(
        "{words}; reckoned as on a supply of one phase, since nobody says how many it has", words=words
    )


def _needed_words(needed: Interval, circuits: Circuits) -> Message:
    places: dict[str, Place] = {
        "needed": figure(needed),
        "allowance": circuits.allowance,
        "given": figure(circuits.number),
    }
    if needed.high == 1:
        return say("one circuit carries it, loaded to at most {allowance}", **places)
    if needed.low == 1 and needed.high is None:
        return say("whether one circuit carries it, loaded to at most {allowance}, cannot be said", **places)
    if circuits.number.high is None:
        return say("circuits needed: {needed}, each loaded to at most {allowance}", **places)
    if surely_above(needed, circuits.number):
        return say(
            "circuits needed: {needed}, each loaded to at most {allowance}; given to the work: {given}, which is not "
            "enough",
            **places,
        )
    return say(
        "circuits needed: {needed}, each loaded to at most {allowance}; given to the work: {given}", **places
    )


def _by_circuit(
    sides: Sides, circuits: Circuits, feeds: Sequence[Feed], loads: Loads
) -> Iterator[Effect | Obstacle | Unchecked]:
    for feed in feeds:
        drawn = total(loads[part] for part in feed.parts)
        if feed.name:
            yield _on_one(sides.proposed, circuits, feed, drawn)
        else:
            yield from lacking_effects(
                sides.proposed,
                feed.parts,
                "circuit",
                quantity=sides.proposed.called("circuit"),
                sentence=say("which circuit feeds it is not given, and so in none of these sums"),
                source=CURRENT,
            )


def _on_one(scene: Scene, circuits: Circuits, feed: Feed, drawn: Interval) -> Effect:
    is_over = surely_above(drawn, circuits.allowed)
    return Effect(
        topic=EffectTopic.POWER,
        subject=several(feed.parts),
        quantity=say("current on one circuit"),
        unit="A",
        proposed=drawn,
        sentence=feed.told(_load_words(circuits, drawn, is_over)),
        source=CURRENT,
        missing=(
            *(() if circuits.is_stated else (scene.called("continuous-load-share"),)),
            *_phases_unsaid(scene),
        ),
    )


def _load_words(circuits: Circuits, drawn: Interval, is_over: bool) -> Message:
    load, allowance = figure(over(drawn, circuits.rating), "%"), circuits.allowance
    if is_over:
        return say(
            "more than {allowance}: an electrician has to spread the devices over more circuits",
            allowance=allowance,
        )
    if surely_within(drawn, circuits.allowed):
        return say("{load} of its rating, within {allowance}", load=load, allowance=allowance)
    return say(
        "{load} of its rating; whether that is within {allowance} cannot be said",
        load=load,
        allowance=allowance,
    )


def _least(scene: Scene, loads: Loads) -> Iterator[Effect]:
    """The devices that are counted at the least they can draw, for their power factor is not given."""
    parts = [part for part, load in loads.items() if load.high is None and scene.is_given(part, "power")]
    yield from lacking_effects(
        scene,
        supplies(scene),
        "power-loss",
        quantity=say("current"),
        sentence=say("what it loses itself is not given, and so counted from nothing up"),
        source=CURRENT,
    )
    yield from lacking_effects(
        scene,
        parts,
        "power-factor",
        quantity=say("current"),
        sentence=say(
            "counted at the least current that its power makes, as with a power factor of 1; it may be much more"
        ),
        source=CURRENT,
    )
