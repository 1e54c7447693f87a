"""How fast material runs: the motor that drives it, the speed that is set, and the frame rate it was made anew in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from intent.effects.scene import Scene, Sides
from intent.effects.signal.sound import is_silent
from intent.formulas import rates
from intent.language.figures import counted, figure
from intent.language.message import Message, say, say_of
from intent.model.subject import one
from intent.values.bounds import (
    ONE,
    apart,
    hull,
    is_known,
    known,
    magnitude,
    over,
    surely_within,
    times,
)
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.result import Effect, EffectTopic

ARITHMETIC = say("arithmetic")
MAINS = say("a synchronous motor follows its mains (textbook of electrical machines, from memory)")
MAINS_DRIVEN = ("film-projector", "record-player", "open-reel-audio-recorder")
"""Technologies with a motor that may take its speed from the mains."""
Factors = Mapping[str, Interval]
"""By material, how much faster it has itself become."""


def motor_effects(scene: Scene, part: str) -> Iterator[Effect]:
    """How fast a motor may run at the venue that takes its speed from the mains."""
    rated, mains = scene.bounds(part, "rated-frequency"), scene.venue("mains-frequency")
    if not any(scene.is_(part, "technology", technology) is Answer.IN for technology in MAINS_DRIVEN):
        return
    speed = rates.motor_speed(rated, mains)
    if not is_known(speed) or speed == ONE:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(part),
        quantity=say("speed on the venue's mains"),
        unit="%",
        documented=in_unit(ONE, "%"),
        proposed=in_unit(hull([ONE, speed]), "%"),
        sentence=say(
            "if its motor takes its speed from the mains it runs {change}, and its sound is {tones}",
            change=_faster(speed),
            tones=_higher(speed),
        ),
        source=MAINS,
    )


def _faster(speed: Interval) -> Message:
    change = figure(apart(speed, ONE), "%")
    if surely_within(ONE, speed):
        return say("{change} faster", change=change)
    if surely_within(speed, ONE):
        return say("{change} slower", change=change)
    return say("faster or slower")


def _higher(speed: Interval) -> Message:
    tones = figure(magnitude(rates.semitones(speed)))
    if surely_within(ONE, speed):
        return say_of(counted(tones), "{tones} semitone higher", "{tones} semitones higher", tones=tones)
    if surely_within(speed, ONE):
        return say_of(counted(tones), "{tones} semitone lower", "{tones} semitones lower", tones=tones)
    return say("higher or lower")


def speed_effects(sides: Sides, part: str, factors: Factors) -> Iterator[Effect]:
    """How fast a player, or a display by itself, runs, where that is other than documented."""
    before = playing_speed(sides.documented, part)
    after = times(playing_speed(sides.proposed, part), _quickened(sides.proposed, part, factors))
    if before == after:
        return
    relative = over(after, before)
    sentence = (
        say("it runs {change} than documented", change=_faster(relative))
        if is_silent(sides.proposed, part)
        else say(
            "it runs {change} than documented, and its sound is {tones} unless the player holds the pitch",
            change=_faster(relative),
            tones=_higher(relative),
        )
    )
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(part),
        quantity=sides.proposed.called("playback-speed"),
        unit="%",
        documented=in_unit(before, "%"),
        proposed=in_unit(after, "%"),
        sentence=sentence,
        source=ARITHMETIC,
    )


def quickening(sides: Sides, material: str) -> Interval:
    """How much faster the material itself has become: a 24-frame film made 25 frames a second, for instance.

    A new frame rate may mean that every frame is kept and time is shorter, or that frames are repeated or left out;
    the durations tell which, where they differ.
    """
    before, after = sides.documented, sides.proposed
    rate, new_rate = before.bounds(material, "frame-rate"), after.bounds(material, "frame-rate")
    time, new_time = before.bounds(material, "duration"), after.bounds(material, "duration")
    if rate == new_rate or known(rate) is None:
        return ONE
    if time != new_time and is_known(time) and is_known(new_time):
        return over(time, new_time)
    kept_or_not = [ONE, over(new_rate, rate)]
    return hull(kept_or_not if time == new_time else [*kept_or_not, over(time, new_time)])


def playing_speed(scene: Scene, part: str) -> Interval:
    """The speed of playing, forwards or backwards, as a share of the recorded one, which holds where none is stated."""
    for subject in (part, *scene.material(part)):
        if scene.states(subject, "playback-speed"):
            return magnitude(scene.bounds(subject, "playback-speed"))
    return ONE


def _quickened(scene: Scene, part: str, factors: Factors) -> Interval:
    """How much faster what a part shows has itself become."""
    found = [factors[material] for material in scene.material(part)]
    return hull(found) if found else ONE
