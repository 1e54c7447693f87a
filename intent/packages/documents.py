"""What a package holds for people to read, beside the dossier: reports, cards, the annex, the book, the packing list.

A document takes what was told of the proposal and gives files by their paths in the package. Adding one is adding a
line to `DOCUMENTS`.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from intent.analysis.explanation.explain import explain
from intent.diagnostics import Diagnostic, Severity, Unusable
from intent.language.locale import Locale
from intent.language.message import say
from intent.model.installation import Installation
from intent.model.work import Work
from intent.packages.contents import ANNEX, BOOK, CARDS_PAGE, PACKING_LIST, REPORT_PAGE, VERDICTS
from intent.packages.filling import PackedFile
from intent.packages.outgoing import Outgoing
from intent.papers import write_report
from intent.papers.annex import annex_paper
from intent.papers.cards.write import cards_of_proposal
from intent.papers.drawn import drawn_of
from intent.papers.explanation_paper import explanation_paper
from intent.papers.installation_book import installation_book
from intent.papers.packing_list import ListedFile, packing_paper
from intent.papers.passages_told import headings_behind
from intent.papers.pdf import write_pdf
from intent.papers.report_evidence import Evidence, EvidenceFile, FileRole
from intent.papers.telling import tell
from intent.reading.evidence.passages import Passages, read_passages
from intent.reading.proposal import Proposal
from intent.redaction.withholding import WithheldKind
from intent.variance.result import Variance
from intent.version import VERSION

PRINTED = (REPORT_PAGE, CARDS_PAGE, ANNEX, BOOK, PACKING_LIST)
"""The pages that go on paper too."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldProposal:
    """A proposal as it is told in a package."""

    proposal: Proposal
    variance: Variance
    evidence: Evidence
    passages: Passages
    withheld: tuple[WithheldKind, ...]
    """What stays with the sender."""
    locale: Locale


PackagedPaper = Callable[[ToldProposal], Mapping[str, bytes]]
"""Files by their paths in the package."""


def pages_of(
    proposal: Proposal, variance: Variance, outgoing: Outgoing, root: Path, locale: Locale
) -> dict[str, bytes]:
    """The papers about a proposal that lies in a package, by path; files are named by their paths from ``root``."""
    documentation = proposal.documentation
    found = read_passages(documentation.work, documentation.folder, headings_behind(variance))
    sources = (replace(one, path=Path(one.path).relative_to(root).as_posix()) for one in found.sources)
    passages = Passages(found.quoted, tuple(sources))
    read = [EvidenceFile(FileRole(file.role), file.name, file.sha256) for file in proposal.files]
    read.extend(EvidenceFile(FileRole.SOURCE, *file) for file in passages.files)
    evidence = Evidence(tuple(read), VERSION, outgoing.day)
    told = ToldProposal(
        proposal=proposal,
        variance=variance,
        evidence=evidence,
        passages=passages,
        withheld=outgoing.leaving.withheld,
        locale=locale,
    )
    return {path: content for _, document in DOCUMENTS for path, content in document(told).items()}


def _page(told: ToldProposal) -> Mapping[str, bytes]:
    text = write_report(
        told.variance,
        "html",
        told.evidence,
        passages=told.passages,
        drawn=drawn_of(told.variance),
        locale=told.locale,
    )
    return {REPORT_PAGE: text.encode()}


def _verdicts(told: ToldProposal) -> Mapping[str, bytes]:
    return {VERDICTS: write_report(told.variance, "json", told.evidence).encode()}


def _annex(told: ToldProposal) -> Mapping[str, bytes]:
    paper = annex_paper(told.variance, told.evidence, told.withheld)
    return {ANNEX: tell(paper, "html", told.locale).encode()}


def _book(told: ToldProposal) -> Mapping[str, bytes]:
    paper = installation_book(told.variance, version=VERSION, day=told.evidence.date)
    return {BOOK: tell(paper, "html", told.locale).encode()}


def _cards(told: ToldProposal) -> Mapping[str, bytes]:
    page = cards_of_proposal(
        told.proposal,
        told.variance,
        sheet="four",
        unit="m",
        made=told.evidence.date,
        locale=told.locale,
    )
    return {CARDS_PAGE: page.encode()}


DOCUMENTS: tuple[tuple[str, PackagedPaper], ...] = (
    ("variance report", _page),
    ("verdicts for programs", _verdicts),
    ("installation annex", _annex),
    ("placement cards", _cards),
    ("installation book", _book),
)


def printed(pages: Mapping[str, bytes]) -> tuple[dict[str, bytes], tuple[Diagnostic, ...]]:
    """PDFs of those pages that go on paper too; where that cannot be, it is said, and they go without."""
    prints: dict[str, bytes] = {}
    for path in filter(pages.__contains__, PRINTED):
        try:
            prints[str(Path(path).with_suffix(".pdf"))] = write_pdf(pages[path].decode())
        except Unusable as error:
            missing = error.diagnostics[0]
            message = say("the package goes without PDFs: {reason}", reason=missing.message)
            return prints, (
                Diagnostic(slug="not-packed", message=message, span=missing.span, severity=Severity.WARNING),
            )
    return prints, ()


def instructions_page(work: Work, day: datetime.date, locale: Locale) -> bytes:
    """What governs the work on a day, each characteristic with its instructions and the words behind them."""
    return tell(explanation_paper(explain(work, None, None, day)), "html", locale).encode()


def packing_list(
    work: Work,
    outgoing: Outgoing,
    packed: Mapping[str, PackedFile],
    locale: Locale,
    *,
    installation: Installation | None = None,
) -> bytes:
    """What travels, to be ticked off, with the sizes of the files in the package."""
    files: list[ListedFile] = []
    for one in outgoing.files:
        found = packed.get(one.inside)
        files.append(ListedFile(identifier=one.identifier, name=one.name, size=found.size if found else None))
    paper = packing_paper(
        work,
        files,
        outgoing.leaving.withheld,
        version=VERSION,
        day=outgoing.day,
        installation=installation,
    )
    return tell(paper, "html", locale).encode()
