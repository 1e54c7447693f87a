"""Step 2: what each speaking instruction says of a value."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from intent.language.message import Words
from intent.model.work import Instruction, Modality
from intent.names import THE_VENUE
from intent.values.sets import ANY_LABEL, Answer, ValueSet
from intent.variance.answers import AskedValue
from intent.variance.case import Case
from intent.variance.conditions import lies_among
from intent.variance.dispensing import Dispensation, dispensations
from intent.variance.permitting import Permitting, permitting
from intent.variance.precedence import Claim
from intent.variance.result import Open, OpenKind
from intent.variance.speaking import Over, Speaker
from intent.variance.venue_asked import who_can_say


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
    dispensed: tuple[Dispensation, ...] = ()
    over: Over | None = None
    """Of a permission that would cover the value: why it permits nothing any more."""
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
    """What each instruction says; a permission that is over says nothing, and still speaks."""
    return [
        _ask(case, question, AskedValue(question.value, subjects, day), questions) for question in questions
    ]


def _ask(case: Case, question: Inquiry, asked: AskedValue, questions: Sequence[Inquiry]) -> Said:
    line = question.speaker.line
    claim = Claim(line, question.admitted, question.measure)
    answer = lies_among(question.value, question.admitted)
    further = _further(case, question, asked, questions)
    if isinstance(further, Over):
        over = further if answer is Answer.IN else None
        return Said(claim=claim, says=Says.NOTHING, over=over, value=question.value)
    opens = (*question.speaker.open, *further)
    says = TABLE[(line.modality, answer)]
    if opens and line.modality is not Modality.ALLOWED:
        says = WITH_SOMETHING_OPEN.get(says, says)
    if says is Says.PERHAPS_AGAINST:
        # What stands against a value falls where its condition does not hold, so the other answer is the one sought.
        opens = tuple(replace(item, answer=not item.answer) for item in opens)
    if answer is Answer.OPEN:
        opens = (*opens, _to_be_known(case, question, asked))
    is_against = says in {Says.AGAINST, Says.PERHAPS_AGAINST}
    return Said(
        claim=claim,
        says=says,
        open=tuple(dict.fromkeys(opens)),
        dispensed=dispensations(case, line, asked) if is_against else (),
        value=question.value,
    )


def _further(case: Case, question: Inquiry, asked: AskedValue, questions: Sequence[Inquiry]) -> Permitting:
    """What a permission leaves open beside its conditions, or why it is over."""
    line = question.speaker.line
    if question.speaker.over is not None:
        return question.speaker.over
    if line.modality is not Modality.ALLOWED:
        return ()
    return permitting(case, line, asked, _earlier_choices(line, questions))


def _earlier_choices(line: Instruction, questions: Sequence[Inquiry]) -> list[Instruction]:
    """The earlier choices in force: also those whose consent is refused, or that nobody can consent to."""
    if line.choice is None:
        return []
    speaking = (question.speaker for question in questions)
    earlier = [
        (speaker.line.choice, speaker.line.identifier, speaker.line)
        for speaker in speaking
        if speaker.over is None and speaker.line.choice is not None and speaker.line.choice < line.choice
    ]
    return [choice for _, _, choice in sorted(earlier, key=lambda one: one[:2])]


def _to_be_known(case: Case, question: Inquiry, asked: AskedValue) -> Open:
    of_the_venue = tuple(asked.subjects) == (THE_VENUE,)
    return Open(
        kind=OpenKind.VALUE,
        text=question.text,
        person=who_can_say(case.work, case.installation, of_the_venue=of_the_venue),
        instruction=question.speaker.line.identifier,
    )
