"""The scale of a drawing and where a point of the room falls on the paper."""

from __future__ import annotations

from dataclasses import dataclass

from intent.drawings.plane import Box, Point, around
from intent.drawings.solid import Vector
from intent.drawings.stage import Stages, View

SCALES = (
    5,
    10,
    15,
    20,
    25,
    30,
    35,
    40,
    45,
    50,
    60,
    70,
    80,
    100,
    125,
    150,
    200,
    250,
    300,
    400,
    500,
    750,
    1000,
)
"""One to so many: the scales of ISO 5455 (from memory), with steps between so that little paper is left empty."""
PERSON_HEIGHT = 1.7
"""Metres: the standing figure beside an elevation, as exhibition plans have one (common practice, no source)."""
PERSON_ROOM = 1.0
"""Metres kept free beside what is drawn, for the figure."""
MARGIN_LEFT, MARGIN, ABOVE, TOP = 17.0, 5.0, 7.0, 19.0
"""Millimetres round what is drawn: for heights on the left, for labels beside and above, for these and the title."""
_BESIDE = 0.1
"""Metres kept free round the parts."""
LARGEST = 20
"""No part of a whole is drawn larger than one to so many, so that few small things take little paper."""
CEILING = 1.2
"""Metres above everything else up to which a ceiling is drawn; a higher one would make all the rest small."""
TALLEST, TALLEST_DETAIL = 1.0, 0.68
"""The height of a drawing, as a share of its width, that is not exceeded if a smaller scale helps; details are lower,
so that two rows of them stand on a sheet.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A scale and a place on paper; y runs down."""

    view: View
    width: float
    """Of the whole paper, in millimetres."""
    scale: int
    room: Box
    """What is drawn, in metres: across, and down the paper."""
    left: float
    """The paper's x of the left edge of the room drawn."""
    has_person: bool = True
    """Whether somebody stands in an elevation, for the height."""

    def at(self, place: Vector) -> Point:
        """The point of the paper, in millimetres, for one of the room."""
        across, down = flat(place, self.view)
        return self.left + (across - self.room.left) * self.unit, TOP + (down - self.room.top) * self.unit

    @property
    def unit(self) -> float:
        """Millimetres on paper for a metre in the room."""
        return 1000 / self.scale

    @property
    def drawn(self) -> Box:
        """The part of the paper on which the room is drawn."""
        return Box(
            self.left,
            TOP,
            self.left + self.room.width * self.unit,
            TOP + self.room.height * self.unit,
        )


def flat(place: Vector, view: View) -> Point:
    """A point of the room as a view sees it: across, and down."""
    return (place[0], -place[1]) if view is View.ELEVATION else (place[0], place[2])


def lay(stages: Stages, view: View, width: float) -> Sheet:
    """The sheet of a view: both states and both views have one scale and one extent across, as large as fits."""
    rooms = {each: _room(stages, each) for each in View}
    across = around(corner for room in rooms.values() for corner in (room.corners[0], room.corners[2]))
    tallest = max(room.height for room in rooms.values())
    room = Box(across.left, rooms[view].top, across.right, rooms[view].bottom)
    return _sheet(view, width, room, tallest)


def lay_detail(stages: Stages, width: float) -> Sheet:
    """The sheet of an elevation of some parts: from the floor up, both states at one scale, without a person."""
    taken = _taken(stages, View.ELEVATION)
    room = Box(taken.left, taken.top, taken.right, max(taken.bottom - _BESIDE, 0.0))
    return _sheet(View.ELEVATION, width, room, room.height, has_person=False)


def _sheet(view: View, width: float, room: Box, tallest: float, *, has_person: bool = True) -> Sheet:
    wide, high = width - MARGIN_LEFT - MARGIN, width * (TALLEST if has_person else TALLEST_DETAIL)
    least = 0 if has_person else LARGEST
    fitting = (
        scale
        for scale in SCALES
        if scale >= least and room.width * 1000 <= wide * scale and tallest * 1000 <= high * scale
    )
    scale = next(fitting, SCALES[-1])
    spare = max(wide - room.width * 1000 / scale, 0.0)
    left = MARGIN_LEFT + spare / 2
    return Sheet(view=view, width=width, scale=scale, room=room, left=left, has_person=has_person)


def _room(stages: Stages, view: View) -> Box:
    """What both states take up, in metres; an elevation stands on the floor, with a person beside it."""
    taken = _taken(stages, view)
    if view is View.PLAN:
        return around([*taken.corners, (0.0, 0.0)])
    top, bottom = min(taken.top, -PERSON_HEIGHT), max(taken.bottom - _BESIDE, 0.0)
    ceilings = (stage.room.ceiling for stage in (stages.documented, stages.proposed))
    top = min([top, *(-high for high in ceilings if high and high <= CEILING - top)])
    return Box(taken.left, top, taken.right + PERSON_ROOM, bottom)


def _taken(stages: Stages, view: View) -> Box:
    """What the parts of both states take up, with a little beside them."""
    corners = [
        flat(corner, view)
        for stage in (stages.documented, stages.proposed)
        for item in stage.seen(view)
        for corner in item.corners
    ]
    return around(corners or [(0.0, 0.0)]).grown(_BESIDE)
