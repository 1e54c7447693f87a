"""One drawing of a variance, on paper as wide as the text of a sheet of A4, with its notes in it."""

from __future__ import annotations

from intent.drawings.depicted import DrawingStyle
from intent.drawings.drawing import draw
from intent.drawings.set_up import stages_of
from intent.drawings.sheet import lay
from intent.drawings.stage import View, Which
from intent.drawings.svg import Element
from intent.variance.result import Variance

WIDTH = 170.0


def one_drawing(
    variance: Variance,
    view: View = View.ELEVATION,
    which: Which = Which.PROPOSED,
    *,
    has_lines: bool = False,
) -> Element:
    """A state as an `svg` element."""
    stages = stages_of(variance)
    return draw(stages, lay(stages, view, WIDTH), which, DrawingStyle(has_lines=has_lines)).element
