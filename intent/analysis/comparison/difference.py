"""One thing that differs between two states of documentation, and what there is to compare."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum

from intent.language.message import Message, Place, Words, listed, named, say
from intent.model.assertions import Expression, Measured, Statements
from intent.model.phrasing import compared_words
from intent.values.dates import DaySpan
from intent.vocabulary.form_terms import FormTerm
from intent.vocabulary.named_term import UnknownTerm
from intent.vocabulary.terms import Concept, Vocabulary


class ThingKind(StrEnum):
    """What is compared, in the order in which it is told."""

    WORK = "work"
    INSTRUCTION = "instruction"
    DUTY = "duty"
    HEADING = "heading"
    PART = "part"
    GROUP = "group"
    DEVICE = "device"
    PERSON = "person"
    SOURCE = "source"
    MATERIAL = "material"
    CONNECTION = "connection"
    BOX = "box"
    LOG_ENTRY = "log entry"
    TASK = "task"
    EXPECTATION = "expectation"
    SECTION = "section"


class What(StrEnum):
    """What became of a thing."""

    ADDED = "added"
    GONE = "gone"
    WITHDRAWN = "withdrawn"
    SUPERSEDED = "superseded"
    CHANGED = "changed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """One thing that was added, is gone, or has changed in one respect."""

    sort: ThingKind
    name: Words
    """An identifier; of a group its name, of a section its term, of a connection its ends, of the work nothing.

    Of an expectation the case, and of an entry of the log what happened to what and when.
    """
    what: What
    respect: Words = ""
    """Of a change: in what."""
    before: Words = ""
    after: Words = ""
    is_prose: bool = False
    """Whether what it was and is are sentences that somebody wrote, to be quoted."""


@dataclass(frozen=True, slots=True)
class Facet:
    """One respect in which a thing can differ: what is compared, and how it is told."""

    value: object
    words: Words = field(compare=False)
    is_prose: bool = field(default=False, compare=False)


Facets = Mapping[Words, Facet]
"""Facets by the name of their respect; a respect that is left out is empty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """Something with a name of its own in a state of the documentation."""

    sort: ThingKind
    name: Words
    """The same in both states for the same thing."""
    facets: Facets
    told: Words = ""
    """How it is introduced where it is new or gone: a name, a sentence."""


def compared(old: Sequence[Thing], new: Sequence[Thing]) -> Iterator[Difference]:
    """What is new, what is gone, and each respect in which a thing of one name differs."""
    before, after = ({(thing.sort, thing.name): thing for thing in state} for state in (old, new))
    for key in dict.fromkeys([*before, *after]):
        mine, theirs = before.get(key), after.get(key)
        if mine is not None and theirs is not None:
            yield from _changes(mine, theirs)
        elif theirs is not None:
            yield Difference(sort=theirs.sort, name=theirs.name, what=What.ADDED, after=theirs.told)
        elif mine is not None:
            yield Difference(sort=mine.sort, name=mine.name, what=What.GONE, before=mine.told)


def _changes(old: Thing, new: Thing) -> Iterator[Difference]:
    for respect in dict.fromkeys([*old.facets, *new.facets]):
        mine, theirs = old.facets.get(respect), new.facets.get(respect)
        if mine != theirs:
            yield Difference(
                sort=new.sort,
                name=new.name,
                what=What.CHANGED,
                respect=respect,
                before=mine.words if mine else "",
                after=theirs.words if theirs else "",
                is_prose=any(one.is_prose for one in (mine, theirs) if one),
            )


WITHDRAWN, VERDICT = say("withdrawn"), say("verdict")
_RESPECTS: Mapping[str, Message] = {
    "actor": say("person or body"),
    "after": say("after"),
    "afterword": say("afterword"),
    "authority": say("authority"),
    "by": say("by"),
    "choice": say("choice"),
    "consent_of": say("consent of"),
    "contact": say("contact"),
    "contact_leaves": say("contact leaves"),
    "date": say("date"),
    "device": say("device"),
    "duty": say("duty"),
    "file": say("file"),
    "ground": say("ground"),
    "group": say("group"),
    "holds": say("holds"),
    "internal": say("internal"),
    "kind": say("kind"),
    "lifted_by": say("lifted by"),
    "like": say("like"),
    "modality": say("modality"),
    "name": say("name"),
    "note": say("note"),
    "on": say("on"),
    "parts": say("parts"),
    "people": say("people"),
    "reason": say("reason"),
    "reported_by": say("reported by"),
    "role": say("role"),
    "since": say("since"),
    "source": say("source"),
    "spoken_with": say("spoken with"),
    "status": say("status"),
    "successor": say("successor"),
    "supersedes": say("supersedes"),
    "time": say("time"),
    "title": say("title"),
    "until": say("until"),
    "verdict": VERDICT,
    "what": say("what"),
    "withdrawn": WITHDRAWN,
    "words": say("words"),
}
"""The respects that are no characteristic and no field of the text form."""
_PROSE = {"words", "note", "reason", "afterword"}


def facets(**respects: Place | Concept | bool | None) -> dict[Words, Facet]:
    """Facets of plain values, by respect; nothing for what is empty."""
    return {
        _RESPECTS[name]: replace(facet, is_prose=name in _PROSE)
        for name, value in respects.items()
        if (facet := _facet(value)) is not None
    }


def _facet(value: Place | Concept | bool | None) -> Facet | None:
    match value:
        case None | "" | () | False:
            return None
        case True:
            return Facet(value, say("yes"))
        case DaySpan():
            return Facet((value.first, value.last), str(value))
        case tuple():
            return Facet(value, listed(value))
        case Concept() | FormTerm():
            return Facet(value.iri, named(value))
        case str():
            return Facet(value, value)
    return Facet(value, say("{value}", value=value))


def of_statements(statements: Statements, vocabulary: Vocabulary) -> dict[Words, Facet]:
    """What is stated, by characteristic; how a value is written does not count."""
    return {
        named(vocabulary.named(iri)): Facet(meant(expression), compared_words(expression, vocabulary))
        for iri, expression in statements.items()
    }


def meant(expression: Expression) -> Expression:
    """What an expression says, in whatever unit it is written."""
    items = tuple(
        replace(item, unit=None) if isinstance(item, Measured) else item for item in expression.items
    )
    return replace(expression, items=items)


def of_fields(fields: Mapping[str, str], vocabulary: Vocabulary) -> dict[Words, Facet]:
    """Fields as written, by their label in the text form."""
    forms = {form.property: form for form in vocabulary.fields.values()}
    return {
        named(forms.get(iri) or UnknownTerm(iri)): Facet(value, value)
        for iri, value in fields.items()
        if value
    }
