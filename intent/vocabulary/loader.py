"""The vocabulary's Turtle files, and a collection's own, as typed terms.

The files are read with pyoxigraph: it is quick, and it opens nothing but what it is given.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from importlib.resources import files

import pyoxigraph as ox

from intent.vocabulary.phrases import normal, phrases
from intent.vocabulary.terms import Characteristic, Concept, FormField, FormSection, Unit, Vocabulary

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
INTENT = "https://w3id.org/intent-record/ns#"
SKOS = "http://www.w3.org/2004/02/skos/core#"
QUDT = "http://qudt.org/schema/qudt/"
_TYPE = "http://www.w3.org/1999/02/22-rdf-syntax-ns#type"

Node = ox.NamedNode | ox.BlankNode | ox.Literal | ox.Triple
Properties = Mapping[str, Sequence[Node]]


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
        for kind in dict.fromkeys(_values(about, _TYPE)):
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
    broader = {iri: _values(described[iri], SKOS + "broader") for iri in concept_iris}
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
        sections=base.sections
        if base
        else {iri: _section(iri, subjects[iri]) for iri in typed[INTENT + "FormSection"]},
        fields=base.fields
        if base
        else {iri: _field(iri, subjects[iri]) for iri in typed[INTENT + "FormField"]},
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


def _values(about: Properties, property_iri: str) -> tuple[str, ...]:
    return tuple(node.value for node in about.get(property_iri, ()) if not isinstance(node, ox.Triple))


def _one(about: Properties, property_iri: str) -> str | None:
    return next(iter(_values(about, property_iri)), None)


def _labels(about: Properties) -> tuple[dict[str, str], tuple[str, ...]]:
    preferred = {
        node.language or "en": node.value
        for node in about.get(SKOS + "prefLabel", ())
        if isinstance(node, ox.Literal)
    }
    every = (*preferred.values(), *_values(about, SKOS + "altLabel"))
    return preferred, tuple(dict.fromkeys(map(normal, every)))


def _fraction(about: Properties, property_iri: str) -> Fraction | None:
    written = _one(about, property_iri)
    return None if written is None else Fraction(written)


def _unit(iri: str, about: Properties) -> Unit:
    symbol = _one(about, QUDT + "symbol") or ""
    _, names = _labels(about)
    exact = (symbol, *_values(about, SKOS + "altLabel"))
    return Unit(
        iri=iri,
        symbol=symbol,
        names=tuple(dict.fromkeys([*exact, *names])),
        quantity_kinds=frozenset(_values(about, QUDT + "hasQuantityKind")),
        factor=Fraction(_one(about, INTENT + "factor") or "1"),
        offset=Fraction(_one(about, INTENT + "offset") or "0"),
    )


def _magnitude(about: Properties, units: Mapping[str, Unit]) -> Fraction | None:
    number = _fraction(about, QUDT + "numericValue")
    unit = units.get(_one(about, QUDT + "hasUnit") or "")
    return number if number is None or unit is None else (number + unit.offset) * unit.factor


def _tolerance(about: Properties, units: Mapping[str, Unit]) -> Fraction | None:
    number = _fraction(about, INTENT + "tolerance")
    unit = units.get(_one(about, INTENT + "toleranceUnit") or "")
    return number if number is None or unit is None else number * unit.factor


def _concept(
    iri: str,
    subjects: Mapping[str, Properties],
    units: Mapping[str, Unit],
    broader: Mapping[str, tuple[str, ...]],
) -> Concept:
    about = subjects[iri]
    labels, names = _labels(about)
    line = _ancestry(iri, broader)
    applies = next(
        (found for step in line if (found := _values(subjects.get(step, {}), INTENT + "appliesTo"))), ()
    )
    cautions = dict.fromkeys(
        caution for step in line for caution in _values(subjects.get(step, {}), INTENT + "caution")
    )
    texts = {
        node.language or "en": node.value
        for node in about.get(SKOS + "definition", ())
        if isinstance(node, ox.Literal)
    }
    rank = _one(about, INTENT + "authority")
    return Concept(
        iri=iri,
        labels=labels,
        names=names,
        schemes=frozenset(_values(about, SKOS + "inScheme")),
        broader=broader.get(iri, ()),
        definition=texts.get("en", ""),
        applies_to=frozenset(applies),
        magnitude=_magnitude(about, units),
        authority=None if rank is None else int(rank),
        cautions=tuple(cautions),
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
    labels, names = _labels(about)
    return Characteristic(
        iri=iri,
        labels=labels,
        names=names,
        definition=next(
            (node.value for node in about.get(SKOS + "definition", ()) if isinstance(node, ox.Literal)), ""
        ),
        bearers=frozenset(_values(about, INTENT + "bearer")),
        space=_one(about, INTENT + "space") or "text",
        schemes=frozenset(_values(about, INTENT + "valuesFrom")),
        quantity_kind=_one(about, QUDT + "hasQuantityKind"),
        assumed_unit=_one(about, INTENT + "assumedUnit"),
        tolerance=_tolerance(about, units),
        tolerance_percent=_fraction(about, INTENT + "tolerancePercent"),
        minimum=_fraction(about, INTENT + "minimum"),
        counts_unasked=_one(about, INTENT + "countsUnasked") == "true",
        applies_to=frozenset(_values(about, INTENT + "appliesTo")),
        seen=int(_one(about, INTENT + "noticing") or 2),
        undone=int(_one(about, INTENT + "undoing") or 2),
        tolerance_written=_tolerance_written(about, units),
        sample=_one(about, INTENT + "sample") or "",
        is_computed=_one(about, INTENT + "computed") == "true",
        cautions=_values(about, INTENT + "caution"),
    )


def _tolerance_written(about: Properties, units: Mapping[str, Unit]) -> str:
    percent, number = _one(about, INTENT + "tolerancePercent"), _one(about, INTENT + "tolerance")
    if percent is not None:
        return f"{percent} %"
    unit = units.get(_one(about, INTENT + "toleranceUnit") or "")
    return f"{number or ''} {unit.symbol if unit else ''}".strip()


def _section(iri: str, about: Properties) -> FormSection:
    labels, names = _labels(about)
    return FormSection(
        iri=iri,
        names=names,
        labels=labels,
        documents=frozenset(_values(about, INTENT + "inDocument")),
        holds=_one(about, INTENT + "contains") or "fields",
        bearers=frozenset(_values(about, INTENT + "bearer")),
    )


def _field(iri: str, about: Properties) -> FormField:
    labels, names = _labels(about)
    return FormField(
        iri=iri,
        names=names,
        labels=labels,
        property=_one(about, INTENT + "property") or "",
        reads=_one(about, INTENT + "reads") or "text",
        sections=frozenset(_values(about, INTENT + "inSection")),
        schemes=frozenset(_values(about, INTENT + "valuesFrom")),
    )
