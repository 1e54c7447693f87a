"""How a device lies, and on which of its sides its vents come to be."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from intent.effects.limits_kept import all_alike
from intent.effects.scene import Scene
from intent.values.bounds import known
from intent.values.sets import Answer

ABOVE, RIGHT, BELOW, LEFT = range(4)
DIRECTIONS: Mapping[str, tuple[int, ...]] = {
    "vent-top": (ABOVE,),
    "vent-bottom": (BELOW,),
    "vent-sides": (RIGHT, LEFT),
    "vent-all-round": (ABOVE, RIGHT, BELOW, LEFT),
}
"""Where vents lie as built, of the four sides that change places when a device turns."""
UPRIGHT, ON_ITS_SIDE, UPSIDE_DOWN, ON_ITS_BACK, FACE_DOWN = "upright", "side", "upside-down", "back", "face"
NEAREST = 30
"""In degrees: a device further from a quarter turn lies slanting, and nothing is told of it (common practice)."""


def lying(scene: Scene, part: str) -> str | None:
    """How a device lies; upright where nothing is said of it, none where it lies slanting or nobody knows."""
    tilt, rotation = (angle_of(scene, part, name) for name in ("tilt", "rotation"))
    if tilt is None or rotation is None:
        return None
    lean = _quarter(tilt)
    if lean in (1, 3):
        return ON_ITS_BACK if lean == 1 else FACE_DOWN
    turn = _quarter(rotation)
    if turn is None or lean != 0:
        return None
    return (UPRIGHT, ON_ITS_SIDE, UPSIDE_DOWN, ON_ITS_SIDE)[turn]


def angle_of(scene: Scene, part: str, name: str) -> Fraction | None:
    return known(scene.bounds(part, name)) if scene.states(part, name) else Fraction(0)


def _quarter(angle: Fraction) -> int | None:
    """The nearest of the four quarter turns."""
    turn = round(angle / 90)
    return turn % 4 if abs(angle - 90 * turn) <= NEAREST else None


def open_sides(scene: Scene, part: str) -> frozenset[int]:
    """The sides of the device as it lies on which there surely are vents."""
    return frozenset(side for side in range(4) if vented(scene, part, side) is Answer.IN)


def vented(scene: Scene, part: str, side: int) -> Answer:
    """Whether there are vents on a side of the device as it lies; open where nobody says where, or how it lies."""
    rotation = angle_of(scene, part, "rotation")
    turn = None if rotation is None else _quarter(rotation)
    if turn is None:
        return Answer.OPEN
    return all_alike(
        Answer.IN if side in {(built + turn) % 4 for built in DIRECTIONS.get(name, ())} else Answer.OUT
        for name in scene.names(part, "vent-position")
    )
