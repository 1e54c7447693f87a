"""Dates as spans of days, against the specification of EDTF, against Python's calendar and against a library.

Source, unless another is named: Library of Congress, Extended Date/Time Format (EDTF) Specification, 4 February
2019, www.loc.gov/standards/datetime, levels 0 and 1; the examples are those given there. How far an uncertain or
approximate date reaches, and the months of a season, are left open by it: the text form says one unit to each
side, and for seasons those of the north are taken (common practice, no source).
"""

from __future__ import annotations

import datetime

import pytest
from edtf import parse_edtf
from hypothesis import given
from hypothesis import strategies as st

from intent.values.dates import FIRST_DAY, LAST_DAY, DaySpan, read_date

LEVEL_0 = {
    # 5 Level 0: date, complete and of reduced precision
    "1985-04-12": ("1985-04-12", "1985-04-12"),
    "1985-04": ("1985-04-01", "1985-04-30"),
    "1985": ("1985-01-01", "1985-12-31"),
    # time interval
    "1964/2008": ("1964-01-01", "2008-12-31"),
    "2004-06/2006-08": ("2004-06-01", "2006-08-31"),
    "2004-02-01/2005-02-08": ("2004-02-01", "2005-02-08"),
    "2004-02-01/2005-02": ("2004-02-01", "2005-02-28"),
    "2004-02-01/2005": ("2004-02-01", "2005-12-31"),
    "2005/2006-02": ("2005-01-01", "2006-02-28"),
    "2005-07-01/2005-07-01": (
        "2005-07-01",
        "2005-07-01",
    ),  # not an example: it ends on the day on which it begins
}
LEVEL_1 = {
    # seasons
    "2001-21": ("2001-03-01", "2001-05-31"),
    "2001-22": ("2001-06-01", "2001-08-31"),
    "2001-23": ("2001-09-01", "2001-11-30"),
    "2001-24": ("2001-12-01", "2002-02-28"),
    # qualification of a date (complete)
    "1984?": ("1983-01-01", "1985-12-31"),
    "2004-06~": ("2004-05-01", "2004-07-31"),
    "2004-06-11%": ("2004-06-10", "2004-06-12"),
    # unspecified digits from the right
    "201X": ("2010-01-01", "2019-12-31"),
    "20XX": ("2000-01-01", "2099-12-31"),
    "2004-XX": ("2004-01-01", "2004-12-31"),
    "1985-04-XX": ("1985-04-01", "1985-04-30"),
    "1985-XX-XX": ("1985-01-01", "1985-12-31"),
    "156X": ("1560-01-01", "1569-12-31"),
    # not examples: a decade widened by one, and what is widened at either end of the calendar
    "198X~": ("1970-01-01", "1999-12-31"),
    "0001~": ("0001-01-01", "0002-12-31"),
    "9999~": ("9998-01-01", "9999-12-31"),
    "000X": ("0001-01-01", "0009-12-31"),  # not an example: the calendar begins with the year 1
    # extended interval: open end, open start, unknown end, unknown start, qualified ends
    "1985-04-12/..": ("1985-04-12", str(LAST_DAY)),
    "1985-04/..": ("1985-04-01", str(LAST_DAY)),
    "1985/..": ("1985-01-01", str(LAST_DAY)),
    "../1985-04-12": (str(FIRST_DAY), "1985-04-12"),
    "../1985-04": (str(FIRST_DAY), "1985-04-30"),
    "../1985": (str(FIRST_DAY), "1985-12-31"),
    "1985-04-12/": ("1985-04-12", str(LAST_DAY)),
    "1985/": ("1985-01-01", str(LAST_DAY)),
    "/1985-04-12": (str(FIRST_DAY), "1985-04-12"),
    "/1985": (str(FIRST_DAY), "1985-12-31"),
    "1984~/2004-06": ("1983-01-01", "2004-06-30"),
    "1984/2004-06~": ("1984-01-01", "2004-07-31"),
    "1984~/2004~": ("1983-01-01", "2005-12-31"),
    "1984-06?/2004-08?": ("1984-05-01", "2004-09-30"),
    "1984-06-02?/2004-08-08~": ("1984-06-01", "2004-08-09"),
    "1984-06-02?/": ("1984-06-01", str(LAST_DAY)),
}
REFUSED = [
    "1985-02-30",  # no day of the calendar
    "1985-13",
    "1985-00",
    "1985-04-31",
    "1900-02-29",
    "19850412",  # the basic format is not permitted by EDTF
    "2004/2003",  # an interval ends after it begins
    "2004-02-01/2004-01",
    "85",
    "1985-4-12",
    "12/04/1985",
    "April 1985",
    "1985 - 1986",
    "1985/1986/1987",
    "/",
    "..",
    "../..",
    "",
    "~",
    "1985~~",
    "198X-04",  # a known month of an unknown year is level 2
    "198X-XX-05",  # and so is a known day
    "1984-XX-05",
    "1984-1X",  # so is an unknown digit of the month
    "2001-21-03",  # a season has no days
    "1560S2",  # significant digits are level 2
    "[1667,1668]",  # sets are level 2
    "？1985",
    "१९८५",  # digits of another script
]
NOT_DAYS = [
    "1985-04-12T23:20:30",  # level 0, a time of day
    "1985-04-12T23:20:30Z",
    "Y170000002",  # level 1, a year of more than four digits
    "-1985",  # level 1, a year before the first
]
"""What EDTF has and a span of days from the year 1 to 9999 cannot hold."""


