"""A work, and an installation of it, written for readers of other standards.

What stays in the house is taken out of the graphs first, and the standards are told of what is left.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from rdflib import Literal

from intent.diagnostics import Diagnostic, Severity, Span, Unusable
from intent.exports.standards import STANDARDS
from intent.packages.atomic_folder import staged_folder
from intent.packages.reviewing import is_telling
from intent.reading.documentation import Documentation
from intent.reading.files import write_whole
from intent.reading.proposal import Proposal
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.redaction.withholding import Leaving, WithheldKind, without_internal


@dataclass(frozen=True, slots=True)
class Export:
    """What was written, and what was not."""

    files: tuple[Path, ...]
    left_out: tuple[str, ...]
    """The sorts of things that stay in the house."""
    findings: tuple[Diagnostic, ...]


def write_export(
    documentation: Documentation, proposal: Proposal | None, standards: Sequence[str], to: Path
) -> Export:
    """Write a work in one or several standards, by their names in `STANDARDS`.

    One file goes to ``to``, or into it where it is a folder; several go into a new folder of that name, those of each
    standard in a folder of their own where there are several. Raises `Unusable`; then nothing is written.
    """
    leaving, sent, left = _leaving(documentation, proposal)
    files = _exported(leaving, sent, tuple(dict.fromkeys(standards)), to)
    sorts = {sort for one in left for sort in one.sorts}
    told = tuple(str(sort) for sort in WithheldKind if sort in sorts)
    return Export(_write(files, to), told, tuple(_still_said(left, documentation)))


def _leaving(
    documentation: Documentation, proposal: Proposal | None
) -> tuple[Documentation, Proposal | None, list[Leaving]]:
    """The work and the installation as they may leave the house, read from what may leave of their graphs."""
    own, other = documentation.reading.triples, proposal.reading.triples if proposal else ()
    kept = without_internal(own, other)
    work = load_work(kept.triples, documentation.work.iri, documentation.work.vocabulary)
    sent = replace(documentation, work=work, reading=replace(documentation.reading, triples=kept.triples))
    if proposal is None:
        return sent, None, [kept]
    more = without_internal(other, own)
    installation = load_installation(more.triples, proposal.installation.iri, work, kept.triples)
    reading = replace(proposal.reading, triples=more.triples)
    return (
        sent,
        replace(proposal, documentation=sent, installation=installation, reading=reading),
        [kept, more],
    )


def _exported(
    documentation: Documentation, proposal: Proposal | None, standards: Sequence[str], to: Path
) -> dict[str, bytes]:
    """The files of all the standards by their paths; of one standard alone, without a folder."""
    exports, found = dict(STANDARDS), dict[str, bytes]()
    for name in standards:
        files = exports[name](documentation, proposal)
        if not files:
            message = f"{name.upper()} tells of an installation, and this is a work; name an installation of it instead"
            raise Unusable(
                [
                    Diagnostic(
                        slug="no-installation", message=message, span=Span(file=documentation.files[0].name)
                    )
                ]
            )
        within = f"{name}/" if len(standards) > 1 else ""
        found.update({f"{within}{file}": content for file, content in files.items()})
    return found


def _write(files: Mapping[str, bytes], to: Path) -> tuple[Path, ...]:
    """One file whole or not at all; several in a folder that is there whole or not at all."""
    if len(files) == 1:
        ((name, content),) = files.items()
        place = to / name if to.is_dir() else to
        write_whole(place, content)
        return (place,)
    with staged_folder(to) as folder:
        for name, content in files.items():
            (folder / name).parent.mkdir(exist_ok=True)
            (folder / name).write_bytes(content)
    return tuple(to / name for name in files)


def _still_said(left: Iterable[Leaving], documentation: Documentation) -> Iterator[Diagnostic]:
    """Where what is kept in the house is said all the same in what leaves."""
    every = list(left)
    said = sorted({_plain(value) for one in every for *_, value in one.triples if isinstance(value, Literal)})
    kept = sorted({_plain(text) for one in every for text in one.texts if is_telling(text)})
    for text in kept:
        if any(text in one for one in said):
            message = f"“{text}” is kept in the house, and is said elsewhere in what was written all the same"
            yield Diagnostic(
                slug="still-said",
                message=message,
                span=Span(file=documentation.files[0].name),
                severity=Severity.WARNING,
            )


def _plain(text: str) -> str:
    return " ".join(str(text).split())
