"""Whether what a box holds goes into it, and weighs no more than the box is said to weigh with all that is in it.

A thing lies straight in its box, on whichever of its sides (common practice, no source). Where no inner measures of a
box are stated, its outer ones are what limits it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from intent.effects.handling.travelling import (
    BOX_SIDES,
    OUTER_SIDES,
    Load,
    is_bulky,
    travelling_boxes,
)
from intent.effects.limits_kept import Input, Limited, at_most, inputs, inputs_of_box, obstacles, room_for
from intent.effects.scene import Scene, Sides
from intent.formulas.openings import ENDLESS, Turning, clearance_in_car
from intent.formulas.openings import Sides as Extent
from intent.language.figures import figure
from intent.language.message import say
from intent.model.as_proposed import packed_boxes
from intent.model.subject import one
from intent.values.bounds import natural, negative, point, times, total
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle

INNER_SIDES = ("inner-length", "inner-width", "inner-height")
UNSURE_SIZE = say("whether it goes into its box cannot be said from what is given")
UNSURE_WEIGHT = say("whether the weight of the box is right cannot be said from what is given")


def packing_obstacles(sides: Sides) -> Iterator[Obstacle]:
    """What does not surely go into the box that it is said to travel in, box by box."""
    inside = {packed.box.identifier: packed.parts for packed in packed_boxes(sides.work, sides.installation)}
    for box in travelling_boxes(sides):
        held = [part for part in inside[box.identifier] if _is_asked_about(sides.proposed, part)]
        whole = [part for part in held if sides.proposed.is_(part, "taken-apart", "yes") is not Answer.IN]
        if any(box.scene.states(box.identifier, name) for name in (*BOX_SIDES, *INNER_SIDES)):
            for part in whole:
                yield from _into(sides, box, part)
            yield from _together(sides, box, whole)
        if box.scene.states(box.identifier, "weight"):
            yield from _weighed(sides, box, held)


def _is_asked_about(scene: Scene, part: str) -> bool:
    return is_bulky(scene, part) or any(scene.is_given(part, name) for name in (*OUTER_SIDES, "weight"))


def _room(box: Load) -> tuple[Extent, tuple[str, ...]]:
    """What is inside a box, side by side, and the names of the measures that say it."""
    sides: list[Interval] = []
    names: list[str] = []
    for inner, outer in zip(INNER_SIDES, BOX_SIDES, strict=True):
        stated = next((name for name in (inner, outer) if box.scene.states(box.identifier, name)), None)
        sides.append(point(ENDLESS) if stated is None else natural(box.bounds(stated)))
        names += [] if stated is None else [stated]
    length, width, height = sides
    return (length, width, height), tuple(names)


def _into(sides: Sides, box: Load, part: str) -> Iterator[Obstacle]:
    room, names = _room(box)
    extent = _extent(sides.proposed, part)
    spare = clearance_in_car(extent, room, Turning.LAID)
    answer = room_for(spare)
    across, along, up = (figure(side, "cm") for side in extent)
    limited = Limited(
        slug="box-too-small",
        subject=one(part),
        inputs=[*inputs(sides, part, *OUTER_SIDES), *_of_box(sides, box, *names)],
        sure=say(
            "{name}, {width} × {depth} × {height}, does not go into {box}: it is {over} too large",
            name=part,
            width=across,
            depth=along,
            height=up,
            box=box.identifier,
            over=figure(negative(spare), "cm"),
        ),
        unsure=UNSURE_SIZE,
        names_subject=answer is Answer.OUT,
    )
    yield from obstacles(sides, answer, limited)


def _extent(scene: Scene, part: str) -> Extent:
    width, depth, height = (natural(scene.bounds(part, name)) for name in OUTER_SIDES)
    return width, depth, height


def _volume(extent: Extent) -> Interval:
    length, width, height = extent
    return times(times(length, width), height)


def _together(sides: Sides, box: Load, parts: Sequence[str]) -> Iterator[Obstacle]:
    """Several things that are larger together than the box; what is not known of one is said of that one."""
    room, names = _room(box)
    if len(parts) < 2 or len(names) < len(BOX_SIDES):
        return
    taken = total(_volume(_extent(sides.proposed, part)) for part in parts)
    answer = at_most(taken, _volume(room))
    limited = Limited(
        slug="box-too-full",
        subject=one(box.identifier),
        inputs=[
            *(each for part in parts for each in inputs(sides, part, *OUTER_SIDES)),
            *_of_box(sides, box, *names),
        ],
        sure=say(
            "what it is said to hold takes {taken}, and there is room for {room}",
            taken=figure(taken, "m³"),
            room=figure(_volume(room), "m³"),
        ),
        unsure=UNSURE_SIZE,
    )
    if answer is Answer.OUT or taken.high is not None:
        yield from obstacles(sides, answer, limited)


def _weighed(sides: Sides, box: Load, parts: Sequence[str]) -> Iterator[Obstacle]:
    scene = sides.proposed
    held = total(natural(scene.bounds(part, "weight")) for part in scene.one_a_device(parts))
    limited = Limited(
        slug="box-too-light",
        subject=one(box.identifier),
        inputs=[
            *(each for part in parts for each in inputs(sides, part, "weight")),
            *_of_box(sides, box, "weight"),
        ],
        sure=say(
            "what is in it weighs {held}, and the box is said to weigh {all} with it: weigh it again",
            held=figure(held, "kg"),
            all=figure(box.weight, "kg"),
        ),
        unsure=UNSURE_WEIGHT,
    )
    if parts:
        yield from obstacles(sides, at_most(held, box.weight), limited)


def _of_box(sides: Sides, box: Load, *names: str) -> tuple[Input, ...]:
    """The measures of a box, which the proposal changes only where it packs that box itself."""
    is_packed = box.identifier in {packed.identifier for packed in sides.installation.boxes}
    return tuple(
        replace(each, is_changed=is_packed) for each in inputs_of_box(box.scene, box.identifier, *names)
    )
