"""What a sender should look at before a package goes: what it still says, and what withholding does to verdicts."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from intent.diagnostics import Diagnostic, Severity, Span
from intent.exports.withheld_turns import turned_by_withholding
from intent.language.message import say, say_of
from intent.packages.outgoing import Outgoing
from intent.packages.read_back import PackedDossier
from intent.reading.evidence.source_files import TEXTS
from intent.reading.files import LARGEST
from intent.redaction.still_said import texts_said_in, texts_to_look_for
from intent.variance.result import Variance


def review(
    folder: Path, outgoing: Outgoing, sent: PackedDossier, variance: Variance | None
) -> tuple[Diagnostic, ...]:
    """Warnings on a package that was filled; none of them keeps it from going.

    ``sent`` is its dossier read back, and ``variance`` what its receiver will find.
    """
    proposal = outgoing.proposal
    return (
        *_lost(outgoing, sent),
        *_still_said(folder, outgoing),
        *(turned_by_withholding(proposal, variance) if proposal and variance else ()),
    )


def _lost(outgoing: Outgoing, sent: PackedDossier) -> Iterator[Diagnostic]:
    """Statements of a graph that its text cannot hold; the package's graph is that of its text."""
    count = len(set(outgoing.leaving.work_graph) - set(sent.documentation.reading.triples))
    if count:
        message = say_of(
            count,
            "1 statement of the graph has no place in the text form, and stays behind",
            "{count} statements of the graph have no place in the text form, and stay behind",
            count=count,
        )
        span = Span(file=sent.documentation.files[0].name)
        yield Diagnostic(slug="not-in-text", message=message, span=span, severity=Severity.WARNING)


def _still_said(folder: Path, outgoing: Outgoing) -> Iterator[Diagnostic]:
    """Where what is kept in the house stands in what leaves all the same: in prose, or in another source."""
    kept = texts_to_look_for(outgoing.leaving.kept_texts)
    there = [one.inside for one in outgoing.files if one.is_there]
    sources = [path for path in there if Path(path).suffix.lower() in TEXTS]
    for path in dict.fromkeys([*outgoing.texts, *sources]) if kept else ():
        place = folder / path
        if place.stat().st_size > LARGEST:
            continue
        for number, line in enumerate(place.read_text(encoding="utf-8", errors="replace").splitlines(), 1):
            for text in texts_said_in(line, kept):
                message = say("“{text}” is kept in the house, and is said here all the same", text=text)
                span = Span(file=path, line=number, column=1, text=line)
                yield Diagnostic(slug="still-said", message=message, span=span, severity=Severity.WARNING)
