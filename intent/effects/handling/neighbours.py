"""Devices side by side and above one another on one plane: which are neighbours, and what is between them.

Whole micrometres throughout, so that a wall of many screens is gone through quickly and equal gaps are equal.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.handling.footprint import is_straight
from intent.effects.handling.outline import lying_sides
from intent.effects.scene import Scene
from intent.values.bounds import known, point
from intent.values.regions import Interval

MICROMETRES = 10**6
SAME_DEPTH = 10_000
"""A device of unknown depth is met by what is less than this before or behind it: the tolerance of a position."""
LEAST_OVERLAP = 1000
"""Two devices that overlap by less, a millimetre, touch."""
Edges = tuple[int, int]
"""Where something begins and ends on an axis."""


@dataclass(frozen=True, slots=True)
class Face:
    """The front of a device on the wall."""

    part: str
    edges: tuple[Edges, Edges, Edges]
    """Across, upright and in depth."""

    def gap(self, other: Face, axis: int) -> int:
        """The distance between two faces on an axis; negative where they overlap."""
        (low, high), (other_low, other_high) = self.edges[axis], other.edges[axis]
        return max(low, other_low) - min(high, other_high)

    def is_beside(self, other: Face, axis: int) -> bool:
        """Whether two face each other along an axis: over at least half the side of the smaller, at the same depth."""
        across = 1 - axis
        smaller = min(high - low for low, high in (self.edges[across], other.edges[across]))
        return self.is_level_with(other) and 2 * -self.gap(other, across) >= smaller

    def is_level_with(self, other: Face) -> bool:
        """Whether the two share some depth, and so may stand in each other's way."""
        return self.gap(other, 2) <= 0

    def overlaps(self, other: Face) -> bool:
        return self.is_level_with(other) and all(self.gap(other, axis) < -LEAST_OVERLAP for axis in (0, 1))


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """Two neighbours, and on which axis: 0 side by side, 1 above one another."""

    one: str
    two: str
    axis: int
    gap: int
    """In micrometres."""

    def gap_among(self, others: Mapping[str, Face]) -> int | None:
        """The gap of the same two devices among other faces; none where they are not beside each other there."""
        one, two = others.get(self.one), others.get(self.two)
        if one is None or two is None or not one.is_beside(two, self.axis):
            return None
        return one.gap(two, self.axis)


def in_metres(micrometres: int) -> Interval:
    """A length in the unit in which values are held."""
    return point(Fraction(micrometres, MICROMETRES))


def faces(scene: Scene, parts: Iterable[str], sides: tuple[str, str]) -> dict[str, Face]:
    """The faces of the devices that look straight to the front and whose position, rotation and size are known."""
    found = (_face(scene, part, sides) for part in parts)
    return {face.part: face for face in found if face is not None}


def _face(scene: Scene, part: str, sides: tuple[str, str]) -> Face | None:
    rotation = known(scene.bounds(part, "rotation"))
    if (
        rotation is None
        or rotation % 90
        or not all(is_straight(scene, part, name) for name in ("facing", "tilt"))
    ):
        return None
    centre = [known(axis) for axis in scene.axes(part, "position")]
    size = [known(side) for side in lying_sides(scene, part, sides)]
    if None in centre or None in size:
        return None
    x, y, z = (round((axis or 0) * MICROMETRES) for axis in centre)
    width, height = (round((side or 0) * MICROMETRES) for side in size)
    depth = round((known(scene.bounds(part, "outer-depth")) or 0) * MICROMETRES) or SAME_DEPTH
    return Face(part, (_about(x, width), _about(y, height), (z - depth, z)))


def _about(centre: int, size: int) -> Edges:
    return centre - size // 2, centre - size // 2 + size


def neighbours(found: Mapping[str, Face]) -> Iterator[Pair]:
    """Each face with the next on its right and the next above it, and with all that it overlaps; no pair twice."""
    for axis in (0, 1):
        ordered = sorted(found.values(), key=lambda face: face.edges[axis])
        for place, face in enumerate(ordered):
            yield from _next(face, ordered[place + 1 :], axis)


def _next(face: Face, others: Iterable[Face], axis: int) -> Iterator[Pair]:
    for other in others:
        if face.overlaps(other):
            if _overlaps_least_on(face, other) == axis:
                yield Pair(one=face.part, two=other.part, axis=axis, gap=face.gap(other, axis))
        elif face.is_beside(other, axis):
            yield Pair(one=face.part, two=other.part, axis=axis, gap=face.gap(other, axis))
            return


def _overlaps_least_on(face: Face, other: Face) -> int:
    return 0 if face.gap(other, 0) >= face.gap(other, 1) else 1
