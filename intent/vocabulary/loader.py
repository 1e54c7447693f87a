"""The vocabulary's Turtle files, and a collection's own, as typed terms.

The files are read with pyoxigraph: it is quick, and it opens nothing but what it is given.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
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
    fraction_of,
    labels_of,
    pairs_of,
    texts_of,
    value_of,
    values_of,
)
from intent.vocabulary.reach import reach_of
from intent.vocabulary.terms import Characteristic, Concept, Unit, Vocabulary

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
_MARKS = ("carriesFurther", "delaysNothing")
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
        **{iri: _unit(iri, subjects[iri]) for iri in typed.get(QUDT + "Unit", ())},
    }
    characteristics = {
        **(base.characteristics if base else {}),
        **{
            iri: _characteristic(iri, subjects[iri], units)
            for iri in typed.get(INTENT + "Characteristic", ())
        },
    }
    concept_iris = [*(base.concepts if base else ()), *typed.get(SKOS + "Concept", ())]
    broader = {iri: values_of(described[iri], SKOS + "broader") for iri in concept_iris}
    concepts = {
        **(base.concepts if base else {}),
        **{
            iri: _concept(iri, described, units, broader)
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


def _unit(iri: str, about: Properties) -> Unit:
    symbol = value_of(about, QUDT + "symbol") or ""
    _, names = labels_of(about)
    exact = (symbol, *values_of(about, SKOS + "altLabel"))
    return Unit(
        iri=iri,
        symbol=symbol,
        names=tuple(dict.fromkeys([*exact, *names])),
        quantity_kinds=frozenset(values_of(about, QUDT + "hasQuantityKind")),
        factor=Fraction(value_of(about, INTENT + "factor") or "1"),
        offset=Fraction(value_of(about, INTENT + "offset") or "0"),
    )


def _magnitude(about: Properties, units: Mapping[str, Unit]) -> Fraction | None:
    number = fraction_of(about, QUDT + "numericValue")
    unit = units.get(value_of(about, QUDT + "hasUnit") or "")
    return number if number is None or unit is None else unit.in_reference(number)


def _tolerance(about: Properties, units: Mapping[str, Unit]) -> Fraction | None:
    number = fraction_of(about, INTENT + "tolerance")
    unit = units.get(value_of(about, INTENT + "toleranceUnit") or "")
    return number if number is None or unit is None else unit.length_in_reference(number)


def _concept(
    iri: str,
    subjects: Mapping[str, Properties],
    units: Mapping[str, Unit],
    broader: Mapping[str, tuple[str, ...]],
) -> Concept:
    about = subjects[iri]
    labels, names = labels_of(about)
    line = _ancestry(iri, broader)
    applies = next(
        (found for step in line if (found := values_of(subjects.get(step, {}), INTENT + "appliesTo"))), ()
    )
    cautions = dict.fromkeys(
        caution for step in line for caution in values_of(subjects.get(step, {}), INTENT + "caution")
    )
    shows = (value_of(subjects.get(step, {}), INTENT + "showsPictures") for step in line)
    starts = filter(None, (value_of(subjects.get(step, {}), INTENT + "startPlace") for step in line))
    texts = texts_of(about, SKOS + "definition")
    rank = value_of(about, INTENT + "authority")
    return Concept(
        iri=iri,
        labels=labels,
        names=names,
        schemes=frozenset(values_of(about, SKOS + "inScheme")),
        broader=broader.get(iri, ()),
        definition=texts.get("en", ""),
        applies_to=frozenset(applies),
        magnitude=_magnitude(about, units),
        authority=None if rank is None else int(rank),
        stands_alone=value_of(about, INTENT + "standsAlone") == "true",
        only_under_power=value_of(about, INTENT + "onlyUnderPower") == "true",
        only_gathers=value_of(about, INTENT + "onlyGathers") == "true",
        shows_as_well=frozenset(values_of(about, INTENT + "showsAsWell")),
        goes_into=frozenset(values_of(about, INTENT + "goesInto")),
        gives_no_earth=value_of(about, INTENT + "givesNoEarth") == "true",
        shows_pictures=next(filter(None, shows), ""),
        chromaticities=pairs_of(about, INTENT + "chromaticities"),
        meant_for=values_of(about, INTENT + "meantFor"),
        reach=reach_of(about),
        marks=frozenset(
            mark
            for mark in _MARKS
            if any(value_of(subjects.get(step, {}), INTENT + mark) == "true" for step in line)
        ),
        cautions=tuple(cautions),
        gravity=int(value_of(about, INTENT + "gravity") or 0),
        start_place=next(map(int, starts), None),
        gives_status=value_of(about, INTENT + "givesStatus"),
        ends=values_of(about, INTENT + "ends"),
        tells=value_of(about, INTENT + "tells"),
        texts=texts,
    )


def _ancestry(iri: str, broader: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """The concept and all above it, the nearest first."""
    line = [iri]
    for step in line:
        line.extend(wider for wider in broader.get(step, ()) if wider not in line)
    return tuple(line)


def _narrower(broader: Mapping[str, tuple[str, ...]]) -> dict[str, frozenset[str]]:
    below: dict[str, set[str]] = {iri: {iri} for iri in broader}
    for iri in broader:
        for wider in _ancestry(iri, broader):
            below.setdefault(wider, {wider}).add(iri)
    return {iri: frozenset(found) for iri, found in below.items()}


def _characteristic(iri: str, about: Properties, units: Mapping[str, Unit]) -> Characteristic:
    labels, names = labels_of(about)
    return Characteristic(
        iri=iri,
        labels=labels,
        names=names,
        definition=next(
            (node.value for node in about.get(SKOS + "definition", ()) if isinstance(node, ox.Literal)), ""
        ),
        bearers=frozenset(values_of(about, INTENT + "bearer")),
        space=value_of(about, INTENT + "space") or "text",
        schemes=frozenset(values_of(about, INTENT + "valuesFrom")),
        quantity_kind=value_of(about, QUDT + "hasQuantityKind"),
        assumed_unit=value_of(about, INTENT + "assumedUnit"),
        tolerance=_tolerance(about, units),
        tolerance_percent=fraction_of(about, INTENT + "tolerancePercent"),
        minimum=fraction_of(about, INTENT + "minimum"),
        unasked_of=_unasked_of(about),
        ordinary_value=value_of(about, INTENT + "ordinaryValue"),
        ordinary_number=fraction_of(about, INTENT + "ordinaryNumber"),
        restates=value_of(about, INTENT + "restates"),
        restates_axis=value_of(about, INTENT + "restatesAxis") or "",
        never_above=value_of(about, INTENT + "neverAbove"),
        applies_to=frozenset(values_of(about, INTENT + "appliesTo")),
        seen=int(value_of(about, INTENT + "noticing") or 2),
        undone=int(value_of(about, INTENT + "undoing") or 2),
        tolerance_written=_tolerance_written(about, units),
        sample=value_of(about, INTENT + "sample") or "",
        of_one_device=value_of(about, INTENT + "ofOneDevice") == "true",
        is_computed=value_of(about, INTENT + "computed") == "true",
        concerns=value_of(about, INTENT + "concerns") or "",
        cautions=values_of(about, INTENT + "caution"),
    )


def _unasked_of(about: Properties) -> frozenset[str]:
    """All the bearers that there are, or those that are named."""
    counts = value_of(about, INTENT + "countsUnasked") == "true"
    return frozenset(values_of(about, INTENT + ("bearer" if counts else "countsUnaskedOf")))


def _tolerance_written(about: Properties, units: Mapping[str, Unit]) -> str:
    percent, number = value_of(about, INTENT + "tolerancePercent"), value_of(about, INTENT + "tolerance")
    if percent is not None:
        return f"{percent} %"
    unit = units.get(value_of(about, INTENT + "toleranceUnit") or "")
    return f"{number or ''} {unit.symbol if unit else ''}".strip()
