"""How what a subject gives lies to what an assertion admits, as shapes of a subject.

Where what is admitted is taken of the documented value, it is worked out part by part, and the shape tells the parts
apart; what was not documented has no such value.
"""

from __future__ import annotations

from collections.abc import Sequence

from intent.exports.value_shapes import lying_in, must_touch
from intent.exports.work_shapes.node_shapes import (
    ALWAYS,
    NEVER,
    all_of,
    any_of,
    constrained,
    inside_of,
    none_of,
)
from intent.exports.work_shapes.shape_names import ShapeNames
from intent.model.assertions import Assertion
from intent.model.meaning import admitted_values, is_relative
from intent.names import ABSENT, PRESENCE
from intent.record.turtle_text import collection, iri_term, nested_node
from intent.values.sets import Labels, ValueSet
from intent.variance.case import Case
from intent.variance.change import is_gathered

Admitting = tuple[tuple[tuple[str, ...] | None, ValueSet | None], ...]
"""What is admitted of which parts, by identifier; of none by name: of all others."""


def surely_in(path: str, admitted: ValueSet | None) -> str:
    """That a value lies wholly within a set; a set that nobody knows holds nothing for sure."""
    if admitted is None:
        return NEVER
    return nested_node(
        [("sh:property", f"[ sh:path {path} ; sh:minCount 1 ; {inside_of(lying_in(admitted))} ]")]
    )


def perhaps_in(path: str, admitted: ValueSet | None) -> str:
    """That a value is not wholly outside a set."""
    if admitted is None:
        return ALWAYS
    return nested_node([("sh:property", nested_node(must_touch(path, admitted)))])


def one_of_parts(names: ShapeNames, parts: Sequence[str]) -> str:
    """That a subject is one of some parts."""
    return constrained("intent:shows", ("sh:in", collection(map(names.subject, parts))))


def is_there(names: ShapeNames) -> str:
    """That a subject is not absent."""
    return none_of(constrained(names.value(PRESENCE), ("sh:hasValue", iri_term(ABSENT))))


def documented_as(case: Case, subject: str, characteristic: str) -> ValueSet | None:
    """What is documented of a subject of the work, where it is one that a share can be taken of."""
    found = case.vocabulary.characteristics[characteristic]
    if characteristic != PRESENCE and not case.documented.is_given(subject, found):
        return None
    return case.documented.value(subject, found)


def is_uncertain(case: Case, subject: str, characteristic: str) -> bool:
    """Whether it depends on the proposal what is documented: nothing is, or a term that only gathers others."""
    found = case.vocabulary.characteristics[characteristic]
    if characteristic == PRESENCE:
        return False
    return not case.documented.is_given(subject, found) or is_gathered(case, subject, found)


def admitting(case: Case, assertion: Assertion, parts: Sequence[str]) -> Admitting:
    """What an assertion admits of each of some documented parts, and of all others."""
    iri = assertion.characteristic or ""
    characteristic = case.vocabulary.characteristics[iri]
    others = Labels(frozenset({ABSENT})) if iri == PRESENCE else None
    expression = assertion.expression
    if not is_relative(expression):
        return ((None, admitted_values(expression, characteristic, case.vocabulary)),)
    found: dict[ValueSet | None, list[str]] = {}
    for part in parts:
        documented = documented_as(case, part, iri)
        admitted = admitted_values(expression, characteristic, case.vocabulary, documented)
        found.setdefault(admitted, []).append(part)
    by_part = tuple((tuple(held), admitted) for admitted, held in found.items())
    return (*by_part, (None, admitted_values(expression, characteristic, case.vocabulary, others)))


def told_apart(names: ShapeNames, of_parts: Sequence[tuple[tuple[str, ...] | None, str]]) -> str:
    """The shape that is meant for the part that a subject is; the last is for all others."""
    named = [part for parts, _ in of_parts for part in parts or ()]
    if not named:
        return any_of(shape for _, shape in of_parts)
    return any_of(
        all_of([one_of_parts(names, parts) if parts else none_of(one_of_parts(names, named)), shape])
        for parts, shape in of_parts
    )
