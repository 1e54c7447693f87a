"""Where a part goes, in the unit of whoever hangs it: so far in front of the zero, so far aside, so far up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from intent.effects.scene import Scene
from intent.language.figures import Figure, Written, decimal, figure
from intent.language.message import Message, Words, joined, say
from intent.model.phrasing import NOT_GIVEN
from intent.model.work import Work
from intent.names import INTENT
from intent.papers.cards.card import CardRow
from intent.values.regions import Interval
from intent.variance.result import Variance

METRES = "m"
_PLACES = 2
"""How many decimals metres have at least, so that `4.2` is not read as a rough figure."""
_DIGITS = 4
"""Of what is measured off; of whole millimetres none is left out, however large the hall."""
_AXES = (
    (say("{length} to the left"), say("{length} to the right")),
    (say("centre {length} below the floor"), say("centre {length} above the floor")),
    (say("{length} behind the zero"), say("{length} in front of the zero")),
)
"""By axis of a position (x, y, z): what a number below nothing means, and one above."""
_EITHER_WAY = (
    say("{length} to the right, less than nothing being to the left"),
    say("centre {length} above the floor, less than nothing being below"),
    say("{length} in front of the zero, less than nothing being behind it"),
)
"""Where it is not known on which side of the zero it is."""
_FROM_THE_ZERO = (say("{length} to the left of the zero"), say("{length} to the right of the zero"))
"""How far aside where that is told first."""
_NOTHING = (
    say("neither to the left nor to the right of it"),
    say("centre level with the floor"),
    say("neither in front of it nor behind it"),
)
_AT_THE_ZERO = say("at the zero")


def position_row(scene: Scene, variance: Variance, part: str, unit: str) -> CardRow | None:
    """The position in `mm`, `cm` or `in`; nothing of a part that needs none and has none."""
    label, hangs = scene.called("position"), is_display(scene, part)
    told = position_words(scene, part, unit)
    if not told:
        return CardRow(label, (NOT_GIVEN,)) if hangs else None
    return CardRow(label, (told,), _measured(variance, hangs))


def position_words(scene: Scene, part: str, unit: str) -> Words:
    """How far in front of the zero, how far aside and how far up; nothing where no position is given."""
    if not scene.is_given(part, "position"):
        return ""
    x, y, z = scene.axes(part, "position")
    return joined((*_in_plan(x, z, unit), _line(y, 1, unit)), ", ")


def is_display(scene: Scene, part: str) -> bool:
    return any(display.identifier == part for display in scene.parts("display"))


def _in_plan(x: Interval, z: Interval, unit: str) -> Iterator[Message]:
    """How far in front and how far aside; what is nothing is told as such, and never as a row of zeros."""
    if _is_nothing(x) and _is_nothing(z):
        yield _AT_THE_ZERO
    elif _is_nothing(z) and _side(x) is not None:
        yield _FROM_THE_ZERO[_side(x) or 0].filled(length=_length(x, unit))
        yield _NOTHING[2]
    else:
        yield _line(z, 2, unit)
        yield _line(x, 0, unit)


def _is_nothing(axis: Interval) -> bool:
    return axis.low == axis.high == 0


def _side(axis: Interval) -> int | None:
    """0 where the whole range is below nothing, 1 where it is above; none where it may be on either side."""
    if axis.high is not None and axis.high <= 0:
        return 0
    return 1 if axis.low is not None and axis.low >= 0 else None


def _line(axis: Interval, place: int, unit: str) -> Message:
    if _is_nothing(axis):
        return _NOTHING[place]
    side = _side(axis)
    if side is None:
        return _EITHER_WAY[place].filled(length=_length(axis, unit, is_signed=True))
    return _AXES[place][side].filled(length=_length(axis, unit))


def _length(axis: Interval, unit: str, *, is_signed: bool = False) -> Figure | Written | Message:
    """A length, without its sign where the words say on which side."""
    if not is_signed and _side(axis) == 0 and axis.high is not None:
        axis = Interval(-axis.high, None if axis.low is None else -axis.low)
    if unit == METRES and axis.low is not None and axis.high is not None:
        low, high = _metres(axis.low), _metres(axis.high)
        return high if low == high else say("between {low} and {high}", low=low, high=high)
    length = figure(axis, unit)
    ends = (end for end in (length.bounds.low, length.bounds.high) if end is not None)
    return replace(length, digits=max([_DIGITS, *(len(str(abs(int(end)))) for end in ends)]))


def _metres(length: Fraction) -> Written:
    """`4.20 m`, to the millimetre: never more, and never fewer than two decimals."""
    number = decimal(round(length, 3))
    whole, _point, decimals = number.partition(".")
    return Written(f"{whole}.{decimals.ljust(_PLACES, '0')} m")


def origin_of(work: Work) -> str:
    """Where positions are measured from, as the work puts it; nothing where it says nothing."""
    origins = (section.fields.get(str(INTENT.origin), "") for section in work.sections)
    return next((one.strip().rstrip(".") for one in origins if one), "")


def _measured(variance: Variance, hangs: bool) -> Message:
    """To which point of the part is measured, and from where in the room."""
    origin = origin_of(variance.work)
    if not origin:
        if hangs:
            return say("To the middle of the picture. Where it is measured from is not given.")
        return say("To the middle of the part. Where it is measured from is not given.")
    if hangs:
        return say("To the middle of the picture; the zero is {origin}.", origin=origin)
    return say("To the middle of the part; the zero is {origin}.", origin=origin)
