"""The log from the record, of a work or of an installation."""

from __future__ import annotations

from rdflib import DCTERMS
from rdflib.term import Node

from intent.model.log_entry import LogEntry
from intent.names import INTENT
from intent.record.load_assertions import load_statements
from intent.record.load_things import concept_of, is_internal
from intent.record.view import GraphView
from intent.vocabulary.terms import Vocabulary


def load_log(view: GraphView, within: Node, vocabulary: Vocabulary) -> tuple[LogEntry, ...]:
    """The entries of one work or installation, in the writer's order."""
    return tuple(
        LogEntry(
            iri=str(found),
            about=view.reference(found, INTENT.happenedTo) or "",
            event=event,
            date=view.date(found, DCTERMS.date),
            value=load_statements(view, found, vocabulary),
            by=view.reference(found, INTENT.by),
            source=view.text(found, INTENT.sourceText),
            note=view.text(found, INTENT.note),
            internal=is_internal(view, found),
        )
        for found in view.of_class(INTENT.LogEntry, within)
        if (event := concept_of(view, found, INTENT.event, vocabulary)) is not None
    )
