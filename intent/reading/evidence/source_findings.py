"""What is to be said of sources and of the passages quoted from them, each at its place in the work's text."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

from intent.diagnostics import Diagnostic, Severity, Span
from intent.model.work import Heading, Source, Work
from intent.names import INTENT
from intent.reading.evidence.quoting import Quoted, SearchResult, look_up
from intent.reading.evidence.source_files import SourceFile, read_sources

SHA256 = str(INTENT.sha256)
_LONGEST = 160
"""How many characters of a passage a finding quotes."""


def evidence_findings(work: Work, folder: Path, spans: Mapping[str, Span]) -> tuple[Diagnostic, ...]:
    """What the files of a work's sources show. Reads them from the work's folder."""
    files = read_sources(work, folder)
    return (*source_findings(work, files, spans), *passage_findings(work, files, spans))


def source_findings(
    work: Work, files: Mapping[str, SourceFile], spans: Mapping[str, Span]
) -> Iterator[Diagnostic]:
    """`source-missing`, `source-not-read` and `source-changed`, at the source's own heading."""
    for source in work.sources:
        file = files.get(source.identifier)
        if file is not None:
            yield from _of_file(source, file, _place(spans, work, source.iri))


def _of_file(source: Source, file: SourceFile, span: Span) -> Iterator[Diagnostic]:
    stated, name = source.fields.get(SHA256, "").lower(), source.identifier
    if file.trouble is not None and file.is_missing:
        yield Diagnostic(
            slug="source-missing",
            message=f"`{name}`: {file.trouble.message}",
            span=span,
            severity=Severity.WARNING,
            subject=name,
        )
    elif file.trouble is not None:
        message = f"`{name}`: {file.trouble.message}"
        yield Diagnostic(
            slug="source-not-read", message=message, span=span, severity=Severity.WARNING, subject=name
        )
    if stated and file.sha256 and stated != file.sha256:
        message = (
            f"`{name}`: `{file.name}` has changed since its digest was taken; "
            f"it is now {file.sha256[:12]}… and not {stated[:12]}…"
        )
        yield Diagnostic(
            slug="source-changed", message=message, span=span, severity=Severity.WARNING, subject=name
        )


def passage_findings(
    work: Work, files: Mapping[str, SourceFile], spans: Mapping[str, Span]
) -> Iterator[Diagnostic]:
    """`passage-not-found`, `passage-elsewhere` and `no-time-codes`, at the citation."""
    headings = {heading.identifier: heading for heading in work.headings}
    for quoted in look_up(work.headings, files):
        heading = headings[quoted.heading]
        yield from _of_passage(heading, quoted, _cited(spans, work, heading, quoted.citation))


def _of_passage(heading: Heading, quoted: Quoted, span: Span) -> Iterator[Diagnostic]:
    citation, place = heading.sources[quoted.citation - 1], quoted.place
    head = f"`{heading.identifier}`: “{_short(quoted.words)}”"
    if quoted.standing is SearchResult.NOT_FOUND:
        near = f"; nearest is “{_short(place.words)}” ({place})" if place else ""
        sources = ", ".join(dict.fromkeys(cited.source for cited in heading.sources))
        message = f"{head} is not in {sources}{near}"
        yield Diagnostic(
            slug="passage-not-found",
            message=message,
            span=span,
            severity=Severity.WARNING,
            subject=heading.identifier,
        )
    elif quoted.standing is SearchResult.ELSEWHERE and place is not None:
        there = f"at {place.time}" if place.time else "before the first time code"
        message = f"{head} is in {citation.source} {there} (line {place.line}), not at {citation.at}"
        yield Diagnostic(
            slug="passage-elsewhere",
            message=message,
            span=span,
            severity=Severity.WARNING,
            subject=heading.identifier,
        )
    elif quoted.is_untimed and place is not None:
        where = f"{citation.source} (line {place.line})"
        message = f"{head} is in {where}, which has no time codes to find {citation.at} by"
        yield Diagnostic(
            slug="no-time-codes",
            message=message,
            span=span,
            severity=Severity.NOTE,
            subject=heading.identifier,
        )


def _cited(spans: Mapping[str, Span], work: Work, heading: Heading, citation: int) -> Span:
    span = spans.get(f"{heading.iri}.citation-{citation}")
    return span or _place(spans, work, heading.iri)


def _place(spans: Mapping[str, Span], work: Work, iri: str) -> Span:
    """Where something stands; of a record received as a graph only the file is known."""
    return spans.get(iri) or spans.get(work.iri) or Span(file="")


def _short(words: str) -> str:
    line = " ".join(words.split())
    return line if len(line) <= _LONGEST else f"{line[:_LONGEST].rpartition(' ')[0]} …"


def missing_digests(work: Work, files: Mapping[str, SourceFile]) -> Iterator[str]:
    """For each source that has a file and no digest, the line to write under its heading."""
    for source in work.sources:
        file = files.get(source.identifier)
        if file is not None and file.sha256 and SHA256 not in source.fields:
            yield f"### {source.identifier} {source.title}\n- sha256: {file.sha256}"
