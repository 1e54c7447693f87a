"""One thing that differs between two states of documentation, and what there is to compare."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum

from intent.language.message import listed
from intent.model.assertions import Expression, Measured, Statements
from intent.model.phrasing import expression_words
from intent.values.dates import DaySpan
from intent.vocabulary.terms import Vocabulary


class ThingKind(StrEnum):
    """What is compared, in the order in which it is told."""

    WORK = "work"
    INSTRUCTION = "instruction"
    HEADING = "heading"
    PART = "part"
    GROUP = "group"
    DEVICE = "device"
    PERSON = "person"
    SOURCE = "source"
    MATERIAL = "material"
    CONNECTION = "connection"
    BOX = "box"
    SECTION = "section"


class What(StrEnum):
    ADDED = "added"
    GONE = "gone"
    WITHDRAWN = "withdrawn"
    SUPERSEDED = "superseded"
    CHANGED = "changed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """One thing that was added, is gone, or has changed in one respect."""

    sort: ThingKind
    name: str
    """An identifier; of a group or section its name, of the work nothing."""
    what: What
    respect: str = ""
    """Of a change: in what."""
    before: str = ""
    after: str = ""


@dataclass(frozen=True, slots=True)
class Facet:
    """One respect in which a thing can differ: what is compared, and how it is told."""

    value: object
    words: str = field(compare=False)


Facets = Mapping[str, Facet]
"""Facets by the name of their respect; a respect that is left out is empty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """Something with a name of its own in a state of the documentation."""

    sort: ThingKind
    name: str
    facets: Facets
    told: str = ""
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
            before, after = (one.words if one else "" for one in (mine, theirs))
            yield Difference(
                sort=new.sort, name=new.name, what=What.CHANGED, respect=respect, before=before, after=after
            )


def facets(**respects: object) -> dict[str, Facet]:
    """Facets of plain values, by respect; spaces for underscores, and nothing for what is empty."""
    return {
        name.replace("_", " "): facet
        for name, value in respects.items()
        if (facet := _facet(value)) is not None
    }


def _facet(value: object) -> Facet | None:
    if value is None or value == "" or value == () or value is False:
        return None
    if isinstance(value, DaySpan):
        return Facet((value.first, value.last), str(value))
    if isinstance(value, tuple):
        return Facet(value, listed(map(str, value)))
    if value is True:
        return Facet(value, "yes")
    return Facet(value, str(value))


def of_statements(statements: Statements, vocabulary: Vocabulary) -> dict[str, Facet]:
    """What is stated, by characteristic; how a value is written does not count."""
    found: dict[str, Facet] = {}
    for iri, expression in statements.items():
        characteristic = vocabulary.characteristics.get(iri)
        words = expression.written.strip() or expression_words(expression, vocabulary)
        found[characteristic.label if characteristic else iri] = Facet(meant(expression), words)
    return found


def meant(expression: Expression) -> Expression:
    """What an expression says, in whatever unit it is written."""
    items = tuple(
        replace(item, unit=None) if isinstance(item, Measured) else item for item in expression.items
    )
    return replace(expression, items=items)


def of_fields(fields: Mapping[str, str], vocabulary: Vocabulary) -> dict[str, Facet]:
    """Fields as written, by their label."""
    labels = {form.property: form.label for form in vocabulary.fields.values()}
    return {
        labels.get(iri, iri.rsplit("#", 1)[-1].rsplit("/", 1)[-1]): Facet(value, value)
        for iri, value in fields.items()
        if value
    }
