"""Plain words for dates, lists, verdicts and outcomes, so that every report says a thing the same way."""

from __future__ import annotations

import datetime
import re
from collections.abc import Sequence

from intent.dates import FIRST_DAY, LAST_DAY, DaySpan
from intent.variance.result import Outcome, Verdict

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December",
)  # fmt: skip
SEASONS = {21: "spring", 22: "summer", 23: "autumn", 24: "winter"}
"""EDTF level 1, section "Seasons"."""
MARKS = {"~": "about ", "?": "perhaps ", "%": "perhaps about ", "": ""}
NOT_GIVEN = "not given"

VERDICTS = {
    Verdict.FORBIDDEN: "an instruction forbids it, and nothing lifts the prohibition",
    Verdict.BREACH: "an instruction requires something else, and nothing lifts the requirement",
    Verdict.CONTRADICTION: "instructions contradict each other, and no rule says which prevails",
    Verdict.UNKNOWN: "too little is known to say",
    Verdict.UNCOVERED: "it differs from what is documented, and no instruction covers the difference",
    Verdict.CONDITIONAL: "an instruction allows it, once everything listed as open is settled",
    Verdict.ALLOWED: "an instruction allows it, and nothing is open",
    Verdict.AS_REQUIRED: "it is as an instruction requires",
    Verdict.AS_DOCUMENTED: "it is as documented",
}
OUTCOMES = {
    Outcome.NOT_ACCEPTABLE: "not acceptable",
    Outcome.REFER: "to be referred",
    Outcome.ON_CONDITIONS: "acceptable on conditions",
    Outcome.ACCEPTABLE: "acceptable",
}
GROUNDS = {
    "intent": "",
    "safety": "for safety",
    "law": "by law",
    "loan": "under the loan agreement",
    "care": "for the care of the work",
}


def verdict_word(verdict: Verdict) -> str:
    return verdict.value.replace("-", " ")


def given(value: str) -> str:
    return value.strip() or NOT_GIVEN


def characterised(characteristic: str, value: str) -> str:
    """`rotation upright`; the value alone where it says so by itself, as `present` does of `presence`."""
    return (
        value if value.casefold().startswith(characteristic[:5].casefold()) else f"{characteristic} {value}"
    )


def listed(items: Sequence[str], last: str = "and") -> str:
    """`a, b and c`."""
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


def opening(text: str) -> str:
    """The text as the beginning of a sentence: its first letter a capital."""
    return text[:1].upper() + text[1:]


def uncapped(text: str) -> str:
    """A sentence as the continuation of another: its first letter small, unless it opens a name in capitals."""
    return text if text[:2].isupper() else text[:1].lower() + text[1:]


def sentence(text: str) -> str:
    """The text as a sentence: a capital first and a full stop last."""
    stripped = text.strip()
    return opening(stripped) if not stripped or stripped[-1] in ".!?" else opening(stripped) + "."


def quoted(text: str) -> str:
    """The words between quotation marks, without any that they bring along."""
    words = text.strip().strip('“”"')
    return f"“{words}”"


def runs(identifiers: Sequence[str]) -> str:
    """Identifiers in one list, three or more in an unbroken row as `M1 to M24`."""
    found: list[list[str]] = []
    for identifier in identifiers:
        if found and _follows(found[-1][-1], identifier):
            found[-1].append(identifier)
        else:
            found.append([identifier])
    words: list[str] = []
    for run in found:
        words.extend([f"{run[0]} to {run[-1]}"] if len(run) > 2 else run)
    return listed(words)


def _follows(one: str, two: str) -> bool:
    first, second = (re.fullmatch(r"(.*?)(\d+)", name) for name in (one, two))
    if not first or not second or first[1] != second[1]:
        return False
    return int(second[2]) == int(first[2]) + 1


def day_in_words(day: datetime.date) -> str:
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


def date_in_words(span: DaySpan | None) -> str:
    """A span of days as one says it: `14 May 1999`, `about 1993`, `1 March 2027 to 30 June 2027`."""
    if span is None:
        return ""
    ends = span.written.split("/")
    if not span.written or len(ends) > 2:
        return _days(span)
    words = [_end_in_words(end.strip()) for end in ends]
    if any(word is None for word in words):
        return _days(span)
    if len(words) == 1:
        return words[0] or _days(span)
    first, last = words
    if not last:
        return f"from {first}"
    return f"{first} to {last}" if first else f"until {last}"


def _days(span: DaySpan) -> str:
    if span.first == span.last:
        return day_in_words(span.first)
    if span.first == FIRST_DAY:
        return f"until {day_in_words(span.last)}"
    if span.last == LAST_DAY:
        return f"from {day_in_words(span.first)}"
    return f"{day_in_words(span.first)} to {day_in_words(span.last)}"


def _end_in_words(written: str) -> str | None:
    """One date as written, in words; nothing for an open end, `None` where the form is not known."""
    if written in {"", ".."}:
        return ""
    match = re.fullmatch(r"(\d{4}|\d{3}X)(?:-(\d\d|XX)(?:-(\d\d|XX))?)?([~?%]?)", written)
    if not match:
        return None
    year, month, day, mark = match.groups()
    words = f"the {year[:3]}0s" if year.endswith("X") else str(int(year))
    if month not in {None, "XX"}:
        number = int(month)
        if number not in SEASONS and not 1 <= number <= 12:
            return None
        words = f"{SEASONS.get(number) or MONTHS[number - 1]} {words}"
        if day not in {None, "XX"}:
            words = f"{int(day)} {words}"
    return MARKS[mark] + words


def shown(prose: str) -> str:
    """Prose without the comments (`<!-- … -->`) that its writer meant for other writers."""
    return re.sub(r"\n{3,}", "\n\n", re.sub(r"<!--.*?-->", "", prose, flags=re.DOTALL)).strip()
