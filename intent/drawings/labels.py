"""Where labels stand: in the picture if they fit, else beside it, else moved aside with a thin line to it.

No two labels overlap, whatever there is to draw: as a last resort they stand in rows above everything.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice
from math import cos, pi, sin

from intent.drawings.lettering import LABEL, LEADING, width_of
from intent.drawings.occupied import Occupied
from intent.drawings.plane import Box, Point, Segment, distance, is_inside

GAP = 0.6
"""Millimetres between a label and what it names."""
_RINGS = (4.0, 6.0, 8.0, 10.0, 13.0, 16.0, 20.0, 25.0, 30.0)
"""Millimetres that a label is moved aside."""
_DIRECTIONS = 24
_WAYS = tuple(
    (cos(angle), sin(angle))
    for angle in (
        2 * pi * turn / _DIRECTIONS - pi / 2
        for turn in sorted(range(_DIRECTIONS), key=lambda turn: min(turn, _DIRECTIONS - turn))
    )
)
"""Across and down, upwards first."""
_IN_PICTURE = ((0.0, 0.0), (0.0, 0.12), (0.0, -0.12), (0.12, 0.0), (-0.12, 0.0))
"""How far from the middle of a picture its label may stand, as shares of the picture."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """What a label names, on paper."""

    parts: tuple[str, ...]
    """By identifier."""
    around: Box
    target: Point
    """Where a line from the label ends."""
    within: tuple[Point, ...] = ()
    """The outline in which the label may stand, if it fits."""
    avoid: tuple[Box, ...] = ()
    """What it must not hide there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A label to be placed."""

    spot: Spot
    lines: tuple[str, ...]
    size: float
    width: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedLabel:
    """A label in its place."""

    asked: Asked
    box: Box
    is_inside: bool = False
    leader: Segment | None = None


@dataclass(frozen=True, slots=True)
class Ground:
    """What labels must keep clear of, and the bounds that they keep within."""

    bounds: Box
    """Labels may go higher than its top, never lower or to the sides."""
    obstacles: Occupied


def asked(spot: Spot, lines: tuple[str, ...], size: float) -> Asked:
    """Some lines in a size of type, with the room that they take."""
    width = max(width_of(line, size) for line in lines)
    height = size * (1 + LEADING * (len(lines) - 1))
    return Asked(spot=spot, lines=lines, size=size, width=width, height=height)


def place(labels: Sequence[Asked], ground: Ground, most: int | None = None) -> tuple[PlacedLabel, ...] | None:
    """Every label in a place of its own; nothing, if more than so many would have to be moved aside.

    Those that fit into their pictures go first, then those that fit beside what they name.
    """
    laid = _Laid(ground)
    for number, label in enumerate(labels):
        box = _inside(label, laid.taken)
        if box is not None:
            laid.put(number, PlacedLabel(asked=label, box=box, is_inside=True))
    left: list[int] = []
    for number, label in enumerate(labels):
        if number in laid.placed:
            continue
        box = next((box for box in _beside(label) if laid.is_free(box)), None)
        if box is not None:
            laid.put(number, PlacedLabel(asked=label, box=box))
            continue
        left.append(number)
        if most is not None and len(left) > most:
            return None
    for number in left:
        laid.put(number, _aside(labels[number], laid))
    return tuple(laid.placed[number] for number in range(len(labels)))


class _Laid:
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
        """Whether a place is within the bounds, and neither a part nor a label is in it."""
        bounds = self.ground.bounds
        if box.left < bounds.left or box.right > bounds.right or box.bottom > bounds.bottom:
            return False
        return self.ground.obstacles.is_free(box) and self.taken.is_free(box)


def _inside(label: Asked, taken: Occupied) -> Box | None:
    """The middle of its outline, or a little to one side of it, where nothing is hidden."""
    if len(label.spot.within) < 3:
        return None
    x, y = label.spot.target
    for across, down in _IN_PICTURE:
        box = _centred(label, (x + label.spot.around.width * across, y + label.spot.around.height * down))
        clear = taken.is_free(box) and not any(box.overlaps(other) for other in label.spot.avoid)
        if clear and all(is_inside(corner, label.spot.within) for corner in box.grown(0.3).corners):
            return box
    return None


def _aside(label: Asked, laid: _Laid) -> PlacedLabel:
    """In the nearest free place of those whose line to the label crosses fewest parts."""
    found: PlacedLabel | None = None
    fewest, core = len(laid.ground.obstacles) + 1, _core(label.spot.around)
    for box in filter(laid.is_free, _rings(label)):
        leader = _leader(box, core)
        if any(laid.taken.crossed(leader)):
            continue
        crossed = _crossed(label, leader, laid.ground.obstacles, fewest)
        if crossed < fewest and not any(map(box.is_crossed, laid.leaders)):
            found, fewest = PlacedLabel(asked=label, box=box, leader=leader), crossed
        if not fewest:
            break  # no place further away is better
    if found is None:
        box = next(filter(laid.taken.is_free, _rows_above(label, laid.ground)))
        return PlacedLabel(asked=label, box=box, leader=_leader(box, core))
    return found


def _crossed(label: Asked, leader: Segment, obstacles: Occupied, enough: int) -> int:
    """How many parts but its own the line to a label runs through; no more are counted than are enough."""
    own = label.spot.around
    others = (box for box in obstacles.crossed(leader) if not box.overlaps(own))
    return sum(1 for _ in islice(others, enough))


def _core(around: Box) -> Box:
    """A part but for its margin: a line to it ends a little way in."""
    return around.grown(-min(0.8, around.width / 2, around.height / 2))


def _leader(box: Box, core: Box) -> Segment:
    """From a label to the nearest point of what it names."""
    to = core.nearest(box.centre)
    return box.nearest(to), to


def _beside(label: Asked) -> Iterator[Box]:
    """Below, above, to the right and to the left of the part, then at its corners."""
    x, y = label.spot.around.centre
    across = (label.spot.around.width + label.width) / 2 + GAP
    down = (label.spot.around.height + label.height) / 2 + GAP / 2
    steps = ((0, 1), (0, -1), (1, 0), (-1, 0), (1, 1), (-1, 1), (1, -1), (-1, -1))
    yield from (_centred(label, (x + right * across, y + below * down)) for right, below in steps)


def _rings(label: Asked) -> Iterator[Box]:
    """Further and further away, upwards first."""
    x, y = label.spot.around.centre
    width, height = label.width, label.height
    for ring in _RINGS:
        across, down = (
            ring + (label.spot.around.width + width) / 2,
            ring + (label.spot.around.height + height) / 2,
        )
        for right, below in _WAYS:
            at_x, at_y = x + across * right, y + down * below
            yield Box(at_x - width / 2, at_y - height / 2, at_x + width / 2, at_y + height / 2)


def _rows_above(label: Asked, ground: Ground) -> Iterator[Box]:
    """Places in rows above everything, the nearest in each row first."""
    steps = max(int((ground.bounds.width - label.width) / 2), 1)
    lefts = [ground.bounds.left + 2 * step for step in range(steps)]
    lefts.sort(key=lambda left: distance((left + label.width / 2, 0), (label.spot.target[0], 0)))
    bottom = ground.bounds.top
    while True:
        yield from (Box(left, bottom - label.height, left + label.width, bottom) for left in lefts)
        bottom -= LABEL * LEADING


def _centred(label: Asked, at: Point) -> Box:
    return Box(
        at[0] - label.width / 2, at[1] - label.height / 2, at[0] + label.width / 2, at[1] + label.height / 2
    )
