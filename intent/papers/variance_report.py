"""The variance report: its sections in their order, and what each says.

A section is a function of the matter; one that has nothing to say is left out. A new one is added to `SECTIONS`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from intent.language.calendar import day_words
from intent.language.message import Words, closed, say, sentence
from intent.papers.at_a_glance import at_a_glance
from intent.papers.cautions import caution_blocks
from intent.papers.departures import Departure, departures
from intent.papers.departures_told import departure_section, meanings_section
from intent.papers.document import (
    Block,
    Column,
    Document,
    Items,
    Markdown,
    PaperSection,
    PaperTable,
    Paragraph,
    ParagraphRole,
    Reference,
    TableRole,
)
from intent.papers.duties_told import duty_blocks
from intent.papers.effects_told import effect_sections
from intent.papers.inline import Break, Phrase, PhraseRole, quiet, strong
from intent.papers.kept import kept_tables
from intent.papers.masthead import byline, occasion_words
from intent.papers.obstacles_told import obstacle_blocks, remedy_words
from intent.papers.passages_told import references_of
from intent.papers.proposed import answers_words, changes_words
from intent.papers.prose import without_comments
from intent.papers.report_evidence import Evidence, written_by
from intent.papers.requests import Request, asked_about, requests
from intent.papers.signing import signers
from intent.papers.sources_told import source_sections
from intent.variance.result import RowKey, Variance

if TYPE_CHECKING:
    from intent.analysis.history.precedents import Forerunners
    from intent.papers.drawn import Drawn
    from intent.reading.evidence.passages import Passages

LONG = 3
"""A report of more departures than this opens with its contents."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Matter:
    """What a report tells of."""

    variance: Variance
    evidence: Evidence
    departures: tuple[Departure, ...]
    requests: tuple[Request, ...]
    remedy: Words
    """What may be switched off, where that would take obstacles out of the way."""
    standings: Mapping[RowKey, Forerunners]
    """What was shown before, by row."""
    passages: Passages | None
    """The sources of what is quoted, where they were read."""
    drawn: Drawn | None
    has_sources: bool


def variance_report(
    variance: Variance,
    evidence: Evidence,
    *,
    standings: Sequence[Forerunners] = (),
    passages: Passages | None = None,
    drawn: Drawn | None = None,
    has_sources: bool = False,
) -> Document:
    """The report of a variance, with what was shown before, and with the sources of what it quotes where asked for."""
    found = departures(variance)
    matter = Matter(
        variance=variance,
        evidence=evidence,
        departures=found,
        requests=requests(variance, found),
        remedy=remedy_words(variance),
        standings={one.key: one for one in standings},
        passages=passages,
        drawn=drawn,
        has_sources=has_sources,
    )
    running = say(
        "{work}: {installation}", work=variance.work.title, installation=variance.installation.title
    )
    return Document(
        title=variance.work.title,
        name=say("{running} – variance report", running=running),
        lead=tuple(_masthead(matter)),
        sections=tuple(section for make in SECTIONS if (section := make(matter)).blocks),
        foot=written_by(evidence),
        created=evidence.date,
        running=running,
        has_contents=len(found) > LONG,
        styles=("sources.css",) if has_sources and passages else (),
    )


def _masthead(matter: Matter) -> Iterator[Block]:
    """What of, by whom, for when and where; in a few lines."""
    variance = matter.variance
    if made := byline(variance.work):
        yield Paragraph(made, ParagraphRole.BYLINE)
    title = say("Variance report: {installation}", installation=variance.installation.title)
    yield Paragraph((strong(closed(title)), " ", occasion_words(variance)), ParagraphRole.OCCASION)
    reported = say("Reported on {date}.", date=day_words(matter.evidence.date))
    yield Paragraph(reported, ParagraphRole.OCCASION)


def _prose(markdown: str) -> Iterator[Markdown]:
    text = without_comments(markdown)
    if text:
        yield Markdown(text)


def _work(matter: Matter) -> PaperSection:
    """What the work is, in its writer's own prose."""
    return PaperSection(title=say("The work"), anchor="work", blocks=tuple(_prose(matter.variance.work.note)))


def _proposal(matter: Matter) -> PaperSection:
    answers = answers_words(matter.variance, matter.evidence.date)
    on_record = (Paragraph(say("On record:"), ParagraphRole.LEADIN), Items(answers)) if answers else ()
    return PaperSection(
        title=say("What is proposed"),
        anchor="proposal",
        blocks=(
            Items(changes_words(matter.variance)),
            *_prose(matter.variance.installation.note),
            *on_record,
        ),
    )


def _outcome(matter: Matter) -> PaperSection:
    return at_a_glance(
        matter.variance,
        matter.departures,
        matter.requests,
        remedy=matter.remedy,
        day=matter.evidence.date,
    )


