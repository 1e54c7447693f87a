"""Where a part goes, in the unit of whoever hangs it: so far to the side, so far up, so far towards the viewer."""

from __future__ import annotations

from dataclasses import replace

from intent.effects.scene import Scene
from intent.language.figures import Figure, figure
from intent.language.message import Message, say
from intent.model.phrasing import NOT_GIVEN
from intent.names import INTENT
from intent.papers.cards.card import CardRow
from intent.values.regions import Interval
from intent.variance.result import Variance

_DIGITS = 4
"""Of what is measured off; of whole millimetres none is left out, however large the hall."""
_AXES = (
    (say("{length} to the left"), say("{length} to the right"), say("{length} to the side")),
    (say("{length} below the floor"), say("{length} above the floor"), say("{length} above the floor")),
    (
        say("{length} behind the zero"),
        say("{length} towards the viewer"),
        say("{length} in front of the zero"),
    ),
)
"""By axis of a position (x, y, z): what a number below nothing means, one above, and nothing."""
_EITHER_WAY = (
    say("{length} to the right, less than nothing being to the left"),
    say("{length} above the floor, less than nothing being below"),
    say("{length} towards the viewer, less than nothing being behind the zero"),
)
"""Where it is not known on which side of the zero it is."""


def position_row(scene: Scene, variance: Variance, part: str, unit: str) -> CardRow | None:
    """The position in `mm`, `cm` or `in`; nothing of a part that needs none and has none."""
    label, hangs = scene.called("position"), is_display(scene, part)
    if not scene.is_given(part, "position"):
        return CardRow(label, (NOT_GIVEN,)) if hangs else None
    axes = scene.axes(part, "position")
    lines = tuple(_line(axis, place, unit) for place, axis in enumerate(axes))
    return CardRow(label, lines, _measured(variance, hangs))


def is_display(scene: Scene, part: str) -> bool:
    return any(display.identifier == part for display in scene.parts("display"))


def _line(axis: Interval, place: int, unit: str) -> Message:
    below, above, nothing = _AXES[place]
    if axis.low == axis.high == 0:
        return nothing.filled(length=_length(axis, unit))
    if axis.high is not None and axis.high <= 0:
        low = None if axis.low is None else -axis.low
        return below.filled(length=_length(Interval(-axis.high, low), unit))
    pattern = above if axis.low is not None and axis.low >= 0 else _EITHER_WAY[place]
    return pattern.filled(length=_length(axis, unit))


def _length(axis: Interval, unit: str) -> Figure:
    length = figure(axis, unit)
    ends = (end for end in (length.bounds.low, length.bounds.high) if end is not None)
    return replace(length, digits=max([_DIGITS, *(len(str(abs(int(end)))) for end in ends)]))


def _measured(variance: Variance, hangs: bool) -> Message:
    """To which point of the part is measured, and from where in the room."""
    origins = (section.fields.get(str(INTENT.origin), "") for section in variance.work.sections)
    origin = next((one.strip().rstrip(".") for one in origins if one), "")
    if not origin:
        if hangs:
            return say("To the middle of the picture. Where it is measured from is not given.")
        return say("To the middle of the part. Where it is measured from is not given.")
    if hangs:
        return say("To the middle of the picture; the zero is {origin}.", origin=origin)
    return say("To the middle of the part; the zero is {origin}.", origin=origin)
