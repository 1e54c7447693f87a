"""What a record from elsewhere says in terms that the vocabulary does not know, or in values that do not fit them.

A dossier's words are looked up as it is read; those of a graph from elsewhere are looked up here.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping

from rdflib import URIRef
from rdflib.term import Node

from intent.diagnostics import Diagnostic, Span, in_order
from intent.language.message import say
from intent.model.assertions import Dated, Expression, Form, Item, Measured, Named, Relative, Text
from intent.model.instruction_text import expression_text
from intent.names import INTENT, QUDT, Triple
from intent.record.indexed import IndexedGraph
from intent.record.places import Places, places_of
from intent.record.view import GraphView, view_of
from intent.record.written_again import belied_values, compared_expressions
from intent.vocabulary.terms import Characteristic, Vocabulary

_CONCEPTS = (
    INTENT.kind,
    INTENT.everyKind,
    INTENT.role,
    INTENT.status,
    INTENT.sourceKind,
    INTENT.keep,
    INTENT.event,
)
_VALUES = (INTENT.value, INTENT.low, INTENT.high)
_DESCRIBED = (*_VALUES, INTENT.dutyOf)
"""Properties whose values are terms, or else things that the record describes itself."""
_BOUNDS = (Form.BETWEEN, Form.AT_LEAST, Form.AT_MOST)
_UNORDERED = ("concept", "yes-no", "text", "position")
_AXES = {"position": 3, "raster": 2}


def term_findings(
    graph: Iterable[Triple],
    spans: Mapping[str, Span],
    vocabulary: Vocabulary,
    which: str,
    beside: Iterable[Triple] = (),
) -> tuple[Diagnostic, ...]:
    """The errors in the terms and values of a ``work`` or an ``installation`` that its shapes accept.

    The instructions that consents are about stand in the graph ``beside``.
    """
    own = tuple(graph)
    data = IndexedGraph(own)
    places, view = places_of(data, spans, which), view_of(own, beside)
    return (
        in_order(_unknown_terms(data, places, vocabulary))
        or in_order(_unfitting_values(data, places, view, vocabulary))
        or in_order(belied_values(data, places, view, vocabulary))
    )


def _unknown_terms(data: IndexedGraph, places: Places, vocabulary: Vocabulary) -> Iterator[Diagnostic]:
    known: dict[Node, Collection[str]] = {
        INTENT.characteristic: vocabulary.characteristics,
        INTENT.sectionTerm: vocabulary.sections,
        QUDT.hasUnit: vocabulary.units,
        **dict.fromkeys((*_CONCEPTS, *_VALUES, INTENT.dutyOf), vocabulary.concepts),
    }
    for predicate, terms in known.items():
        for value, subjects in data.by_value.get(predicate, {}).items():
            is_described = predicate in _DESCRIBED and value in data.by_subject
            if isinstance(value, URIRef) and str(value) not in terms and not is_described:
                message = say(
                    "`{term}` is no term of the vocabulary; ask the sender for the file of their own terms, "
                    "and name it after `terms`",
                    term=str(value),
                )
                yield from (places.finding("unknown-term", message, node) for node in subjects)


def _unfitting_values(
    data: IndexedGraph, places: Places, view: GraphView, vocabulary: Vocabulary
) -> Iterator[Diagnostic]:
    for node, compared, expression in compared_expressions(data, view, vocabulary):
        if expression.form in _BOUNDS and compared.space in _UNORDERED:
            message = say(
                "{characteristic} has no more and less; give one value, or several",
                characteristic=compared.label,
            )
            yield places.finding("no-order", message, node)
        for item in expression.items:
            if not _fits(item, compared, vocabulary):
                message = say(
                    "`{value}` is no {characteristic}; give one as the vocabulary says",
                    value=expression_text(Expression(form=Form.ONE_OF, items=(item,)), vocabulary),
                    characteristic=compared.label,
                )
                yield places.finding("unfitting-value", message, node)


def _fits(item: Item, characteristic: Characteristic, vocabulary: Vocabulary) -> bool:
    """Whether an item is of the sort that a characteristic's value space holds."""
    space = characteristic.space
    if space in {"concept", "yes-no"}:
        return isinstance(item, Named) and item.concept in vocabulary.members(characteristic.schemes)
    if space in {"text", "date"}:
        return isinstance(item, Text if space == "text" else Dated)
    if isinstance(item, Measured):
        unit = vocabulary.units.get(item.unit or "")
        has_unit = unit is None or characteristic.quantity_kind in unit.quantity_kinds
        return has_unit and len(item.numbers) == _AXES.get(space, 1)
    return isinstance(item, Relative)
