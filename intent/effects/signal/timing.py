"""The time of the work: how evenly and how fast material runs, how long a round lasts, what the timecode tells."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.scene import Scene, Sides
from intent.effects.signal.cadence import cadence_effects
from intent.effects.signal.drift import drift_effects
from intent.effects.signal.rounds import meeting_effects, round_effects
from intent.effects.signal.speed import motor_effects, quickening, speed_effects
from intent.formulas import rates
from intent.language.message import say
from intent.model.subject import one
from intent.values.bounds import known, point
from intent.variance.result import Effect, EffectTopic

TIMECODE = say("SMPTE ST 12 practice")


def timing_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on the time of the work."""
    yield from cadence_effects(sides)
    for part in sides.proposed.running("player", "display"):
        yield from motor_effects(sides.proposed, part.identifier)
    factors = {found.identifier: quickening(sides, found.identifier) for found in sides.work.material}
    runners = sides.proposed.running("player") or sides.proposed.running("display")
    for part in runners:
        if sides.was_there(part.identifier):
            yield from speed_effects(sides, part.identifier, factors)
            yield from round_effects(sides, part.identifier, factors)
    yield from meeting_effects(sides, [part.identifier for part in runners], factors)
    for found in sides.work.material:
        yield from _timecode(sides, found.identifier)
    yield from drift_effects(sides, factors)


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
    """The seconds that it falls behind; a semicolon marks drop-frame counting, and whole frame rates keep time."""
    rate, written = known(scene.bounds(material, "frame-rate")), scene.texts(material, "start-timecode")
    if rate is None or not written:
        return None
    if rate.denominator == 1:
        return Fraction(0)
    is_drop_frame = all(";" in timecode for timecode in written)
    return rates.timecode_error(is_drop_frame) if rate == rates.NTSC_RATE else None
