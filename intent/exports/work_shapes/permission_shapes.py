"""When an instruction is in force, whether a permission permits anything still, and who has dispensed from a line.

Shapes of a subject on some days.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from intent.analysis.examination.validity import days_of
from intent.exports.work_shapes.condition_shapes import ConditionShapes
from intent.exports.work_shapes.node_shapes import (
    ALWAYS,
    NEVER,
    all_of,
    any_of,
    constrained,
    each_on,
    none_of,
    unless_query_finds,
)
from intent.exports.work_shapes.shape_names import OF_SUBJECT, ShapeNames
from intent.exports.work_shapes.word_data import day_term
from intent.exports.work_shapes.word_queries import AnswerQueries, unless_found
from intent.model.assertions import Aggregate
from intent.model.work import Instruction
from intent.values.dates import FIRST_DAY, LAST_DAY, ONE_DAY
from intent.values.sets import Answer
from intent.variance.attesting import cannot_be_had
from intent.variance.case import Case
from intent.variance.dispensing import may_dispense
from intent.variance.people import chain
from intent.vocabulary.phrases import normal

_SHOWING_BEGINS = "( intent:shown intent:inInstallation intent:fromDay )"


@dataclass(frozen=True, slots=True)
class PermissionShapes:
    """What makes instructions of a work speak and fall silent."""

    case: Case
    """The work, with nothing proposed."""
    names: ShapeNames

    @property
    def conditions(self) -> ConditionShapes:
        return ConditionShapes(self.case, self.names)

    def in_force(self, line: Instruction) -> str:
        """That the days lie in the time in which an instruction is given and has not ended."""
        days = days_of(self.case, line)
        if days is None:
            return NEVER
        parts = []
        if days.first > FIRST_DAY:
            parts.append(constrained("intent:fromDay", ("sh:minInclusive", day_term(days.first))))
        if days.last < LAST_DAY:
            parts.append(constrained("intent:fromDay", ("sh:maxExclusive", day_term(days.last + ONE_DAY))))
        return all_of(parts)

    def speaks_of_it(self, line: Instruction) -> str:
        """That a subject is in an instruction's scope."""
        return each_on(OF_SUBJECT, f"[ sh:class {self.names.scope(line)} ]")

    def permits_still(self, line: Instruction, others: Sequence[Instruction]) -> str:
        """That a permission in force is not over: for its condition, a consent, or an earlier choice among others."""
        parts = [none_of(self.conditions.one_fails(line))]
        parts += [none_of(self._refused(line, person)) for person in line.consents]
        parts += [any_of([self._can_answer(one), self.given(line, [one])]) for one in line.consents]
        if not line.conditions and line.choice is not None:
            parts += [none_of(self._is_to_be_had(one)) for one in others if is_before(one, line)]
        return all_of(parts)

    def dispensed(self, line: Instruction) -> str:
        """That somebody who may has dispensed from a line."""
        able = [person.identifier for person in may_dispense(self.case, line)]
        return self.given(line, able) if able else NEVER

    def given(self, line: Instruction, persons: Sequence[str]) -> str:
        """That a yes counts, as that of one of some people."""
        return self._query(self._answers(line).unless_given([self.names.person(one) for one in persons]))

    def _refused(self, line: Instruction, person: str) -> str:
        return self._query(self._answers(line).unless_refused(self.names.person(person)))

    def _can_answer(self, identifier: str) -> str:
        """That on the first day of the showing the person can answer, or whoever has succeeded them."""
        able = list(chain(self.case.work, identifier))
        ends = [person.until.last for person in able if person.until is not None]
        if not able:
            return NEVER
        if len(ends) < len(able) or max(ends) == LAST_DAY:
            return ALWAYS
        return constrained(_SHOWING_BEGINS, ("sh:maxInclusive", day_term(max(ends))))

    def _is_to_be_had(self, choice: Instruction) -> str:
        """That an earlier choice speaks, and that it is attested to be had."""
        fact = normal(cannot_be_had(choice))
        denied = self.conditions.fact(fact, Answer.OUT, hoped=True)
        is_each = choice.assertion.aggregate is Aggregate.EACH
        return all_of(
            [
                self.speaks_of_it(choice) if is_each else ALWAYS,
                self.in_force(choice),
                none_of(self.conditions.one_fails(choice)),
                denied,
            ]
        )

    def _answers(self, line: Instruction) -> AnswerQueries:
        is_each = line.assertion.aggregate is Aggregate.EACH
        return AnswerQueries(line=self.names.short(line.iri), scope="" if is_each else self.names.scope(line))

    def _query(self, pattern: str) -> str:
        return unless_query_finds(self.names.prefixes, unless_found(pattern))


def is_before(one: Instruction, line: Instruction) -> bool:
    """Whether something is an earlier choice than a permission."""
    return one.choice is not None and line.choice is not None and one.choice < line.choice
