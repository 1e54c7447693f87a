"""How much room a device takes up as it lies, as far as that is known.

Formulas: `intent.formulas.placing`.
"""

from __future__ import annotations

from intent.effects.scene import Scene
from intent.formulas import placing
from intent.formulas.placing import Outline
from intent.values.bounds import known
from intent.values.regions import Interval
from intent.values.sets import Answer

OUTER, SCREEN = ("outer-width", "outer-height"), ("visible-width", "visible-height")


def lying_sides(scene: Scene, part: str, sides: tuple[str, str]) -> Outline:
    """Width and height in metres that a device takes up as it is rotated, from the characteristics of its sides."""
    width, height = (scene.bounds(part, side) for side in sides)
    rotation = known(scene.bounds(part, "rotation"))
    if rotation is not None:
        return placing.outline(width, height, rotation)
    lows = [side.low for side in (width, height) if side.low is not None]
    return (Interval(min(lows, default=None), None),) * 2


def is_projected(scene: Scene, part: str) -> bool:
    """Whether the picture is surely elsewhere than the device."""
    return scene.is_(part, "technology", "projector") is Answer.IN


def outline_of(scene: Scene, part: str) -> Outline:
    """The outer width and height of a device as it lies; where they are not given, at least those of its screen."""
    outer, screen = lying_sides(scene, part, OUTER), lying_sides(scene, part, SCREEN)
    across, upright = (
        whole if whole.high is not None else Interval(seen.low, None)
        for whole, seen in zip(outer, screen, strict=True)
    )
    return across, upright
