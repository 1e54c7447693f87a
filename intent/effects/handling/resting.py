"""What stands on what: which parts may rest on the floor, and which may rest on another part that does.

The record says it by the support of a part, and by where the two stand: a part that stands on something stands on the
part above which its middle is. Where that cannot be told it may stand there, and may not.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from intent.effects.handling.footprint import Footprint, footprint_of
from intent.effects.scene import Scene
from intent.values.bounds import natural, surely_within
from intent.values.sets import Answer

ON_FLOOR = frozenset({"on-floor", "leaning"})
"""Supports that lay the weight on the floor under the part itself."""
BUILDING = frozenset({"on-wall", "in-wall", "hung"})
"""Supports that lay nothing on the floor: the wall or the ceiling bears it."""
ON_FURNITURE = frozenset({"on-plinth", "on-shelf", "on-table", "on-stand", "in-rack"})
"""Supports that are a piece of furniture or an object, of the work or of the venue."""
ON_SOMETHING = ON_FURNITURE | {"on-object"}
FURNITURE = ("furniture", "object")
LIGHT_KINDS = ("cable", "carrier", "marking", "label")
"""Of these nobody asks what they weigh, unless something is said of it (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Resting:
    """How a part rests, and the parts on which it may."""

    part: str
    on_floor: Answer
    """Whether its own base, or that of something which is no part of the work, is on the floor."""
    own_base: bool
    """Whether that base is surely its own, or is stated, so that its standing area is that of its base."""
    carriers: Mapping[str, Answer]
    """The parts on which it stands, or may."""


def resting(scene: Scene) -> tuple[Resting, ...]:
    """How every part rests that may lay anything on the floor, each device once."""
    light = {part.identifier for part in scene.parts(*LIGHT_KINDS)}
    parts = scene.one_a_device(part.identifier for part in scene.parts())
    asked = [part for part in parts if part not in light or _is_weighed(scene, part)]
    prints = {part: footprint_of(scene, part) for part in asked}
    bases = [part for part in asked if _floor(scene, part) is not Answer.OUT]
    furniture = {part.identifier for part in scene.parts(*FURNITURE)}
    return tuple(
        found
        for part in asked
        if (found := _rests(scene, part, prints=prints, bases=bases, furniture=furniture)) is not None
    )


def sure_carriers(scene: Scene) -> dict[str, str]:
    """By part, the one on which it surely stands."""
    return {
        found.part: base
        for found in resting(scene)
        for base, answer in found.carriers.items()
        if answer is Answer.IN
    }


def _is_weighed(scene: Scene, part: str) -> bool:
    return any(scene.is_given(part, name) for name in ("weight", "standing-area"))


def _supports(scene: Scene, part: str) -> frozenset[str]:
    return scene.names(part, "support")


def _floor(scene: Scene, part: str) -> Answer:
    """Whether the part itself stands on the floor, by its support alone."""
    names = _supports(scene, part)
    if names and names <= ON_FLOOR:
        return Answer.IN
    return Answer.OUT if names and names <= BUILDING | ON_SOMETHING else Answer.OPEN


def _rests(
    scene: Scene,
    part: str,
    *,
    prints: Mapping[str, Footprint],
    bases: Iterable[str],
    furniture: Iterable[str],
) -> Resting | None:
    names, stated = _supports(scene, part), scene.states(part, "standing-area")
    if names and names <= BUILDING and not stated:
        return None
    on_floor = _floor(scene, part)
    if on_floor is Answer.IN or (on_floor is Answer.OPEN and stated):
        return Resting(part=part, on_floor=Answer.IN, own_base=True, carriers={})
    may = [
        base
        for base in bases
        if base != part and (names - ON_FURNITURE - ON_FLOOR - BUILDING or base in furniture)
    ]
    carriers = {base: found for base in may if (found := _is_on(scene, part, base, prints)) is not Answer.OUT}
    if list(carriers.values()) == [Answer.IN] and names <= ON_SOMETHING:
        return Resting(part=part, on_floor=Answer.OUT, own_base=False, carriers=carriers)
    unsure = dict.fromkeys(carriers, Answer.OPEN)
    # a shelf that is no part of the work is the wall's
    is_elsewhere = not carriers and names <= BUILDING | {"on-shelf"} and not stated
    if is_elsewhere:
        return None
    return Resting(part=part, on_floor=Answer.IN if stated else Answer.OPEN, own_base=stated, carriers=unsure)


def _is_on(scene: Scene, part: str, base: str, prints: Mapping[str, Footprint]) -> Answer:
    """Whether a part that stands on something stands on another, by where the two are."""
    over, under = prints[part], prints[base]
    if over.is_clear_of(under):
        return Answer.OUT
    stands = _floor(scene, base) is Answer.IN
    ground = natural(under.bottom) if stands else under.bottom
    if surely_within(over.bottom, ground):
        return Answer.OUT
    is_standing = stands or scene.states(base, "standing-area")
    return Answer.IN if is_standing and over.is_surely_over(under) else Answer.OPEN
