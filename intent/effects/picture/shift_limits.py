"""Projectors whose lens does not shift the picture as far as it has to from where it is.

Keystone correction, where somebody says that it is used, makes the picture square all the same; where nothing is said
of it there is none.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from intent.effects.limits_kept import (
    Input,
    Limited,
    any_of,
    at_most,
    inputs,
    inputs_of_state,
    obstacles,
    unchecked,
)
from intent.effects.picture.facing_ways import TURNS
from intent.effects.picture.shifting import (
    ACROSS,
    CORRECTION,
    DIRECTIONS,
    LENS,
    PLACE,
    UP,
    Direction,
    beyond,
    demand,
    is_corrected,
    is_placed,
    way_of,
)
from intent.effects.picture.throwing import is_thrown, measures_of
from intent.effects.scene import Scene, Sides
from intent.language.figures import figure
from intent.language.message import Place, say
from intent.model.subject import one
from intent.values.bounds import ONE, ZERO, magnitude, minus, natural, over, plus, point, surely_above, total
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle, Unchecked


def shift_obstacles(sides: Sides) -> Iterator[Obstacle | Unchecked]:
    """Lenses that cannot shift their picture far enough, or of which one is not known, or that are said to do both."""
    scene = sides.proposed
    for found in scene.running("display"):
        part = found.identifier
        if is_thrown(scene, part):
            yield from _of_part(sides, part)


def _of_part(sides: Sides, part: str) -> Iterator[Obstacle | Unchecked]:
    scene = sides.proposed
    wanted = {direction: demand(scene, part, direction) for direction in DIRECTIONS}
    for direction in DIRECTIONS:
        yield from _contradiction(sides, part, direction)
    stated = [direction for direction in DIRECTIONS if scene.states(part, direction.range)]
    within = {direction: _reaches(scene, part, direction, wanted[direction]) for direction in stated}
    for direction in DIRECTIONS:
        if direction in within:
            limited = _limited(sides, part, direction, wanted[direction])
            yield from obstacles(sides, _made_square(scene, part, within[direction]), limited)
        elif _is_asked(sides, part, direction) and beyond(scene, direction, wanted[direction]) != ZERO:
            yield from unchecked(sides, part, direction.range)
    if len(stated) == len(DIRECTIONS) and set(within.values()) == {Answer.IN}:
        answer = _made_square(scene, part, _both_at_once(scene, part, wanted))
        yield from obstacles(sides, answer, _together(sides, part, wanted))


def _is_asked(sides: Sides, part: str, direction: Direction) -> bool:
    """Whether anybody says where the lens is or how it is set, or gave a range of the documented one."""
    scene = sides.proposed
    return (
        is_placed(scene, part)
        or scene.states(part, direction.shift)
        or sides.documented.states(part, direction.range)
    )


def _reaches(scene: Scene, part: str, direction: Direction, wanted: Interval) -> Answer:
    """Whether the lens shifts its picture so far."""
    return at_most(beyond(scene, direction, wanted), natural(scene.bounds(part, direction.range)))


def _both_at_once(scene: Scene, part: str, wanted: Mapping[Direction, Interval]) -> Answer:
    """Whether it shifts it up and to the side at once.

    A lens that reaches all places between any two that it reaches (as those do) has within its reach the rhombus
    between the ends of its two ranges; in the corners of the rectangle about that nobody knows but its maker.
    """
    shares = [
        _share(beyond(scene, direction, found), natural(scene.bounds(part, direction.range)))
        for direction, found in wanted.items()
    ]
    return Answer.IN if at_most(total(shares), ONE) is Answer.IN else Answer.OPEN


def _share(wanted: Interval, limit: Interval) -> Interval:
    return ZERO if wanted == ZERO else over(wanted, limit)


def _made_square(scene: Scene, part: str, reaches: Answer) -> Answer:
    """Whether the picture gets its shape, by the lens or by correction, or is not shown at all."""
    return any_of([reaches, is_corrected(scene, part), scene.runs(part).negated])


def _contradiction(sides: Sides, part: str, direction: Direction) -> Iterator[Obstacle]:
    """Where the lens is said to be shifted otherwise than its place asks for, though nobody squares the picture."""
    scene = sides.proposed
    if not is_placed(scene, part) or not scene.states(part, direction.shift):
        return
    wanted, given = demand(scene, part, direction), scene.bounds(part, direction.shift)
    if not surely_above(magnitude(minus(wanted, given)), _slack(scene, part, direction)):
        return
    words = say(
        "{shift} is given as {given}, and {wanted} follows from where its lens and its picture are: one of them is "
        "wrong, or the projector is tilted",
        shift=scene.called(direction.shift),
        given=figure(given, "%"),
        wanted=figure(wanted, "%"),
    )
    limited = Limited(
        slug="lens-shift",
        subject=one(part),
        inputs=[*inputs(sides, part, direction.shift), *_of_demand(sides, part, direction)],
        sure=words,
        unsure=words,
    )
    yield from obstacles(sides, _made_square(scene, part, Answer.OUT), limited)


def _slack(scene: Scene, part: str, direction: Direction) -> Interval:
    """By how much a shift may differ from that which its place asks for: the tolerances of shift and place."""
    of_shift, of_place = (scene.characteristic(name).tolerance or 0 for name in (direction.shift, LENS))
    return plus(point(of_shift), over(point(of_place), natural(scene.bounds(part, direction.side))))


def _of_demand(sides: Sides, part: str, direction: Direction) -> tuple[Input, ...]:
    """What the shift that is needed follows from; where nobody says where the lens is, that or how it is set."""
    scene = sides.proposed
    if is_placed(scene, part):
        return inputs(sides, part, *(LENS, PLACE, *measures_of(scene, part, direction.side), *TURNS))
    return inputs(
        sides, part, *((direction.shift,) if scene.states(part, direction.shift) else (LENS, PLACE))
    )


def _all_inputs(sides: Sides, part: str, *directions: Direction) -> tuple[Input, ...]:
    is_squared = sides.proposed.states(part, CORRECTION)
    return (
        *(each for direction in directions for each in inputs(sides, part, direction.range)),
        *(each for direction in directions for each in _of_demand(sides, part, direction)),
        *inputs_of_state(sides, part),
        *(inputs(sides, part, CORRECTION) if is_squared else ()),
    )


def _limited(sides: Sides, part: str, direction: Direction, wanted: Interval) -> Limited:
    told: dict[str, Place] = {
        "side": direction.side_name,
        "limit": figure(natural(sides.proposed.bounds(part, direction.range)), "%"),
    }
    return Limited(
        slug="lens-shift",
        subject=one(part),
        inputs=_all_inputs(sides, part, direction),
        sure=say(
            "from where its lens is the picture has to be shifted {way} by {wanted} of {side}, and its lens shifts "
            "it by {limit} at most: another place or lens is needed, or a tilt with keystone correction, which costs "
            "sharpness",
            way=way_of(direction, wanted),
            wanted=figure(magnitude(wanted), "%"),
            **told,
        ),
        unsure=say(
            "whether its lens shifts the picture far enough, which it does {way} by {limit} of {side} at most, "
            "cannot be said",
            way=direction.ways[-1],
            **told,
        ),
    )


def _together(sides: Sides, part: str, wanted: Mapping[Direction, Interval]) -> Limited:
    words = say(
        "the picture has to be shifted by {upright} of its height and {across} of its width, and its lens does each by "
        "itself: whether it does both at once, its maker says",
        upright=figure(magnitude(wanted[UP]), "%"),
        across=figure(magnitude(wanted[ACROSS]), "%"),
    )
    return Limited(
        slug="lens-shift",
        subject=one(part),
        inputs=_all_inputs(sides, part, *DIRECTIONS),
        sure=words,
        unsure=words,
    )
