"""What else visitors can see or hear of a device is other than documented: what has no row and no effect of its own.

How hard a loss is to see stands in the vocabulary, so that a new characteristic is told without a line of code.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TypeAlias

from intent.effects.scene import Sides
from intent.effects.unsaid import Missing
from intent.language.message import Message, Words, named, say
from intent.model.subject import one
from intent.variance.change import change_of
from intent.variance.result import Effect, EffectTopic
from intent.vocabulary.terms import Characteristic

ON_COMPARISON = 2
"""How hard a loss may be to see that a visitor could notice; what takes measuring or asking is harder."""
STATED = say("what is stated of the devices")
Told: TypeAlias = frozenset[tuple[str, Words]]
"""What has an effect of its own: of which part, and what it is called."""


def unlike_effects(sides: Sides, effects: Iterable[Effect]) -> Iterator[Effect]:
    """An effect of each part whose device is another, or is altered, beside those that were found."""
    told = frozenset((part, effect.quantity) for effect in effects for part in effect.subject.members)
    for found in sides.proposed.parts():
        part = found.identifier
        if sides.was_there(part) and sides.touches(part):
            yield from _unlike(sides, part, found.kind.iri, told)


def _unlike(sides: Sides, part: str, kind: str, told: Told) -> Iterator[Effect]:
    case = sides.proposed.case
    others: list[Message] = []
    unsaid: list[Message] = []
    for characteristic in _noticeable(sides, part, kind, told):
        change = change_of(case, part, characteristic)
        if change.differs:
            others.append(_words(sides, part, characteristic))
        elif not change.is_unchanged:
            unsaid.append(named(characteristic))
    if others or unsaid:
        yield _effect(part, others, tuple(unsaid))


def _noticeable(sides: Sides, part: str, kind: str, told: Told) -> Iterator[Characteristic]:
    """What visitors may notice of a device, of which something is documented, and which has no row and no effect."""
    vocabulary = sides.proposed.vocabulary
    stated = sides.documented.state.statements.get(part, {})
    for iri, characteristic in vocabulary.characteristics.items():
        if (
            iri in stated
            and "device" in characteristic.bearers
            and characteristic.seen <= ON_COMPARISON
            and vocabulary.applies(characteristic, kind)
            and not sides.proposed.case.counts_unasked(part, characteristic)
            and (part, named(characteristic)) not in told
        ):
            yield characteristic


def _words(sides: Sides, part: str, characteristic: Characteristic) -> Message:
    return say(
        "{name}: {proposed} instead of {documented}",
        name=characteristic,
        documented=sides.documented.state.words(part, characteristic),
        proposed=sides.proposed.state.words(part, characteristic),
    )


def _effect(part: str, others: list[Message], unsaid: Missing) -> Effect:
    words = (
        say("other than documented: {others}", others=tuple(others))
        if others
        else say("whether it is as documented cannot be said")
    )
    return Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=say("what else is seen or heard of the device"),
        sentence=words,
        source=STATED,
        missing=unsaid,
    )
