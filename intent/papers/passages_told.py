"""Where the words that a report quotes were found: the headings to look up, and the answers in words."""

from __future__ import annotations

from collections.abc import Iterator

from intent.language.message import Words, say
from intent.papers.document import Reference
from intent.reading.evidence.passages import Passages
from intent.reading.evidence.quoting import Quoted, SearchResult, SourcePlace
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


def passage_anchor(quoted: Quoted) -> str:
    """Its name in links, where it is marked in its source."""
    return f"passage-{quoted.name}"


def source_anchor(identifier: str) -> str:
    """A source's name in links."""
    return f"source-{identifier}"


def references_of(passages: Passages, under: str, *, has_sources: bool) -> Iterator[Reference]:
    """Where each passage quoted under a heading or a line was found; nothing of one whose source could not be searched.

    With the sources in the same paper, each leads to its passage there, or to the name of its source.
    """
    shown = {source.identifier for source in passages.sources if source.text}
    for one in passages.of(under):
        if one.place is not None and one.is_there:
            link = passage_anchor(one) if one.place.source in shown else source_anchor(one.place.source)
            yield Reference(
                name=one.name,
                words=_found(one.place, one.standing),
                brief=_found_briefly(one.place, one.standing),
                link=link if has_sources else "",
            )
        elif one.standing is SearchResult.NOT_FOUND:
            yield Reference(
                name=one.name,
                words=say("Not found in the source cited"),
                brief=say("not found in the source cited"),
            )


def _found(place: SourcePlace, standing: SearchResult) -> Words:
    found: Words = say("{file}, line {line}", file=place.file, line=place.line)
    if place.time:
        found = say("{source}, at {times}", source=found, times=place.time)
    if standing is SearchResult.ELSEWHERE:
        return say("Found in {place}, which is not the time cited", place=found)
    return say("Found in {place}", place=found)


def _found_briefly(place: SourcePlace, standing: SearchResult) -> Words:
    if standing is SearchResult.ELSEWHERE:
        return say("found at line {line}, not at the time cited", line=place.line)
    return say("found at line {line}", line=place.line)
