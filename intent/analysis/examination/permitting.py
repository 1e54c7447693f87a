"""What a permission leaves to be used of what it allows, and permissions of which nothing is left."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from intent.analysis.examination.findings import Finding, names
from intent.analysis.examination.life import days_of, nobody_left, outlasts, withdrawers
from intent.analysis.examination.matters import ADDITIONS, Matter
from intent.model.assertions import ScopeKind
from intent.model.work import Instruction, Modality
from intent.values.sets import ValueSet, is_within, meet
from intent.variance.case import Case
from intent.variance.precedence import Claim, prevails

Others = Mapping[tuple[str, str], Sequence[Matter]]
"""The matters of all grounds, by subject and characteristic."""


def by_topic(matters: Sequence[Matter]) -> Others:
    found: dict[tuple[str, str], list[Matter]] = {}
    for matter in matters:
        found.setdefault((matter.subject, matter.label), []).append(matter)
    return found


def blockers(case: Case, matter: Matter, permission: Claim, others: Others) -> list[tuple[Claim, Matter]]:
    """The demands that stand against a permission whenever it could be used.

    They rest on no condition, hold on all its days, and prevail over it; or are of safety, from which nobody can
    dispense, and which permits nothing there.
    """
    found = []
    for other in others[(matter.subject, matter.label)]:
        is_own = other.ground == matter.ground
        if not is_own and (other.ground != "safety" or other.permissions):
            continue
        for demand in other.demands:
            if demand.line.conditions or not outlasts(case, demand.line, permission.line):
                continue
            if not is_own or prevails(case, demand, permission) is not None:
                found.append((demand, other))
    return found


def usable_values(case: Case, matter: Matter, permission: Claim, others: Others) -> ValueSet:
    """What a permission allows, without what always stands against it."""
    assert permission.admitted is not None
    left = meet(matter.whole, permission.admitted)
    for demand, other in blockers(case, matter, permission, others):
        left = meet(left, other.satisfied_by[demand.line.identifier])
    return left


def never_used(case: Case, matters: Sequence[Matter]) -> Iterator[Finding]:
    """Permissions that nobody can ever use, each with the reason."""
    others = by_topic(matters)
    speaking: dict[str, list[Matter]] = {}
    for matter in matters:
        for claim in matter.permissions:
            speaking.setdefault(claim.line.identifier, []).append(matter)
    for line in case.work.instructions:
        if line.modality is not Modality.ALLOWED:
            continue
        why = no_use(case, line) or _nothing_left(case, line, speaking.get(line.identifier, ()), others)
        if why:
            message = f"{line.identifier} can never be used: {why}"
            yield Finding(slug="never-used", message=message, node=line.iri, subject=line.identifier)


def no_use(case: Case, line: Instruction) -> str:
    """Why an instruction can never be in force, whatever the values: no day, no part, nobody to consent."""
    if line.assertion.scope.kind is ScopeKind.NAMES and not case.members[line.identifier]:
        return f"{line.assertion.scope.written or 'its scope'} holds no part of the work"
    if days_of(case, line) is None:
        return _no_day(case, line)
    for person in line.consents:
        last = nobody_left(case.work, person)
        if last is not None:
            return f"nobody is left to consent for {person} after {last}"
    return ""


def _no_day(case: Case, line: Instruction) -> str:
    if line.on is not None and line.until is not None and line.until.last < line.on.first:
        return f"its `until` ({line.until}) is before its date ({line.on})"
    if line.on is not None and line.withdrawn is not None and line.withdrawn.first <= line.on.first:
        return f"it is withdrawn ({line.withdrawn}) before it is given ({line.on})"
    by = names(withdrawers(case, line))
    return f"{by} supersedes it before it holds on any day" if by else "it ends before it begins"


def _nothing_left(case: Case, line: Instruction, matters: Sequence[Matter], others: Others) -> str:
    """Why no value is left: it names none there can be, or all of them are against what prevails."""
    against: dict[str, Instruction] = {}
    names_none = bool(matters)
    for matter in matters:
        permission = matter.claim(line.identifier)
        assert permission is not None
        assert permission.admitted is not None
        if not usable_values(case, matter, permission, others).is_empty:
            return ""
        allowed = meet(matter.whole, permission.admitted)
        names_none = names_none and allowed.is_empty
        for demand, other in blockers(case, matter, permission, others):
            if not is_within(allowed, other.satisfied_by[demand.line.identifier]):
                against[demand.line.identifier] = demand.line
    if names_none:
        kind = "the additions" if matters[0].subject == ADDITIONS else "what it speaks of"
        return f"{kind} can have none of the values that it allows"
    if not against:
        return ""
    verb = "stands" if len(against) == 1 else "stand"
    return f"{names(against.values())} {verb} against everything that it allows, and it does not prevail"
