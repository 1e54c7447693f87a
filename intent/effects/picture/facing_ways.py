"""Which way a picture looks, and how far something lies from the middle of it along its own axes."""

from __future__ import annotations

from intent.effects.scene import Scene
from intent.formulas import directions
from intent.formulas.directions import Arrow, Looking
from intent.values.bounds import ZERO

TURNS = ("facing", "tilt", "rotation")


def looking_of(scene: Scene, part: str) -> Looking:
    """All the ways in which a picture may look; where nothing is said of a turn, every one."""
    return directions.looking(*(scene.bounds(part, turn) for turn in TURNS))


def usual_looking(scene: Scene, part: str) -> Looking:
    """The way in which a picture looks, straight ahead and upright where nothing is said."""
    return directions.looking(
        *(scene.bounds(part, turn) if scene.is_given(part, turn) else ZERO for turn in TURNS)
    )


def at(scene: Scene, subject: str, characteristic: str) -> Arrow:
    """Where something is, each number within bounds."""
    x, y, z = scene.axes(subject, characteristic)
    return x, y, z
