"""How each sort of field or column is read; the vocabulary says which is which."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import PurePosixPath

from rdflib import PROV, RDF, RDFS, Literal, URIRef
from rdflib.term import Node

from intent.diagnostics import nearest, offered, with_known
from intent.dossier.draft import Draft
from intent.dossier.expressions import read_day
from intent.dossier.inscribe import edtf
from intent.dossier.register import IdentifierKind, Register
from intent.dossier.unreadable import Unreadable
from intent.language.message import named, say
from intent.names import CRM, INTENT, YES, is_iri
from intent.vocabulary.actors import actor_classes
from intent.vocabulary.form_terms import FormField
from intent.vocabulary.grammar import Word
from intent.vocabulary.phrases import normal, unquoted

_SUBJECTS = (IdentifierKind.PART, IdentifierKind.GROUP, IdentifierKind.MATERIAL)
_QUOTED = re.compile(r'"[^"]*"|“[^”]*”|„[^“”]*[“”]|«[^»]*»')
_SHA256 = re.compile(r"[0-9a-fA-F]{64}")


@dataclass(frozen=True, slots=True)
class Desk:
    """What reading a field needs at hand."""

    draft: Draft
    register: Register

    def references(self, text: str, *sorts: IdentifierKind) -> list[Node]:
        return [URIRef(self.register.find(name, *sorts).iri) for name in self.listed(text)]

    def listed(self, text: str) -> list[str]:
        """The names in a list, with commas or semicolons between, or `and` in any language."""
        return [name for name in re.split(rf"\s*(?:[,;]|{self.joints})\s*", text) if name]

    @property
    def joints(self) -> str:
        """A pattern of `and` in every language."""
        grammars = self.draft.vocabulary.grammars
        words = (re.escape(label) for grammar in grammars for label in grammar.labels(Word.AND))
        return rf"\b(?:{'|'.join(words)})\b"


def read_field(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    """The values of a field as written. Raises `Unreadable`."""
    return _READERS[form.reads](desk, form, text.strip())


def _text(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    return [Literal(text)]


def _date(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    return [edtf(read_day(text))]


def _concept(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    concepts = desk.draft.vocabulary.in_scheme(*form.schemes)
    found = next((concept for concept in concepts if normal(text) in concept.names), None)
    if found is None:
        message = say("`{text}` is not a known {field}", text=text, field=form)
        labels = [concept.label for concept in concepts]
        near = nearest(text, desk.draft.vocabulary.spelled(concept.iri for concept in concepts), labels)
        told = offered(message, near) if near else with_known(message, map(named, concepts))
        raise Unreadable("unknown-value", told)
    return [URIRef(found.iri)]


def _actor(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    """Somebody whom no row names, a person or a body, as a thing of its own in the record."""
    node = desk.draft.node("work", form.iri.rsplit("/field-", 1)[-1])
    desk.draft.add(node, RDF.type, CRM["E39_Actor"])
    desk.draft.add(node, RDF.type, PROV.Agent)
    desk.draft.add(node, RDFS.label, Literal(text))
    return [node]


def _actor_class(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    """The classes that the record has for a person, or for a body."""
    (found,) = _concept(desk, form, text)
    return [URIRef(one) for one in actor_classes(desk.draft.vocabulary)[str(found)]]


def _yes_no(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    return [Literal(_concept(desk, form, text) == [URIRef(YES)])]


def _iri(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    if not is_iri(text.strip("<>")):
        message = say("`{text}` is not an IRI; write `https://…` or `urn:…`, without spaces", text=text)
        raise Unreadable("bad-iri", message)
    return [Literal(text.strip("<>"))]


def _file(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    path = PurePosixPath(text)
    if path.is_absolute() or "\\" in text or re.match(r"[A-Za-z][A-Za-z0-9+.-]*:", text):
        message = say("`{text}` is not a path within the work's folder; write `sources/letter.md`", text=text)
        raise Unreadable("bad-path", message)
    return [Literal(text)]


def _digest(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    if not _SHA256.fullmatch(text):
        message = say("`{text}` is no SHA-256: that has 64 of the digits 0 to 9 and a to f", text=text)
        raise Unreadable("bad-digest", message)
    return [Literal(text.lower())]


def _rank(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    if text not in {"1", "2", "3", "4", "5", "6"}:
        message = say(
            "`{text}` is not a rank; write 1 (the artist's own) to 6 (observed practice)", text=text
        )
        raise Unreadable("bad-number", message)
    return [Literal(int(text))]


def _reference(
    *sorts: IdentifierKind, several: bool = False
) -> Callable[[Desk, FormField, str], Sequence[Node]]:
    def read(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
        if several:
            return desk.references(text, *sorts)
        return [URIRef(desk.register.find(text, *sorts).iri)]

    return read


def _people_or_nobody(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    grammars = desk.draft.vocabulary.grammars
    nobody = {label for grammar in grammars for label in grammar.labels(Word.NOBODY)}
    if normal(text) in nobody:
        return [INTENT.nobody]
    none = next((name for name in desk.listed(text) if normal(name) in nobody), None)
    if none is not None:
        raise Unreadable("nobody-else", say("this names people or `{nobody}`, not both", nobody=none))
    return desk.references(text, IdentifierKind.PERSON)


def _parts(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    """Parts by name, or all those of a group."""
    found = []
    for name in desk.listed(text):
        entry = desk.register.find(name, *_SUBJECTS)
        found += [URIRef(part.iri) for part in desk.register.parts_of(name)] or [URIRef(entry.iri)]
    return found


def _whole_number(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    if not re.fullmatch(r"[1-9][0-9]{0,3}", text):
        raise Unreadable(
            "bad-number", say("`{text}` is no number of {field}; write `2`", text=text, field=form)
        )
    return [Literal(int(text))]


def _held(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    """Things by name, and accessories in quotation marks."""
    accessories = [Literal(unquoted(match.group())) for match in _QUOTED.finditer(text)]
    sorts = (*_SUBJECTS, IdentifierKind.DEVICE)
    return [*desk.references(_QUOTED.sub(",", text), *sorts), *accessories]


def _instructions(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    return desk.references(text, IdentifierKind.HEADING, IdentifierKind.INSTRUCTION)


def _lines(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    """Instructions and duties, or headings with all of theirs."""
    return desk.references(text, IdentifierKind.HEADING, IdentifierKind.INSTRUCTION, IdentifierKind.DUTY)


def _facts(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    quoted = [unquoted(match.group()) for match in _QUOTED.finditer(text)]
    rest = re.sub(desk.joints, "", _QUOTED.sub("", text)).strip(" ,;")
    return [Literal(fact) for fact in (quoted if quoted and not rest else [unquoted(text)])]


def _fact(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    return [Literal(asked_fact(desk, unquoted(text)))]


def asked_fact(desk: Desk, fact: str) -> str:
    """A fact as it is asked for: that a choice cannot be had, which other languages say otherwise, in English."""
    first, *others = desk.draft.vocabulary.grammars
    choice, _, words = fact.partition(" ")
    is_choice = desk.register.get(choice, IdentifierKind.INSTRUCTION) is not None
    if is_choice and any(normal(words) in one.labels(Word.CANNOT_BE_HAD) for one in others):
        return f"{choice} {first.label(Word.CANNOT_BE_HAD)}"
    return fact


def _one_day(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    span = read_day(text)
    if text != span.first.isoformat():
        message = say("`{text}` is no single day; write it as 2027-03-01", text=text)
        raise Unreadable("bad-date", message)
    return [edtf(span)]


def _verdict(desk: Desk, form: FormField, text: str) -> Sequence[Node]:
    words = desk.draft.vocabulary.verdict_words.values()
    found = next((word for word in words if normal(text) in word.names), None)
    if found is None:
        labels = [word.label for word in words]
        near = nearest(text, [name for word in words for name in word.names], labels)
        message = say("`{text}` is not a verdict", text=text)
        raise Unreadable("unknown-value", offered(message, near) if near else with_known(message, labels))
    return [Literal(found.verdict)]


_READERS: Mapping[str, Callable[[Desk, FormField, str], Sequence[Node]]] = {
    "text": _text,
    "date": _date,
    "concept": _concept,
    "actor": _actor,
    "actor-class": _actor_class,
    "yes-no": _yes_no,
    "iri": _iri,
    "file": _file,
    "digest": _digest,
    "rank": _rank,
    "person": _reference(IdentifierKind.PERSON),
    "people": _reference(IdentifierKind.PERSON, several=True),
    "people-or-nobody": _people_or_nobody,
    "logged": _reference(IdentifierKind.DEVICE, IdentifierKind.PART, IdentifierKind.BOX),
    "device": _reference(IdentifierKind.DEVICE),
    "part": _reference(IdentifierKind.PART),
    "group": _reference(IdentifierKind.GROUP),
    "subject": _reference(IdentifierKind.PART, IdentifierKind.MATERIAL),
    "subjects": _reference(*_SUBJECTS, several=True),
    "tasks": _reference(IdentifierKind.TASK, several=True),
    "whole-number": _whole_number,
    "held": _held,
    "parts": _parts,
    "instructions": _instructions,
    "lines": _lines,
    "facts": _facts,
    "fact": _fact,
    "one-day": _one_day,
    "verdict": _verdict,
}
