"""The noise that devices and the room make, where visitors stand, beside the sound of the work or its silence."""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.scene import Scene, Sides
from intent.effects.sound.loudness import LEAST, Heard
from intent.effects.sound.room import ListeningRoom
from intent.formulas import acoustics
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import WHOLE_VENUE, WHOLE_WORK, one
from intent.names import THE_VENUE, THE_WORK
from intent.values.bounds import between, differs_by, minus, point, surely_above, surely_within
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Need, needs_words
from intent.variance.result import Effect, EffectTopic

NOISE, POWER_LEVEL, BACKGROUND = "running-noise", "sound-power-level", "background-noise"
FREE_OR_ON_A_FLOOR = between(1, 2)
"""How a device sends its noise out, where nothing is said: on all sides, or on one half of them."""
RUNNING = ("display", "player", "converter", "control")
"""The kinds of part that may have a fan or a motor."""
CLEAR = point(15)
"""Decibels by which speech lies above noise that takes nothing from its clarity (IEC 60268-16)."""
AS_CLEAR = say(
    "levels at one metre, distance as in a free field, and what the room gives back by Hopkins and Stryker (1948) with "
    "the absorption by Sabine; added as energies; from a sound power by ISO 3744, in free space or on a floor; 15 dB "
    "by IEC 60268-16"
)


def noise_effects(sides: Sides) -> Iterator[Effect]:
    """How loud the devices that run are where visitors stand, where that changes."""
    room = ListeningRoom(sides.proposed)
    before, after = (_heard(room, scene) for scene in (sides.documented, sides.proposed))
    if after is None or (before is not None and not differs_by(before.level, after.level, LEAST)):
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=WHOLE_WORK,
        quantity=say("running noise where visitors stand"),
        unit="dB",
        documented=before.level if before is not None else None,
        proposed=after.level,
        sentence=_noise_words(sides.proposed, after.level),
        source=AS_CLEAR,
        missing=needs_words((*after.needs, *room.needs)),
    )


def _heard(room: ListeningRoom, scene: Scene) -> Heard | None:
    """The noise of a state in the room; none where nothing is said of the noise of any device."""
    parts = scene.one_a_device(part.identifier for part in scene.running(*RUNNING))
    if not any(_says(scene, part) for part in parts):
        return None
    levels, needs = list[Interval](), list[Need]()
    for part in parts:
        levels.append(room.heard(scene, part, _at_one_metre(scene, part)))
        if _says(scene, part):
            needs += room.lacking(scene, part)
        else:
            needs.append(Need(scene.called(NOISE), one(part)))
    venue = room.scene
    levels.append(venue.venue(BACKGROUND))
    if not venue.states(THE_VENUE, BACKGROUND):
        needs.append(Need(venue.called(BACKGROUND), WHOLE_VENUE))
    return Heard(acoustics.together(levels), tuple(needs))


def _says(scene: Scene, part: str) -> bool:
    return scene.states(part, NOISE) or scene.states(part, POWER_LEVEL)


def _at_one_metre(scene: Scene, part: str) -> Interval:
    """As stated, else by the level of the power of the noise; perhaps nothing, where nobody knows whether it runs."""
    level = _running(scene, part)
    return level if scene.runs(part) is Answer.IN else Interval(None, level.high)


def _running(scene: Scene, part: str) -> Interval:
    if scene.states(part, NOISE) or not scene.states(part, POWER_LEVEL):
        return scene.bounds(part, NOISE)
    stated = scene.states(part, "directivity-factor")
    directivity = scene.bounds(part, "directivity-factor") if stated else FREE_OR_ON_A_FLOOR
    return acoustics.from_power(scene.bounds(part, POWER_LEVEL), directivity)


def _noise_words(scene: Scene, noise: Interval) -> Message:
    if scene.states(THE_WORK, "sound") and scene.is_(THE_WORK, "sound", "silent") is Answer.IN:
        return say("it is what is heard of a work that is silent")
    if not scene.states(THE_WORK, "sound-level"):
        return say("how loud the work is to be is not said, and so not what the noise covers")
    wanted = scene.bounds(THE_WORK, "sound-level")
    level, clear = figure(wanted, "dB"), minus(wanted, noise)
    if surely_within(CLEAR, clear):
        return say("so far below the {level} of the work that it takes nothing from the words", level=level)
    if surely_above(between(0, 0), clear):
        return say("louder than the {level} of the work: it covers what is to be heard", level=level)
    if surely_above(CLEAR, clear):
        return say("less than 15 dB below the {level} of the work: words lose their clarity", level=level)
    return say("how far it lies below the {level} of the work cannot be said", level=level)
