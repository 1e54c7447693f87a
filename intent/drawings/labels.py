"""Where labels stand: in the part, or touching it, or moved aside with a line that ends in it; else nowhere.

A label without a line is nearer to its own part than to any other. What has no such place is left out, for whoever
draws to list. No two labels overlap.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from intent.drawings.lettering import LEADING, width_of
from intent.drawings.occupied import Occupied
from intent.drawings.plane import Box, Point, Segment, around, is_inside
from intent.drawings.silhouette import Silhouette

GAP = 0.6
"""Millimetres between a label and what it names."""
TOUCHING = 1.0
"""Millimetres up to which a label outside its part still touches it."""
CLEARER = 1.0
"""Millimetres by which every other part is further from a label than its own."""
_BETWEEN = 0.3
_IN_PICTURE = ((0.0, 0.0), (0.0, 0.12), (0.0, -0.12), (0.12, 0.0), (-0.12, 0.0), (0.0, 0.28), (0.0, -0.28))
"""How far from the middle of a part its label may stand, as shares of the part."""
_BESIDE = tuple(
    (float(x), float(y)) for x, y in ((0, 1), (0, -1), (1, 0), (-1, 0), (1, 1), (-1, 1), (1, -1), (-1, -1))
)
"""Below, above, right and left of the part, then at its corners."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """What a label names, on paper."""

    parts: tuple[str, ...]
    """By identifier: one, or several at one place."""
    silhouette: Silhouette
    within: tuple[Point, ...] = ()
    """The outline in which the label may stand, if it fits."""
    avoid: tuple[Box, ...] = ()
    """What it must not hide there."""
    behind: frozenset[str] = frozenset()
    """The parts that are hidden where this one is: they are in nobody's way there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lettering:
    """Some lines in a size of type, with the room that they take, in millimetres."""

    lines: tuple[str, ...]
    size: float

    @property
    def width(self) -> float:
        return max(width_of(line, self.size) for line in self.lines)

    @property
    def height(self) -> float:
        return self.size * (1 + LEADING * (len(self.lines) - 1))


@dataclass(frozen=True, slots=True)
class Asked:
    """A label to be placed: what is to be written, and what will do where that has no room."""

    spot: Spot
    wordings: tuple[Lettering, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedLabel:
    """A label in its place."""

    spot: Spot
    lettering: Lettering
    box: Box
    is_inside: bool = False
    leader: Segment | None = None
    """From the label to a point of its part."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """What labels must keep clear of, and the bounds that they keep within."""

    bounds: Box
    obstacles: Occupied
    """All that is drawn, by part."""
    silhouettes: Mapping[str, Silhouette]


class Laid:
    """The labels placed so far."""

    def __init__(self, ground: Ground) -> None:
        self.ground = ground
        self.placed: dict[int, PlacedLabel] = {}
        """By their number in the order asked for."""
        self.taken = Occupied()
        """Where they are."""
        self.leaders: list[Segment] = []

    def put(self, number: int, label: PlacedLabel) -> None:
        self.placed[number] = label
        self.taken.add(label.box)
        if label.leader:
            self.leaders.append(label.leader)

    def is_free(self, box: Box) -> bool:
        """Whether a place is within the bounds, and no label is in it."""
        bounds = self.ground.bounds
        if (
            box.left < bounds.left
            or box.right > bounds.right
            or box.bottom > bounds.bottom
            or box.top < bounds.top
        ):
            return False
        return self.taken.is_free(box.grown(_BETWEEN)) and not any(map(box.is_crossed, self.leaders))

    def is_nearest(self, spot: Spot, box: Box) -> bool:
        """Whether a place in or at a part is nearer to it than to any other part, for sure."""
        obstacles = self.ground.obstacles
        if not obstacles.is_free(box.grown(CLEARER), spot.parts):
            return False  # as most places are not, before it is measured
        near = spot.silhouette.distance(box)
        if near > TOUCHING and not spot.silhouette.holds(box):
            return False
        return obstacles.is_free(box.grown(near + CLEARER), spot.parts)


def placed_in(label: Asked, lettering: Lettering, laid: Laid) -> PlacedLabel | None:
    """In the face of its part, where nothing is hidden."""
    spot = label.spot
    if len(spot.within) < 3:
        return None
    face = around(spot.within)
    x, y = face.centre
    others = (*spot.parts, *spot.behind)
    for across, down in _IN_PICTURE:
        box = _centred(lettering, (x + face.width * across, y + face.height * down))
        if not all(is_inside(corner, spot.within) for corner in box.grown(_BETWEEN).corners):
            continue
        clear = laid.taken.is_free(box) and not any(box.overlaps(other) for other in spot.avoid)
        if clear and laid.ground.obstacles.is_free(box.grown(_BETWEEN), others):
            return PlacedLabel(spot=spot, lettering=lettering, box=box, is_inside=True)
    return None


def placed_at(label: Asked, lettering: Lettering, laid: Laid) -> PlacedLabel | None:
    """Touching its part; within its lines, where only those are drawn."""
    spot = label.spot
    places = _beside(spot.silhouette.extent, lettering)
    if not spot.silhouette.is_filled:
        places = (*places, *_lined(spot.silhouette.extent, lettering))
    for box in places:
        if laid.is_free(box) and laid.is_nearest(spot, box):
            return PlacedLabel(spot=spot, lettering=lettering, box=box)
    return None


def _beside(extent: Box, lettering: Lettering) -> tuple[Box, ...]:
    x, y = extent.centre
    across = (extent.width + lettering.width) / 2 + GAP
    down = (extent.height + lettering.height) / 2 + GAP / 2
    return tuple(_centred(lettering, (x + right * across, y + below * down)) for right, below in _BESIDE)


def _lined(extent: Box, lettering: Lettering) -> tuple[Box, ...]:
    """Within the lines of a part: along its upper edge, along its lower one, in its middle."""
    x, y = extent.centre
    across = (extent.width - lettering.width) / 2 - 2 * GAP
    down = (extent.height - lettering.height) / 2 - 1.5 * GAP
    if across < 0 or down < 0:
        return ()
    steps = ((0, -1), (-1, -1), (1, -1), (0, 1), (-1, 1), (1, 1), (0, 0))
    return tuple(_centred(lettering, (x + right * across, y + below * down)) for right, below in steps)


def _centred(lettering: Lettering, at: Point) -> Box:
    wide, high = lettering.width / 2, lettering.height / 2
    return Box(at[0] - wide, at[1] - high, at[0] + wide, at[1] + high)
