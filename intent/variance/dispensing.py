"""Who may dispense from an instruction, and who has."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from intent.model.work import Instruction, Modality, Person
from intent.variance.answers import AskedValue, latest_answer, terms_open
from intent.variance.case import Case
from intent.variance.result import Open


@dataclass(frozen=True, slots=True)
class Dispensation:
    """That somebody has dispensed from an instruction for this installation, with what is open in the terms."""

    person: str
    open: tuple[Open, ...]


def may_dispense(case: Case, line: Instruction) -> Iterator[Person]:
    """Those who may: whom its `lifted by` names; without one, all who rank with who gave it, or higher.

    Their successors answer for them. Nobody dispenses from a rule of safety, and what is allowed calls for none.
    """
    if line.ground == "safety" or line.modality is Modality.ALLOWED:
        return
    for person in case.work.people:
        if line.lifted_by is None:
            is_able = person.authority <= case.ranks[line.identifier]
        else:
            is_able = person.identifier in line.lifted_by
        if is_able:
            yield person


def dispensations(case: Case, line: Instruction, asked: AskedValue) -> tuple[Dispensation, ...]:
    """The dispensations from an instruction that count on a day, one of each who gave one."""
    if line.identifier not in case.consents:
        return ()
    found: dict[str, Dispensation] = {}
    for person in may_dispense(case, line):
        given = latest_answer(case, line, person.identifier, asked).given
        if given:
            opens = terms_open(case, line, given, asked.day)
            found.setdefault(given[-1].person, Dispensation(given[-1].person, opens))
    return tuple(found.values())
