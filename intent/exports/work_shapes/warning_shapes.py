"""Shapes that warn where a proposal brings about what the other shapes of a work do not decide."""

from __future__ import annotations

from collections.abc import Iterator

from intent.exports.work_shapes.asked_values import asked_of_members
from intent.exports.work_shapes.node_shapes import any_of, constrained, each_on, none_of
from intent.exports.work_shapes.permission_shapes import PermissionShapes
from intent.exports.work_shapes.shape_names import ITS_DAYS, OF_SUBJECT, ShapeNames, scopes_named
from intent.exports.work_shapes.undecided import Undecided, is_summed
from intent.model.assertions import Aggregate
from intent.model.work import Instruction
from intent.names import ABSENT, PRESENCE
from intent.record.turtle_text import Statement, iri_term, subject_block, text_term
from intent.variance.case import Case

UNSURE, WARNING = "undecided", "sh:Warning"
_ANSWERED_VALUE = "( [ sh:inversePath intent:answers ] intent:toValue )"
_Shape = tuple[str, Statement, list[Statement], Undecided]
"""What it is called beside the line, its target, what it asks, and why a row is not decided where that fails."""


def warning_shapes(case: Case, names: ShapeNames, line: Instruction) -> Iterator[str]:
    """The shapes that warn of rows of one instruction."""
    for name, target, asked, why in _shapes(case, names, line):
        message = text_term(f"What {line.identifier} asks {why.value}.", "en")
        asking = names.of(UNSURE, line.identifier, name, "asked")
        shape = [("a", "sh:NodeShape"), target, ("sh:property", asking)]
        yield subject_block(names.of(UNSURE, line.identifier, name), shape)
        head = [("a", "sh:PropertyShape"), ("sh:severity", WARNING), ("sh:message", message)]
        yield subject_block(asking, [*head, *asked])


def _shapes(case: Case, names: ShapeNames, line: Instruction) -> Iterator[_Shape]:
    if line.assertion.aggregate is Aggregate.NUMBER:
        asked = [("sh:path", ITS_DAYS), ("sh:node", _unchanged(case, names, line))]
        yield "number", ("sh:targetClass", names.scope(line)), asked, Undecided.NUMBER
    answered = [("sh:path", _ANSWERED_VALUE), ("sh:maxCount", "0")]
    yield "answered", ("sh:targetNode", names.short(line.iri)), answered, Undecided.ANSWERED
    for place, scope in enumerate(scopes_named(names, line)):
        iri = asked_of_members(scope.assertion)
        if is_summed(scope.assertion) and iri:
            once = [("sh:path", names.value(iri)), ("sh:maxCount", "1")]
            yield f"stretches-{place}", ("sh:targetClass", scope.iri), once, Undecided.STRETCHES


def _unchanged(case: Case, names: ShapeNames, line: Instruction) -> str:
    """That a part is neither absent nor added on days on which a number is in force."""
    absent = constrained(names.value(PRESENCE), ("sh:hasValue", iri_term(ABSENT)))
    changed = any_of([absent, constrained("intent:isAdded", ("sh:hasValue", "true"))])
    in_force = PermissionShapes(case, names).in_force(line)
    return any_of([none_of(in_force), each_on(OF_SUBJECT, none_of(changed))])
