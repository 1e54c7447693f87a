"""Whether all that is placed has room at the venue: under its ceiling, and between its walls.

Outlines are taken as they lie, centred on positions; what no position says stands somewhere.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import reduce

from intent.effects.handling.footprint import ACROSS, DEEP, Edges, footprint_of
from intent.effects.handling.outline import OUTER, is_projected, outline_of
from intent.effects.handling.travelling import BULKY
from intent.effects.limits_kept import Limited, at_most, inputs, obstacles, unchecked
from intent.effects.scene import Scene, Sides
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one, several
from intent.names import THE_VENUE
from intent.values.bounds import larger, minus, natural, plus, scaled, smaller, surely_above
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle, Unchecked

CEILING = "ceiling-height"
HALF = Fraction(1, 2)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """A measure of the room between two walls."""

    limit: str
    axis: int
    side: str
    """The characteristic of a part's size along it, as it stands straight."""
    alone: Message
    apart: Message
    unsure: Message


WALLS = (
    Wall(
        limit="room-width",
        axis=ACROSS,
        side="outer-width",
        alone=say("it is {size} wide, and the room at the venue {room}"),
        apart=say("{one} and {two} take up {size} across, and the room at the venue is {room} wide"),
        unsure=say("whether it stands within the width of the room cannot be said from what is given"),
    ),
    Wall(
        limit="room-depth",
        axis=DEEP,
        side="outer-depth",
        alone=say("it is {size} deep, and the room at the venue {room}"),
        apart=say("{one} and {two} take up {size} in depth, and the room at the venue is {room} deep"),
        unsure=say("whether it stands within the depth of the room cannot be said from what is given"),
    ),
)


def room_obstacles(sides: Sides) -> Iterator[Obstacle | Unchecked]:
    """What does not surely stand in the room, as far as the venue says how large it is."""
    scene = sides.proposed
    if scene.states(THE_VENUE, CEILING):
        yield from _under_the_ceiling(sides)
    edges = {part: footprint_of(scene, part).edges for part in _placed(scene)}
    if edges:
        yield from unchecked(sides, THE_VENUE, CEILING, *(wall.limit for wall in WALLS))
    for wall in WALLS:
        if scene.states(THE_VENUE, wall.limit) and edges:
            yield from _between_walls(sides, wall, {part: found[wall.axis] for part, found in edges.items()})


def _placed(scene: Scene) -> list[str]:
    """What nobody would carry in a pocket, and all that has a position; of a projector only its picture has one."""
    bulky = {part.identifier for part in scene.parts(*BULKY)}
    projected = {part.identifier for part in scene.parts("display") if is_projected(scene, part.identifier)}
    names = [part.identifier for part in scene.parts() if part.identifier not in projected]
    return [name for name in names if name in bulky or scene.is_given(name, "position")]


def _between_walls(sides: Sides, wall: Wall, edges: Mapping[str, Edges]) -> Iterator[Obstacle]:
    scene = sides.proposed
    room = natural(scene.venue(wall.limit))
    too_large = [part for part, found in edges.items() if surely_above(_alone(scene, part, found), room)]
    for part in too_large:
        words = wall.alone.filled(size=figure(edges[part].size, "m"), room=figure(room, "m"))
        yield from obstacles(sides, Answer.OUT, _limited(sides, wall, (part,), sure=words))
    if too_large:
        return
    last = reduce(larger, [found.high for found in edges.values()])
    first = reduce(smaller, [found.low for found in edges.values()])
    taken = natural(minus(last, first))
    answer = at_most(taken, room)
    pair = _furthest(edges)
    vague = [part for part, found in edges.items() if found.low.low is None or found.high.high is None]
    if answer is Answer.OUT or not vague:
        one_part, two_part = pair
        words = wall.apart.filled(one=one_part, two=two_part, size=figure(taken, "m"), room=figure(room, "m"))
        yield from obstacles(
            sides, answer, _limited(sides, wall, pair, sure=words, names=answer is Answer.OUT)
        )
        return
    for part in vague:
        yield from obstacles(sides, answer, _limited(sides, wall, (part,), sure=wall.unsure))


def _alone(scene: Scene, part: str, found: Edges) -> Interval:
    """What a part takes up by itself; one without a position may still be turned."""
    if scene.is_given(part, "position"):
        return found.size
    return smaller(*(natural(scene.bounds(part, side)) for side in ("outer-width", "outer-depth")))


def _furthest(edges: Mapping[str, Edges]) -> tuple[str, str]:
    """The two parts that are surely, or else perhaps, furthest from each other; of one alone it twice."""
    far = Fraction(10**6)
    first = min(edges, key=lambda part: far if edges[part].low.high is None else edges[part].low.high or 0)
    last = max(edges, key=lambda part: -far if edges[part].high.low is None else edges[part].high.low or 0)
    return first, last


def _limited(
    sides: Sides, wall: Wall, parts: Sequence[str], *, sure: Message, names: bool = False
) -> Limited:
    return Limited(
        slug="room-too-small",
        subject=several(dict.fromkeys(parts)),
        inputs=[
            *(each for part in dict.fromkeys(parts) for each in inputs(sides, part, "position", wall.side)),
            *inputs(sides, THE_VENUE, wall.limit),
        ],
        sure=sure,
        unsure=wall.unsure,
        names_subject=names,
    )


def _under_the_ceiling(sides: Sides) -> Iterator[Obstacle]:
    """All that may reach above the ceiling, by its height above the floor, or else by its own."""
    scene = sides.proposed
    ceiling = natural(scene.venue(CEILING))
    bulky = {part.identifier for part in scene.parts(*BULKY)}
    for part in scene.parts():
        name = part.identifier
        top = _top(scene, name)
        is_placed = scene.is_given(name, "height") and scene.is_given(name, "outer-height")
        if not (name in bulky or is_placed or surely_above(top, ceiling)):
            continue
        limited = Limited(
            slug="ceiling-too-low",
            subject=one(name),
            inputs=[
                *inputs(sides, name, "height", *_height_named(scene, name)),
                *inputs(sides, THE_VENUE, CEILING),
            ],
            sure=say(
                "the ceiling at the venue is {ceiling} high, and it reaches {top} above the floor",
                ceiling=figure(ceiling, "m"),
                top=figure(top, "m"),
            ),
            unsure=say("whether it goes under the ceiling of the venue cannot be said from what is given"),
        )
        yield from obstacles(sides, at_most(top, ceiling), limited)


def _is_display(scene: Scene, part: str) -> bool:
    # only displays lie otherwise than they stand, so that nobody gives the rotation of anything else
    return part in {display.identifier for display in scene.parts("display")}


def _height_named(scene: Scene, part: str) -> tuple[str, ...]:
    return ("rotation", *OUTER) if _is_display(scene, part) else ("outer-height",)


def _top(scene: Scene, part: str) -> Interval:
    """How high it reaches above the floor; at least as high as it is itself."""
    outer = natural(scene.bounds(part, "outer-height"))
    upright = outline_of(scene, part)[1] if _is_display(scene, part) else outer
    if scene.is_given(part, "height"):
        return plus(scene.bounds(part, "height"), scaled(upright, HALF))
    return upright if scene.is_(part, "support", "on-floor") is Answer.IN else Interval(upright.low, None)
