"""How much later picture and sound come out than they leave a player: the latencies of all that they pass through."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from intent.effects.scene import Scene
from intent.effects.signal.paths import Way
from intent.language.message import Words, say
from intent.model.subject import Subject, one
from intent.names import term_iri
from intent.values.bounds import NATURAL, ZERO, hull, plus, total
from intent.values.regions import Interval
from intent.variance.obstacle import Need

PICTURE_LATENCY, SOUND_LATENCY = "picture-latency", "sound-latency"


@dataclass(frozen=True, slots=True)
class Delay:
    """How many seconds later something comes out, and what would have to be known of it."""

    seconds: Interval
    needs: tuple[Need, ...]


def delay_along(scene: Scene, way: Way, latency: str) -> Delay:
    """The delay from a player to the end of a way."""
    passed = (way[0].start, *(link.end for link in way)) if way else ()
    each = [_of_part(scene, part, latency, is_source=part == passed[0]) for part in passed]
    return Delay(total(one_.seconds for one_ in each), tuple(need for one_ in each for need in one_.needs))


def any_of_ways(delays: Iterable[Delay]) -> Delay:
    """The delay of one of several ways, nobody knows which."""
    every = list(delays)
    needs = dict.fromkeys(need for delay in every for need in delay.needs)
    return Delay(hull(delay.seconds for delay in every), tuple(needs))


def lacking_words(needs: Iterable[Need], subject: Subject) -> tuple[Words, ...]:
    """What is missing for an effect on some parts, whose names a report puts behind it."""
    found = (
        need.characteristic
        if set(need.subject.members) <= set(subject.members)
        else say("{name} along the way", name=need.characteristic)
        for need in needs
    )
    return tuple(dict.fromkeys(found))


def says_latency(scene: Scene, ways: Mapping[str, Way]) -> bool:
    """Whether a latency is stated of anything on some ways."""
    passed = {part for way in ways.values() for link in way for part in (link.start, link.end)}
    return any(scene.states(part, name) for part in passed for name in (PICTURE_LATENCY, SOUND_LATENCY))


def _of_part(scene: Scene, part: str, latency: str, *, is_source: bool) -> Delay:
    """As stated; else nothing of cables and of what works at once, and of a player that says nothing of either."""
    found = scene.case.scopes.proposed.every.get(part)
    if scene.states(part, latency):
        own = Delay(scene.bounds(part, latency), ())
    elif found is None or _works_at_once(scene, part) or (is_source and not _says_other(scene, part)):
        own = Delay(ZERO, ())
    else:
        own = Delay(NATURAL, (Need(scene.called(latency), one(part)),))
    if found is None or not _may_delay(scene, part):
        return own
    return Delay(plus(own.seconds, scene.bounds(part, "picture-delay")), own.needs)


def _works_at_once(scene: Scene, part: str) -> bool:
    """Whether it is a cable, or surely of a technology that delays nothing."""
    kind = scene.case.scopes.proposed.every[part].kind.iri
    if scene.vocabulary.is_kind(kind, term_iri("cable")):
        return True
    names = scene.stated_names(part, "technology")
    return bool(names) and all(
        "delaysNothing" in scene.vocabulary.concepts[term_iri(name)].marks for name in names
    )


def _says_other(scene: Scene, part: str) -> bool:
    """Whether a latency of picture or sound is stated of a player: then the other is not taken for nothing."""
    return scene.states(part, PICTURE_LATENCY) or scene.states(part, SOUND_LATENCY)


def _may_delay(scene: Scene, part: str) -> bool:
    """Whether it stands between and is set to delay what passes."""
    kind = scene.case.scopes.proposed.every[part].kind.iri
    between = any(scene.vocabulary.is_kind(kind, term_iri(name)) for name in ("converter", "control"))
    return between and scene.states(part, "picture-delay")
