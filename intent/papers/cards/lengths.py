"""Where a part goes, in the unit of whoever hangs it: so far to the side, so far up, so far towards the viewer."""

from __future__ import annotations

from intent.effects.scene import Scene
from intent.language.figures import figure
from intent.language.message import Saying, say
from intent.names import INTENT
from intent.papers.cards.card import CardRow
from intent.values.regions import Interval
from intent.variance.result import Variance

UNITS = ("mm", "cm", "in")
_DIGITS = 4
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
    """The position in a unit of `UNITS`; nothing of a part that needs none and has none."""
    label, is_display = scene.term("position"), any(one.identifier == part for one in scene.parts("display"))
    if not scene.is_given(part, "position"):
        if is_display:
            return CardRow(say("{term}", term=label), (say("not given"),))
        return None
    axes = scene.axes(part, "position")
    lines = tuple(_line(axis, place, unit) for place, axis in enumerate(axes))
    return CardRow(say("{term}", term=label), lines, _measured(variance, is_display))


def _line(axis: Interval, place: int, unit: str) -> Saying:
    below, above, nothing = _AXES[place]
    if axis.low == axis.high == 0:
        return say(nothing.pattern, length=figure(axis, unit))
    if axis.high is not None and axis.high <= 0:
        low = None if axis.low is None else -axis.low
        return say(below.pattern, length=figure(Interval(-axis.high, low), unit, digits=_DIGITS))
    pattern = above if axis.low is not None and axis.low >= 0 else _EITHER_WAY[place]
    return say(pattern.pattern, length=figure(axis, unit, digits=_DIGITS))


def _measured(variance: Variance, is_display: bool) -> Saying:
    """To which point of the part is measured, and from where in the room."""
    origins = (section.fields.get(str(INTENT.origin), "") for section in variance.work.sections)
    origin = next((one.strip().rstrip(".") for one in origins if one), "")
    if not origin:
        if is_display:
            return say("To the middle of the picture. Where it is measured from is not given.")
        return say("To the middle of the part. Where it is measured from is not given.")
    if is_display:
        return say("To the middle of the picture; the zero is {origin}.", origin=origin)
    return say("To the middle of the part; the zero is {origin}.", origin=origin)
