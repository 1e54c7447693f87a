"""Who lifts it: each lift that is other than documented, each box from the floor, and what was always a heavy lift."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.handling.manual_lifting import LIGHT, Lifting, lift_of_box, lift_of_part
from intent.effects.handling.travelling import Load, travelling_boxes
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.language.figures import figure
from intent.language.message import Message, say, say_of
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import point, surely_above, surely_within
from intent.values.regions import Interval
from intent.variance.obstacle import Obstacle
from intent.variance.result import Effect, EffectTopic

EQUATION = say(
    "revised NIOSH lifting equation (DHHS (NIOSH) 94-110), for one person, at most 0.2 lifts a minute; where nothing "
    "is given, to or from 75 cm, a box held at half its height, hands 20 cm + half the depth away (25 cm near the "
    "floor; 25 cm in all for each of several people), no twist; that several bear like shares is rough, and more than "
    "two common practice, no source"
)
PEOPLE, HANDS = "people-to-lift", "carrying-height"
INDEX = say("lifting index")
MOST_BY_HAND = 4
"""People who can stand at one thing and lift together (common practice, no source)."""
HANDLED_FROM = Fraction(3)
"""Kilograms below which lifting by hand is not looked at (ISO 11228-1:2021, 1, from memory)."""
UNSURE = say("whether one person should lift it cannot be said from what is given")
WAY_IN = (
    "door-width",
    "door-height",
    "corridor-width",
    "lift-load-limit",
    "lift-width",
    "stairs",
    "floor-load-limit",
)


def lifting_effects(sides: Sides) -> Iterator[Effect | Obstacle]:
    """Each lift into its place, and each box, where the venue says how it is reached."""
    proposed = sides.proposed
    for part in proposed.one_a_device(part.identifier for part in proposed.parts()):
        before = lift_of_part(sides.documented, part) if sides.was_there(part) else None
        after = lift_of_part(proposed, part)
        if before is not None and (before == after or not _is_other(sides, part)):
            yield from _as_documented(sides, part, after)
        else:
            yield from _part(sides, part, before=before, after=after)
    if any(proposed.states(THE_VENUE, name) for name in WAY_IN):
        for box in travelling_boxes(sides):
            yield from _box(box)


def _is_other(sides: Sides, part: str) -> bool:
    """Whether the lift differs from the documented one: another device, another weight, or another height."""
    if not sides.touches(part):
        return False
    before, after = sides.documented, sides.proposed
    return before.device(part) != after.device(part) or any(
        before.bounds(part, name) != after.bounds(part, name)
        for name in ("weight", "height", "carrying-height")
    )


def _as_documented(sides: Sides, part: str, lifting: Lifting) -> Iterator[Obstacle]:
    """A lift that nobody should make alone, though nothing of it is new: whoever borrows the work is to know of it."""
    if lifting.weight.low and lifting.weight.low >= HANDLED_FROM and lifting.is_too_much:
        yield Obstacle(
            slug="heavy-lift",
            text=_index_words(lifting),
            subject=one(part),
            is_as_documented=True,
            ask=sides.asks,
        )


def _part(sides: Sides, part: str, *, before: Lifting | None, after: Lifting) -> Iterator[Effect]:
    scene = sides.proposed
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
    """The index, but none where the equation allows no lift at all and so gives no number."""
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


def _people(
    scene: Scene, subject: str, *, before: Interval | None, lifting: Lifting, missing: Missing = ()
) -> Effect:
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
        quantity=scene.called(PEOPLE),
        documented=before,
        proposed=after,
        sentence=words,
        source=EQUATION,
        missing=missing,
    )


def _index_words(lifting: Lifting) -> Message:
    most = [limit.high or Fraction(0) for limit in (lifting.origin, lifting.destination)]
    if 0 in most:
        return say(
            "the equation allows no lift by one person there: from a ladder, a platform or with an aid, as those in "
            "charge judge"
        )
    return say(
        "it weighs {weight}; one person should lift at most {origin} when taking it up, {destination} when setting it "
        "down",
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
    if least > MOST_BY_HAND:
        return say(
            "not by hand: more people than can lift one thing together; plan a lifting aid or hoist and people trained "
            "for it; local rules prevail"
        )
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
    """What a closer answer would need; the depth only where no reach is stated, for the reach is worked out from it."""
    depth = () if scene.states(part, "reach") else ("outer-depth",)
    needed = ("weight", *depth, "height", "grip", HANDS)
    return scene.unknown(part, *needed)


def _box(box: Load) -> Iterator[Effect]:
    """How many people it takes to lift a box from the floor to the height of a trolley."""
    if surely_within(box.weight, LIGHT):
        return
    scene, name = box.scene, box.identifier
    lifting = lift_of_box(box)
    if lifting.is_too_much:
        stated = scene.bounds(name, PEOPLE) if scene.states(name, PEOPLE) else None
        yield _people(scene, name, before=stated, lifting=lifting, missing=box.unknown(HANDS))
    elif not lifting.is_fine and box.unknown("weight"):
        yield _unsure(name, box.unknown("weight", HANDS))
