"""Dates as spans of days: ISO 8601 and EDTF levels 0 and 1.

Source of the syntax: Library of Congress, Extended Date/Time Format specification (2019), levels 0 and 1.
"""

from __future__ import annotations

import calendar
import datetime
import re
from dataclasses import dataclass

FIRST_DAY = datetime.date.min
LAST_DAY = datetime.date.max
ONE_DAY = datetime.timedelta(days=1)
SEASON_MONTHS = {21: (3, 5), 22: (6, 8), 23: (9, 11), 24: (12, 14)}

_DATE = re.compile(
    r"(?P<year>\d{4}|\d{3}X|\d{2}XX)(?:-(?P<month>\d{2}|XX)(?:-(?P<day>\d{2}|XX))?)?(?P<mark>[~?%])?$",
    re.ASCII,
)


@dataclass(frozen=True, slots=True)
class DaySpan:
    """From the first to the last day, both included; what was written is kept."""

    first: datetime.date
    last: datetime.date
    written: str = ""

    def __str__(self) -> str:
        return self.written or f"{self.first}/{self.last}"

    def overlaps(self, other: DaySpan) -> bool:
        return self.first <= other.last and other.first <= self.last

    @property
    def has_uncertain_end(self) -> bool:
        """Whether its end was written as uncertain or approximate, or a digit of it as not known."""
        return self.written.endswith(("~", "?", "%")) or "X" in self.written

    def is_later_than(self, other: DaySpan) -> bool:
        """Wholly later: the two spans share no day."""
        return self.first > other.last


def first_day(begins: DaySpan | None) -> datetime.date:
    """The first day of what begins on a date; without one it has always been."""
    return begins.first if begins else FIRST_DAY


def last_day(ends: DaySpan | None) -> datetime.date:
    """The last day of what ends with a date; without one it has no end."""
    return ends.last if ends else LAST_DAY


def read_date(text: str) -> DaySpan:
    """The span of days of an ISO 8601 or EDTF level 1 date or interval.

    ``~``, ``?`` and ``%`` widen the span by one unit (day, month or year, as written) at each end.
    Raises ``ValueError`` in plain words.
    """
    written = text.strip()
    if "/" not in written:
        first, last = _one(written)
        return DaySpan(first, last, written)
    ends = written.split("/")
    if len(ends) != 2 or not any(end not in {"", ".."} for end in ends):
        raise ValueError(f"`{written}` is not a date: write 1993, 1999-05, 1999-05-14 or 1993/1995")
    first = FIRST_DAY if ends[0] in {"", ".."} else _one(ends[0])[0]
    last = LAST_DAY if ends[1] in {"", ".."} else _one(ends[1])[1]
    if last < first:
        raise ValueError(f"`{written}` ends before it begins")
    return DaySpan(first, last, written)


def _one(text: str) -> tuple[datetime.date, datetime.date]:
    match = _DATE.match(text.strip())
    if not match:
        raise ValueError(f"`{text}` is not a date: write 1993, 1999-05, 1999-05-14, 199X or 1993~")
    try:
        first, last, unit = _bounds(match["year"], match["month"], match["day"])
        if match["mark"]:
            first, last = _moved(first, unit, -1), _moved(last, unit, 1)
    except (ValueError, OverflowError):
        raise ValueError(f"`{text}` is not a day of the calendar") from None
    return first, last


def _bounds(year: str, month: str | None, day: str | None) -> tuple[datetime.date, datetime.date, str]:
    low, high = int(year.replace("X", "0")), int(year.replace("X", "9"))
    if low == 0:
        low = 1
    if "X" in year and month not in {None, "XX"}:
        raise ValueError(year)
    if month in {None, "XX"}:
        if day not in {None, "XX"}:
            raise ValueError(month)
        unit = "decade" if "X" in year else "year"
        return datetime.date(low, 1, 1), datetime.date(high, 12, 31), unit
    number = int(month or "")
    if number in SEASON_MONTHS:
        if day:
            raise ValueError(day)
        start, end = SEASON_MONTHS[number]
        return datetime.date(low, start, 1), _month_end(low, end), "month"
    if day in {None, "XX"}:
        return datetime.date(low, number, 1), _month_end(low, number), "month"
    exact = datetime.date(low, number, int(day or ""))
    return exact, exact, "day"


def _month_end(year: int, month: int) -> datetime.date:
    year, month = year + (month - 1) // 12, (month - 1) % 12 + 1
    return datetime.date(year, month, calendar.monthrange(year, month)[1])


def _moved(day: datetime.date, unit: str, steps: int) -> datetime.date:
    """The day one unit earlier or later, ends of months staying ends."""
    if unit == "day":
        return day + datetime.timedelta(days=steps)
    if unit == "month":
        months = day.year * 12 + day.month - 1 + steps
        year, month = months // 12, months % 12 + 1
        if day.day == 1:
            return datetime.date(year, month, 1)
        return _month_end(year, month)
    years = steps * (10 if unit == "decade" else 1)
    return day.replace(year=max(1, min(9999, day.year + years)))
