"""The terms of the trade as typed, frozen data: kinds, technologies, characteristics, roles.

What a term means is in the Turtle files beside this module; nothing about a particular term is here.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from intent.vocabulary.form_terms import FormField, FormSection, VerdictWord
from intent.vocabulary.grammar import Grammar
from intent.vocabulary.named_term import NamedTerm, UnknownTerm
from intent.vocabulary.phrases import Phrases, normal
from intent.vocabulary.properties import SKOS
from intent.vocabulary.reach import CableReach
from intent.vocabulary.unit_of_measure import Unit

_LABELS = (SKOS + "prefLabel", SKOS + "altLabel")


@dataclass(frozen=True, slots=True, kw_only=True)
class Concept(NamedTerm):
    """A named value, kind, role, status or caution, with its place in its taxonomy."""

    iri: str
    labels: Mapping[str, str] = field(hash=False)
    """The preferred label in each language, by language tag."""
    names: tuple[str, ...]
    """Every label in every language; each is read on input."""
    schemes: frozenset[str] = frozenset()
    broader: tuple[str, ...] = ()
    definition: str = ""
    applies_to: frozenset[str] = frozenset()
    """The kinds of part whose value it may be; empty: any."""
    magnitude: Fraction | None = None
    """The angle or quantity that the name stands for, in reference units (`upside down` is 180 degrees)."""
    authority: int | None = None
    """The rank of a role: 1 is the artist's own."""
    stands_alone: bool = False
    """Whether it says by itself what it is a value of, as `present` does of `presence`."""
    only_gathers: bool = False
    """Whether it is a heading for narrower terms and names no thing of its own: `flat panel`."""
    cautions: tuple[str, ...] = ()
    only_under_power: bool = False
    """Of a caution: whether it is about what draws power, and no concern of what draws none."""
    gravity: int = 0
    """How grave a status is: of events of unknown order the graver counts. Of a laser class, how far it can harm."""
    start_place: int | None = None
    """Of a kind or a technology, or of what is broader: its place in the order of switching on, from 1."""
    gives_status: str | None = None
    """The status that a device has after an event of a log."""
    ends: tuple[str, ...] = ()
    """The events that an event puts an end to."""
    tells: str | None = None
    """The characteristic that the value of an event is of."""
    shows_as_well: frozenset[str] = frozenset()
    """Of a standard: the IRIs of those whose pictures a device for it shows as well, without their colour."""
    goes_into: frozenset[str] = frozenset()
    """Of a plug: the IRIs of the sockets that it goes into with its earth, besides its own."""
    gives_no_earth: bool = False
    """Whether it is a socket without a protective earth."""
    shows_pictures: str = ""
    """How a display of a technology lights each picture: `held` until the next one comes, or `pulsed`."""
    chromaticities: tuple[tuple[Fraction, Fraction], ...] = ()
    """Of a colour space: x and y of CIE 1931 of its red, green, blue and white."""
    meant_for: tuple[str, ...] = ()
    """Of a picture standard: the IRIs of the colour spaces that material of it is meant for where none is given."""
    reach: CableReach | None = None
    """Of a signal: how far a plain cable carries it, where somebody says."""
    marks: frozenset[str] = frozenset()
    """What is true of a technology and all that is narrower: `carriesFurther`, `delaysNothing`."""
    texts: Mapping[str, str] = field(default_factory=dict, hash=False)
    """The definition in each language that has one."""

    def text_in(self, language: str) -> str:
        """The definition in a language, else in English."""
        return self.texts.get(language) or self.texts.get("en") or self.definition


