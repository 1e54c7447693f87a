"""The drawings of an installation: elevation and plan, as documented and as proposed, each one SVG element."""

from __future__ import annotations

from intent.drawings.compose import Drawing, compose
from intent.drawings.depicted import PLAIN_STYLE, Depicted, DrawingStyle
from intent.drawings.patterns import channels_of
from intent.drawings.sheet import Sheet, lay
from intent.drawings.stage import Stages, View, Which


def drawings_of(stages: Stages, width: float, style: DrawingStyle = PLAIN_STYLE) -> tuple[Drawing, ...]:
    """Each view as documented, then as proposed: all four of one scale and extent, and so many millimetres wide."""
    sheets = [lay(stages, view, width) for view in View]
    return tuple(draw(stages, sheet, which, style) for sheet in sheets for which in Which)


def draw(stages: Stages, sheet: Sheet, which: Which, style: DrawingStyle = PLAIN_STYLE) -> Drawing:
    """One state on a sheet."""
    channels = channels_of(stages.channels)
    return compose(Depicted(stage=stages.of(which), sheet=sheet, which=which, style=style, channels=channels))
