"""A set as it lies, drawn from the front and a little from above: its screen is black, and an arrow points to its top.

Standing, lying on its back or its face, upside down, on its side: one drawing for all, turned as a solid and not as
a picture, so that a set that lies face up is seen lying. Where the face is turned away its back is seen, and on
it the arrow in outline.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, radians, sin

from intent.drawings.plane import Point, around
from intent.drawings.solid import Pose, Vector
from intent.drawings.svg import Element, closed, number, path, shape, solid
from intent.papers.cards.posture import Lying

_WIDE, _HIGH = 4.0, 3.0
_VIEWS = ((28.0, 24.0), (-28.0, 24.0), (28.0, 38.0), (-28.0, 38.0))
"""From where it may be seen, in degrees to the right and up; the first from which the face is seen well."""
_WELL, _AT_ALL = 0.5, 0.25
"""How much the face is turned towards the eye to be seen well, and to be seen: shares of facing it."""
_FRAME, _FLOOR_EDGE = 0.32, 0.5
_SHAFT, _HEAD, _LONG, _NECK = 0.17, 0.5, 0.92, 0.05
"""The arrow on the face: half the widths of shaft and head, half the length, and from where on it is its head."""
_THIN, _THICK = 0.3, 0.55
_SIDES = (
    (1.0, 0.0, ((1, 1, 0), (1, 1, 1), (1, -1, 1), (1, -1, 0))),
    (-1.0, 0.0, ((-1, 1, 0), (-1, 1, 1), (-1, -1, 1), (-1, -1, 0))),
    (0.0, 1.0, ((-1, 1, 0), (-1, 1, 1), (1, 1, 1), (1, 1, 0))),
    (0.0, -1.0, ((-1, -1, 0), (-1, -1, 1), (1, -1, 1), (1, -1, 0))),
)
"""The four sides: which way each looks, across and along; its corners, and whether they are at the back."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenSet:
    """A set on paper, with y downwards, in no unit: what is seen of it."""

    floor: tuple[Point, ...]
    sides: tuple[tuple[Point, ...], ...]
    panel: tuple[Point, ...]
    """The face or, where that is turned away, the back; from its own top left, top right, bottom right."""
    screen: tuple[Point, ...]
    arrow: tuple[Point, ...]
    """The first point is the tip."""
    is_face: bool


@dataclass(frozen=True, slots=True)
class _Eye:
    """A direction from which one looks, with what is right and up on paper."""

    aside: float
    up: float

    @property
    def towards(self) -> Vector:
        aside, up = radians(self.aside), radians(self.up)
        return (sin(aside) * cos(up), sin(up), cos(aside) * cos(up))

    def at(self, place: Vector) -> Point:
        aside, up = radians(self.aside), radians(self.up)
        x, y, z = place
        return (
            x * cos(aside) - z * sin(aside),
            x * sin(aside) * sin(up) - y * cos(up) + z * cos(aside) * sin(up),
        )


@dataclass(frozen=True, slots=True)
class _Body:
    """The set as a block in its pose, about its own middle."""

    pose: Pose
    depth: float

    def at(self, across: float, along: float, back: float) -> Vector:
        """A place on it: across and along its face, and from the face (0) to the back (1)."""
        frame = self.pose.frame
        out = self.depth * (0.5 - back)
        x, y, z = (
            across * right + along * up + out * outward
            for right, up, outward in zip(frame.right, frame.up, frame.outward, strict=True)
        )
        return (x, y, z)

    def looks(self, across: float, along: float) -> Vector:
        """The way in which a side looks."""
        frame = self.pose.frame
        x, y, z = (across * right + along * up for right, up in zip(frame.right, frame.up, strict=True))
        return (x, y, z)


