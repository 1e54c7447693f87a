"""What a state gives: how formulas ask it for numbers and names, stated or computed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Protocol

from intent.model.assertions import Statements
from intent.names import term_iri
from intent.values.regions import EVERYTHING, Interval, Region
from intent.values.sets import Labels, ValueSet
from intent.vocabulary.terms import Characteristic, Vocabulary


class GivesValues(Protocol):
    """A state, as the formulas ask it: what is stated and what follows."""

    @property
    def vocabulary(self) -> Vocabulary:
        """The terms in which it is stated."""
        ...

    @property
    def statements(self) -> Mapping[str, Statements]:
        """What is stated of each subject."""
        ...

    @property
    def documented(self) -> GivesValues | None:
        """Of a proposed state, the documented one."""
        ...

    @property
    def days(self) -> Interval:
        """How many days it lasts."""
        ...

    def value(self, subject: str, characteristic: Characteristic) -> ValueSet:
        """The values that a subject may have."""
        ...

    def material_of(self, subject: str) -> tuple[str, ...]:
        """The material that a part's channel shows or sounds."""
        ...


def bounds_of(state: GivesValues, subject: str, term: str) -> Interval:
    """What a state gives of a number, stated or computed, within bounds and in reference units."""
    value = state.value(subject, state.vocabulary.characteristics[term_iri(term)])
    return value.bounds if isinstance(value, Region) and not value.is_empty else EVERYTHING


def names_of(state: GivesValues, subject: str, term: str) -> frozenset[str]:
    """The concepts, by IRI, that the value may be."""
    value = state.value(subject, state.vocabulary.characteristics[term_iri(term)])
    return value.names if isinstance(value, Labels) and not value.all_but else frozenset()


def is_stated(state: GivesValues, subject: str, term: str) -> bool:
    return term_iri(term) in state.statements.get(subject, {})
