"""The second oracle: the verdicts on what is said of several parts together."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from oracle.cases import Case, Line, Saying
from oracle.completions import (
    PAIRED,
    Subject,
    amounts,
    cell_values,
    outcomes,
    satisfying,
    subject_of,
    there_of,
    values,
)
from oracle.speaking import Day
from oracle.state import members
from oracle.verdicts import ORDER, Said, fate


def say_together(day: Day, line: Line, parts: tuple[str, ...]) -> Said | None:
    """Step 2 for an aggregate."""
    still_open = day.in_force(line, "", withdrawal=True)
    if still_open is None:
        return None
    found = outcomes(day.case, line.saying, parts, proposed=True)
    word = {
        "required": {True: "meets", False: "against"},
        "allowed": {True: "permits", False: ""},
        "forbidden": {True: "against", False: ""},
    }[line.modality]
    said = word[True] if found == {True} else word[False] if found == {False} else ""
    if len(found) > 1:
        said = "perhaps permits" if line.modality == "allowed" else "perhaps against"
    if still_open and line.modality != "allowed":
        said = {"against": "perhaps against", "meets": "permits"}.get(said, said)
    points = satisfying(line.saying)
    everything = frozenset(range(200))
    return Said(
        line, points, everything - points if line.modality == "forbidden" else points, said, still_open
    )


def verdict_together(day: Day, subject: Subject) -> str:
    """The verdict on all members, or the worst of those on each pair."""
    lines = [
        line
        for line in day.case.lines
        if line.saying.form != "each" and subject_of(day.case, line.saying) == subject
    ]
    there = tuple(there_of(day.case, subject.members, proposed=True))
    form = lines[0].saying.form
    if len(there) < 2 and form in PAIRED:
        return ""
    groups = list(combinations(there, 2)) if form == "difference" else [subject.members]
    return worst([_verdict_of(day, subject, lines, parts) for parts in groups])


def _verdict_of(day: Day, subject: Subject, lines: list[Line], parts: tuple[str, ...]) -> str:
    """Steps 3 and 4 for an aggregate of the ground of intent."""
    spoken = [say_together(day, line, parts) for line in lines]
    said = [one for one in spoken if one is not None]
    return _steps(day, said, parts) or _unasked(day, parts, said)


def _steps(day: Day, said: list[Said], parts: tuple[str, ...]) -> str:
    """The first rows of the table, which do not look at what is documented."""
    fates = [
        fate(day, one, said, day.dispensations(one.line, "", frozenset()))
        for one in said
        if one.word in {"against", "perhaps against"}
    ]
    sure = [one for one in fates if one.of.word == "against" and not one.falls]
    standing = [one for one in sure if not one.ties and not one.perhaps]
    fallen = [one for one in fates if one.falls and one.only_to_permissions]
    if standing and all(_broken_by_permission(day, one.of.line, parts) for one in standing):
        return "contradiction"
    if any(one.of.line.modality == "forbidden" for one in standing):
        return "forbidden"
    if standing:
        return "breach"
    if any(one.ties for one in sure):
        return "contradiction"
    if sure or any(not one.falls for one in fates):
        return "unknown"
    if fallen:
        return "conditional" if any(one.still_open for one in fallen) else "allowed"
    if any(one.word == "meets" for one in said):
        return "as-required"
    return ""


def _unasked(day: Day, parts: tuple[str, ...], said: list[Said]) -> str:
    """What is left where nothing forbids and nothing is met."""
    if not said:
        return ""
    form = said[0].line.saying
    before, after = (amounts(day.case, form, parts, proposed=proposed) for proposed in (False, True))
    if before == after or (len(before) > 1 and len(after) > 1 and min(before) == min(after)):
        return "as-documented"
    covering = [len(one.open) for one in said if one.word == "permits"]
    if covering:
        return "conditional" if min(covering) else "allowed"
    if any(one.word == "perhaps permits" for one in said) or len(after) > 1:
        return "unknown"
    return "uncovered" if len(before) == 1 else "unknown"


def _broken_by_permission(day: Day, line: Line, parts: tuple[str, ...]) -> bool:
    """Whether only departures broke it that permissions of its own or a higher authority cover."""
    case = day.case
    if (line.modality == "required") not in outcomes(case, line.saying, parts, proposed=False):
        return False
    departures = list(_departures(case, line.saying, parts))
    trait = "presence" if line.saying.form == "number" else line.saying.trait
    permissions = [
        other
        for other in case.lines
        if other.saying.form == "each"
        and other.saying.trait == trait
        and other.modality == "allowed"
        and day.rank(other) <= day.rank(line)
    ]
    return bool(departures) and all(
        any(name in members(case, other.saying.reach) and _covers(case, other, name) for other in permissions)
        for name in departures
    )


def _covers(case: Case, other: Line, name: str) -> bool:
    if other.saying.trait == "presence":
        return other.saying.written.text == ("absent" if name in case.omissions else "present")
    return other.saying.written.text == "any" or values(case, other.saying.trait, proposed=True)[name] == (
        cell_values(other.saying.written, other.saying.trait)
    )


def _departures(case: Case, saying: Saying, parts: tuple[str, ...]) -> Iterator[str]:
    if saying.form == "number":
        yield from (name for name in parts if name in case.omissions)
        yield from (place.name for place in case.additions if place.name in parts)
        return
    before, after = (values(case, saying.trait, proposed=proposed) for proposed in (False, True))
    yield from (name for name in parts if before.get(name) != after.get(name))


def rows_together(day: Day) -> dict[tuple[str, str], str]:
    """The verdict on each aggregate, but for those as documented."""
    found = {}
    for line in day.case.lines:
        if line.saying.form != "each":
            subject = subject_of(day.case, line.saying)
            verdict = verdict_together(day, subject)
            if verdict and verdict != "as-documented":
                found[subject.name, subject.characteristic] = verdict
    return found


def presence_by_number(day: Day, name: str) -> str:
    """Whether a part may be left out, or one be added, by what is said of their number."""
    lines = [
        line
        for line in day.case.lines
        if line.saying.form == "number" and name in members(day.case, line.saying.reach)
    ]
    verdict = _verdict_by_number(day, lines)
    if any(place.name == name for place in day.case.additions) and verdict == "as-required":
        return verdict if any(_leaves_room(day.case, line) for line in lines) else "uncovered"
    return verdict or "uncovered"


def _leaves_room(case: Case, line: Line) -> bool:
    """Whether a number is required that another number than the documented one would meet."""
    documented = len(members(case, line.saying.reach, as_documented=True))
    return line.modality == "required" and satisfying(line.saying) != {documented}


def _verdict_by_number(day: Day, lines: list[Line]) -> str:
    if not lines:
        return ""
    said = [say_together(day, line, subject_of(day.case, line.saying).members) for line in lines]
    spoken = [one for one in said if one is not None]
    verdict = _steps(day, spoken, ())
    if not verdict and any(one.word == "permits" for one in spoken):
        return "conditional" if min(len(one.open) for one in spoken if one.word == "permits") else "allowed"
    return verdict


def worst(verdicts: list[str]) -> str:
    return min((verdict for verdict in verdicts if verdict), key=ORDER.index, default="")
