"""Instructions that others make idle: without them every verdict would be the same."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from intent.analysis.examination.findings import Finding, identifiers
from intent.analysis.examination.topic_claims import TopicClaims
from intent.analysis.examination.unusable_permissions import no_use
from intent.analysis.examination.validity import days_of, outlasts
from intent.language.message import Words, say, say_of
from intent.model.work import Instruction, Modality
from intent.values.sets import are_disjoint, is_within, meet
from intent.variance.case import Case
from intent.variance.precedence import Claim, prevails

_MESSAGES = {
    Modality.REQUIRED: say_of(
        1,
        "{others} makes {line} idle: whatever meets it meets {line}",
        "{others} make {line} idle: whatever meets them meets {line}",
    ),
    Modality.FORBIDDEN: say_of(
        1,
        "{others} makes {line} idle: all that {line} forbids is forbidden by it",
        "{others} make {line} idle: all that {line} forbids is forbidden by them",
    ),
    Modality.ALLOWED: say_of(
        1,
        "{others} makes {line} idle: all that {line} allows is allowed by it",
        "{others} make {line} idle: all that {line} allows is allowed by them",
    ),
}


def idle(case: Case, topics: Sequence[TopicClaims]) -> Iterator[Finding]:
    """Each instruction that never holds, or in whose place others always do, with what makes it idle."""
    speaking: dict[str, list[TopicClaims]] = {}
    for topic in topics:
        for claim in topic.claims:
            speaking.setdefault(claim.line.identifier, []).append(topic)
    places = {line.identifier: place for place, line in enumerate(case.work.instructions)}
    for line in case.work.instructions:
        hindrance = None if line.modality is Modality.ALLOWED else no_use(case, line)
        if hindrance is not None:
            message = say("{line} never holds: {why}", line=line.identifier, why=hindrance.words)
            yield _finding(line, message, hindrance.lines)
        elif days_of(case, line) is not None:
            instead = _instead(case, line, speaking.get(line.identifier, ()), places)
            if instead:
                others = identifiers(instead)
                message = _MESSAGES[line.modality].filled(len(others), others=others, line=line.identifier)
                yield _finding(line, message, others)


def _finding(line: Instruction, message: Words, others: tuple[str, ...]) -> Finding:
    return Finding(
        slug="idle",
        message=message,
        node=line.iri,
        subject=line.identifier,
        lines=(line.identifier, *others),
    )


def _instead(
    case: Case, line: Instruction, topics: Sequence[TopicClaims], places: Mapping[str, int]
) -> tuple[Instruction, ...]:
    """The instructions that hold in its place, one for each topic; none where it counts in any of them."""
    instead: dict[str, Instruction] = {}
    for topic in topics:
        claim = topic.claim(line.identifier)
        assert claim is not None
        found = next(
            (
                other.line
                for other in topic.claims
                if other is not claim and _replaces(case, topic, other, claim, places)
            ),
            None,
        )
        if found is None:
            return ()
        instead[found.identifier] = found
    return tuple(instead.values())


def _replaces(case: Case, topic: TopicClaims, one: Claim, other: Claim, places: Mapping[str, int]) -> bool:
    """Whether the first does all that the second does; of two that do the same, the one further up stays."""
    if not _covers(case, topic, one, other):
        return False
    is_first = places[one.line.identifier] < places[other.line.identifier]
    return is_first or not _covers(case, topic, other, one)


def _covers(case: Case, topic: TopicClaims, one: Claim, other: Claim) -> bool:
    line, idle_line = one.line, other.line
    if line.modality is not idle_line.modality or not _ended(case, idle_line) <= _ended(case, line):
        return False
    if not set(line.conditions) <= set(idle_line.conditions) or not outlasts(case, line, idle_line):
        return False
    if case.ranks[line.identifier] > case.ranks[idle_line.identifier]:
        return False
    if line.modality is Modality.ALLOWED:
        return _allows_as_much(topic, one, other) and _fares_as_well(case, topic, one, other)
    mine, others = (topic.satisfied_by[claim.line.identifier] for claim in (one, other))
    return is_within(mine, others) and not mine.is_empty and _fares_alike(case, topic, one, other)


def _ended(case: Case, line: Instruction) -> frozenset[str]:
    """What an instruction supersedes with effect."""
    return frozenset(earlier for earlier, later in case.superseders.items() if line in later)


def _allows_as_much(topic: TopicClaims, one: Claim, other: Claim) -> bool:
    if one.line.choice is not None or other.line.choice is not None:
        return False
    if (
        not set(one.line.consents) <= set(other.line.consents)
        or one.admitted is None
        or other.admitted is None
    ):
        return False
    allowed = meet(topic.whole, other.admitted)
    return not allowed.is_empty and is_within(allowed, one.admitted)


def _fares_alike(case: Case, topic: TopicClaims, one: Claim, other: Claim) -> bool:
    """Whether whatever lifts one demand, or ties with it, does the same to the other."""
    return all(
        _relation(case, rival, one) == _relation(case, rival, other)
        for rival in topic.claims
        if rival is not one and rival is not other and _could_lift(rival, one, other)
    )


def _could_lift(rival: Claim, one: Claim, other: Claim) -> bool:
    if rival.line.modality is Modality.ALLOWED:
        return True
    sets = [claim.admitted for claim in (rival, one, other)]
    mine, *demanded = [found for found in sets if found is not None]
    return rival.line.modality is Modality.REQUIRED and any(are_disjoint(mine, found) for found in demanded)


def _fares_as_well(case: Case, topic: TopicClaims, one: Claim, other: Claim) -> bool:
    """Whether one permission prevails wherever the other does, and falls only where the other falls."""
    return all(_relation(case, one, demand) >= _relation(case, other, demand) for demand in topic.demands)


def _relation(case: Case, one: Claim, two: Claim) -> int:
    """1 where the first prevails, -1 where the second does, 0 where neither."""
    if prevails(case, one, two) is not None:
        return 1
    return -1 if prevails(case, two, one) is not None else 0
