"""The shape of an instruction that speaks of several parts together: a number, a total, a distance, what is alike.

It is asked of the showing as a whole, on some days. Of what is taken pair by pair the worst pair counts, so that what
lets a pair fall has to be asked of that pair: once for each choice of the instructions that could.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from intent.exports.work_shapes import alternatives
from intent.exports.work_shapes.aggregate_shapes import PAIRWISE, AmountShapes, admitted_together
from intent.exports.work_shapes.alternatives import Alternative
from intent.exports.work_shapes.amount_queries import inside, outside
from intent.exports.work_shapes.growing_scopes import is_same_by_chance
from intent.exports.work_shapes.node_shapes import all_of, none_of
from intent.exports.work_shapes.permission_shapes import PermissionShapes
from intent.exports.work_shapes.shape_names import ShapeNames
from intent.model.work import Instruction, Modality
from intent.values.regions import Region
from intent.variance.case import Case
from intent.variance.precedence import Claim, leaves_no_value, prevails


@dataclass(frozen=True, slots=True)
class _Excuse:
    """What lets an amount fall while a shape holds, where the amount lies so to the set of an instruction."""

    claim: Claim
    active: str
    """That it is in force and speaks still, whatever the amount."""
    is_touching: bool
    """Whether it is enough that the amount is not surely outside."""


@dataclass(frozen=True, slots=True)
class WholeShapes:
    """The shapes of what is required and forbidden of several parts together."""

    case: Case
    """The work, with nothing proposed."""
    names: ShapeNames

    @property
    def permissions(self) -> PermissionShapes:
        return PermissionShapes(self.case, self.names)

    def alternatives(self, line: Instruction) -> Iterator[Alternative]:
        """The shapes of the showing on some days, of which one has to hold: that a line is kept, or falls."""
        claim = Claim(line, admitted_together(self.case, line.assertion))
        excuses = list(self._excuses(claim))
        sure = all_of([self.permissions.in_force(line), self.permissions.conditions.all_hold(line)])
        yield alternatives.unasked(sure)
        is_pairwise = line.assertion.aggregate in PAIRWISE
        yield from self._by_pair(claim, excuses) if is_pairwise else self._at_once(claim, excuses)
        yield alternatives.dispensed(self.permissions.dispensed(line))

    def rivals(self, line: Instruction) -> list[Instruction]:
        """The other instructions of the same ground about the same amount of the same parts."""
        return [
            other
            for other in self.case.work.instructions
            if other.identifier != line.identifier
            and other.ground == line.ground
            and is_of_one_amount(self.case, line, other)
            and not is_same_by_chance(self.case, line.assertion, other.assertion)
        ]

    def _excuses(self, line: Claim) -> Iterator[_Excuse]:
        others = self.rivals(line.line)
        for other in others:
            rival = Claim(other, admitted_together(self.case, other.assertion))
            is_above = prevails(self.case, rival, line) is not None
            if not is_above and prevails(self.case, line, rival) is not None:
                continue
            force = self.permissions.in_force(other)
            if other.modality is Modality.ALLOWED:
                still = self.permissions.permits_still(other, [line.line, *others])
                yield _Excuse(rival, all_of([force, still]), is_above)
            elif leaves_no_value(rival, line):
                speaks = none_of(self.permissions.conditions.one_fails(other))
                yield _Excuse(rival, all_of([force, speaks]), False)

    def _at_once(self, line: Claim, excuses: Sequence[_Excuse]) -> Iterator[Alternative]:
        amounts = self._amounts(line.line)
        against = amounts.surely_out if line.line.modality is Modality.REQUIRED else amounts.surely_in
        yield alternatives.kept(none_of(against(line.admitted)))
        for one in excuses:
            admitted = one.claim.admitted
            outside = none_of(amounts.surely_out(admitted))
            held = outside if one.is_touching else amounts.surely_in(admitted)
            yield alternatives.falls(self.case, line, one.claim, all_of([one.active, held]))

    def _by_pair(self, line: Claim, excuses: Sequence[_Excuse]) -> Iterator[Alternative]:
        """Of some choice of what could excuse, all of which speak, every pair is excused or not surely broken."""
        for count in range(len(excuses) + 1):
            for chosen in combinations(excuses, count):
                test = " && ".join([_against(line), *(f"!({_excused(one)})" for one in chosen)])
                pairs = self._amounts(line.line).no_pair(test)
                shape = all_of([*(one.active for one in chosen), pairs])
                among = [one.claim.line.identifier for one in chosen]
                why = f"Each pair keeps it, or it falls or ties for that pair to one of {', '.join(among)}."
                pairwise = Alternative(f"falls-to-{'-or-'.join(among)}", why, shape)
                yield pairwise if chosen else alternatives.kept(shape)

    def _amounts(self, line: Instruction) -> AmountShapes:
        return AmountShapes(self.names, line.assertion, self.names.scope(line))


def is_of_one_amount(case: Case, one: Instruction, two: Instruction) -> bool:
    """Whether two instructions speak of the same amount of the same parts of the work."""
    mine, other = one.assertion, two.assertion
    return (
        mine.aggregate is other.aggregate
        and mine.characteristic == other.characteristic
        and (mine.relation, mine.other) == (other.relation, other.other)
        and case.breadths[one.identifier] == case.breadths[two.identifier]
    )


def _against(line: Claim) -> str:
    if not isinstance(line.admitted, Region):
        return "false"
    test = outside if line.line.modality is Modality.REQUIRED else inside
    return f"({test('?near', '?far', line.admitted)})"


def _excused(excuse: _Excuse) -> str:
    admitted = excuse.claim.admitted
    if not isinstance(admitted, Region):
        return "true" if excuse.is_touching else "false"
    if excuse.is_touching:
        return f"!({outside('?near', '?far', admitted)})"
    return inside("?near", "?far", admitted)
