"""The letters on which the consents and attestations of an installation rest: those that go with it, and those kept."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path, PurePosixPath

from intent.diagnostics import Diagnostic, Severity, Span, Unusable
from intent.language.message import say
from intent.model.installation import Installation
from intent.packages.carrying import CarriedFile
from intent.packages.contents import DOSSIER, INSTALLATIONS
from intent.packages.file_names import name_faults
from intent.reading.files import within
from intent.reading.proposal import Proposal
from intent.redaction.leaving import Leaving

_FILE = re.compile(r"\S.*\.[A-Za-z0-9]{1,5}$")
"""A source that ends as a file's name does; any other is words, or the identifier of a source of the work."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Letters:
    """What the answers and facts of an installation rest on."""

    going: tuple[CarriedFile, ...] = ()
    kept: tuple[str, ...] = ()
    """What of it stays with the sender, as the installation names it."""
    findings: tuple[Diagnostic, ...] = ()


def letters_of(proposal: Proposal | None, leaving: Leaving) -> Letters:
    """The files that the answers and facts name; a source that is kept in the house is named and does not go."""
    if proposal is None or leaving.installation is None:
        return Letters()
    going: dict[str, CarriedFile] = {}
    kept: dict[str, None] = {}
    findings: list[Diagnostic] = []
    internal = _kept_files(proposal)
    for written, to, span in _named(proposal, leaving.installation):
        source = proposal.documentation.work.source(written)
        if source is not None:
            kept |= {written: None} if source.internal else {}
            continue
        if not _FILE.match(written):
            continue
        try:
            one = _placed(proposal, written, to, span)
        except Unusable as error:
            findings.extend(replace(found, severity=Severity.WARNING) for found in error.diagnostics)
            continue
        if one.path.resolve() in internal:
            kept[written] = None
        elif one.inside in going:
            known = going[one.inside]
            both = ", ".join(dict.fromkeys([*known.identifier.split(", "), to]))
            going[one.inside] = replace(known, identifier=both)
        else:
            going[one.inside] = one
            findings.extend(_missing(one, span))
    return Letters(going=tuple(going.values()), kept=tuple(kept), findings=tuple(findings))


def _named(proposal: Proposal, installation: Installation) -> Iterator[tuple[str, str, Span]]:
    """Each source that is named, with what rests on it, and where that stands."""
    unknown = Span(file=proposal.files[-1].name)
    for consent in installation.consents:
        if consent.source:
            yield consent.source, ", ".join(consent.to), proposal.reading.spans.get(consent.iri, unknown)
    for fact in installation.attestations:
        if fact.source:
            yield fact.source, "", proposal.reading.spans.get(fact.iri, unknown)


def _kept_files(proposal: Proposal) -> set[Path]:
    """The files of the sources that stay in the house, however else they are named."""
    documentation = proposal.documentation
    files = (one.file for one in documentation.work.sources if one.internal and one.file)
    return {(documentation.folder / file).resolve() for file in files}


def _placed(proposal: Proposal, written: str, to: str, span: Span) -> CarriedFile:
    """A letter where it lies, and beside the installation in the package. Raises `Unusable` like files of the work."""
    folder = proposal.documentation.folder
    own = Path(next(file.name for file in proposal.files if file.role == "installation")).parent
    is_inside = own.resolve().is_relative_to(folder.resolve())
    path = within(folder, written, span, own if is_inside else None)
    inside = (
        _inside(path, folder, own) if is_inside else PurePosixPath(DOSSIER, *path.relative_to(folder).parts)
    )
    wrong = [fault.at(span) for fault in name_faults(str(inside))]
    if wrong:
        raise Unusable(wrong)
    return CarriedFile(identifier=to, name=written, path=path, inside=str(inside), is_there=path.is_file())


def _inside(path: Path, folder: Path, own: Path) -> PurePosixPath:
    """Its place in the package: beside the installation what lies beside it, else as in the work's folder."""
    if path.is_relative_to(own):
        return PurePosixPath(INSTALLATIONS, *path.relative_to(own).parts)
    return PurePosixPath(DOSSIER, *path.relative_to(folder).parts)


def _missing(letter: CarriedFile, span: Span) -> Iterator[Diagnostic]:
    if not letter.is_there:
        message = say("there is no letter `{file}`, so the package goes without it", file=letter.name)
        yield Diagnostic(slug="not-packed", message=message, span=span, severity=Severity.WARNING)
