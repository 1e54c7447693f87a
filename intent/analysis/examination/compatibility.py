"""Whether several instructions can hold together: on a common day, under conditions that do not exclude each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import reduce

from intent.analysis.examination.validity import common_days
from intent.model.assertions import Aggregate, Assertion, Condition, Expression
from intent.model.meaning import admitted_values
from intent.model.work import Instruction
from intent.values.sets import ValueSet, is_within, meet
from intent.variance.case import Case
from intent.variance.change import documented_for
from intent.variance.conditions import admitted_amounts
from intent.vocabulary.phrases import normal

Asked = tuple[object, ...]
"""What a condition asks about: an aggregate or a characteristic, of certain subjects."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """What one condition wants of the value that it asks about."""

    expression: Expression
    value: ValueSet | None
    """The values that the expression names; none where they rest on what is not documented."""
    unless: bool
    """Whether it wants any other value."""


def can_hold_together(case: Case, lines: Sequence[Instruction], subjects: Sequence[str]) -> bool:
    """Whether some day and some answers to their conditions put all of them in force for a subject."""
    return common_days(case, lines) is not None and conditions_agree(case, lines, subjects)


def conditions_agree(case: Case, lines: Sequence[Instruction], subjects: Sequence[str]) -> bool:
    """Whether the conditions of several instructions can all hold: no fact both holds and does not."""
    facts: dict[str, set[bool]] = {}
    asked: dict[Asked, list[Wanted]] = {}
    for line in lines:
        for condition in line.conditions:
            if condition.assertion is None:
                facts.setdefault(normal(condition.fact or ""), set()).add(condition.unless)
            elif not is_of_own_value(case, line, condition, subjects):
                members = subjects_asked(case, line, condition.assertion, subjects)
                value = condition_value(case, condition.assertion, members[:1])
                wanted = Wanted(condition.assertion.expression, value, condition.unless)
                asked.setdefault(_asked(condition.assertion, members), []).append(wanted)
    return all(len(wanted) == 1 for wanted in facts.values()) and all(map(_can_all_be, asked.values()))


def _asked(assertion: Assertion, members: tuple[str, ...]) -> Asked:
    return assertion.aggregate, assertion.characteristic, assertion.relation, assertion.other, members


def _can_all_be(wanted: Sequence[Wanted]) -> bool:
    """Whether one value can do all that several conditions want of it."""
    untrue = {one.expression for one in wanted if one.unless}
    if any(one.expression in untrue for one in wanted if not one.unless):
        return False
    inside = [one.value for one in wanted if one.value is not None and not one.unless]
    if not inside:
        return True
    left = reduce(meet, inside)
    holes = (one.value for one in wanted if one.value is not None and one.unless)
    return not left.is_empty and not any(is_within(left, hole) for hole in holes)


def condition_value(case: Case, assertion: Assertion, members: Sequence[str]) -> ValueSet | None:
    """The values that a condition names; none where they rest on what is not documented."""
    if assertion.aggregate is not Aggregate.EACH:
        return admitted_amounts(case, assertion, None)
    characteristic = case.vocabulary.characteristics[assertion.characteristic or ""]
    documented = documented_for(case, members[0], characteristic) if members else None
    return admitted_values(assertion.expression, characteristic, case.vocabulary, documented)


def subjects_asked(
    case: Case, line: Instruction, assertion: Assertion, subjects: Sequence[str]
) -> tuple[str, ...]:
    """Of whom a condition is asked: about the instruction's own scope of the subject itself, else of all named."""
    members = case.scopes.of_proposal(assertion)
    own = assertion.aggregate is Aggregate.EACH and members == case.members[line.identifier]
    return tuple(subjects) if own else members


def is_of_own_value(case: Case, line: Instruction, condition: Condition, subjects: Sequence[str]) -> bool:
    """Whether a condition asks about the very value that the instruction speaks of."""
    assertion = condition.assertion
    if assertion is None or line.assertion.aggregate is not Aggregate.EACH:
        return False
    return (
        assertion.aggregate is Aggregate.EACH
        and assertion.characteristic == line.assertion.characteristic
        and subjects_asked(case, line, assertion, subjects) == tuple(subjects)
    )
