"""The installation that an expectation is about: one day on which a single value differs, with the answers given."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass, replace

from intent.model.assertions import ScopeKind, Statements
from intent.model.expectation import Expectation, GivenAnswer
from intent.model.installation import Attestation, Change, Consent, Installation, Omission, Substitution
from intent.model.meaning import given_value
from intent.model.work import Instruction, Work
from intent.names import ABSENT, PRESENCE, THE_VENUE, THE_WORK
from intent.values.dates import DaySpan
from intent.values.sets import Labels
from intent.variance.case import lay_out
from intent.variance.people import chain
from intent.variance.topics import TopicKind, index_lines, topics_of
from intent.variance.two_states import documented_state, is_of_device


@dataclass(frozen=True, slots=True, kw_only=True)
class ExpectedCase:
    """An expectation as an installation, and what it is of."""

    expectation: Expectation
    installation: Installation
    characteristic: str
    """The IRI of the one that differs."""
    members: tuple[str, ...]
    """The names by which states are asked: the parts, or the work, or the venue."""
    unasked: tuple[str, ...] = ()
    """The people whose answer is given to no instruction in particular, and whom none of the row's asks."""


def expected_case(work: Work, expectation: Expectation, today: datetime.date) -> ExpectedCase:
    """The case of an expectation, on its own day or else today."""
    characteristic = next(iter(expectation.value), "")
    members = members_of(work, expectation)
    day = expectation.on.first if expectation.on else today
    bare = _differing(work, expectation, members, day)
    lines = _lines_of_rows(work, bare, members, characteristic)
    answers = [(answer, _answered(work, answer, lines)) for answer in expectation.given]
    consents = [(answer, to) for answer, to in answers if answer.person is not None]
    facts = [answer for answer in expectation.given if answer.person is None]
    return ExpectedCase(
        expectation=expectation,
        installation=replace(
            bare,
            consents=tuple(_consent(expectation, answer, to, bare.dates) for answer, to in consents if to),
            attestations=tuple(_attestation(expectation, answer, bare.dates) for answer in facts),
        ),
        characteristic=characteristic,
        members=members,
        unasked=tuple(answer.person or "" for answer, to in consents if not to),
    )


def members_of(work: Work, expectation: Expectation) -> tuple[str, ...]:
    """What an expectation is of: the part, the parts of the group, the work or the venue."""
    if expectation.scope.kind is ScopeKind.NAMES:
        names = set(expectation.scope.names)
        return tuple(part.identifier for part in work.parts if names & {part.identifier, part.group})
    return (THE_WORK,) if expectation.scope.kind is ScopeKind.WORK else (THE_VENUE,)


def _differing(
    work: Work, expectation: Expectation, members: Iterable[str], day: datetime.date
) -> Installation:
    """An installation of one day with nothing but the value; what is of a device comes with another device."""
    bare = Installation(
        iri=expectation.iri, title="", dates=DaySpan(day, day, day.isoformat()), work=work.iri
    )
    value, iri = expectation.value, expectation.iri
    match expectation.scope.kind:
        case ScopeKind.WORK:
            return replace(bare, work_statements=value)
        case ScopeKind.VENUE:
            return replace(bare, venue_statements=value)
    if PRESENCE in value:
        left_out = members if presence_of(work, value) == {ABSENT} else ()
        return replace(bare, omissions=tuple(Omission(iri, part) for part in left_out))
    if not any(is_of_device(characteristic, work.vocabulary) for characteristic in value):
        return replace(bare, changes=tuple(Change(iri=iri, part=part, statements=value) for part in members))
    documented = documented_state(work).statements
    return replace(
        bare,
        substitutions=tuple(
            Substitution(
                iri=iri, part=part, statements={**_of_device(work, documented.get(part, {})), **value}
            )
            for part in members
        ),
    )


def presence_of(work: Work, value: Statements) -> frozenset[str]:
    """Whether a part is to be there, by the IRIs of the terms: one of them, or both where nobody says which."""
    given = given_value(value.get(PRESENCE), work.vocabulary.characteristics[PRESENCE], work.vocabulary)
    return given.names if isinstance(given, Labels) else frozenset()


def _of_device(work: Work, statements: Statements) -> Statements:
    return {iri: stated for iri, stated in statements.items() if is_of_device(iri, work.vocabulary)}


def _lines_of_rows(
    work: Work, installation: Installation, members: Iterable[str], characteristic: str
) -> tuple[Instruction, ...]:
    """The instructions that speak of the value by itself."""
    case, held = lay_out(work, installation), set(members)
    found = [
        line
        for topic in topics_of(case, index_lines(case))
        if topic.kind is not TopicKind.AGGREGATE and held & set(topic.members)
        if topic.characteristic is not None and topic.characteristic.iri == characteristic
        for line in (*topic.lines, *topic.counters)
    ]
    return tuple({line.identifier: line for line in found}.values())


def _answered(work: Work, answer: GivenAnswer, lines: Iterable[Instruction]) -> tuple[str, ...]:
    """The instructions that an answer is to; where it names none, those that ask the person or a predecessor."""
    if answer.to:
        return answer.to
    return tuple(
        line.identifier
        for line in lines
        if any(person.identifier == answer.person for asked in line.consents for person in chain(work, asked))
    )


def _consent(expectation: Expectation, answer: GivenAnswer, to: tuple[str, ...], day: DaySpan) -> Consent:
    return Consent(iri=expectation.iri, person=answer.person or "", to=to, answer=answer.holds, date=day)


def _attestation(expectation: Expectation, answer: GivenAnswer, day: DaySpan) -> Attestation:
    return Attestation(iri=expectation.iri, fact=answer.fact, holds=answer.holds, date=day)
