"""A collection's own terms that come as RDF: what the vocabulary's loader could not make sense of.

Those that come as a Markdown table are looked up as they are read; those of a graph are looked up here.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from rdflib import RDF, SKOS, XSD, Literal
from rdflib.term import Node

from intent.diagnostics import Diagnostic, Span, in_order
from intent.dossier.bearers import BEARERS
from intent.dossier.own_terms import SPACES, told_word
from intent.language.message import Message, say
from intent.names import INTENT, QUDT, Triple
from intent.record.declared import short_name, undeclared_names
from intent.record.indexed import IndexedGraph
from intent.record.ontology import Ontology, read_ontology
from intent.record.places import Places
from intent.vocabulary.terms import Vocabulary

_WORDS: tuple[tuple[Node, tuple[str, ...], Message], ...] = (
    (INTENT.bearer, BEARERS, say("bearer")),
    (INTENT.space, SPACES, say("sort of values")),
)
_FRACTIONS = (INTENT.factor, INTENT.offset, QUDT.numericValue)
"""What is read as an exact number though it may be written as a fraction, `5/9`."""


def term_faults(graph: Iterable[Triple], file: str, vocabulary: Vocabulary) -> tuple[Diagnostic, ...]:
    """The errors in the terms that a file adds: names of ours that there are not, words and numbers that are none.

    While a name is unknown nothing else is said, since all the rest may follow from it.
    """
    data, ontology = IndexedGraph(graph), read_ontology()
    places = Places(data, {"": Span(file=file)}, "")
    return in_order(undeclared_names(data, places, ontology)) or in_order(
        [
            *_unknown_words(data, places),
            *_bad_numbers(data, places, ontology),
            *_broader_than_none(data, places, vocabulary),
        ]
    )


def _unknown_words(data: IndexedGraph, places: Places) -> Iterator[Diagnostic]:
    for property_iri, known, what in _WORDS:
        for value, having in data.by_value.get(property_iri, {}).items():
            if str(value) not in known:
                message = told_word(str(value), known, what)
                yield from (places.finding("unknown-value", message, node) for node in having)


def _bad_numbers(data: IndexedGraph, places: Places, ontology: Ontology) -> Iterator[Diagnostic]:
    for property_iri, values in data.by_value.items():
        wanted = ontology.ranges.get(property_iri, frozenset())
        if property_iri not in _FRACTIONS and not wanted & {XSD.integer, XSD.decimal}:
            continue
        for value, having in values.items():
            if not _is_number(value, is_whole=XSD.integer in wanted, is_factor=property_iri == INTENT.factor):
                message = say(
                    "after `{name}` stands a number; `{text}` is none that can be used",
                    name=short_name(property_iri),
                    text=places.name(value),
                )
                yield from (places.finding("bad-number", message, node) for node in having)


def _broader_than_none(data: IndexedGraph, places: Places, vocabulary: Vocabulary) -> Iterator[Diagnostic]:
    """Values narrower than something that is no value, neither of this file's nor of the vocabulary's."""
    added = set(data.subjects(RDF.type, SKOS.Concept)) - set(data.subjects(RDF.type, INTENT.Characteristic))
    for value, having in data.by_value.get(SKOS.broader, {}).items():
        if value not in added and str(value) not in vocabulary.concepts:
            message = say("`{word}` is not a {what}", word=places.name(value), what=say("value"))
            yield from (places.finding("unknown-value", message, node) for node in having)


def _is_number(value: Node, *, is_whole: bool, is_factor: bool) -> bool:
    """Whether a literal can be read as a whole number, or exactly as a fraction; nothing is measured in nothings."""
    if not isinstance(value, Literal):
        return False
    try:
        return bool(int(value) if is_whole else Fraction(str(value))) or not is_factor
    except (ValueError, ZeroDivisionError):
        return False
