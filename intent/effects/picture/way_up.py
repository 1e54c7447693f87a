"""Which way up the picture is seen: the device rotates with its picture, unless a player turns the picture back."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.scene import Scene, Sides
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.values.bounds import known, point
from intent.values.regions import EVERYTHING, Interval
from intent.variance.computed import turn_of_picture
from intent.variance.result import Effect, EffectTopic

SOURCE = say("rotation of the device and turn of the picture added; no turn where none is given")
LEAST_ANGLE = 1
"""In degrees: the vocabulary's tolerance of a rotation (common practice, no source)."""


def lies_along(scene: Scene, part: str) -> bool | None:
    """Whether the width of the screen lies level; none where it lies slanting, or nobody knows how."""
    rotation = known(scene.bounds(part, "rotation"))
    return None if rotation is None or rotation % 90 else rotation % 180 == 0


def way_up_effects(sides: Sides, part: str) -> Iterator[Effect]:
    """How the picture is seen, where the device, or the picture on it, is turned."""
    before, after = sides.documented, sides.proposed
    device = _turned(*sides.bounds(part, "rotation"))
    screen = _turned(turn_of_picture(before.state, part), turn_of_picture(after.state, part))
    if not device and not screen:
        return
    was, will_be = sides.bounds(part, "picture-rotation")
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=after.called("picture-rotation"),
        unit="°",
        documented=was,
        proposed=will_be,
        sentence=_words(device, screen),
        source=SOURCE,
        missing=after.unknown(part, "rotation"),
    )


def _turned(before: Interval, after: Interval) -> Interval | None:
    """The turn in degrees clockwise; none where there is none, every angle where it is not known."""
    if before == after:
        return None
    was, will_be = known(before), known(after)
    if was is None or will_be is None:
        return EVERYTHING
    turn = (will_be - was) % 360
    return None if min(turn, 360 - turn) <= LEAST_ANGLE else point(turn)


def _words(device: Interval | None, screen: Interval | None) -> Message:
    turns = [known(turn) for turn in (device, screen) if turn is not None]
    if None in turns:
        return say("which way up the picture will be seen cannot be said from what is given")
    turn = sum((angle for angle in turns if angle is not None), Fraction(0)) % 360
    if turn == 0:
        return say(
            "the device lies otherwise, but the picture on it is turned back: it is seen as documented"
        )
    cause = (
        say("the picture turns with the device")
        if screen is None
        else say("the picture is turned on the screen")
    )
    if turn == 180:
        return say("{cause}: it is seen the other way up than documented", cause=cause)
    if turn < 180:
        return say("{cause}, by {angle} clockwise", cause=cause, angle=figure(point(turn), "°"))
    return say("{cause}, by {angle} anticlockwise", cause=cause, angle=figure(point(360 - turn), "°"))
