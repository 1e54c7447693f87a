"""Labels moved aside, each with a line that ends in its part and runs through no other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import cos, pi, sin

from intent.drawings.labels import Asked, Laid, Lettering, PlacedLabel, Spot
from intent.drawings.plane import Box, Point, Segment, distance, is_crossing, is_inside
from intent.drawings.silhouette import Silhouette

_RINGS = (2.5, 5.0, 8.5, 13.0, 18.0)
"""Millimetres that a label is moved aside."""
_DIRECTIONS = 12
_WAYS = tuple(
    (cos(angle), sin(angle))
    for angle in (
        2 * pi * turn / _DIRECTIONS - pi / 2
        for turn in sorted(range(_DIRECTIONS), key=lambda turn: min(turn, _DIRECTIONS - turn))
    )
)
"""Across and down, upwards first."""
_CLEAR = 1.0
"""Millimetres between a label with a line and whatever it does not name."""


def placed_aside(label: Asked, lettering: Lettering, laid: Laid) -> PlacedLabel | None:
    """In the nearest free place from which a line reaches its part and no other."""
    spot = label.spot
    ends = _ends(spot, laid)
    if not ends:
        return None
    obstacles = laid.ground.obstacles
    for box in _rings(spot.silhouette.extent, lettering):
        if not laid.is_free(box) or not obstacles.is_free(box.grown(_CLEAR)):
            continue
        leader = _leader(box, ends)
        if _is_plain(leader, spot, laid):
            return PlacedLabel(spot=spot, lettering=lettering, box=box, leader=leader)
    return None


def _ends(spot: Spot, laid: Laid) -> Sequence[Point]:
    """The points in which a line to a part may end: no other part is there, but for one around it or behind it."""
    own = spot.silhouette
    others = [
        other
        for other in laid.ground.silhouettes.values()
        if other.part not in spot.parts
        and not (own.is_filled and other.part in spot.behind)
        and other.extent.overlaps(own.extent)
        and not other.surrounds(own)
    ]
    return [point for point in own.seen if not any(_covers(other, point) for other in others)]


def _covers(other: Silhouette, point: Point) -> bool:
    if len(other.edge) > 2:
        return is_inside(point, other.edge)
    return other.extent.grown(0.3).nearest(point) == point


def _is_plain(leader: Segment, spot: Spot, laid: Laid) -> bool:
    """Whether a line runs through no label, no other line, and no part but its own and those around it."""
    if any(laid.taken.crossed(leader)) or any(is_crossing(leader, other) for other in laid.leaders):
        return False
    ground = laid.ground
    return all(
        owner in spot.parts
        or (owner in ground.silhouettes and ground.silhouettes[owner].surrounds(spot.silhouette))
        for owner, _ in ground.obstacles.crossed(leader)
    )


def _leader(box: Box, ends: Sequence[Point]) -> Segment:
    """From a label to the nearest of some points."""
    to = min(ends, key=lambda end: distance(box.nearest(end), end))
    return box.nearest(to), to


def _rings(around: Box, lettering: Lettering) -> Iterator[Box]:
    """Further and further away, upwards first."""
    x, y = around.centre
    width, height = lettering.width, lettering.height
    for ring in _RINGS:
        across, down = ring + (around.width + width) / 2, ring + (around.height + height) / 2
        for right, below in _WAYS:
            at_x, at_y = x + across * right, y + down * below
            yield Box(at_x - width / 2, at_y - height / 2, at_x + width / 2, at_y + height / 2)
