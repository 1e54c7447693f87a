"""An installation from the record, beside the work that it is of."""

from __future__ import annotations

from collections.abc import Iterable

from rdflib import DCTERMS, URIRef
from rdflib.term import Node

from intent.model.assertions import Expression
from intent.model.installation import Attestation, Change, Consent, Installation, Omission, Substitution
from intent.model.work import Device, Work
from intent.names import INTENT, Triple
from intent.record.load_assertions import load_expression, load_statements
from intent.record.load_log import load_log
from intent.record.load_things import (
    concept_of,
    fields_of,
    load_box,
    load_connection,
    load_device,
    load_part,
    load_sections,
)
from intent.record.view import GraphView, view_of
from intent.vocabulary.terms import Vocabulary


def load_installation(
    graph: Iterable[Triple],
    installation: str,
    work: Work,
    work_graph: Iterable[Triple],
    pool: Iterable[Triple] = (),
) -> Installation:
    """The installation of this IRI, from a graph that its shapes accept. Raises ``ValueError`` without dates."""
    view, node = view_of(graph, work_graph, pool), URIRef(installation)
    dates = view.date(node, INTENT.dates)
    if dates is None:
        raise ValueError("the installation has no dates")
    vocabulary = work.vocabulary
    return Installation(
        iri=installation,
        title=view.text(node, DCTERMS.title),
        dates=dates,
        work=view.text(node, INTENT.ofWork),
        status=concept_of(view, node, INTENT.status, vocabulary),
        venue=view.text(node, INTENT.venueName),
        by=view.reference(node, INTENT.by),
        fields=fields_of(view, node, vocabulary, "installation-head"),
        note=view.text(node, INTENT.note),
        sections=load_sections(view, node, vocabulary),
        venue_statements=load_statements(view, view.one(node, INTENT.atVenue) or node, vocabulary),
        work_statements=load_statements(view, view.one(node, INTENT.whole) or node, vocabulary),
        substitutions=tuple(
            _substitution(view, found, vocabulary) for found in view.of_class(INTENT.Substitution, node)
        ),
        changes=tuple(
            Change(
                iri=str(found),
                part=view.reference(found, INTENT.part) or "",
                statements=load_statements(view, found, vocabulary),
                note=view.text(found, INTENT.note),
            )
            for found in view.of_class(INTENT.Change, node)
        ),
        omissions=tuple(
            Omission(str(found), view.reference(found, INTENT.part) or "", view.text(found, INTENT.reason))
            for found in view.of_class(INTENT.Omission, node)
        ),
        additions=tuple(load_part(view, part, vocabulary) for part in view.of_class(INTENT.Part, node)),
        devices=_devices(view, node, work, vocabulary),
        consents=tuple(_consent(view, found, vocabulary) for found in view.of_class(INTENT.Consent, node)),
        attestations=tuple(_attestation(view, found) for found in view.of_class(INTENT.Attestation, node)),
        connections=tuple(
            load_connection(view, found, vocabulary) for found in view.of_class(INTENT.Connection, node)
        ),
        boxes=tuple(load_box(view, box, vocabulary) for box in view.of_class(INTENT.Box, node)),
        log=load_log(view, node, vocabulary),
    )


def _devices(view: GraphView, node: URIRef, work: Work, vocabulary: Vocabulary) -> tuple[Device, ...]:
    """Devices that the work does not know: of the pool, or named in the proposal alone."""
    known = {device.iri for device in work.devices}
    found = [device for device in view.of_class(INTENT.Device) if str(device) not in known]
    return tuple(load_device(view, device, vocabulary) for device in found)


def _substitution(view: GraphView, node: Node, vocabulary: Vocabulary) -> Substitution:
    return Substitution(
        iri=str(node),
        part=view.reference(node, INTENT.part) or "",
        device=view.reference(node, INTENT.device),
        statements=load_statements(view, node, vocabulary),
        note=view.text(node, INTENT.note),
    )


def _consent(view: GraphView, node: Node, vocabulary: Vocabulary) -> Consent:
    has_answer = bool(view.values(node, INTENT.answer))
    return Consent(
        iri=str(node),
        person=view.reference(node, INTENT.person) or "",
        to=view.identifiers(node, INTENT.consentsTo),
        answer=view.flag(node, INTENT.answer) if has_answer else None,
        parts=tuple(view.identifier(part) for part in view.in_order(view.values(node, INTENT["for"]))),
        value=_value(view, node, vocabulary),
        terms=tuple(sorted(str(terms) for terms in view.values(node, INTENT.terms))),
        date=view.date(node, DCTERMS.date),
        until=view.date(node, INTENT.until),
        source=view.text(node, INTENT.sourceText),
        note=view.text(node, INTENT.note),
    )


def _attestation(view: GraphView, node: Node) -> Attestation:
    return Attestation(
        iri=str(node),
        fact=view.text(node, INTENT.fact),
        holds=view.flag(node, INTENT.answer),
        by=view.reference(node, INTENT.by),
        date=view.date(node, DCTERMS.date),
        source=view.text(node, INTENT.sourceText),
        note=view.text(node, INTENT.note),
    )


def _value(view: GraphView, node: Node, vocabulary: Vocabulary) -> Expression | None:
    return load_expression(view, node, vocabulary) if view.values(node, INTENT.form) else None
