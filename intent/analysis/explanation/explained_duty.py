"""One duty explained: who gave it, where it stands, and how long it holds."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from intent.analysis.explanation.explained_line import cited_words, giver_words
from intent.language.message import Words, joined, named, say
from intent.model.duty import Duty
from intent.model.instruction_text import ConditionSentence
from intent.model.work import Heading, Work
from intent.values.dates import FIRST_DAY
from intent.variance.duties_held import is_held, superseded_from


@dataclass(frozen=True, slots=True, kw_only=True)
class ExplainedDuty:
    """Something to be done, with whether it is in force on the day."""

    duty: Duty
    heading: Heading
    giver: Words
    """Who gave it: name and role."""
    cited: Words
    """Where it stands: sources with their titles and times."""
    dates: Words
    """In their order: `given 1992 – superseded 2006 by R15`."""
    holds: bool


def explained_duty(work: Work, duty: Duty, day: datetime.date) -> ExplainedDuty:
    heading = work.heading(duty.heading)
    assert heading is not None
    return ExplainedDuty(
        duty=duty,
        heading=heading,
        giver=giver_words(work, duty.by),
        cited=cited_words(work, duty.sources),
        dates=joined(_dates(work, duty), " – "),
        holds=is_held(work, duty, day),
    )


def _dates(work: Work, duty: Duty) -> Iterator[Words]:
    yield say("given {date}", date=str(duty.on)) if duty.on else say("given at an unknown date")
    yield from (named(ConditionSentence(condition, work.vocabulary)) for condition in duty.conditions)
    yield from (words for _, words in sorted(_ends(work, duty), key=lambda end: end[0]))


def _ends(work: Work, duty: Duty) -> Iterator[tuple[datetime.date, Words]]:
    for begun, heading in superseded_from(work, duty):
        dated = say("superseded {date} by {line}", date=begun.isoformat(), line=heading)
        yield begun, dated if begun > FIRST_DAY else say("superseded by {line}", line=heading)
    if duty.until:
        yield duty.until.last, say("until {date}", date=str(duty.until))
    if duty.withdrawn:
        yield duty.withdrawn.first, say("withdrawn {date}", date=str(duty.withdrawn))
