"""Aggregates that permissions of single members can break, though nobody has said which gives way."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from intent.analysis.examination.findings import Finding, names
from intent.analysis.examination.matters import Matter, joined
from intent.analysis.examination.permitting import by_topic, no_use, usable_values
from intent.analysis.examination.together import can_hold_together
from intent.model.assertions import Aggregate
from intent.model.phrasing import assertion_words
from intent.model.work import Instruction, Modality
from intent.names import ABSENT, HEIGHT, POSITION, PRESENCE
from intent.values.sets import Answer, Labels, ValueSet, is_within
from intent.variance.aggregates import amounts
from intent.variance.case import Case
from intent.variance.conditions import admitted_amounts, documented_amounts, every, lies_among
from intent.variance.precedence import Claim, prevails
from intent.variance.state import State

_OF_PLACE = {Aggregate.RELATION, Aggregate.DISTANCE}


@dataclass(frozen=True, slots=True, kw_only=True)
class Leeway:
    """What a permission lets one member be, other than documented."""

    line: Instruction
    member: str
    characteristic: str
    values: ValueSet

    @property
    def may_be_absent(self) -> bool:
        return self.characteristic == PRESENCE


def aggregate_can_break(case: Case, matters: Sequence[Matter]) -> Iterator[Finding]:
    """Permissions that can break aggregates of their members, each with all that it can break.

    An aggregate that does not hold as documented, or perhaps does not, is not broken by a permission.
    """
    leeways = list(_leeways(case, matters))
    broken: dict[tuple[str, ...], list[Instruction]] = {}
    permissions: dict[str, Instruction] = {}
    for matter in matters:
        if matter.aggregate is Aggregate.EACH:
            continue
        for demand in matter.demands:
            breaking = _breaking(case, matter, demand, leeways)
            if breaking:
                permissions.update({line.identifier: line for line in breaking})
                broken.setdefault(tuple(line.identifier for line in breaking), []).append(demand.line)
    for identifiers, lines in broken.items():
        yield _finding(case, [permissions[identifier] for identifier in identifiers], lines)


def _finding(case: Case, breaking: Sequence[Instruction], broken: Sequence[Instruction]) -> Finding:
    verb = "allows" if len(breaking) == 1 else "allow"
    told = names(broken)
    if len(broken) == 1:
        told += f" ({broken[0].modality}: {assertion_words(broken[0].assertion, case.vocabulary)})"
    message = f"what {names(breaking)} {verb} can break {told}, and nobody has said which gives way"
    return Finding(
        slug="aggregate-can-break", message=message, node=breaking[0].iri, subject=breaking[0].identifier
    )


def _leeways(case: Case, matters: Sequence[Matter]) -> Iterator[Leeway]:
    """What permissions of single subjects leave open, beyond what is documented."""
    others = by_topic(matters)
    for matter in matters:
        characteristic = matter.characteristic
        if matter.aggregate is not Aggregate.EACH or characteristic is None:
            continue
        member = matter.members[0]
        if member not in case.documented.devices:
            continue
        documented = case.documented.value(member, characteristic)
        for permission in matter.permissions:
            values = usable_values(case, matter, permission, others)
            is_departure = not values.is_empty and not is_within(values, documented)
            if is_departure and not no_use(case, permission.line):
                yield Leeway(
                    line=permission.line, member=member, characteristic=characteristic.iri, values=values
                )


def _breaking(
    case: Case, matter: Matter, demand: Claim, leeways: Sequence[Leeway]
) -> tuple[Instruction, ...]:
    """The permissions that break an aggregate: any that does so alone, else all of them together."""
    line = demand.line
    concerning = [
        leeway
        for leeway in leeways
        if _concerns(case, matter, line, leeway) and _may_excuse(case, line, leeway)
    ]
    if not concerning or _can_break(case, matter, demand, ()):
        return ()
    lines = {leeway.line.identifier: leeway.line for leeway in concerning}
    alone = tuple(
        permission
        for permission in lines.values()
        if _can_break(case, matter, demand, [leeway for leeway in concerning if leeway.line is permission])
    )
    if alone:
        return alone
    return tuple(lines.values()) if _can_break(case, matter, demand, concerning) else ()


def _concerns(case: Case, matter: Matter, line: Instruction, leeway: Leeway) -> bool:
    if leeway.member not in (*matter.members, line.assertion.other):
        return False
    if leeway.may_be_absent:
        absent = isinstance(leeway.values, Labels) and ABSENT in leeway.values.names
        return absent and matter.aggregate in {Aggregate.NUMBER, Aggregate.TOTAL}
    wanted = {POSITION} if matter.aggregate in _OF_PLACE else {line.assertion.characteristic}
    return leeway.characteristic in (wanted | {POSITION} if HEIGHT in wanted else wanted)


def _may_excuse(case: Case, line: Instruction, leeway: Leeway) -> bool:
    """Of the same ground, of its own or a higher authority, in force with it, and not superseding it."""
    permission = leeway.line
    return (
        permission.ground == line.ground
        and case.ranks[permission.identifier] <= case.ranks[line.identifier]
        and permission not in case.superseders.get(line.identifier, ())
        and can_hold_together(case, (line, permission), (leeway.member,))
    )


def _can_break(case: Case, matter: Matter, demand: Claim, leeways: Sequence[Leeway]) -> bool:
    """Whether something that they allow is against the aggregate, and no permission of the aggregate covers it."""
    line = demand.line
    documented = documented_amounts(case, line.assertion, matter.members)
    wanted = Answer.IN if line.modality is Modality.REQUIRED else Answer.OUT
    for state in _states(case, leeways):
        answers = []
        for amount in amounts(line.assertion, matter.members, state):
            admitted = admitted_amounts(
                case, line.assertion, documented.get(amount.members) or _only(documented)
            )
            covered = _covered(case, matter, demand, admitted)
            answers.append(lies_among(amount.value, covered))
        if answers and every(answers) is not wanted:
            return True
    return False


def _only(documented: Mapping[tuple[str, ...], ValueSet]) -> ValueSet | None:
    return next(iter(documented.values()), None)


def _covered(case: Case, matter: Matter, demand: Claim, admitted: ValueSet | None) -> ValueSet | None:
    """What a requirement admits, with what permissions of the same aggregate allow beside it."""
    if admitted is None or demand.line.modality is Modality.FORBIDDEN:
        return admitted
    for permission in matter.permissions:
        if permission.admitted is not None and prevails(case, permission, demand) is not None:
            admitted = joined(admitted, permission.admitted)
    return admitted


def _states(case: Case, leeways: Sequence[Leeway]) -> Iterator[State]:
    """The documented state with every value that the leeways leave; and with the parts gone that may be."""
    values: dict[tuple[str, str], ValueSet] = {}
    for leeway in leeways:
        if not leeway.may_be_absent:
            characteristic = case.vocabulary.characteristics[leeway.characteristic]
            key = (leeway.member, leeway.characteristic)
            before = values.get(key, case.documented.value(leeway.member, characteristic))
            values[key] = joined(before, leeway.values)
    state = case.documented.assuming(values)
    yield state
    absent = {leeway.member for leeway in leeways if leeway.may_be_absent}
    if absent:
        yield replace(state, present={part: None for part in state.present if part not in absent})
        for one in absent:
            yield replace(state, present={part: None for part in state.present if part != one})
