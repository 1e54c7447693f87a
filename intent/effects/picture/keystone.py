"""How far the lens of a projector is shifted, and what it costs where it is tilted instead.

Formulas: `intent.formulas.trapezoids`.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.picture.facing_ways import TURNS, usual_looking
from intent.effects.picture.shifting import (
    DIRECTIONS,
    LENS,
    Direction,
    beyond,
    is_corrected,
    is_placed,
    lens_from_middle,
    usual_demand,
)
from intent.effects.picture.throwing import DISTANCE, is_thrown
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.formulas import trapezoids
from intent.formulas.trapezoids import HALF, Slanted
from intent.language.figures import figure
from intent.language.message import Message, Place, say
from intent.model.subject import one
from intent.values.bounds import (
    ONE,
    ZERO,
    differs_by,
    is_known,
    magnitude,
    minus,
    natural,
    over,
    scaled,
    smaller,
    surely_above,
    times,
)
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.result import Effect, EffectTopic

SQUARE_TO_THE_WALL = say(
    "how far the lens is from the middle of the picture, over the side of the picture: similar triangles, of a lens "
    "whose axis is square to the picture; counted from the middle, while makers count in other ways too; the picture "
    "is taken to look straight ahead, and to stand upright, where nothing is said"
)
PROJECTED = say(
    "projection of one plane on another (Hartley and Zisserman, Multiple View Geometry, chapter 2; from memory), for a "
    "tilt in this direction alone, with the lens shifted as far as it goes; without shift the edges are as "
    "cos(ε − α/2) to cos(ε + α/2); what is left is of the largest upright picture of the same shape"
)
ROUGH = 2
"""Digits of what follows from distances and sizes that are measured on the wall."""


def keystone_effects(sides: Sides) -> Iterator[Effect]:
    """The shift of every projector whose lens or picture is elsewhere than documented, and what a tilt costs."""
    scene = sides.proposed
    for found in scene.running("display"):
        part = found.identifier
        if is_thrown(scene, part):
            for direction in DIRECTIONS:
                yield from _shift(sides, part, direction)
                yield from _slant(sides, part, direction)


def _shift(sides: Sides, part: str, direction: Direction) -> Iterator[Effect]:
    scene = sides.proposed
    before, after = _before(sides, part, direction), usual_demand(scene, part, direction)
    tolerance = scene.characteristic(direction.shift).tolerance or Fraction(0)
    if not is_placed(scene, part) or _is_blank(after) or not differs_by(before or ZERO, after, tolerance):
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=scene.called(direction.shift),
        unit="%",
        documented=None if before is None or _is_blank(before) else in_unit(before, "%"),
        proposed=in_unit(after, "%"),
        sentence=say(
            "so far its lens has to shift the picture from where it is; at 50 % an edge of the picture is level with it"
        ),
        source=SQUARE_TO_THE_WALL,
        missing=scene.unknown(part, *TURNS),
    )


def _before(sides: Sides, part: str, direction: Direction) -> Interval | None:
    return usual_demand(sides.documented, part, direction) if sides.was_there(part) else None


def _is_blank(bounds: Interval) -> bool:
    return bounds.low is None or bounds.high is None


def _slant(sides: Sides, part: str, direction: Direction) -> Iterator[Effect]:
    """The trapezoid of a projector that has to be tilted, since its lens does not shift the picture far enough."""
    scene = sides.proposed
    after = _slanted(scene, part, direction)
    before = _slanted(sides.documented, part, direction) if sides.was_there(part) else None
    if after is None or before == after:
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=say("keystone distortion"),
        unit="%",
        documented=_excess(before),
        proposed=_excess(after),
        sentence=_words(scene, part, direction, after),
        source=PROJECTED,
        missing=_missing(scene, part, direction),
    )


def _excess(slanted: Slanted | None) -> Interval | None:
    """By how much one edge is wider than the one across from it; none where nothing is known of it."""
    if slanted is None or slanted.wider.high is None:
        return None
    return in_unit(minus(slanted.wider, ONE), "%")


def _slanted(scene: Scene, part: str, direction: Direction) -> Slanted | None:
    """The picture as it is thrown in one direction; none where the lens shifts it far enough, or may."""
    wanted = usual_demand(scene, part, direction)
    reach = natural(scene.bounds(part, direction.range))
    is_short = surely_above(beyond(scene, direction, wanted), reach)
    is_squared = is_corrected(scene, part) is Answer.IN and reach.high is None
    if _is_blank(wanted) or not (is_short or is_squared):
        return None
    slope = over(natural(scene.bounds(part, direction.side)), _distance(scene, part))
    aside, shifted = (times(share, slope) for share in (magnitude(wanted), smaller(magnitude(wanted), reach)))
    return Slanted(half=scaled(slope, HALF), shifted=shifted, lean=trapezoids.lean(aside, shifted))


def _distance(scene: Scene, part: str) -> Interval:
    """From the lens to the plane of the picture."""
    if is_placed(scene, part):
        return natural(lens_from_middle(scene, part, usual_looking(scene, part))[-1])
    return natural(scene.bounds(part, DISTANCE))


def _words(scene: Scene, part: str, direction: Direction, slanted: Slanted) -> Message:
    if slanted.wider.high is None:
        return say(
            "its lens does not shift the picture so far, and how large a trapezoid a tilt makes cannot be said"
        )
    elements = slanted.elements_left
    told: dict[str, Place] = {
        "angle": figure(trapezoids.angle(slanted.lean), "°", ROUGH),
        "lines": direction.lines,
        "left": figure(slanted.lines_left, "%", ROUGH),
        "elements": figure(elements, "%", ROUGH),
    }
    raster = scene.axes(part, "raster")
    if not all(map(is_known, raster)):
        return say(
            "to be tilted by {angle}, so that one edge is so much wider than the one across from it; squared by "
            "keystone correction it keeps {left} of {lines} and {elements} of the picture elements at best",
            **told,
        )
    return say(
        "to be tilted by {angle}, so that one edge is so much wider than the one across from it; squared by "
        "keystone correction it keeps {left} of {lines} and {elements} of the picture elements at best, which is "
        "{count} of {all}",
        count=figure(times(elements, times(*raster)), digits=ROUGH),
        all=figure(times(*raster)),
        **told,
    )


def _missing(scene: Scene, part: str, direction: Direction) -> Missing:
    """What would have to be given, or is taken for granted."""
    place = (*TURNS,) if is_placed(scene, part) else (LENS, DISTANCE)
    return scene.unknown(part, direction.range, *place, direction.side, "raster")
