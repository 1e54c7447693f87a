"""With whose consent a departure was carried out."""

from __future__ import annotations

from collections.abc import Iterator

from intent.model.installation import Consent, Installation
from intent.model.work import Work
from intent.variance.case import answered_by
from intent.variance.result import Row


def consents_about(work: Work, installation: Installation, row: Row) -> Iterator[Consent]:
    """The consents given to what governed a row, or was set aside in it, for the parts that it is about."""
    concerned = {line.identifier for line in row.governing}
    concerned |= {fallen.instruction for fallen in row.set_aside}
    names = {row.subject.written, *row.subject.members}
    for consent in installation.consents:
        to = set(answered_by(work, consent))
        for_parts = not consent.parts or not names.isdisjoint(consent.parts)
        if consent.answer and for_parts and to & concerned:
            yield consent


def consenting_people(work: Work, installation: Installation, row: Row) -> tuple[str, ...]:
    """The identifiers of those who consented, each once."""
    return tuple(dict.fromkeys(consent.person for consent in consents_about(work, installation, row)))
