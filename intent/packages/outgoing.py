"""What is about to be packed: what may leave of a work, as texts and with its files, found fit to travel."""

from __future__ import annotations

import datetime
import re
import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from intent.diagnostics import Diagnostic, Span, Unusable, has_errors
from intent.packages.carrying import CarriedFile, carried_files
from intent.packages.dossier_texts import dossier_texts
from intent.packages.file_names import collisions, name_faults
from intent.packages.letters import letters_of
from intent.reading.documentation import Documentation
from intent.reading.proposal import Proposal, leaving_of
from intent.redaction.leaving import Leaving


@dataclass(frozen=True, slots=True, kw_only=True)
class Outgoing:
    """A work, an installation of it if there is one, and all that goes out of them."""

    documentation: Documentation
    proposal: Proposal | None
    leaving: Leaving
    texts: Mapping[str, str]
    """The dossier as it leaves, by path in the package."""
    files: tuple[CarriedFile, ...]
    kept_letters: tuple[str, ...]
    """What answers and facts of the installation rest on and stays with the sender, as it names it."""
    day: datetime.date
    """The date of the package."""
    findings: tuple[Diagnostic, ...]

    @property
    def name(self) -> str:
        """The top folder of a zip: made from the titles, so that it does not depend on how the file is called."""
        installation = self.leaving.installation
        title = f"{self.leaving.work.title} {installation.title if installation else ''}"
        plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
        return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:60].strip("-") or "package"


def outgoing_of(documentation: Documentation, proposal: Proposal | None, date: datetime.date) -> Outgoing:
    """What goes out on a day. Raises `Unusable` where it cannot travel."""
    leaving = leaving_of(documentation, proposal)
    texts = dossier_texts(leaving, proposal)
    carried, missing = carried_files(documentation, leaving.work)
    letters = letters_of(proposal, leaving)
    known = {one.inside for one in carried}
    files = (*carried, *(one for one in letters.going if one.inside not in known))
    span = Span(file=documentation.files[0].name)
    found = (*missing, *letters.findings, *_unsafe([*texts, *(one.inside for one in files)], texts, span))
    if has_errors(found):
        raise Unusable(one for one in found if one.is_error)
    return Outgoing(
        documentation=documentation,
        proposal=proposal,
        leaving=leaving,
        texts=texts,
        files=files,
        kept_letters=letters.kept,
        day=date,
        findings=found,
    )


def _unsafe(paths: list[str], texts: Mapping[str, str], span: Span) -> Iterator[Diagnostic]:
    """Names that could not travel, or that would meet in the package; those of files were looked at as they came."""
    yield from (fault.at(span) for path in texts for fault in name_faults(path))
    yield from (fault.at(span) for _, fault in collisions(dict.fromkeys(paths)))
