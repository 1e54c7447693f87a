"""The drawings of an installation: elevation and plan of the whole, and elevations of what they cannot show."""

from __future__ import annotations

from dataclasses import replace

from intent.drawings.compose import Drawing, compose
from intent.drawings.depicted import PLAIN_STYLE, Depicted, DrawingStyle
from intent.drawings.patterns import channels_of
from intent.drawings.sheet import Sheet, lay, lay_detail
from intent.drawings.stage import Detail, Stages, View, Which


def drawings_of(stages: Stages, width: float, style: DrawingStyle = PLAIN_STYLE) -> tuple[Drawing, ...]:
    """Each view as documented, then as proposed: all four of one scale and extent, and so many millimetres wide."""
    sheets = [lay(stages, view, width) for view in View]
    return tuple(draw(stages, sheet, which, style) for sheet in sheets for which in Which)


def draw(stages: Stages, sheet: Sheet, which: Which, style: DrawingStyle = PLAIN_STYLE) -> Drawing:
    """One state on a sheet."""
    return compose(_depicted(stages, sheet, which, style))


def draw_detail(
    stages: Stages, detail: Detail, width: float, style: DrawingStyle = PLAIN_STYLE
) -> tuple[Drawing, ...]:
    """An elevation of some parts as documented, then as proposed, with the patterns that the whole has.

    Where both are alike it is one drawing, and where one has none of the parts it is not drawn.
    """
    some, channels = stages.only(detail.parts), channels_of(stages.channels)
    sheet = lay_detail(some, width)
    is_alike = some.documented.items == some.proposed.items
    subjects = [
        replace(
            _depicted(some, sheet, which, style), channels=channels, detail=replace(detail, is_alike=is_alike)
        )
        for which in Which
        if some.of(which).items
    ]
    return tuple(map(compose, subjects[:1] if is_alike else subjects))


def _depicted(stages: Stages, sheet: Sheet, which: Which, style: DrawingStyle) -> Depicted:
    channels = channels_of(stages.channels)
    return Depicted(stage=stages.of(which), sheet=sheet, which=which, style=style, channels=channels)
