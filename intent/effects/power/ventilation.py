"""Where the vents of a device come to lie as it is turned, closed in, or set beside others.

All of it is common practice: warm air rises, and what stands before a vent keeps it in. The maker's instructions say
how a device may lie and what room it needs.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from intent.effects.handling.neighbours import Face, Pair, faces, in_metres, neighbours
from intent.effects.handling.outline import OUTER
from intent.effects.power.consumers import consumers
from intent.effects.power.free_vents import vents_not_free
from intent.effects.power.lying import (
    ABOVE,
    BELOW,
    FACE_DOWN,
    LEFT,
    ON_ITS_BACK,
    ON_ITS_SIDE,
    RIGHT,
    UPRIGHT,
    UPSIDE_DOWN,
    angle_of,
    lying,
    open_sides,
)
from intent.effects.scene import Sides
from intent.effects.unsaid import Missing
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one, several
from intent.values.bounds import natural, surely_above
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.obstacle import Obstacle
from intent.variance.result import Effect, EffectTopic

SOURCE = say(
    "the vents turned as the rotation and tilt say, upright where nothing is given; what that does is common practice, "
    "no source"
)
GAPS = say(
    "outlines of the devices as they lie, taken as centred on their pictures, against the free space that is stated"
)
TOP_LEVEL = say("its vents, built on top, come to lie at one side: warm air leaves them less well")
BOTTOM_LEVEL = say("its vents, built underneath, come to lie at one side: air rises through it less well")
SOME_COVERED = say("of its vents, built all round, what it stands on now covers some that were free")
UNCLEAR = say(
    "whether its heat leaves it as it is turned cannot be said; ask its maker, for heat that stays in may start a fire"
)
TURNED: Mapping[str, Mapping[str, Message]] = {
    "vent-top": {
        UPSIDE_DOWN: say(
            "its vents, built on top, come to lie below: warm air cannot rise out of them, and heat stays in"
        ),
        ON_ITS_SIDE: TOP_LEVEL,
        ON_ITS_BACK: TOP_LEVEL,
        FACE_DOWN: TOP_LEVEL,
    },
    "vent-bottom": {
        UPSIDE_DOWN: say(
            "its vents, built underneath, come to lie on top: dust, and whatever falls, goes in"
        ),
        ON_ITS_SIDE: BOTTOM_LEVEL,
        ON_ITS_BACK: BOTTOM_LEVEL,
        FACE_DOWN: BOTTOM_LEVEL,
    },
    "vent-sides": {
        ON_ITS_SIDE: say(
            "its vents, built at the sides, come to lie above and below: what it stands on covers the lower ones"
        ),
    },
    "vent-all-round": {
        UPSIDE_DOWN: SOME_COVERED,
        ON_ITS_SIDE: SOME_COVERED,
        ON_ITS_BACK: SOME_COVERED,
        FACE_DOWN: SOME_COVERED,
    },
    "vent-back": {
        ON_ITS_BACK: say("its vents, built at the back, come to lie below: what it lies on covers them"),
    },
    "vent-front": {
        FACE_DOWN: say("its vents, built in front, come to lie below: what it lies on covers them"),
    },
}
"""What it means, by where the vents are and how the device lies; where nothing is said, they are as free as built."""


def ventilation_effects(sides: Sides) -> Iterator[Effect | Obstacle]:
    """The effects of the proposal on how the heat of each device leaves it, and the vents that are not free."""
    yield from vents_not_free(sides)
    running = [part.identifier for part in sides.proposed.running()]
    touched = [part for part in consumers(sides.proposed) if part in running and sides.touches(part)]
    for part in touched:
        yield from _turned(sides, part)
        yield from _enclosed(sides, part)
    if touched:
        yield from _crowded(sides, touched)


def _is_other(sides: Sides, part: str) -> bool:
    """Whether a device comes that was not there."""
    is_replaced = part in sides.proposed.case.substituted
    return is_replaced or sides.documented.device(part) != sides.proposed.device(part)


def _turned(sides: Sides, part: str) -> Iterator[Effect]:
    """Where the vents come to lie of another device that is turned, or of the same one turned otherwise."""
    scene = sides.proposed
    way = lying(scene, part)
    was = lying(sides.documented, part) if sides.was_there(part) else None
    if way == UPRIGHT or (way == was and not _is_other(sides, part)):
        return
    vents = scene.stated_names(part, "vent-position")
    if len(vents) != 1 or way is None:
        yield _unclear(sides, part, vents)
        return
    told = TURNED.get(next(iter(vents)), {}).get(way)
    if told is not None:
        caution = say(
            "{how}; turn it only as its maker allows, for heat that stays in may start a fire", how=told
        )
        yield _effect(sides, part, name="vent-position", told=caution)


def _unclear(sides: Sides, part: str, vents: frozenset[str]) -> Effect:
    scene = sides.proposed
    unknown = [name for name in ("rotation", "tilt") if angle_of(scene, part, name) is None]
    missing = ["vent-position", *unknown] if len(vents) != 1 else unknown
    return _effect(sides, part, name="vent-position", told=UNCLEAR, missing=tuple(map(scene.called, missing)))


def _enclosed(sides: Sides, part: str) -> Iterator[Effect]:
    """The heat of a device that is closed in and was not, or that comes in the place of one that is closed in."""
    scene = sides.proposed
    if scene.is_(part, "enclosed", "yes") is not Answer.IN:
        return
    was = sides.was_there(part) and sides.documented.is_(part, "enclosed", "yes") is Answer.IN
    if was and not _is_other(sides, part):
        return
    heat, clearance = (natural(scene.bounds(part, name)) for name in ("heat-output", "vent-clearance"))
    missing = scene.unknown(part, "heat-output", "vent-clearance")
    if missing:
        told = say("closed in, its heat has to be led away, or it may overheat or start a fire")
    else:
        told = say(
            "closed in, its {heat} of heat have to be led away, and {clearance} kept free at its vents, or it may "
            "overheat or start a fire",
            heat=figure(heat, "W"),
            clearance=figure(clearance, "cm"),
        )
    yield _effect(sides, part, name="enclosed", told=told, missing=missing)


def _effect(sides: Sides, part: str, *, name: str, told: Message, missing: Missing = ()) -> Effect:
    return Effect(
        topic=EffectTopic.POWER,
        subject=one(part),
        quantity=sides.proposed.called(name),
        sentence=told,
        source=SOURCE,
        missing=missing,
    )


def _crowded(sides: Sides, touched: Sequence[str]) -> Iterator[Effect]:
    """Neighbours that come nearer to vents than the free space that these need."""
    scene = sides.proposed
    placed = [part.identifier for part in scene.parts() if scene.is_given(part.identifier, "position")]
    if not any(scene.states(part, "vent-clearance") for part in placed):
        return
    before = faces(sides.documented, [part for part in placed if sides.was_there(part)], OUTER)
    for pair in neighbours(faces(scene, placed, OUTER)):
        if pair.one in touched or pair.two in touched:
            yield from _too_near(sides, pair, before)


def _too_near(sides: Sides, pair: Pair, before: Mapping[str, Face]) -> Iterator[Effect]:
    """Of each of two neighbours, whether its vents lie towards the other and need more room than there is."""
    was, gap = pair.gap_among(before), in_metres(pair.gap)
    towards = (RIGHT, LEFT) if pair.axis == 0 else (ABOVE, BELOW)
    for part, direction in zip((pair.one, pair.two), towards, strict=True):
        clearance = natural(sides.proposed.bounds(part, "vent-clearance"))
        if not surely_above(clearance, gap) or direction not in open_sides(sides.proposed, part):
            continue
        is_as_before = was == pair.gap and direction in open_sides(sides.documented, part)
        if is_as_before and not _is_other(sides, part):
            continue
        yield Effect(
            topic=EffectTopic.POWER,
            subject=several((pair.one, pair.two)),
            quantity=say("room at the vents"),
            unit="cm",
            documented=None if was is None else in_unit(in_metres(was), "cm"),
            proposed=in_unit(gap, "cm"),
            sentence=say(
                "less than the {clearance} that the vents of {part} need: its heat may stay in",
                clearance=figure(clearance, "cm"),
                part=part,
            ),
            source=GAPS,
        )
