"""How far a projector's lens has to shift its picture from where it is, and whether it can.

Where the lens leans instead, the picture is a trapezoid, which keystone correction squares at a price
(``intent.effects.picture.keystone``).
"""

from __future__ import annotations

from dataclasses import dataclass

from intent.effects.picture.facing_ways import at, looking_of, usual_looking
from intent.effects.scene import Scene
from intent.formulas import directions, trapezoids
from intent.formulas.directions import Arrow, Looking
from intent.language.message import Message, say
from intent.values.bounds import larger, magnitude, minus, natural, point
from intent.values.regions import EVERYTHING, Interval
from intent.values.sets import Answer

LENS, PLACE, CORRECTION = "lens-position", "position", "keystone-correction"


@dataclass(frozen=True, slots=True, kw_only=True)
class Direction:
    """One of the two directions in which a lens shifts its picture."""

    shift: str
    """The characteristic of how far it is set."""
    range: str
    """Of how far it can be."""
    side: str
    """Of the side of the picture of which it is a part."""
    axis: int
    """Of an arrow along the picture's own axes."""
    side_name: Message
    ways: tuple[Message, Message, Message]
    """Less than nothing, more than nothing, either."""
    lines: Message
    """Those of which some are lost where the picture is squared by computing."""


UP = Direction(
    shift="lens-shift",
    range="lens-shift-range",
    side="visible-height",
    axis=1,
    side_name=say("its height"),
    ways=(say("down"), say("up"), say("up or down")),
    lines=say("its rows"),
)
ACROSS = Direction(
    shift="horizontal-lens-shift",
    range="horizontal-lens-shift-range",
    side="visible-width",
    axis=0,
    side_name=say("its width"),
    ways=(say("to the left"), say("to the right"), say("to one side")),
    lines=say("its columns"),
)
DIRECTIONS = (UP, ACROSS)


def is_placed(scene: Scene, part: str) -> bool:
    """Whether it is known where its lens is and where its picture."""
    return scene.is_given(part, LENS) and scene.is_given(part, PLACE)


def is_corrected(scene: Scene, part: str) -> Answer:
    """Whether the picture is squared by computing; where nothing is said of it, it is not."""
    return scene.is_(part, CORRECTION, "yes") if scene.states(part, CORRECTION) else Answer.OUT


def demand(scene: Scene, part: str, direction: Direction) -> Interval:
    """How far the picture has to be shifted, signed, as a share of its side: by where things are, else as it is set."""
    if is_placed(scene, part):
        return by_place(scene, part, direction, looking_of(scene, part))
    return scene.bounds(part, direction.shift) if scene.states(part, direction.shift) else EVERYTHING


def usual_demand(scene: Scene, part: str, direction: Direction) -> Interval:
    """The same of a picture that looks straight ahead and stands upright where nothing is said."""
    if is_placed(scene, part):
        return by_place(scene, part, direction, usual_looking(scene, part))
    return demand(scene, part, direction)


def by_place(scene: Scene, part: str, direction: Direction, looking: Looking) -> Interval:
    """How far it has to be shifted from where its lens is."""
    side = natural(scene.bounds(part, direction.side))
    return trapezoids.shift(lens_from_middle(scene, part, looking)[direction.axis], side)


def lens_from_middle(scene: Scene, part: str, looking: Looking) -> Arrow:
    """How far the lens lies across, above and before the middle of the picture, along the picture's own axes."""
    return looking.parts_of(directions.way(at(scene, part, PLACE), at(scene, part, LENS)))


def beyond(scene: Scene, direction: Direction, wanted: Interval) -> Interval:
    """How far it has to be shifted, whichever way, but for what the tolerance of a shift lets pass."""
    tolerance = scene.characteristic(direction.shift).tolerance or 0
    return larger(minus(magnitude(wanted), point(tolerance)), point(0))


def way_of(direction: Direction, wanted: Interval) -> Message:
    """Which way it has to be shifted."""
    down, up, either = direction.ways
    if wanted.low is not None and wanted.low >= 0:
        return up
    return down if wanted.high is not None and wanted.high <= 0 else either
