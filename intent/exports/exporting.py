"""A work or an installation in one standard or several, written where it is asked for.

What stays in the house is taken out first, and the standards are told of what is left.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from rdflib import Literal

from intent.diagnostics import Diagnostic, Severity, Span, refusal
from intent.effects.assess import assess
from intent.exports.standards import STANDARDS, TELLING_OF_THE_PAST, Exported
from intent.exports.withheld_turns import turned_by_withholding
from intent.language.message import say
from intent.reading.atomic_write import staged_folder, write_whole
from intent.reading.documentation import Documentation
from intent.reading.past import Past, read_past
from intent.reading.proposal import Proposal, leaving_of
from intent.redaction.leaving import Leaving
from intent.redaction.still_said import texts_said_in, texts_to_look_for


@dataclass(frozen=True, slots=True)
class Export:
    """What was written, and what was not."""

    files: tuple[Path, ...]
    left_out: tuple[str, ...]
    """The kinds of thing that stay in the house, in English."""
    findings: tuple[Diagnostic, ...]


def write_export(
    documentation: Documentation,
    proposal: Proposal | None,
    standards: Sequence[str],
    to: Path,
    *,
    day: datetime.date,
    replace: bool = False,
) -> Export:
    """Write a work in one or several standards, by their names in `STANDARDS`, dated the ``day``.

    One file goes to ``to``, or into it where it is a folder; several go into a new folder of that name, those of each
    standard in a folder of their own where there are several. One file that is there already is written over only with
    ``replace``. Raises `Unusable`; then nothing is written.
    """
    span = Span(file=documentation.files[0].name)
    leaving = leaving_of(documentation, proposal)
    past = read_past(documentation) if TELLING_OF_THE_PAST.intersection(standards) else Past()
    told = Exported(work=leaving.work, installation=leaving.installation, shown=past.installations, day=day)
    files = _files(told, tuple(dict.fromkeys(standards)), span)
    left_out = tuple(kind.text for kind in leaving.withheld)
    findings = (*past.findings, *_still_said(leaving, span), *_turned(proposal, leaving))
    return Export(_write(files, to, replace), left_out, findings)


def _files(told: Exported, standards: Sequence[str], span: Span) -> dict[str, bytes]:
    """The files of all the standards by their paths; of one standard alone, without a folder."""
    exports, found = dict(STANDARDS), dict[str, bytes]()
    for name in standards:
        files = exports[name](told)
        if not files:
            message = say(
                "{standard} tells of an installation, and this is a work; name an installation of it instead",
                standard=name.upper(),
            )
            raise refusal("no-installation", message, span)
        within = f"{name}/" if len(standards) > 1 else ""
        found.update({f"{within}{file}": content for file, content in files.items()})
    return found


def _write(files: Mapping[str, bytes], to: Path, replace: bool) -> tuple[Path, ...]:
    """One file whole or not at all; several in a folder that is there whole or not at all."""
    if len(files) == 1:
        ((name, content),) = files.items()
        place = to / name if to.is_dir() else to
        write_whole(place, content, replace=replace)
        return (place,)
    with staged_folder(to) as folder:
        for name, content in files.items():
            (folder / name).parent.mkdir(exist_ok=True)
            (folder / name).write_bytes(content)
    return tuple(to / name for name in files)


def _turned(proposal: Proposal | None, leaving: Leaving) -> tuple[Diagnostic, ...]:
    """The verdicts that are others for those who know only what leaves."""
    if proposal is None or leaving.installation is None or not leaving.withheld:
        return ()
    return tuple(turned_by_withholding(proposal, assess(leaving.work, leaving.installation)))


def _still_said(leaving: Leaving, span: Span) -> Iterator[Diagnostic]:
    """Where what is kept in the house is said all the same in what leaves."""
    kept = texts_to_look_for(leaving.kept_texts)
    graph = (*leaving.work_graph, *leaving.installation_graph)
    texts = {str(value) for *_, value in graph if isinstance(value, Literal)} if kept else set()
    said = {one for text in texts for one in texts_said_in(text, kept)}
    for text in sorted(said):
        message = say(
            "“{text}” is kept in the house, and is said elsewhere in what was written all the same", text=text
        )
        yield Diagnostic(slug="still-said", message=message, span=span, severity=Severity.WARNING)
