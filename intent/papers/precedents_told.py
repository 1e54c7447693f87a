"""What was shown before of a departure, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from intent.analysis.history.precedents import Forerunners, Precedent, Reach, Step
from intent.language.message import Words, closed, joined, quoted, say
from intent.model.naming import person_words, runs, subject_name
from intent.model.work import Work
from intent.papers.departures import Departure
from intent.variance.result import VERDICT_WORDS, RowKey


def shown_before(
    work: Work, departure: Departure, standings: Mapping[RowKey, Forerunners]
) -> tuple[Words, ...]:
    """What was shown before, once for all the rows that share it, and by their subjects where they differ."""
    by_text: dict[Words, list[Words]] = {}
    for row in departure.rows:
        standing = standings.get(row.key)
        for text in _told(work, standing) if standing else ():
            by_text.setdefault(text, []).append(subject_name(row.subject))
    every = len(departure.rows)
    return tuple(
        text if len(subjects) == every else say("{subject}: {text}", subject=runs(subjects), text=text)
        for text, subjects in by_text.items()
    )


def _told(work: Work, standing: Forerunners) -> Iterator[Words]:
    yield from (_precedent(work, one) for one in standing.precedents)
    if len(standing.steps) > 1:
        yield _steps(standing)


def _precedent(work: Work, one: Precedent) -> Words:
    """`The same in “Winter 2023” (15 September 2023 to 31 March 2024); judged allowed then.`"""
    where = say("{name} ({role})", name=quoted(one.installation.title), role=one.installation.dates)
    what = (
        say("The same in {installation}", installation=where)
        if one.reach is Reach.SAME
        else say("As far or farther ({value}) in {installation}", value=one.value, installation=where)
    )
    told = joined([what, _judged(one)], "; ")
    people = tuple(person_words(work, person) for person in one.consents)
    return closed(say("{told}, with the consent of {people}", told=told, people=people) if people else told)


def _judged(one: Precedent) -> Words:
    if one.verdict is None:
        return say("on which nothing spoke then")
    return say("judged {verdict} then", verdict=VERDICT_WORDS[one.verdict])


def _steps(standing: Forerunners) -> Words:
    """`3 steps from what is documented (1.2 m): 1.25 m (2016), 1.3 m (2019), 1.4 m (2027): 0.2 m in all.`"""
    number, documented = len(standing.steps), standing.documented
    way = joined(map(_step, standing.steps), ", ")
    if not standing.distance:
        return say(
            "{number} steps from what is documented ({documented}): {way}.",
            number=number,
            documented=documented,
            way=way,
        )
    return say(
        "{number} steps from what is documented ({documented}): {way}; {distance} from what is documented in all.",
        number=number,
        documented=documented,
        way=way,
        distance=standing.distance,
    )


def _step(step: Step) -> Words:
    return say("{name} ({role})", name=step.value, role=str(step.installation.dates.first.year))
