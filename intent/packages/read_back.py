"""A dossier read from the package in which it lies, with names that hold there and not in a passing folder."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from intent.diagnostics import Diagnostic, Span, Unusable
from intent.dossier.draft import Reading
from intent.language.message import Message, Place, Words
from intent.packages.contents import WORK_TEXT
from intent.reading.documentation import Documentation, read_documentation
from intent.reading.heads import ReadFile
from intent.reading.proposal import Proposal, read_beside
from intent.vocabulary.loader import read_vocabulary


@dataclass(frozen=True, slots=True)
class PackedDossier:
    """A work as it lies in a package, with the installation of it if there is one."""

    documentation: Documentation
    proposal: Proposal | None
    findings: tuple[Diagnostic, ...]
    """What its reading and its shapes found, and does not keep it from being used."""


def read_back(root: Path, installation: str | None, shown: str = "") -> PackedDossier:
    """The dossier in a package's folder; files are named by their paths in it, after ``shown``.

    Raises `Unusable` with everything that is wrong with it.
    """
    try:
        documentation = read_documentation(root / WORK_TEXT, read_vocabulary())
        proposal = read_beside(root / installation, documentation) if installation else None
        findings = proposal.validated() if proposal else documentation.validated()
    except Unusable as error:
        raise Unusable(named_within(error.diagnostics, root, shown)) from None
    documentation = _renamed(documentation, root, shown)
    if proposal is not None:
        reading = _renamed_reading(proposal.reading, root, shown)
        files = _renamed_files(proposal.files, root, shown)
        proposal = replace(proposal, documentation=documentation, reading=reading, files=files)
    return PackedDossier(documentation, proposal, tuple(named_within(findings, root, shown)))


def named_within(diagnostics: Iterable[Diagnostic], root: Path, shown: str) -> list[Diagnostic]:
    """Findings with the names that their files have in the package."""
    return [
        replace(
            found,
            span=_renamed_span(found.span, root, shown),
            message=_renamed_words(found.message, root, shown),
        )
        for found in diagnostics
    ]


def _renamed(documentation: Documentation, root: Path, shown: str) -> Documentation:
    reading = _renamed_reading(documentation.reading, root, shown)
    return replace(documentation, reading=reading, files=_renamed_files(documentation.files, root, shown))


def _renamed_reading(reading: Reading, root: Path, shown: str) -> Reading:
    spans: Mapping[str, Span] = {iri: _renamed_span(span, root, shown) for iri, span in reading.spans.items()}
    return replace(reading, spans=spans, findings=tuple(named_within(reading.findings, root, shown)))


def _renamed_files(files: Iterable[ReadFile], root: Path, shown: str) -> tuple[ReadFile, ...]:
    return tuple(replace(file, name=_name(file.name, root, shown)) for file in files)


def _renamed_span(span: Span, root: Path, shown: str) -> Span:
    return replace(span, file=_name(span.file, root, shown))


def _renamed_words(words: Words, root: Path, shown: str) -> Words:
    """A message in whose places a path in the passing folder is one in the package."""
    if isinstance(words, str):
        return words
    return replace(
        words, places=tuple((name, _renamed_place(one, root, shown)) for name, one in words.places)
    )


def _renamed_place(place: Place, root: Path, shown: str) -> Place:
    if isinstance(place, str):
        return _name(place, root, shown)
    return _renamed_words(place, root, shown) if isinstance(place, Message) else place


def _name(name: str, root: Path, shown: str) -> str:
    path = Path(name)
    if not path.is_relative_to(root):
        return name
    return "/".join(filter(None, [shown, path.relative_to(root).as_posix()]))
