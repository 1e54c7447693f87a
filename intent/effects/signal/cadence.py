"""How the frames of the material fall on the refreshes of a display, and its fields on the mains."""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.picture.rates_shown import field_rate, rate_given, recorded_rate
from intent.effects.scene import Scene, Sides
from intent.formulas import rates
from intent.language.figures import counted, figure
from intent.language.message import Message, say, say_of
from intent.model.subject import one
from intent.values.bounds import ONE, ZERO, is_known, known, over, point
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.result import Effect, EffectTopic

CADENCE = say(
    "arithmetic; a tube or a film projector follows its signal or film where no refresh rate is said"
)
HUM = say(
    "arithmetic; field rate taken as twice the frame rate where the material is not said to be progressive"
)
LONGEST_CADENCE = 12
"""Patterns of more frames than this are told by how often they jump, not frame by frame."""
SLOW = 1
"""Bars that pass less than once in a second hardly show: common practice, no source."""
_FOLLOWING = ("cathode-ray-tube", "film-projector")


def cadence_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on how evenly each display shows movement."""
    for part in sides.proposed.running("display"):
        if sides.was_there(part.identifier):
            yield from _cadence(sides, part.identifier)
        yield from _hum(sides.proposed, part.identifier)


def _cadence(sides: Sides, part: str) -> Iterator[Effect]:
    """How many frames in a second stay longer or shorter than the others."""
    before, after = _uneven(sides.documented, part), _uneven(sides.proposed, part)
    if before == after or before is None or after is None:
        return
    scene = sides.proposed
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(part),
        quantity=say("uneven frames"),
        unit="a second",
        documented=before,
        proposed=after,
        sentence=_cadence_words(scene, part, after),
        source=CADENCE,
        missing=() if is_known(after) else scene.unknown(part, "refresh-rate"),
    )


def _uneven(scene: Scene, part: str) -> Interval | None:
    """Uneven frames in a second; none where nothing is known of the frame rate."""
    frame_rate = rate_given(scene, part)
    if frame_rate is None:
        return None
    follows = any(scene.is_(part, "technology", technology) is Answer.IN for technology in _FOLLOWING)
    if follows and not scene.states(part, "refresh-rate"):
        return ZERO
    return rates.uneven_frames(frame_rate, scene.bounds(part, "refresh-rate"))


def _cadence_words(scene: Scene, part: str, uneven: Interval) -> Message:
    often, rate = known(uneven), rate_given(scene, part)
    frame_rate = None if rate is None else known(rate)
    refresh = known(scene.bounds(part, "refresh-rate"))
    if often is None:
        return say("how the frames fall on the refreshes of the device cannot be said from what is given")
    if often == 0:
        return say("every frame stays as long as the others: movement is even")
    if frame_rate is not None and refresh is not None and refresh < frame_rate:
        lost = figure(uneven)
        return say_of(
            counted(lost),
            "of {rate} frames in a second {lost} is not shown",
            "of {rate} frames in a second {lost} are not shown",
            rate=figure(point(frame_rate)),
            lost=lost,
        )
    if often < SLOW:
        period = figure(over(ONE, uneven), "s", digits=5)
        return say(
            "one frame in {period} stays longer or shorter than the others: a jerk in slow movement",
            period=period,
        )
    judder = _judder(uneven)
    if frame_rate is None or refresh is None or (refresh / frame_rate).denominator > LONGEST_CADENCE:
        return say("frames stay for different times: {judder}", judder=judder)
    cadence = rates.cadence(frame_rate, refresh)
    return say("frames stay for {cadence} refreshes by turns: {judder}", cadence=cadence, judder=judder)


def _judder(uneven: Interval) -> Message:
    often = figure(uneven)
    return say_of(
        counted(often),
        "movement judders once a second",
        "movement judders {often} times a second",
        often=often,
    )


def _hum(scene: Scene, part: str) -> Iterator[Effect]:
    """How often a bar passes through a tube's picture where its fields and the mains are not in step."""
    mains, frame_rate = scene.venue("mains-frequency"), recorded_rate(scene, part)
    if frame_rate is None or known(mains) is None or known(frame_rate) is None:
        return
    if scene.is_(part, "technology", "cathode-ray-tube") is not Answer.IN:
        return
    often = rates.beat(field_rate(scene, part, frame_rate), mains)
    if often.low is None or often.low < SLOW:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(part),
        quantity=say("bars from the mains"),
        unit="a second",
        proposed=often,
        sentence=say(
            "where the mains leaks into a tube, or lamps flicker beside it, bars move through the picture: "
            "look for them"
        ),
        source=HUM,
    )
