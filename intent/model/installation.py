"""An installation of a work, proposed, agreed or carried out, as typed, frozen data."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from intent.model.assertions import Expression, Statements
from intent.model.log_entry import LogEntry
from intent.model.work import Connection, Crate, Device, Part, Section
from intent.values.dates import DaySpan
from intent.vocabulary.terms import Concept


@dataclass(frozen=True, slots=True, kw_only=True)
class Substitution:
    """Another device in a part's place."""

    iri: str
    part: str
    device: str | None = None
    statements: Statements = field(default_factory=dict)
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """The same device, or its place, altered; of a part or of material."""

    iri: str
    part: str
    statements: Statements = field(default_factory=dict)
    note: str = ""


@dataclass(frozen=True, slots=True)
class Omission:
    iri: str
    part: str
    reason: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Consent:
    """An answer of a person to an instruction, for the parts and the value that it names."""

    iri: str
    person: str
    to: tuple[str, ...]
    """Identifiers of instructions; a heading stands for all its lines."""
    answer: bool | None = None
    parts: tuple[str, ...] = ()
    value: Expression | None = None
    terms: tuple[str, ...] = ()
    date: DaySpan | None = None
    until: DaySpan | None = None
    source: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Attestation:
    """A fact that somebody says holds, or does not."""

    iri: str
    fact: str
    holds: bool
    by: str | None = None
    date: DaySpan | None = None
    source: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Installation:
    """A showing of the work: proposed, agreed, or carried out."""

    iri: str
    title: str
    dates: DaySpan
    work: str
    """The IRI of the work."""
    status: Concept | None = None
    venue: str = ""
    by: str | None = None
    fields: Mapping[str, str] = field(default_factory=dict)
    note: str = ""
    sections: tuple[Section, ...] = ()
    venue_statements: Statements = field(default_factory=dict)
    work_statements: Statements = field(default_factory=dict)
    substitutions: tuple[Substitution, ...] = ()
    changes: tuple[Change, ...] = ()
    omissions: tuple[Omission, ...] = ()
    additions: tuple[Part, ...] = ()
    devices: tuple[Device, ...] = ()
    """Devices of the pool file."""
    consents: tuple[Consent, ...] = ()
    attestations: tuple[Attestation, ...] = ()
    connections: tuple[Connection, ...] = ()
    """Each takes the place of the work's connections into the part where it ends; without a start nothing feeds it."""
    boxes: tuple[Crate, ...] = ()
    """What travels, where it differs."""
    log: tuple[LogEntry, ...] = ()

    @property
    def proposers(self) -> tuple[str, ...]:
        """Whoever proposes it, as those who can be asked; nobody where that is not said."""
        return (self.by,) if self.by else ()
