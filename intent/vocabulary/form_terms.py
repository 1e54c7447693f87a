"""What the text form is made of, as typed, frozen data: its sections, and their fields and columns."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from intent.vocabulary.named_term import NamedTerm


@dataclass(frozen=True, slots=True, kw_only=True)
class FormTerm(NamedTerm):
    """Something of the text form that has a name in each language."""

    iri: str
    labels: Mapping[str, str] = field(hash=False)
    """The preferred label in each language, by language tag."""
    names: tuple[str, ...]
    """Every label in every language; each is read on input."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FormField(FormTerm):
    """A field, or the column of a table, in a section of the text form."""

    property: str
    """The property of the record that holds it."""
    reads: str
    """How it is read: `text`, `date`, `concept`, `identifier`, `identifiers`, `file`, `number`, `yes-no` …"""
    sections: frozenset[str]
    schemes: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class FormSection(FormTerm):
    """A section of the text form, of a work, an installation or a pool."""

    documents: frozenset[str]
    """`work`, `installation`, `pool`."""
    holds: str
    """What it is: `fields`, `table`, `groups`, `entries`, `instructions`, `list`."""
    bearers: frozenset[str] = frozenset()
    """The bearers of the characteristics that may be columns or fields in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class VerdictWord(FormTerm):
    """What a verdict is called in a text."""

    verdict: str
    """The word that the record has for it, in English."""
