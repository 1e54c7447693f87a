"""The current that the work draws, in all and on each circuit, against what the venue's circuits may carry.

Where no part names its circuit, it is told how many circuits the work needs. What a circuit bears is for a licensed
electrician to judge by the local code: what is told here is for planning.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from intent.effects.power.consumers import lacking_effects
from intent.effects.power.feeds import Circuits, Feed, circuits_of, feeds_of
from intent.effects.power.surges import surge_effects
from intent.effects.scene import THE_VENUE, Scene, Sides
from intent.formulas import electricity
from intent.language.message import Figure, Saying, figure, say
from intent.values.bounds import natural, over, surely_above, surely_within, times, total
from intent.values.regions import Interval
from intent.variance.result import Effect, EffectTopic, VenueFinding

CURRENT = (
    "apparent power over the venue's mains voltage; continuous loads after NEC (NFPA 70) 210.20(A), as quoted: 80 % "
    "where the venue states no share; the local code comes first, and a licensed electrician judges"
)
Loads = Mapping[str, Interval]
"""The current of each part, in amperes."""


def circuit_effects(sides: Sides, takers: Sequence[str]) -> Iterator[Effect | VenueFinding]:
    """The effects of the devices that take power on the venue's circuits, where it says what these carry."""
    circuits = circuits_of(sides.proposed)
    feeds = feeds_of(sides.proposed, takers, circuits.number)
    if circuits.rating.high is not None and takers:
        yield from _currents(sides, circuits, feeds)
    yield from surge_effects(sides, feeds)


def _currents(sides: Sides, circuits: Circuits, feeds: Sequence[Feed]) -> Iterator[Effect | VenueFinding]:
    scene = sides.proposed
    loads = {part: _current(scene, part, circuits.mains) for feed in feeds for part in feed.parts}
    if not any(load.low for load in loads.values()):
        words = say("whether the circuits of the venue carry it cannot be said from what is given")
        missing = () if scene.is_given(THE_VENUE, "mains") else (scene.label("mains"),)
        if missing:
            yield Effect(
                topic=EffectTopic.POWER,
                members=(),
                quantity="current in all",
                unit="A",
                documented=None,
                proposed=None,
                sentence=words,
                source=CURRENT,
                missing=missing,
            )
        return
    if not any(feed.name for feed in feeds):
        yield from _unassigned(sides, circuits, feeds[0], loads)
    else:
        yield _in_all(loads, say("of all circuits together"))
        yield from _by_circuit(sides, circuits, feeds, loads)
    yield from _least(scene, loads)


def _current(scene: Scene, part: str, mains: Interval) -> Interval:
    return electricity.current(natural(scene.bounds(part, "apparent-power")), mains)


def _in_all(loads: Loads, words: Saying) -> Effect:
    return Effect(
        topic=EffectTopic.POWER,
        members=(),
        quantity="current in all",
        unit="A",
        documented=None,
        proposed=total(loads.values()),
        sentence=words,
        source=CURRENT,
    )


def _unassigned(
    sides: Sides, circuits: Circuits, feed: Feed, loads: Loads
) -> Iterator[Effect | VenueFinding]:
    """How many circuits the work needs, and whether those that it has cannot be enough."""
    needed = electricity.circuits_needed(loads.values(), circuits.allowed)
    yield _in_all(loads, _needed_words(needed, circuits))
    for part, load in loads.items():
        if surely_above(load, circuits.bearable):
            text = say(
                "{part} draws {current} at the mains of the venue, and one circuit may carry {limit}",
                part=part,
                current=_amperes(load),
                limit=_amperes(circuits.bearable),
            )
            yield VenueFinding(slug="circuit-overloaded", text=text, subject=part, ask=sides.asks)
    drawn = total(loads.values())
    if feed.surely_exceeds(drawn, circuits.bearable):
        text = say(
            "the devices draw {current} at the mains of the venue, and the circuits given to the work carry {limit}",
            current=_amperes(drawn),
            limit=_amperes(times(circuits.number, circuits.bearable)),
        )
        yield VenueFinding(slug="circuit-overloaded", text=text, subject="", ask=sides.asks)


def _needed_words(needed: Interval, circuits: Circuits) -> Saying:
    places = {
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
) -> Iterator[Effect | VenueFinding]:
    for feed in feeds:
        drawn = total(loads[part] for part in feed.parts)
        if feed.name:
            yield _on_one(sides.proposed, circuits, feed, drawn)
        else:
            words = say("which circuit feeds it is not given, and so in none of these sums")
            yield from lacking_effects(sides.proposed, feed.parts, "circuit", words, CURRENT, "circuit")
        if feed.name and surely_above(drawn, circuits.bearable):
            text = say(
                "{parts} draw {current} on circuit {name}, and a circuit of the venue may carry {limit}",
                parts=feed.parts,
                name=feed.name,
                current=_amperes(drawn),
                limit=_amperes(circuits.bearable),
            )
            yield VenueFinding(
                slug="circuit-overloaded", text=text, subject=", ".join(feed.parts), ask=sides.asks
            )


def _on_one(scene: Scene, circuits: Circuits, feed: Feed, drawn: Interval) -> Effect:
    is_over = surely_above(drawn, circuits.allowed)
    is_usual = is_over and not circuits.is_stated and not surely_above(drawn, circuits.rating)
    return Effect(
        topic=EffectTopic.POWER,
        members=feed.parts,
        quantity="current on one circuit",
        unit="A",
        documented=None,
        proposed=drawn,
        sentence=feed.told(_load_words(circuits, drawn, is_over)),
        source=CURRENT,
        missing=(scene.label("continuous-load-share"),) if is_usual else (),
    )


def _load_words(circuits: Circuits, drawn: Interval, is_over: bool) -> Saying:
    load, allowance = figure(over(drawn, circuits.rating), "%", 100), circuits.allowance
    if is_over:
        return say(
            "more than {allowance}: an electrician has to spread the devices over more circuits",
            allowance=allowance,
        )
    if surely_within(drawn, circuits.allowed):
        return say("{load} of its rating, within {allowance}", load=load, allowance=allowance)
    words = "{load} of its rating; whether that is within {allowance} cannot be said"
    return say(words, load=load, allowance=allowance)


def _least(scene: Scene, loads: Loads) -> Iterator[Effect]:
    """Of which devices the current is not known to the top though the power is."""
    parts = [part for part, load in loads.items() if load.high is None and scene.is_given(part, "power")]
    words = say(
        "counted at the least current that its power makes, as with a power factor of 1; it may be much more"
    )
    yield from lacking_effects(scene, parts, "current", words, CURRENT, "power-factor")


def _amperes(current: Interval) -> Figure:
    return figure(current, "A")
