"""The time of the work: how fast material runs, how long a round of it lasts, and what its timecode tells."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from math import gcd, lcm

from intent.effects.scene import Scene, Sides
from intent.effects.signal.cadence import cadence_effects
from intent.effects.signal.drift import drift_effects
from intent.effects.signal.rounds import recorded_round
from intent.effects.signal.sound import is_silent
from intent.formulas import rates
from intent.language.figures import counted, figure
from intent.language.message import Message, say, say_of
from intent.model.subject import one, several
from intent.values.bounds import (
    ONE,
    ZERO,
    apart,
    hull,
    is_known,
    known,
    magnitude,
    minus,
    over,
    point,
    surely_within,
    times,
)
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.result import Effect, EffectTopic

ARITHMETIC = say("arithmetic")
MAINS = say("a synchronous motor follows its mains (textbook of electrical machines, from memory)")
LOOPS = say("arithmetic; no gap between rounds where none is said")
TIMECODE = say("SMPTE ST 12 practice")
_MAINS_DRIVEN = ("film-projector", "record-player", "open-reel-audio-recorder")


def timing_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on the time of the work."""
    yield from cadence_effects(sides)
    for part in sides.proposed.parts("player", "display"):
        yield from _motor(sides.proposed, part.identifier)
    factors = {found.identifier: _factor(sides, found.identifier) for found in sides.work.material}
    runners = sides.proposed.parts("player") or sides.proposed.parts("display")
    for part in runners:
        if sides.was_there(part.identifier):
            yield from _speed(sides, part.identifier, factors)
            yield from _loop(sides, part.identifier, factors)
    yield from _meeting(sides, [part.identifier for part in runners], factors)
    for found in sides.work.material:
        yield from _timecode(sides, found.identifier)
    yield from drift_effects(sides)


def _motor(scene: Scene, part: str) -> Iterator[Effect]:
    """How fast a motor may run that takes its speed from the mains."""
    rated, mains = scene.bounds(part, "rated-frequency"), scene.venue("mains-frequency")
    if not any(scene.is_(part, "technology", technology) is Answer.IN for technology in _MAINS_DRIVEN):
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


def _factor(sides: Sides, material: str) -> Interval:
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


def _run(scene: Scene, part: str) -> Interval:
    """The speed of playing as a share of the recorded one, which holds where nothing is said; forwards or backwards."""
    for subject in (part, *scene.material(part)):
        if scene.states(subject, "playback-speed"):
            return magnitude(scene.bounds(subject, "playback-speed"))
    return ONE


def _quickened(scene: Scene, part: str, factors: Mapping[str, Interval]) -> Interval:
    found = [factors[material] for material in scene.material(part)]
    return hull(found) if found else ONE


def _speed(sides: Sides, part: str, factors: Mapping[str, Interval]) -> Iterator[Effect]:
    before = _run(sides.documented, part)
    after = times(_run(sides.proposed, part), _quickened(sides.proposed, part, factors))
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
        quantity=sides.proposed.label("playback-speed"),
        unit="%",
        documented=in_unit(before, "%"),
        proposed=in_unit(after, "%"),
        sentence=sentence,
        source=ARITHMETIC,
    )


def _loop(sides: Sides, part: str, factors: Mapping[str, Interval]) -> Iterator[Effect]:
    """How long a round lasts, gap included."""
    before, after = _round(sides.documented, part), _round(sides.proposed, part, factors)
    if before is None or after is None or before == after:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(part),
        quantity=sides.proposed.label("loop-length"),
        unit="s",
        documented=before,
        proposed=after,
        sentence=_longer(before, after),
        source=LOOPS,
    )


def _longer(before: Interval, after: Interval) -> Message:
    change = minus(after, before)
    if surely_within(ZERO, change):
        return say("each round lasts {change} longer", change=figure(change, "s"))
    if surely_within(change, ZERO):
        return say("each round lasts {change} less", change=figure(magnitude(change), "s"))
    return say("by how much a round differs cannot be said from what is given")


def _round(scene: Scene, part: str, factors: Mapping[str, Interval] | None = None) -> Interval | None:
    """From one start to the next; none where the channel has no single material whose length is given."""
    material = scene.material(part)
    if len(material) != 1:
        return None
    length = recorded_round(scene, part, *material)
    if length is None:
        return None
    played = rates.played_time(length, _run(scene, part))
    factor = factors[material[0]] if factors is not None else ONE
    # a factor that is known rests on durations, and so is in the stated length already
    return played if is_known(factor) else rates.played_time(played, factor)


def _meeting(sides: Sides, runners: Iterable[str], factors: Mapping[str, Interval]) -> Iterator[Effect]:
    """After how long loops of different lengths begin together again."""
    players = [part for part in runners if sides.was_there(part)]
    before = _together_again([_round(sides.documented, part) for part in players])
    after = _together_again([_round(sides.proposed, part, factors) for part in players])
    if before is None or after is None or before == after:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=several(players),
        quantity=say("time until the loops meet again"),
        unit="h",
        documented=in_unit(point(before), "h"),
        proposed=in_unit(point(after), "h"),
        sentence=say("the loops fall together in the same way again after this time, and not before"),
        source=LOOPS,
    )


def _together_again(rounds: Iterable[Interval | None]) -> Fraction | None:
    """The least common multiple of rounds that are all known and not all alike."""
    lengths = {None if length is None else known(length) for length in rounds}
    exact = [length for length in lengths if length]
    if len(exact) < 2 or len(exact) < len(lengths):
        return None
    # of fractions in lowest terms: the least common multiple above, over the greatest common divisor below
    return Fraction(
        lcm(*(length.numerator for length in exact)), gcd(*(length.denominator for length in exact))
    )


def _timecode(sides: Sides, material: str) -> Iterator[Effect]:
    """How far the timecode of the material falls behind the clock in a day, where its counting changes."""
    before, after = _behind(sides.documented, material), _behind(sides.proposed, material)
    if before is None or after is None or before == after:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(material),
        quantity=say("timecode behind the clock"),
        unit="s a day",
        documented=point(before),
        proposed=point(after),
        sentence=say(
            "cues set by timecode and cues set by the clock come apart in another way than documented"
        ),
        source=TIMECODE,
    )


def _behind(scene: Scene, material: str) -> Fraction | None:
    """A semicolon before the frames marks drop-frame counting; at whole frame rates timecode keeps time."""
    rate, written = known(scene.bounds(material, "frame-rate")), scene.texts(material, "start-timecode")
    if rate is None or not written:
        return None
    if rate.denominator == 1:
        return Fraction(0)
    is_drop_frame = all(";" in timecode for timecode in written)
    return rates.timecode_error(is_drop_frame) if rate == rates.NTSC_RATE else None
