"""The vocabulary's Turtle files, and a collection's own, as typed terms.

The files are read with pyoxigraph: it is quick, and it opens nothing but what it is given.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from importlib.resources import files

import pyoxigraph as ox

from intent.vocabulary.form_loader import form_fields, form_sections, grammars, verdict_words
from intent.vocabulary.phrases import phrases
from intent.vocabulary.properties import (
    INTENT,
    QUDT,
    SKOS,
    Node,
    Properties,
    values_of,
)
from intent.vocabulary.term_loader import ancestry, characteristic_of, concept_of, unit_of
from intent.vocabulary.terms import Characteristic, Concept, Vocabulary

TERM_FILES = (
    "characteristics",
    "cautions",
    "computed",
    "form",
    "kinds",
    "roles",
    "technologies",
    "units",
    "values",
)
_TYPE = "http://www.w3.org/1999/02/22-rdf-syntax-ns#type"


def read_vocabulary() -> Vocabulary:
    """All terms that ship with the program."""
    folder = files("intent.vocabulary")
    described = _by_subject(folder.joinpath(f"{name}.ttl").read_bytes() for name in TERM_FILES)
    return _vocabulary(described, None)


def extended(vocabulary: Vocabulary, own_terms: bytes) -> Vocabulary:
    """A vocabulary with the terms of a Turtle document besides; it may add labels to terms that are there.

    Raises ``SyntaxError`` with the line and column where the document is not Turtle.
    """
    own = _by_subject([own_terms])
    both = {iri: _joined(vocabulary.described.get(iri, {}), about) for iri, about in own.items()}
    return _vocabulary(both, vocabulary)


def _joined(one: Properties, two: Properties) -> dict[str, list[Node]]:
    return {key: [*one.get(key, ()), *two.get(key, ())] for key in dict.fromkeys([*one, *two])}


def _by_subject(documents: Iterable[bytes]) -> dict[str, dict[str, list[Node]]]:
    subjects: dict[str, dict[str, list[Node]]] = {}
    for document in documents:
        for quad in ox.parse(document, format=ox.RdfFormat.TURTLE):
            if isinstance(quad.subject, ox.NamedNode):
                about = subjects.setdefault(quad.subject.value, {})
                about.setdefault(quad.predicate.value, []).append(quad.object)
    return subjects


def _vocabulary(subjects: Mapping[str, Properties], base: Vocabulary | None) -> Vocabulary:
    """The terms of some subjects, beside those of a base."""
    described = {**(base.described if base else {}), **subjects}
    typed: dict[str, list[str]] = {}
    for iri, about in subjects.items():
        for kind in dict.fromkeys(values_of(about, _TYPE)):
            typed.setdefault(kind, []).append(iri)
    units = {
        **(base.units if base else {}),
        **{iri: unit_of(iri, subjects[iri]) for iri in typed.get(QUDT + "Unit", ())},
    }
    characteristics = {
        **(base.characteristics if base else {}),
        **{
            iri: characteristic_of(iri, subjects[iri], units)
            for iri in typed.get(INTENT + "Characteristic", ())
        },
    }
    concept_iris = [*(base.concepts if base else ()), *typed.get(SKOS + "Concept", ())]
    broader = {iri: values_of(described[iri], SKOS + "broader") for iri in concept_iris}
    concepts = {
        **(base.concepts if base else {}),
        **{
            iri: concept_of(iri, described, units, broader)
            for iri in typed.get(SKOS + "Concept", ())
            if iri not in characteristics
        },
    }
    by_scheme = _by_scheme(concepts.values())
    return Vocabulary(
        concepts=concepts,
        characteristics=characteristics,
        units=units,
        sections=base.sections if base else form_sections(subjects, typed[INTENT + "FormSection"]),
        fields=base.fields if base else form_fields(subjects, typed[INTENT + "FormField"]),
        grammars=base.grammars if base else grammars(subjects, typed[INTENT + "SentenceWord"]),
        verdict_words=base.verdict_words if base else verdict_words(subjects, typed[INTENT + "VerdictWord"]),
        narrower=_narrower(broader),
        by_scheme=by_scheme,
        scheme_members={
            scheme: frozenset(concept.iri for concept in held) for scheme, held in by_scheme.items()
        },
        by_name=_by_name(characteristics.values()),
        phrases=phrases(_names(concepts.values(), characteristics.values())),
        described=described,
    )


def _names(concepts: Iterable[Concept], characteristics: Iterable[Characteristic]) -> Iterable[str]:
    for characteristic in characteristics:
        yield from characteristic.names
    for concept in concepts:
        yield from concept.names


def _by_scheme(concepts: Iterable[Concept]) -> dict[str, tuple[Concept, ...]]:
    found: dict[str, list[Concept]] = {}
    for concept in concepts:
        for scheme in concept.schemes:
            found.setdefault(scheme, []).append(concept)
    return {scheme: tuple(held) for scheme, held in found.items()}


def _by_name(characteristics: Iterable[Characteristic]) -> dict[str, tuple[Characteristic, ...]]:
    found: dict[str, list[Characteristic]] = {}
    for characteristic in characteristics:
        for name in characteristic.names:
            found.setdefault(name, []).append(characteristic)
    return {name: tuple(held) for name, held in found.items()}


def _narrower(broader: Mapping[str, tuple[str, ...]]) -> dict[str, frozenset[str]]:
    below: dict[str, set[str]] = {iri: {iri} for iri in broader}
    for iri in broader:
        for wider in ancestry(iri, broader):
            below.setdefault(wider, {wider}).add(iri)
    return {iri: frozenset(found) for iri, found in below.items()}
