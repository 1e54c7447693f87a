"""What shapes and data call the same things, all by the IRI of the work: scopes, values, lines, parts, people."""

from __future__ import annotations

import re
from dataclasses import dataclass

from intent.model.assertions import Assertion
from intent.model.work import Instruction, Work
from intent.names import TERM, THE_VENUE, THE_WORK, local_iri
from intent.record.turtle_text import iri_term
from intent.vocabulary.terms import Vocabulary

THE_SHOWING = "the showing"
"""The subject of what is said of several parts together."""
OF_SUBJECT = "intent:shown"
"""From a subject on some days to the subject."""
EVERY_SUBJECT = "( intent:shown intent:inInstallation [ sh:inversePath intent:inInstallation ] )"
"""From a subject on some days to every subject of the installation."""
ITS_DAYS = "[ sh:inversePath intent:shown ]"
"""From a subject to itself on some days."""


_LOCAL = re.compile(r"[A-Za-z0-9_][A-Za-z0-9_:-]*(?:\.[A-Za-z0-9_:-]+)?$")
"""What may stand after a prefix in Turtle and in SPARQL; not every reader of queries bears two full stops in it."""


@dataclass(frozen=True, slots=True)
class ShapeNames:
    """The names that shapes of a work and data of its installations share."""

    work: Work

    @property
    def vocabulary(self) -> Vocabulary:
        return self.work.vocabulary

    @property
    def prefix(self) -> str:
        return "work"

    @property
    def namespace(self) -> str:
        """What the IRIs of everything of the work begin with."""
        return str(local_iri(self.work.iri, ""))

    def of(self, *steps: str) -> str:
        """Something of the work's, as it is written in Turtle and in a query."""
        return self.short(self.iri(*steps))

    def iri(self, *steps: str) -> str:
        """The IRI of something of the work's; no identifier has a colon, so that none is taken for it."""
        local = (str(local_iri(self.work.iri, step)).removeprefix(self.namespace) for step in steps)
        return self.namespace + ":".join(local)

    def short(self, iri: str) -> str:
        """An IRI with the prefix of the work where it is one of the work's, and Turtle lets it be written so."""
        local = iri.removeprefix(self.namespace)
        return f"{self.prefix}:{local}" if local != iri and _LOCAL.match(local) else iri_term(iri)

    @property
    def prefixes(self) -> str:
        return self.of("prefixes")

    def value(self, characteristic: str) -> str:
        """The property that has the values of a characteristic, by the IRI of the characteristic."""
        return self.of("value", characteristic.removeprefix(str(TERM)))

    def scope(self, line: Instruction) -> str:
        """The class of what a line speaks of."""
        return self.of("scope", line.identifier)

    def condition_scope(self, line: Instruction, place: int) -> str:
        """The class of what a condition of a line asks about."""
        return self.of("scope", line.identifier, f"if-{place}")

    def subject(self, name: str) -> str:
        """What of the work is meant by the name by which a state is asked."""
        named = {part.identifier: part.iri for part in self.work.parts}
        named |= {material.identifier: material.iri for material in self.work.material}
        named |= {THE_WORK: self.work.iri, THE_VENUE: str(local_iri(self.work.iri, "the-venue"))}
        return self.short(named.get(name) or str(local_iri(self.work.iri, name)))

    def person(self, identifier: str) -> str:
        found = self.work.person(identifier)
        return self.short(found.iri if found else str(local_iri(self.work.iri, identifier)))


@dataclass(frozen=True, slots=True)
class NamedScope:
    """The scope of a line or of one of its conditions."""

    name: str
    """`R1.1`, or `R1.1:if-2`."""
    iri: str
    """The class of what is in it."""
    assertion: Assertion


def scopes_named(names: ShapeNames, line: Instruction) -> list[NamedScope]:
    """A line's scope, and those of its conditions."""
    found = [NamedScope(line.identifier, names.scope(line), line.assertion)]
    found += [
        NamedScope(f"{line.identifier}:if-{place}", names.condition_scope(line, place), condition.assertion)
        for place, condition in enumerate(line.conditions, start=1)
        if condition.assertion is not None
    ]
    return found
