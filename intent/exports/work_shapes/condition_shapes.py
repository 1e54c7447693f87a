"""Whether the conditions of an instruction hold, as shapes of a subject on some days."""

from __future__ import annotations

from dataclasses import dataclass

from intent.exports.work_shapes.aggregate_shapes import AmountShapes, admitted_together
from intent.exports.work_shapes.growing_scopes import is_same_by_chance
from intent.exports.work_shapes.held_values import (
    admitting,
    is_there,
    perhaps_in,
    surely_in,
    told_apart,
)
from intent.exports.work_shapes.node_shapes import (
    all_of,
    any_of,
    each_on,
    none_of,
    some_on,
    unless_query_finds,
)
from intent.exports.work_shapes.shape_names import EVERY_SUBJECT, OF_SUBJECT, ShapeNames
from intent.exports.work_shapes.word_queries import unless_fact, unless_found
from intent.model.assertions import Aggregate, Assertion, Condition
from intent.model.work import Instruction, Modality
from intent.names import PRESENCE
from intent.values.sets import Answer
from intent.variance.case import Case


@dataclass(frozen=True, slots=True)
class ConditionShapes:
    """The conditions of the instructions of a work."""

    case: Case
    """The work, with nothing proposed."""
    names: ShapeNames

    def all_hold(self, line: Instruction) -> str:
        """That every condition of a line surely holds."""
        return all_of(self._answered(line, place, Answer.IN) for place in range(len(line.conditions)))

    def one_fails(self, line: Instruction) -> str:
        """That a condition of a line surely does not hold."""
        return any_of(self._answered(line, place, Answer.OUT) for place in range(len(line.conditions)))

    def _answered(self, line: Instruction, place: int, answer: Answer) -> str:
        condition = line.conditions[place]
        wanted = answer.negated if condition.unless else answer
        if condition.assertion is None:
            return self._attested(line, condition, wanted)
        scope = self.names.condition_scope(line, place + 1)
        if condition.assertion.aggregate is not Aggregate.EACH:
            return self._together(condition.assertion, scope, wanted)
        if line.assertion.aggregate is Aggregate.EACH and is_own(self.case, line, condition.assertion):
            return each_on(OF_SUBJECT, self._of_one(condition.assertion, wanted))
        return self._of_all(condition.assertion, scope, wanted)

    def _attested(self, line: Instruction, condition: Condition, wanted: Answer) -> str:
        # of a permission it is hoped that it holds, of a requirement or prohibition that it does not
        hoped = (line.modality is Modality.ALLOWED) is not condition.unless
        return self.fact(condition.fact or "", wanted, hoped=hoped)

    def fact(self, fact: str, wanted: Answer, *, hoped: bool) -> str:
        """That a fact is attested to hold, or not to."""
        query = unless_found(unless_fact(fact, holds=wanted is Answer.IN, hoped=hoped))
        return unless_query_finds(self.names.prefixes, query)

    def _together(self, assertion: Assertion, scope: str, wanted: Answer) -> str:
        shapes = AmountShapes(self.names, assertion, scope)
        admitted = admitted_together(self.case, assertion)
        return shapes.surely_in(admitted) if wanted is Answer.IN else shapes.surely_out(admitted)

    def _of_one(self, assertion: Assertion, wanted: Answer) -> str:
        """What a subject that is there surely gives."""
        path = self.names.value(assertion.characteristic or "")
        by_part = [
            (
                parts,
                surely_in(path, admitted) if wanted is Answer.IN else none_of(perhaps_in(path, admitted)),
            )
            for parts, admitted in admitting(self.case, assertion, self.case.scopes.of_work(assertion))
        ]
        there = [] if assertion.characteristic == PRESENCE else [is_there(self.names)]
        return all_of([*there, told_apart(self.names, by_part)])

    def _of_all(self, assertion: Assertion, scope: str, wanted: Answer) -> str:
        """In where every one that is there gives it, and there is one; out where any surely does not."""
        held = f"[ sh:class {scope} ]"
        if wanted is Answer.OUT:
            return some_on(EVERY_SUBJECT, all_of([held, self._of_one(assertion, Answer.OUT)]))
        there = [] if assertion.characteristic == PRESENCE else [is_there(self.names)]
        member = all_of([held, *there])
        failing = all_of([member, none_of(self._of_one(assertion, Answer.IN))])
        return all_of([some_on(EVERY_SUBJECT, member), none_of(some_on(EVERY_SUBJECT, failing))])


def is_own(case: Case, line: Instruction, assertion: Assertion) -> bool:
    """Whether a condition is about the instruction's own scope, so that it is asked of each subject by itself."""
    is_of_same = case.scopes.of_work(assertion) == case.scopes.of_work(line.assertion)
    return is_of_same and not is_same_by_chance(case, line.assertion, assertion)
