"""What Turtle says of one term: the values of a property as text, numbers, and texts by language."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from fractions import Fraction

import pyoxigraph as ox

from intent.vocabulary.phrases import normal

INTENT = "https://w3id.org/intent-record/ns#"
SKOS = "http://www.w3.org/2004/02/skos/core#"
QUDT = "http://qudt.org/schema/qudt/"

Node = ox.NamedNode | ox.BlankNode | ox.Literal | ox.Triple
Properties = Mapping[str, Sequence[Node]]
"""The values of each property of a term, by the property's IRI."""
_DECIMAL = r"\d(?:\.\d+)?"
_PAIRS = re.compile(rf"{_DECIMAL} {_DECIMAL}(?:, {_DECIMAL} {_DECIMAL})*")


def values_of(about: Properties, property_iri: str) -> tuple[str, ...]:
    """The values of a property: texts, numbers as written, and IRIs."""
    return tuple(node.value for node in about.get(property_iri, ()) if not isinstance(node, ox.Triple))


def value_of(about: Properties, property_iri: str) -> str | None:
    """The first value of a property."""
    return next(iter(values_of(about, property_iri)), None)


def is_true(about: Properties, property_iri: str) -> bool:
    """Whether a property of yes and no says yes; one that is not there says no."""
    return value_of(about, property_iri) == "true"


def fraction_of(about: Properties, property_iri: str) -> Fraction | None:
    """The value of a property as an exact number."""
    written = value_of(about, property_iri)
    return None if written is None else Fraction(written)


def pairs_of(about: Properties, property_iri: str) -> tuple[tuple[Fraction, Fraction], ...]:
    """Pairs of exact numbers written in one text: `0.64 0.33, 0.30 0.60`; none where it is written otherwise."""
    written = value_of(about, property_iri) or ""
    pairs = re.findall(rf"({_DECIMAL}) ({_DECIMAL})(?:, |$)", written) if _PAIRS.fullmatch(written) else []
    return tuple((Fraction(one), Fraction(two)) for one, two in pairs)


def texts_of(about: Properties, property_iri: str) -> dict[str, str]:
    """The text of a property in each language; one without a language is English."""
    return {language: texts[-1] for language, texts in all_texts_of(about, property_iri).items()}


def all_texts_of(about: Properties, property_iri: str) -> dict[str, list[str]]:
    """All texts of a property, by language."""
    found: dict[str, list[str]] = {}
    for node in about.get(property_iri, ()):
        if isinstance(node, ox.Literal):
            found.setdefault(node.language or "en", []).append(node.value)
    return found


def labels_of(about: Properties) -> tuple[dict[str, str], tuple[str, ...]]:
    """The preferred label in each language, and every label as it is looked up."""
    preferred = texts_of(about, SKOS + "prefLabel")
    every = (*preferred.values(), *values_of(about, SKOS + "altLabel"))
    return preferred, tuple(dict.fromkeys(map(normal, every)))
