"""Who said an instruction, when, and where it is written: the line under the words quoted."""

from __future__ import annotations

from collections.abc import Sequence

from intent.language.calendar import span_words
from intent.language.message import Words, joined, listed, named, quoted, say, sentence
from intent.model.citation import Citation
from intent.model.citing import citations_of
from intent.model.naming import person_words
from intent.model.work import Heading, Instruction, Source, Work
from intent.values.dates import DaySpan

NOBODY = say("Observed practice, with nobody named")
"""An instruction that nobody is said to have given ranks with what has been done before."""


def attribution(work: Work, instruction: Instruction) -> Words:
    """`Ilka Brandvold (artist), 14 May 1999. “Conversation with the artist” (S1, interview), at 00:14:05.`"""
    heading = work.heading(instruction.heading)
    passages = _passages(citations_of(instruction, heading))
    sources = {identifier: work.source(identifier) for identifier in passages}
    by, on = _giver(instruction, heading, [source for source in sources.values() if source])
    giver = listed([person_words(work, person) for person in by]) or NOBODY
    said = joined([giver, span_words(on)], ", ")
    where = joined(
        (_at(_where(work, sources[name], name, on), times) for name, times in passages.items()), "; "
    )
    return joined([sentence(said), sentence(where or say("No source is named"))])


def _passages(citations: Sequence[Citation]) -> dict[str, list[str]]:
    """The times cited in each source, in the order of the citations."""
    found: dict[str, list[str]] = {}
    for citation in citations:
        found.setdefault(citation.source, []).extend([citation.at] if citation.at else [])
    return found


def _giver(
    instruction: Instruction, heading: Heading | None, sources: Sequence[Source]
) -> tuple[tuple[str, ...], DaySpan | None]:
    """Who gave it and when: as stated, else as for the first source named."""
    first = sources[0] if sources else None
    stated = instruction.by or (heading.by if heading else None)
    on = instruction.on or (heading.on if heading else None) or (first.date if first else None)
    return (stated,) if stated else (first.spoken_with or first.by) if first else (), on


def _at(where: Words, times: Sequence[str]) -> Words:
    return say("{source}, at {times}", source=where, times=tuple(times)) if times else where


def _where(work: Work, source: Source | None, name: str, already: DaySpan | None) -> Words:
    """A source by its title; with its date where that is not the one already said of the instruction."""
    if source is None:
        return name
    details: list[Words] = [source.identifier]
    details.extend([named(source.kind)] if source.kind else [])
    details.extend([span_words(source.date)] if source.date != already else [])
    cited = say("{title} ({details})", title=quoted(source.title), details=joined(details, ", "))
    if not source.reported_by:
        return cited
    by = person_words(work, source.reported_by)
    return say("{source}, as reported by {person}", source=cited, person=by)
