"""Verbs about what leaves the house and what comes in: pack, export, receive."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from pathlib import Path

from intent.exports.exporting import Export, write_export
from intent.language.languages import locale_of
from intent.language.message import joined, say
from intent.packages.limits import limits_of
from intent.packages.package import Package, write_package
from intent.packages.receive import Received, receive_package
from intent.papers.comparison_paper import comparison_paper
from intent.papers.telling import tell
from intent.reading.documentation import read_documentation
from intent.verbs.reading_either import read_either
from intent.vocabulary.loader import read_vocabulary


def pack(
    path: str | Path,
    to: str | Path,
    work: str | Path | None = None,
    date: datetime.date | None = None,
    *,
    pdf: bool = True,
    language: str = "en",
) -> Package:
    """A work, or an installation with its work and report, as a package without what stays in the house.

    ``to`` is a new folder, or a new file that ends in `.zip`; ``date`` is that of the package and of all papers in
    it, today's if none. The report and the placement cards go as pages, and as PDFs unless ``pdf`` says no; all papers
    are in a language. Raises `Unusable`.
    """
    documentation, proposal = read_either(path, work)
    return write_package(
        documentation,
        proposal,
        Path(to),
        date=date or datetime.date.today(),
        pdf=pdf,
        locale=locale_of(language),
    )


def export(
    path: str | Path,
    standards: Sequence[str],
    to: str | Path,
    work: str | Path | None = None,
    *,
    date: datetime.date | None = None,
    replace: bool = False,
) -> Export:
    """A work, or an installation with its work, in other standards and without what stays in the house.

    ``standards`` are names of `intent.exports.standards.STANDARDS`; ``to`` is a file, or a new folder for several
    files; ``date`` is that of the records, today's if none. One file that is there already is written over only with
    ``replace``. Raises `Unusable`.
    """
    documentation, proposal = read_either(path, work)
    day = date or datetime.date.today()
    return write_export(documentation, proposal, standards, Path(to), day=day, replace=replace)


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
    documentation = read_documentation(Path(held), read_vocabulary()) if held else None
    return receive_package(Path(package), Path(into), documentation, limits_of(most_files, most_bytes))


def tell_received(received: Received, language: str = "en", *, width: int = 80) -> str:
    """What became of a package, as text: where it lies, what its sender keeps, its outcome, and what changed."""
    locale = locale_of(language)
    variance = received.judged.variance
    lines = [
        locale.say(say("opened: {folder}", folder=str(received.folder))),
        locale.say(say("kept by the sender: {kept}", kept=received.left_out or say("not said"))),
        *([locale.say(joined([variance.denied, variance.sentence]))] if variance is not None else []),
    ]
    told = "\n".join(lines) + "\n"
    if received.comparison is None:
        return told
    return f"{told}\n{tell(comparison_paper(received.comparison, None), 'text', locale, width=width)}"
