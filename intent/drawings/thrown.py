"""The bodies of projectors as they are seen from above, with the light that they throw."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import hypot

from intent.drawings.measuring import length
from intent.drawings.plane import Box, Segment, along
from intent.drawings.sheet import Sheet
from intent.drawings.solid import Pose, Vector, box
from intent.drawings.stage import Item, Stand, Symbol
from intent.drawings.svg import Element, line
from intent.effects.scene import Scene
from intent.values.sets import Answer

_LEVEL = 0.7
"""How level a beam must be for its length to be seen from above: a share of it (45°)."""
_PIECE = 2.0
"""Millimetres of the pieces in which it is kept."""


def projector_of(scene: Scene, picture: Item) -> Item | None:
    """The projector of a picture, straight before its middle; nothing where its distance is not known closely.

    It is behind the picture where the picture is cast from behind.
    """
    throw = length(scene, picture.identifier, "throw-distance")
    outward = picture.pose.frame.outward
    level = hypot(outward[0], outward[2])
    if throw is None or level < _LEVEL or picture.screen is None:
        return None
    is_behind = scene.is_(picture.identifier, "projection-side", "rear-projection") is Answer.IN
    way = -1.0 if is_behind and scene.is_given(picture.identifier, "projection-side") else 1.0
    wide, deep = (length(scene, picture.identifier, name) for name in ("outer-width", "outer-depth"))
    lens = _on(picture.centre, outward, way * throw)
    body = Pose(centre=_on(lens, outward, way * (deep or 0.0) / 2), facing=picture.pose.facing)
    corners = picture.screen.visible
    middles = [_middle(corners[one], corners[one - 3]) for one in range(4)]
    sides = sorted(middles, key=lambda at: -hypot(at[0] - picture.centre[0], at[2] - picture.centre[2]))[:2]
    return Item(
        identifier=f"{picture.identifier} (projector)",
        called=picture.identifier,
        name="",
        group=picture.group,
        symbol=Symbol.OTHER,
        pose=body,
        outline=box(body, wide, 0.0, deep / 2, -deep / 2) if wide and deep else (),
        standing=picture.standing,
        beam=(lens, *sides),
    )


def _on(start: Vector, way: Vector, length: float) -> Vector:
    return start[0] + way[0] * length, start[1] + way[1] * length, start[2] + way[2] * length


def _middle(one: Vector, two: Vector) -> Vector:
    return (one[0] + two[0]) / 2, (one[1] + two[1]) / 2, (one[2] + two[2]) / 2


def beams(items: Iterable[Item], sheet: Sheet) -> Iterator[Element]:
    """Two thin lines in dashes from each lens to the sides of its picture."""
    for lens, side in _lines(items, sheet):
        yield line(lens, side, 0.14, stroke_dasharray="2 1", class_="beam")


def thrown_over(items: Iterable[Item], sheet: Sheet) -> Iterator[Box]:
    """The paper that the lines take, in small pieces, for labels to keep clear of."""
    for beam in _lines(items, sheet):
        yield from along(beam, _PIECE)


def _lines(items: Iterable[Item], sheet: Sheet) -> list[Segment]:
    ends = {
        (sheet.at(item.beam[0]), sheet.at(side))
        for item in items
        if item.standing is not Stand.OMITTED
        for side in item.beam[1:]
    }
    return sorted(ends)
