"""Days and spans of days in words: `14 May 1999`, `about 1993`, `spring 2027`, `1 March 2027 to 30 June 2027`."""

from __future__ import annotations

import datetime
import re

from intent.language.figures import Month
from intent.language.message import Message, Words, say
from intent.values.dates import FIRST_DAY, LAST_DAY, DaySpan

SEASONS = {21: say("spring"), 22: say("summer"), 23: say("autumn"), 24: say("winter")}
"""EDTF level 1, section "Seasons"."""
_DATE = re.compile(r"(\d{4}|\d{3}X)(?:-(\d\d|XX)(?:-(\d\d|XX))?)?([~?%]?)")


def day_words(day: datetime.date) -> Message:
    """A day as one says it: `14 May 1999`."""
    return _day(str(day.year), day.month, day.day)


def span_words(span: DaySpan | None) -> Words:
    """A span of days as one says it; nothing of no span."""
    if span is None:
        return ""
    ends = [end.strip() for end in span.written.split("/")]
    told = [_end(end) for end in ends]
    if not span.written or len(ends) > 2 or None in told or all(map(_is_day, ends)):
        return _days(span)
    first, last = told[0] or "", told[-1] or ""
    if len(told) == 1:
        return first or _days(span)
    if not last:
        return say("from {date}", date=first)
    return say("{first} to {last}", first=first, last=last) if first else say("until {date}", date=last)


def until_words(end: DaySpan) -> Words:
    """`until 31 October 2027`, `until October 2027`; some languages say a day otherwise than a month."""
    if _is_day(end.written):
        return say("until {last_day}", last_day=span_words(end))
    return say("until {date}", date=span_words(end))


def _is_day(written: str) -> bool:
    """Whether an end of a span is a whole day, or open."""
    return written in {"", ".."} or re.fullmatch(r"\d{4}-(0\d|1[0-2])-\d\d", written) is not None


def _days(span: DaySpan) -> Message:
    first, last = day_words(span.first), day_words(span.last)
    if span.first == span.last:
        return first
    if span.first == FIRST_DAY:
        return say("until {last_day}", last_day=last)
    if span.last == LAST_DAY:
        return say("from {first_day}", first_day=first)
    return say("{first_day} to {last_day}", first_day=first, last_day=last)


def _end(written: str) -> Words | None:
    """One date as written, in words; nothing for an open end, `None` where the form is not known."""
    if written in {"", ".."}:
        return ""
    match = _DATE.fullmatch(written)
    if not match:
        return None
    year, month, day, mark = match.groups()
    told = _month(_year(year), month, day)
    return None if told is None else _marked(told, mark)


def _year(year: str) -> Words:
    return say("the {decade}0s", decade=year[:3]) if year.endswith("X") else str(int(year))


def _month(year: Words, month: str | None, day: str | None) -> Words | None:
    if month in {None, "XX"}:
        return year
    number = int(month or "")
    if number in SEASONS:
        return say("{season} {year}", season=SEASONS[number], year=year)
    if not 1 <= number <= 12:
        return None
    if day not in {None, "XX"}:
        return _day(year, number, int(day or ""))
    return say("{month} {year}", month=Month(number), year=year)


def _day(year: Words, month: int, day: int) -> Message:
    """A day of a month; some languages say the first otherwise than the others."""
    if day == 1:
        return say("1 {month} {year}", month=Month(month), year=year)
    return say("{day} {month} {year}", day=day, month=Month(month), year=year)


def _marked(told: Words, mark: str) -> Words:
    """A date with what its writer was not sure of (EDTF level 1, section "Qualification of a date")."""
    match mark:
        case "~":
            return say("about {date}", date=told)
        case "?":
            return say("perhaps {date}", date=told)
        case "%":
            return say("perhaps about {date}", date=told)
    return told
