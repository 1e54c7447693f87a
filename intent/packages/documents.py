"""What a package holds for people to read, beside the dossier: reports, the annex, and whatever is added here.

A document takes what was told of the proposal and gives files by their paths in the package. Adding one is adding a
line to `DOCUMENTS`.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from intent import __version__
from intent.language.message import ENGLISH
from intent.packages.contents import ANNEX, REPORT_PAGE, VERDICTS
from intent.papers import write_report
from intent.papers.annex import write_annex
from intent.papers.drawn import drawn_of
from intent.papers.passages_told import headings_behind
from intent.papers.report_evidence import Evidence, EvidenceFile, FileRole
from intent.papers.story import Story, tell
from intent.reading.evidence.passages import Passages, read_passages
from intent.reading.proposal import Proposal
from intent.redaction.withholding import WithheldKind
from intent.variance.result import Variance


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """A proposal as it is told in a package."""

    proposal: Proposal
    variance: Variance
    evidence: Evidence
    passages: Passages
    story: Story
    sorts: tuple[WithheldKind, ...]
    """What stays with the sender."""


Document = Callable[[Told], Mapping[str, bytes]]


def told_of(
    proposal: Proposal, variance: Variance, sorts: Sequence[WithheldKind], date: datetime.date, root: Path
) -> Told:
    """What is told of a proposal that lies in a package; files are named by their paths from ``root``."""
    documentation = proposal.documentation
    found = read_passages(documentation.work, documentation.folder, headings_behind(variance))
    sources = (replace(one, path=_within(one.path, root)) for one in found.sources)
    passages = Passages(found.quoted, tuple(sources))
    read = [EvidenceFile(FileRole(file.role), file.name, file.sha256) for file in proposal.files]
    read.extend(EvidenceFile(FileRole.SOURCE, *file) for file in passages.files)
    evidence = Evidence(tuple(read), __version__, date)
    story = tell(variance, evidence, (), passages)
    return Told(
        proposal=proposal,
        variance=variance,
        evidence=evidence,
        passages=passages,
        story=story,
        sorts=tuple(sorts),
    )


def _within(path: str, root: Path) -> str:
    return Path(path).relative_to(root).as_posix()


def _page(told: Told) -> Mapping[str, bytes]:
    drawn = drawn_of(told.variance, ENGLISH)
    text = write_report(told.variance, "html", told.evidence, passages=told.passages, drawn=drawn)
    return {REPORT_PAGE: text.encode()}


def _verdicts(told: Told) -> Mapping[str, bytes]:
    return {VERDICTS: write_report(told.variance, "json", told.evidence).encode()}


def _annex(told: Told) -> Mapping[str, bytes]:
    return {ANNEX: write_annex(told.story, told.sorts)}


DOCUMENTS: tuple[tuple[str, Document], ...] = (
    ("variance report", _page),
    ("verdicts for programs", _verdicts),
    ("installation annex", _annex),
)
