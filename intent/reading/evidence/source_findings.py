"""What is to be said of sources and of the passages quoted from them, each at its place in the work's text."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

from intent.diagnostics import Diagnostic, Severity, Span
from intent.language.message import Words, joined, say
from intent.model.citation import Citation
from intent.model.work import Heading, Source, Work
from intent.names import INTENT
from intent.reading.evidence.quoting import Quoted, SearchResult, SourcePlace, look_up
from intent.reading.evidence.source_files import SourceFile, read_sources

SHA256 = str(INTENT.sha256)
_LONGEST = 160
"""How many characters of a passage a finding quotes."""
_DIGITS = 12
"""How many digits of a digest tell it from another at a glance."""


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
    if file.trouble is not None:
        message = say("`{source}`: {fault}", source=name, fault=file.trouble.message)
        yield _finding(file.trouble.slug, message, span, name)
    if stated and file.sha256 and stated != file.sha256:
        message = say(
            "`{source}`: `{file}` has changed since its digest was taken; it is now {digest}… and not {stated}…",
            source=name,
            file=file.name,
            digest=file.sha256[:_DIGITS],
            stated=stated[:_DIGITS],
        )
        yield _finding("source-changed", message, span, name)


def _finding(
    slug: str, message: Words, span: Span, subject: str, severity: Severity = Severity.WARNING
) -> Diagnostic:
    return Diagnostic(slug=slug, message=message, span=span, severity=severity, subject=subject)


def passage_findings(
    work: Work, files: Mapping[str, SourceFile], spans: Mapping[str, Span]
) -> Iterator[Diagnostic]:
    """`passage-not-found`, `passage-elsewhere` and `no-time-codes`: at the citation, or at the line quoted for."""
    headings = {heading.identifier: heading for heading in work.headings}
    lines = {line.identifier: line.iri for line in work.lines}
    for quoted in look_up(work, work.headings, files):
        heading, line = headings[quoted.heading], lines.get(quoted.under)
        span = _place(spans, work, line) if line else _cited(spans, work, heading, quoted.citation)
        yield from _of_passage(heading, quoted, span)


def _of_passage(heading: Heading, quoted: Quoted, span: Span) -> Iterator[Diagnostic]:
    citation, place, name = heading.sources[quoted.citation - 1], quoted.place, quoted.under
    passage = say("`{line}`: “{words}”", line=name, words=_short(quoted.words))
    if quoted.standing is SearchResult.NOT_FOUND:
        yield _finding("passage-not-found", _not_found(passage, heading, place), span, name)
    elif quoted.standing is SearchResult.ELSEWHERE and place is not None:
        yield _finding("passage-elsewhere", _elsewhere(passage, citation, place), span, name)
    elif quoted.is_untimed and place is not None:
        message = say(
            "{passage} is in {source} (line {line}), which has no time codes to find {time} by",
            passage=passage,
            source=citation.source,
            line=place.line,
            time=citation.at or "",
        )
        yield _finding("no-time-codes", message, span, name, Severity.NOTE)


def _not_found(passage: Words, heading: Heading, near: SourcePlace | None) -> Words:
    sources = joined(dict.fromkeys(cited.source for cited in heading.sources), ", ")
    if near is None:
        return say("{passage} is not in {sources}", passage=passage, sources=sources)
    return say(
        "{passage} is not in {sources}; nearest is “{words}” ({place})",
        passage=passage,
        sources=sources,
        words=_short(near.words),
        place=near.where,
    )


def _elsewhere(passage: Words, citation: Citation, place: SourcePlace) -> Words:
    source, line, cited = citation.source, place.line, citation.at or ""
    if not place.time:
        return say(
            "{passage} is in {source} before the first time code (line {line}), not at {cited}",
            passage=passage,
            source=source,
            line=line,
            cited=cited,
        )
    return say(
        "{passage} is in {source} at {time} (line {line}), not at {cited}",
        passage=passage,
        source=source,
        time=place.time,
        line=line,
        cited=cited,
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
