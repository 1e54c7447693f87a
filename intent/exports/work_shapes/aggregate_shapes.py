"""How what several parts amount to lies to what an assertion admits, as shapes of a subject on some days."""

from __future__ import annotations

from dataclasses import dataclass

from intent.exports.work_shapes.amount_queries import Together, inside, outside
from intent.exports.work_shapes.asked_values import asked_of_members
from intent.exports.work_shapes.held_values import is_there
from intent.exports.work_shapes.node_shapes import NEVER, all_of, counted_on, none_of
from intent.exports.work_shapes.pair_queries import Pairs
from intent.exports.work_shapes.shape_names import EVERY_SUBJECT, ShapeNames
from intent.model.assertions import Aggregate, Assertion, Form
from intent.model.meaning import every_value, is_relative
from intent.names import NO, START_OFFSET, YES
from intent.values.sets import Labels, ValueSet
from intent.variance.case import Case
from intent.variance.conditions import admitted_amounts, documented_amounts

PAIRWISE = frozenset({Aggregate.DIFFERENCE, Aggregate.DISTANCE})
ALIKE = frozenset({Aggregate.SAME, Aggregate.DIFFERENT})


def admitted_together(case: Case, assertion: Assertion) -> ValueSet | None:
    """What an assertion admits of an amount; of pairs what is the same for all pairs."""
    documented = None
    if assertion.aggregate not in PAIRWISE and is_relative(assertion.expression):
        found = documented_amounts(case, assertion, case.scopes.of_work(assertion))
        documented = next(iter(found.values()), None)
    return admitted_amounts(case, assertion, documented)


def goes_round(case: Case, assertion: Assertion) -> bool:
    """Whether a difference is taken round a turn or a loop, which no query here does."""
    if assertion.aggregate is not Aggregate.DIFFERENCE:
        return False
    characteristic = case.vocabulary.characteristics.get(assertion.characteristic or "")
    if characteristic is None or characteristic.space == "angle":
        return True
    return characteristic.iri == START_OFFSET and bool(case.work.material)


def is_of_each_pair(assertion: Assertion) -> bool:
    """Whether what is admitted is another thing for each pair."""
    return assertion.aggregate in PAIRWISE and (
        is_relative(assertion.expression) or assertion.expression.form is Form.AS_DOCUMENTED
    )


@dataclass(frozen=True, slots=True)
class AmountShapes:
    """The shapes of one amount: that it surely lies in a set, and that it surely lies outside."""

    names: ShapeNames
    assertion: Assertion
    scope: str
    """The class of its members."""

    @property
    def together(self) -> Together:
        iri = asked_of_members(self.assertion)
        return Together(self.names, self.scope, self.names.value(iri) if iri else "")

    @property
    def axes(self) -> tuple[str, ...]:
        """The axes of the numbers that are asked of each member; of what is named none."""
        vocabulary = self.names.vocabulary
        characteristic = vocabulary.characteristics[asked_of_members(self.assertion) or ""]
        everything = every_value(characteristic, vocabulary)
        if isinstance(everything, Labels):
            return ()
        count = len(everything.whole)
        return ("",) if count == 1 else tuple(str(axis) for axis in range(1, count + 1))

    def surely_in(self, admitted: ValueSet | None) -> str:
        if admitted is None:
            return NEVER
        together, assertion = self.together, self.assertion
        if isinstance(admitted, Labels):
            return self._answered(YES if YES in admitted.names else NO)
        if assertion.aggregate is Aggregate.NUMBER:
            return together.number_in(admitted)
        if assertion.aggregate is Aggregate.TOTAL:
            return together.total_in(admitted)
        return all_of([self._so_many(2), self.no_pair(f"!({inside('?near', '?far', admitted)})")])

    def surely_out(self, admitted: ValueSet | None) -> str:
        if admitted is None:
            return NEVER
        together, assertion = self.together, self.assertion
        if isinstance(admitted, Labels):
            return self._answered(NO if YES in admitted.names else YES)
        if assertion.aggregate is Aggregate.NUMBER:
            return none_of(together.number_in(admitted))
        if assertion.aggregate is Aggregate.TOTAL:
            return together.total_out(admitted)
        return none_of(self.no_pair(outside("?near", "?far", admitted)))

    def no_pair(self, test: str) -> str:
        """That of no pair a test of its difference is true."""
        return Pairs(self.together, self.axes).no_apart(test)

    def _answered(self, answer: str) -> str:
        """That what is the same, different, or stands so is surely yes, or surely no."""
        if self.assertion.relation is not None:
            other = self.names.subject(str(self.assertion.other))
            return self.together.stands(self.assertion.relation, other, is_so=answer == YES)
        pairs = Pairs(self.together, self.axes)
        wanted, unwanted = pairs.alike(), pairs.unlike()
        if self.assertion.aggregate is Aggregate.DIFFERENT:
            wanted, unwanted = unwanted, wanted
        if answer == YES:
            return all_of([self._so_many(2), pairs.none(f"!({wanted})")])
        return none_of(pairs.none(unwanted))

    def _so_many(self, least: int) -> str:
        member = all_of([f"[ sh:class {self.scope} ]", is_there(self.names)])
        return counted_on(EVERY_SUBJECT, member, least=least)
