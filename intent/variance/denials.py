"""The answers on record that take a permission from a value, of what a judgement found."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence

from intent.model.assertions import Condition
from intent.model.work import Modality
from intent.values.sets import Answer
from intent.variance.answers import AskedValue, latest_answer
from intent.variance.attesting import fact_answer
from intent.variance.case import Case
from intent.variance.denial import Denial
from intent.variance.result import BROKEN, OpenKind
from intent.variance.says import Said
from intent.variance.speaking import OverBecause
from intent.variance.verdict import Judgement


def denials_of(
    case: Case, judgement: Judgement, subjects: Sequence[str], day: datetime.date
) -> tuple[Denial, ...]:
    """What was refused or denied, each once: of permissions that are over, of the terms of a consent, and of what is
    broken, where an `unless` does not hold or somebody has refused to dispense from it."""
    return tuple(dict.fromkeys(_denials(case, judgement, subjects, day)))


def _denials(
    case: Case, judgement: Judgement, subjects: Sequence[str], day: datetime.date
) -> Iterator[Denial]:
    for said in judgement.over:
        yield from _of_permission(said)
    for item in judgement.open:
        if item.kind is OpenKind.CONSENT and item.denied:
            yield Denial(instruction=item.instruction or "", fact=item.denied)
    if judgement.verdict in BROKEN:
        for said in judgement.governing:
            yield from _of_exceptions(case, said, day)
            yield from _of_dispensations(case, said, subjects, day)


def _of_permission(said: Said) -> Iterator[Denial]:
    over, line = said.over, said.line.identifier
    if over is None:
        return
    if over.because is OverBecause.REFUSED and over.consent is not None:
        yield Denial(instruction=line, refused_by=over.consent.person)
    elif over.because is OverBecause.EARLIER_CHOICE:
        yield Denial(instruction=line)
    elif over.condition is not None and over.condition.fact:
        yield Denial(instruction=line, fact=over.condition.fact, holds=over.condition.unless)


def _of_exceptions(case: Case, said: Said, day: datetime.date) -> Iterator[Denial]:
    """Of a requirement or prohibition: that what would except from it is attested not to be so."""
    if said.line.modality is Modality.ALLOWED:
        return
    for condition in said.line.conditions:
        if _is_denied(case, condition, day):
            yield Denial(instruction=said.line.identifier, fact=condition.fact or "")


def _of_dispensations(
    case: Case, said: Said, subjects: Sequence[str], day: datetime.date
) -> Iterator[Denial]:
    line, asked = said.line, AskedValue(said.value, subjects, day)
    for person in dict.fromkeys(consent.person for consent in case.consents.get(line.identifier, ())):
        if latest_answer(case, line, person, asked).refusal is not None:
            yield Denial(instruction=line.identifier, refused_by=person)


def _is_denied(case: Case, condition: Condition, day: datetime.date) -> bool:
    if not condition.unless or not condition.fact:
        return False
    return fact_answer(case, condition.fact, day) is Answer.OUT
