"""An instruction over time, as a line of dates: given, on what conditions, superseded, withdrawn, until when."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator

from intent.language.message import Words, joined, named, say
from intent.model.assertions import Condition
from intent.model.duty import Duty
from intent.model.instruction_text import ConditionSentence
from intent.model.work import Instruction
from intent.values.dates import first_day
from intent.variance.case import Case


def dates_of(case: Case, line: Instruction) -> Words:
    """`given 1992 – if "…" – superseded 2006 by R15.1 – until 2034`."""
    given = say("given {date}", date=str(line.on)) if line.on else say("given at an unknown date")
    consents = (say("with consent of {person}", person=person) for person in line.consents)
    ends = sorted(_ends(case, line), key=lambda end: end[0])
    stations = [given, *_conditions(case, line.conditions), *consents, *(words for _, words in ends)]
    return joined(stations, " – ")


def _ends(case: Case, line: Instruction) -> Iterator[tuple[datetime.date, Words]]:
    superseders = case.superseders.get(line.identifier, ())
    for later in sorted(superseders, key=lambda later: later.identifier):
        yield first_day(later.on), _superseded(case, later)
    if line.until:
        yield line.until.last, say("until {date}", date=str(line.until))
    if line.withdrawn:
        yield line.withdrawn.first, say("withdrawn {date}", date=str(line.withdrawn))


def _superseded(case: Case, later: Instruction | Duty) -> Words:
    name = later.identifier
    words = (
        say("superseded {date} by {line}", date=str(later.on), line=name)
        if later.on
        else say("superseded by {line}", line=name)
    )
    if not later.conditions:
        return words
    return say(
        "{text} ({conditions})", text=words, conditions=joined(_conditions(case, later.conditions), ", ")
    )


def _conditions(case: Case, conditions: Iterable[Condition]) -> Iterator[Words]:
    return (named(ConditionSentence(condition, case.vocabulary)) for condition in conditions)
