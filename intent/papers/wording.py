"""Plain words for dates, lists, verdicts and outcomes, so that every report says a thing the same way."""

from __future__ import annotations

import datetime
import re
from collections.abc import Sequence

from intent.language.message import Saying, joined, say, shaped, words
from intent.language.message import listed as listed
from intent.model.phrasing import NOT_GIVEN as NOT_GIVEN
from intent.values.dates import FIRST_DAY, LAST_DAY, DaySpan
from intent.variance.result import VERDICT_WORDS, Outcome, Verdict

MONTHS = words(
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December",
)  # fmt: skip
SEASONS = {21: say("spring"), 22: say("summer"), 23: say("autumn"), 24: say("winter")}
"""EDTF level 1, section "Seasons"."""

VERDICTS = {
    Verdict.FORBIDDEN: say("an instruction forbids it, and nothing lifts the prohibition"),
    Verdict.BREACH: say("an instruction requires something else, and nothing lifts the requirement"),
    Verdict.CONTRADICTION: say("instructions contradict each other, and no rule says which prevails"),
    Verdict.UNKNOWN: say("too little is known to say"),
    Verdict.UNCOVERED: say("it differs from what is documented, and no instruction covers the difference"),
    Verdict.CONDITIONAL: say("an instruction allows it, once everything listed as open is settled"),
    Verdict.ALLOWED: say("an instruction allows it, and nothing is open"),
    Verdict.AS_REQUIRED: say("it is as an instruction requires"),
    Verdict.AS_DOCUMENTED: say("it is as documented"),
}
OUTCOMES = {
    Outcome.NOT_ACCEPTABLE: say("not acceptable"),
    Outcome.REFER: say("to be referred"),
    Outcome.ON_CONDITIONS: say("acceptable on conditions"),
    Outcome.ACCEPTABLE: say("acceptable"),
}
GROUNDS = {
    "intent": "",
    "safety": say("for safety"),
    "law": say("by law"),
    "loan": say("under the loan agreement"),
    "care": say("for the care of the work"),
}


def verdict_word(verdict: Verdict) -> Saying:
    return VERDICT_WORDS[verdict]


def given(value: str) -> str:
    return value if value.strip() else NOT_GIVEN


def characterised(characteristic: str, value: str) -> str:
    """`rotation upright`; the value alone where it says so by itself, as `present` does of `presence`."""
    if value.casefold().startswith(characteristic[:5].casefold()):
        return value
    return joined([characteristic, value])


def opening(text: str) -> str:
    """The text as the beginning of a sentence: its first letter a capital."""
    return shaped(text, _opened)


def _opened(text: str) -> str:
    return text[:1].upper() + text[1:]


def closed(text: str) -> str:
    """The text with the full stop of a sentence."""
    return shaped(text, _closed)


def _closed(text: str) -> str:
    stripped = text.strip()
    return stripped if not stripped or stripped[-1] in ".!?" else f"{stripped}."


def sentence(text: str) -> str:
    """The text as a sentence: a capital first and a full stop last."""
    return opening(closed(text))


def quoted(text: str) -> str:
    """The words between quotation marks, without any that they bring along."""
    return say("“{words}”", words=text.strip().strip('“”"'))


def runs(identifiers: Sequence[str]) -> Saying:
    """Identifiers in one list, three or more in an unbroken row as `M1 to M24`."""
    found: list[list[str]] = []
    for identifier in identifiers:
        if found and _follows(found[-1][-1], identifier):
            found[-1].append(identifier)
        else:
            found.append([identifier])
    told: list[str] = []
    for run in found:
        told.extend([say("{one} to {other}", one=run[0], other=run[-1])] if len(run) > 2 else run)
    return listed(told)


def _follows(one: str, two: str) -> bool:
    first, second = (re.fullmatch(r"(.*?)(\d+)", name) for name in (one, two))
    if not first or not second or first[1] != second[1]:
        return False
    return int(second[2]) == int(first[2]) + 1


def day_in_words(day: datetime.date) -> Saying:
    return _day(day.year, day.month, day.day)


def _day(year: object, month: int, day: int) -> Saying:
    """A day of a month; some languages say the first otherwise than the others."""
    if day == 1:
        return say("1 {month} {year}", month=MONTHS[month - 1], year=year)
    return say("{day} {month} {year}", day=day, month=MONTHS[month - 1], year=year)


def date_in_words(span: DaySpan | None) -> str:
    """A span of days as one says it: `14 May 1999`, `about 1993`, `1 March 2027 to 30 June 2027`."""
    if span is None:
        return ""
    ends = span.written.split("/")
    told = [_end_in_words(end.strip()) for end in ends]
    if not span.written or len(ends) > 2 or any(word is None for word in told):
        return _days(span)
    if len(told) == 1:
        return told[0] or _days(span)
    first, last = told
    if _is_day(ends[0]) and _is_day(ends[1]):
        return _days(span)
    if not last:
        return say("from {date}", date=first)
    return say("{first} to {last}", first=first, last=last) if first else say("until {date}", date=last)


def _is_day(written: str) -> bool:
    """Whether an end of a span is a whole day, or open."""
    return (
        written.strip() in {"", ".."} or re.fullmatch(r"\d{4}-(0\d|1[0-2])-\d\d", written.strip()) is not None
    )


def _days(span: DaySpan) -> Saying:
    first, last = day_in_words(span.first), day_in_words(span.last)
    if span.first == span.last:
        return first
    if span.first == FIRST_DAY:
        return say("until {last_day}", last_day=last)
    if span.last == LAST_DAY:
        return say("from {first_day}", first_day=first)
    return say("{first_day} to {last_day}", first_day=first, last_day=last)


def _end_in_words(written: str) -> str | None:
    """One date as written, in words; nothing for an open end, `None` where the form is not known."""
    if written in {"", ".."}:
        return ""
    match = re.fullmatch(r"(\d{4}|\d{3}X)(?:-(\d\d|XX)(?:-(\d\d|XX))?)?([~?%]?)", written)
    if not match:
        return None
    year, month, day, mark = match.groups()
    told: str = say("the {decade}0s", decade=year[:3]) if year.endswith("X") else str(int(year))
    if month not in {None, "XX"}:
        number = int(month)
        if number in SEASONS:
            told = say("{season} {year}", season=SEASONS[number], year=told)
        elif not 1 <= number <= 12:
            return None
        elif day not in {None, "XX"}:
            told = _day(told, number, int(day))
        else:
            told = say("{month} {year}", month=MONTHS[number - 1], year=told)
    return _marked(told, mark)


def _marked(told: str, mark: str) -> str:
    """A date with what its writer was not sure of (EDTF level 1, section "Qualification of a date")."""
    match mark:
        case "~":
            return say("about {date}", date=told)
        case "?":
            return say("perhaps {date}", date=told)
        case "%":
            return say("perhaps about {date}", date=told)
    return told


def shown(prose: str) -> str:
    """Prose without the comments (`<!-- … -->`) that its writer meant for other writers."""
    return re.sub(r"\n{3,}", "\n\n", re.sub(r"<!--.*?-->", "", prose, flags=re.DOTALL)).strip()
