"""Whether several instructions can hold together: on a common day, under conditions that do not exclude each other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from intent.analysis.examination.life import common_days
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


@dataclass(slots=True, kw_only=True)
class _Answers:
    """What the conditions want true and untrue of one thing."""

    true: list[Expression] = field(default_factory=list)
    untrue: list[Expression] = field(default_factory=list)
    true_sets: list[ValueSet] = field(default_factory=list)
    untrue_sets: list[ValueSet] = field(default_factory=list)

    @property
    def is_possible(self) -> bool:
        if any(expression in self.true for expression in self.untrue):
            return False
        joint = self.true_sets[:1]
        for other in self.true_sets[1:]:
            joint = [meet(joint[0], other)]
        if joint and joint[0].is_empty:
            return False
        return not any(is_within(values, hole) for values in joint for hole in self.untrue_sets)


def can_hold_together(case: Case, lines: Sequence[Instruction], subjects: Sequence[str]) -> bool:
    """Whether some day and some answers to their conditions put all of them in force for a subject."""
    return common_days(case, lines) is not None and conditions_agree(case, lines, subjects)


def conditions_agree(case: Case, lines: Sequence[Instruction], subjects: Sequence[str]) -> bool:
    """Whether the conditions of several instructions can all hold: no fact both holds and does not."""
    facts: dict[str, set[bool]] = {}
    asked: dict[Asked, _Answers] = {}
    for line in lines:
        for condition in line.conditions:
            if condition.assertion is None:
                facts.setdefault(normal(condition.fact or ""), set()).add(condition.unless)
            elif not is_of_own_value(case, line, condition, subjects):
                _ask(case, line, condition, condition.assertion, subjects, asked)
    return all(len(wanted) == 1 for wanted in facts.values()) and all(
        answers.is_possible for answers in asked.values()
    )


def _ask(
    case: Case,
    line: Instruction,
    condition: Condition,
    assertion: Assertion,
    subjects: Sequence[str],
    asked: dict[Asked, _Answers],
) -> None:
    members = subjects_asked(case, line, assertion, subjects)
    key = (assertion.aggregate, assertion.characteristic, assertion.relation, assertion.other, members)
    answers = asked.setdefault(key, _Answers())
    values = next(iter(condition_values(case, assertion, members[:1])), None)
    (answers.untrue if condition.unless else answers.true).append(assertion.expression)
    if values is not None:
        (answers.untrue_sets if condition.unless else answers.true_sets).append(values)


def condition_values(case: Case, assertion: Assertion, members: Sequence[str]) -> Iterator[ValueSet]:
    """The values that a condition names; nothing where they rest on what is not documented."""
    if assertion.aggregate is not Aggregate.EACH:
        found = admitted_amounts(case, assertion, None)
    else:
        characteristic = case.vocabulary.characteristics[assertion.characteristic or ""]
        documented = documented_for(case, members[0], characteristic) if members else None
        found = admitted_values(assertion.expression, characteristic, case.vocabulary, documented)
    if found is not None:
        yield found


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
