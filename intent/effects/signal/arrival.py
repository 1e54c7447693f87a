"""Whether the picture still reaches every display: along its connections, in its channel, in a standard it takes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from intent.effects.scene import Scene, Sides, unknown_among
from intent.effects.signal.paths import PICTURE, Lost, Way, links_of, named, stated_names, ways_of
from intent.language.message import Saying, say
from intent.values.bounds import between, point
from intent.values.sets import Answer
from intent.variance.result import Effect, EffectTopic

CONNECTIONS = "the connections of the work, and what its devices give and take"
CONVERTING = "common practice, no source"
_JOINING = ("player", "converter", "cable", "control")


def signal_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on the way of the picture."""
    ways = ways_of(sides, PICTURE)
    for part in sides.proposed.parts("display"):
        if not sides.was_there(part.identifier):
            continue
        before, after = ways.documented(part.identifier), ways.proposed(part.identifier)
        lost = ways.lost(part.identifier)
        if lost is not None:
            yield lost_effect(sides, part.identifier, lost, "players whose picture arrives")
        yield from _channel(sides, part.identifier, before, after)
        yield from _standard(sides, part.identifier, after)
    yield from _unsaid(sides)
    yield from _added_converters(sides)


def lost_effect(sides: Sides, part: str, lost: Lost, quantity: str) -> Effect:
    """What no longer reaches a part; an addition may mend it, for nobody records what that is connected to."""
    added = _added(sides.proposed, sides, *_JOINING)
    why = say("{reasons}", reasons=lost.reasons) if len(lost.reasons) > 1 else lost.reasons[0]
    sentence = (
        say(
            "{why}; whether {added} mends it is not said, for additions have no connections",
            why=why,
            added=added,
        )
        if added
        else why
    )
    after = between(lost.after, lost.before) if added else point(lost.after)
    return Effect(
        topic=EffectTopic.SIGNAL,
        members=(part,),
        quantity=quantity,
        unit="",
        documented=point(lost.before),
        proposed=after,
        sentence=sentence,
        source=CONNECTIONS,
    )


def _added(scene: Scene, sides: Sides, *kinds: str) -> tuple[str, ...]:
    return tuple(part.identifier for part in scene.parts(*kinds) if not sides.was_there(part.identifier))


def _channel(
    sides: Sides, part: str, before: Mapping[str, Way], after: Mapping[str, Way]
) -> Iterator[Effect]:
    """Whether the player at the other end, or where no connection is recorded any player, carries the channel."""
    if not sides.proposed.states(part, "channel") or (before and not after):
        return
    carried = _carrying(sides.documented, part, before or _players(sides.documented))
    carrying = _carrying(sides.proposed, part, after or _players(sides.proposed))
    if not carried or carrying:
        return
    channel = sides.proposed.text(part, "channel")
    sentence = (
        say(
            "{players} at the other end does not carry channel {channel}",
            players=tuple(after),
            channel=channel,
        )
        if after
        else say("no player that is there carries channel {channel}", channel=channel)
    )
    yield Effect(
        topic=EffectTopic.SIGNAL,
        members=(part,),
        quantity="players of its channel",
        unit="",
        documented=point(len(carried)),
        proposed=point(0),
        sentence=sentence,
        source=CONNECTIONS,
    )


def _players(scene: Scene) -> tuple[str, ...]:
    return tuple(part.identifier for part in scene.parts("player"))


def _carrying(scene: Scene, part: str, sources: Iterable[str]) -> tuple[str, ...]:
    """The players that carry the channel of a part, or of which no channel is given."""
    shown = stated_names(scene, part, "channel")
    return tuple(
        source
        for source in sources
        if not (carried := stated_names(scene, source, "channel")) or not shown or carried & shown
    )


@dataclass(frozen=True, slots=True)
class _Taken:
    """How many pieces of material a device takes as they are: for sure, perhaps, not."""

    surely: int
    perhaps: int
    refused: frozenset[str]
    """The standards of those that it does not take."""


