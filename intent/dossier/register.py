"""Every identifier of a work, so that a sentence may name what a later section defines."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from enum import StrEnum

from intent.diagnostics import Span, nearest, offered, with_known
from intent.dossier.unreadable import Unreadable
from intent.dossier.words import Known, is_reserved, reads_as_words
from intent.language.message import Joint, Listing, Message, Words, say
from intent.vocabulary.phrases import normal, phrases
from intent.vocabulary.terms import Vocabulary

_IDENTIFIER = re.compile(r"[A-Za-z][A-Za-z0-9_-]*$")
_FEW = 8
"""So many names can be listed in a message."""


class IdentifierKind(StrEnum):
    """What an identifier identifies."""

    PART = "part"
    GROUP = "group"
    DEVICE = "device"
    PERSON = "person"
    SOURCE = "source"
    HEADING = "heading of instructions"
    INSTRUCTION = "instruction"
    DUTY = "duty"
    MATERIAL = "material"
    BOX = "box"
    TASK = "task"


KIND_WORDS = {
    IdentifierKind.PART: say("part"),
    IdentifierKind.GROUP: say("group"),
    IdentifierKind.DEVICE: say("device"),
    IdentifierKind.PERSON: say("person"),
    IdentifierKind.SOURCE: say("source"),
    IdentifierKind.HEADING: say("heading of instructions"),
    IdentifierKind.INSTRUCTION: say("instruction"),
    IdentifierKind.DUTY: say("duty"),
    IdentifierKind.MATERIAL: say("material"),
    IdentifierKind.BOX: say("box"),
    IdentifierKind.TASK: say("task"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class RegisterEntry:
    identifier: str
    sort: IdentifierKind
    iri: str
    span: Span = field(default_factory=lambda: Span(file=""), compare=False)
    kind: str | None = None
    """The IRI of a part's kind."""
    members: tuple[str, ...] = ()
    """The parts of a group, the lines of a heading."""


@dataclass(slots=True)
class Register:
    """Identifiers and names of groups; looked up without regard to case."""

    entries: dict[str, RegisterEntry] = field(default_factory=dict)

    def enter(self, entry: RegisterEntry) -> RegisterEntry | None:
        """Enter it, unless its identifier is taken: then the entry that has it comes back."""
        taken = self.entries.get(normal(entry.identifier))
        if taken is None:
            self.entries[normal(entry.identifier)] = entry
        return taken

    def join(self, group: str, part: str) -> None:
        entry = self.entries[normal(group)]
        self.entries[normal(group)] = replace(entry, members=(*entry.members, part))

    def get(self, name: str, *sorts: IdentifierKind) -> RegisterEntry | None:
        entry = self.entries.get(normal(name))
        return entry if entry is not None and (not sorts or entry.sort in sorts) else None

    def find(self, name: str, *sorts: IdentifierKind) -> RegisterEntry:
        """The entry of a name. Raises `Unreadable`, offering the nearest name of the right sort."""
        entry = self.get(name, *sorts)
        if entry is not None:
            return entry
        other = self.get(name)
        if other is not None:
            message = say(
                "`{name}` is a {sort}; a {wanted} is wanted here",
                name=name,
                sort=KIND_WORDS[other.sort],
                wanted=_any_of(sorts),
            )
            if other.sort is IdentifierKind.DUTY:
                message = say("{message}; that a duty was done is attested, by its number", message=message)
            raise Unreadable("wrong-reference", message)
        known = [known.identifier for known in self.entries.values() if known.sort in sorts]
        missing, near = unknown_name(name, *sorts), nearest(name, known)
        if not near and 0 < len(known) <= _FEW:
            raise Unreadable("unknown-name", with_known(missing, known))
        raise Unreadable("unknown-name", offered(missing, near))

    def of_sort(self, *sorts: IdentifierKind) -> tuple[RegisterEntry, ...]:
        return tuple(entry for entry in self.entries.values() if entry.sort in sorts)

    def parts_of(self, name: str) -> tuple[RegisterEntry, ...]:
        """A part by itself, or the parts of a group."""
        entry = self.entries.get(normal(name))
        if entry is None:
            return ()
        if entry.sort is IdentifierKind.GROUP:
            return tuple(self.entries[normal(member)] for member in entry.members)
        return (entry,) if entry.sort is IdentifierKind.PART else ()

    def lines_of(self, name: str) -> tuple[str, ...]:
        """An instruction by itself, or the lines of a heading; identifiers."""
        entry = self.find(name, IdentifierKind.HEADING, IdentifierKind.INSTRUCTION)
        return entry.members if entry.sort is IdentifierKind.HEADING else (entry.identifier,)

    def known(self, vocabulary: Vocabulary) -> Known:
        """Every name that a sentence may hold: of the work, and of the vocabulary."""
        return phrases(self.entries), vocabulary.phrases


def _any_of(sorts: Iterable[IdentifierKind]) -> Listing:
    return Listing(tuple(KIND_WORDS[sort] for sort in sorts), Joint.OR)


def unknown_name(name: str, *sorts: IdentifierKind) -> Message:
    """That nothing of these sorts has the name."""
    return say("there is no {wanted} `{name}`", wanted=_any_of(sorts), name=name)


def is_unknown_part(message: Words) -> bool:
    """Whether a message, with what it offers, says that there is no such part."""
    while isinstance(message, Message):
        places = dict(message.places)
        wanted, inner = places.get("wanted"), places.get("message")
        if isinstance(wanted, Listing):
            return KIND_WORDS[IdentifierKind.PART] in wanted.items
        message = inner if isinstance(inner, Message) else ""
    return False


def taken_message(identifier: str, taken: RegisterEntry) -> Message:
    """That an identifier is used already, and for what."""
    message = say(
        "`{identifier}` is already the name of a {sort}", identifier=identifier, sort=KIND_WORDS[taken.sort]
    )
    if not taken.span.line:
        return message
    return say("{message} at line {line}", message=message, line=taken.span.line)


def identifier_fault(text: str, vocabulary: Vocabulary) -> Words:
    """What is wrong with an identifier, or nothing."""
    if not _IDENTIFIER.match(text):
        return say(
            "`{text}` is no identifier: start with a letter, then letters, digits, `-` and `_`", text=text
        )
    if is_reserved(text, vocabulary.grammars):
        return say("`{text}` is a word of the instruction sentence, so it cannot be an identifier", text=text)
    return ""


def group_fault(name: str, vocabulary: Vocabulary) -> Words:
    """What is wrong with the name of a group, or nothing: a sentence would not mean the group, or only the group."""
    if not reads_as_words(name, vocabulary):
        return ""
    return say(
        "`{name}` means something else in a sentence, so no group can be called that; add a word or a number,"
        " as in `### {name} 1`",
        name=name,
    )
