"""Whether a projector's lens makes a picture of the size that is given, from the distance that is given."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.limits_kept import Limited, inputs, obstacles
from intent.effects.scene import Scene, Sides
from intent.formulas import shapes
from intent.language.figures import figure
from intent.language.message import say
from intent.model.subject import one
from intent.values.bounds import ZERO, between, natural, plus, surely_within
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle

TOLERANCE = between(Fraction(-1, 20), Fraction(1, 20))
"""Of a throw ratio: that of the vocabulary (common practice, no source)."""
SIZES = ("visible-width", "visible-diagonal", "visible-height")


def throw_obstacles(sides: Sides) -> Iterator[Obstacle]:
    """Projectors whose lens, distance and size of picture contradict each other, where all three are stated."""
    scene = sides.proposed
    for found in scene.running("display"):
        part = found.identifier
        size = next((name for name in SIZES if scene.states(part, name)), None)
        if size is None or not (scene.states(part, "throw-ratio") and scene.states(part, "throw-distance")):
            continue
        made, wanted = _made(scene, part), scene.bounds(part, "visible-width")
        limited = Limited(
            slug="lens",
            subject=one(part),
            inputs=inputs(sides, part, "throw-ratio", "throw-distance", size),
            sure=say(
                "from {distance} its lens makes a picture of a width {made}, and the picture is to be {wanted} wide: "
                "another lens, distance or size is needed",
                distance=figure(scene.bounds(part, "throw-distance"), "m"),
                made=figure(made, "m"),
                wanted=figure(wanted, "m"),
            ),
            unsure=say(
                "whether its lens makes a picture {wanted} wide from {distance} cannot be said",
                wanted=figure(wanted, "m"),
                distance=figure(scene.bounds(part, "throw-distance"), "m"),
            ),
        )
        yield from obstacles(sides, _answer(made, wanted), limited)


def _made(scene: Scene, part: str) -> Interval:
    """The widths that the lens makes from where it stands: of a zoom lens a range."""
    ratio = natural(plus(scene.bounds(part, "throw-ratio"), TOLERANCE))
    return shapes.thrown_width(natural(scene.bounds(part, "throw-distance")), ratio)


def _answer(made: Interval, wanted: Interval) -> Answer:
    if made.meet(wanted).is_empty:
        return Answer.OUT
    is_known = wanted.high is not None and surely_within(ZERO, wanted)
    return Answer.IN if is_known and made.holds(wanted) else Answer.OPEN
