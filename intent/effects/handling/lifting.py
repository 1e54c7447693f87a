"""Who lifts it: each lift that is other than documented, and each box from the floor, against the lifting equation.

Formula: `intent.formulas.niosh`, for one person; that people share a load is a rough rule.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.handling.travelling import Load, travelling_boxes
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.formulas.niosh import (
    METRIC,
    Lift,
    least_limit,
    lifting_index,
    people_needed,
    reach_around,
    recommended_limit,
)
from intent.language.figures import figure
from intent.language.message import Message, say, say_of
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import (
    ONE,
    ZERO,
    apart,
    between,
    known,
    minus,
    natural,
    point,
    scaled,
    smaller,
    surely_above,
    surely_within,
)
from intent.values.regions import Interval
from intent.values.units import in_unit
from intent.variance.result import Effect, EffectTopic

EQUATION = say(
    "revised NIOSH lifting equation (DHHS (NIOSH) 94-110), for one person, at most 0.2 lifts a minute; where nothing "
    "is given, to or from 75 cm, hands 20 cm + half the depth away (25 cm near the floor; 25 cm in all for each of "
    "several people), no twist; that several bear like shares is rough, and more than two common practice, no source"
)
KNUCKLES = point(Fraction(3, 4))
"""The height of a trolley or table, in metres, where a lift begins or ends of which nothing is given."""
LIGHT = point(least_limit())
"""What one person may lift, in kilograms, in whatever way the equation allows."""
PEOPLE = "people-to-lift"
GRIPS: Mapping[str, str] = {"grip-good": "good", "grip-fair": "fair", "grip-poor": "poor"}
"""What the equation calls each grip; a grip of which nothing is said may be any."""
INDEX = say("lifting index")
UNSURE = say("whether one person should lift it cannot be said from what is given")
HALF = Fraction(1, 2)
WAY_IN = (
    "door-width",
    "door-height",
    "corridor-width",
    "lift-load-limit",
    "lift-width",
    "stairs",
    "floor-load-limit",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lifting:
    """A lift: its weight, and what one person should lift where it begins and where it ends, in kilograms."""

    weight: Interval
    origin: Interval
    destination: Interval
    index: Interval
    """The weight over the lesser of the two."""
    held_close: tuple[Lift, Lift]
    """Both ends of it for one of several people, who stands close to it."""

    @property
    def close(self) -> Interval:
        """What each of several people should lift."""
        begin, end = (recommended_limit(lift) for lift in self.held_close)
        return smaller(begin, end)

    def people(self) -> Interval | None:
        """How many people; none where nothing may be lifted so by anybody."""
        close = self.close
        return None if close.high == 0 else people_needed(self.index, lifting_index(self.weight, close))

    @property
    def is_too_much(self) -> bool:
        """Whether it is surely more than one person should lift, or nothing may be lifted so."""
        return 0 in (self.origin.high, self.destination.high) or surely_above(self.index, ONE)

    @property
    def is_fine(self) -> bool:
        """Whether one person may surely lift it."""
        return surely_within(self.index, ONE) or surely_within(self.weight, LIGHT)


def lifting_effects(sides: Sides) -> Iterator[Effect]:
    """Each lift into its place that is other than documented; each box, where the venue says how it is reached."""
    proposed = sides.proposed
    for part in proposed.one_a_device(part.identifier for part in proposed.parts()):
        if not sides.was_there(part) or _is_other(sides, part):
            yield from _part(sides, part)
    if any(proposed.states(THE_VENUE, name) for name in WAY_IN):
        for box in travelling_boxes(sides):
            yield from _box(box)


def _is_other(sides: Sides, part: str) -> bool:
    """Whether another device comes, it is heavier, or it goes to another height."""
    if not sides.touches(part):
        return False
    before, after = sides.documented, sides.proposed
    return before.device(part) != after.device(part) or any(
        before.bounds(part, name) != after.bounds(part, name)
        for name in ("weight", "height", "carrying-height")
    )


def lift_of(scene: Scene, part: str) -> Lifting:
    """The lift of a device into its place; everything that it could be where its place or depth is not given."""
    begin = (
        natural(scene.bounds(part, "carrying-height")) if scene.states(part, "carrying-height") else KNUCKLES
    )
    depth = natural(scene.bounds(part, "outer-depth"))
    return _lifting(scene, part, depth=depth, begin=begin, end=_place(scene, part))


def _place(scene: Scene, part: str) -> Interval:
    """How high the hands are that set it down: under it where its height is given, else at its middle."""
    middle = scene.bounds(part, "height")
    if scene.is_given(part, "outer-height"):
        middle = minus(middle, scaled(scene.bounds(part, "outer-height"), HALF))
    return natural(middle)


def _lifting(scene: Scene, subject: str, *, depth: Interval, begin: Interval, end: Interval) -> Lifting:
    """A lift between two heights, of a load of some depth, all in metres; the equation asks for centimetres."""
    low, high, deep = (in_unit(length, "cm") for length in (begin, end, depth))
    travel, turn = apart(high, low), _twist(scene, subject)
    grips = frozenset(GRIPS[name] for name in scene.names(subject, "grip") if name in GRIPS)
    reach = natural(scene.bounds(subject, "reach")) if scene.states(subject, "reach") else None
    measured = None if reach is None else in_unit(reach, "cm")

    def posture(height: Interval, out: Interval) -> Lift:
        return Lift(reach=measured or out, height=height, travel=travel, turn=turn, grips=grips)

    nearest = point(METRIC.nearest)
    origin, destination = (recommended_limit(posture(at, reach_around(deep, at))) for at in (low, high))
    weight = natural(scene.bounds(subject, "weight"))
    return Lifting(
        weight=weight,
        origin=origin,
        destination=destination,
        index=lifting_index(weight, smaller(origin, destination)),
        held_close=(posture(low, nearest), posture(high, nearest)),
    )


def _twist(scene: Scene, subject: str) -> Interval:
    """To the left or to the right, whichever is less; none where nothing is given."""
    if not scene.states(subject, "twist"):
        return ZERO
    turn = known(scene.bounds(subject, "twist"))
    return between(0, 180) if turn is None else point(min(turn, 360 - turn))


def _part(sides: Sides, part: str) -> Iterator[Effect]:
    scene = sides.proposed
    after = lift_of(scene, part)
    before = lift_of(sides.documented, part) if sides.was_there(part) else None
    if before == after:
        return
    if after.is_too_much or (after.is_fine and before is not None and before.is_too_much):
        was = before if before is not None and before.weight.low else None
        index = None if was is None else _told(was.index)
        yield Effect(
            topic=EffectTopic.HANDLING,
            subject=one(part),
            quantity=INDEX,
            documented=index,
            proposed=_told(after.index),
            sentence=_index_words(after),
            source=EQUATION,
            missing=_missing(scene, part),
        )
        yield _people(scene, part, before=None if was is None else was.people(), lifting=after)
    elif not after.is_fine:
        yield _unsure(part, _missing(scene, part))


def _told(found: Interval) -> Interval | None:
    """A figure, unless nothing may be lifted so at all."""
    return None if found.low is None else found


def _unsure(subject: str, missing: Missing) -> Effect:
    return Effect(
        topic=EffectTopic.HANDLING,
        subject=one(subject),
        quantity=INDEX,
        sentence=UNSURE,
        source=EQUATION,
        missing=missing,
    )


def _people(scene: Scene, subject: str, *, before: Interval | None, lifting: Lifting) -> Effect:
    after = lifting.people()
    stated = scene.bounds(subject, PEOPLE) if scene.states(subject, PEOPLE) else None
    words = _people_words(after)
    if stated is not None and after is not None and surely_above(after, stated):
        words = say(
            "{stated} said to be enough, and the equation asks for at least {people}; local rules prevail",
            stated=figure(stated),
            people=figure(point(after.low or 0)),
        )
    return Effect(
        topic=EffectTopic.HANDLING,
        subject=one(subject),
        quantity=scene.label(PEOPLE),
        documented=before,
        proposed=after,
        sentence=words,
        source=EQUATION,
    )


def _index_words(lifting: Lifting) -> Message:
    most = [limit.high or Fraction(0) for limit in (lifting.origin, lifting.destination)]
    if 0 in most:
        return say("one person cannot lift it there within the reach of the equation")
    return say(
        "it weighs {weight}; one person should lift at most {origin} where it begins, {destination} where it ends",
        weight=figure(lifting.weight, "kg"),
        origin=figure(point(most[0]), "kg"),
        destination=figure(point(most[1]), "kg"),
    )


def _people_words(people: Interval | None) -> Message:
    if people is None:
        return say(
            "not by hand from the floor: plan a platform or lifting aid, as those in charge judge; local rules prevail"
        )
    least = people.low or Fraction(1)
    if least > 2:
        return say_of(
            int(least),
            "at least {people} person, and rather a lifting aid: they share the load only roughly; local rules prevail",
            "at least {people} people, and rather a lifting aid: they share the load only roughly; local rules prevail",
            people=figure(point(least)),
        )
    if least == 2:
        return say("at least two people, who share the load only roughly; local rules prevail")
    return say("one person may lift it, by the equation; local rules prevail")


def _missing(scene: Scene, part: str) -> Missing:
    """What a closer answer would need; the depth only where nobody has measured how far out the hands are."""
    depth = () if scene.states(part, "reach") else ("outer-depth",)
    return scene.unknown(part, "weight", *depth, "height", "grip")


def _box(box: Load) -> Iterator[Effect]:
    """A box from the floor to the height of a trolley, held by the middle of its height, a shorter side to the body."""
    scene, name = box.scene, box.identifier
    if surely_within(box.weight, LIGHT):
        return
    length, width, height = box.extent
    held = natural(box.bounds("carrying-height")) if scene.states(name, "carrying-height") else None
    begin = held or scaled(height, HALF)
    lifting = _lifting(scene, name, depth=smaller(length, width), begin=begin, end=KNUCKLES)
    if lifting.is_too_much:
        stated = scene.bounds(name, PEOPLE) if scene.states(name, PEOPLE) else None
        yield _people(scene, name, before=stated, lifting=lifting)
    elif not lifting.is_fine and box.unknown("weight"):
        yield _unsure(name, box.unknown("weight"))
