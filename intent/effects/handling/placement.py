"""Where devices stand: in the opening of a cabinet, beside and above one another.

The outline of a device is its outer size as it lies, taken to be centred on its picture; formulas:
`intent.formulas.placing`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.handling.neighbours import MICROMETRES, Face, Pair, faces, in_metres, neighbours
from intent.effects.handling.outline import OUTER, SCREEN, is_projected, lying_sides, outline_of
from intent.effects.scene import Scene, Sides
from intent.formulas import placing
from intent.language.figures import Figure, figure
from intent.language.message import Message, say
from intent.model.subject import one, several
from intent.values.bounds import (
    ZERO,
    differs_by,
    known,
    minus,
    negative,
    surely_above,
    surely_within,
)
from intent.values.regions import Interval
from intent.values.units import in_unit
from intent.variance.result import Effect, EffectTopic

CENTRED = say("outlines of the devices as they lie, taken as centred on their pictures")
LEAST = Fraction(1, 1000)
"""In metres; room that differs by less is not told (common practice, no source)."""
LEAST_GAP = LEAST * MICROMETRES
"""The same for gaps, which are in micrometres."""
LEAST_SHARE = Fraction(1, 20)
"""Of a gap; a wide one that differs by less is not told (common practice, no source)."""
OPENINGS = (
    ("opening-width", say("room across the opening")),
    ("opening-height", say("room up the opening")),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Basis:
    """Between what a gap is measured: devices, screens or projected pictures."""

    sides: tuple[str, str]
    """The characteristics that give their width and height."""
    quantities: tuple[Message, Message]
    """What a gap is called at the side, and above and below."""
    source: Message
    lacking: tuple[str, ...] = ()
    """The characteristics that would give a closer answer."""


DEVICES = Basis(sides=OUTER, quantities=(say("gap at the side"), say("gap above and below")), source=CENTRED)
SCREENS = Basis(
    sides=SCREEN,
    quantities=(say("gap between screens at the side"), say("gap between screens above and below")),
    source=say("sizes of the screens, since the outer size of some devices is not given"),
    lacking=OUTER,
)
PICTURES = Basis(
    sides=SCREEN,
    quantities=(say("gap between pictures at the side"), say("gap between pictures above and below")),
    source=say("sizes of the projected pictures"),
)


def placement_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on how displays fill their openings, and on the gaps between them."""
    displays = [part.identifier for part in sides.proposed.parts("display")]
    touched = [part for part in displays if sides.touches(part)]
    for part in touched:
        yield from _in_the_opening(sides, part)
    if touched:
        yield from _gaps(sides, displays, touched)


def _in_the_opening(sides: Sides, part: str) -> Iterator[Effect]:
    for axis, (opening, quantity) in enumerate(OPENINGS):
        if sides.proposed.is_given(part, opening):
            yield from _room(sides, part, axis=axis, opening=opening, quantity=quantity)


def _room(sides: Sides, part: str, *, axis: int, opening: str, quantity: Message) -> Iterator[Effect]:
    after = _margin(sides.proposed, part, axis=axis, opening=opening)
    was_there = sides.was_there(part) and sides.documented.is_given(part, opening)
    before = _margin(sides.documented, part, axis=axis, opening=opening) if was_there else None
    if before is not None and not differs_by(before, after, LEAST):
        return
    screen = lying_sides(sides.proposed, part, SCREEN)[axis]
    is_known = known(after) is not None
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=quantity,
        unit="cm",
        documented=None if before is None else in_unit(before, "cm"),
        proposed=in_unit(after, "cm"),
        sentence=_room_words(after, minus(screen, sides.proposed.bounds(part, opening))),
        source=CENTRED,
        missing=() if is_known else sides.proposed.unknown(part, "rotation", OUTER[axis]),
    )


def _margin(scene: Scene, part: str, *, axis: int, opening: str) -> Interval:
    return placing.margin(scene.bounds(part, opening), outline_of(scene, part)[axis])


def _room_words(room: Interval, hidden: Interval) -> Message:
    """What it means for the device, and for how much of its screen is covered."""
    if surely_above(ZERO, room):
        much = figure(negative(room), "cm")
        if surely_above(hidden, ZERO):
            return say(
                "the device does not go into the opening, by {much}; behind it, {hidden} of the screen is covered",
                much=much,
                hidden=figure(hidden, "cm"),
            )
        return say(
            "the device does not go into the opening, by {much}: it can only stand behind it", much=much
        )
    if surely_within(ZERO, room):
        return say("the device goes into the opening and leaves {room} beside it", room=figure(room, "cm"))
    return say("whether the device goes into the opening cannot be said from what is given")


def _gaps(sides: Sides, displays: Sequence[str], touched: Sequence[str]) -> Iterator[Effect]:
    """The gaps between devices where all their outer sizes are known, else between screens; and between projections."""
    placed = [part for part in displays if sides.proposed.is_given(part, "position")]
    projected = [part for part in placed if is_projected(sides.proposed, part)]
    solid = [part for part in placed if part not in projected]
    outer_known = all(_has_outer_size(sides, part) for part in solid)
    for parts, basis in ((solid, DEVICES if outer_known else SCREENS), (projected, PICTURES)):
        before = faces(sides.documented, [part for part in parts if sides.was_there(part)], basis.sides)
        for pair in neighbours(faces(sides.proposed, parts, basis.sides)):
            if pair.one in touched or pair.two in touched:
                yield from _gap(sides, pair, before, basis)


def _has_outer_size(sides: Sides, part: str) -> bool:
    scenes = (sides.documented, sides.proposed) if sides.was_there(part) else (sides.proposed,)
    return all(scene.is_given(part, name) for scene in scenes for name in OUTER)


def _gap(sides: Sides, pair: Pair, before: Mapping[str, Face], basis: Basis) -> Iterator[Effect]:
    was = pair.gap_among(before)
    if not _is_told(was, pair.gap):
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=several((pair.one, pair.two)),
        quantity=basis.quantities[pair.axis],
        unit="cm",
        documented=None if was is None else in_unit(in_metres(was), "cm"),
        proposed=in_unit(in_metres(pair.gap), "cm"),
        sentence=_gap_words(was, pair.gap, basis),
        source=basis.source,
        missing=tuple(sides.proposed.called(name) for name in basis.lacking),
    )


def _is_told(was: int | None, gap: int) -> bool:
    """Whether a gap differs enough; of two that were no neighbours, only whether they overlap."""
    if was is None:
        return gap < -LEAST_GAP
    return abs(was - gap) >= max(LEAST_GAP, LEAST_SHARE * was)


def _gap_words(was: int | None, gap: int, basis: Basis) -> Message:
    if gap < -LEAST_GAP:
        if basis is PICTURES:
            return say("the pictures overlap by {much}", much=_centimetres(-gap))
        return say(
            "two devices cannot stand in one place: they overlap by {much}, and one has to move or be smaller",
            much=_centimetres(-gap),
        )
    if abs(gap) <= LEAST_GAP:
        return say("the gap closes: one touches the other")
    if was is not None and was < 0:
        return say("they no longer overlap")
    change = gap - (was or 0)
    if change < 0:
        return say("{much} narrower than documented", much=_centimetres(-change))
    return say("{much} wider than documented", much=_centimetres(change))


def _centimetres(micrometres: int) -> Figure:
    return figure(in_metres(micrometres), "cm")
