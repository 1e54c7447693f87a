"""Which of two instructions prevails: an ordered table of rules, the first that tells them apart."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from intent.model.work import Instruction, Modality
from intent.values.sets import ValueSet, are_disjoint, is_strictly_within, is_within
from intent.variance.case import Case
from intent.variance.result import Because


@dataclass(frozen=True, slots=True)
class Claim:
    """An instruction with the values it speaks of, for one subject and documented value."""

    line: Instruction
    admitted: ValueSet | None
    measure: frozenset[str] = frozenset()
    """What the values are of, where that is not the same for all that speak."""

    def is_comparable(self, other: Claim) -> bool:
        return self.measure == other.measure and self.admitted is not None and other.admitted is not None


@dataclass(frozen=True, slots=True)
class Contradict:
    """A rule's word that two contradict each other, whatever later rules say."""


Ruling = Claim | Contradict | None
Rule = Callable[[Case, Claim, Claim], Ruling]


def by_authority(case: Case, one: Claim, two: Claim) -> Ruling:
    """Rule 1: the rank of the role of who gave it."""
    first, second = case.ranks[one.line.identifier], case.ranks[two.line.identifier]
    if first == second:
        return None
    return one if first < second else two


def by_scope(case: Case, one: Claim, two: Claim) -> Ruling:
    """Rule 2: a strict subset of the parts; but not a permission against what was said later of more."""
    first, second = case.breadths[one.line.identifier], case.breadths[two.line.identifier]
    if first < second:
        narrow, wide = one, two
    elif second < first:
        narrow, wide = two, one
    else:
        return None
    is_exception = narrow.line.modality is Modality.ALLOWED and wide.line.modality is not Modality.ALLOWED
    return Contradict() if is_exception and _is_later(wide.line, narrow.line) else narrow


def by_date(case: Case, one: Claim, two: Claim) -> Ruling:
    """Rule 3: the later, where the two spans of days do not overlap."""
    if _is_later(one.line, two.line):
        return one
    return two if _is_later(two.line, one.line) else None


def by_exception(case: Case, one: Claim, two: Claim) -> Ruling:
    """Rule 4: permissions against requirements, and against prohibitions by how much each speaks of."""
    if (one.line.modality is Modality.ALLOWED) == (two.line.modality is Modality.ALLOWED):
        return None
    permission, other = (one, two) if one.line.modality is Modality.ALLOWED else (two, one)
    if other.line.modality is Modality.REQUIRED:
        return permission
    if permission.line.conditions or permission.line.consents:
        return permission
    if not permission.is_comparable(other) or permission.admitted is None or other.admitted is None:
        return None
    if is_strictly_within(permission.admitted, other.admitted):
        return permission
    return other if is_strictly_within(other.admitted, permission.admitted) else None


RULES: tuple[tuple[Because, Rule], ...] = (
    (Because.AUTHORITY, by_authority),
    (Because.SCOPE, by_scope),
    (Because.DATE, by_date),
    (Because.EXCEPTION, by_exception),
)


def prevails(case: Case, one: Claim, two: Claim) -> Because | None:
    """The rule by which the first prevails over the second; none where it does not."""
    for because, rule in RULES:
        ruling = rule(case, one, two)
        if ruling is not None:
            return because if ruling is one else None
    return None


def leaves_no_value(requirement: Claim, demand: Claim) -> bool:
    """Whether one is a requirement, and no value at all satisfies both it and another requirement or a prohibition."""
    mine, other = requirement.admitted, demand.admitted
    if requirement.line.modality is not Modality.REQUIRED or not requirement.is_comparable(demand):
        return False
    assert mine is not None
    assert other is not None
    if demand.line.modality is Modality.FORBIDDEN:
        return is_within(mine, other)
    return are_disjoint(mine, other)


def _is_later(one: Instruction, two: Instruction) -> bool:
    return one.on is not None and two.on is not None and one.on.is_later_than(two.on)