def _drawings(matter: Matter) -> PaperSection:
    drawn = matter.drawn.blocks if matter.drawn else ()
    return PaperSection(title=say("Elevation and plan"), anchor="drawings", blocks=drawn)


def _departures(matter: Matter) -> PaperSection:
    found = [
        departure_section(
            one,
            _shown_before(matter, one),
            _found_in(matter, one),
            asked_about(one, matter.requests),
        )
        for one in matter.departures
    ]
    return PaperSection(
        title=say("Point by point, worst first"),
        anchor="departures",
        blocks=(*found, meanings_section(matter.departures)) if found else (),
    )


def _shown_before(matter: Matter, one: Departure) -> tuple[Words, ...]:
    if not matter.standings:
        return ()
    from intent.papers.precedents_told import shown_before  # history is read only where there is any

    return shown_before(matter.variance.work, one, matter.standings)


def _found_in(matter: Matter, one: Departure) -> Mapping[str, tuple[Reference, ...]]:
    """Where the words quoted under each heading and line were found."""
    if matter.passages is None:
        return {}
    return {
        words.under: tuple(references_of(matter.passages, words.under, has_sources=matter.has_sources))
        for words in one.quotations
    }


def _effects(matter: Matter) -> PaperSection:
    return PaperSection(
        title=say("What the change does"), anchor="effects", blocks=effect_sections(matter.variance)
    )


def _obstacles(matter: Matter) -> PaperSection:
    return PaperSection(
        title=say("Obstacles"), anchor="obstacles", blocks=obstacle_blocks(matter.variance, matter.remedy)
    )


def _duties(matter: Matter) -> PaperSection:
    return PaperSection(title=say("To be done"), anchor="duties", blocks=duty_blocks(matter.variance))


def _cautions(matter: Matter) -> PaperSection:
    return PaperSection(title=say("Cautions"), anchor="cautions", blocks=caution_blocks(matter.variance))


def _kept(matter: Matter) -> PaperSection:
    return PaperSection(
        title=say("As required and as documented"), anchor="kept", blocks=kept_tables(matter.variance)
    )


def _evidence(matter: Matter) -> PaperSection:
    files = [
        ((file.name, Break.LINE, quiet(file.role.in_words)), Phrase(file.sha256, PhraseRole.DIGEST))
        for file in matter.evidence.files
    ]
    columns = (Column(say("file")), Column("SHA-256"))
    blocks: list[Block] = []
    if files:
        blocks.append(PaperTable(columns=columns, rows=tuple(files), role=TableRole.FILES))
    notes = (*_of_the_house(matter), *(sentence(note) for note in matter.variance.notes))
    if notes:
        blocks += [Paragraph(say("Ignored or assumed:"), ParagraphRole.LEADIN), Items(notes)]
    return PaperSection(title=say("What this report rests on"), anchor="evidence", blocks=tuple(blocks))


def _of_the_house(matter: Matter) -> Iterator[Words]:
    """That the report quotes what the museum keeps to itself, so that nobody sends it on unaware."""
    work = matter.variance.work
    lines = [line for one in matter.departures for row in one.rows for line in row.governing]
    said = {heading.identifier for heading in work.headings if heading.words}
    cited = {citation.source for line in lines for citation in line.sources}
    quoting = [line for line in lines if line.heading in said or line.words]
    quoted_from = {citation.source for line in quoting for citation in line.sources}
    internal = [
        source.identifier
        for source in work.sources
        if source.internal and source.identifier in (cited if source.title else quoted_from)
    ]
    if internal:
        yield say(
            "This report quotes what is kept in the house ({sources}); read it before it is sent on.",
            sources=tuple(internal),
        )


def _signatures(matter: Matter) -> PaperSection:
    """A line for who proposes, for everybody who must be asked, and for somebody else."""
    rows = [
        ((one.name, Break.LINE, quiet(say("who {capacity}", capacity=one.capacity))),)
        for one in signers(matter.variance, matter.requests)
    ]
    columns = (Column(say("name and role"), 42), Column(say("signature")), Column(say("date"), 22))
    table = PaperTable(columns=columns, rows=(*rows, ()), role=TableRole.SIGNATURES)
    return PaperSection(title=say("Signatures"), anchor="signed", blocks=(table,))


def _sources(matter: Matter) -> PaperSection:
    told = source_sections(matter.passages) if matter.passages and matter.has_sources else ()
    return PaperSection(title=say("Sources"), anchor="sources", blocks=told)


SECTIONS: tuple[Callable[[Matter], PaperSection], ...] = (
    _outcome,
    _drawings,
    _work,
    _proposal,
    _departures,
    _obstacles,
    _effects,
    _duties,
    _cautions,
    _kept,
    _evidence,
    _signatures,
    _sources,
)
"""The sections in the order in which they are read."""
