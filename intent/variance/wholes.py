"""What is said of several parts as a whole, whichever way it is put: `M3 is below M1` as `M1 is above M3`."""

from __future__ import annotations

from collections.abc import Sequence

from intent.model.assertions import Aggregate, Assertion, Relation
from intent.model.meaning import every_value, scale
from intent.model.work import Instruction
from intent.values.regions import Region
from intent.values.sets import Labels, ValueSet
from intent.variance.aggregates import squared
from intent.variance.case import Case
from intent.variance.conditions import admitted_amounts, documented_amounts

_ALIKE = {Aggregate.SAME: "all alike", Aggregate.DIFFERENT: "all different"}
_AXES = {
    Relation.ABOVE: ("height", "more"),
    Relation.BELOW: ("height", "less"),
    Relation.RIGHT_OF: ("side", "more"),
    Relation.LEFT_OF: ("side", "less"),
    Relation.IN_FRONT_OF: ("depth", "more"),
    Relation.BEHIND: ("depth", "less"),
}
_OPPOSITE = {"more": "less", "less": "more"}


def whole_key(case: Case, line: Instruction) -> tuple[object, ...]:
    """What tells one whole from another; a relation and its opposite, sameness and difference are of one."""
    assertion, members = line.assertion, case.members[line.identifier]
    if assertion.aggregate in _ALIKE:
        return ("alike", assertion.characteristic, frozenset(members))
    if assertion.relation is not None:
        return ("relation", _AXES[assertion.relation][0], frozenset((*members, assertion.other)))
    return (assertion.aggregate, assertion.characteristic, frozenset(members))


def admitted_of_whole(case: Case, line: Instruction, members: Sequence[str]) -> ValueSet | None:
    """What an instruction admits of a whole; none where it rests on what is not documented."""
    assertion = line.assertion
    if assertion.aggregate in _ALIKE:
        return Labels(frozenset({_ALIKE[assertion.aggregate]}))
    if assertion.relation is not None:
        # both ways of saying it count as one: `M2 is below M1` is told as what M1 is to M2, the first by name
        sense = _AXES[assertion.relation][1]
        is_first = not members or str(assertion.other) > members[0]
        return Labels(frozenset({sense if is_first else _OPPOSITE[sense]}))
    documented = documented_amounts(case, assertion, members)
    return admitted_amounts(case, assertion, next(iter(documented.values()), None))


def every_amount(case: Case, assertion: Assertion, members: Sequence[str]) -> ValueSet:
    """All that can be so of a whole."""
    if assertion.aggregate in _ALIKE:
        neither = {"neither"} if len(members) > 2 else set()
        return Labels(frozenset({*_ALIKE.values(), *neither}))
    if assertion.relation is not None:
        return Labels(frozenset({"more", "less", "level"}))
    characteristic = case.vocabulary.characteristics.get(assertion.characteristic or "")
    everything = every_value(scale(assertion.aggregate, characteristic, case.vocabulary), case.vocabulary)
    is_squared = assertion.aggregate is Aggregate.DISTANCE and isinstance(everything, Region)
    return squared(everything) if is_squared and isinstance(everything, Region) else everything
