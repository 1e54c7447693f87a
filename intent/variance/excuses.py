"""Aggregates broken only by departures that are permitted: nobody has said which was meant to give way."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from itertools import product

from intent.language.message import named
from intent.model.assertions import Aggregate
from intent.model.meaning import admitted_values
from intent.model.work import Instruction, Modality
from intent.names import POSITION, PRESENCE
from intent.values.sets import Answer
from intent.variance.aggregates import amounts
from intent.variance.case import Case
from intent.variance.change import documented_for
from intent.variance.conditions import admitted_amounts, documented_amounts, lies_among
from intent.variance.says import Inquiry, Said, Says, ask
from intent.variance.speaking import speakers
from intent.variance.state import State
from intent.variance.topics import EachIndex, Topic


def excusing_permissions(
    case: Case, index: EachIndex, topic: Topic, broken: Sequence[Said], day: datetime.date
) -> tuple[Instruction, ...] | None:
    """The permissions whose departures alone break an aggregate that the documented state surely meets.

    None where it is not surely met as documented, or not without those departures. Only permissions of the same
    ground count, of the broken instruction's own authority or a higher.
    """
    permissions: dict[str, Instruction] = {}
    for said in broken:
        covered = _covered(case, index, topic, said.line, day)
        if not covered or not _would_hold(case, said.line, covered):
            return None
        permissions.update({line.identifier: line for line in covered.values()})
    return tuple(permissions.values())


def _would_hold(case: Case, line: Instruction, covered: Iterable[tuple[str, str]]) -> bool:
    undone = case.proposed.with_values_of(case.documented, covered)
    good = Answer.IN if line.modality is Modality.REQUIRED else Answer.OUT
    return all(set(answers_in_state(case, line, state)) <= {good} for state in (case.documented, undone))


def answers_in_state(case: Case, line: Instruction, state: State) -> list[Answer]:
    members = [member for member in case.members[line.identifier] if member in state.statements]
    documented = documented_amounts(case, line.assertion, members)
    return [
        lies_among(amount.value, admitted_amounts(case, line.assertion, documented.get(amount.members)))
        for amount in amounts(line.assertion, members, state)
    ]


def _covered(
    case: Case, index: EachIndex, topic: Topic, line: Instruction, day: datetime.date
) -> dict[tuple[str, str], Instruction]:
    """The departures of members, as subject and characteristic, each with a permission that covers it."""
    concerned = [PRESENCE]
    if line.assertion.aggregate in {Aggregate.RELATION, Aggregate.DISTANCE}:
        concerned.append(POSITION)
    elif line.assertion.characteristic:
        concerned.append(line.assertion.characteristic)
    members = (*topic.members, *([line.assertion.other] if line.assertion.other else []))
    covered = {}
    for member, iri in product(members, concerned):
        lines = [other for other in index.get((member, iri), ()) if other.ground == line.ground]
        if any(other.modality is Modality.ALLOWED for other in lines) and _departs(case, member, iri):
            permissions = _permitting(case, lines, member, iri, day)
            ranking = (
                one for one in permissions if case.ranks[one.identifier] <= case.ranks[line.identifier]
            )
            permission = next(ranking, None)
            if permission is not None:
                covered[(member, iri)] = permission
    return covered


def _departs(case: Case, member: str, iri: str) -> bool:
    characteristic = case.vocabulary.characteristics[iri]
    return case.documented.value(member, characteristic) != case.proposed.value(member, characteristic)


def _permitting(
    case: Case, lines: Sequence[Instruction], member: str, iri: str, day: datetime.date
) -> list[Instruction]:
    """The permissions that cover the proposed value on a day, with something open or nothing."""
    characteristic = case.vocabulary.characteristics[iri]
    value, documented = (
        case.proposed.value(member, characteristic),
        documented_for(case, member, characteristic),
    )
    questions = [
        Inquiry(
            speaker=speaker,
            value=value,
            admitted=admitted_values(
                speaker.line.assertion.expression, characteristic, case.vocabulary, documented
            ),
            text=named(characteristic),
        )
        for speaker in speakers(case, lines, (member,), day)
    ]
    said = ask(case, questions, (member,), day)
    return [one.line for one in said if one.says is Says.PERMITS and not one.is_requirement]
