"""What a report rests on: the files read, with their digests, the program's version, and the date.

All of it is given by the caller, so that the same input gives the same report on every day and machine.
"""

from __future__ import annotations

import datetime
import hashlib
from dataclasses import dataclass
from enum import StrEnum


class FileRole(StrEnum):
    """What a file was to the report."""

    DOSSIER = "dossier"
    INSTALLATION = "installation"
    POOL = "pool"
    SOURCE = "source"
    TERMS = "terms"

    @property
    def in_words(self) -> str:
        return _ROLES[self]


_ROLES = {
    FileRole.DOSSIER: "the work as documented",
    FileRole.INSTALLATION: "the installation",
    FileRole.POOL: "the pool of devices",
    FileRole.SOURCE: "a source cited",
    FileRole.TERMS: "the collection's own terms",
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
