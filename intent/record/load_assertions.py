"""Values, assertions and instructions from the record."""

from __future__ import annotations

from rdflib import RDF, Literal, URIRef
from rdflib.term import Node

from intent.model.assertions import (
    Aggregate,
    Assertion,
    Condition,
    Dated,
    Expression,
    Form,
    Item,
    Measured,
    Named,
    Relation,
    Relative,
    Scope,
    ScopeKind,
    Statements,
    Text,
)
from intent.model.citation import Citation
from intent.model.instruction_text import expression_text, scope_text
from intent.names import EDTF, INTENT, OA, QUDT
from intent.record.view import GraphView
from intent.values.dates import read_date
from intent.vocabulary.terms import Vocabulary

_AXES = (INTENT.x, INTENT.y, INTENT.z)


def load_statements(view: GraphView, node: Node, vocabulary: Vocabulary) -> Statements:
    """What is stated of a thing, by the IRI of the characteristic."""
    return {
        view.text(statement, INTENT.characteristic): load_expression(view, statement, vocabulary)
        for statement in sorted(view.values(node, INTENT.states), key=str)
    }


def load_expression(view: GraphView, node: Node, vocabulary: Vocabulary) -> Expression:
    form = Form(view.local(node, INTENT.form))
    if form is Form.BETWEEN:
        ends = (view.one(node, INTENT.low), view.one(node, INTENT.high))
        items = tuple(_item(view, end, vocabulary) for end in ends if end is not None)
    else:
        items = tuple(
            _item(view, value, vocabulary) for value in sorted(view.values(node, INTENT.value), key=_place)
        )
    expression = Expression(form=form, items=items, negated=view.flag(node, INTENT.negated))
    return Expression(
        form=form, items=items, negated=expression.negated, written=expression_text(expression, vocabulary)
    )


def _place(node: Node) -> tuple[bool, str]:
    return isinstance(node, URIRef), str(node)


def _item(view: GraphView, node: Node, vocabulary: Vocabulary) -> Item:
    if isinstance(node, Literal):
        if node.datatype == EDTF:
            return Dated(read_date(str(node)))
        return Text(str(node))
    if node not in view.subjects:
        return Named(str(node))
    percent = view.number(node, INTENT.percentOfDocumented)
    tolerance, tolerance_percent = (
        view.number(node, INTENT.plusMinus),
        view.number(node, INTENT.plusMinusPercent),
    )
    if percent is not None:
        return Relative(percent, tolerance, tolerance_percent)
    unit = vocabulary.units.get(view.text(node, QUDT.hasUnit))
    if tolerance is not None and unit is not None:
        tolerance = unit.length_in_reference(tolerance)
    single = view.number(node, QUDT.numericValue)
    axes = (view.number(node, axis) for axis in _AXES)
    numbers = (single,) if single is not None else tuple(number for number in axes if number is not None)
    return Measured(
        numbers=tuple(unit.in_reference(number) if unit else number for number in numbers),
        written=view.text(node, INTENT.written),
        unit=unit.iri if unit else None,
        tolerance=tolerance,
        tolerance_percent=tolerance_percent,
    )


def load_assertion(view: GraphView, node: Node, vocabulary: Vocabulary) -> Assertion:
    aggregate = Aggregate(view.local(node, INTENT.aggregate))
    scope = _scope(view, node)
    relation = view.local(node, INTENT.standsTo)
    has_expression = bool(view.values(node, INTENT.form))
    return Assertion(
        aggregate=aggregate,
        scope=Scope(
            kind=scope.kind,
            names=scope.names,
            part_kind=scope.part_kind,
            excepted=scope.excepted,
            written=scope_text(scope, vocabulary),
        ),
        characteristic=view.iri(node, INTENT.characteristic),
        expression=load_expression(view, node, vocabulary) if has_expression else Expression(form=Form.ANY),
        relation=Relation(relation.replace("-", " ")) if relation else None,
        other=view.reference(node, INTENT.relatedTo),
    )


def _scope(view: GraphView, node: Node) -> Scope:
    return Scope(
        kind=ScopeKind(view.local(node, INTENT.scope)),
        names=_names(view, node, INTENT.about),
        part_kind=view.iri(node, INTENT.everyKind),
        excepted=_names(view, node, INTENT["except"]),
    )


def _names(view: GraphView, node: Node, property_iri: URIRef) -> tuple[str, ...]:
    """Names of groups and identifiers of parts, in the order of the work."""
    return tuple(view.group_or_identifier(named) for named in view.in_order(view.values(node, property_iri)))


def load_conditions(view: GraphView, node: Node, vocabulary: Vocabulary) -> tuple[Condition, ...]:
    return tuple(
        Condition(
            view.flag(condition, INTENT.unless),
            view.text(condition, INTENT.fact) or None,
            load_assertion(view, condition, vocabulary) if view.values(condition, INTENT.aggregate) else None,
        )
        for condition in sorted(view.values(node, INTENT.condition), key=str)
    )


def load_citations(view: GraphView, node: Node) -> tuple[Citation, ...]:
    return tuple(
        Citation(view.reference(citation, OA.hasSource) or "", _time(view, citation))
        for citation in view.in_order(view.values(node, INTENT.cites))
    )


def _time(view: GraphView, citation: Node) -> str | None:
    for selector in view.values(citation, OA.hasSelector):
        fragment = view.text(selector, RDF.value)
        if fragment.startswith("t="):
            return fragment.removeprefix("t=")
    return None
