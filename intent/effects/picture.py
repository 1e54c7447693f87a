"""What visitors see of the picture: its size and shape, what is lost of it, how it is drawn out, which way up it is.

The formulas are arithmetic of rectangles (`intent.formulas.picture`).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.bounds import known
from intent.effects.scene import Scene, Sides, unknown_among
from intent.regions import Interval
from intent.saying import Saying, figure, say
from intent.variance.result import Effect, Topic

ARITHMETIC = "arithmetic of rectangles"
_SIZES = (
    ("visible-diagonal", "cm", 100),
    ("visible-width", "cm", 100),
    ("visible-height", "cm", 100),
    ("picture-width", "cm", 100),
    ("picture-height", "cm", 100),
    ("picture-area", "cm²", 10000),
)
_INPUTS = ("visible-diagonal", "aspect-ratio")


def picture_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on the picture of every display that is there before and after."""
    for part in sides.proposed.parts("display"):
        if sides.was_there(part.identifier):
            yield from _sizes(sides, part.identifier)


def _sizes(sides: Sides, part: str) -> Iterator[Effect]:
    for name, unit, factor in _SIZES:
        before, after = sides.documented.bounds(part, name), sides.proposed.bounds(part, name)
        if before != after:
            yield _changed(sides.proposed, part, name, before, after, unit, factor)


def _changed(
    scene: Scene, part: str, name: str, before: Interval, after: Interval, unit: str, factor: int
) -> Effect:
    return Effect(
        Topic.PICTURE,
        (part,),
        scene.label(name),
        unit,
        figure(before, unit, factor).bounds,
        figure(after, unit, factor).bounds,
        _grown(before, after),
        ARITHMETIC,
        unknown_among(scene, part, *_INPUTS),
    )


def _grown(before: Interval, after: Interval) -> Saying:
    """By how much more or less it is, where both are known exactly."""
    one, two = known(before), known(after)
    if not one or two is None:
        return say("by how much cannot be said from what is given")
    share = Interval(abs(two / one - 1), abs(two / one - 1))
    percent = figure(share, "%", Fraction(100))
    return say(
        "{percent} more than documented" if two > one else "{percent} less than documented", percent=percent
    )
