"""The order of a variance report, told once for every writer: what is proposed, whether it may be and who
must be asked; each departure; the venue and its cautions; what is as required; what the report rests on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from intent.language.message import ENGLISH, Tongue, joined, say
from intent.model.work import Work
from intent.papers.cautions import Caution, cautions
from intent.papers.departures import Departure, departures
from intent.papers.effects_told import TopicTold, told_effects
from intent.papers.kept import Kept, as_documented, as_required
from intent.papers.naming import finding_subject, labelled_fields, person_in_words
from intent.papers.proposed import answers_in_words, changes_in_words
from intent.papers.report_evidence import Evidence
from intent.papers.requests import Request, requests
from intent.papers.wording import (
    OUTCOMES,
    VERDICTS,
    date_in_words,
    listed,
    sentence,
    shown,
    verdict_word,
)
from intent.variance.result import Outcome, Variance, Verdict

if TYPE_CHECKING:
    from intent.analysis.history.precedents import Forerunners
    from intent.reading.evidence.passages import Passages

LONG = 3
"""A report of more departures than this opens with its contents."""
WORK_HEAD = "https://w3id.org/intent-record/term/work-head"
"""The section of the text form whose fields say what the work is."""
UNCHANGED = say("Nothing is changed: the work is to be installed as documented.")


@dataclass(frozen=True, slots=True)
class FindingTold:
    """Something about a device or the venue."""

    subject: str
    text: str

    @property
    def told(self) -> str:
        return say("{subject}: {text}", subject=self.subject, text=self.text) if self.subject else self.text


@dataclass(frozen=True, slots=True)
class Signature:
    """A line to sign on."""

    name: str
    capacity: str

    @property
    def told(self) -> str:
        """`Odile Varga-Finn (conservator), who proposes`; nothing of a line for somebody else."""
        return joined([self.name, self.who], ", ")

    @property
    def who(self) -> str:
        return say("who {capacity}", capacity=self.capacity) if self.capacity else ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Story:
    """A report, in the order in which it is read."""

    title: str
    byline: str
    work_note: str
    """Markdown."""
    installation: str
    occasion: str
    """Venue, dates, status and who proposes."""
    installation_note: str
    """Markdown."""
    changes: tuple[str, ...]
    answers: tuple[str, ...]
    outcome: Outcome
    outcome_sentence: str
    requests: tuple[Request, ...]
    departures: tuple[Departure, ...]
    meanings: tuple[tuple[str, str], ...]
    """The verdict words that occur among the departures, each with its meaning."""
    effects: tuple[TopicTold, ...]
    findings: tuple[FindingTold, ...]
    cautions: tuple[Caution, ...]
    as_required: tuple[Kept, ...]
    as_documented: tuple[Kept, ...]
    notes: tuple[str, ...]
    evidence: Evidence
    signatures: tuple[Signature, ...]
    passages: Passages | None = None
    """The sources of what is quoted, where they were read."""
    tongue: Tongue = ENGLISH
    """The language in which it is told."""


def _of_the_house(work: Work, found: Sequence[Departure]) -> Iterator[str]:
    """That the report quotes what the museum keeps to itself, so that nobody sends it on unaware."""
    lines = [line for one in found for row in one.rows for line in row.governing]
    said = {heading.identifier for heading in work.headings if heading.words}
    cited = {citation.source for line in lines for citation in line.sources}
    quoted = {citation.source for line in lines if line.heading in said for citation in line.sources}
    internal = [
        source.identifier
        for source in work.sources
        if source.internal and source.identifier in (cited if source.title else quoted)
    ]
    if internal:
        yield say(
            "This report quotes what is kept in the house ({sources}); read it before it is sent on.",
            sources=tuple(internal),
        )


def tell(
    variance: Variance,
    evidence: Evidence,
    standings: Sequence[Forerunners] = (),
    passages: Passages | None = None,
) -> Story:
    """The report of a variance, in plain words, with what was shown before, and where what is quoted was found."""
    work, installation = variance.work, variance.installation
    found = departures(variance)
    if standings:
        from intent.papers.precedents_told import with_precedents

        found = with_precedents(found, work, standings)
    if passages is not None:
        from intent.papers.passages_told import with_passages

        found = with_passages(found, passages)
    asked = requests(variance, found)
    occurring = [verdict for verdict in Verdict if any(one.verdict is verdict for one in found)]
    return Story(
        title=work.title,
        byline=_byline(variance),
        work_note=shown(work.note),
        installation=installation.title,
        occasion=_occasion(variance),
        installation_note=shown(installation.note),
        changes=changes_in_words(variance) or (UNCHANGED,),
        answers=answers_in_words(variance),
        outcome=variance.outcome,
        outcome_sentence=sentence(
            variance.sentence or say("The proposal is {outcome}", outcome=OUTCOMES[variance.outcome])
        ),
        requests=asked,
        departures=found,
        meanings=tuple((verdict_word(verdict), VERDICTS[verdict]) for verdict in occurring),
        effects=told_effects(variance),
        findings=tuple(
            FindingTold(finding_subject(finding), sentence(finding.text)) for finding in variance.findings
        ),
        cautions=cautions(variance),
        as_required=as_required(variance),
        as_documented=as_documented(variance),
        notes=(*_of_the_house(work, found), *(sentence(note) for note in variance.notes)),
        evidence=evidence,
        signatures=_signatures(variance, asked),
        passages=passages,
    )


def _byline(variance: Variance) -> str:
    """`Ilka Brandvold, 1993. Hollins Street Museum, 2009.31`, of what is given."""
    fields = labelled_fields(variance.work.vocabulary, variance.work.fields, WORK_HEAD)
    made = ", ".join(fields[name] for name in ("artist", "year") if fields.get(name))
    held = ", ".join(fields[name] for name in ("owner", "number") if fields.get(name))
    return ". ".join(filter(None, [made, held]))


def _occasion(variance: Variance) -> str:
    installation = variance.installation
    proposer = person_in_words(variance.work, installation.by)
    status = installation.status.label if installation.status else ""
    if status and proposer:
        status = say("{status} by {person}", status=status, person=proposer)
    where = joined([installation.venue, date_in_words(installation.dates)], ", ")
    return joined(sentence(part) for part in (where, status) if part)


def _signatures(variance: Variance, asked: tuple[Request, ...]) -> tuple[Signature, ...]:
    """Who proposes, everybody who must be asked, and a line for somebody else."""
    capacities: dict[str, list[str]] = {}
    if variance.installation.by:
        capacities[person_in_words(variance.work, variance.installation.by)] = [say("proposes")]
    for request in asked:
        if request.person:
            capacities.setdefault(request.name, []).append(say("is asked"))
    return (*(Signature(name, listed(what)) for name, what in capacities.items()), Signature("", ""))
