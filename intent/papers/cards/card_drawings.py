"""The drawings on a card of where the part is, as large as the card allows."""

from __future__ import annotations

from dataclasses import dataclass

from intent.drawings.stage import View
from intent.drawings.svg import Element as Drawn
from intent.drawings.svg import number
from intent.language.locale import Locale
from intent.papers.cards.fitting import GAP, HEIGHTS, ROOM, CardBlock
from intent.papers.cards.whereabouts import Whereabouts
from intent.papers.elements import element

_BETWEEN = 5.0
"""Millimetres between two views side by side."""
_TALL = 0.4
"""From this height on, as a share of its width, an elevation leaves room beside it for the plan."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawingLayout:
    """Which views are drawn, how large, and how."""

    views: tuple[View, ...]
    scale: float
    height: float
    is_beside: bool = False


def layout_of(where: Whereabouts, high: float) -> DrawingLayout:
    """Both views one above another where there is room, else side by side, else the elevation alone."""
    front, above = where.size(View.ELEVATION), where.size(View.PLAN)
    both = (View.ELEVATION, View.PLAN)
    full = min(ROOM / front[0], ROOM / above[0], HEIGHTS[0] / front[1])
    stacked = full * (front[1] + above[1]) + GAP
    if stacked <= high:
        return DrawingLayout(views=both, scale=full, height=stacked)
    tallest = max(front[1], above[1])
    if front[1] > _TALL * front[0]:
        half = min((ROOM - _BETWEEN) / (front[0] + above[0]), high / tallest)
        return DrawingLayout(views=both, scale=half, height=half * tallest, is_beside=True)
    alone = min(full, high / front[1])
    return DrawingLayout(views=(View.ELEVATION,), scale=alone, height=alone * front[1])


def drawings(part: str, where: Whereabouts, layout: DrawingLayout, locale: Locale) -> CardBlock:
    """Where a part is, from the front and from above."""
    drawn = [_scaled(where.draw(part, view, locale), where.size(view), layout.scale) for view in layout.views]
    class_ = "drawings beside" if layout.is_beside else "drawings"
    return CardBlock(element("div", drawn, class_=class_), layout.height)


def _scaled(drawing: Drawn, size: tuple[float, float], scale: float) -> Drawn:
    drawing.set("width", f"{number(size[0] * scale)}mm")
    drawing.set("height", f"{number(size[1] * scale)}mm")
    return drawing
