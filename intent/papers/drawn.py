"""The drawings of a page: elevation and plan, as documented beside as proposed, with what they leave out told below."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from intent.drawings.drawing import Drawing, draw_all
from intent.drawings.set_up import stages_of
from intent.drawings.stage import View
from intent.language.message import Tongue
from intent.papers.elements import Element, bullets, element
from intent.variance.result import Variance

WIDE, NARROW = 120.0, 90.0
"""Millimetres: for a desk and for paper, where 120 mm are printed as 120 mm; and for a hand's width of screen."""


@dataclass(frozen=True, slots=True)
class Drawn:
    """The same four drawings for two widths, so that their words stay large enough to be read."""

    wide: tuple[Drawing, ...]
    narrow: tuple[Drawing, ...]

    @property
    def is_empty(self) -> bool:
        """Whether no part has a place that could be drawn."""
        return not any(one.element.xpath(".//*[@data-part]") for one in self.wide)


def drawn_of(variance: Variance, tongue: Tongue, *, lines: bool = False) -> Drawn:
    """The drawings of a variance; with ``lines`` those from players to displays too."""
    stages = stages_of(variance)
    wide, narrow = (
        draw_all(stages, lines=lines, tongue=tongue, width_mm=width, name=name, apart=True)
        for width, name in ((WIDE, "wide"), (NARROW, "narrow"))
    )
    return Drawn(wide, narrow)


def drawings_section(drawn: Drawn) -> Iterator[Element]:
    """Each view as one figure, the documented state first; then every other note once."""
    told: dict[str, None] = {}
    for view in View:
        pairs = [
            element("div", map(_plain, _of(view, drawings)), class_=f"pair {width}")
            for drawings, width in ((drawn.wide, "wide"), (drawn.narrow, "narrow"))
        ]
        measured, *others = _of(view, drawn.narrow)[-1].notes
        told.update(dict.fromkeys(others))
        yield element("figure", pairs, element("figcaption", measured), class_="drawn")
    if told:
        yield bullets(told, "notes")


def _of(view: View, drawings: tuple[Drawing, ...]) -> list[Drawing]:
    return [one for one in drawings if one.view is view]


def _plain(drawing: Drawing) -> Element:
    """The drawing without a style of its own: the page gives it."""
    drawing.element.attrib.pop("style", "")
    return drawing.element
