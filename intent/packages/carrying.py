"""The files that travel with a dossier: those of its sources and of its material, and its own terms."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from intent.diagnostics import Diagnostic, Severity, Span, Unusable
from intent.language.message import say
from intent.model.work import Work
from intent.names import INTENT
from intent.packages.contents import DOSSIER
from intent.packages.file_names import name_faults
from intent.reading.documentation import Documentation
from intent.reading.files import within


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedFile:
    """A file as it is named, where it lies, and where it goes; a file that is not there goes nowhere."""

    identifier: str
    """Of the source or material; of a letter, the lines that were answered in it."""
    name: str
    """The path as the work gives it."""
    path: Path
    inside: str
    """Its path in the package."""
    is_there: bool


def carried_files(
    documentation: Documentation, leaving: Work
) -> tuple[tuple[CarriedFile, ...], tuple[Diagnostic, ...]]:
    """The files that what leaves of a work names, and what is to be said of those that cannot go."""
    found: list[CarriedFile] = []
    findings: list[Diagnostic] = []
    for identifier, name, iri in _named(leaving):
        span = documentation.reading.spans.get(iri, Span(file=documentation.files[0].name))
        try:
            one = _placed(documentation.folder, identifier, name, span)
        except Unusable as error:
            findings.extend(error.diagnostics)
            continue
        found.append(one)
        if not one.is_there:
            findings.append(_missing(one, span))
    return tuple(found), tuple(findings)


def _missing(file: CarriedFile, span: Span) -> Diagnostic:
    """That a file is not there, be it a source or what the work shows: somebody has to settle how it goes."""
    message = say(
        "`{identifier}`: there is no file `{file}`, so the package goes without it",
        identifier=file.identifier,
        file=file.name,
    )
    return Diagnostic(
        slug="not-packed",
        message=message,
        span=span,
        severity=Severity.WARNING,
        subject=file.identifier,
    )


def _named(work: Work) -> Iterator[tuple[str, str, str]]:
    """Identifier, file and IRI of each source, each material, and the work's own terms."""
    yield from ((one.identifier, one.file, one.iri) for one in work.sources if one.file)
    yield from ((one.identifier, one.file, one.iri) for one in work.material if one.file)
    terms = work.fields.get(str(INTENT.termsFile))
    if terms:
        yield "", terms, work.iri


def _placed(folder: Path, identifier: str, name: str, span: Span) -> CarriedFile:
    """Raises `Unusable` for a file out of the folder, or one whose name cannot travel."""
    path = within(folder, name, span)
    inner = PurePosixPath(*path.relative_to(folder).parts)
    wrong = [fault.at(span) for fault in name_faults(str(inner))]
    if wrong:
        raise Unusable(wrong)
    return CarriedFile(
        identifier=identifier, name=name, path=path, inside=f"{DOSSIER}/{inner}", is_there=path.is_file()
    )
