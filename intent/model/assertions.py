"""What a sentence or a cell says, as typed, frozen data: values, scopes, assertions, conditions.

Numbers are exact (`Fraction`) and in the reference unit of their quantity kind; what was written is kept
beside them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from intent.values.dates import DaySpan


class Form(StrEnum):
    """How the items of an expression are to be taken together."""

    ONE_OF = "one-of"
    BETWEEN = "between"
    AT_LEAST = "at-least"
    AT_MOST = "at-most"
    AS_DOCUMENTED = "as-documented"
    ANY = "any"


@dataclass(frozen=True, slots=True)
class Named:
    """A concept of the vocabulary, by IRI."""

    concept: str


@dataclass(frozen=True, slots=True)
class Text:
    """Words as written; compared without regard to case and spacing."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One number, or one for each axis, in reference units."""

    numbers: tuple[Fraction, ...]
    written: str = field(compare=False)
    unit: str | None = None
    tolerance: Fraction | None = None
    tolerance_percent: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Relative:
    """A share of the documented value, in per cent."""

    percent: Fraction
    tolerance: Fraction | None = None
    tolerance_percent: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Dated:
    """A date, as a span of days."""

    span: DaySpan


Item = Named | Text | Measured | Relative | Dated


@dataclass(frozen=True, slots=True, kw_only=True)
class Expression:
    """What is written for a value: in a cell, or after `is` in an instruction."""

    form: Form
    items: tuple[Item, ...] = ()
    negated: bool = False
    written: str = field(default="", compare=False)


Statements = Mapping[str, Expression]
"""Values by the IRI of their characteristic."""


class Aggregate(StrEnum):
    """What an assertion speaks of: each subject by itself, or all of them together."""

    EACH = "each"
    NUMBER = "number"
    TOTAL = "total"
    DIFFERENCE = "difference"
    DISTANCE = "distance"
    SAME = "same"
    DIFFERENT = "different"
    RELATION = "relation"


class Relation(StrEnum):
    """Where one part stands to another, seen from the front."""

    ABOVE = "above"
    BELOW = "below"
    LEFT_OF = "left of"
    RIGHT_OF = "right of"
    IN_FRONT_OF = "in front of"
    BEHIND = "behind"


class ScopeKind(StrEnum):
    NAMES = "names"
    EVERY = "every"
    ADDITIONS = "additions"
    WORK = "work"
    VENUE = "venue"


@dataclass(frozen=True, slots=True, kw_only=True)
class Scope:
    """What an assertion is about; names are identifiers of parts and material, or names of groups."""

    kind: ScopeKind
    names: tuple[str, ...] = ()
    part_kind: str | None = None
    """The IRI of the kind after `every`."""
    excepted: tuple[str, ...] = ()
    written: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Assertion:
    """A characteristic of a scope, compared; or one part in relation to another."""

    aggregate: Aggregate
    scope: Scope
    characteristic: str | None = None
    """IRI; none for `number of`, `distance between` and relations."""
    expression: Expression = Expression(form=Form.ANY)
    relation: Relation | None = None
    other: str | None = None
    """The part that a relation is to."""
    written: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class Condition:
    """A fact that a person must attest, or an assertion checked against the installation."""

    unless: bool = False
    fact: str | None = None
    assertion: Assertion | None = None
