"""What parts cover on paper, as labels need to know it: what stands in a label's way, and where a line may end."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from intent.drawings.glyphs import Glyph, marked
from intent.drawings.plane import Box, Point, along, apart, around, is_inside
from intent.drawings.stage import Stand

_STEP = 2.0
"""Millimetres of the pieces in which a slanting line is kept."""
_FEW, _MANY = (0.5, 0.15, 0.85), (0.5, 0.3, 0.7, 0.12, 0.88)
"""Where in a part it is looked whether it is seen, as shares of it: more closely where something stands before it."""
_INWARDS = 0.35


@dataclass(frozen=True, slots=True, kw_only=True)
class Silhouette:
    """One part on paper."""

    part: str
    edge: tuple[Point, ...]
    is_filled: bool
    """Whether nothing of what is behind is seen through it."""
    wedge: tuple[Point, ...] = ()
    """The way that it looks, drawn outside of it."""
    extent: Box
    hiders: tuple[tuple[Point, ...], ...] = ()
    """The outlines of what stands in front of it."""

    def distance(self, box: Box) -> float:
        """How far a rectangle is from what is drawn of the part, in millimetres."""
        near = apart(box, self.edge, self.is_filled)
        return min(near, apart(box, self.wedge, is_filled=True)) if self.wedge else near

    def holds(self, box: Box) -> bool:
        return len(self.edge) > 2 and all(is_inside(corner, self.edge) for corner in box.corners)

    def surrounds(self, other: Silhouette) -> bool:
        """Whether another part is drawn wholly within the lines of this one, as a set is within its rack."""
        return not self.is_filled and all(
            len(self.edge) > 2 and is_inside(corner, self.edge) for corner in other.edge
        )

    @property
    def pieces(self) -> Iterator[Box]:
        """What a label must keep off: all of what is filled, else the lines alone."""
        if self.is_filled or len(self.edge) < 3:
            yield self.extent
            return
        yield from (piece.grown(0.15) for piece in along(self.edge, _STEP))

    @property
    def seen(self) -> tuple[Point, ...]:
        """Points of the part that nothing hides, the middle first; none where it cannot be seen."""
        return tuple(
            point for point in self._points() if not any(is_inside(point, hider) for hider in self.hiders)
        )

    def _points(self) -> Iterator[Point]:
        shares = _MANY if self.hiders else _FEW
        if len(self.edge) < 3:
            (x, y), (end_x, end_y) = self.edge[0], self.edge[-1]
            yield from ((x + (end_x - x) * share, y + (end_y - y) * share) for share in shares)
            return
        box = around(self.edge)
        inner = box.grown(-min(_INWARDS, box.width / 4, box.height / 4))
        for down in shares:
            for across in shares:
                point = inner.left + inner.width * across, inner.top + inner.height * down
                if is_inside(point, self.edge):
                    yield point


def silhouette_of(glyph: Glyph, nearer: Iterable[Glyph]) -> Silhouette:
    """What a part covers, with what stands in front of it."""
    return Silhouette(
        part=glyph.item.identifier,
        edge=glyph.edge if len(glyph.edge) > 1 else marked(glyph.edge[0]),
        is_filled=is_filled(glyph),
        wedge=glyph.looking,
        extent=glyph.extent,
        hiders=tuple(other.edge for other in nearer),
    )


def is_filled(glyph: Glyph) -> bool:
    """A display is a body with a face, marks are small; of what is left out and of furniture only lines are drawn."""
    is_body = glyph.item.is_display and glyph.item.standing is not Stand.OMITTED
    return is_body or len(glyph.edge) < 3


def hidden_of(silhouettes: Sequence[Silhouette]) -> frozenset[str]:
    """The parts of which too little is seen to be told apart."""
    return frozenset(one.part for one in silhouettes if one.hiders and not one.seen)
