"""Step 1: which instructions speak of a subject on a day, and what each leaves open."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass

from intent.language.message import Words, say
from intent.model.assertions import Aggregate
from intent.model.installation import Consent
from intent.model.meaning import admitted_values, scale
from intent.model.work import Instruction, Modality
from intent.values.sets import Answer, ValueSet, are_disjoint, is_within
from intent.variance.case import Case
from intent.variance.conditions import conditions_answer, fact_answer
from intent.variance.people import authority_of, speaks_for, staff, who_can_answer
from intent.variance.result import Open, OpenKind


@dataclass(frozen=True, slots=True)
class Speaker:
    """An instruction that speaks of a subject, with what is open about its conditions."""

    line: Instruction
    open: tuple[Open, ...] = ()


def speakers(
    case: Case, lines: Sequence[Instruction], subjects: Sequence[str], day: datetime.date
) -> list[Speaker]:
    """Of the instructions whose scope holds a subject, those in force on a day.

    What stands under a condition known not to hold is left out, and so is what another has withdrawn.
    """
    found = []
    for line in lines:
        if not is_dated_in_force(line, day) or is_superseded(case, line, subjects, day):
            continue
        answer, opens = conditions_answer(case, line, subjects, day)
        if answer is not Answer.OUT:
            found.append(Speaker(line, opens))
    return found


def is_dated_in_force(line: Instruction, day: datetime.date) -> bool:
    """From the first day of its date, to the last of its `until`, and not from a day on which it is withdrawn."""
    if line.on is not None and day < line.on.first:
        return False
    if line.until is not None and day > line.until.last:
        return False
    return line.withdrawn is None or day < line.withdrawn.first


def is_superseded(case: Case, line: Instruction, subjects: Sequence[str], day: datetime.date) -> bool:
    """Whether another has withdrawn it by a day; what is withdrawn stays withdrawn."""
    return any(
        (later.on is None or later.on.first <= day)
        and conditions_answer(case, later, subjects, day)[0] is Answer.IN
        and not _is_taken_away(case, later, subjects, day)
        for later in case.superseders.get(line.identifier, ())
    )


def _is_taken_away(case: Case, line: Instruction, subjects: Sequence[str], day: datetime.date) -> bool:
    return line.modality is Modality.ALLOWED and permission_open(case, line, subjects, None, day) is None


def permission_open(
    case: Case,
    line: Instruction,
    subjects: Sequence[str],
    value: ValueSet | None,
    day: datetime.date,
    earlier: Sequence[Instruction] = (),
) -> tuple[Open, ...] | None:
    """What a permission further leaves open: consents, their terms, earlier choices. None: it is taken away."""
    opens: list[Open] = []
    for person in line.consents:
        found = _consent_open(case, line=line, person=person, subjects=subjects, value=value, day=day)
        if found is None:
            return None
        opens.extend(found)
    if line.choice is not None and line.choice > 1 and not line.conditions:
        for choice in earlier:
            fact = f"{choice.identifier} cannot be had"
            answer = fact_answer(case, fact, day)
            if answer is Answer.OUT:
                return None
            if answer is Answer.OPEN:
                opens.append(_attestation(case, fact, line, day))
    return tuple(opens)


def _attestation(case: Case, fact: str, line: Instruction, day: datetime.date) -> Open:
    return Open(
        kind=OpenKind.ATTESTATION,
        text=fact,
        person=next(iter(staff(case.work, day)), None),
        instruction=line.identifier,
    )


def _consent_open(
    case: Case,
    line: Instruction,
    person: str,
    subjects: Sequence[str],
    value: ValueSet | None,
    day: datetime.date,
) -> tuple[Open, ...] | None:
    given = [
        consent
        for consent in case.consents.get(line.identifier, ())
        if speaks_for(case.work, consent.person, person, consent.date)
    ]
    latest = _latest(case, line=line, given=given, subjects=subjects, value=value, day=day)
    if latest is not None and latest.answer is False:
        return None
    if latest is not None:
        return terms_open(case, line, latest, day)
    able = who_can_answer(case.work, person, day)
    if able is None:
        return None
    return (
        Open(
            kind=OpenKind.CONSENT,
            text=_lapsed(given, day),
            person=able.identifier,
            instruction=line.identifier,
        ),
    )


def _lapsed(given: Sequence[Consent], day: datetime.date) -> Words:
    """That a consent was given, but has ended by a day."""
    ended = [consent for consent in given if consent.answer and consent.until and consent.until.last < day]
    last = max(ended, key=_day_of, default=None)
    return say("the one that was given ends on {date}", date=last.until) if last and last.until else ""


def _latest(
    case: Case,
    line: Instruction,
    given: Sequence[Consent],
    subjects: Sequence[str],
    value: ValueSet | None,
    day: datetime.date,
) -> Consent | None:
    """The latest answer that applies on a day; of several on one day a no, else the one with least open."""
    applying = [
        consent
        for consent in given
        if _applies(case, line=line, consent=consent, subjects=subjects, value=value, day=day)
    ]
    last = max((_day_of(consent) for consent in applying), default=None)
    latest = [consent for consent in applying if _day_of(consent) == last]
    return min(
        latest,
        key=lambda one: (bool(one.answer), len(terms_open(case, line, one, day)), one.iri),
        default=None,
    )


def _day_of(consent: Consent) -> datetime.date:
    return consent.date.first if consent.date else datetime.date.min


def _applies(
    case: Case,
    line: Instruction,
    consent: Consent,
    subjects: Sequence[str],
    value: ValueSet | None,
    day: datetime.date,
) -> bool:
    """Whether an answer counts: a yes for all of the subject and value, a no for any of it.

    Where no value is in question, a no counts only if it is to all values.
    """
    if consent.answer is None or _day_of(consent) > day:
        return False
    if consent.until is not None and day > consent.until.last:
        return False
    named = frozenset(consent.parts)
    if named and not (named >= frozenset(subjects) if consent.answer else named & frozenset(subjects)):
        return False
    if consent.answer and any(fact_answer(case, fact, day) is Answer.OUT for fact in consent.terms):
        return False
    consented = _consented_values(case, line, consent)
    if consented is None:
        return True
    if value is None:
        return consent.answer
    return is_within(value, consented) if consent.answer else not are_disjoint(value, consented)


def _consented_values(case: Case, line: Instruction, consent: Consent) -> ValueSet | None:
    if consent.value is None:
        return None
    characteristic = case.vocabulary.characteristics.get(line.assertion.characteristic or "")
    if characteristic is None and line.assertion.aggregate is not Aggregate.NUMBER:
        return None
    compared = scale(line.assertion.aggregate, characteristic, case.vocabulary)
    return admitted_values(consent.value, compared, case.vocabulary)


def refusals(
    case: Case, lines: Sequence[Instruction], subjects: Sequence[str], value: ValueSet, day: datetime.date
) -> list[tuple[Instruction, Consent]]:
    """The permissions in force that somebody has refused for a value by a day, each with the refusal."""
    found = []
    for line in lines:
        if line.modality is Modality.ALLOWED and line.consents and is_dated_in_force(line, day):
            answers = case.consents.get(line.identifier, ())
            latest = _latest(case, line=line, given=answers, subjects=subjects, value=value, day=day)
            if latest is not None and latest.answer is False:
                found.append((line, latest))
    return found


def terms_open(case: Case, line: Instruction, consent: Consent, day: datetime.date) -> tuple[Open, ...]:
    """The terms of a consent that nobody has yet attested."""
    return tuple(
        _attestation(case, fact, line, day)
        for fact in consent.terms
        if fact_answer(case, fact, day) is not Answer.IN
    )


def dispensations(
    case: Case, line: Instruction, subjects: Sequence[str], value: ValueSet | None, day: datetime.date
) -> list[tuple[Consent, tuple[Open, ...]]]:
    """Consents to what is required or forbidden, by those whose authority suffices; none lifts safety."""
    if line.ground == "safety" or line.modality is Modality.ALLOWED:
        return []
    lifting = []
    for person in dict.fromkeys(consent.person for consent in case.consents.get(line.identifier, ())):
        given = [consent for consent in case.consents[line.identifier] if consent.person == person]
        own = [consent for consent in given if speaks_for(case.work, person, person, consent.date)]
        latest = _latest(case, line=line, given=own, subjects=subjects, value=value, day=day)
        if latest is None or not latest.answer:
            continue
        if authority_of(case.work, person, latest.date) <= case.ranks[line.identifier]:
            lifting.append((latest, terms_open(case, line, latest, day)))
    return lifting
