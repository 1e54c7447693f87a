"""Verbs about a proposal: check it, report on it, print its placement cards."""

from __future__ import annotations

import datetime
import os
import time
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from intent.analysis.history.precedents import Forerunners
from intent.diagnostics import Diagnostic
from intent.language.languages import locale_of
from intent.papers import Evidence, EvidenceFile, FileRole, write_report
from intent.reading.answers_kept import keep, recall
from intent.reading.heads import ReadFile
from intent.variance.result import Variance
from intent.version import VERSION

_WITH_PASSAGES = ("html", "markdown")
"""The reports that lead to what is quoted in the sources; a terminal and programs do not wait for that."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """The variance of a proposal, and what was found in the texts that does not keep them from being used."""

    variance: Variance
    findings: tuple[Diagnostic, ...]
    files: tuple[ReadFile, ...]
    """What was read."""
    folder: Path
    """The folder of the work."""
    standings: tuple[Forerunners, ...] = ()
    """How the departures stand to installations carried out before."""
    rests_on: tuple[Path, ...] = ()
    """Every file and folder that was looked at; nothing where that cannot be told beforehand."""

    @property
    def sources(self) -> tuple[Path, ...]:
        """The files in which the work says that something is quoted, whether they are there or not."""
        return tuple(self.folder / source.file for source in self.variance.work.sources if source.file)


def check(installation: str | Path, work: str | Path | None = None) -> Checked:
    """The variance of an installation from its work: the one it names, or the one given. Raises `Unusable`.

    What was judged before is not judged again while no file has changed that it rests on: `reading/answers_kept.py`.
    """
    begun = time.time_ns()
    question = _question("check", installation, work)
    known = recall(question)
    if isinstance(known, Checked):
        return known
    # all that reads and judges is imported only where nothing is kept
    from intent.verbs.judging import judge_proposal

    judged = judge_proposal(Path(installation), Path(work) if work else None)
    checked = Checked(
        variance=judged.variance,
        findings=judged.proposal.validated(),
        files=judged.proposal.files,
        folder=judged.proposal.documentation.folder,
        standings=judged.standings,
        rests_on=judged.rests_on,
    )
    if checked.rests_on:
        keep(question, checked, checked.rests_on, begun=begun)
    return checked


def _question(
    verb: str, installation: str | Path, work: str | Path | None, *, how: Iterable[object] = ()
) -> tuple[str, ...]:
    """What is asked, as it is remembered: from where, of which files, and how the answer is to be told."""
    return (verb, os.getcwd(), str(installation), str(work or ""), *map(str, how))


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
    """Both at once. What is for programs is in English; ``lines`` joins players and displays in the drawings.

    What was told today of the same files in the same form is not told again. Raises `Unusable`.
    """
    begun = time.time_ns()
    checked = check(installation, work)
    day = date or datetime.date.today()
    question = _question("told", installation, work, how=(format, day, width, colour, language, lines))
    known = recall(question)
    if isinstance(known, str):
        return checked, known
    told = report(checked, format, date=day, width=width, colour=colour, language=language, lines=lines)
    if checked.rests_on:
        keep(question, told, (*checked.rests_on, *checked.sources), begun=begun)
    return checked, told


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

        passages = read_passages(checked.variance.work, checked.folder, headings_behind(checked.variance))
    read = [EvidenceFile(FileRole(found.role), found.name, found.sha256) for found in checked.files]
    read.extend(EvidenceFile(FileRole.SOURCE, *found) for found in (passages.files if passages else ()))
    drawn = None
    if format == "html":
        from intent.papers.drawn import drawn_of  # drawing is for pages alone

        drawn = drawn_of(checked.variance, lines=lines)
    return write_report(
        checked.variance,
        format,
        Evidence(tuple(read), VERSION, date or datetime.date.today()),
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
    unit: str = "m",
    language: str = "en",
    parts: Sequence[str] = (),
    date: datetime.date | None = None,
) -> tuple[str, tuple[Diagnostic, ...]]:
    """The placement cards of an installation as a page to print, and what was found in its texts.

    ``sheet`` is `four` (four cards to a sheet of A4) or `labels`; ``unit`` is `m`, `cm`, `mm` or `in`; of some parts
    alone where any are named. They bear a date, today's if none. Nothing on them is internal. Raises `Unusable`.
    """
    from intent.effects.assess import assess  # a check may find its answer kept, and needs none of these
    from intent.papers.cards.write import cards_of_proposal
    from intent.reading.proposal import read_proposal
    from intent.vocabulary.loader import read_vocabulary

    proposal = read_proposal(Path(installation), Path(work) if work else None, read_vocabulary())
    findings = proposal.validated()
    variance = assess(proposal.documentation.work, proposal.installation)
    page = cards_of_proposal(
        proposal,
        variance,
        sheet=sheet,
        unit=unit,
        made=date or datetime.date.today(),
        parts=parts,
        locale=locale_of(language),
    )
    return page, findings


def pdf(page: str, paper: str = "A4") -> bytes:
    """A page of this program as a PDF on A4 or letter paper. Raises `Unusable` where what it needs is missing."""
    from intent.papers.pdf import write_pdf  # slow to import, and not always installed

    return write_pdf(page, paper)