def days(first: str, last: str) -> tuple[datetime.date, datetime.date]:
    return datetime.date.fromisoformat(first), datetime.date.fromisoformat(last)


@pytest.mark.parametrize("written", [*LEVEL_0, *LEVEL_1])
def test_the_examples_of_the_specification(written: str) -> None:
    span = read_date(written)
    assert (span.first, span.last) == days(*{**LEVEL_0, **LEVEL_1}[written])
    assert str(span) == written
    assert str(DaySpan(span.first, span.last)) == f"{span.first}/{span.last}"


@pytest.mark.parametrize("written", [*REFUSED, *NOT_DAYS])
def test_what_is_no_date_of_these_levels(written: str) -> None:
    with pytest.raises(ValueError, match="`"):
        read_date(written)


@pytest.mark.parametrize(
    "written", [w for w in LEVEL_0 if "/" not in w] + ["1979-08", "2001-22", "156X", "2004-XX", "1985-04-XX"]
)
def test_the_library_agrees_on_plain_dates(written: str) -> None:
    """`edtf` 5.0.2 as reference; where it is known to be wrong (`1985/`, winter, `1984-1X`) it is not asked."""
    parsed, span = parse_edtf(written), read_date(written)
    assert tuple(parsed.lower_strict()[:3]) == (span.first.year, span.first.month, span.first.day)
    assert tuple(parsed.upper_strict()[:3]) == (span.last.year, span.last.month, span.last.day)


@pytest.mark.parametrize("written", ["1979~", "1984?", "2004~"])
def test_the_library_agrees_on_approximate_years(written: str) -> None:
    """`edtf` 5.0.2, whose padding is one unit unless it is told otherwise; months it pads by a year besides."""
    parsed, span = parse_edtf(written), read_date(written)
    assert tuple(parsed.lower_fuzzy()[:3]) == (span.first.year, span.first.month, span.first.day)
    assert tuple(parsed.upper_fuzzy()[:3]) == (span.last.year, span.last.month, span.last.day)


def test_an_approximate_month_as_the_library_documents_it() -> None:
    """The page of `edtf` at pypi.org/project/edtf: 1979-08~ reaches from 1979-07-01 to 1979-09-30."""
    span = read_date("1979-08~")
    assert (span.first, span.last) == days("1979-07-01", "1979-09-30")


@given(st.dates())
def test_every_day_of_the_calendar(day: datetime.date) -> None:
    """Python's own calendar as reference."""
    span = read_date(day.isoformat())
    assert (span.first, span.last) == (day, day)
    month = read_date(day.isoformat()[:7])
    assert month.first.replace(day=1) == month.first == day.replace(day=1)
    assert month.last == LAST_DAY or (month.last + datetime.timedelta(days=1)).day == 1
    year = read_date(day.isoformat()[:4])
    assert (year.first, year.last) == (datetime.date(day.year, 1, 1), datetime.date(day.year, 12, 31))


@given(st.dates(), st.sampled_from([4, 7, 10]), st.sampled_from("~?%"))
def test_a_doubtful_date_holds_the_plain_one_and_the_days_beside_it(
    day: datetime.date, length: int, mark: str
) -> None:
    plain, doubtful = read_date(day.isoformat()[:length]), read_date(day.isoformat()[:length] + mark)
    one_day = datetime.timedelta(days=1)
    assert doubtful.first < plain.first or doubtful.first == FIRST_DAY
    assert doubtful.last > plain.last or doubtful.last == LAST_DAY
    if doubtful.first != FIRST_DAY and plain.first != FIRST_DAY:
        assert DaySpan(doubtful.first, plain.first - one_day).overlaps(doubtful)
    if length == 10 and FIRST_DAY < day < LAST_DAY:
        assert (doubtful.first, doubtful.last) == (day - one_day, day + one_day)


@given(st.dates(), st.dates(), st.dates(), st.dates())
def test_spans_overlap_or_one_is_later(
    first: datetime.date, second: datetime.date, third: datetime.date, fourth: datetime.date
) -> None:
    one = DaySpan(min(first, second), max(first, second))
    two = DaySpan(min(third, fourth), max(third, fourth))
    assert one.overlaps(two) == two.overlaps(one)
    assert [one.overlaps(two), one.is_later_than(two), two.is_later_than(one)].count(True) == 1


def refused(text: str) -> str:
    """Why a text is no date; nothing where it is one."""
    try:
        read_date(text)
    except ValueError as error:
        return str(error)
    return ""


@given(st.text(alphabet="0123456789X-/~?%. T:YS", max_size=24))
def test_any_text_is_a_span_or_refused_in_words(text: str) -> None:
    why = refused(text)
    if why:
        assert "`" in why
    else:
        span = read_date(text)
        assert FIRST_DAY <= span.first <= span.last <= LAST_DAY
        assert read_date(str(span)) == span
