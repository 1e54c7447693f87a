"""The few verbs that the program has, for the command line and for programs alike."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import replace
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING

from intent.checking import Checked as Checked
from intent.checking import check as check
from intent.checking import check_and_report as check_and_report
from intent.checking import report as report
from intent.diagnostics import Diagnostic, Severity, Span, Unusable, in_order
from intent.effects.assess import assess
from intent.paper import cards as cards
from intent.paper import pdf as pdf
from intent.reading.atomic_write import write_whole
from intent.reading.documentation import Documentation, read_documentation
from intent.reading.heads import is_installation
from intent.reading.proposal import Proposal, read_beside, read_proposal
from intent.vocabulary.loader import read_vocabulary

if TYPE_CHECKING:
    from intent.analysis.comparison.turns import Turn
    from intent.analysis.comparison.works import Comparison
    from intent.analysis.explanation.explain import Account
    from intent.analysis.history.chronicle import Chronicle
    from intent.exports.exporting import Export
    from intent.packages.package import Package
    from intent.packages.receive import Received

_LANGUAGE_OF_TURTLE = ("turtle", "json-ld", "n-triples")
CONVERSIONS = ("markdown", *_LANGUAGE_OF_TURTLE)


def validate(path: str | Path, work: str | Path | None = None) -> tuple[Diagnostic, ...]:
    """What is found in a work or an installation that can be used. Raises `Unusable` with all its errors.

    A work's instructions are laid against each other and against its documented state, and what they quote is looked
    for in the sources; of an installation, it is asked whether those who answered could do so then, and whether it
    was carried out as agreed.
    """
    from intent.analysis.examination.examine import analyse, analyse_answers
    from intent.analysis.history.past import read_agreement
    from intent.reading.evidence.source_findings import evidence_findings

    found, shipped = Path(path), read_vocabulary()
    if work is not None or is_installation(found, shipped):
        proposal = read_proposal(found, Path(work) if work else None, shipped)
        documented, spans = proposal.documentation.work, proposal.reading.spans
        answers = analyse_answers(documented, proposal.installation, spans)
        return (*proposal.validated(), *answers, *read_agreement(proposal))
    documentation = read_documentation(found, shipped)
    documented, spans = documentation.work, documentation.reading.spans
    by_itself = analyse(documented, spans)
    rests_on = evidence_findings(documented, documentation.folder, spans)
    return in_order([*documentation.validated(), *by_itself, *rests_on])


def digests(work: str | Path) -> tuple[str, ...]:
    """For each source whose file has no digest yet, the line to write under its heading. Raises `Unusable`."""
    from intent.reading.evidence.source_files import read_sources
    from intent.reading.evidence.source_findings import missing_digests

    documentation = read_documentation(Path(work), read_vocabulary())
    documentation.validated()
    return tuple(missing_digests(documentation.work, read_sources(documentation.work, documentation.folder)))


def explain(
    work: str | Path,
    subject: str | None = None,
    characteristic: str | None = None,
    on: datetime.date | None = None,
) -> Account:
    """What governs a part, a group, a characteristic or the whole work on a day, today's if none.

    Raises `Unusable`, and `intent.diagnostics.UnknownName` for an unknown name.
    """
    from intent.analysis.explanation.explain import explain as explain_work

    documentation = read_documentation(Path(work), read_vocabulary())
    documentation.validated()
    return explain_work(documentation.work, subject, characteristic, on or datetime.date.today())


def history(
    work: str | Path, subject: str | None = None, characteristic: str | None = None
) -> tuple[Chronicle, tuple[Diagnostic, ...]]:
    """How a work was shown, and what beside it is no installation carried out.

    Raises `Unusable`, and `intent.diagnostics.UnknownName` for an unknown name.
    """
    from intent.analysis.history.chronicle import chronicle
    from intent.analysis.history.past import read_past

    documentation = read_documentation(Path(work), read_vocabulary())
    documentation.validated()
    past = read_past(documentation, all_told=True)
    return chronicle(documentation.work, past.installations, subject, characteristic), past.findings


def compare(
    old: str | Path, new: str | Path, installation: str | Path | None = None
) -> tuple[Comparison, Turn | None, tuple[Diagnostic, ...]]:
    """What changed between two states of a work, and which verdicts on an installation change with it.

    Raises `Unusable`, also where the two are not states of one work.
    """
    from intent.analysis.comparison.turns import compare_verdicts
    from intent.analysis.comparison.works import compare_works

    shipped = read_vocabulary()
    states = [read_documentation(Path(path), shipped) for path in (old, new)]
    for state in states:
        state.validated()
    findings = _one_work(states[0], states[1])
    found = compare_works(states[0].work, states[1].work)
    if installation is None:
        return found, None, findings
    proposals = [read_beside(Path(installation), state) for state in _around(Path(installation), states)]
    for proposal in proposals:
        proposal.validated()
    before, after = (assess(one.documentation.work, one.installation) for one in proposals)
    return found, compare_verdicts(before, after), findings


def _around(installation: Path, states: Sequence[Documentation]) -> Iterator[Documentation]:
    """States of a work as though all lay where the installation is kept, with its pool."""
    place = installation.resolve()
    folders = [state.folder for state in states if place.is_relative_to(state.folder.resolve())]
    yield from (replace(state, folder=folders[0] if folders else installation.parent) for state in states)


def _one_work(old: Documentation, new: Documentation) -> tuple[Diagnostic, ...]:
    """Whether two states are of one work: a warning where only title or number say so. Raises `Unusable`."""
    from intent.analysis.comparison.works import is_same_work

    if old.work.iri == new.work.iri:
        return ()
    span = Span(file=new.files[0].name)
    if not is_same_work(old.work, new.work):
        message = f"“{new.work.title}” is another work than “{old.work.title}”; compare two states of one"
        raise Unusable([Diagnostic(slug="another-work", message=message, span=span)])
    iris = f"{old.work.iri}, {new.work.iri}"
    message = f"the two have different IRIs ({iris}) and are taken for one work by title or number"
    return (Diagnostic(slug="another-iri", message=message, span=span, severity=Severity.WARNING),)


def questions(
    work: str | Path, format: str = "markdown", date: datetime.date | None = None
) -> tuple[str, tuple[Diagnostic, ...]]:
    """What to ask at the next conversation, as Markdown or as a page, and what beside the work could not be read.

    ``date`` is the day of the conversation, today if none. Raises `Unusable`.
    """
    from intent.analysis.history.past import read_past
    from intent.analysis.questions.draw_up import draw_up
    from intent.papers.agenda import write_markdown
    from intent.papers.agenda_page import write_page

    documentation = read_documentation(Path(work), read_vocabulary())
    documentation.validated()
    past = read_past(documentation)
    agenda = draw_up(documentation.work, past.installations, date or datetime.date.today())
    return (write_page if format == "html" else write_markdown)(agenda), past.findings


def terms(name: str | None = None, work: str | Path | None = None) -> str:
    """The words of the vocabulary, or what one means; with a work's own terms, if one is given.

    Raises `Unusable`, and `intent.papers.glossary.UnknownTerm` for a word that there is not.
    """
    from intent.papers.glossary import entry, overview

    shipped = read_vocabulary()
    vocabulary = read_documentation(Path(work), shipped).work.vocabulary if work else shipped
    return entry(vocabulary, name) if name else overview(vocabulary)


def convert(path: str | Path, to: str, work: str | Path | None = None) -> tuple[str, tuple[Diagnostic, ...]]:
    """A work or installation in another form, one of `CONVERSIONS`, and what has no place in that form."""
    from intent.exports.converting import converted_installation, converted_work

    documentation, proposal = _read(path, work)
    return converted_installation(proposal, to) if proposal else converted_work(documentation, to)


def _read(path: str | Path, work: str | Path | None) -> tuple[Documentation, Proposal | None]:
    """A work, or an installation with its work, found to be usable. Raises `Unusable`."""
    found, shipped = Path(path), read_vocabulary()
    if work is not None or is_installation(found, shipped):
        proposal = read_proposal(found, Path(work) if work else None, shipped)
        proposal.validated()
        return proposal.documentation, proposal
    documentation = read_documentation(found, shipped)
    documentation.validated()
    return documentation, None


def new(path: str | Path, *, installation: bool = False) -> Path:
    """Write a commented text to start from. Raises `Unusable` where the file is already there."""
    name = "new-installation.md" if installation else "new-work.md"
    text = files("intent.dossier").joinpath(name).read_text(encoding="utf-8")
    write_whole(Path(path), text, replace=False)
    return Path(path)


def sheet(work: str | Path, name: str, file: str | Path) -> None:
    """Write the parts, devices or boxes of a work as a sheet, `.csv` or `.xlsx`. Raises `Unusable`."""
    from intent.exports.grid import write_grid
    from intent.exports.sheet_rows import sheet_rows

    documentation = read_documentation(Path(work), read_vocabulary())
    documentation.validated()
    write_grid(Path(file), name, sheet_rows(documentation.work, name))


def enter_sheet(work: str | Path, name: str, file: str | Path) -> tuple[str, tuple[Diagnostic, ...]]:
    """The dossier of a work with the rows of a sheet entered, and what was found. Raises `Unusable`."""
    from intent.exports.grid import read_grid
    from intent.exports.sheet_rows import enter_sheet as entered
    from intent.reading.files import as_text, read_bytes

    documentation = read_documentation(Path(work), read_vocabulary())
    text = as_text(read_bytes(Path(work)), str(work))
    found = entered(text, str(work), read_grid(Path(file)), name, documentation.work.vocabulary)
    return found.text, found.findings


def pack(
    path: str | Path,
    to: str | Path,
    work: str | Path | None = None,
    date: datetime.date | None = None,
    *,
    pdf: bool = True,
) -> Package:
    """A work, or an installation with its work and report, as a package without what stays in the house.

    ``to`` is a new folder, or a new file that ends in `.zip`; ``date`` is that of the package, the installation's
    first day if none. The report and the placement cards go as pages, and as PDFs unless ``pdf`` says no.
    Raises `Unusable`.
    """
    from intent.packages.package import write_package

    documentation, proposal = _read(path, work)
    return write_package(documentation, proposal, Path(to), date=date, pdf=pdf)


def export(
    path: str | Path, standards: Sequence[str], to: str | Path, work: str | Path | None = None
) -> Export:
    """A work, or an installation with its work, in other standards and without what stays in the house.

    ``standards`` are names of `intent.exports.standards.STANDARDS`; ``to`` is a file, or a new folder for several
    files. Raises `Unusable`.
    """
    from intent.exports.exporting import write_export

    documentation, proposal = _read(path, work)
    return write_export(documentation, proposal, standards, Path(to))


def receive(
    package: str | Path,
    into: str | Path,
    held: str | Path | None = None,
    most_files: int | None = None,
    most_bytes: int | None = None,
) -> Received:
    """A package of unknown origin, a folder or a zip, checked and opened in a new folder.

    ``held`` is a copy of the work to which it is compared; the most files and bytes that it may hold are those of
    `intent.packages.limits.Limits` if none are given. Raises `Unusable` with every fault found; then nothing is left.
    """
    from intent.packages.limits import limits_of
    from intent.packages.receive import receive_package

    documentation = read_documentation(Path(held), read_vocabulary()) if held else None
    return receive_package(Path(package), Path(into), documentation, limits_of(most_files, most_bytes))
