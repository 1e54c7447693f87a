"""What is to be judged: each subject and characteristic that changed or that an instruction speaks of."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from intent.language.locale import ENGLISH
from intent.language.message import Message, Words, named, say
from intent.model.assertions import Aggregate, Assertion
from intent.model.naming import subject_name
from intent.model.phrasing import characteristic_words
from intent.model.subject import Subject, several
from intent.model.work import Instruction
from intent.names import PRESENCE, THE_VENUE, THE_WORK
from intent.variance.case import Case
from intent.variance.scopes import subject_called, subject_of
from intent.vocabulary.terms import Characteristic

EachIndex = Mapping[tuple[str, str], Sequence[Instruction]]
"""Lines that speak of a subject by itself, by subject and IRI of the characteristic."""


class TopicKind(StrEnum):
    EACH = "each"
    PRESENCE = "presence"
    AGGREGATE = "aggregate"


@dataclass(frozen=True, slots=True, kw_only=True)
class Topic:
    """One thing to be judged: a characteristic of a subject, with the instructions that speak of it."""

    kind: TopicKind
    subject: Subject
    members: tuple[str, ...]
    """The names by which the states are asked: identifiers, `the work`, `the venue`."""
    name: Words
    """The characteristic, or what an aggregate is called."""
    lines: tuple[Instruction, ...]
    characteristic: Characteristic | None = None
    assertion: Assertion | None = None
    """Of an aggregate: what is to be computed."""
    counters: tuple[Instruction, ...] = ()
    """Of presence: the `number` instructions, which decide where no presence instruction does."""

    @property
    def said_of(self) -> Message:
        """What to call its value: `technology of M1`."""
        return say(
            "{characteristic} of {subject}", characteristic=self.name, subject=subject_name(self.subject)
        )

    @property
    def order(self) -> str:
        """By what the rows of a subject are ordered, whatever language they are told in."""
        return ENGLISH.say(self.name)


def index_lines(case: Case) -> EachIndex:
    index: dict[tuple[str, str], list[Instruction]] = {}
    for line in case.work.instructions:
        if line.assertion.aggregate is Aggregate.EACH and line.assertion.characteristic:
            for member in case.members[line.identifier]:
                index.setdefault((member, line.assertion.characteristic), []).append(line)
    return index


def topics_of(case: Case, index: EachIndex) -> Iterator[Topic]:
    """Every topic, in the order of the work; additions, the work, the venue and the aggregates after the parts."""
    omitted = {omission.part for omission in case.installation.omissions}
    added = {addition.identifier for addition in case.installation.additions}
    spoken: dict[str, list[str]] = {}
    for subject, characteristic in index:
        spoken.setdefault(subject, []).append(characteristic)
    for subject in _subjects(case):
        if subject in omitted or subject in added or (subject, PRESENCE) in index:
            yield _presence(case, index, subject)
        if subject in omitted:
            continue
        concerned = dict.fromkeys([*_changed(case, subject, added), *spoken.get(subject, ())])
        for iri in concerned:
            if iri != PRESENCE and iri in case.vocabulary.characteristics:
                yield _each(case, index, subject, case.vocabulary.characteristics[iri])
    yield from _aggregates(case)


def _subjects(case: Case) -> Iterator[str]:
    yield from (part.identifier for part in case.work.parts)
    yield from (addition.identifier for addition in case.installation.additions)
    yield from (material.identifier for material in case.work.material)
    yield from (THE_WORK, THE_VENUE)


def _changed(case: Case, subject: str, added: set[str]) -> Iterator[str]:
    """The characteristics that the proposal touches; of a device that arrives also those that count unasked."""
    if subject in added or subject == THE_VENUE:
        return
    before, after = case.documented.statements.get(subject, {}), case.proposed.statements.get(subject, {})
    if before is not after:
        for iri in dict.fromkeys([*before, *after]):
            if before.get(iri) != after.get(iri):
                yield iri
    if subject in case.substituted:
        part = case.scopes.documented.every[subject]
        for characteristic in case.counting_unasked:
            if case.vocabulary.applies(characteristic, part.kind.iri):
                yield characteristic.iri


def _each(case: Case, index: EachIndex, subject: str, characteristic: Characteristic) -> Topic:
    lines = tuple(index.get((subject, characteristic.iri), ()))
    return Topic(
        kind=TopicKind.EACH,
        subject=subject_called(subject),
        members=(subject,),
        name=named(characteristic),
        lines=lines,
        characteristic=characteristic,
    )


def _presence(case: Case, index: EachIndex, subject: str) -> Topic:
    presence = case.vocabulary.characteristics[PRESENCE]
    counters = tuple(
        line
        for line in case.work.instructions
        if line.assertion.aggregate is Aggregate.NUMBER and subject in case.members[line.identifier]
    )
    lines = tuple(index.get((subject, PRESENCE), ()))
    return Topic(
        kind=TopicKind.PRESENCE,
        subject=subject_called(subject),
        members=(subject,),
        name=named(presence),
        lines=lines,
        characteristic=presence,
        counters=counters,
    )


def _aggregates(case: Case) -> Iterator[Topic]:
    """One topic for all the instructions that speak of the same aggregate of the same members."""
    grouped: dict[tuple[object, ...], list[Instruction]] = {}
    for line in case.work.instructions:
        assertion = line.assertion
        if assertion.aggregate is not Aggregate.EACH:
            held = frozenset(case.members[line.identifier])
            key = (assertion.aggregate, assertion.characteristic, assertion.relation, assertion.other, held)
            grouped.setdefault(key, []).append(line)
    yield from _told_apart(case, [_aggregate_topic(case, lines) for lines in grouped.values()])


def _aggregate_topic(case: Case, lines: Sequence[Instruction]) -> Topic:
    first = min(lines, key=lambda line: line.identifier)
    members = case.members[first.identifier]
    subject = subject_of(_in_order(case, first), case.work, first.assertion.scope)
    return Topic(
        kind=TopicKind.AGGREGATE,
        subject=subject if subject.is_named_by_members else replace(subject, members=members),
        members=members,
        name=characteristic_words(first.assertion, case.vocabulary),
        lines=tuple(lines),
        characteristic=case.vocabulary.characteristics.get(first.assertion.characteristic or ""),
        assertion=first.assertion,
    )


def _told_apart(case: Case, topics: Sequence[Topic]) -> Iterator[Topic]:
    """Of wholes that would be called alike, a group and its parts listed say, what is no group goes by its parts."""
    called = Counter((topic.subject.written, topic.name) for topic in topics)
    groups = {group.name for group in case.work.groups}
    for topic in topics:
        scopes = [line.assertion.scope for line in topic.lines]
        is_group = any(scope.names in {(name,) for name in groups} and not scope.excepted for scope in scopes)
        if called[(topic.subject.written, topic.name)] > 1 and not is_group:
            yield replace(topic, subject=several(topic.members))
        else:
            yield topic


def _in_order(case: Case, line: Instruction) -> tuple[str, ...]:
    held = case.breadths[line.identifier]
    return tuple(member for member in case.members[line.identifier] if member in held)
