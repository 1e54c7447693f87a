"""The passages that a report quotes, with the texts that they stand in: read at the edge, then plain data."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from intent.model.work import Work
from intent.reading.evidence.quoting import Quoted, look_up
from intent.reading.evidence.source_files import MARKDOWN, SourceFile, read_sources


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceText:
    """A source from which something is quoted."""

    identifier: str
    title: str
    file: str
    """The path as the work gives it."""
    path: str
    """The same with the work's folder."""
    sha256: str
    text: str
    """Nothing where the source stays in the house, or is no text."""
    is_markdown: bool
    is_internal: bool


@dataclass(frozen=True, slots=True)
class Passages:
    """What is quoted, with where it was found, and the sources it is from."""

    quoted: tuple[Quoted, ...] = ()
    sources: tuple[SourceText, ...] = ()

    @property
    def files(self) -> tuple[tuple[str, str], ...]:
        """The files read, each once, by the path that a reader would find it under, with its digest."""
        return tuple(dict.fromkeys((one.path, one.sha256) for one in self.sources))

    def of(self, under: str) -> tuple[Quoted, ...]:
        """The passages quoted under a heading, or under one line, in their order."""
        return tuple(one for one in self.quoted if one.under == under)

    def within(self, source: str) -> tuple[Quoted, ...]:
        """The passages that stand in a source, in its order; what is only near is not in it."""
        there = (one for one in self.quoted if one.is_there and one.place and one.place.source == source)
        return tuple(sorted(there, key=lambda one: one.place.stretch.start if one.place else 0))


def read_passages(work: Work, folder: Path, headings: Collection[str]) -> Passages:
    """The passages quoted under some headings of a work. Reads the sources that they cite, from the work's folder."""
    chosen = [heading for heading in work.headings if heading.identifier in headings]
    cited = {citation.source for heading in chosen for citation in heading.sources}
    files = read_sources(work, folder, cited)
    return Passages(look_up(work, chosen, files), tuple(_texts(work, folder, files)))


def _texts(work: Work, folder: Path, files: dict[str, SourceFile]) -> Iterator[SourceText]:
    for source in work.sources:
        file = files.get(source.identifier)
        if file is not None and file.sha256 is not None:
            text = file.transcript.text if file.transcript and not source.internal else ""
            is_markdown = PurePosixPath(file.name).suffix.lower() in MARKDOWN
            yield SourceText(
                identifier=source.identifier,
                title=source.title,
                file=file.name,
                path=str(folder / file.name),
                sha256=file.sha256,
                text=text,
                is_markdown=is_markdown,
                is_internal=source.internal,
            )
