"""What is attested of a fact by a day."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from intent.model.installation import Attestation
from intent.model.work import Instruction, Work
from intent.values.dates import FIRST_DAY, DaySpan
from intent.values.sets import Answer
from intent.variance.case import Case
from intent.variance.people import answer_days
from intent.vocabulary.phrases import normal


@dataclass(frozen=True, slots=True)
class _Word:
    """An attestation with the days on which it can have been made."""

    holds: bool
    days: DaySpan
    begins: datetime.date


def cannot_be_had(choice: Instruction) -> str:
    """The fact that somebody attests of a choice before a later one is open."""
    return f"{choice.identifier} cannot be had"


def fact_answer(case: Case, fact: str, day: datetime.date, *, hoped: bool = True) -> Answer:
    """What is attested of a fact by a day: the latest word counts.

    Two at odds, of which neither is surely later, leave it open. As with a consent, what is hoped for counts from the
    last of the days of its date, the contrary from the first.
    """
    words = []
    for attestation in case.attested.get(normal(fact), ()):
        days = attestation_days(case.work, attestation)
        if days is not None:
            word = _Word(attestation.holds, days, days.last if attestation.holds is hoped else days.first)
            words += [word] * (word.begins <= day)
    said = {one.holds for one in words if not any(other.days.is_later_than(one.days) for other in words)}
    if len(said) != 1:
        return Answer.OPEN
    return Answer.IN if said.pop() else Answer.OUT


def attestation_days(work: Work, attestation: Attestation) -> DaySpan | None:
    """The days of its date that lie in the time of who attests; none where there is no such day.

    Without a date it is older than all others, and counts only where that time has no end.
    """
    person = work.person(attestation.by)
    days = attestation.date or DaySpan(FIRST_DAY, FIRST_DAY)
    if person is None:
        return days
    found = answer_days(work, person.identifier, person.identifier, attestation.date)
    return found if attestation.date is not None or found is None else days
