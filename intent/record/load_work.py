"""A work from the record."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from rdflib import DCTERMS, RDFS, URIRef
from rdflib.term import Node

from intent.model.phrasing import sentence_words
from intent.model.work import (
    Connection,
    Crate,
    Device,
    Group,
    Heading,
    Instruction,
    Material,
    Modality,
    Part,
    Person,
    Section,
    Source,
    Work,
)
from intent.names import INTENT, TERM
from intent.record.load_assertions import load_assertion, load_citations, load_conditions, load_statements
from intent.record.view import Triple, GraphView, view_of
from intent.vocabulary.terms import Concept, Vocabulary

OBSERVED_PRACTICE = 6
"""The rank of an instruction that nobody is said to have given."""


def load_work(graph: Iterable[Triple], work: str, vocabulary: Vocabulary) -> Work:
    """The work of this IRI, from a graph that its shapes accept."""
    view, node = view_of(graph), URIRef(work)
    people = tuple(_person(view, person, vocabulary) for person in view.of_class(INTENT.Person, node))
    headings = {
        heading.iri: heading
        for heading in (_heading(view, found) for found in view.of_class(INTENT.Heading, node))
    }
    sources = {
        source.identifier: source
        for source in (_source(view, found, vocabulary) for found in view.of_class(INTENT.Source, node))
    }
    return Work(
        iri=work,
        title=view.text(node, DCTERMS.title),
        vocabulary=vocabulary,
        fields=head_fields(view, node, vocabulary, "work-head"),
        note=view.text(node, INTENT.note),
        sections=load_sections(view, node, vocabulary),
        people=people,
        groups=tuple(_group(view, group, vocabulary) for group in view.of_class(INTENT.Group, node)),
        parts=tuple(load_part(view, part, vocabulary) for part in view.of_class(INTENT.Part, node)),
        devices=tuple(load_device(view, device, vocabulary) for device in view.of_class(INTENT.Device, node)),
        sources=tuple(sources.values()),
        headings=tuple(headings.values()),
        instructions=tuple(
            _instruction(view, line, heading, _cited(heading, sources), vocabulary)
            for line in view.of_class(INTENT.Instruction)
            if (heading := headings.get(view.text(line, INTENT.inHeading))) is not None
        ),
        material=tuple(_material(view, found, vocabulary) for found in view.of_class(INTENT.Material, node)),
        connections=tuple(
            _connection(view, found, vocabulary) for found in view.of_class(INTENT.Connection, node)
        ),
        boxes=tuple(_box(view, box, vocabulary) for box in view.of_class(INTENT.Box, node)),
        statements=load_statements(view, node, vocabulary),
    )


def head_fields(view: GraphView, node: Node, vocabulary: Vocabulary, head: str) -> dict[str, str]:
    """The fields of a head as written, by the IRI of their property."""
    return fields_of(view, node, vocabulary, head)


_WRITTEN = frozenset({"text", "date", "file", "iri", "digest"})
"""The sorts of field that are kept as written."""


def fields_of(view: GraphView, node: Node, vocabulary: Vocabulary, *sections: str) -> dict[str, str]:
    """The fields of a node that are kept as written, by their property; of certain sections, or of any."""
    stated = {str(predicate) for predicate in view.subjects.get(node, ())}
    wanted = frozenset(str(TERM[section]) for section in sections)
    return {
        form.property: view.text(node, URIRef(form.property))
        for form in vocabulary.fields.values()
        if form.property in stated and form.reads in _WRITTEN and (not wanted or wanted & form.sections)
    }


def load_sections(view: GraphView, node: Node, vocabulary: Vocabulary) -> tuple[Section, ...]:
    return tuple(
        Section(
            str(section),
            view.text(section, INTENT.sectionTerm),
            view.text(section, INTENT.note),
            view.text(section, INTENT.afterword),
            fields_of(view, section, vocabulary),
            is_internal(view, section),
        )
        for section in view.in_order(view.values(node, INTENT.section))
    )


def is_internal(view: GraphView, node: Node) -> bool:
    return TERM.internal in view.values(node, INTENT.keep)


def concept_of(view: GraphView, node: Node, property_iri: URIRef, vocabulary: Vocabulary) -> Concept | None:
    return vocabulary.concepts.get(view.text(node, property_iri))


def kind_of(view: GraphView, node: Node, vocabulary: Vocabulary) -> Concept:
    iri = view.text(node, INTENT.kind)
    return vocabulary.concepts.get(iri) or Concept(iri, {}, ())


def _person(view: GraphView, node: Node, vocabulary: Vocabulary) -> Person:
    role = concept_of(view, node, INTENT.role, vocabulary) or Concept(view.text(node, INTENT.role), {}, ())
    return Person(
        str(node),
        view.identifier(node),
        view.text(node, RDFS.label),
        role,
        view.whole(node, INTENT.authority) or role.authority or OBSERVED_PRACTICE,
        view.date(node, INTENT.since),
        view.date(node, INTENT.until),
        view.reference(node, INTENT.successor),
        view.text(node, INTENT.contact),
        is_internal(view, node),
        view.text(node, INTENT.note),
    )


def _group(view: GraphView, node: Node, vocabulary: Vocabulary) -> Group:
    return Group(
        str(node),
        view.text(node, RDFS.label),
        concept_of(view, node, INTENT.kind, vocabulary),
        view.text(node, INTENT.note),
        view.text(node, INTENT.afterword),
    )


def load_part(view: GraphView, node: Node, vocabulary: Vocabulary) -> Part:
    group = view.one(node, INTENT.inGroup)
    return Part(
        str(node),
        view.identifier(node),
        kind_of(view, node, vocabulary),
        view.text(node, RDFS.label),
        view.group_or_identifier(group) if group is not None else None,
        view.reference(node, INTENT.device),
        load_statements(view, node, vocabulary),
        view.text(node, INTENT.note),
        is_internal(view, node),
    )


def load_device(view: GraphView, node: Node, vocabulary: Vocabulary) -> Device:
    return Device(
        str(node),
        view.identifier(node),
        view.reference(node, INTENT.like),
        concept_of(view, node, INTENT.status, vocabulary),
        load_statements(view, node, vocabulary),
        fields_of(view, node, vocabulary, "devices-section"),
        is_internal(view, node),
        bool(view.values(node, INTENT.order)),
    )


def _source(view: GraphView, node: Node, vocabulary: Vocabulary) -> Source:
    return Source(
        str(node),
        view.identifier(node),
        view.text(node, DCTERMS.title),
        concept_of(view, node, INTENT.sourceKind, vocabulary),
        view.identifiers(node, INTENT["with"]),
        view.identifiers(node, INTENT.by),
        view.date(node, DCTERMS.date),
        view.text(node, INTENT.file) or None,
        view.reference(node, INTENT.reportedBy),
        fields_of(view, node, vocabulary, "sources-section"),
        view.text(node, INTENT.words),
        view.text(node, INTENT.note),
        is_internal(view, node),
    )


def _heading(view: GraphView, node: Node) -> Heading:
    return Heading(
        str(node),
        view.identifier(node),
        view.text(node, DCTERMS.title),
        view.text(node, INTENT.words),
        view.text(node, INTENT.reason),
        view.reference(node, INTENT.by),
        view.date(node, DCTERMS.date),
        ground_of(view, node),
        view.date(node, INTENT.withdrawn),
        view.identifiers(node, INTENT.supersedes),
        load_citations(view, node),
        view.text(node, INTENT.note),
    )


def ground_of(view: GraphView, node: Node) -> str | None:
    """A ground's plain word: the last step of its term's IRI."""
    ground = view.text(node, INTENT.ground)
    return ground.removeprefix(str(TERM)).removeprefix("ground-") or None


def _instruction(
    view: GraphView, node: Node, heading: Heading, cited: Sequence[Source], vocabulary: Vocabulary
) -> Instruction:
    """A line with what its heading shares; without person or date, those of the first source that has them."""
    assertion = load_assertion(view, node, vocabulary)
    conditions = load_conditions(view, node, vocabulary)
    until, consents = view.date(node, INTENT.until), view.identifiers(node, INTENT.withConsentOf)
    choice = view.whole(node, INTENT.choice)
    speakers = [person for source in cited for person in (*source.spoken_with, *source.by)]
    dates = [source.date for source in cited if source.date]
    return Instruction(
        str(node),
        view.identifier(node),
        heading.identifier,
        Modality(view.local(node, INTENT.modality)),
        assertion,
        sentence_words(assertion, vocabulary, conditions, consents, until, choice),
        conditions,
        until,
        consents,
        choice,
        heading.by or next(iter(speakers), None),
        heading.on or next(iter(dates), None),
        heading.ground or "intent",
        heading.withdrawn,
        heading.supersedes,
        heading.sources,
    )


def _cited(heading: Heading, sources: Mapping[str, Source]) -> list[Source]:
    return [sources[citation.source] for citation in heading.sources if citation.source in sources]


def _material(view: GraphView, node: Node, vocabulary: Vocabulary) -> Material:
    return Material(
        str(node),
        view.identifier(node),
        load_statements(view, node, vocabulary),
        view.text(node, RDFS.label),
        view.text(node, INTENT.file) or None,
        view.text(node, INTENT.note),
        is_internal(view, node),
    )


def _connection(view: GraphView, node: Node, vocabulary: Vocabulary) -> Connection:
    return Connection(
        str(node),
        view.reference(node, INTENT["from"]) or "",
        view.reference(node, INTENT.to) or "",
        load_statements(view, node, vocabulary),
        view.text(node, INTENT.note),
        is_internal(view, node),
    )


def _box(view: GraphView, node: Node, vocabulary: Vocabulary) -> Crate:
    return Crate(
        str(node),
        view.identifier(node),
        tuple(view.group_or_identifier(held) for held in view.in_order(view.values(node, INTENT.holds))),
        load_statements(view, node, vocabulary),
        fields_of(view, node, vocabulary, "boxes-section"),
        is_internal(view, node),
    )
