"""Where a part stands in the room and which way it lies: flat sheets and boxes in metres.

The axes are those of a position: x to the right seen from the front, y up from the finished floor, z towards
the viewer. Together they are right-handed.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin

Vector = tuple[float, float, float]
"""x, y and z, in metres."""
Corners = tuple[Vector, ...]


@dataclass(frozen=True, slots=True)
class Frame:
    """The directions of a sheet: to its own right, up along it, and out of its face."""

    right: Vector
    up: Vector
    outward: Vector


@dataclass(frozen=True, slots=True, kw_only=True)
class Pose:
    """A place and three angles in degrees."""

    centre: Vector
    rotation: float = 0.0
    """In the plane of the face, clockwise seen from the front."""
    tilt: float = 0.0
    """0 is vertical, 90 lies on its back."""
    facing: float = 0.0
    """In plan, clockwise seen from above: 0 looks towards the viewer, 90 to the left."""

    @property
    def frame(self) -> Frame:
        tilt, facing, rotation = radians(self.tilt), radians(self.facing), radians(self.rotation)
        right = (cos(facing), 0.0, sin(facing))
        level = (-sin(facing), 0.0, cos(facing))
        outward = (cos(tilt) * level[0], sin(tilt), cos(tilt) * level[2])
        up = (-sin(tilt) * level[0], cos(tilt), -sin(tilt) * level[2])
        return Frame(
            _combined(right, cos(rotation), up, -sin(rotation)),
            _combined(right, sin(rotation), up, cos(rotation)),
            outward,
        )

    def turned(self, by: float) -> Pose:
        """The same place with the face turned further, clockwise."""
        return Pose(
            centre=self.centre, rotation=(self.rotation + by) % 360, tilt=self.tilt, facing=self.facing
        )


def _combined(one: Vector, much: float, two: Vector, more: float) -> Vector:
    return (one[0] * much + two[0] * more, one[1] * much + two[1] * more, one[2] * much + two[2] * more)


def sheet(pose: Pose, width: float, height: float, out: float = 0.0) -> Corners:
    """The corners of a rectangle in a pose, clockwise from its own top left."""
    frame = pose.frame
    halves = (
        (-width / 2, height / 2),
        (width / 2, height / 2),
        (width / 2, -height / 2),
        (-width / 2, -height / 2),
    )
    return tuple(_moved(pose.centre, frame, across, along, out) for across, along in halves)


def box(pose: Pose, width: float, height: float, front: float, back: float) -> Corners:
    """The corners of a block between two depths along the way its face looks; one sheet where they are the same."""
    if front == back:
        return sheet(pose, width, height, front)
    return (*sheet(pose, width, height, front), *sheet(pose, width, height, back))


def _moved(centre: Vector, frame: Frame, across: float, along: float, out: float) -> Vector:
    x, y, z = (
        place + across * right + along * up + out * outward
        for place, right, up, outward in zip(centre, frame.right, frame.up, frame.outward, strict=True)
    )
    return x, y, z
