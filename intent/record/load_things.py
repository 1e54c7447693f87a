"""What a work and an installation both have, from the record: parts, devices, sections, and fields as written."""

from __future__ import annotations

from rdflib import RDFS, Literal, URIRef
from rdflib.term import Node

from intent.model.work import Connection, Crate, Device, Part, Section
from intent.names import INTENT, TERM
from intent.record.load_assertions import load_statements
from intent.record.view import GraphView
from intent.vocabulary.form_terms import FormField
from intent.vocabulary.terms import Concept, Vocabulary

_WRITTEN = frozenset({"text", "date", "file", "iri", "digest", "actor"})
"""The sorts of field that are kept as written."""


def fields_of(view: GraphView, node: Node, vocabulary: Vocabulary, *sections: str) -> dict[str, str]:
    """The fields of a node that are kept as written, by their property; of certain sections, or of any."""
    stated = {str(predicate) for predicate in view.subjects.get(node, ())}
    wanted = frozenset(str(TERM[section]) for section in sections)
    return {
        form.property: _as_written(view, node, form)
        for form in vocabulary.fields.values()
        if form.property in stated and form.reads in _WRITTEN and (not wanted or wanted & form.sections)
    }


def _as_written(view: GraphView, node: Node, form: FormField) -> str:
    """The text of a field; of somebody whom it names, the name."""
    found = view.one(node, URIRef(form.property))
    if form.reads == "actor" and found is not None:
        return view.text(found, RDFS.label)
    return "" if found is None else str(found)


def load_sections(view: GraphView, node: Node, vocabulary: Vocabulary) -> tuple[Section, ...]:
    return tuple(
        Section(
            iri=str(section),
            term=view.text(section, INTENT.sectionTerm),
            note=view.text(section, INTENT.note),
            afterword=view.text(section, INTENT.afterword),
            fields=fields_of(view, section, vocabulary),
            internal=is_internal(view, section),
        )
        for section in view.in_order(view.values(node, INTENT.section))
    )


def is_internal(view: GraphView, node: Node) -> bool:
    return TERM.internal in view.values(node, INTENT.keep)


def concept_of(view: GraphView, node: Node, property_iri: URIRef, vocabulary: Vocabulary) -> Concept | None:
    return vocabulary.concepts.get(view.text(node, property_iri))


def kind_of(view: GraphView, node: Node, vocabulary: Vocabulary) -> Concept:
    iri = view.text(node, INTENT.kind)
    return vocabulary.concepts.get(iri) or Concept(iri=iri, labels={}, names=())


def load_part(view: GraphView, node: Node, vocabulary: Vocabulary) -> Part:
    group = view.one(node, INTENT.inGroup)
    return Part(
        iri=str(node),
        identifier=view.identifier(node),
        kind=kind_of(view, node, vocabulary),
        name=view.text(node, RDFS.label),
        group=view.group_or_identifier(group) if group is not None else None,
        device=view.reference(node, INTENT.device),
        statements=load_statements(view, node, vocabulary),
        note=view.text(node, INTENT.note),
        internal=is_internal(view, node),
    )


def load_device(view: GraphView, node: Node, vocabulary: Vocabulary) -> Device:
    return Device(
        iri=str(node),
        identifier=view.identifier(node),
        like=view.reference(node, INTENT.like),
        status=concept_of(view, node, INTENT.status, vocabulary),
        statements=load_statements(view, node, vocabulary),
        fields=fields_of(view, node, vocabulary, "devices-section"),
        internal=is_internal(view, node),
        listed=bool(view.values(node, INTENT.order)),
    )


def load_connection(view: GraphView, node: Node, vocabulary: Vocabulary) -> Connection:
    return Connection(
        iri=str(node),
        start=view.reference(node, INTENT["from"]) or "",
        end=view.reference(node, INTENT.to) or "",
        statements=load_statements(view, node, vocabulary),
        note=view.text(node, INTENT.note),
        internal=is_internal(view, node),
    )


def load_box(view: GraphView, node: Node, vocabulary: Vocabulary) -> Crate:
    return Crate(
        iri=str(node),
        identifier=view.identifier(node),
        holds=tuple(
            view.group_or_identifier(held)
            for held in view.in_order(view.values(node, INTENT.holds))
            if not isinstance(held, Literal)
        ),
        accessories=tuple(
            sorted(str(held) for held in view.values(node, INTENT.holds) if isinstance(held, Literal))
        ),
        statements=load_statements(view, node, vocabulary),
        fields=fields_of(view, node, vocabulary, "boxes-section"),
        internal=is_internal(view, node),
    )
