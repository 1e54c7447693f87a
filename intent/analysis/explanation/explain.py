"""What governs a part, a group or the whole work on a day: which instructions, for which values, in whose words."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.analysis.asked_about import characteristic_named, every_subject, find_members, members_named
from intent.analysis.examination.findings import members_words
from intent.analysis.examination.topic_claims import TopicClaims, topics_claimed
from intent.analysis.explanation.explained_duty import ExplainedDuty, explained_duty
from intent.analysis.explanation.explained_line import Explained, explained_line
from intent.analysis.explanation.governing import Stretch, stretches
from intent.language.message import Words, named, say
from intent.model.assertions import Aggregate, ScopeKind
from intent.model.installation import Installation
from intent.model.naming import subject_name
from intent.model.phrasing import scope_words
from intent.model.work import Instruction, Work
from intent.names import THE_VENUE
from intent.values.dates import DaySpan
from intent.variance.case import Case, lay_out
from intent.variance.result import RowKey
from intent.variance.scopes import subject_called
from intent.vocabulary.terms import Characteristic


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """All that is said of one characteristic of subjects that are governed alike."""

    subject: Words
    """A part with its name, a group, several parts, the work or the venue."""
    characteristic: Words
    documented: tuple[tuple[Words, Words], ...]
    """What is documented, each value with whose it is; of one value alone, with nobody named."""
    instructions: tuple[Explained, ...]
    stretches: tuple[Stretch, ...] = ()
    """The values as the instructions in force part them, with what they say of each."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Account:
    """What governs what was asked about, on a day."""

    work: Work
    day: datetime.date
    explanations: tuple[Explanation, ...]
    duties: tuple[ExplainedDuty, ...] = ()
    """What is to be done for a showing; of the whole work alone."""


def explain(work: Work, subject: str | None, characteristic: str | None, day: datetime.date) -> Account:
    """What governs a subject on a day: a part, a group, material, `the work`, `the venue`; the whole where none.

    A characteristic may stand in the subject's place: then it is that of every part. Raises `UnknownName`.
    """
    is_bare = subject is not None and characteristic is None and not find_members(work, subject)
    if is_bare and work.vocabulary.find_characteristic(subject or "") is not None:
        subject, characteristic = None, subject
    members = members_named(work, subject) if subject else every_subject(work)
    wanted = characteristic_named(work, characteristic) if characteristic else None
    case = lay_out(work, Installation(iri="", title="", dates=DaySpan(day, day), work=work.iri))
    topics = [topic for topic in topics_claimed(case) if wanted is None or topic.characteristic == wanted]
    singles = _singles(case, topics, members, wanted, day)
    wholes = _wholes(case, topics, members, day)
    is_whole = subject is None and characteristic is None
    return Account(
        work=work,
        day=day,
        explanations=(*singles, *wholes),
        duties=tuple(explained_duty(work, duty, day) for duty in work.duties) if is_whole else (),
    )


def _singles(
    case: Case,
    topics: Sequence[TopicClaims],
    members: Sequence[str],
    wanted: Characteristic | None,
    day: datetime.date,
) -> Iterator[Explanation]:
    """What is said of each by itself; those governed alike are told together.

    Of one alone, what is asked for or documented is told even where nobody speaks of it.
    """
    spoken: dict[tuple[str, str], list[TopicClaims]] = {}
    for topic in topics:
        if topic.aggregate is Aggregate.EACH and topic.characteristic is not None:
            spoken.setdefault((topic.members[0], topic.characteristic.iri), []).append(topic)
    alike: dict[tuple[str, tuple[Explained, ...], tuple[Stretch, ...]], list[str]] = {}
    for member in members:
        stated = [*case.documented.statements.get(member, {})] if len(members) == 1 else []
        asked = [wanted.iri] if wanted and len(members) == 1 else stated
        for iri in dict.fromkeys([*asked, *(iri for _, iri in spoken)]):
            about = spoken.get((member, iri), [])
            if about or iri in asked:
                told = tuple(explained_line(case, line, member, day) for line in _lines(case, about))
                key = (iri, told, stretches(case, about, day) if about else ())
                alike.setdefault(key, []).append(member)
    for (iri, told, parted), whose in alike.items():
        characteristic = case.vocabulary.characteristics[iri]
        yield Explanation(
            subject=_subject(case.work, whose),
            characteristic=named(characteristic),
            documented=_documented(case, whose, characteristic),
            instructions=told,
            stretches=parted,
        )


def _wholes(
    case: Case, topics: Sequence[TopicClaims], members: Sequence[str], day: datetime.date
) -> Iterator[Explanation]:
    """What is said of several together, of which a member is asked about."""
    together: dict[RowKey, list[TopicClaims]] = {}
    for topic in topics:
        others = (line.assertion.other for line in topic.lines)
        if topic.aggregate is not Aggregate.EACH and {*topic.members, *others} & set(members):
            together.setdefault(topic.key, []).append(topic)
    for about in together.values():
        lines, first = _lines(case, about), about[0]
        scope = lines[0].assertion.scope
        is_of_kind = scope.kind is ScopeKind.EVERY
        yield Explanation(
            subject=scope_words(scope, case.vocabulary) if is_of_kind else subject_name(first.subject),
            characteristic=first.name,
            documented=(),
            instructions=tuple(explained_line(case, line, first.members[0], day) for line in lines),
            stretches=stretches(case, about, day),
        )


def _lines(case: Case, topics: Sequence[TopicClaims]) -> list[Instruction]:
    """Their instructions, in the order of the text."""
    held = {line.identifier for topic in topics for line in topic.lines}
    return [line for line in case.work.instructions if line.identifier in held]


def _documented(
    case: Case, members: Sequence[str], characteristic: Characteristic
) -> tuple[tuple[Words, Words], ...]:
    by_value: dict[Words, list[str]] = {}
    for member in members:
        if member != THE_VENUE and member in case.documented.statements:
            by_value.setdefault(case.documented.words(member, characteristic), []).append(member)
    if len(by_value) == 1:
        return tuple((value, "") for value in by_value)
    return tuple((value, _subject(case.work, whose)) for value, whose in by_value.items())


def _subject(work: Work, members: Sequence[str]) -> Words:
    """A part with its name; a group by its own; several parts by their identifiers."""
    if len(members) > 1:
        return members_words(work, members)
    part = work.part(members[0])
    if part is not None and part.name:
        return say("{part} ({name})", part=part.identifier, name=part.name)
    return subject_name(subject_called(members[0]))