def _standard(sides: Sides, part: str, after: Mapping[str, Way]) -> Iterator[Effect]:
    """Whether a device takes the standard of the material that its channel shows."""
    before, now = _taken(sides.documented, part), _taken(sides.proposed, part)
    unsaid = bool(now.perhaps and before.surely and not now.refused)
    if (not unsaid and len(now.refused) <= len(before.refused)) or _is_converted(sides.proposed, after):
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        members=(part,),
        quantity="material taken as it is",
        unit="",
        documented=between(before.surely, before.surely + before.perhaps),
        proposed=between(now.surely, now.surely + now.perhaps),
        sentence=_standards_words(sides.proposed, part, now),
        source=CONVERTING,
        missing=unknown_among(sides.proposed, part, "accepted-standard"),
    )


def _standards_words(scene: Scene, part: str, taken: _Taken) -> Saying:
    if not taken.refused:
        return say("whether the device takes the standard of the material is not said")
    return say(
        "the material is {standard} and the device takes {takes}: without a standards converter the picture "
        "rolls, tears or loses its colour",
        standard=named(scene, taken.refused),
        takes=named(scene, stated_names(scene, part, "accepted-standard")),
    )


def _taken(scene: Scene, part: str) -> _Taken:
    takes = stated_names(scene, part, "accepted-standard")
    standards = [stated_names(scene, material, "standard") for material in scene.material(part)]
    told = [standard for standard in standards if standard]
    refused = [standard for standard in told if takes and not standard & takes]
    surely = [standard for standard in told if standard <= takes]
    return _Taken(len(surely), len(told) - len(refused) - len(surely), frozenset[str]().union(*refused))


def _is_converted(scene: Scene, ways: Mapping[str, Way]) -> bool:
    """Whether a converter on the way makes, or may make, another standard of it."""
    through = {link.end for way in ways.values() for link in way[:-1]}
    converters = [part.identifier for part in scene.parts("converter") if part.identifier in through]
    return any(
        scene.is_(converter, "technology", "standards-converter") is not Answer.OUT
        for converter in converters
    )


def _unsaid(sides: Sides) -> Iterator[Effect]:
    """The devices that have come of which nobody says whether they give or take what their connections carry."""
    links = [link for link in links_of(sides) if link.signal]
    for part in sides.proposed.parts():
        identifier = part.identifier
        if identifier not in sides.proposed.case.substituted:
            continue
        taken = [link.signal for link in links if link.end == identifier]
        given = [link.signal for link in links if link.start == identifier]
        if taken and not sides.proposed.states(identifier, "input-signal"):
            signals = named(sides.proposed, frozenset[str]().union(*taken))
            sentence = say("whether the new device takes {signals} is not said", signals=signals)
            yield _perhaps(sides.proposed, identifier, len(taken), sentence, "input-signal")
        if given and not sides.proposed.states(identifier, "output-signal"):
            signals = named(sides.proposed, frozenset[str]().union(*given))
            sentence = say("whether the new device gives {signals} is not said", signals=signals)
            yield _perhaps(sides.proposed, identifier, len(given), sentence, "output-signal")


def _perhaps(scene: Scene, part: str, count: int, sentence: Saying, lacking: str) -> Effect:
    return Effect(
        topic=EffectTopic.SIGNAL,
        members=(part,),
        quantity="connections that fit",
        unit="",
        documented=point(count),
        proposed=between(0, count),
        sentence=sentence,
        source=CONNECTIONS,
        missing=(scene.label(lacking),),
    )


def _added_converters(sides: Sides) -> Iterator[Effect]:
    """Each conversion more than documented may change the picture, and delays it."""
    before, after = _converters(sides.documented), _converters(sides.proposed)
    added = tuple(part for part in after if not sides.was_there(part))
    if not added:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        members=added,
        quantity="signal converters",
        unit="",
        documented=point(len(before)),
        proposed=point(len(after)),
        sentence=say(
            "a converter may delay the picture by a frame or more and change its lines, edges and colours: "
            "compare it with the picture as it was"
        ),
        source=CONVERTING,
    )


def _converters(scene: Scene) -> tuple[str, ...]:
    """The converters that change a signal, or may do so; not those of the mains."""
    return tuple(
        part.identifier
        for part in scene.parts("converter")
        if scene.is_(part.identifier, "technology", "signal-converter") is not Answer.OUT
    )
