"""What was shown before of a departure, in words, and for programs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from intent.analysis.history.precedents import Forerunners, Key, Precedent, Reach, Step, key_of
from intent.language.message import Written, joined, say
from intent.model.work import Work
from intent.papers.departures import Departure
from intent.papers.naming import person_in_words
from intent.papers.wording import closed, date_in_words, quoted, runs, verdict_word

Json = dict[str, object]


def by_row(standings: Iterable[Forerunners]) -> dict[Key, Forerunners]:
    """The standings by subject and characteristic of their rows."""
    return {(one.subject, one.characteristic): one for one in standings}


def with_precedents(
    departures: Iterable[Departure], work: Work, standings: Iterable[Forerunners]
) -> tuple[Departure, ...]:
    """The departures, each with what was shown before."""
    found = by_row(standings)
    return tuple(replace(one, shown_before=_of_departure(one, work, found)) for one in departures)


def standing_for_programs(standing: Forerunners) -> Json:
    """The precedents and steps of one row, for JSON; only what there is."""
    told: Json = {}
    if standing.precedents:
        told["precedents"] = [_precedent_for_programs(one) for one in standing.precedents]
    if len(standing.steps) > 1:
        told["steps"] = {
            "count": len(standing.steps),
            "documented": standing.documented,
            "values": [
                {
                    "installation": one.installation.title,
                    "date": one.installation.dates.first.isoformat(),
                    "value": one.value,
                    "distance": one.distance or None,
                }
                for one in standing.steps
            ],
            "distance": standing.distance or None,
        }
    return told


def _precedent_for_programs(one: Precedent) -> Json:
    return {
        "installation": one.installation.title,
        "iri": one.installation.iri,
        "date": one.installation.dates.first.isoformat(),
        "until": one.installation.dates.last.isoformat(),
        "reach": one.reach.value,
        "value": one.value,
        "verdict": one.verdict.value if one.verdict else None,
        "consents": list(one.consents),
    }


def _of_departure(departure: Departure, work: Work, found: Mapping[Key, Forerunners]) -> tuple[str, ...]:
    """What was shown before, once for all the rows that share it, and by their subjects where they differ."""
    by_text: dict[str, list[str]] = {}
    for row in departure.rows:
        standing = found.get(key_of(row))
        for text in _in_words(work, standing) if standing else ():
            by_text.setdefault(text, []).append(row.subject)
    every = len(departure.rows)
    return tuple(
        text if len(subjects) == every else say("{subject}: {text}", subject=runs(subjects), text=text)
        for text, subjects in by_text.items()
    )


def _in_words(work: Work, standing: Forerunners) -> Iterator[str]:
    yield from (_precedent(work, one) for one in standing.precedents)
    if len(standing.steps) > 1:
        yield _steps(standing)


def _precedent(work: Work, one: Precedent) -> str:
    """`The same in “Winter 2023” (15 September 2023 to 31 March 2024); judged allowed then.`"""
    where = say(
        "{name} ({role})",
        name=quoted(one.installation.title),
        role=date_in_words(one.installation.dates),
    )
    what = (
        say("The same in {installation}", installation=where)
        if one.reach is Reach.SAME
        else say("As far or farther ({value}) in {installation}", value=one.value, installation=where)
    )
    told = joined([what, _judged(one)], "; ")
    people = tuple(person_in_words(work, person) for person in one.consents)
    return closed(say("{told}, with the consent of {people}", told=told, people=people) if people else told)


def _judged(one: Precedent) -> str:
    if one.verdict is None:
        return say("on which nothing spoke then")
    return say("judged {verdict} then", verdict=verdict_word(one.verdict))


def _steps(standing: Forerunners) -> str:
    """`3 steps from what is documented (1.2 m): 1.25 m (2016), 1.3 m (2019), 1.4 m (2027): 0.2 m in all.`"""
    way = joined(map(_step, standing.steps), ", ")
    places = {"number": len(standing.steps), "documented": standing.documented, "way": way}
    if not standing.distance:
        return say("{number} steps from what is documented ({documented}): {way}.", **places)
    return say(
        "{number} steps from what is documented ({documented}): {way}; {distance} from what is documented in all.",
        distance=Written(standing.distance),
        **places,
    )


def _step(step: Step) -> str:
    return say("{name} ({role})", name=step.value, role=step.installation.dates.first.year)
