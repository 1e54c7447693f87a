"""The drawings of a report: elevation and plan, documented beside proposed, with what they leave out told below."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import partial

from intent.drawings.compose import Drawing
from intent.drawings.depicted import DrawingStyle
from intent.drawings.details import details_of
from intent.drawings.drawing import draw_detail, drawings_of
from intent.drawings.patterns import channels_of
from intent.drawings.set_up import stages_of
from intent.drawings.shared_legend import legend_of
from intent.drawings.sheet import lay
from intent.drawings.stage import Stages, View
from intent.language.locale import Locale
from intent.language.message import Words
from intent.papers.document import DrawnFigure, Pictures
from intent.papers.elements import Element
from intent.variance.result import Variance

WIDE, NARROW, DETAIL = 120.0, 82.0, 66.0
"""Millimetres: for a desk; for a hand's width of screen, and for paper, where two stand beside each other; of a
detail, of which two pairs stand beside each other on a desk.
"""
SMALLEST = 100
"""One to so many: what would be smaller on a sheet that stands is printed on one that is laid on its side; a set of
30 cm is then more than 2 mm wide on paper (common practice, no source).
"""


@dataclass(frozen=True, slots=True)
class Drawn:
    """Both states of a work, to be drawn."""

    stages: Stages
    lines: bool
    """Whether those from players to displays are drawn too."""

    @property
    def blocks(self) -> tuple[Pictures, ...]:
        """The drawings; nothing where no part has a place that could be drawn."""
        if not any(stage.items for stage in (self.stages.documented, self.stages.proposed)):
            return ()
        return (Pictures(partial(_draw, self.stages, self.lines)),)


def drawn_of(variance: Variance, *, lines: bool = False) -> Drawn:
    """The drawings of a variance; with ``lines`` those from players to displays too."""
    return Drawn(stages_of(variance), lines)


def _draw(stages: Stages, lines: bool, locale: Locale) -> tuple[list[DrawnFigure], list[Words]]:
    """Each view as one figure, the documented state first, with a legend of all; then the groups; then notes.

    The whole is drawn for two widths, so that its words stay large enough to be read.
    """
    style = DrawingStyle(locale=locale, has_lines=lines, has_legend=False, has_notes=False)
    wide = drawings_of(stages, WIDE, replace(style, name="wide"))
    narrow = drawings_of(stages, NARROW, replace(style, name="narrow"))
    details = _details(stages, _lacking((*wide, *narrow)), style)
    every = [*wide, *narrow, *(one for detail in details for one in detail)]
    channels = channels_of(stages.channels).values()
    is_broad = lay(stages, View.PLAN, NARROW).scale > SMALLEST
    plan, elevation = (
        DrawnFigure(wide=_plain(_of(view, wide)), narrow=_plain(_of(view, narrow)), is_broad=is_broad)
        for view in (View.PLAN, View.ELEVATION)  # so that on paper the details follow the elevation
    )
    legend = DrawnFigure(
        wide=(legend_of(every, channels, WIDE, replace(style, name="wide")),),
        narrow=(legend_of(every, channels, NARROW, replace(style, name="narrow")),),
        is_broad=is_broad,
    )
    notes = dict.fromkeys(note for view in View for note in _of(view, narrow)[-1].notes)
    return [plan, legend, elevation, *(DrawnFigure(narrow=_plain(one)) for one in details)], list(notes)


def _details(stages: Stages, lacking: frozenset[str], style: DrawingStyle) -> tuple[tuple[Drawing, ...], ...]:
    """What the elevations of the whole hide, or leave without a label, by its group."""
    return tuple(
        draw_detail(stages, detail, DETAIL, replace(style, name=f"group-{number}"))
        for number, detail in enumerate(details_of(stages, lacking), start=1)
    )


def _lacking(drawings: Iterable[Drawing]) -> frozenset[str]:
    return frozenset(part for one in _of(View.ELEVATION, drawings) for part in one.lacking)


def _of(view: View, drawings: Iterable[Drawing]) -> list[Drawing]:
    return [one for one in drawings if one.view is view]


def _plain(drawings: Iterable[Drawing]) -> tuple[Element, ...]:
    """The drawings without a style of their own: the page gives it."""
    plain = tuple(one.element for one in drawings)
    for one in plain:
        one.attrib.pop("style", "")
    return plain