@dataclass(frozen=True, slots=True, kw_only=True)
class Characteristic(NamedTerm):
    """One thing that can be said of a part, the work or the venue, and how its values are compared."""

    iri: str
    labels: Mapping[str, str] = field(hash=False)
    names: tuple[str, ...]
    definition: str
    bearers: frozenset[str]
    """Of `device`, `place`, `work`, `venue`, `material`, `connection`, `box`."""
    space: str
    """One of `concept`, `quantity`, `ratio`, `angle`, `position`, `count`, `yes-no`, `text`, `raster`, `date`."""
    schemes: frozenset[str] = frozenset()
    quantity_kind: str | None = None
    assumed_unit: str | None = None
    """The unit of a bare number, where the trade writes none (a frame rate, running hours)."""
    tolerance: Fraction | None = None
    """In reference units; widens a single measured value stated without one."""
    tolerance_percent: Fraction | None = None
    minimum: Fraction | None = None
    """The least value there can be, in reference units; none for signed quantities."""
    unasked_of: frozenset[str] = frozenset()
    """The bearers of which it counts where no instruction speaks of it."""
    ordinary_value: str | None = None
    """The IRI of the concept that everybody takes for granted where nothing is said."""
    ordinary_number: Fraction | None = None
    """The same where it is a number, in the assumed unit, else in reference units."""
    restates: str | None = None
    """The IRI of the characteristic of which it says a part again, as `height` does of `position`."""
    restates_axis: str = ""
    """Which of that one's numbers it is: `x`, `y` or `z`."""
    never_above: str | None = None
    """The IRI of the characteristic of the same thing that is never less, as luminance is beside black level."""
    applies_to: frozenset[str] = frozenset()
    seen: int = 2
    """How hard a loss is to see: 1 at once, 2 on comparison, 3 only by measuring or asking."""
    undone: int = 2
    """How hard a loss is to undo: 1 the same day, 2 with work or money, 3 never."""
    tolerance_written: str = ""
    """The tolerance as a person would say it: `10 mm`, `5 %`."""
    sample: str = ""
    """A value as one would write it, for messages."""
    of_one_device: bool = False
    """Whether it is a single device's own, and not that of another which is like it."""
    is_computed: bool = False
    """Whether a value that is not stated follows from others."""
    concerns: str = ""
    """Of what it tells, where papers tell such things together: `setting`, `condition`, or nothing of the kind."""
    cautions: tuple[str, ...] = ()
    """What a value calls for, whatever it is; but of yes and no only yes."""

    @property
    def counts_unasked(self) -> bool:
        """Whether it counts of any bearer where no instruction speaks of it."""
        return bool(self.unasked_of)

    @property
    def has_ordinary(self) -> bool:
        """Whether there is a value that everybody takes for granted."""
        return self.ordinary_value is not None or self.ordinary_number is not None

    @property
    def is_measured(self) -> bool:
        return self.space in {"quantity", "ratio", "angle", "position", "raster"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Vocabulary:
    """Every term, with the look-ups that reading needs. Immutable; a collection's own terms make a new one."""

    concepts: Mapping[str, Concept]
    characteristics: Mapping[str, Characteristic]
    units: Mapping[str, Unit]
    sections: Mapping[str, FormSection]
    fields: Mapping[str, FormField]
    grammars: tuple[Grammar, ...]
    """The words of the instruction sentence in each language, English first."""
    verdict_words: Mapping[str, VerdictWord]
    """What each verdict is called, by the word that the record has for it."""
    narrower: Mapping[str, frozenset[str]]
    """Each concept's IRI with itself and all that is narrower."""
    by_scheme: Mapping[str, tuple[Concept, ...]]
    scheme_members: Mapping[str, frozenset[str]]
    """The IRIs of each scheme's concepts."""
    by_name: Mapping[str, tuple[Characteristic, ...]]
    """The characteristics of each label, as `normal` makes it."""
    phrases: Phrases
    """Every label of a concept or characteristic, as a sentence may hold it."""
    described: Mapping[str, Mapping[str, Any]]
    """What the Turtle says of each term, so that a collection's own terms can add to it."""

    def named(self, iri: str) -> Concept | Characteristic | UnknownTerm:
        """A term, to be told by its label in the reader's language."""
        return self.concepts.get(iri) or self.characteristics.get(iri) or UnknownTerm(iri)

    def grammar_in(self, language: str) -> Grammar:
        """The words of the instruction sentence in a language, else in English."""
        return next((one for one in self.grammars if one.language == language), self.grammars[0])

    def in_scheme(self, *schemes: str) -> tuple[Concept, ...]:
        found = [concept for scheme in schemes for concept in self.by_scheme.get(scheme, ())]
        return tuple(dict.fromkeys(found))

    def members(self, schemes: frozenset[str]) -> frozenset[str]:
        """The IRIs of all values of some schemes: all the values that there can be."""
        if len(schemes) == 1:
            return self.scheme_members.get(next(iter(schemes)), frozenset())
        return frozenset().union(*(self.scheme_members.get(scheme, frozenset()) for scheme in schemes))

    def is_kind(self, kind: str, wider: str) -> bool:
        return kind in self.narrower.get(wider, frozenset())

    def applies(self, term: Characteristic | Concept, kind: str) -> bool:
        """Whether parts of a kind have a characteristic, or may have a named value."""
        return not term.applies_to or any(self.is_kind(kind, wider) for wider in term.applies_to)

    def find_characteristic(self, name: str, bearers: Iterable[str] = ()) -> Characteristic | None:
        among = frozenset(bearers)
        found = self.by_name.get(normal(name), ())
        return next((one for one in found if not among or one.bearers & among), None)

    def find_value(self, schemes: Iterable[str], name: str) -> Concept | None:
        """The first concept of the schemes with this label."""
        wanted = normal(name)
        return next((concept for concept in self.in_scheme(*schemes) if wanted in concept.names), None)

    def spelled(self, iris: Iterable[str]) -> tuple[str, ...]:
        """Every label of some terms as the vocabulary spells it, for people to be offered."""
        described = (self.described.get(iri, {}) for iri in iris)
        return tuple(label.value for about in described for key in _LABELS for label in about.get(key, ()))

    def languages_of(self, iri: str, name: str) -> frozenset[str]:
        """The languages in which a name is a label of a term."""
        about, wanted = self.described.get(iri, {}), normal(name)
        labels = (label for key in _LABELS for label in about.get(key, ()))
        return frozenset(label.language or "en" for label in labels if normal(label.value) == wanted)

    def find_unit(self, name: str, quantity_kind: str | None) -> Unit | None:
        """The unit of a name as written, exactly if there is one, else without regard to case."""
        fitting = [unit for unit in self.units.values() if quantity_kind in unit.quantity_kinds]
        exact = next((unit for unit in fitting if name in unit.names), None)
        return exact or next((unit for unit in fitting if normal(name) in unit.names), None)

    def reference_unit(self, quantity_kind: str | None) -> Unit | None:
        """The unit in which numbers of a quantity kind are held."""
        for unit in self.units.values():
            if quantity_kind in unit.quantity_kinds and unit.factor == 1 and unit.offset == 0:
                return unit
        return None
