"""Where labels stand: in the picture if they fit, else beside it, else moved aside with a thin line to it.

No two labels overlap, whatever there is to draw: as a last resort they stand in rows above everything.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from math import cos, pi, sin

from intent.drawings.lettering import LABEL, LEADING, width_of
from intent.drawings.plane import Box, Point, Segment, distance, is_inside

GAP = 0.6
"""Millimetres between a label and what it names."""
_RINGS = (4.0, 6.0, 8.0, 10.0, 13.0, 16.0, 20.0, 25.0, 30.0)
_DIRECTIONS = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A label to be placed."""

    parts: tuple[str, ...]
    """The identifiers of what it names."""
    lines: tuple[str, ...]
    size: float
    around: Box
    """The part that it names, on paper."""
    target: Point
    """Where a line from the label ends."""
    within: tuple[Point, ...] = ()
    """The outline in which it may stand, if it fits."""
    avoid: tuple[Box, ...] = ()
    """What it must not hide there."""

    @property
    def width(self) -> float:
        return max(width_of(line, self.size) for line in self.lines)

    @property
    def height(self) -> float:
        return self.size * (1 + LEADING * (len(self.lines) - 1))


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
    obstacles: tuple[Box, ...]


def place(labels: Iterable[Asked], ground: Ground, most: int | None = None) -> tuple[PlacedLabel, ...] | None:
    """Every label in a place of its own; nothing, if more than so many would have to be moved aside.

    Those that fit into their pictures go first, then those that fit beside what they name.
    """
    asked = tuple(labels)
    placed: dict[Asked, PlacedLabel] = {}
    left: list[Asked] = []
    for label in asked:
        found = _inside(label, tuple(placed.values()))
        if found is not None:
            placed[label] = found
    for label in asked:
        found = placed.get(label) or _next_to(label, tuple(placed.values()), ground)
        if found is not None:
            placed[label] = found
            continue
        left.append(label)
        if most is not None and len(left) > most:
            return None
    for label in left:
        placed[label] = _aside(label, tuple(placed.values()), ground)
    return tuple(placed[label] for label in asked)


def _inside(label: Asked, placed: tuple[PlacedLabel, ...]) -> PlacedLabel | None:
    """The middle of its outline, or a little to one side of it, where nothing is hidden."""
    if len(label.within) < 3:
        return None
    x, y = label.target
    for across, down in ((0.0, 0.0), (0.0, 0.12), (0.0, -0.12), (0.12, 0.0), (-0.12, 0.0)):
        wide, high = label.around.width * across, label.around.height * down
        box = _centred(label, (x + wide, y + high))
        taken = (*label.avoid, *(other.box for other in placed))
        clear = not any(box.overlaps(other) for other in taken)
        if clear and all(is_inside(corner, label.within) for corner in box.grown(0.3).corners):
            return PlacedLabel(asked=label, box=box, is_inside=True)
    return None


def _next_to(label: Asked, placed: tuple[PlacedLabel, ...], ground: Ground) -> PlacedLabel | None:
    taken, near = tuple(other.box for other in placed), _within_reach(label, ground, GAP)
    free = (box for box in _beside(label) if _is_free(box, taken, (), near))
    found = next(free, None)
    return None if found is None else PlacedLabel(asked=label, box=found)


def _aside(label: Asked, placed: tuple[PlacedLabel, ...], ground: Ground) -> PlacedLabel:
    taken = tuple(other.box for other in placed)
    leaders = tuple(other.leader for other in placed if other.leader)
    near = _within_reach(label, ground, _RINGS[-1])
    free = [box for box in _rings(label) if _is_free(box, taken, leaders, near)]
    others = tuple(other for other in ground.obstacles if not other.overlaps(label.around))
    drawn = [(box, leader) for box in free if not _crossed(taken, leader := _leader(label, box))]
    if drawn:
        box, leader = min(drawn, key=lambda one: _crossed(others, one[1]))
        return PlacedLabel(asked=label, box=box, leader=leader)
    box = next(box for box in _rows_above(label, ground) if not any(box.overlaps(other) for other in taken))
    return PlacedLabel(asked=label, box=box, leader=_leader(label, box))


def _within_reach(label: Asked, ground: Ground, reach: float) -> Ground:
    """The ground with only those obstacles that a label so far away could touch."""
    all_round = label.around.grown(reach + max(label.width, label.height))
    return replace(ground, obstacles=tuple(one for one in ground.obstacles if all_round.overlaps(one)))


def _crossed(boxes: tuple[Box, ...], leader: Segment) -> int:
    """How many boxes a line runs through."""
    return sum(box.is_crossed(leader) for box in boxes)


def _leader(label: Asked, box: Box) -> Segment:
    """From the label to the nearest edge of what it names, a little way in."""
    x, y = box.centre
    to = label.around.grown(-min(0.8, label.around.width / 2, label.around.height / 2)).nearest((x, y))
    return box.nearest(to), to


def _is_free(box: Box, taken: tuple[Box, ...], leaders: tuple[Segment, ...], ground: Ground) -> bool:
    bounds = ground.bounds
    if box.left < bounds.left or box.right > bounds.right or box.bottom > bounds.bottom:
        return False
    return (
        not any(box.overlaps(other) for other in taken)
        and not any(box.overlaps(other) for other in ground.obstacles)
        and not any(box.is_crossed(leader) for leader in leaders)
    )


def _beside(label: Asked) -> Iterator[Box]:
    """Below, above, to the right and to the left of the part, then at its corners."""
    x, y = label.around.centre
    across = (label.around.width + label.width) / 2 + GAP
    down = (label.around.height + label.height) / 2 + GAP / 2
    steps = ((0, 1), (0, -1), (1, 0), (-1, 0), (1, 1), (-1, 1), (1, -1), (-1, -1))
    yield from (_centred(label, (x + right * across, y + below * down)) for right, below in steps)


def _rings(label: Asked) -> Iterator[Box]:
    """Further and further away, upwards first."""
    x, y = label.around.centre
    width, height = label.width, label.height
    turns = sorted(range(_DIRECTIONS), key=lambda turn: min(turn, _DIRECTIONS - turn))
    ways = [(cos(angle), sin(angle)) for angle in (2 * pi * turn / _DIRECTIONS - pi / 2 for turn in turns)]
    for ring in _RINGS:
        across, down = ring + (label.around.width + width) / 2, ring + (label.around.height + height) / 2
        for right, below in ways:
            at_x, at_y = x + across * right, y + down * below
            yield Box(at_x - width / 2, at_y - height / 2, at_x + width / 2, at_y + height / 2)


def _rows_above(label: Asked, ground: Ground) -> Iterator[Box]:
    """Places in rows above everything, the nearest in each row first."""
    steps = max(int((ground.bounds.width - label.width) / 2), 1)
    lefts = [ground.bounds.left + 2 * step for step in range(steps)]
    lefts.sort(key=lambda left: distance((left + label.width / 2, 0), (label.target[0], 0)))
    bottom = ground.bounds.top
    while True:
        yield from (Box(left, bottom - label.height, left + label.width, bottom) for left in lefts)
        bottom -= LABEL * LEADING


def _centred(label: Asked, at: Point) -> Box:
    return Box(
        at[0] - label.width / 2, at[1] - label.height / 2, at[0] + label.width / 2, at[1] + label.height / 2
    )
