"""The sources' files, read once each, from the work's folder only."""

from __future__ import annotations

import hashlib
import stat
from collections.abc import Collection
from dataclasses import dataclass, replace
from pathlib import Path

from intent.diagnostics import Span, Unusable
from intent.language.message import Words, say
from intent.language.sizes import MEBIBYTE, size_words
from intent.model.work import Source, Work
from intent.reading.evidence.search import Transcript, transcript_of
from intent.reading.files import as_text, within

LARGEST = 64 * MEBIBYTE
"""The most bytes that are read of a source; what is longer is neither searched nor digested."""
_BLOCK = MEBIBYTE
_MISSING, _NOT_READ = "source-missing", "source-not-read"
TEXTS = frozenset({".md", ".markdown", ".txt", ".text", ".vtt", ".srt"})
"""The endings of texts that are searched; everything else is only digested."""
MARKDOWN = frozenset({".md", ".markdown"})


@dataclass(frozen=True, slots=True)
class Trouble:
    """Why a source's file could not be used."""

    slug: str
    message: Words


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceFile:
    """A source's file as it was found: its digest, and its text where it is one."""

    source: str
    name: str
    """The path as the work gives it."""
    sha256: str | None = None
    """64 hexadecimal digits (FIPS 180-4)."""
    transcript: Transcript | None = None
    trouble: Trouble | None = None

    @property
    def is_text(self) -> bool:
        return Path(self.name).suffix.lower() in TEXTS


def read_sources(work: Work, folder: Path, only: Collection[str] | None = None) -> dict[str, SourceFile]:
    """The files of a work's sources, by the source's identifier; of certain sources, or of all.

    A source without a file has no entry; one whose file cannot be used says why.
    """
    found: dict[str, SourceFile] = {}
    read: dict[str, SourceFile] = {}
    for source in work.sources:
        if source.file and (only is None or source.identifier in only):
            if source.file not in read:
                read[source.file] = _read(source, source.file, folder)
            found[source.identifier] = replace(read[source.file], source=source.identifier)
    return found


def _read(source: Source, name: str, folder: Path) -> SourceFile:
    try:
        path = within(folder, name, Span(file=name))
        found = path.stat()
        if not stat.S_ISREG(found.st_mode):
            return _troubled(source, name, say("`{file}` is not an ordinary file", file=name))
        if found.st_size > LARGEST:
            return _troubled(source, name, _too_large(name, found.st_size))
        is_text = path.suffix.lower() in TEXTS
        sha256, content = _digest(path, keep=is_text)
    except (Unusable, OSError, ValueError) as error:
        return _refused(source, name, error)
    return _with_text(SourceFile(source=source.identifier, name=name, sha256=sha256), content, is_text)


def _too_large(name: str, size: int) -> Words:
    return say(
        "`{file}` has {size}; the most that is read is {most}, so nothing is said of it",
        file=name,
        size=size_words(size),
        most=size_words(LARGEST),
    )


def _digest(path: Path, *, keep: bool) -> tuple[str, bytes]:
    """The digest of a file, taken by blocks, and its bytes where they are to be kept."""
    digest, content = hashlib.sha256(), bytearray()
    with path.open("rb") as stream:
        while block := stream.read(_BLOCK):
            digest.update(block)
            if keep:
                content += block
    return digest.hexdigest(), bytes(content)


def _with_text(file: SourceFile, content: bytes, is_text: bool) -> SourceFile:
    if not is_text:
        return file
    try:
        text = as_text(content, file.name)
    except Unusable as error:
        message = say("`{file}`: {fault}", file=file.name, fault=error.diagnostics[0].message)
        return replace(file, trouble=Trouble(_NOT_READ, message))
    return replace(file, transcript=transcript_of(text))


def _refused(source: Source, name: str, error: Exception) -> SourceFile:
    if isinstance(error, Unusable):
        return _troubled(source, name, error.diagnostics[0].message)
    if isinstance(error, FileNotFoundError | NotADirectoryError):
        message = say("there is no file `{file}` in the work's folder", file=name)
        return _troubled(source, name, message, _MISSING)
    reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
    return _troubled(source, name, say("`{file}` cannot be read: {reason}", file=name, reason=reason))


def _troubled(source: Source, name: str, message: Words, slug: str = _NOT_READ) -> SourceFile:
    return SourceFile(source=source.identifier, name=name, trouble=Trouble(slug, message))
