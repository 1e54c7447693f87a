"""From when to when an instruction can hold, whatever is proposed."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from intent.model.work import Instruction, Work
from intent.values.dates import FIRST_DAY, LAST_DAY, ONE_DAY, DaySpan, first_day
from intent.variance.case import Case
from intent.variance.people import chain, who_can_answer


def days_of(case: Case, line: Instruction) -> DaySpan | None:
    """The days on which an instruction can be in force; none where it ends before it begins."""
    first, over = first_day(line.on), over_from(case, line)
    if over is None:
        return DaySpan(first, LAST_DAY)
    return DaySpan(first, over - ONE_DAY) if first < over else None


def over_from(case: Case, line: Instruction) -> datetime.date | None:
    """The first day on which an instruction no longer holds, were it given before; none where it has no end."""
    ends = [line.withdrawn.first] if line.withdrawn else []
    ends += [line.until.last + ONE_DAY] if line.until and line.until.last < LAST_DAY else []
    ends += [first_day(later.on) for later in case.superseders.get(line.identifier, ())]
    return min(ends, default=None)


def common_days(case: Case, lines: Sequence[Instruction]) -> DaySpan | None:
    """The days on which several can be in force together."""
    spans = [days_of(case, line) for line in lines]
    known = [span for span in spans if span is not None]
    if not known or len(known) < len(spans):
        return None
    first, last = max(span.first for span in known), min(span.last for span in known)
    return DaySpan(first, last) if first <= last else None


def outlasts(case: Case, one: Instruction, other: Instruction) -> bool:
    """Whether the first can hold on every day on which the other can."""
    mine, others = days_of(case, one), days_of(case, other)
    if mine is None or others is None:
        return False
    return mine.first <= others.first and others.last <= mine.last


def last_day_to_answer(work: Work, person: str) -> datetime.date | None:
    """The last day on which anybody could answer for a person; none where somebody always can."""
    if who_can_answer(work, person, LAST_DAY) is not None:
        return None
    return max((one.until.last for one in chain(work, person) if one.until), default=FIRST_DAY)
