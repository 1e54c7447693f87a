"""Verbs about a proposal: check it, report on it, print its placement cards."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from intent import __version__
from intent.diagnostics import Diagnostic
from intent.effects.assess import assess
from intent.language.locale import locale_of
from intent.papers import Evidence, EvidenceFile, FileRole, write_report
from intent.reading.documentation import Findings
from intent.reading.meanwhile import Begin, meanwhile
from intent.reading.proposal import Proposal, read_proposal
from intent.variance.result import Variance
from intent.vocabulary.loader import read_vocabulary

if TYPE_CHECKING:
    from intent.analysis.history.precedents import Forerunners

_WITH_PASSAGES = ("html", "markdown")
"""The reports that lead to what is quoted in the sources; a terminal and programs do not wait for that."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """A proposal with its variance, and what was found in the texts that does not keep them from being used."""

    proposal: Proposal
    findings: tuple[Diagnostic, ...]
    variance: Variance
    standings: tuple[Forerunners, ...] = ()
    """How the departures stand to installations carried out before."""


def check(installation: str | Path, work: str | Path | None = None) -> Checked:
    """The variance of an installation from its work: the one it names, or the one given. Raises `Unusable`."""
    with meanwhile() as begin:
        checked = _judged(installation, work, begin)
        return replace(checked, findings=checked.proposal.validated())


def check_and_report(
    installation: str | Path,
    work: str | Path | None,
    format: str,
    *,
    date: datetime.date | None = None,
    width: int = 80,
    colour: bool = False,
    language: str = "en",
    lines: bool = False,
) -> tuple[Checked, str]:
    """Both at once: the report is written while the shapes speak, and given out only once they have.

    What is for programs is in English whatever the language; ``lines`` joins players and displays in the drawings.
    Raises `Unusable`.
    """
    with meanwhile() as begin:
        checked = _judged(installation, work, begin)
        text = report(checked, format, date=date, width=width, colour=colour, language=language, lines=lines)
        return replace(checked, findings=checked.proposal.validated()), text


def _judged(installation: str | Path, work: str | Path | None, begin: Begin[Findings]) -> Checked:
    """The variance beside what was shown before; the shapes of the texts are still speaking."""
    proposal = read_proposal(Path(installation), Path(work) if work else None, read_vocabulary(), begin)
    variance = assess(proposal.documentation.work, proposal.installation)
    return _beside_the_past(Checked(proposal=proposal, findings=(), variance=variance))


def _beside_the_past(checked: Checked) -> Checked:
    """What was shown before, where anything was; and, of what was carried out, how it differs from what was agreed."""
    from intent.analysis.history.agreement import read_agreement
    from intent.reading.past import read_past

    documentation, variance = checked.proposal.documentation, checked.variance
    past = read_past(documentation)
    notes = tuple(found.message for found in (*past.findings, *read_agreement(checked.proposal)))
    variance = replace(variance, notes=(*variance.notes, *notes)) if notes else variance
    if not past.installations:
        return replace(checked, variance=variance)
    from intent.analysis.history.precedents import precedents_of

    return replace(checked, variance=variance, standings=precedents_of(variance, past.installations))


def report(
    checked: Checked,
    format: str = "text",
    *,
    date: datetime.date | None = None,
    width: int = 80,
    colour: bool = False,
    language: str = "en",
    lines: bool = False,
) -> str:
    """The variance report in a format of `intent.papers.FORMATS`; what is for programs is in English.

    ``date`` is that of the report, today's if none. Raises ``ValueError`` for another format or language.
    """
    passages = None
    if format in _WITH_PASSAGES:
        from intent.papers.passages_told import headings_behind
        from intent.reading.evidence.passages import read_passages

        documentation, behind = checked.proposal.documentation, headings_behind(checked.variance)
        passages = read_passages(documentation.work, documentation.folder, behind)
    read = [EvidenceFile(FileRole(found.role), found.name, found.sha256) for found in checked.proposal.files]
    read.extend(EvidenceFile(FileRole.SOURCE, *found) for found in (passages.files if passages else ()))
    drawn = None
    if format == "html":
        from intent.papers.drawn import drawn_of  # drawing is for pages alone

        drawn = drawn_of(checked.variance, lines=lines)
    return write_report(
        checked.variance,
        format,
        Evidence(tuple(read), __version__, date or datetime.date.today()),
        width=width,
        colour=colour,
        standings=checked.standings,
        passages=passages,
        drawn=drawn,
        locale=locale_of(language),
    )


def cards(
    installation: str | Path,
    work: str | Path | None = None,
    *,
    sheet: str = "four",
    unit: str = "cm",
    language: str = "en",
    parts: Sequence[str] = (),
) -> tuple[str, tuple[Diagnostic, ...]]:
    """The placement cards of an installation as a page to print, and what was found in its texts.

    ``sheet`` is `four` (four cards to a sheet of A4) or `labels`; ``unit`` is `mm`, `cm` or `in`; of some parts alone
    where any are named. Nothing on them is internal. Raises `Unusable`.
    """
    from intent.papers.cards.write import cards_of_proposal  # a check draws no cards

    checked = check(installation, work)
    page = cards_of_proposal(
        checked.proposal, checked.variance, sheet=sheet, unit=unit, parts=parts, locale=locale_of(language)
    )
    return page, checked.findings


def pdf(page: str, paper: str = "A4") -> bytes:
    """A page of this program as a PDF on A4 or letter paper. Raises `Unusable` where what it needs is missing."""
    from intent.papers.pdf import write_pdf  # slow to import, and not always installed

    return write_pdf(page, paper)
