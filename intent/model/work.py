"""A work as documented, as typed, frozen data.

Identifiers refer between objects, so that nothing here points in a circle.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from intent.model.assertions import Assertion, Condition, Statements
from intent.model.citation import Citation
from intent.model.duty import Duty
from intent.model.expectation import Expectation
from intent.model.log_entry import LogEntry
from intent.model.task import Task
from intent.values.dates import DaySpan
from intent.vocabulary.terms import Concept, Vocabulary


class Modality(StrEnum):
    REQUIRED = "required"
    ALLOWED = "allowed"
    FORBIDDEN = "forbidden"


@dataclass(frozen=True, slots=True, kw_only=True)
class Instruction:
    """One line of what is required, allowed or forbidden, with who said so and where."""

    iri: str
    identifier: str
    heading: str
    """The identifier of its heading (`R1` of `R1.2`)."""
    modality: Modality
    assertion: Assertion
    sentence: str = field(default="", compare=False)
    """The sentence in English, told from what was read of it; for programs."""
    written: str = field(default="", compare=False)
    """The sentence as its writer put it, where that is not how it is told in English."""
    words: str = ""
    """The words quoted for this line alone, beside those of its heading."""
    conditions: tuple[Condition, ...] = ()
    until: DaySpan | None = None
    consents: tuple[str, ...] = ()
    choice: int | None = None
    by: str | None = None
    on: DaySpan | None = None
    ground: str = "intent"
    withdrawn: DaySpan | None = None
    supersedes: tuple[str, ...] = ()
    """Identifiers of instructions; a heading stands for all its lines."""
    lifted_by: tuple[str, ...] | None = None
    """The people who alone may dispense from it; none of them: nobody may. Without the field authority decides."""
    sources: tuple[Citation, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """A heading under Instructions: what its lines share, the words quoted, and prose."""

    iri: str
    identifier: str
    title: str
    words: str = ""
    reason: str = ""
    by: str | None = None
    on: DaySpan | None = None
    ground: str = "intent"
    withdrawn: DaySpan | None = None
    supersedes: tuple[str, ...] = ()
    lifted_by: tuple[str, ...] | None = None
    """People; nobody where it is empty; the field is not there where it is none."""
    sources: tuple[Citation, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    iri: str
    identifier: str
    name: str
    role: Concept
    authority: int
    """The rank of the role, unless the people table gives another."""
    actor: Concept | None = None
    """Whether this is a person or a body; none where nobody says."""
    called: str = ""
    """What the person is called in the place of the role's name: `Künstlerin`."""
    since: DaySpan | None = None
    until: DaySpan | None = None
    successor: str | None = None
    contact: str = ""
    contact_leaves: bool | None = None
    """Whether those who receive documentation may be told the contact; nothing said: they may not."""
    internal: bool = False
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    iri: str
    identifier: str
    title: str
    kind: Concept | None = None
    spoken_with: tuple[str, ...] = ()
    by: tuple[str, ...] = ()
    """People: who made it."""
    date: DaySpan | None = None
    file: str | None = None
    reported_by: str | None = None
    fields: Mapping[str, str] = field(default_factory=dict)
    """Fields as written, by the IRI of their property."""
    words: str = ""
    note: str = ""
    internal: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Device:
    iri: str
    identifier: str
    like: str | None = None
    status: Concept | None = None
    statements: Statements = field(default_factory=dict)
    fields: Mapping[str, str] = field(default_factory=dict)
    """Name, remarks, storage place … as written, by the IRI of their property."""
    internal: bool = False
    listed: bool = True
    """Whether it has a row of its own, or is only named in a part's row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    iri: str
    identifier: str
    kind: Concept
    name: str = ""
    group: str | None = None
    device: str | None = None
    statements: Statements = field(default_factory=dict)
    note: str = ""
    internal: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    iri: str
    name: str
    kind: Concept | None = None
    note: str = ""
    afterword: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """What a channel shows or sounds."""

    iri: str
    identifier: str
    statements: Statements = field(default_factory=dict)
    name: str = ""
    file: str | None = None
    note: str = ""
    internal: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Connection:
    iri: str
    start: str
    end: str
    statements: Statements = field(default_factory=dict)
    note: str = ""
    internal: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Crate:
    """A box in which parts travel and wait."""

    iri: str
    identifier: str
    holds: tuple[str, ...] = ()
    """Parts, groups, material and devices."""
    accessories: tuple[str, ...] = ()
    """What else is in it, in words."""
    statements: Statements = field(default_factory=dict)
    fields: Mapping[str, str] = field(default_factory=dict)
    internal: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A section of a text: its place in the writer's order, and the prose in it."""

    iri: str
    term: str
    """The IRI of the section's term."""
    note: str = ""
    afterword: str = ""
    fields: Mapping[str, str] = field(default_factory=dict)
    internal: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """A work as documented."""

    iri: str
    title: str
    vocabulary: Vocabulary = field(compare=False, repr=False)
    fields: Mapping[str, str] = field(default_factory=dict)
    """Artist, year, number, owner … as written, by the IRI of the property that holds them."""
    note: str = ""
    sections: tuple[Section, ...] = ()
    people: tuple[Person, ...] = ()
    groups: tuple[Group, ...] = ()
    parts: tuple[Part, ...] = ()
    devices: tuple[Device, ...] = ()
    sources: tuple[Source, ...] = ()
    headings: tuple[Heading, ...] = ()
    instructions: tuple[Instruction, ...] = ()
    duties: tuple[Duty, ...] = ()
    material: tuple[Material, ...] = ()
    connections: tuple[Connection, ...] = ()
    boxes: tuple[Crate, ...] = ()
    log: tuple[LogEntry, ...] = ()
    tasks: tuple[Task, ...] = ()
    expectations: tuple[Expectation, ...] = ()
    statements: Statements = field(default_factory=dict)
    """What is documented of the work as a whole."""

    @property
    def lines(self) -> tuple[Instruction | Duty, ...]:
        """All that stands on a line of its own under a heading."""
        return (*self.instructions, *self.duties)

    def part(self, identifier: str) -> Part | None:
        return next((part for part in self.parts if part.identifier == identifier), None)

    def person(self, identifier: str | None) -> Person | None:
        return next((person for person in self.people if person.identifier == identifier), None)

    def heading(self, identifier: str) -> Heading | None:
        return next((heading for heading in self.headings if heading.identifier == identifier), None)

    def instruction(self, identifier: str) -> Instruction | None:
        return next((line for line in self.instructions if line.identifier == identifier), None)

    def source(self, identifier: str) -> Source | None:
        return next((source for source in self.sources if source.identifier == identifier), None)
