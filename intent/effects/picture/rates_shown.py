"""How often pictures come: frames and fields as they are recorded, and as a display draws them."""

from __future__ import annotations

from intent.effects.picture.interlacing import shows_each_field
from intent.effects.scene import Scene
from intent.values.bounds import ONE, hull, point, smaller, times
from intent.values.regions import Interval
from intent.values.sets import Answer

FIELDS = point(2)
"""In a frame."""


def recorded_rate(scene: Scene, part: str) -> Interval | None:
    """Frames in a second of what a part's channel shows; none where nothing is said of them."""
    given = [
        scene.bounds(material, "frame-rate")
        for material in scene.material(part)
        if scene.states(material, "frame-rate")
    ]
    return hull(given) if given else None


def rate_given(scene: Scene, part: str) -> Interval | None:
    """How many frames the display is given in a second: of fields that become frames, twice those of the material."""
    rate = recorded_rate(scene, part)
    return times(rate, FIELDS) if rate is not None and shows_each_field(scene, part) else rate


def field_rate(scene: Scene, part: str, recorded: Interval) -> Interval:
    """How often a tube draws its picture: as stated, else once a field, or once a frame that has none."""
    if scene.states(part, "refresh-rate"):
        return scene.bounds(part, "refresh-rate")
    return recorded if is_surely_whole(scene, part) else times(recorded, FIELDS)


def new_pictures(scene: Scene, part: str) -> Interval | None:
    """How many pictures in a second differ from the one before, as far as the display draws so many."""
    recorded = recorded_rate(scene, part)
    if recorded is None:
        return None
    each = ONE if is_surely_whole(scene, part) else hull([ONE, FIELDS])
    if shows_each_field(scene, part):
        each = FIELDS
    come = times(recorded, each)
    return smaller(come, scene.bounds(part, "refresh-rate")) if scene.states(part, "refresh-rate") else come


def is_surely_whole(scene: Scene, part: str) -> bool:
    """Whether all that the channel shows is surely recorded in whole frames."""
    progressive = [scene.is_(material, "interlacing", "progressive") for material in scene.material(part)]
    return bool(progressive) and set(progressive) == {Answer.IN}
