"""Verbs about documentation as text: new, validate, digests, terms, convert, and sheets out and in."""

from __future__ import annotations

import datetime
import os
from collections.abc import Iterator
from pathlib import Path

from intent.analysis.examination.examine import analyse, analyse_answers
from intent.analysis.expectations.held import hold_expectations
from intent.analysis.history.agreement import read_agreement
from intent.diagnostics import Diagnostic, in_order
from intent.dossier.template_text import template_text
from intent.exports.converting import converted_installation, converted_work
from intent.exports.grid import read_grid, write_grid
from intent.exports.sheet_entry import enter_sheet as entered
from intent.exports.sheet_rows import sheet_rows
from intent.language.languages import locale_of
from intent.papers.glossary import entry_paper, glossary_paper
from intent.reading.atomic_write import refuse_existing, write_whole
from intent.reading.documentation import Documentation, read_documentation
from intent.reading.evidence.source_files import read_sources
from intent.reading.evidence.source_findings import evidence_findings, missing_digests
from intent.reading.files import as_text, read_bytes
from intent.reading.heads import is_installation
from intent.reading.past import read_past
from intent.reading.proposal import read_proposal
from intent.verbs.reading_either import read_either, read_usable
from intent.verbs.replying import Reply
from intent.vocabulary.loader import read_vocabulary
from intent.vocabulary.terms import Vocabulary


def new(
    path: str | Path, *, installation: bool = False, work: str | Path | None = None, language: str = "en"
) -> Path:
    """Write a commented text to start from. Raises `Unusable` where the file is already there.

    An installation's names the file of its ``work`` as it is found from there; without one, `work.md` beside it.
    """
    file = Path(path)
    if work is None:
        text = template_text("installation" if installation else "work", language)
    else:
        named = Path(os.path.relpath(work, file.parent)).as_posix()
        text = template_text("installation", language, named)
    refuse_existing(file)
    write_whole(file, text)
    return file


def validate(
    path: str | Path, work: str | Path | None = None, *, date: datetime.date | None = None
) -> tuple[Diagnostic, ...]:
    """What is found in a work or an installation that can be used. Raises `Unusable` with all its errors.

    A work's instructions are laid against each other and against its documented state, and what they quote is looked
    for in the sources; what it expects of cases is judged, on ``date`` (today if none) where a case has no day of its
    own. Of an installation, it is asked whether those who answered could do so then, and whether it
    was carried out as agreed.
    """
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
    return in_order([*documentation.validated(), *by_itself, *rests_on, *_expectations(documentation, date)])


def _expectations(documentation: Documentation, date: datetime.date | None) -> Iterator[Diagnostic]:
    """How the cases of a work that has any are judged, and what beside it could not be read for that."""
    work, spans = documentation.work, documentation.reading.spans
    if work.expectations:
        past = read_past(documentation)
        yield from past.findings
        yield from hold_expectations(work, past.installations, date or datetime.date.today(), spans)


def digests(work: str | Path) -> tuple[str, ...]:
    """For each source whose file has no digest yet, the line to write under its heading. Raises `Unusable`."""
    documentation = read_usable(work)
    return tuple(missing_digests(documentation.work, read_sources(documentation.work, documentation.folder)))


def terms(name: str | None = None, work: str | Path | None = None, language: str = "en") -> Reply[Vocabulary]:
    """The words of the vocabulary, or what one means; with a work's own terms, if one is given.

    Where nothing is called so, the terms that are about it, by their labels and definitions in a language and in
    English. Raises `Unusable`, and `intent.diagnostics.UnknownName` for a word that there is not.
    """
    shipped = read_vocabulary()
    vocabulary = read_documentation(Path(work), shipped).work.vocabulary if work else shipped
    paper = entry_paper(vocabulary, name, language) if name else glossary_paper(vocabulary)
    return Reply(found=vocabulary, paper=paper)


def convert(path: str | Path, to: str, work: str | Path | None = None) -> tuple[str, tuple[Diagnostic, ...]]:
    """A work or installation in another form, `markdown`, `turtle`, `json-ld` or `n-triples`, and what it cannot hold.

    Raises `Unusable`.
    """
    documentation, proposal = read_either(path, work)
    return converted_installation(proposal, to) if proposal else converted_work(documentation, to)


def sheet(work: str | Path, name: str, file: str | Path, *, replace: bool = False) -> None:
    """Write the parts, devices or boxes of a work as a sheet, `.csv` or `.xlsx`. Raises `Unusable`.

    A file that is there already is written over only with ``replace``.
    """
    write_grid(Path(file), name, sheet_rows(read_usable(work).work, name), replace=replace)


def enter_sheet(
    work: str | Path, name: str, file: str | Path, language: str = "en"
) -> tuple[str, tuple[Diagnostic, ...]]:
    """The dossier of a work with the rows of a sheet entered, and what was found. Raises `Unusable`.

    ``language`` is that in which the sheet writes numbers: in `de` and `fr` with a decimal comma.
    """
    documentation = read_documentation(Path(work), read_vocabulary())
    text = as_text(read_bytes(Path(work)), str(work))
    vocabulary, locale = documentation.work.vocabulary, locale_of(language)
    found = entered(text, str(work), read_grid(Path(file)), name, vocabulary, locale=locale)
    return found.text, found.findings
