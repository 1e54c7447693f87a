"""Where devices stand: in the opening of a cabinet, beside and above one another, and under the ceiling.

The outline of a device is its outer size as it lies, taken to be centred on its picture; formulas:
`intent.formulas.placing`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.handling.neighbours import MICROMETRES, Face, Pair, faces, neighbours
from intent.effects.handling.outline import OUTER, SCREEN, is_projected, lying_sides, outline_of
from intent.effects.scene import Scene, Sides, unknown_among
from intent.formulas import placing
from intent.language.message import Saying, figure, say
from intent.values.bounds import known, minus, negative, over, plus, point, scaled
from intent.values.regions import Interval
from intent.variance.result import Effect, EffectTopic, VenueFinding

CENTRED = "outlines of the devices as they lie, taken as centred on their pictures"
LEAST = Fraction(1, 1000)
"""In metres; a gap that differs by less is not told (common practice, no source)."""
LEAST_SHARE = Fraction(1, 20)
"""Of a gap; a wide one that differs by less is not told (common practice, no source)."""
OPENINGS = (("opening-width", "room across the opening"), ("opening-height", "room up the opening"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Basis:
    """Between what a gap is measured."""

    sides: tuple[str, str]
    quantities: tuple[str, str]
    """The names of a gap on each axis."""
    source: str
    lacking: tuple[str, ...] = ()


DEVICES = Basis(sides=OUTER, quantities=("gap at the side", "gap above and below"), source=CENTRED)
SCREENS = Basis(
    sides=SCREEN,
    quantities=("gap between screens at the side", "gap between screens above and below"),
    source="sizes of the screens, since the outer size of some devices is not given",
    lacking=OUTER,
)
PICTURES = Basis(
    sides=SCREEN,
    quantities=("gap between pictures at the side", "gap between pictures above and below"),
    source="sizes of the projected pictures",
)


def placement_effects(sides: Sides) -> Iterator[Effect | VenueFinding]:
    """The effects of the proposal on how displays fill their openings, and on the gaps between them."""
    displays = [part.identifier for part in sides.proposed.parts("display")]
    touched = [part for part in displays if sides.touches(part)]
    for part in touched:
        yield from _in_the_opening(sides, part)
    if touched:
        yield from _gaps(sides, displays, touched)
    if sides.proposed.venue("ceiling-height").high is not None:
        yield from _under_the_ceiling(sides, displays)


def _in_the_opening(sides: Sides, part: str) -> Iterator[Effect]:
    for axis, (opening, quantity) in enumerate(OPENINGS):
        if sides.proposed.is_given(part, opening):
            yield from _room(sides, part, axis, opening, quantity)


def _room(sides: Sides, part: str, axis: int, opening: str, quantity: str) -> Iterator[Effect]:
    after = _margin(sides.proposed, part, axis, opening)
    was_there = sides.was_there(part) and sides.documented.is_given(part, opening)
    before = _margin(sides.documented, part, axis, opening) if was_there else None
    if before is not None and _is_as_before(before, after):
        return
    screen = lying_sides(sides.proposed, part, SCREEN)[axis]
    yield Effect(
        topic=EffectTopic.PICTURE,
        members=(part,),
        quantity=quantity,
        unit="cm",
        documented=None if before is None else scaled(before, 100),
        proposed=scaled(after, 100),
        sentence=_room_words(after, minus(screen, sides.proposed.bounds(part, opening))),
        source=CENTRED,
        missing=()
        if known(after) is not None
        else unknown_among(sides.proposed, part, "rotation", OUTER[axis]),
    )


def _margin(scene: Scene, part: str, axis: int, opening: str) -> Interval:
    return placing.margin(scene.bounds(part, opening), outline_of(scene, part)[axis])


def _is_as_before(before: Interval, after: Interval) -> bool:
    one, two = known(before), known(after)
    return before == after or (one is not None and two is not None and abs(two - one) < LEAST)


def _room_words(room: Interval, hidden: Interval) -> Saying:
    """What it means for the device, and for how much of its screen is covered."""
    if room.high is not None and room.high < 0:
        much = figure(negative(room), "cm", 100)
        if hidden.low is not None and hidden.low > 0:
            return say(
                "the device does not go into the opening, by {much}; behind it, {hidden} of the screen is covered",
                much=much,
                hidden=figure(hidden, "cm", 100),
            )
        return say(
            "the device does not go into the opening, by {much}: it can only stand behind it", much=much
        )
    if room.low is not None and room.low >= 0:
        return say(
            "the device goes into the opening and leaves {room} beside it", room=figure(room, "cm", 100)
        )
    return say("whether the device goes into the opening cannot be said from what is given")


def _gaps(sides: Sides, displays: Sequence[str], touched: Sequence[str]) -> Iterator[Effect]:
    """Of the devices where all outer sizes are known, before and after, else of their screens; and of projections."""
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
    one, two = before.get(pair.one), before.get(pair.two)
    were_beside = one is not None and two is not None and one.is_beside(two, pair.axis)
    was = one.gap(two, pair.axis) if one is not None and two is not None and were_beside else None
    is_overlap = pair.gap < -LEAST * MICROMETRES
    if not is_overlap if was is None else abs(was - pair.gap) < max(LEAST * MICROMETRES, LEAST_SHARE * was):
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        members=(pair.one, pair.two),
        quantity=basis.quantities[pair.axis],
        unit="cm",
        documented=None if was is None else point(Fraction(100 * was, MICROMETRES)),
        proposed=point(Fraction(100 * pair.gap, MICROMETRES)),
        sentence=_gap_words(was, pair.gap, basis),
        source=basis.source,
        missing=tuple(sides.proposed.label(name) for name in basis.lacking),
    )


def _gap_words(was: int | None, gap: int, basis: Basis) -> Saying:
    if gap < -LEAST * MICROMETRES:
        if basis is PICTURES:
            return say("the pictures overlap by {much}", much=_centimetres(-gap))
        return say(
            "two devices cannot stand in one place: they overlap by {much}, and one has to move or be smaller",
            much=_centimetres(-gap),
        )
    if abs(gap) <= LEAST * MICROMETRES:
        return say("the gap closes: one touches the other")
    if was is not None and was < 0:
        return say("they no longer overlap")
    change = gap - (was or 0)
    if change < 0:
        return say("{much} narrower than documented", much=_centimetres(-change))
    return say("{much} wider than documented", much=_centimetres(change))


def _centimetres(micrometres: int) -> object:
    return figure(point(micrometres), "cm", Fraction(100, MICROMETRES))


def _under_the_ceiling(sides: Sides, displays: Sequence[str]) -> Iterator[VenueFinding]:
    """Told where even what is known of a display's size reaches above the ceiling."""
    ceiling = sides.proposed.venue("ceiling-height")
    for part in displays:
        half = over(outline_of(sides.proposed, part)[1], point(2))
        top = plus(sides.proposed.bounds(part, "height"), half)
        if top.low is not None and ceiling.high is not None and top.low > ceiling.high:
            text = say(
                "The ceiling at the venue is {ceiling} high, and {part} reaches {top} above the floor.",
                ceiling=figure(ceiling, "m"),
                part=part,
                top=figure(top, "m"),
            )
            yield VenueFinding(slug="ceiling-too-low", text=text, subject=part, ask=sides.asks)
