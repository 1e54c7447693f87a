"""Step 2: what each speaking instruction says of a value."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from intent.language.message import Words
from intent.model.work import Instruction, Modality
from intent.values.sets import ANY_LABEL, Answer, ValueSet
from intent.variance.case import Case
from intent.variance.conditions import lies_among
from intent.variance.precedence import Claim
from intent.variance.result import Open, OpenKind
from intent.variance.speaking import Speaker, dispensations, permission_open


class Says(StrEnum):
    MEETS = "meets"
    AGAINST = "against"
    PERHAPS_AGAINST = "perhaps against"
    PERMITS = "permits"
    PERHAPS_PERMITS = "perhaps permits"
    NOTHING = "nothing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """One instruction's word on one value, with what is open and who has dispensed from it."""

    claim: Claim
    says: Says
    open: tuple[Open, ...] = ()
    dispensed: tuple[tuple[str, tuple[Open, ...]], ...] = ()
    """People, each with the open terms of their dispensation."""
    value: ValueSet = ANY_LABEL
    """The value that it was asked about."""

    @property
    def line(self) -> Instruction:
        return self.claim.line

    @property
    def is_requirement(self) -> bool:
        return self.line.modality is Modality.REQUIRED


TABLE = {
    (Modality.REQUIRED, Answer.IN): Says.MEETS,
    (Modality.REQUIRED, Answer.OUT): Says.AGAINST,
    (Modality.REQUIRED, Answer.OPEN): Says.PERHAPS_AGAINST,
    (Modality.ALLOWED, Answer.IN): Says.PERMITS,
    (Modality.ALLOWED, Answer.OUT): Says.NOTHING,
    (Modality.ALLOWED, Answer.OPEN): Says.PERHAPS_PERMITS,
    (Modality.FORBIDDEN, Answer.IN): Says.AGAINST,
    (Modality.FORBIDDEN, Answer.OUT): Says.NOTHING,
    (Modality.FORBIDDEN, Answer.OPEN): Says.PERHAPS_AGAINST,
}
WITH_SOMETHING_OPEN = {Says.AGAINST: Says.PERHAPS_AGAINST, Says.MEETS: Says.PERMITS}


@dataclass(frozen=True, slots=True, kw_only=True)
class Inquiry:
    """A speaking instruction, the value it is asked about, and what it admits."""

    speaker: Speaker
    value: ValueSet
    admitted: ValueSet | None
    text: Words
    """What to call the value, where it is not said precisely enough: `technology of M1`."""
    measure: frozenset[str] = frozenset()
    """Of a number that decides presence: whose number it is; numbers of other scopes are not comparable."""


def ask(case: Case, questions: Sequence[Inquiry], subjects: Sequence[str], day: datetime.date) -> list[Said]:
    """What each instruction says; permissions taken away say nothing."""
    said = (_ask(case, question, subjects, day, questions) for question in questions)
    return [word for word in said if word is not None]


def _ask(
    case: Case, question: Inquiry, subjects: Sequence[str], day: datetime.date, questions: Sequence[Inquiry]
) -> Said | None:
    line, opens = question.speaker.line, question.speaker.open
    claim = Claim(line, question.admitted, question.measure)
    answer = lies_among(question.value, question.admitted)
    says = TABLE[(line.modality, answer)]
    if line.modality is Modality.ALLOWED:
        earlier = _earlier_choices(case, line, questions, subjects, day)
        further = permission_open(
            case, line=line, subjects=subjects, value=question.value, day=day, earlier=earlier
        )
        if further is None:
            return None
        opens = (*opens, *further)
    elif opens:
        says = WITH_SOMETHING_OPEN.get(says, says)
    if answer is Answer.OPEN:
        opens = (
            *opens,
            Open(
                kind=OpenKind.VALUE,
                text=question.text,
                person=case.installation.by,
                instruction=line.identifier,
            ),
        )
    lifted: tuple[tuple[str, tuple[Open, ...]], ...] = ()
    if says in {Says.AGAINST, Says.PERHAPS_AGAINST}:
        given = dispensations(case, line, subjects, question.value, day)
        lifted = tuple((consent.person, terms) for consent, terms in given)
    return Said(
        claim=claim, says=says, open=tuple(dict.fromkeys(opens)), dispensed=lifted, value=question.value
    )


def _earlier_choices(
    case: Case, line: Instruction, questions: Sequence[Inquiry], subjects: Sequence[str], day: datetime.date
) -> list[Instruction]:
    """The earlier choices in force; one whose consent is refused, or that nobody can consent to, is not."""
    if line.choice is None:
        return []
    earlier = [
        question
        for question in questions
        if question.speaker.line.choice is not None and question.speaker.line.choice < line.choice
    ]
    earlier.sort(key=lambda question: (question.speaker.line.choice or 0, question.speaker.line.identifier))
    return [
        question.speaker.line
        for question in earlier
        if permission_open(case, question.speaker.line, subjects, question.admitted, day) is not None
    ]
