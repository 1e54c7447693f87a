"""Whether anybody can come into the light of a device within the distance in which it harms the eye.

Light that passes high enough, or a barrier that keeps people far enough away, meets the limit. Where visitors are said
to stand can show that it is not met, never that it is: nothing there keeps them from walking nearer.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.effects.limits_kept import (
    Input,
    Limited,
    any_of,
    at_least,
    inputs,
    inputs_of_state,
    obstacles,
    unchecked,
)
from intent.effects.picture.facing_ways import TURNS, at, looking_of
from intent.effects.picture.shifting import LENS, PLACE
from intent.effects.picture.throwing import DISTANCE
from intent.effects.scene import Scene, Sides
from intent.formulas import directions, light_cones
from intent.formulas.directions import Arrow
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import between, hull, natural, negative, plus, point, surely_within
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic

REACH, BARRIER, VISITORS = "hazard-distance", "barrier-distance", "visitor-position"
SIDES = ("visible-width", "visible-height")
HEIGHT = between(2, 3)
"""Metres above where people stand: the least anywhere, and where people may be expected to lift each other up."""
ASIDE = point(1)
"""Metres between light that harms and where people may be."""
ZONE = say(
    "IEC 62471-5:2015, 6.6.5, as makers' manuals quote it: no light that harms less than 2 m above where people stand, "
    "or 3 m where they may lift each other up, or less than 1 m beside them; straight rays from the lens to the lower "
    "edge of the picture; a barrier is taken to be measured from the lens; the maker's instructions and local law come "
    "first"
)


def hazard_effects(sides: Sides) -> Iterator[Effect | Obstacle | Unchecked]:
    """Every device that states a hazard distance, and those of risk group 3 that state none."""
    scene = sides.proposed
    for found in scene.running("display", "lamp"):
        part = found.identifier
        if scene.states(part, REACH):
            yield from obstacles(sides, _is_kept(scene, part), _limited(sides, part))
            yield from _told(sides, part)
        elif (
            scene.states(part, "risk-group")
            and scene.is_(part, "risk-group", "risk-group-3") is not Answer.OUT
        ):
            yield from unchecked(sides, part, REACH)


def _is_kept(scene: Scene, part: str) -> Answer:
    """Whether everybody is kept out of the light: by its height, by a barrier, or since it is off."""
    reach = natural(scene.bounds(part, REACH))
    far_enough = hull([reach, plus(reach, ASIDE)])
    found = any_of(
        [
            at_least(_lowest(scene, part), HEIGHT),
            at_least(natural(scene.bounds(part, BARRIER)), far_enough),
            scene.runs(part).negated,
        ]
    )
    return Answer.OUT if found is Answer.OPEN and _are_in_it(scene, part) else found


def _lowest(scene: Scene, part: str) -> Interval:
    """How low above the floor the light comes within the hazard distance."""
    looking = looking_of(scene, part)
    sides = _size(scene, part)
    edge = light_cones.lower_edge(at(scene, part, PLACE)[1], sides, (looking.right[1], looking.up[1]))
    reach, throw = (natural(scene.bounds(part, name)) for name in (REACH, DISTANCE))
    return light_cones.lowest(at(scene, part, LENS)[1], edge, reach, throw)


def _size(scene: Scene, part: str) -> tuple[Interval, Interval]:
    wide, high = (natural(scene.bounds(part, side)) for side in SIDES)
    return wide, high


def _are_in_it(scene: Scene, part: str) -> bool:
    """Whether the eyes of visitors, where they are said to stand, surely are in the light within that distance."""
    if scene.runs(part) is not Answer.IN:
        return False
    eyes, picture = (_from_lens(scene, part, *where) for where in ((THE_VENUE, VISITORS), (part, PLACE)))
    is_near = surely_within(light_cones.distance(eyes), natural(scene.bounds(part, REACH)))
    return is_near and light_cones.is_inside(eyes, picture, _size(scene, part))


def _from_lens(scene: Scene, part: str, subject: str, place: str) -> Arrow:
    """How far something lies across, above and before a lens, as somebody sees it who looks at the picture."""
    way = directions.way(at(scene, part, LENS), at(scene, subject, place))
    across, up, ahead = looking_of(scene, part).parts_of(way)
    return across, up, negative(ahead)


def _limited(sides: Sides, part: str) -> Limited:
    limit = figure(natural(sides.proposed.bounds(part, REACH)), "m")
    return Limited(
        slug="hazard-distance",
        subject=one(part),
        inputs=_inputs(sides, part),
        sure=say(
            "people can come into its light within {limit} of its lens, where it harms the eye: hang it higher, or "
            "keep everybody out of that zone, as its maker and local rules say",
            limit=limit,
        ),
        unsure=say(
            "whether everybody is kept out of its light within {limit} of its lens, where it harms the eye, cannot be "
            "said: hang it high enough, or fence the zone off, as its maker and local rules say",
            limit=limit,
        ),
    )


def _inputs(sides: Sides, part: str) -> Sequence[Input]:
    scene = sides.proposed
    is_placed = scene.is_given(part, LENS)
    names = (REACH, BARRIER, LENS, *((PLACE, *TURNS) if is_placed else ()))
    visitors = inputs(sides, THE_VENUE, VISITORS) if scene.states(THE_VENUE, VISITORS) else ()
    return (*inputs(sides, part, *names), *inputs_of_state(sides, part), *visitors)


def _told(sides: Sides, part: str) -> Iterator[Effect]:
    """How far its light harms, where that or how low it comes is another than documented."""
    scene = sides.proposed
    after, low = natural(scene.bounds(part, REACH)), _lowest(scene, part)
    was_there = sides.was_there(part)
    before = natural(sides.documented.bounds(part, REACH)) if was_there else None
    if was_there and before == after and low == _lowest(sides.documented, part):
        return
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=scene.called(REACH),
        unit="m",
        documented=in_unit(before, "m")
        if before is not None and sides.documented.states(part, REACH)
        else None,
        proposed=in_unit(after, "m"),
        sentence=_words(low),
        source=ZONE,
        missing=scene.unknown(part, LENS, PLACE, *TURNS, BARRIER),
    )


def _words(low: Interval) -> Message:
    if low.low is None or low.high is None:
        return say("so far from its lens its light harms the eye even in a short look; heed the cautions")
    return say(
        "so far from its lens its light harms the eye even in a short look; it comes down to {height} above the floor "
        "there; heed the cautions",
        height=figure(low, "m", 2),
    )
