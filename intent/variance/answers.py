"""What somebody has answered to an instruction: which of their answers counts on a day, and what it leaves open."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass

from intent.model.assertions import Aggregate
from intent.model.installation import Consent
from intent.model.meaning import admitted_values, scale
from intent.model.work import Instruction
from intent.values.dates import DaySpan
from intent.values.sets import Answer, ValueSet, are_disjoint, is_within
from intent.variance.attesting import fact_answer
from intent.variance.case import Case
from intent.variance.people import answer_days, staff
from intent.variance.result import Open, OpenKind


@dataclass(frozen=True, slots=True)
class AskedValue:
    """What an answer is sought to: a value of some subjects, on a day."""

    value: ValueSet
    subjects: Sequence[str]
    day: datetime.date


@dataclass(frozen=True, slots=True, kw_only=True)
class LatestAnswer:
    """What counts of all that a person, or a successor, has answered: a refusal, or a yes; else neither does."""

    refusal: Consent | None = None
    given: tuple[Consent, ...] = ()
    """Several only where their dates do not tell which came last: the terms of all of them are open."""
    ended: Consent | None = None
    """An answer that has ended, or whose terms do not hold: nothing counts in its place."""


@dataclass(frozen=True, slots=True)
class _DatedAnswer:
    """An answer with the days on which it can have been given."""

    consent: Consent
    days: DaySpan

    @property
    def begins(self) -> datetime.date:
        """A yes counts from the last of its days, a no from the first; without a date both always do."""
        is_late = self.consent.answer and self.consent.date is not None
        return self.days.last if is_late else self.days.first

    def is_surely_later_than(self, other: _DatedAnswer) -> bool:
        return self.days.is_later_than(other.days)


def latest_answer(case: Case, line: Instruction, person: str, asked: AskedValue) -> LatestAnswer:
    """What counts on a day of the answers of a person, or of a successor: a refusal, unless a yes is surely later.

    What has ended, or whose terms are attested not to hold, no longer counts, and no earlier answer revives.
    """
    every = _answers(case, line, person, asked)
    yeses = [one for one in every if one.consent.answer]
    refusals = [
        one
        for one in every
        if not one.consent.answer and not any(yes.is_surely_later_than(one) for yes in yeses)
    ]
    last = refusals or [one for one in yeses if not any(other.is_surely_later_than(one) for other in yeses)]
    over = [one.consent for one in last if _is_over(case, one.consent, asked.day)]
    if refusals:
        left = [one.consent for one in refusals if one.consent not in over]
        return LatestAnswer(refusal=left[-1]) if left else LatestAnswer(ended=over[-1])
    return LatestAnswer(ended=over[-1]) if over else LatestAnswer(given=tuple(one.consent for one in last))


def _answers(case: Case, line: Instruction, person: str, asked: AskedValue) -> list[_DatedAnswer]:
    """The answers that have begun to count by a day, the earlier before the later."""
    found = []
    for consent in case.consents.get(line.identifier, ()):
        days = answer_days(case.work, consent.person, person, consent.date)
        if consent.answer is None or days is None or not _reaches(case, line, consent, asked):
            continue
        answer = _DatedAnswer(consent, days)
        if answer.begins <= asked.day:
            found.append(answer)
    return sorted(found, key=lambda one: (one.days.first, one.days.last, one.consent.iri))


def _is_over(case: Case, consent: Consent, day: datetime.date) -> bool:
    """Whether it has ended by a day, or is a yes of which a term is attested not to hold."""
    if consent.until is not None and consent.until.last < day:
        return True
    return bool(consent.answer) and any(fact_answer(case, fact, day) is Answer.OUT for fact in consent.terms)


def _reaches(case: Case, line: Instruction, consent: Consent, asked: AskedValue) -> bool:
    """Whether it counts here: a yes for all of the subject and value, a no for what reaches into what it names."""
    named, subjects = frozenset(consent.parts), frozenset(asked.subjects)
    if named and not (named >= subjects if consent.answer else named & subjects):
        return False
    answered = answered_values(case, line, consent)
    if answered is None:
        return True
    return is_within(asked.value, answered) if consent.answer else not are_disjoint(asked.value, answered)


def answered_values(case: Case, line: Instruction, consent: Consent) -> ValueSet | None:
    """The values that an answer names; none where it is to all."""
    if consent.value is None:
        return None
    characteristic = case.vocabulary.characteristics.get(line.assertion.characteristic or "")
    if characteristic is None and line.assertion.aggregate is not Aggregate.NUMBER:
        return None
    compared = scale(line.assertion.aggregate, characteristic, case.vocabulary)
    return admitted_values(consent.value, compared, case.vocabulary)


def terms_open(
    case: Case, line: Instruction, given: Sequence[Consent], day: datetime.date
) -> tuple[Open, ...]:
    """The terms of some consents that nobody has yet attested, each once."""
    terms = dict.fromkeys(fact for consent in given for fact in consent.terms)
    return tuple(
        to_attest(case, line, fact, day) for fact in terms if fact_answer(case, fact, day) is not Answer.IN
    )


def to_attest(case: Case, line: Instruction, fact: str, day: datetime.date) -> Open:
    """That somebody in the house has to attest a fact, for an instruction."""
    return Open(
        kind=OpenKind.ATTESTATION,
        text=fact,
        person=next(iter(staff(case.work, day)), None),
        instruction=line.identifier,
    )
