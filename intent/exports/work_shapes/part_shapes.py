"""The shape of an instruction that speaks of each part by itself: what it asks, and what lets it fall.

A part on some days conforms where the instruction is not in force, is not surely broken, or falls: to a permission
that prevails, to a requirement that no value reconciles with it, or to a dispensation. Where it ties, or would fall to
what perhaps permits, it does not stand either.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.exports.work_shapes import alternatives
from intent.exports.work_shapes.alternatives import Alternative
from intent.exports.work_shapes.growing_scopes import holds_all_of, may_meet
from intent.exports.work_shapes.held_values import (
    Admitting,
    admitting,
    is_there,
    perhaps_in,
    surely_in,
    told_apart,
)
from intent.exports.work_shapes.node_shapes import (
    ALWAYS,
    NEVER,
    all_of,
    any_of,
    constrained,
    each_on,
    none_of,
)
from intent.exports.work_shapes.permission_shapes import PermissionShapes
from intent.exports.work_shapes.shape_names import OF_SUBJECT, ShapeNames
from intent.model.assertions import Aggregate, ScopeKind
from intent.model.work import Instruction, Modality
from intent.names import PRESENCE
from intent.values.sets import ValueSet
from intent.variance.case import Case
from intent.variance.precedence import Claim, leaves_no_value, prevails

_OfParts = tuple[tuple[str, ...] | None, list[Claim]]
"""What a line and its rivals admit of some parts; of none by name: of all others."""


@dataclass(frozen=True, slots=True)
class PartShapes:
    """The shapes of what is required and forbidden of each part of a work."""

    case: Case
    """The work, with nothing proposed."""
    names: ShapeNames

    @property
    def permissions(self) -> PermissionShapes:
        return PermissionShapes(self.case, self.names)

    def alternatives(self, line: Instruction) -> Iterator[Alternative]:
        """The shapes of a subject on some days, of which one has to hold: that a line is kept, or falls."""
        rivals = self.rivals(line)
        path = self.names.value(line.assertion.characteristic or "")
        there = (
            [] if line.assertion.characteristic == PRESENCE else [each_on(OF_SUBJECT, is_there(self.names))]
        )
        sure = all_of([self.permissions.in_force(line), *there, self.permissions.conditions.all_hold(line)])
        claims = list(self._claims(line, rivals))
        yield alternatives.unasked(sure)
        yield alternatives.kept(
            self._of_parts([_kept(line, path, found[0].admitted) for _, found in claims], claims)
        )
        for place in range(1, len(rivals) + 1):
            shapes = [self._falls(path, found[0], found[place], rivals) for _, found in claims]
            if any(shape != NEVER for shape in shapes):
                mine, other = claims[-1][1][0], claims[-1][1][place]
                yield alternatives.falls(self.case, mine, other, self._of_parts(shapes, claims))
        yield alternatives.dispensed(self.permissions.dispensed(line))

    def _of_parts(self, shapes: Sequence[str], claims: Sequence[_OfParts]) -> str:
        """The shape that is meant for the part that a subject on some days is."""
        named = [(parts, shape) for (parts, _), shape in zip(claims, shapes, strict=True)]
        return told_apart_on_days(self.names, named)

    def rivals(self, line: Instruction) -> list[Instruction]:
        """The other instructions of the same ground that speak of the same characteristic of each part."""
        return [
            other
            for other in self.case.work.instructions
            if other.identifier != line.identifier
            and other.ground == line.ground
            and other.assertion.aggregate is Aggregate.EACH
            and other.assertion.characteristic == line.assertion.characteristic
            and may_meet(self.case, line, other)
        ]

    def _claims(self, line: Instruction, rivals: Sequence[Instruction]) -> Iterator[_OfParts]:
        """What the line and each rival admit, for those parts for which all of it is the same."""
        lines = [line, *rivals]
        parts = self.case.scopes.of_work(line.assertion)
        by_line = [admitting(self.case, one.assertion, parts) for one in lines]
        found: dict[tuple[ValueSet | None, ...], list[str]] = {}
        others = tuple(admitted[-1][1] for admitted in by_line)
        are_apart = any(len(admitted) > 1 for admitted in by_line)
        for part in parts if are_apart else ():
            found.setdefault(tuple(_of_part(admitted, part) for admitted in by_line), []).append(part)
        for key, held in found.items():
            yield tuple(held), [Claim(one, admitted) for one, admitted in zip(lines, key, strict=True)]
        yield None, [Claim(one, admitted) for one, admitted in zip(lines, others, strict=True)]

    def _falls(self, path: str, line: Claim, rival: Claim, rivals: Sequence[Instruction]) -> str:
        """That a line falls, or ties, to a rival that speaks of the same subject."""
        excuse = self._excuse(path, line, rival, rivals)
        is_always = holds_all_of(self.case, rival.line, line.line)
        scope = ALWAYS if is_always else self.permissions.speaks_of_it(rival.line)
        return all_of([scope, self.permissions.in_force(rival.line), excuse])

    def _excuse(self, path: str, line: Claim, rival: Claim, rivals: Sequence[Instruction]) -> str:
        """What makes an instruction fall or tie to another that speaks."""
        is_above = prevails(self.case, rival, line) is not None
        if not is_above and prevails(self.case, line, rival) is not None:
            return NEVER
        if rival.line.modality is Modality.ALLOWED:
            held = perhaps_in(path, rival.admitted) if is_above else surely_in(path, rival.admitted)
            still = self.permissions.permits_still(rival.line, [line.line, *rivals])
            return all_of([each_on(OF_SUBJECT, held), still])
        if not leaves_no_value(rival, line):
            return NEVER
        held = each_on(OF_SUBJECT, surely_in(path, rival.admitted))
        asks = [held, none_of(self.permissions.conditions.one_fails(rival.line))]
        is_presence = rival.line.assertion.characteristic == PRESENCE
        if is_presence and rival.line.assertion.scope.kind is not ScopeKind.ADDITIONS:
            # that a group must be there does not ask for anything to be added to it
            asks.append(each_on(OF_SUBJECT, constrained("intent:isAdded", ("sh:hasValue", "false"))))
        return all_of(asks)


def told_apart_on_days(names: ShapeNames, of_parts: Sequence[tuple[tuple[str, ...] | None, str]]) -> str:
    """The shape of a subject on some days that is meant for the part that the subject is."""
    if len(of_parts) == 1:
        return of_parts[0][1]
    return any_of(
        all_of([each_on(OF_SUBJECT, told_apart(names, _only(of_parts, place))), shape])
        for place, (_, shape) in enumerate(of_parts)
    )


def _only(
    of_parts: Sequence[tuple[tuple[str, ...] | None, str]], place: int
) -> list[tuple[tuple[str, ...] | None, str]]:
    return [(parts, ALWAYS if at == place else NEVER) for at, (parts, _) in enumerate(of_parts)]


def _of_part(admitted: Admitting, part: str) -> ValueSet | None:
    return next((values for parts, values in admitted if parts is None or part in parts), None)


def _kept(line: Instruction, path: str, admitted: ValueSet | None) -> str:
    """That a line is not surely broken."""
    if line.modality is Modality.REQUIRED:
        return each_on(OF_SUBJECT, perhaps_in(path, admitted))
    return none_of(each_on(OF_SUBJECT, surely_in(path, admitted)))
