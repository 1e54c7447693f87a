"""Whether a projector's lens makes a picture of the size that is wanted, from where it stands.

A throw ratio given as a range is what a zoom lens makes; a distance or a size given as a range is not known better.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.limits_kept import (
    Limited,
    any_of,
    inputs,
    inputs_of_state,
    obstacles,
    unchecked,
)
from intent.effects.scene import Scene, Sides
from intent.formulas import shapes
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.values.bounds import between, natural, plus
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle, Unchecked

TOLERANCE = between(Fraction(-1, 20), Fraction(1, 20))
"""Of a throw ratio: that of the vocabulary (common practice, no source)."""
SIZES = ("visible-diagonal", "visible-width", "visible-height")
RATIO, DISTANCE, WIDTH = "throw-ratio", "throw-distance", "visible-width"


def throw_obstacles(sides: Sides) -> Iterator[Obstacle | Unchecked]:
    """Projectors whose lens, distance and size of picture contradict each other, or of which one is not known."""
    scene = sides.proposed
    for found in scene.running("display"):
        part = found.identifier
        if not is_thrown(scene, part):
            continue
        limited = _limited(sides, part)
        if not scene.states(part, RATIO) and not any(each.is_changed for each in limited.inputs):
            yield from unchecked(sides, part, RATIO)
        else:
            yield from obstacles(sides, any_of([_is_made(scene, part), scene.runs(part).negated]), limited)


def is_thrown(scene: Scene, part: str) -> bool:
    """Whether a display throws its picture; where that is not said, whether anything is said of how."""
    answer = scene.is_(part, "technology", "projector")
    return answer is Answer.IN or (
        answer is Answer.OPEN and any(scene.states(part, name) for name in (RATIO, DISTANCE))
    )


def _is_made(scene: Scene, part: str) -> Answer:
    """Whether the lens makes the width, wherever within its bounds the projector stands."""
    distance, wanted = (natural(scene.bounds(part, name)) for name in (DISTANCE, WIDTH))
    ratio = scene.bounds(part, RATIO)
    if _made(distance, ratio).meet(wanted).is_empty:
        return Answer.OUT
    is_known = ratio.low and None not in (ratio.high, distance.low, distance.high, wanted.low, wanted.high)
    if not is_known:
        return Answer.OPEN
    near, far = (_made(Interval(end, end), ratio) for end in (distance.low, distance.high))
    # of all that it makes from the nearest and from the furthest place, it makes the common part from anywhere
    return Answer.IN if near.meet(far).holds(wanted) else Answer.OPEN


def _made(distance: Interval, ratio: Interval) -> Interval:
    """The widths that the lens makes from where it stands: of a zoom lens a range."""
    return shapes.thrown_width(distance, natural(plus(ratio, TOLERANCE)))


def _limited(sides: Sides, part: str) -> Limited:
    scene = sides.proposed
    distance, wanted = (natural(scene.bounds(part, name)) for name in (DISTANCE, WIDTH))
    return Limited(
        slug="lens",
        subject=one(part),
        inputs=(
            *inputs(sides, part, RATIO, DISTANCE, *measures_of(scene, part, WIDTH)),
            *inputs_of_state(sides, part),
        ),
        sure=say(
            "from {distance} its lens makes a picture of a width {made}, and the picture is to be {wanted} wide: "
            "another lens, distance or size is needed",
            distance=figure(distance, "m"),
            made=figure(_made(distance, scene.bounds(part, RATIO)), "m"),
            wanted=figure(wanted, "m"),
        ),
        unsure=_unsure_words(distance, wanted),
    )


def measures_of(scene: Scene, part: str, side: str) -> tuple[str, ...]:
    """What a side of the picture follows from: the size that is stated, and its shape where that is another."""
    size = next((name for name in SIZES if scene.states(part, name)), SIZES[0])
    return (size,) if size == side else (size, "aspect-ratio")


def _unsure_words(distance: Interval, wanted: Interval) -> Message:
    if distance.high is None or wanted.high is None:
        return say("whether its lens makes the picture from where it stands cannot be said")
    return say(
        "whether its lens makes a picture {wanted} wide from {distance} cannot be said",
        wanted=figure(wanted, "m"),
        distance=figure(distance, "m"),
    )
