"""The duties of one showing: which are in force, who has to do them, on what days, and what is attested of them."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from intent.model.assertions import Condition
from intent.model.duty import Duty
from intent.model.installation import Attestation, Installation
from intent.model.work import Work
from intent.planning.due_days import DueDays, days_due
from intent.values.dates import DaySpan, first_day, last_day
from intent.values.sets import Answer
from intent.variance.attesting import attestation_days, fact_answer
from intent.variance.case import Case, lay_out
from intent.variance.conditions import assertion_answer
from intent.variance.duties_held import is_held, superseded_from
from intent.variance.people import who_can_answer
from intent.vocabulary.phrases import normal


@dataclass(frozen=True, slots=True, kw_only=True)
class DueDuty:
    """A duty as one showing has it."""

    duty: Duty
    person: str | None
    """Who has to do it, where that is a person: the one named, or who has succeeded them by the first day."""
    days: DueDays
    open: tuple[Condition, ...] = ()
    """Conditions of which nobody can say yet whether they hold."""
    said: Attestation | None = None
    """The latest word on whether it was done; of a duty that recurs there is none for the whole."""
    times_done: int = 0
    """Of a duty that recurs: in how many of its periods it is attested as done."""
    times: int | None = None
    """Of a duty that recurs: how many periods it has; none where it has no first or no last day."""

    @property
    def is_done(self) -> bool:
        """Whether it is attested as done, each time."""
        if self.duty.timing.every is not None:
            return self.times is not None and self.times_done >= self.times
        return self.said is not None and self.said.holds


def duties_due(work: Work, installation: Installation) -> tuple[DueDuty, ...]:
    """The duties in force on a day of the showing whose conditions are not known not to hold, in the work's order."""
    if not work.duties:
        return ()
    case = lay_out(work, installation)
    return tuple(due for duty in work.duties if (due := _due(case, duty)) is not None)


def _due(case: Case, duty: Duty) -> DueDuty | None:
    dates = case.installation.dates
    held = [day for day in _turns(case, duty) if is_held(case.work, duty, day)]
    known = [answers for day in held if Answer.OUT not in (answers := _conditions(case, duty, day)).values()]
    if not known:
        return None
    person = who_can_answer(case.work, duty.person, dates.first) if duty.person else None
    days = days_due(duty.timing, dates, _held(duty))
    due = DueDuty(
        duty=duty,
        person=person.identifier if person else duty.person,
        days=days,
        # the last day on which it is held is the one of which most is known
        open=tuple(condition for condition, answer in known[-1].items() if answer is Answer.OPEN),
    )
    words = list(_attested(case, duty))
    every = duty.timing.every
    if every is None:
        return replace(due, said=_latest(words))
    return replace(due, times=days.periods(every), times_done=_times_done(days, every, words))


def _held(duty: Duty) -> DaySpan:
    """From the first day of a duty's date to its last day."""
    return DaySpan(first_day(duty.on), last_day(duty.until))


def _attested(case: Case, duty: Duty) -> Iterator[_Dated]:
    """What is attested of a duty, by its number or its words, by those who could then."""
    for name in dict.fromkeys((normal(duty.identifier), normal(duty.what))):
        for attestation in case.attested.get(name, ()):
            days = attestation_days(case.work, attestation)
            if days is not None:
                yield attestation, days


_Dated = tuple[Attestation, DaySpan]
"""An attestation with the days on which it can have been made."""


def _latest(words: Sequence[_Dated]) -> Attestation | None:
    """The latest word; none where several, of which none is surely the last, say different things."""
    last = [one for one, days in words if not any(other.is_later_than(days) for _, other in words)]
    return last[-1] if len({one.holds for one in last}) == 1 else None


def _times_done(days: DueDays, every: int, words: Sequence[_Dated]) -> int:
    """In how many periods the latest word of its own says that it was done."""
    by_period: dict[int, list[_Dated]] = {}
    for one, made in words:
        period = days.period(made, every) if one.date else None
        if period is not None:
            by_period.setdefault(period, []).append((one, made))
    latest = map(_latest, by_period.values())
    return sum(1 for one in latest if one is not None and one.holds)


def _turns(case: Case, duty: Duty) -> list[datetime.date]:
    """The days of the showing on which something about a duty may begin or end."""
    dates = case.installation.dates
    begun = [duty.on, duty.withdrawn, *(one.date for one in case.installation.attestations)]
    turns = {span.first for span in begun if span is not None} | {
        begun for begun, _ in superseded_from(case.work, duty)
    }
    return sorted({dates.first} | {day for day in turns if dates.first < day <= dates.last})


def _conditions(case: Case, duty: Duty, day: datetime.date) -> dict[Condition, Answer]:
    """What is known of each condition on a day; an assertion is asked of every part that it names."""
    found = {}
    for condition in duty.conditions:
        answer = (
            fact_answer(case, condition.fact or "", day, hoped=condition.unless)  # that nothing is to be done
            if condition.assertion is None
            else assertion_answer(case, condition.assertion)
        )
        found[condition] = answer.negated if condition.unless else answer
    return found
