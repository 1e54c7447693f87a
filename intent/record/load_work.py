"""A work from the record."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from rdflib import DCTERMS, RDF, RDFS, URIRef
from rdflib.term import Node

from intent.model.authority import OBSERVED_PRACTICE_RANK
from intent.model.duty import Duty
from intent.model.instruction_text import sentence_text
from intent.model.work import (
    Group,
    Heading,
    Instruction,
    Material,
    Modality,
    Person,
    Source,
    Work,
)
from intent.names import INTENT, TERM, Triple
from intent.record.load_assertions import load_assertion, load_citations, load_conditions, load_statements
from intent.record.load_duty import load_duty
from intent.record.load_expectation import load_expectation
from intent.record.load_log import load_log
from intent.record.load_task import load_task
from intent.record.load_things import (
    concept_of,
    fields_of,
    is_internal,
    load_box,
    load_connection,
    load_device,
    load_part,
    load_sections,
)
from intent.record.view import GraphView, view_of
from intent.values.dates import DaySpan
from intent.vocabulary.actors import actor_of
from intent.vocabulary.terms import Concept, Vocabulary


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
        fields=fields_of(view, node, vocabulary, "work-head"),
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
        duties=tuple(
            _given(load_duty(view, line, heading, vocabulary), heading, _cited(heading, sources))
            for line in view.of_class(INTENT.Duty)
            if (heading := headings.get(view.text(line, INTENT.inHeading))) is not None
        ),
        material=tuple(_material(view, found, vocabulary) for found in view.of_class(INTENT.Material, node)),
        connections=tuple(
            load_connection(view, found, vocabulary) for found in view.of_class(INTENT.Connection, node)
        ),
        boxes=tuple(load_box(view, box, vocabulary) for box in view.of_class(INTENT.Box, node)),
        log=load_log(view, node, vocabulary),
        tasks=tuple(load_task(view, task) for task in view.of_class(INTENT.Task, node)),
        expectations=tuple(
            load_expectation(view, found, vocabulary) for found in view.of_class(INTENT.Expectation, node)
        ),
        statements=load_statements(view, node, vocabulary),
    )


def _person(view: GraphView, node: Node, vocabulary: Vocabulary) -> Person:
    role = concept_of(view, node, INTENT.role, vocabulary) or Concept(
        iri=view.text(node, INTENT.role), labels={}, names=()
    )
    return Person(
        iri=str(node),
        identifier=view.identifier(node),
        name=view.text(node, RDFS.label),
        role=role,
        actor=actor_of(frozenset(map(str, view.values(node, RDF.type))), vocabulary),
        called=view.text(node, INTENT.called),
        authority=view.whole(node, INTENT.authority) or role.authority or OBSERVED_PRACTICE_RANK,
        since=view.date(node, INTENT.since),
        until=view.date(node, INTENT.until),
        successor=view.reference(node, INTENT.successor),
        contact=view.text(node, INTENT.contact),
        contact_leaves=view.flag(node, INTENT.contactLeaves)
        if view.values(node, INTENT.contactLeaves)
        else None,
        internal=is_internal(view, node),
        note=view.text(node, INTENT.note),
    )


def _group(view: GraphView, node: Node, vocabulary: Vocabulary) -> Group:
    return Group(
        iri=str(node),
        name=view.text(node, RDFS.label),
        kind=concept_of(view, node, INTENT.kind, vocabulary),
        note=view.text(node, INTENT.note),
        afterword=view.text(node, INTENT.afterword),
    )


def _source(view: GraphView, node: Node, vocabulary: Vocabulary) -> Source:
    return Source(
        iri=str(node),
        identifier=view.identifier(node),
        title=view.text(node, DCTERMS.title),
        kind=concept_of(view, node, INTENT.sourceKind, vocabulary),
        spoken_with=view.identifiers(node, INTENT["with"]),
        by=view.identifiers(node, INTENT.by),
        date=view.date(node, DCTERMS.date),
        file=view.text(node, INTENT.file) or None,
        reported_by=view.reference(node, INTENT.reportedBy),
        fields=fields_of(view, node, vocabulary, "sources-section"),
        words=view.text(node, INTENT.words),
        note=view.text(node, INTENT.note),
        internal=is_internal(view, node),
    )


def _heading(view: GraphView, node: Node) -> Heading:
    return Heading(
        iri=str(node),
        identifier=view.identifier(node),
        title=view.text(node, DCTERMS.title),
        words=view.text(node, INTENT.words),
        reason=view.text(node, INTENT.reason),
        by=view.reference(node, INTENT.by),
        on=view.date(node, DCTERMS.date),
        ground=ground_of(view, node),
        withdrawn=view.date(node, INTENT.withdrawn),
        supersedes=view.identifiers(node, INTENT.supersedes),
        lifted_by=_lifted_by(view, node),
        sources=load_citations(view, node),
        note=view.text(node, INTENT.note),
    )


def _lifted_by(view: GraphView, node: Node) -> tuple[str, ...] | None:
    named = view.values(node, INTENT.liftedBy)
    if not named:
        return None
    return () if INTENT.nobody in named else view.identifiers(node, INTENT.liftedBy)


def ground_of(view: GraphView, node: Node) -> str:
    """A ground's plain word: the last step of its term's IRI."""
    ground = view.text(node, INTENT.ground)
    return ground.removeprefix(str(TERM)).removeprefix("ground-")


def _instruction(
    view: GraphView, node: Node, heading: Heading, cited: Sequence[Source], vocabulary: Vocabulary
) -> Instruction:
    """A line with what its heading shares."""
    by, on = _giver(heading, cited)
    line = Instruction(
        iri=str(node),
        identifier=view.identifier(node),
        heading=heading.identifier,
        modality=Modality(view.local(node, INTENT.modality)),
        assertion=load_assertion(view, node, vocabulary),
        written=view.text(node, INTENT.written),
        words=view.text(node, INTENT.words),
        conditions=load_conditions(view, node, vocabulary),
        until=view.date(node, INTENT.until),
        consents=view.identifiers(node, INTENT.withConsentOf),
        choice=view.whole(node, INTENT.choice),
        by=by,
        on=on,
        ground=heading.ground,
        withdrawn=heading.withdrawn,
        supersedes=heading.supersedes,
        lifted_by=heading.lifted_by,
        sources=heading.sources,
    )
    return replace(line, sentence=sentence_text(line, vocabulary))


def _given(duty: Duty, heading: Heading, cited: Sequence[Source]) -> Duty:
    by, on = _giver(heading, cited)
    return replace(duty, by=by, on=on)


def _giver(heading: Heading, cited: Sequence[Source]) -> tuple[str | None, DaySpan | None]:
    """Who gave what stands under a heading, and when; where it does not say, as the first source that does."""
    speakers = (person for source in cited for person in (*source.spoken_with, *source.by))
    dates = (source.date for source in cited if source.date)
    return heading.by or next(speakers, None), heading.on or next(dates, None)


def _cited(heading: Heading, sources: Mapping[str, Source]) -> list[Source]:
    return [sources[citation.source] for citation in heading.sources if citation.source in sources]


def _material(view: GraphView, node: Node, vocabulary: Vocabulary) -> Material:
    return Material(
        iri=str(node),
        identifier=view.identifier(node),
        statements=load_statements(view, node, vocabulary),
        name=view.text(node, RDFS.label),
        file=view.text(node, INTENT.file) or None,
        note=view.text(node, INTENT.note),
        internal=is_internal(view, node),
    )
