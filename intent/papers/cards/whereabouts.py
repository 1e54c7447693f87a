"""Small drawings of where a part is in the whole: every part in outline, this one filled."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.drawings.glyphs import MARK, Glyph, glyphs_of
from intent.drawings.person import person
from intent.drawings.plane import Box, Point, around, offset
from intent.drawings.set_up import stages_of
from intent.drawings.sheet import PERSON_HEIGHT, PERSON_ROOM, Sheet, lay
from intent.drawings.stage import Stand, View
from intent.drawings.svg import Element, circle, closed, line, number, path, said_of, shape, solid
from intent.language.locale import Locale
from intent.language.message import say
from intent.variance.result import Variance

_WIDTH = 107.0
"""Millimetres of the sheets on which both views are laid; only what is drawn on them comes on a card."""
_THIN, _FLOOR, _HALO, _RING = 0.2, 0.5, 0.7, 2.5
_EDGE = 2.2
_LEAST = 1.1
"""Half the least width at which a filled part is still found after copying, in millimetres."""
_TITLES = {
    View.ELEVATION: say("{part} from the front"),
    View.PLAN: say("{part} from above"),
}


@dataclass(frozen=True, slots=True)
class Whereabouts:
    """All parts as they will stand, laid on paper once for all cards."""

    sheets: dict[View, Sheet]
    glyphs: dict[View, tuple[Glyph, ...]]
    extents: dict[View, Box]
    """The paper that each view needs, the same on all cards."""

    def holds(self, part: str) -> bool:
        return any(glyph.item.identifier == part for glyph in self.glyphs[View.ELEVATION])

    def draw(self, part: str, view: View, locale: Locale) -> Element:
        """One view with a part filled; others in outline, and a person or the origin to go by."""
        sheet, glyphs = self.sheets[view], self.glyphs[view]
        others = [glyph for glyph in glyphs if glyph.item.identifier != part]
        own = [glyph for glyph in glyphs if glyph.item.identifier == part]
        name = f"where-{view.value}-{part}"
        box = self.extents[view]
        return shape(
            "svg",
            said_of("title", locale.say(_TITLES[view].filled(part=part)), name),
            _ground(sheet),
            (one for glyph in others for one in _outlined(glyph)),
            (one for glyph in own for one in _filled(glyph)),
            role="img",
            aria_labelledby=name,
            class_=f"where {view.value}",
            viewBox=" ".join(map(number, (box.left, box.top, box.width, box.height))),
            width=f"{number(box.width)}mm",
            height=f"{number(box.height)}mm",
        )

    def size(self, view: View) -> tuple[float, float]:
        """Width and height of a view, in millimetres."""
        box = self.extents[view]
        return box.width, box.height


def whereabouts_of(variance: Variance) -> Whereabouts:
    """The proposed state, without what is left out."""
    stages = stages_of(variance)
    items = tuple(item for item in stages.proposed.items if item.standing is not Stand.OMITTED)
    sheets = {view: lay(stages, view, _WIDTH) for view in View}
    glyphs = {view: tuple(glyphs_of(items, sheet)) for view, sheet in sheets.items()}
    extents = {view: _extent(sheet, glyphs[view]) for view, sheet in sheets.items()}
    return Whereabouts(sheets, glyphs, extents)


def _extent(sheet: Sheet, glyphs: Sequence[Glyph]) -> Box:
    """The parts, and the floor with the person on it or the zero of the measures."""
    corners: list[Point] = [corner for glyph in glyphs for corner in glyph.extent.corners]
    floor = sheet.at((0.0, 0.0, 0.0))[1]
    corners += [(sheet.drawn.left, floor), (sheet.drawn.right, floor)]
    if sheet.view is View.ELEVATION:
        corners.append((sheet.drawn.right, floor - PERSON_HEIGHT * sheet.unit))
    return around(corners).grown(_EDGE)


def _ground(sheet: Sheet) -> Iterator[Element]:
    """The floor with a person on it; from above, the zero of the measures."""
    x, level = sheet.at((0.0, 0.0, 0.0))
    if sheet.view is View.PLAN:
        yield line((x - 2.4, level), (x + 2.4, level), _THIN)
        yield line((x, level - 2.4), (x, level + 2.4), _THIN)
        yield circle((x, level), 1.0, _THIN)
        return
    yield line((sheet.drawn.left, level), (sheet.drawn.right, level), _FLOOR)
    high = PERSON_HEIGHT * sheet.unit
    yield person((sheet.drawn.right - PERSON_ROOM * sheet.unit * 0.42, level), high)


def _outlined(glyph: Glyph) -> Iterator[Element]:
    if len(glyph.edge) == 1:
        (x, y), half = glyph.edge[0], MARK * 0.7
        yield line((x - half, y - half), (x + half, y + half), _THIN)
        yield line((x - half, y + half), (x + half, y - half), _THIN)
        return
    if len(glyph.edge) > 2:
        yield shape("path", d=closed(glyph.edge), fill="#fff", stroke="currentColor", stroke_width=_THIN)
    else:
        yield path(closed(glyph.edge), 2 * _THIN)


def _filled(glyph: Glyph) -> Iterator[Element]:
    """Black within a white border and a ring; in it, in white, the wedge that points to the picture's top."""
    edge = glyph.edge
    box = around(edge)
    centre = box.centre
    if len(edge) < 3 or max(box.width, box.height) < 2 * _LEAST:
        yield circle(centre, _LEAST + _HALO, 0, fill="#fff", stroke="none")
        yield circle(centre, _LEAST, 0, fill="currentColor", stroke="none")
    else:
        yield shape("path", d=closed(offset(edge, _HALO)), fill="#fff", stroke="none")
        yield solid(closed(edge))
        if glyph.wedge:
            yield shape("path", d=closed(glyph.wedge), fill="#fff", stroke="none")
    if max(box.width, box.height) < 4 * _RING:
        yield circle(centre, max(_RING, max(box.width, box.height) * 0.75 + 1.0), 0.4)
