"""What those hear who are beside the work all day: noise at work, and when it calls for care."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.scene import Scene, Sides
from intent.effects.signal.drift import running_day
from intent.effects.unsaid import Missing
from intent.formulas import acoustics
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import WHOLE_WORK
from intent.names import THE_VENUE, THE_WORK
from intent.values.bounds import is_known, over, plus, point, smaller, surely_within
from intent.values.regions import Interval
from intent.variance.result import Effect, EffectTopic

LOWER, UPPER = Fraction(80), Fraction(85)
"""Decibels, A-weighted, over eight hours: the exposure action values (Directive 2003/10/EC, article 3)."""
LEVEL = "sound-level"
AT_WORK = say(
    "ISO 1999: the level over the running time, for eight hours; action values of Directive 2003/10/EC; staff taken "
    "to be there as long as the work runs, where visitors stand"
)


def exposure_effects(sides: Sides) -> Iterator[Effect]:
    """How much of the work somebody hears who is beside it as long as it runs, from the lower action value on."""
    scene = sides.proposed
    if not scene.states(THE_WORK, LEVEL):
        return
    level, day = scene.bounds(THE_WORK, LEVEL), running_day(scene)
    exposed = _exposure(level, day)
    if not _reaches(exposed, level):
        return
    before = sides.documented
    runs_alike = before.names(THE_WORK, "running") == scene.names(THE_WORK, "running")
    was_day = day if runs_alike else running_day(before)
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=WHOLE_WORK,
        quantity=say("sound exposure of staff over eight hours"),
        unit="dB",
        documented=_exposure(before.bounds(THE_WORK, LEVEL), was_day)
        if before.states(THE_WORK, LEVEL)
        else None,
        proposed=exposed,
        sentence=_care_words(level, exposed),
        source=AT_WORK,
        missing=()
        if is_known(day)
        else (*scene.unknown(THE_WORK, "running"), *scene.unknown(THE_VENUE, "opening-time")),
    )


def _exposure(level: Interval, day: Interval) -> Interval:
    share = over(day, point(acoustics.WORKING_DAY))
    return plus(level, acoustics.level(share))


def _lacking(scene: Scene) -> Missing:
    """What would say for how long a day the work runs."""
    return (*scene.unknown(THE_WORK, "running"), *scene.unknown(THE_VENUE, "opening-time"))


def _reaches(exposed: Interval, level: Interval) -> bool:
    """Whether it surely reaches the lower action value, or perhaps does so with a level that may reach it itself."""
    may_be = smaller(level, exposed).high
    return surely_within(point(LOWER), exposed) or may_be is None or may_be >= LOWER


def _care_words(level: Interval, exposed: Interval) -> Message:
    time = acoustics.time_within(UPPER, level)
    if surely_within(point(UPPER), exposed):
        return say(
            "from 85 dB(A) over eight hours on hearing suffers, and here {time} are as much: have it measured, shorten "
            "the shifts and offer ear protection; local law on noise at work and in public comes first",
            time=figure(time, "h"),
        )
    if surely_within(point(LOWER), exposed):
        return say(
            "from 80 dB(A) over eight hours on staff are to be told and offered ear protection: have it measured; "
            "local law on noise at work and in public comes first"
        )
    return say(
        "it may reach the 80 dB(A) over eight hours from which staff are to be told and offered ear protection: have "
        "it measured; local law on noise at work and in public comes first"
    )
