"""The one rule of every limit: what is asked of something, held against what it bears, takes or lets through.

A limit is surely met (``Answer.IN``), surely not (``OUT``), or open; one that nobody stated is not checked. A demand of
which nothing is known may be anything, so a blank, a range and a broader term never come out better than a value.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from intent.effects.scene import Scene, Sides
from intent.language.message import Words
from intent.model.subject import WHOLE_VENUE, WHOLE_WORK, Subject, one
from intent.names import THE_VENUE, THE_WORK, term_iri
from intent.values.bounds import surely_above, surely_within
from intent.values.regions import Interval, Region
from intent.values.sets import Answer, ValueSet
from intent.variance.obstacle import Need, Obstacle, Unchecked
from intent.variance.two_states import is_of_device
from intent.vocabulary.terms import Vocabulary

FEW = 2
"""A term with no more names than this, its own among them, is one thing by itself; one with more gathers others."""


def at_most(demand: Interval, limit: Interval) -> Answer:
    """Whether a demand stays within a limit: surely, surely not, or open."""
    if surely_within(demand, limit):
        return Answer.IN
    return Answer.OUT if surely_above(demand, limit) else Answer.OPEN


def at_least(demand: Interval, limit: Interval) -> Answer:
    """Whether there is as much as is asked for."""
    return at_most(limit, demand)


def room_for(clearance: Interval) -> Answer:
    """Whether something goes through with so much to spare; with nothing to spare, that is open: measure again."""
    if clearance.low is not None and clearance.low > 0:
        return Answer.IN
    return Answer.OUT if clearance.high is not None and clearance.high < 0 else Answer.OPEN


def within(demand: Interval, band: Interval) -> Answer:
    """Whether a demand lies in a band that is known, whose ends count."""
    if demand.low is not None and demand.high is not None and band.holds(demand):
        return Answer.IN
    return Answer.OUT if demand.meet(band).is_empty else Answer.OPEN


def every(answers: Iterable[Answer]) -> Answer:
    """Whether all of several limits are met."""
    found = set(answers)
    return next((answer for answer in (Answer.OUT, Answer.OPEN) if answer in found), Answer.IN)


def any_of(answers: Iterable[Answer]) -> Answer:
    """Whether one way of several will do."""
    return every(answer.negated for answer in answers).negated


def all_alike(answers: Iterable[Answer]) -> Answer:
    """The answer that all have, where nobody says which of them counts; else open."""
    found = set(answers)
    return found.pop() if len(found) == 1 else Answer.OPEN


@dataclass(frozen=True, slots=True, kw_only=True)
class Input:
    """One value on which it depends whether a limit is met: of a demand, or the limit itself."""

    need: Need
    """What it is called, and of what."""
    is_exact: bool
    """Whether it is one value; else it may be what would have to be known."""
    is_changed: bool
    """Whether the proposal changes it, or may; what belongs to the venue always counts as changed."""


def inputs(sides: Sides, subject: str, *characteristics: str) -> tuple[Input, ...]:
    """Values of a part, material, the work or the venue, as proposed."""
    return tuple(_input(sides, subject, name) for name in characteristics)


def inputs_of_state(sides: Sides, part: str) -> tuple[Input, ...]:
    """Whether a part is switched on, where somebody says anything of it."""
    says = any(scene.states(part, "power-state") for scene in (sides.documented, sides.proposed))
    return inputs(sides, part, "power-state") if says else ()


def inputs_of_box(scene: Scene, box: str, *characteristics: str) -> tuple[Input, ...]:
    """Values of a box, in the scene in which boxes are asked about; what travels to a venue always counts."""
    return tuple(
        Input(
            need=Need(scene.called(name), one(box)),
            is_exact=_is_exact(scene.state.value(box, scene.characteristic(name)), scene.vocabulary),
            is_changed=True,
        )
        for name in characteristics
    )


def _input(sides: Sides, subject: str, name: str) -> Input:
    scene = sides.proposed
    characteristic = scene.characteristic(name)
    after = scene.state.value(subject, characteristic)
    is_exact = _is_exact(after, scene.vocabulary)
    return Input(
        need=Need(scene.called(name), subject_of(subject)),
        is_exact=is_exact,
        is_changed=subject == THE_VENUE
        or (subject in scene.state.devices and not sides.was_there(subject))
        or sides.documented.state.value(subject, characteristic) != after
        or (not is_exact and _has_another_bearer(sides, subject, name)),
    )


def _has_another_bearer(sides: Sides, subject: str, name: str) -> bool:
    """Whether the value is of another device than the documented one: a range of two devices is not one value."""
    scene = sides.proposed
    is_other = subject in scene.case.substituted or sides.documented.device(subject) != scene.device(subject)
    return is_other and is_of_device(term_iri(name), scene.vocabulary)


def _is_exact(value: ValueSet, vocabulary: Vocabulary) -> bool:
    """Whether a value is one number, or a name that does not gather others."""
    if isinstance(value, Region) or value.all_but:
        return value.is_point
    whole = any(vocabulary.narrower.get(name, frozenset({name})) == value.names for name in value.names)
    return whole and len(value.names) <= FEW


def subject_of(name: str) -> Subject:
    """The work and the venue by their names, all else by its identifier."""
    return {THE_WORK: WHOLE_WORK, THE_VENUE: WHOLE_VENUE}.get(name) or one(name)


@dataclass(frozen=True, slots=True, kw_only=True)
class Limited:
    """What is said of a limit that is not surely met: of what, in which words, and what that rests on."""

    slug: str
    subject: Subject
    inputs: Sequence[Input]
    """Of the demand and of the limit; the first is named where none of them is inexact by itself."""
    sure: Words
    """What is said where the limit is surely not met."""
    unsure: Words
    """What is said where that is open."""
    names_subject: bool = False


def obstacles(sides: Sides, answer: Answer, limited: Limited) -> Iterator[Obstacle]:
    """An obstacle where a stated limit is not surely met; nothing where it is."""
    if answer is Answer.IN:
        return
    is_sure = answer is Answer.OUT
    yield Obstacle(
        slug=limited.slug,
        text=limited.sure if is_sure else limited.unsure,
        subject=limited.subject,
        is_sure=is_sure,
        is_as_documented=not any(each.is_changed for each in limited.inputs),
        missing=() if is_sure else _lacking(limited.inputs),
        ask=sides.asks,
        names_subject=limited.names_subject,
    )


def _lacking(found: Sequence[Input]) -> tuple[Need, ...]:
    """What is not known exactly; where all is, the first, of which more would have to be known than its value."""
    inexact = [each.need for each in found if not each.is_exact]
    return tuple(dict.fromkeys(inexact)) or (found[0].need,)


def unchecked(sides: Sides, subject: str, *characteristics: str) -> Iterator[Unchecked]:
    """The limits, of those that the venue or a part might have, that nobody stated."""
    scene = sides.proposed
    for name in characteristics:
        if not scene.states(subject, name):
            yield Unchecked(scene.called(name), subject_of(subject))
