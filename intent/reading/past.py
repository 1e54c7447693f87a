"""The installations carried out that lie beside a work, found by a look at their heads and then read."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from intent.diagnostics import Diagnostic, Severity, Span, Unusable
from intent.language.message import Words, say
from intent.model.installation import Installation
from intent.names import CARRIED_OUT
from intent.reading.documentation import Documentation, Findings
from intent.reading.files import read_bytes
from intent.reading.heads import is_installation, is_rdf, named_in_head, read_text
from intent.reading.proposal import Proposal, read_beside
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

FOLDER = "installations"
"""Where installations are kept, beside the dossier."""
HEAD = 16 * 1024
"""As much of a file, in bytes, as is looked at for the head of a text."""


@dataclass(frozen=True, slots=True)
class Past:
    """The installations carried out, the earliest first, and what kept others from being read."""

    installations: tuple[Installation, ...] = ()
    findings: Findings = ()


def read_past(documentation: Documentation, *, all_told: bool = False) -> Past:
    """The installations of a work that were carried out. What lies beside them and is none is a note, if all is told.

    A file that may be one and cannot be used is a warning, and is passed over.
    """
    vocabulary = documentation.work.vocabulary
    found: list[Installation] = []
    findings: list[Diagnostic] = []
    for path in files_beside(documentation):
        try:
            if all_told and not is_installation(path, vocabulary):
                findings.append(_passed_over(path, say("it holds no installation")))
            elif may_be_carried_out(path, vocabulary):
                found.extend(_read(path, documentation, findings))
        except Unusable as error:
            findings.append(_passed_over(path, error.diagnostics[0].message, Severity.WARNING))
    return Past(
        tuple(sorted(found, key=lambda one: (one.dates.first, one.dates.last, one.iri))), tuple(findings)
    )


def is_carried_out(installation: Installation) -> bool:
    return installation.status is not None and installation.status.iri == CARRIED_OUT


def installations_folder(documentation: Documentation) -> Path:
    """Where the installations of a work are kept."""
    return documentation.folder / FOLDER


def files_beside(documentation: Documentation) -> tuple[Path, ...]:
    """The text and RDF files in the folder of installations."""
    folder = installations_folder(documentation)
    if not folder.is_dir():
        return ()
    known = (path for path in folder.iterdir() if path.suffix.lower() == ".md" or is_rdf(path))
    return tuple(sorted(path for path in known if path.is_file()))


def may_be_carried_out(path: Path, vocabulary: Vocabulary) -> bool:
    """Whether the head of a text says so, or a graph names the term; tells without reading a text as a whole."""
    try:
        with path.open("rb") as stream:
            content = stream.read() if is_rdf(path) else stream.read(HEAD)
    except OSError:
        return False
    if is_rdf(path):
        return b"carried-out" in content
    text = content.decode("utf-8-sig", "replace")
    written, _ = named_in_head(text, str(path), vocabulary, "status-of-installation")
    return written is not None and normal(written) in map(normal, vocabulary.concepts[CARRIED_OUT].names)


def _read(path: Path, documentation: Documentation, findings: list[Diagnostic]) -> tuple[Installation, ...]:
    if not _is_of(path, documentation):
        findings.append(
            _passed_over(path, say("it is not an installation of “{work}”", work=documentation.work.title))
        )
        return ()
    installation = usable_text(read_beside(path, documentation)).installation
    return (installation,) if is_carried_out(installation) else ()


def _is_of(path: Path, documentation: Documentation) -> bool:
    """Whether a text names this work's file, or none; of a graph, and beside one, the IRI of the work decides."""
    work = Path(documentation.files[0].name)
    if is_rdf(path) or is_rdf(work):
        return True
    text = read_text(path, read_bytes(path))
    named, _ = named_in_head(text, str(path), documentation.work.vocabulary, "work")
    return named is None or (path.parent / named).resolve() == work.resolve()


def usable_text(proposal: Proposal) -> Proposal:
    """A text with errors is refused; its shapes are not asked, since a text without errors meets them."""
    errors = [found for found in proposal.reading.findings if found.is_error]
    if errors:
        raise Unusable(errors)
    return proposal


def _passed_over(path: Path, reason: Words, severity: Severity = Severity.NOTE) -> Diagnostic:
    return Diagnostic(
        slug="passed-over",
        message=say("not read as an installation carried out: {reason}", reason=reason),
        span=Span(file=str(path)),
        severity=severity,
    )
