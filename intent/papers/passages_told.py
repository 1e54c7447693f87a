"""Where the words that a report quotes were found: the headings to look up, and the answers in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from intent.language.message import joined, say
from intent.papers.departures import Departure
from intent.reading.evidence.passages import Passages
from intent.reading.evidence.quoting import Place, Quoted, SearchResult
from intent.variance.result import Variance


def headings_behind(variance: Variance) -> frozenset[str]:
    """The headings whose words a report of the variance sets apart: of what governs, else of what has fallen."""
    lines = {line.identifier: line.heading for line in variance.work.instructions}
    return frozenset(
        heading
        for row in variance.departures
        for heading in (
            [line.heading for line in row.governing]
            or [lines[one.instruction] for one in row.set_aside if one.instruction in lines]
        )
    )


def with_passages(departures: Iterable[Departure], passages: Passages) -> tuple[Departure, ...]:
    """The departures, with where each of their quotations was found."""
    return tuple(
        replace(
            departure,
            quotations=tuple(
                replace(one, passages=passages.of(one.heading.partition(",")[0]))
                for one in departure.quotations
            ),
        )
        for departure in departures
    )


def shown_passages(departures: Iterable[Departure]) -> tuple[Quoted, ...]:
    """The passages of the quotations in a report, each once, in their order."""
    every = (quoted for one in departures for quotation in one.quotations for quoted in quotation.passages)
    return tuple(dict.fromkeys(every))


def whereabouts(passages: Iterable[Quoted]) -> Iterator[tuple[Quoted, str]]:
    """Each passage with where it was found; nothing of one whose source could not be searched."""
    for one in passages:
        if one.place is not None and one.is_there:
            place = _place(one.place)
            yield (
                one,
                say("Found in {place}, which is not the time cited", place=place)
                if one.standing is SearchResult.ELSEWHERE
                else say("Found in {place}", place=place),
            )
        elif one.standing is SearchResult.NOT_FOUND:
            yield one, say("Not found in the source cited")


def _place(place: Place) -> str:
    found = say("{file}, line {line}", file=place.file, line=place.line)
    return say("{source}, at {times}", source=found, times=place.time) if place.time else found


def found_at_line(passages: Iterable[Quoted]) -> str:
    """The same in short: `found at line 24`."""
    return joined(dict.fromkeys(filter(None, map(_in_short, passages))), "; ")


def _in_short(one: Quoted) -> str:
    if one.place is None or not one.is_there:
        return say("not found in the source cited") if one.standing is SearchResult.NOT_FOUND else ""
    if one.standing is SearchResult.ELSEWHERE:
        return say("found at line {line}, not at the time cited", line=one.place.line)
    return say("found at line {line}", line=one.place.line)
