"""What stands in front hides what is behind: each display is cut out of what is further from the eye.

What is hidden so is drawn again with its group.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from intent.drawings.glyphs import Glyph, depth
from intent.drawings.plane import Box, offset
from intent.drawings.sheet import Sheet
from intent.drawings.stage import Stand, View
from intent.drawings.strokes import PLAIN
from intent.drawings.svg import Element, closed, shape

APART = 0.02
"""Metres by which one must stand before the other."""


def hiding_of(glyphs: Sequence[Glyph], view: View) -> dict[str, tuple[Glyph, ...]]:
    """By identifier of each part, the displays that hide some of it, or all."""
    hiders = [(depth(glyph, view), glyph) for glyph in glyphs if _can_hide(glyph)]
    return {glyph.item.identifier: tuple(_before(glyph, hiders, view)) for glyph in glyphs}


def _before(glyph: Glyph, hiders: Iterable[tuple[float, Glyph]], view: View) -> Iterator[Glyph]:
    far = depth(glyph, view) + APART
    for near, other in hiders:
        if near > far and other.extent.overlaps(glyph.extent):
            yield other


def _can_hide(glyph: Glyph) -> bool:
    return glyph.item.is_display and len(glyph.edge) > 2 and glyph.item.standing is not Stand.OMITTED


def cut(drawn: Element, nearer: Sequence[Glyph], prefix: str) -> Element:
    """An element without what nearer parts hide of it."""
    for other in nearer:
        drawn = shape("g", drawn, clip_path=f"url(#{_name(other, prefix)})")
    return drawn


def clips(nearer: Sequence[Glyph], sheet: Sheet, prefix: str) -> Element:
    """The paper without each of some parts."""
    paper = Box(-sheet.width, -sheet.width, 2 * sheet.width, sheet.drawn.bottom + sheet.width)
    return shape("defs", (_clip(glyph, paper, prefix) for glyph in nearer))


def _clip(glyph: Glyph, paper: Box, prefix: str) -> Element:
    edge = offset(glyph.edge, glyph.stroke.reach - PLAIN / 2)
    around = shape("path", d=closed(paper.corners) + closed(edge), clip_rule="evenodd")
    return shape("clipPath", around, id=_name(glyph, prefix))


def _name(glyph: Glyph, prefix: str) -> str:
    part = "".join(sign if sign.isalnum() else f"_{ord(sign):x}_" for sign in glyph.item.identifier)
    return f"{prefix}-behind-{part}"
