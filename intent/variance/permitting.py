"""What a permission still leaves open, or why it no longer permits anything."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from intent.language.message import say
from intent.model.installation import Consent
from intent.model.work import Instruction
from intent.values.dates import DaySpan
from intent.values.sets import Answer
from intent.variance.answers import AskedValue, latest_answer, terms_open, to_attest
from intent.variance.attesting import cannot_be_had, fact_answer
from intent.variance.case import Case
from intent.variance.people import who_can_answer
from intent.variance.result import Open, OpenKind
from intent.variance.speaking import Over, OverBecause

Permitting = tuple[Open, ...] | Over
"""What is open; or why the permission is over."""


def permitting(
    case: Case, line: Instruction, asked: AskedValue, earlier: Sequence[Instruction] = ()
) -> Permitting:
    """What a permission in force leaves open beside its conditions: consents, their terms, earlier choices."""
    opens: list[Open] = []
    for person in line.consents:
        found = _consent(case, line, person, asked)
        if isinstance(found, Over):
            return found
        opens.extend(found)
    choices = _choices(case, line, earlier, asked.day)
    return choices if isinstance(choices, Over) else (*opens, *choices)


def _consent(case: Case, line: Instruction, person: str, asked: AskedValue) -> Permitting:
    latest = latest_answer(case, line, person, asked)
    if latest.refusal is not None:
        return Over(because=OverBecause.REFUSED, consent=latest.refusal)
    if latest.given:
        return terms_open(case, line, latest.given, asked.day)
    able = who_can_answer(case.work, person, case.installation.dates.first)
    if able is None:
        return Over(because=OverBecause.NOBODY_LEFT, by=person)
    ends = _end(latest.ended, asked.day)
    wanted = Open(
        kind=OpenKind.CONSENT,
        text=say("the one that was given ends on {date}", date=ends) if ends else "",
        ends=ends,
        denied=_term_denied(case, latest.ended, asked.day),
        person=able.identifier,
        instruction=line.identifier,
    )
    return (wanted,)


def _end(ended: Consent | None, day: datetime.date) -> DaySpan | None:
    """When a consent ended that was given, and counts no longer on a day."""
    if ended is None or not ended.answer or ended.until is None or ended.until.last >= day:
        return None
    return ended.until


def _term_denied(case: Case, given: Consent | None, day: datetime.date) -> str:
    """The term of a consent that is attested not to hold on a day; nothing of one that is over for another reason."""
    if given is None or not given.answer:
        return ""
    return next((fact for fact in given.terms if fact_answer(case, fact, day) is Answer.OUT), "")


def _choices(case: Case, line: Instruction, earlier: Sequence[Instruction], day: datetime.date) -> Permitting:
    """Of a later choice without a condition of its own: that each earlier one cannot be had."""
    if line.conditions:
        return ()
    opens = []
    for choice in earlier:
        fact = cannot_be_had(choice)
        answer = fact_answer(case, fact, day)
        if answer is Answer.OUT:
            return Over(because=OverBecause.EARLIER_CHOICE, by=choice.identifier)
        if answer is Answer.OPEN:
            opens.append(to_attest(case, line, fact, day))
    return tuple(opens)
