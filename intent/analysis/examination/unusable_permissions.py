"""What a permission leaves to be used of what it allows, and permissions of which nothing is left."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.analysis.examination.findings import Finding, identifiers
from intent.analysis.examination.topic_claims import TopicClaims
from intent.analysis.examination.validity import days_of, last_day_to_answer, outlasts
from intent.language.message import Words, say, say_of
from intent.model.assertions import ScopeKind
from intent.model.phrasing import scope_words
from intent.model.subject import SubjectKind
from intent.model.work import Instruction, Modality
from intent.values.sets import ValueSet, is_within, meet
from intent.variance.case import Case
from intent.variance.precedence import Claim, prevails
from intent.variance.result import RowKey

OfAllGrounds = Mapping[RowKey, Sequence[TopicClaims]]
"""What is claimed of each topic, ground by ground."""


@dataclass(frozen=True, slots=True)
class Hindrance:
    """Why an instruction can never be in force or of use, and the identifiers of the instructions that this names."""

    words: Words
    lines: tuple[str, ...] = ()


def of_all_grounds(topics: Sequence[TopicClaims]) -> OfAllGrounds:
    """What is claimed of each topic, ground by ground."""
    found: dict[RowKey, list[TopicClaims]] = {}
    for topic in topics:
        found.setdefault(topic.key, []).append(topic)
    return found


def blockers(
    case: Case, topic: TopicClaims, permission: Claim, every: OfAllGrounds
) -> list[tuple[Claim, TopicClaims]]:
    """The demands that stand against a permission whenever it could be used.

    They rest on no condition, hold on all its days, and prevail over it; or are of safety, from which nobody can
    dispense, and which permits nothing there.
    """
    found = []
    for other in every[topic.key]:
        is_own = other.ground == topic.ground
        if not is_own and (other.ground != "safety" or other.permissions):
            continue
        for demand in other.demands:
            if demand.line.conditions or not outlasts(case, demand.line, permission.line):
                continue
            if not is_own or prevails(case, demand, permission) is not None:
                found.append((demand, other))
    return found


def usable_values(case: Case, topic: TopicClaims, permission: Claim, every: OfAllGrounds) -> ValueSet:
    """What a permission allows, without what always stands against it."""
    assert permission.admitted is not None
    left = meet(topic.whole, permission.admitted)
    for demand, other in blockers(case, topic, permission, every):
        left = meet(left, other.satisfied_by[demand.line.identifier])
    return left


def never_used(case: Case, topics: Sequence[TopicClaims]) -> Iterator[Finding]:
    """Permissions that nobody can ever use, each with the reason."""
    every = of_all_grounds(topics)
    speaking: dict[str, list[TopicClaims]] = {}
    for topic in topics:
        for claim in topic.permissions:
            speaking.setdefault(claim.line.identifier, []).append(topic)
    for line in case.work.instructions:
        if line.modality is not Modality.ALLOWED:
            continue
        hindrance = no_use(case, line) or _nothing_left(case, line, speaking.get(line.identifier, ()), every)
        if hindrance is not None:
            yield Finding(
                slug="never-used",
                message=say("{line} can never be used: {why}", line=line.identifier, why=hindrance.words),
                node=line.iri,
                subject=line.identifier,
                lines=(line.identifier, *hindrance.lines),
            )


def no_use(case: Case, line: Instruction) -> Hindrance | None:
    """Why an instruction can never be in force, whatever the values: no day, no part, nobody to consent."""
    scope = line.assertion.scope
    # additions may join a group that is named, though nothing documented is in it
    joinable = any(group.name in scope.names for group in case.work.groups)
    if scope.kind is ScopeKind.NAMES and not case.members[line.identifier] and not joinable:
        return Hindrance(say("{scope} holds no part of the work", scope=scope_words(scope, case.vocabulary)))
    if days_of(case, line) is None:
        return _no_day(case, line)
    for person in line.consents:
        last = last_day_to_answer(case.work, person)
        if last is not None:
            return Hindrance(
                say("nobody is left to consent for {person} after {date}", person=person, date=str(last))
            )
    return None


def _no_day(case: Case, line: Instruction) -> Hindrance:
    if line.on is not None and line.until is not None and line.until.last < line.on.first:
        return Hindrance(
            say(
                "its `until` ({until}) is before its date ({date})",
                until=str(line.until),
                date=str(line.on),
            )
        )
    if line.on is not None and line.withdrawn is not None and line.withdrawn.first <= line.on.first:
        return Hindrance(
            say(
                "it is withdrawn ({withdrawn}) before it is given ({date})",
                withdrawn=str(line.withdrawn),
                date=str(line.on),
            )
        )
    by = identifiers(case.superseders.get(line.identifier, ()))
    if not by:
        return Hindrance(say("it ends before it begins"))
    message = say_of(
        len(by),
        "{lines} supersedes it before it holds on any day",
        "{lines} supersede it before it holds on any day",
        lines=by,
    )
    return Hindrance(message, by)


def _nothing_left(
    case: Case, line: Instruction, topics: Sequence[TopicClaims], every: OfAllGrounds
) -> Hindrance | None:
    """Why no value is left: it names none there can be, or all of them are against what prevails."""
    against: dict[str, None] = {}
    names_none = bool(topics)
    for topic in topics:
        permission = topic.claim(line.identifier)
        assert permission is not None
        assert permission.admitted is not None
        if not usable_values(case, topic, permission, every).is_empty:
            return None
        allowed = meet(topic.whole, permission.admitted)
        names_none = names_none and allowed.is_empty
        for demand, other in blockers(case, topic, permission, every):
            if not is_within(allowed, other.satisfied_by[demand.line.identifier]):
                against[demand.line.identifier] = None
    if names_none:
        is_of_additions = topics[0].subject.kind is SubjectKind.ADDITIONS
        return Hindrance(
            say("the additions can have none of the values that it allows")
            if is_of_additions
            else say("what it speaks of can have none of the values that it allows")
        )
    if not against:
        return None
    message = say_of(
        len(against),
        "{lines} stands against everything that it allows, and it does not prevail",
        "{lines} stand against everything that it allows, and it does not prevail",
        lines=tuple(against),
    )
    return Hindrance(message, tuple(against))
