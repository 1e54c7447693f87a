"""The second oracle: the verdicts on what is said of several parts together."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import combinations

from oracle.cases import Case, Line, Saying
from oracle.completions import (
    PAIRED,
    Subject,
    allows,
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
    standing = day.standing_of(line, "")
    if standing is None:
        return None
    if isinstance(standing, str):
        return Said(line, frozenset(), frozenset(), "", is_over=True)
    found = outcomes(day.case, line.saying, parts, proposed=True)
    word = {
        "required": {True: "meets", False: "against"},
        "allowed": {True: "permits", False: ""},
        "forbidden": {True: "against", False: ""},
    }[line.modality]
    said = word[True] if found == {True} else word[False] if found == {False} else ""
    if len(found) > 1:
        said = "perhaps permits" if line.modality == "allowed" else "perhaps against"
    if standing and line.modality != "allowed":
        said = {"against": "perhaps against", "meets": "permits"}.get(said, said)
    points = satisfying(line.saying)
    everything = frozenset(range(200))
    admitted = everything - points if line.modality == "forbidden" else points
    return Said(line, points, admitted, said, standing, counted=parts)


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
    return _steps(day, said) or _unasked(day, parts, said)


def _steps(day: Day, said: list[Said]) -> str:
    """The first rows of the table, which do not look at what is documented."""
    fates = [
        fate(day, one, said, day.dispensations(one.line, "", frozenset()))
        for one in said
        if one.word in {"against", "perhaps against"}
    ]
    sure = [one for one in fates if one.of.word == "against" and not one.falls]
    standing = [one for one in sure if not one.ties and not one.perhaps]
    fallen = [one for one in fates if one.falls and one.only_to_permissions]
    if standing and all(_broken_by_permission(day, one.of.line) for one in standing):
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
    same = _unchanged(form, before)
    if before == after or (len(before) > 1 and len(after) > 1 and min(before) == min(after)):
        return "as-documented"
    if len(before) == 1 and all(same(number) for number in after):
        return "as-documented"
    covering = [len(one.open) for one in said if one.word == "permits"]
    if covering:
        return "conditional" if min(covering) else "allowed"
    if any(one.word == "perhaps permits" for one in said) or any(same(number) for number in after):
        return "unknown"
    return "uncovered"


def _unchanged(saying: Saying, before: frozenset[int]) -> Callable[[int], bool]:
    """Whether a number counts as one documented: a total or a difference has the tolerance of its characteristic."""
    if len(before) > 1 or saying.form not in {"total", "difference"}:
        return lambda number: number in before or (len(before) > 1 and number >= min(before))
    (one,) = before
    by = one * 0.05 if saying.form == "total" else 1.0
    return lambda number: abs(number - one) <= by


def _broken_by_permission(day: Day, line: Line) -> bool:
    """Whether only departures broke it that permissions of its own or a higher authority cover."""
    case, good = day.case, line.modality == "required"
    parts = subject_of(case, line.saying).members
    if outcomes(case, line.saying, parts, proposed=False) != {good}:
        return False
    trait = "presence" if line.saying.form == "number" else line.saying.trait
    covered = [
        name
        for name in _departures(case, line.saying, parts)
        if any(
            other.saying.form == "each"
            and other.saying.trait == trait
            and other.modality == "allowed"
            and day.rank(other) <= day.rank(line)
            and isinstance(day.standing(other, name), frozenset)
            and _covers(case, other, name)
            for other in case.lines
        )
    ]
    return bool(covered) and outcomes(case, line.saying, parts, proposed=True, undone=covered) == {good}


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
    case = day.case
    is_added = any(place.name == name for place in case.additions)
    spoken = []
    for line in case.lines:
        if line.saying.form != "number" or name not in members(case, line.saying.reach):
            continue
        said = say_together(day, line, subject_of(case, line.saying).members)
        if said is not None and not (_is_met(said) and (is_added or not _without_additions(case, line))):
            spoken.append(said)
    verdict = _steps(day, spoken)
    permits = [len(one.open) for one in spoken if one.word == "permits"]
    if not verdict and permits:
        return "conditional" if min(permits) else "allowed"
    return verdict or "uncovered"


def _is_met(said: Said) -> bool:
    return said.line.modality == "required" and said.word in {"meets", "permits"}


def _without_additions(case: Case, line: Line) -> bool:
    """Whether a required number would be met without what is added."""
    named = members(case, line.saying.reach, as_documented=True)
    return allows(line.saying.written, len([name for name in named if name not in case.omissions]))


def worst(verdicts: list[str]) -> str:
    return min((verdict for verdict in verdicts if verdict), key=ORDER.index, default="")
