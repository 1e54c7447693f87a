"""How far the light of lasers, lamps and projectors can harm people: the class or risk group that stands on the device.

What is to be heeded stands in the cautions, which follow class, risk group and lamp type.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.scene import Scene, Sides
from intent.language.message import Message, say
from intent.model.subject import one
from intent.names import term_iri
from intent.values.bounds import hull, point, surely_above
from intent.values.regions import Interval
from intent.variance.result import Effect, EffectTopic

CLASSES = say(
    "laser classes of IEC 60825-1, risk groups of IEC 62471 and, of projectors, IEC 62471-5, as they stand on the "
    "device; local law comes first"
)
STATED = ("laser-class", "risk-group")
SOURCES_OF_LIGHT = ("technology", "lamp-type")
LASER = "caution-laser"
"""What a technology or lamp type calls for that is a laser or has one inside."""


def beam_effects(sides: Sides) -> Iterator[Effect]:
    """Every lamp and projector of another class or group than documented, and lasers of which neither is said."""
    for part in sides.proposed.parts("display", "lamp"):
        name = part.identifier
        if sides.was_there(name) and not sides.touches(name):
            continue
        for characteristic in STATED:
            yield from _other(sides, name, characteristic)
        yield from _unsaid(sides.proposed, name)


def _other(sides: Sides, part: str, characteristic: str) -> Iterator[Effect]:
    before = sides.documented.stated_names(part, characteristic) if sides.was_there(part) else frozenset()
    scene = sides.proposed
    after = scene.stated_names(part, characteristic)
    if before == after:
        return
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=scene.called(characteristic),
        sentence=_words(sides, part, characteristic),
        source=CLASSES,
        missing=() if len(after) == 1 else (scene.called(characteristic),),
    )


def _words(sides: Sides, part: str, characteristic: str) -> Message:
    before, after = (_gravity(scene, part, characteristic) for scene in (sides.documented, sides.proposed))
    was, now = sides.documented.text(part, characteristic), sides.proposed.text(part, characteristic)
    if after is None:
        return say(
            "that of the documented device is {was}, and nobody says that of the one proposed", was=was
        )
    if before is None:
        return say("it is {now}, and nobody says that of a documented device: heed the cautions", now=now)
    if surely_above(after, before):
        return say(
            "it is {now}, where {was} is documented: its light can do more harm; heed the cautions",
            now=now,
            was=was,
        )
    if surely_above(before, after):
        return say("it is {now}, where {was} is documented: its light can do less harm", now=now, was=was)
    return say("it is {now}, where {was} is documented", now=now, was=was)


def _gravity(scene: Scene, part: str, characteristic: str) -> Interval | None:
    """How far the light can harm, of all that the class or group may be; none where none is stated."""
    concepts = [
        scene.vocabulary.concepts[term_iri(name)] for name in scene.stated_names(part, characteristic)
    ]
    return hull(point(concept.gravity) for concept in concepts) if concepts else None


def _unsaid(scene: Scene, part: str) -> Iterator[Effect]:
    if any(scene.states(part, name) for name in STATED) or not _may_be_a_laser(scene, part):
        return
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=scene.called("laser-class"),
        sentence=say(
            "it is a laser or is lit by one, and nobody says of which class or risk group: look on the device before "
            "it is put up"
        ),
        source=CLASSES,
        missing=tuple(scene.called(name) for name in STATED),
    )


def _may_be_a_laser(scene: Scene, part: str) -> bool:
    """Whether what is stated of its technology or lamp names a laser, perhaps among others."""
    concepts = scene.vocabulary.concepts
    names = (name for source in SOURCES_OF_LIGHT for name in scene.stated_names(part, source))
    return any(term_iri(LASER) in concepts[term_iri(name)].cautions for name in names)