def seen_set(pose: Pose, depth: float) -> SeenSet:
    """What is seen of a set in a pose; ``depth`` is a share of its width."""
    body = _Body(pose, max(depth, 0.04) * _WIDE)
    eye = _eye(pose)
    is_face = _along(pose.frame.outward, eye.towards) > 0
    back = 0.0 if is_face else 1.0

    def panel(corners: tuple[tuple[float, float], ...]) -> tuple[Point, ...]:
        return tuple(eye.at(body.at(across, along, back)) for across, along in corners)

    sides = tuple(
        tuple(eye.at(body.at(across * _WIDE / 2, along * _HIGH / 2, deep)) for across, along, deep in corners)
        for right, up, corners in _SIDES
        if _along(body.looks(right, up), eye.towards) > 0
    )
    return SeenSet(
        floor=_floor(body, eye),
        sides=sides,
        panel=panel(_rectangle(0.0)),
        screen=panel(_rectangle(_FRAME)),
        arrow=panel(_arrow()),
        is_face=is_face,
    )


def _eye(pose: Pose) -> _Eye:
    """From where it is seen best: the face well, else the face at all, else the back."""
    eyes = [_Eye(aside, up) for aside, up in _VIEWS]
    shares = {eye: _along(pose.frame.outward, eye.towards) for eye in eyes}
    well = next((eye for eye in eyes if shares[eye] >= _WELL), None)
    most = max(eyes, key=lambda eye: shares[eye])
    if well or shares[most] >= _AT_ALL:
        return well or most
    return min(eyes, key=lambda eye: shares[eye])


def _along(one: Vector, other: Vector) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def _rectangle(within: float) -> tuple[tuple[float, float], ...]:
    wide, high = _WIDE / 2 - within, _HIGH / 2 - within
    return ((-wide, high), (wide, high), (wide, -high), (-wide, -high))


def _arrow() -> tuple[tuple[float, float], ...]:
    return (
        (0.0, _LONG),
        (_HEAD, _NECK),
        (_SHAFT, _NECK),
        (_SHAFT, -_LONG),
        (-_SHAFT, -_LONG),
        (-_SHAFT, _NECK),
        (-_HEAD, _NECK),
    )


def _floor(body: _Body, eye: _Eye) -> tuple[Point, ...]:
    """What it stands on, level, a little larger than the set."""
    corners = [
        body.at(across * _WIDE / 2, along * _HIGH / 2, back)
        for across in (-1, 1)
        for along in (-1, 1)
        for back in (0.0, 1.0)
    ]
    low = min(y for _, y, _ in corners)
    left, right = min(x for x, *_ in corners) - _FLOOR_EDGE, max(x for x, *_ in corners) + _FLOOR_EDGE
    far, near = min(z for *_, z in corners) - _FLOOR_EDGE, max(z for *_, z in corners) + _FLOOR_EDGE
    return tuple(eye.at((x, low, z)) for x, z in ((left, far), (right, far), (right, near), (left, near)))


def way_up(lying: Lying, wide: float, high: float) -> Iterator[Element]:
    """The drawing, in millimetres, where the pose is known; a picture's face is black, any other white."""
    if lying.pose is None:
        return
    seen = seen_set(lying.pose, lying.depth)
    box = around([*seen.floor, *seen.panel, *(point for side in seen.sides for point in side)]).grown(0.15)
    unit = max(box.width / wide, box.height / high)
    thin, thick = _THIN * unit, _THICK * unit
    yield shape(
        "svg",
        path(closed(seen.floor), thin, stroke_dasharray=f"{number(2 * thin)} {number(1.6 * thin)}"),
        (_sheet(side, thick) for side in seen.sides),
        _sheet(seen.panel, thick),
        _marked(seen, lying.shows_picture, thin),
        class_="way-up",
        viewBox=" ".join(number(float(one)) for one in (box.left, box.top, box.width, box.height)),
        width=f"{number(wide)}mm",
        height=f"{number(high)}mm",
        aria_hidden="true",
    )


def _sheet(corners: tuple[Point, ...], width: float) -> Element:
    return shape(
        "path",
        d=closed(corners),
        fill="#fff",
        stroke="currentColor",
        stroke_width=width,
        stroke_linejoin="round",
    )


def _marked(seen: SeenSet, shows_picture: bool, thin: float) -> list[Element]:
    if not seen.is_face:
        return [path(closed(seen.arrow), 1.3 * thin, stroke_linejoin="round")]
    if not shows_picture:
        return [solid(closed(seen.arrow))]
    return [solid(closed(seen.screen)), solid(closed(seen.arrow), fill="#fff")]
