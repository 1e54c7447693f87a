"""Every row of a case and its outcome, for the first oracle: each subject by itself."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from oracle.cases import Case
from oracle.speaking import NOBODY, Day, Open
from oracle.state import VENUE, WORK, holds, present, value_of
from oracle.verdicts import ORDER, judge_subject
from oracle.world import Trait

Key = tuple[str, str]
Rows = dict[Key, str]


@dataclass(frozen=True)
class Judged:
    """The worst verdict of all days, and what is open on each day of a conditional one."""

    verdict: str
    open: frozenset[Open] = frozenset()


def days(case: Case) -> list[datetime.date]:
    count = (case.last - case.first).days + 1
    return [case.first + datetime.timedelta(days=number) for number in range(count)]


def judged_rows(case: Case, traits: Mapping[str, Trait]) -> dict[Key, Judged]:
    """What is found of each characteristic of each subject, but for what is as documented."""
    found: dict[Key, Judged] = {}
    for subject, trait in _topics(case, traits):
        by_day = [_on_day(Day(case, traits, date), subject, trait) for date in days(case)]
        worst = min((verdict for verdict, _ in by_day if verdict), key=ORDER.index, default="")
        if worst and worst != "as-documented":
            still_open = {open_ for verdict, open_ in by_day if verdict == worst == "conditional"}
            found[subject, trait.name] = Judged(worst, frozenset(still_open))
    return found


def rows(case: Case, traits: Mapping[str, Trait]) -> Rows:
    """The verdicts alone."""
    return {key: judged.verdict for key, judged in judged_rows(case, traits).items()}


def _topics(case: Case, traits: Mapping[str, Trait]) -> Iterator[tuple[str, Trait]]:
    presence = traits["presence"]
    for subject in (*present(case), *case.omissions):
        yield subject, presence
    for trait in traits.values():
        if trait is presence:
            continue
        subjects = {"work": [WORK], "venue": [VENUE]}.get(trait.bearer, present(case))
        for subject in subjects:
            yield subject, trait


def _on_day(day: Day, subject: str, trait: Trait) -> tuple[str, Open]:
    value = value_of(day.case, trait, subject)
    lines = [line for line in day.case.lines if line.saying.trait == trait.name]
    if value.added and not any(holds(day.case, line.saying.reach, subject) for line in lines):
        return "", frozenset()
    return judge_subject(day, trait, value, subject, lines)


def outcome(case: Case, traits: Mapping[str, Trait], found: Rows) -> str:
    """The outcome, where no device is used twice or has failed and nothing is measured of the venue."""
    verdicts = set(found.values())
    broken = verdicts & {"forbidden", "breach"}
    if broken and not _only_practice(case, traits):
        return "not-acceptable"
    if broken or verdicts & {"contradiction", "unknown", "uncovered"}:
        return "refer"
    return "acceptable-on-conditions" if "conditional" in verdicts else "acceptable"


def _only_practice(case: Case, traits: Mapping[str, Trait]) -> bool:
    """Whether nothing is broken when the lines of observed practice are struck out."""
    ranks = {person.name: person.authority_rank for person in case.people}
    ranked = replace(case, lines=tuple(line for line in case.lines if ranks.get(line.by, NOBODY) < NOBODY))
    return not {"forbidden", "breach"} & set(rows(ranked, traits).values())
