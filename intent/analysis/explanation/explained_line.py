"""One instruction explained: who gave it, where it stands, when it holds, and why not on a day."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.analysis.explanation.instruction_dates import dates_of
from intent.language.message import Message, Words, joined, say
from intent.model.assertions import Aggregate
from intent.model.citation import Citation
from intent.model.naming import person_words
from intent.model.work import Heading, Instruction, Work
from intent.variance.case import Case
from intent.variance.conditions import conditions_answer
from intent.variance.people import who_can_answer
from intent.variance.speaking import Over, OverBecause, over_by_itself, superseding


@dataclass(frozen=True, slots=True, kw_only=True)
class Explained:
    """One instruction about a subject, with whether it holds on the day, and why not."""

    line: Instruction
    heading: Heading
    giver: Words
    """Who gave it: name and role."""
    cited: Words
    """Where it stands: sources with their titles and times."""
    dates: Words
    """In their order: `given 1992 – superseded 2006 by R15.1`."""
    holds: bool
    because: Words
    """Why it does not hold, or what it still needs."""


def explained_line(case: Case, line: Instruction, member: str, day: datetime.date) -> Explained:
    """An instruction as it stands on a day, for one of the subjects that it speaks of."""
    heading = case.work.heading(line.heading)
    assert heading is not None
    holds, because = _standing(case, line, member, day)
    return Explained(
        line=line,
        heading=heading,
        giver=giver_words(case.work, line.by),
        cited=cited_words(case.work, line.sources),
        dates=dates_of(case, line),
        holds=holds,
        because=because,
    )


def giver_words(work: Work, by: str | None) -> Words:
    """Who gave something, with their role."""
    return person_words(work, by) if work.person(by) else say("nobody named")


def cited_words(work: Work, sources: Sequence[Citation]) -> Words:
    """Sources with their titles and times."""
    return joined(_cited(work, sources), "; ")


def _cited(work: Work, sources: Sequence[Citation]) -> Iterator[Message]:
    for citation in sources:
        found = work.source(citation.source)
        if found is not None:
            title, name = found.title or found.identifier, citation.source
            yield (
                say("{title} ({source} at {time})", title=title, source=name, time=citation.at)
                if citation.at
                else say("{title} ({source})", title=title, source=name)
            )


def _standing(case: Case, line: Instruction, member: str, day: datetime.date) -> tuple[bool, Words]:
    subjects = (member,) if line.assertion.aggregate is Aggregate.EACH else case.members[line.identifier]
    if line.on is not None and day < line.on.first:
        return False, say("not yet given")
    over = over_by_itself(case, line, day)
    if over is not None:
        return False, _why_over(case, line, over, day)
    _, opens = conditions_answer(case, line, subjects, day)
    return True, joined(_needs(case, line, bool(opens), day), ", ")


def _why_over(case: Case, line: Instruction, over: Over, day: datetime.date) -> Message:
    if over.because is OverBecause.WITHDRAWN:
        return say("withdrawn on {date}", date=str(line.withdrawn))
    if over.because is OverBecause.UNTIL:
        return say("held until {date}", date=str(line.until))
    by = joined((later.identifier for later in superseding(case, line, day)), ", ")
    return say("superseded by {line}", line=by)


def _needs(case: Case, line: Instruction, has_open: bool, day: datetime.date) -> Iterator[Message]:
    if has_open:
        yield say("on its conditions")
    for person in line.consents:
        able = who_can_answer(case.work, person, day)
        if able is None:
            yield say("but nobody is left to consent for {person}", person=person)
        else:
            yield say("with the consent of {person}", person=able.name)
