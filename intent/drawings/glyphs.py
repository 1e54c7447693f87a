"""A part as it is drawn: outline, screen, the picture with its pattern, and the wedge that says which way up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.drawings.depicted import Depicted
from intent.drawings.plane import Box, Point, area, around, distance, outline, towards
from intent.drawings.sheet import Sheet, flat
from intent.drawings.solid import Corners
from intent.drawings.stage import Item, Stand, Symbol, View
from intent.drawings.strokes import GHOST, PLAIN, Stroke, drawn, stroke_of
from intent.drawings.svg import Element, circle, closed, line, path, printable, shape, solid

MARK = 1.5
"""Half the size of the mark of a part whose size is not known, in millimetres."""
THIN = 0.14
TOP_EDGE = 0.55
_SEEN = 0.26
"""How much a face must be turned towards the eye for what is on it to be seen: a share of facing it (15°)."""
MANY, FINE = 60, 0.55
"""From how many parts on outlines are drawn finer, and how much."""
_SMALLEST = 0.02


@dataclass(frozen=True, slots=True, kw_only=True)
class Glyph:
    """A part on paper, before labels are placed."""

    item: Item
    stroke: Stroke
    edge: tuple[Point, ...]
    """Its outline; two points for what is seen edge on, one for a mark."""
    extent: Box
    """All that it covers, for labels to keep clear of."""
    picture: tuple[Point, ...] = ()
    """The picture, from its own top left, where its face is seen."""
    face: tuple[Point, ...] = ()
    """The picture, or the screen where the picture's shape is not known."""
    wedge: tuple[Point, ...] = ()
    looking: tuple[Point, ...] = ()
    """The way its face looks, where that is not seen."""


def glyphs_of(items: Sequence[Item], sheet: Sheet) -> list[Glyph]:
    """All parts of a drawing, those further from the eye first; where they are many, with finer lines."""
    share = FINE if len(items) > MANY else 1.0
    return sorted((_glyph(item, sheet, share) for item in items), key=lambda glyph: depth(glyph, sheet.view))


def depth(glyph: Glyph, view: View) -> float:
    """How near to the eye a part is, in metres."""
    return glyph.item.centre[2 if view is View.ELEVATION else 1]


def _glyph(item: Item, sheet: Sheet, share: float) -> Glyph:
    stroke = GHOST if item.standing is Stand.OMITTED else stroke_of(item.verdict).finer(share)
    corners = tuple(sheet.at(corner) for corner in (item.outline or _screen(item)))
    edge = outline(corners or [sheet.at(item.centre)])
    picture, face = _pictured(item, sheet)
    looking = _looking(item, sheet)
    reach = stroke.reach + (MARK if len(edge) == 1 else 0)
    return Glyph(
        item=item,
        stroke=stroke,
        edge=edge,
        extent=around((*edge, *looking)).grown(reach),
        picture=picture,
        face=face,
        wedge=wedge_of(face) if face else (),
        looking=looking,
    )


def _pictured(item: Item, sheet: Sheet) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """The picture and the face, where they are seen and it is known where the picture's top is."""
    if item.screen is None or not item.screen.has_top or not is_seen(item, sheet.view):
        return (), ()
    picture = tuple(sheet.at(corner) for corner in item.screen.picture)
    face = picture or tuple(sheet.at(corner) for corner in item.screen.visible)
    return (picture, face) if area(face) >= _SMALLEST else ((), ())


def _screen(item: Item) -> Corners:
    return item.screen.visible if item.screen else ()


def is_seen(item: Item, view: View) -> bool:
    """Whether the face of a part is turned towards who looks at the drawing."""
    outward = item.pose.frame.outward
    return (outward[2] if view is View.ELEVATION else outward[1]) > _SEEN


def wedge_of(picture: Sequence[Point]) -> tuple[Point, ...]:
    """A triangle whose tip is in the middle of the picture's top edge; never too small to be seen."""
    top_left, top_right, bottom_right, bottom_left = picture
    top, bottom = _middle(top_left, top_right), _middle(bottom_left, bottom_right)
    wide, high = distance(top_left, top_right), distance(top, bottom)
    length = min(max(0.24 * high, 1.2), 0.92 * high, 3.2)
    half = min(max(0.13 * wide, 0.75), 0.46 * wide, 1.9)
    foot = towards(top, bottom, length)
    one = towards(foot, (foot[0] + top_left[0] - top[0], foot[1] + top_left[1] - top[1]), half)
    two = towards(foot, (foot[0] + top_right[0] - top[0], foot[1] + top_right[1] - top[1]), half)
    return top, one, two


def _middle(one: Point, two: Point) -> Point:
    return (one[0] + two[0]) / 2, (one[1] + two[1]) / 2


