"""Whether the picture still reaches every display: along its connections, in its channel, in a standard it takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from intent.effects.scene import Scene, Sides
from intent.effects.signal.links import links_of, terms_of
from intent.effects.signal.mending import loose_additions, perhaps_mended
from intent.effects.signal.paths import PICTURE, Lost, Way, carrying_channel, players_of, ways_of
from intent.effects.signal.standard_taken import (
    ACCEPTED,
    NOT_SAID,
    converters_on,
    converting,
    not_taken_words,
    shown_as_well,
)
from intent.language.message import Message, say, say_of
from intent.model.subject import one, several
from intent.values.bounds import ZERO, between, point
from intent.values.sets import Answer
from intent.variance.result import Effect, EffectTopic

CONNECTIONS = say("the connections of the work, and what its devices give and take")
CONVERTING = say("common practice, no source")


def signal_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on the way of the picture."""
    ways = ways_of(sides, PICTURE)
    for part in sides.proposed.running("display"):
        if not sides.was_there(part.identifier):
            continue
        before, after = ways.documented(part.identifier), ways.proposed(part.identifier)
        lost = ways.lost(part.identifier)
        if lost is not None:
            yield lost_effect(sides, part.identifier, lost, say("players whose picture arrives"))
        yield from _channel(sides, part.identifier, before=before, after=after)
        yield from _standard(sides, part.identifier, after)
    yield from _unsaid(sides)
    yield from _added_converters(sides)


def lost_effect(sides: Sides, part: str, lost: Lost, quantity: Message) -> Effect:
    """What no longer reaches a part; an addition that no connection joins may mend it, which nobody says."""
    added = loose_additions(sides, links_of(sides))
    why = say("{reasons}", reasons=lost.reasons) if len(lost.reasons) > 1 else lost.reasons[0]
    return Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(part),
        quantity=quantity,
        documented=point(lost.before),
        proposed=between(lost.after, lost.before) if added else point(lost.after),
        sentence=perhaps_mended(why, added) if added else why,
        source=CONNECTIONS,
    )


def _channel(
    sides: Sides, part: str, *, before: Mapping[str, Way], after: Mapping[str, Way]
) -> Iterator[Effect]:
    """Whether the channel of a part is lost: with the players connected to it, or with all where none are recorded."""
    if not sides.proposed.states(part, "channel") or (before and not after):
        return
    carried = carrying_channel(sides.documented, part, before or players_of(sides.documented))
    carrying = carrying_channel(sides.proposed, part, after or players_of(sides.proposed))
    if not carried or carrying:
        return
    channel = sides.proposed.text(part, "channel")
    at_the_other_end = say_of(
        len(after),
        "{players} at the other end does not carry channel {channel}",
        "{players} at the other end do not carry channel {channel}",
        players=tuple(after),
        channel=channel,
    )
    nowhere = say("no player that is there carries channel {channel}", channel=channel)
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(part),
        quantity=say("players of its channel"),
        documented=point(len(carried)),
        proposed=ZERO,
        sentence=at_the_other_end if after else nowhere,
        source=CONNECTIONS,
    )


@dataclass(frozen=True, slots=True)
class _Taken:
    """Of the material that a device is given to show, how much of it the device takes as it is."""

    surely: int
    """How many pieces of material it surely takes."""
    perhaps: int
    """How many more it may take."""
    refused: frozenset[str]
    """The standards of those that it does not take."""


def _standard(sides: Sides, part: str, after: Mapping[str, Way]) -> Iterator[Effect]:
    """Whether a device takes the standard of the material that its channel shows."""
    scene = sides.proposed
    before, now = _taken(sides.documented, part), _taken(scene, part)
    unsaid = bool(now.perhaps and before.surely and not now.refused)
    if not unsaid and len(now.refused) <= len(before.refused):
        return
    if any(converting(scene, name) is not Answer.OUT for name in converters_on(scene, after)):
        return
    takes = scene.stated_names(part, ACCEPTED)
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(part),
        quantity=say("material taken as it is"),
        documented=between(before.surely, before.surely + before.perhaps),
        proposed=between(now.surely, now.surely + now.perhaps),
        sentence=not_taken_words(scene, now.refused, takes) if now.refused else NOT_SAID,
        source=CONVERTING,
        missing=scene.unknown(part, ACCEPTED),
    )


def _taken(scene: Scene, part: str) -> _Taken:
    stated = scene.stated_names(part, ACCEPTED)
    takes = stated | shown_as_well(scene.vocabulary, stated)
    standards = [scene.stated_names(material, "standard") for material in scene.material(part)]
    told = [standard for standard in standards if standard]
    refused = [standard for standard in told if takes and not standard & takes]
    surely = [standard for standard in told if standard <= takes]
    return _Taken(len(surely), len(told) - len(refused) - len(surely), frozenset[str]().union(*refused))


def _unsaid(sides: Sides) -> Iterator[Effect]:
    """New devices of which it is not stated whether they give or take what their connections carry."""
    links = [link for link in links_of(sides) if link.signal]
    scene = sides.proposed
    for found in scene.parts():
        part = found.identifier
        if part not in scene.case.substituted:
            continue
        taken = [link.signal for link in links if link.end == part]
        given = [link.signal for link in links if link.start == part]
        if taken and not scene.states(part, "input-signal"):
            signals = terms_of(scene, frozenset[str]().union(*taken))
            words = say("whether the new device takes {signals} is not said", signals=signals)
            yield _perhaps(part, number=len(taken), sentence=words, lacking=scene.called("input-signal"))
        if given and not scene.states(part, "output-signal"):
            signals = terms_of(scene, frozenset[str]().union(*given))
            words = say("whether the new device gives {signals} is not said", signals=signals)
            yield _perhaps(part, number=len(given), sentence=words, lacking=scene.called("output-signal"))


def _perhaps(part: str, *, number: int, sentence: Message, lacking: Message) -> Effect:
    return Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(part),
        quantity=say("connections that fit"),
        documented=point(number),
        proposed=between(0, number),
        sentence=sentence,
        source=CONNECTIONS,
        missing=(lacking,),
    )


def _added_converters(sides: Sides) -> Iterator[Effect]:
    """The converters that are added, for each may change the picture and delay it."""
    before, after = _converters(sides.documented), _converters(sides.proposed)
    added = tuple(part for part in after if not sides.was_there(part))
    if not added:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=several(added),
        quantity=say("signal converters"),
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
