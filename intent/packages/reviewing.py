"""What a sender should look at before a package goes: what it still says, and what withholding does to verdicts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from intent.analysis.comparison.turns import compare_verdicts
from intent.diagnostics import Diagnostic, Severity, Span
from intent.effects.assess import assess
from intent.names import INTENT
from intent.packages.carrying import Carried
from intent.reading.documentation import Documentation
from intent.reading.evidence.source_files import TEXTS
from intent.reading.files import LARGEST
from intent.reading.proposal import Proposal
from intent.redaction.texts import Texts
from intent.variance.result import Variance

SHORTEST = 6
"""Characters of a text that is worth looking for; a shorter one, or a number, stands anywhere."""


def review(
    folder: Path,
    documentation: Documentation,
    proposal: Proposal | None,
    texts: Texts,
    files: Sequence[Carried],
    leaving: Documentation,
    variance: Variance | None,
) -> tuple[Diagnostic, ...]:
    """Warnings; none of them keeps the package from being written."""
    return (
        *_lost(texts, leaving),
        *_still_said(folder, texts, files),
        *(_turned(documentation, proposal, variance) if proposal and variance else ()),
    )


def _lost(texts: Texts, leaving: Documentation) -> Iterator[Diagnostic]:
    """Statements of a graph that its text cannot hold; the package's graph is that of its text."""
    count = len(texts.triples - set(leaving.reading.triples))
    if count:
        what = "1 statement of the graph has" if count == 1 else f"{count} statements of the graph have"
        message = f"{what} no place in the text form, and stay behind"
        yield Diagnostic(
            slug="not-in-text",
            message=message,
            span=Span(file=leaving.files[0].name),
            severity=Severity.WARNING,
        )


def _still_said(folder: Path, texts: Texts, files: Sequence[Carried]) -> Iterator[Diagnostic]:
    """Where what is kept in the house stands in what leaves all the same: in prose, or in another source."""
    kept = sorted({" ".join(text.split()) for text in texts.kept_texts if is_telling(text)})
    sources = [one.inside for one in files if one.is_there and Path(one.inside).suffix.lower() in TEXTS]
    for path in dict.fromkeys([*texts.files, *sources]) if kept else ():
        place = folder / path
        if place.stat().st_size > LARGEST:
            continue
        for number, line in enumerate(place.read_text(encoding="utf-8", errors="replace").splitlines(), 1):
            for text in kept:
                if text in " ".join(line.split()):
                    message = f"“{text}” is kept in the house, and is said here all the same"
                    yield Diagnostic(
                        slug="still-said",
                        message=message,
                        span=Span(file=path, line=number, column=1, text=line),
                        severity=Severity.WARNING,
                    )


def is_telling(text: str) -> bool:
    """Whether a text is worth looking for: long enough, and not a number."""
    return len(text.strip()) >= SHORTEST and any(sign.isalpha() for sign in text)


def _turned(documentation: Documentation, proposal: Proposal, sent: Variance) -> Iterator[Diagnostic]:
    """The verdicts that those who receive the package cannot reach, since they know less."""
    turn = compare_verdicts(assess(documentation.work, proposal.installation), sent)
    span = proposal.reading.spans.get(proposal.installation.iri, Span(file=str(INTENT.Installation)))
    for row in turn.rows:
        before, after = row.before or "as-documented", row.after or "as-documented"
        message = (
            f"with what is kept in the house, {row.characteristic} of {row.subject} is {before}; "
            f"in the package it is {after}"
        )
        yield Diagnostic(
            slug="verdict-turns", message=message, span=span, severity=Severity.WARNING, subject=row.subject
        )