def drawing_of(glyph: Glyph, subject: Depicted, hidden: Box | None) -> Element:
    """The part's own group of elements; `hidden` is where its label stands in the picture."""
    item = glyph.item
    ghost = item.standing is Stand.OMITTED
    parts = [*_outlined(glyph)]
    if item.screen and not ghost:
        channel = subject.channel_of(item)
        parts += _screened(glyph, subject.sheet, channel.fill(subject.prefix) if channel else "", hidden)
    return shape(
        "g",
        parts,
        class_=" ".join(filter(None, ("part", item.standing, item.verdict))),
        data_part=printable(item.identifier),
        data_rotation="" if item.picture_rotation is None else item.picture_rotation,
    )


def _outlined(glyph: Glyph) -> Iterator[Element]:
    stroke = glyph.stroke
    if len(glyph.edge) == 1:
        yield from _marked(glyph, stroke)
    elif len(glyph.edge) == 2:
        wider = Stroke(max(stroke.width, 2.5 * PLAIN), stroke.dashes, stroke.is_double)
        yield from drawn(glyph.edge, wider if glyph.item.is_display else stroke)
    else:
        yield from drawn(glyph.edge, stroke)
    if glyph.looking:
        yield path(closed(glyph.looking), PLAIN, stroke_linejoin="round")


def _marked(glyph: Glyph, stroke: Stroke) -> Iterator[Element]:
    """A loudspeaker is a ring with a dot, a player a triangle in a square, a display a square, all else a cross."""
    (x, y), half = glyph.edge[0], MARK
    match glyph.item.symbol:
        case Symbol.LOUDSPEAKER:
            yield circle(
                (x, y), half, stroke.width, stroke_dasharray=stroke.dashes, stroke_linecap=stroke.cap
            )
            yield circle((x, y), 0.35, 0, fill="currentColor", stroke="none")
            return
        case Symbol.PLAYER:
            yield solid(closed(((x - 0.5, y - 0.6), (x + 0.7, y), (x - 0.5, y + 0.6))))
        case Symbol.DISPLAY:
            yield line((x, y - half), (x, y + half), THIN)
            yield line((x - half, y), (x + half, y), THIN)
        case Symbol.OTHER:
            dashes = GHOST.dashes if stroke is GHOST else ""
            yield line((x - 1, y - 1), (x + 1, y + 1), PLAIN, stroke_dasharray=dashes)
            yield line((x - 1, y + 1), (x + 1, y - 1), PLAIN, stroke_dasharray=dashes)
            if stroke is GHOST or stroke.width == PLAIN:
                return
    yield from drawn(marked((x, y)), stroke)


def marked(at: Point) -> tuple[Point, ...]:
    """The square that a mark takes up."""
    x, y = at
    return (x - MARK, y - MARK), (x + MARK, y - MARK), (x + MARK, y + MARK), (x - MARK, y + MARK)


def _looking(item: Item, sheet: Sheet) -> tuple[Point, ...]:
    """An open wedge in the direction in which a screen looks that is seen from the side or from behind."""
    across, down = flat(item.pose.frame.outward, sheet.view)
    x, y = sheet.at(item.centre)
    if not item.screen or is_seen(item, sheet.view) or abs(across) + abs(down) < _SEEN:
        return ()
    foot = (x + across * 0.5, y + down * 0.5)
    return (
        (x + across * 2.4, y + down * 2.4),
        (foot[0] - down * 0.9, foot[1] + across * 0.9),
        (foot[0] + down * 0.9, foot[1] - across * 0.9),
    )


def _screened(glyph: Glyph, sheet: Sheet, fill: str, hidden: Box | None) -> Iterator[Element]:
    """Screen, picture and wedge of a face that is seen."""
    item = glyph.item
    assert item.screen is not None
    if not is_seen(item, sheet.view):
        return
    if item.outline:
        yield path(closed(tuple(sheet.at(corner) for corner in item.screen.visible)), THIN)
    if item.screen.lost:
        lost = tuple(sheet.at(corner) for corner in item.screen.lost)
        yield path(closed(lost), THIN, stroke_dasharray="0.3 0.6")
    if glyph.picture and fill:
        holes = [closed(_halo(glyph.wedge))] + ([closed(hidden.corners)] if hidden else [])
        data = closed(glyph.picture) + "".join(holes)
        yield shape("path", d=data, fill=fill, fill_rule="evenodd", stroke="none")
    if glyph.picture:
        yield path(closed(glyph.picture), THIN)
    if glyph.wedge:
        yield line(glyph.face[0], glyph.face[1], TOP_EDGE)
        yield solid(closed(glyph.wedge), class_="top")


def _halo(wedge: Sequence[Point]) -> tuple[Point, ...]:
    """A little more room than the wedge takes, at its foot, kept free of the pattern."""
    tip, one, two = wedge
    foot = _middle(one, two)
    further = towards(tip, foot, distance(tip, foot) + 0.35)
    wider = (distance(one, two) / 2 + 0.35) / max(distance(one, two) / 2, 0.01)
    return (
        tip,
        (further[0] + (one[0] - foot[0]) * wider, further[1] + (one[1] - foot[1]) * wider),
        (further[0] + (two[0] - foot[0]) * wider, further[1] + (two[1] - foot[1]) * wider),
    )
