"""Aggregates that permissions of single members can break, though nobody has said which gives way."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from intent.analysis.examination.compatibility import can_hold_together
from intent.analysis.examination.findings import Finding, identifiers
from intent.analysis.examination.topic_claims import TopicClaims
from intent.analysis.examination.unusable_permissions import no_use, of_all_grounds, usable_values
from intent.language.message import Place, say, say_of
from intent.model.assertions import Aggregate
from intent.model.instruction_text import AssertionSentence, modality_term
from intent.model.work import Instruction, Modality
from intent.names import ABSENT, HEIGHT, POSITION, PRESENCE
from intent.values.sets import Answer, Labels, ValueSet, is_within, union
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


def aggregate_can_break(case: Case, topics: Sequence[TopicClaims]) -> Iterator[Finding]:
    """Permissions that can break aggregates of their members, each with all that it can break.

    An aggregate that does not hold as documented, or perhaps does not, is not broken by a permission.
    """
    leeways = list(_leeways(case, topics))
    broken: dict[tuple[str, ...], list[Instruction]] = {}
    permissions: dict[str, Instruction] = {}
    for topic in topics:
        if topic.aggregate is Aggregate.EACH:
            continue
        for demand in topic.demands:
            breaking = _breaking(case, topic, demand, leeways)
            if breaking:
                permissions.update({line.identifier: line for line in breaking})
                broken.setdefault(tuple(line.identifier for line in breaking), []).append(demand.line)
    for breaking_lines, lines in broken.items():
        yield _finding(case, [permissions[one] for one in breaking_lines], lines)


def _finding(case: Case, breaking: Sequence[Instruction], broken: Sequence[Instruction]) -> Finding:
    permissions, demands = identifiers(breaking), identifiers(broken)
    return Finding(
        slug="aggregate-can-break",
        message=say_of(
            len(permissions),
            "what {lines} allows can break {broken}, and nobody has said which gives way",
            "what {lines} allow can break {broken}, and nobody has said which gives way",
            lines=permissions,
            broken=_in_full(case, broken[0]) if len(demands) == 1 else demands,
        ),
        node=breaking[0].iri,
        subject=breaking[0].identifier,
        lines=(*permissions, *demands),
    )


def _in_full(case: Case, line: Instruction) -> Place:
    return say(
        "{line} ({modality}: {statement})",
        line=line.identifier,
        modality=modality_term(line.modality, case.vocabulary),
        statement=AssertionSentence(line.assertion, case.vocabulary),
    )


def _leeways(case: Case, topics: Sequence[TopicClaims]) -> Iterator[Leeway]:
    """What permissions of single subjects leave open, beyond what is documented."""
    every = of_all_grounds(topics)
    for topic in topics:
        characteristic = topic.characteristic
        if topic.aggregate is not Aggregate.EACH or characteristic is None:
            continue
        member = topic.members[0]
        if member not in case.documented.devices:
            continue
        documented = case.documented.value(member, characteristic)
        for permission in topic.permissions:
            values = usable_values(case, topic, permission, every)
            is_departure = not values.is_empty and not is_within(values, documented)
            if is_departure and not no_use(case, permission.line):
                yield Leeway(
                    line=permission.line, member=member, characteristic=characteristic.iri, values=values
                )


def _breaking(
    case: Case, topic: TopicClaims, demand: Claim, leeways: Sequence[Leeway]
) -> tuple[Instruction, ...]:
    """The permissions that break an aggregate: any that does so alone, else all of them together."""
    line = demand.line
    concerning = [
        leeway
        for leeway in leeways
        if _concerns(case, topic, line, leeway) and _may_excuse(case, line, leeway)
    ]
    if not concerning or _can_break(case, topic, demand, ()):
        return ()
    lines = {leeway.line.identifier: leeway.line for leeway in concerning}
    alone = tuple(
        permission
        for permission in lines.values()
        if _can_break(case, topic, demand, [leeway for leeway in concerning if leeway.line is permission])
    )
    if alone:
        return alone
    return tuple(lines.values()) if _can_break(case, topic, demand, concerning) else ()


def _concerns(case: Case, topic: TopicClaims, line: Instruction, leeway: Leeway) -> bool:
    if leeway.member not in (*topic.members, line.assertion.other):
        return False
    if leeway.may_be_absent:
        absent = isinstance(leeway.values, Labels) and ABSENT in leeway.values.names
        return absent and topic.aggregate in {Aggregate.NUMBER, Aggregate.TOTAL}
    wanted = {POSITION} if topic.aggregate in _OF_PLACE else {line.assertion.characteristic}
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


def _can_break(case: Case, topic: TopicClaims, demand: Claim, leeways: Sequence[Leeway]) -> bool:
    """Whether something that they allow is against the aggregate, and no permission of the aggregate covers it."""
    line = demand.line
    documented = documented_amounts(case, line.assertion, topic.members)
    wanted = Answer.IN if line.modality is Modality.REQUIRED else Answer.OUT
    for state in _states(case, leeways):
        answers = []
        for amount in amounts(line.assertion, topic.members, state):
            admitted = admitted_amounts(
                case, line.assertion, documented.get(amount.members) or _only(documented)
            )
            covered = _covered(case, topic, demand, admitted)
            answers.append(lies_among(amount.value, covered))
        if answers and every(answers) is not wanted:
            return True
    return False


def _only(documented: Mapping[tuple[str, ...], ValueSet]) -> ValueSet | None:
    return next(iter(documented.values()), None)


def _covered(case: Case, topic: TopicClaims, demand: Claim, admitted: ValueSet | None) -> ValueSet | None:
    """What a requirement admits, with what permissions of the same aggregate allow beside it."""
    if admitted is None or demand.line.modality is Modality.FORBIDDEN:
        return admitted
    for permission in topic.permissions:
        if permission.admitted is not None and prevails(case, permission, demand) is not None:
            admitted = union(admitted, permission.admitted)
    return admitted


def _states(case: Case, leeways: Sequence[Leeway]) -> Iterator[State]:
    """The documented state with every value that the leeways leave; and with the parts gone that may be."""
    values: dict[tuple[str, str], ValueSet] = {}
    for leeway in leeways:
        if not leeway.may_be_absent:
            characteristic = case.vocabulary.characteristics[leeway.characteristic]
            key = (leeway.member, leeway.characteristic)
            before = values.get(key, case.documented.value(leeway.member, characteristic))
            values[key] = union(before, leeway.values)
    state = case.documented.assuming(values)
    yield state
    absent = {leeway.member for leeway in leeways if leeway.may_be_absent}
    if absent:
        yield replace(state, present={part: None for part in state.present if part not in absent})
        for one in absent:
            yield replace(state, present={part: None for part in state.present if part != one})
