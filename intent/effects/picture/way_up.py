"""Which way up the picture is seen: the device rotates with its picture, unless a player turns the picture back."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.scene import Scene, Sides, unknown_among
from intent.language.message import Saying, figure, say
from intent.values.bounds import known, point
from intent.values.regions import Interval
from intent.variance.computed import turn_of_picture
from intent.variance.result import Effect, EffectTopic

SOURCE = "rotation of the device and turn of the picture added; no turn where none is given"
LEAST_ANGLE = 1
"""In degrees: the vocabulary's tolerance of a rotation (common practice, no source)."""


def lies_along(scene: Scene, part: str) -> bool | None:
    """Whether the width of the screen lies level; none where it lies slanting, or nobody knows how."""
    rotation = known(scene.bounds(part, "rotation"))
    return None if rotation is None or rotation % 90 else rotation % 180 == 0


def way_up_effects(sides: Sides, part: str) -> Iterator[Effect]:
    """Told where the device, or the picture on it, is turned."""
    before, after = sides.documented, sides.proposed
    device = _turned(before.bounds(part, "rotation"), after.bounds(part, "rotation"))
    screen = _turned(turn_of_picture(before.state, part), turn_of_picture(after.state, part))
    if not device and not screen:
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        members=(part,),
        quantity=after.label("picture-rotation"),
        unit="°",
        documented=before.bounds(part, "picture-rotation"),
        proposed=after.bounds(part, "picture-rotation"),
        sentence=_words(device, screen),
        source=SOURCE,
        missing=_missing(after, part),
    )


def _turned(before: Interval, after: Interval) -> Interval | None:
    """By how many degrees clockwise; none where not, everything where nobody knows."""
    if before == after:
        return None
    one, two = known(before), known(after)
    if one is None or two is None:
        return Interval(None, None)
    turn = (two - one) % 360
    return None if min(turn, 360 - turn) <= LEAST_ANGLE else point(turn)


def _words(device: Interval | None, screen: Interval | None) -> Saying:
    turns = [known(turn) for turn in (device, screen) if turn is not None]
    if None in turns:
        return say("which way up the picture will be seen cannot be said from what is given")
    turn = sum((angle for angle in turns if angle is not None), Fraction(0)) % 360
    if turn == 0:
        return say(
            "the device lies otherwise, but the picture on it is turned back: it is seen as documented"
        )
    if turn == 180:
        return say("{cause}: it is seen the other way up than documented", cause=_cause(screen is None))
    if turn < 180:
        return say(
            "{cause}, by {angle} clockwise", cause=_cause(screen is None), angle=figure(point(turn), "°")
        )
    return say(
        "{cause}, by {angle} anticlockwise",
        cause=_cause(screen is None),
        angle=figure(point(360 - turn), "°"),
    )


def _cause(is_with_device: bool) -> Saying:
    if is_with_device:
        return say("the picture turns with the device")
    return say("the picture is turned on the screen")


def _missing(scene: Scene, part: str) -> tuple[str, ...]:
    return unknown_among(scene, part, "rotation")
