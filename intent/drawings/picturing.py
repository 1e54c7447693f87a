"""The face of a display and the picture as it falls on it: with bars, cropped, stretched, turned."""

from __future__ import annotations

from intent.drawings.measuring import CLOSE_ANGLE, length, middle
from intent.drawings.solid import Corners, Pose, sheet
from intent.drawings.stage import Screen
from intent.effects.scene import Scene
from intent.language.message import Words
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.computed import lying_shape, turn_of_picture

_QUARTER = 90
_CLOSE_SHAPE = CLOSE_ANGLE / 200


def screen_of(scene: Scene, part: str, pose: Pose) -> tuple[Screen | None, tuple[Words, ...]]:
    """The screen of a display in its pose, and what would have to be given for it to be drawn wholly."""
    width, height = length(scene, part, "visible-width"), length(scene, part, "visible-height")
    if width is None or height is None:
        wanted = ("visible-diagonal", "aspect-ratio")
        return None, tuple(scene.called(name) for name in wanted if not scene.is_given(part, name)) or (
            scene.called("visible-diagonal"),
        )
    projected = scene.is_(part, "technology", "projector") is Answer.IN
    quarters = _quarters(scene, part)
    visible = _begun(sheet(pose, width, height), quarters or 0)
    picture = () if quarters is None else _picture(scene, part, pose, quarters)
    missing = () if picture else (scene.called("picture-shape"),)
    lost = _lost(scene, part, pose, width, height)
    return Screen(
        visible=visible, picture=picture, lost=lost, is_projected=projected, has_top=quarters is not None
    ), missing


def _picture(scene: Scene, part: str, pose: Pose, quarters: int) -> Corners:
    """The picture's corners from its own top left; none where its size or its fit is not known."""
    width, height = length(scene, part, "picture-width"), length(scene, part, "picture-height")
    return () if width is None or height is None else _begun(sheet(pose, width, height), quarters)


def _begun(corners: Corners, quarters: int) -> Corners:
    """The corners of the screen from the one at which a picture turned on it has its top left."""
    return corners[quarters:] + corners[:quarters]


def _lost(scene: Scene, part: str, pose: Pose, width: float, height: float) -> Corners:
    """The whole picture of which a cropped screen shows the middle."""
    shape = middle(lying_shape(scene.state, part), _CLOSE_SHAPE)
    if scene.is_(part, "fit", "cropped") is not Answer.IN or shape is None or not shape:
        return ()
    return sheet(pose, max(width, height * shape), max(height, width / shape))


def _quarters(scene: Scene, part: str) -> int | None:
    """How many quarter turns clockwise the picture lies on the screen."""
    turn: Interval = turn_of_picture(scene.state, part)
    if turn.low is None or turn.low != turn.high or turn.low % _QUARTER:
        return None
    return int(turn.low // _QUARTER) % 4
