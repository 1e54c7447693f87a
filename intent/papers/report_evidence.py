"""What a report rests on: the files read, with their digests, the program's version, and the date.

All of it is given by the caller, so that the same input gives the same report on every day and machine.
"""

from __future__ import annotations

import datetime
import hashlib
from dataclasses import dataclass, replace
from enum import StrEnum

from intent.language.calendar import day_words
from intent.language.message import Message, joined, say
from intent.papers.document import Document


class FileRole(StrEnum):
    """What a file was to the report."""

    DOSSIER = "dossier"
    INSTALLATION = "installation"
    POOL = "pool"
    SOURCE = "source"
    TERMS = "terms"

    @property
    def in_words(self) -> Message:
        return _ROLES[self]


_ROLES = {
    FileRole.DOSSIER: say("the work as documented"),
    FileRole.INSTALLATION: say("the installation"),
    FileRole.POOL: say("the pool of devices"),
    FileRole.SOURCE: say("a source cited"),
    FileRole.TERMS: say("the collection's own terms"),
}


@dataclass(frozen=True, slots=True)
class EvidenceFile:
    """One file that was read, by the name under which a reader would find it."""

    role: FileRole
    name: str
    sha256: str
    """64 hexadecimal digits (FIPS 180-4)."""

    @classmethod
    def of(cls, role: FileRole, name: str, content: bytes) -> EvidenceFile:
        return cls(role, name, hashlib.sha256(content).hexdigest())


@dataclass(frozen=True, slots=True)
class Evidence:
    """What the report rests on."""

    files: tuple[EvidenceFile, ...]
    version: str
    """The version of the program that wrote the report."""
    date: datetime.date
    """The date of the report."""


def written_by(evidence: Evidence) -> Message:
    """Which version of the program wrote the report, and when."""
    return written_on(evidence.version, evidence.date)


def written_on(version: str, day: datetime.date) -> Message:
    """Which version of the program wrote a paper, and when."""
    return say("Written by intent {version} on {date}.", version=version, date=day_words(day))


def dated(document: Document, version: str, day: datetime.date) -> Document:
    """A paper that bears the day on which it was made; one that bears it already, as it is."""
    if document.created is not None:
        return document
    foot = joined([document.foot, written_on(version, day)])
    return replace(document, created=day, foot=foot)
