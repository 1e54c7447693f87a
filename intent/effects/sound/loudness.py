"""How loud it can be where visitors stand, beside how loud the work is to be."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.limits_kept import at_least
from intent.effects.scene import Scene, Sides
from intent.effects.signal.paths import SOUND, Way, ways_of
from intent.effects.sound.room import ListeningRoom
from intent.formulas import acoustics
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import WHOLE_WORK, one
from intent.names import THE_WORK, term_iri
from intent.values.bounds import NATURAL, ZERO, differs_by, magnitude, minus, natural, surely_above
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Need, needs_words
from intent.variance.result import Effect, EffectTopic

HIGHEST, SENSITIVITY, POWER = "maximum-sound-level", "sensitivity", "amplifier-power"
LEAST = Fraction(1)
"""Decibels: smaller changes nobody hears (common practice, no source)."""
FREE_FIELD_AND_ROOM = say(
    "sensitivity, power and distance as in a free field, straight in front, and what the room gives back by Hopkins "
    "and Stryker (1948) with the absorption by Sabine; all loudspeakers together as energies, and levels taken as "
    "A-weighted"
)
SETTING = say("definition of the sensitivity, at 1 W and 1 m")


@dataclass(frozen=True, slots=True)
class Heard:
    """A level, and what would have to be known of it."""

    level: Interval
    needs: tuple[Need, ...]


def loudness_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on how loud it is."""
    for part in sides.proposed.parts("loudspeaker", "display"):
        if sides.was_there(part.identifier):
            yield from _setting(sides, part.identifier)
    yield from _highest(sides)


def _setting(sides: Sides, part: str) -> Iterator[Effect]:
    """A loudspeaker that is louder or quieter at the same setting of its amplifier."""
    if not all(scene.states(part, SENSITIVITY) for scene in (sides.documented, sides.proposed)):
        return
    before, after = sides.bounds(part, SENSITIVITY)
    if not differs_by(before, after, LEAST):
        return
    change = minus(after, before)
    if surely_above(change, ZERO):
        words = say("{change} louder at the same setting: set the level anew", change=figure(change, "dB"))
    elif surely_above(ZERO, change):
        quieter = figure(magnitude(change), "dB")
        words = say("{change} quieter at the same setting: set the level anew", change=quieter)
    else:
        words = say("louder or quieter at the same setting: set the level anew")
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(part),
        quantity=sides.proposed.called(SENSITIVITY),
        unit="dB",
        documented=before,
        proposed=after,
        sentence=words,
        source=SETTING,
    )


def _highest(sides: Sides) -> Iterator[Effect]:
    """The highest level where visitors stand, where it changes or does not surely reach that of the work."""
    room = ListeningRoom(sides.proposed)
    ways = ways_of(sides, SOUND)
    before = _heard(
        room, sides.documented, {part: ways.documented(part) for part in _sounding(sides.documented)}
    )
    fed = [part for part in _sounding(sides.proposed) if not ways.documented(part) or ways.proposed(part)]
    after = _heard(room, sides.proposed, {part: ways.proposed(part) for part in fed})
    if after is None:
        return
    was, now = before.level if before is not None else None, after.level
    is_wanted = sides.proposed.states(THE_WORK, "sound-level")
    wanted = sides.proposed.bounds(THE_WORK, "sound-level") if is_wanted else None
    is_reached = Answer.IN if wanted is None else at_least(now, wanted)
    is_changed = was is None or differs_by(was, now, LEAST)
    if not is_changed and is_reached is not Answer.OUT:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=WHOLE_WORK,
        quantity=say("highest level where visitors stand"),
        unit="dB",
        documented=was,
        proposed=now,
        sentence=_reached_words(is_reached, now, wanted),
        source=FREE_FIELD_AND_ROOM,
        missing=needs_words((*after.needs, *room.needs)),
    )


def _sounding(scene: Scene) -> tuple[str, ...]:
    """The parts that can be heard, of which anything is said of how loud."""
    there = (part.identifier for part in scene.running("loudspeaker", "display", "player"))
    return tuple(
        part
        for part in there
        if (scene.states(part, HIGHEST) or scene.states(part, SENSITIVITY) or _is_loudspeaker(scene, part))
        and scene.is_(part, "muted", "yes") is not Answer.IN
    )


def _is_loudspeaker(scene: Scene, part: str) -> bool:
    found = scene.case.scopes.proposed.every[part]
    return scene.vocabulary.is_kind(found.kind.iri, term_iri("loudspeaker"))


def _heard(room: ListeningRoom, scene: Scene, ways: Mapping[str, Mapping[str, Way]]) -> Heard | None:
    """The level of all that sounds, each as loud as it can be; none where nothing is said of how loud any is."""
    if not any(scene.states(part, name) for part in ways for name in (HIGHEST, SENSITIVITY)):
        return None
    levels, needs = list[Interval](), list[Need]()
    for part, found in ways.items():
        own = _at_one_metre(scene, part, found)
        heard = room.heard(scene, part, own.level)
        levels.append(heard if _surely_sounds(scene, part) else Interval(None, heard.high))
        needs += [*own.needs, *room.lacking(scene, part)]
    return Heard(acoustics.together(levels), tuple(needs))


def _surely_sounds(scene: Scene, part: str) -> bool:
    return scene.runs(part) is Answer.IN and scene.is_(part, "muted", "yes") is Answer.OUT


def _at_one_metre(scene: Scene, part: str, ways: Mapping[str, Way]) -> Heard:
    if scene.states(part, HIGHEST):
        return Heard(scene.bounds(part, HIGHEST), ())
    driving = (part, *(link.start for way in ways.values() for link in reversed(way)))
    amplifier = next((one_ for one_ in driving if scene.states(one_, POWER)), None)
    power = natural(scene.bounds(amplifier, POWER)) if amplifier is not None else NATURAL
    needs = [Need(scene.called(SENSITIVITY), one(part))] if not scene.states(part, SENSITIVITY) else []
    if amplifier is None:
        needs.append(Need(scene.called(POWER), one(part)))
    return Heard(acoustics.at_one_metre(scene.bounds(part, SENSITIVITY), power), tuple(needs))


def _reached_words(is_reached: Answer, now: Interval, wanted: Interval | None) -> Message:
    if wanted is None:
        return say("as loud as it can be made; how loud the work is to be is not said")
    level = figure(wanted, "dB")
    if is_reached is Answer.IN:
        return say(
            "loud enough for the {level} of the work, with {spare} to spare",
            level=level,
            spare=figure(minus(now, wanted), "dB"),
        )
    if is_reached is Answer.OUT:
        return say("it cannot be made as loud as the {level} of the work", level=level)
    return say("whether it can be made as loud as the {level} of the work cannot be said", level=level)
