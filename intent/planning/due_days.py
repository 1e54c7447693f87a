"""The days on which a duty is to be done, worked out from the dates of a showing."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from intent.model.duty import Moment, Phase, Timing
from intent.values.dates import FIRST_DAY, LAST_DAY, DaySpan


@dataclass(frozen=True, slots=True)
class DueDays:
    """From the first to the last day, both included; none where nothing bounds them."""

    first: datetime.date | None
    last: datetime.date | None

    def period(self, days: DaySpan, every: int) -> int | None:
        """Which period of so many days a date lies in wholly; none where it lies in several, or outside.

        They are counted from the first day, and back from the last where there is no first.
        """
        if (self.first is not None and days.first < self.first) or (
            self.last is not None and days.last > self.last
        ):
            return None
        anchor = self.first.toordinal() if self.first else (self.last or LAST_DAY).toordinal() + 1
        periods = {(day.toordinal() - anchor) // every for day in (days.first, days.last)}
        return periods.pop() if len(periods) == 1 else None

    def periods(self, every: int) -> int | None:
        """How many periods there are, the last of which may be shorter; none where it cannot be counted."""
        if self.first is None or self.last is None:
            return None
        return (self.last - self.first).days // every + 1


def days_due(timing: Timing, dates: DaySpan, held: DaySpan) -> DueDays:
    """The days of a duty, cut to those on which it is ``held`` where they have any in common."""
    first, last = _days(timing, dates)
    begin = max(first, held.first) if first else None  # what may be done long before has no first day
    end = min(last or LAST_DAY, held.last)
    if begin is not None and begin > end:
        return DueDays(first, last)
    return DueDays(begin, end if end < LAST_DAY else None)


def _days(timing: Timing, dates: DaySpan) -> tuple[datetime.date | None, datetime.date | None]:
    start, end, within = dates.first, dates.last, timing.within or 0
    match timing.phase, timing.of:
        case Phase.BEFORE, None:
            return None, _moved(start, -1)
        case Phase.BEFORE, _:
            return _moved(start, -within), _moved(start, -1)
        case Phase.AFTER, None:
            return _moved(end, 1), None
        case Phase.AFTER, _:
            return _moved(end, 1), _moved(end, within)
        case Phase.DURING, Moment.START:
            return start, min(end, _moved(start, within))
        case Phase.DURING, Moment.END:
            return max(start, _moved(end, -within)), end
        case None, Moment.START:
            return start, _moved(start, within)
        case None, Moment.END:
            return end, _moved(end, within)
    return start, end


def _moved(day: datetime.date, days: int) -> datetime.date:
    """A day so many days later or earlier; the calendar's own ends where it would pass them."""
    ordinal = day.toordinal() + days
    return datetime.date.fromordinal(max(FIRST_DAY.toordinal(), min(ordinal, LAST_DAY.toordinal())))
