"""An expectation from the record, with the answers that it takes as given."""

from __future__ import annotations

from dataclasses import replace

from rdflib import DCTERMS
from rdflib.term import Node

from intent.model.assertions import Scope, ScopeKind
from intent.model.expectation import Expectation, GivenAnswer
from intent.model.instruction_text import scope_text
from intent.names import INTENT
from intent.record.load_assertions import load_statements
from intent.record.load_things import is_internal
from intent.record.view import GraphView
from intent.vocabulary.terms import Vocabulary

_WHOLES = {INTENT[kind]: kind for kind in (ScopeKind.WORK, ScopeKind.VENUE)}


def load_expectation(view: GraphView, node: Node, vocabulary: Vocabulary) -> Expectation:
    scope = _scope(view, node)
    given = view.in_order(view.values(node, INTENT.takesAsGiven))
    return Expectation(
        iri=str(node),
        scope=replace(scope, written=scope_text(scope, vocabulary)),
        value=load_statements(view, node, vocabulary),
        given=tuple(_answer(view, found) for found in given),
        on=view.date(node, DCTERMS.date),
        verdict=view.text(node, INTENT.verdict),
        note=view.text(node, INTENT.note),
        internal=is_internal(view, node),
    )


def _scope(view: GraphView, node: Node) -> Scope:
    about = view.one(node, INTENT.expectedOf)
    kind = next((kind for term, kind in _WHOLES.items() if term == about), None)
    if kind is not None or about is None:
        return Scope(kind=kind or ScopeKind.NAMES)
    return Scope(kind=ScopeKind.NAMES, names=(view.group_or_identifier(about),))


def _answer(view: GraphView, node: Node) -> GivenAnswer:
    return GivenAnswer(
        holds=view.flag(node, INTENT.answer),
        fact=view.text(node, INTENT.fact),
        person=view.reference(node, INTENT.person),
        to=view.identifiers(node, INTENT.consentsTo),
    )
