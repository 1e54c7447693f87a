"""Everything there is to draw of one state of an installation, in metres, as frozen data."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from intent.drawings.solid import Corners, Pose, Vector
from intent.language.message import Labelled, Words
from intent.variance.result import Verdict


class View(StrEnum):
    ELEVATION = "elevation"
    """From the front: x to the right, y up."""
    PLAN = "plan"
    """From above: x to the right, z towards the viewer."""


class Which(StrEnum):
    DOCUMENTED = "documented"
    PROPOSED = "proposed"


class Stand(StrEnum):
    """How a part stands to the documentation."""

    KEPT = "kept"
    OMITTED = "omitted"
    ADDED = "added"


class Symbol(StrEnum):
    """What marks a part whose size is not known, by its kind."""

    DISPLAY = "display"
    LOUDSPEAKER = "loudspeaker"
    PLAYER = "player"
    OTHER = "other"


@dataclass(frozen=True, slots=True, kw_only=True)
class Screen:
    """The face of a display, and the picture as it falls on it."""

    visible: Corners
    """Clockwise from the top left of the picture as it lies, where its turn is known; else from the screen's own."""
    picture: Corners = ()
    """The same of the picture; none where its shape is not known."""
    lost: Corners = ()
    """The whole picture, where some of it falls outside the screen."""
    is_projected: bool = False
    has_top: bool = True
    """Whether it is known where on the screen the picture's top is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """A part with a position."""

    identifier: str
    name: str
    group: str
    symbol: Symbol
    pose: Pose
    outline: Corners = ()
    """The corners of its block; none where its size is not known, or where all of it is the screen."""
    screen: Screen | None = None
    channel: Words = ""
    picture_rotation: float | None = None
    """Which way up the picture is seen, clockwise from upright, in degrees."""
    standing: Stand = Stand.KEPT
    verdict: Verdict | None = None
    """The worst verdict on the part, of those that depart."""
    missing: tuple[Words, ...] = ()
    """What would have to be given for it to be drawn with its outline."""
    called: str = ""
    """What is written at it."""
    beam: Corners = ()
    """From the lens to the sides of the picture, where it is the body of a projector."""

    @property
    def is_picture(self) -> bool:
        """Whether it is not the part itself that is drawn, but what it throws on a wall."""
        return self.screen is not None and self.screen.is_projected

    @property
    def corners(self) -> Corners:
        """Every point that the part takes up."""
        screen = (*self.screen.visible, *self.screen.lost) if self.screen else ()
        return (*self.outline, *screen) or (self.pose.centre,)

    @property
    def centre(self) -> Vector:
        return self.pose.centre

    @property
    def is_display(self) -> bool:
        return self.symbol is Symbol.DISPLAY


@dataclass(frozen=True, slots=True, kw_only=True)
class Unplaced:
    """A part that cannot be drawn, with what is missing."""

    identifier: str
    name: str
    kind: Labelled
    missing: tuple[Words, ...]
    standing: Stand = Stand.KEPT
    verdict: Verdict | None = None


@dataclass(frozen=True, slots=True)
class Room:
    """What is known of the room, though not where in it the work stands."""

    ceiling: float | None = None
    """Its height above the finished floor, in metres."""
    told: tuple[Words, ...] = ()
    """Everything known, in words."""
    circuits: tuple[tuple[Words, tuple[str, ...]], ...] = ()
    """The parts on each circuit."""


UNKNOWN_ROOM = Room()


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """One state of the work."""

    items: tuple[Item, ...]
    """In the order of the work, additions last."""
    unplaced: tuple[Unplaced, ...]
    links: tuple[tuple[str, str], ...] = ()
    """A player and a display or loudspeaker that it feeds, by identifier."""
    projectors: tuple[Item, ...] = ()
    """The bodies of projectors, whose height nobody states: they are seen from above alone."""
    room: Room = UNKNOWN_ROOM

    def seen(self, view: View) -> tuple[Item, ...]:
        """What is drawn in a view."""
        return self.items if view is View.ELEVATION else (*self.items, *self.projectors)


@dataclass(frozen=True, slots=True, kw_only=True)
class Detail:
    """What a drawing shows where it is not the whole: parts of one group, without what stands in front of them."""

    group: Words
    """Its name; nothing for the parts that are in no group."""
    parts: frozenset[str]
    without: tuple[str, ...] = ()
    """The parts of the same group that are not drawn, since they hide these."""
    is_alike: bool = False
    """Whether the proposed state is here as the documented one, so that one drawing is of both."""


@dataclass(frozen=True, slots=True)
class Stages:
    """Both states, which are drawn at one scale and with one meaning of every pattern."""

    documented: Stage
    proposed: Stage

    def of(self, which: Which) -> Stage:
        return self.documented if which is Which.DOCUMENTED else self.proposed

    def only(self, parts: frozenset[str]) -> Stages:
        """Of both states some of the parts that are drawn."""
        one, two = (
            Stage(
                items=tuple(item for item in stage.items if item.identifier in parts),
                unplaced=(),
                links=stage.links,
            )
            for stage in (self.documented, self.proposed)
        )
        return Stages(one, two)

    @property
    def channels(self) -> tuple[Words, ...]:
        """What displays show, in the order of the work."""
        every = (*self.documented.items, *self.proposed.items)
        return tuple(dict.fromkeys(item.channel for item in every if item.is_display and item.channel))
