"""A task from the record."""

from __future__ import annotations

from rdflib import RDFS
from rdflib.term import Node

from intent.model.task import Task
from intent.names import INTENT
from intent.record.load_things import is_internal
from intent.record.view import GraphView


def load_task(view: GraphView, node: Node) -> Task:
    works_on = view.in_order(view.values(node, INTENT.worksOn))
    return Task(
        iri=str(node),
        identifier=view.identifier(node),
        what=view.text(node, RDFS.label),
        parts=tuple(view.group_or_identifier(part) for part in works_on),
        after=view.identifiers(node, INTENT.after),
        people=view.whole(node, INTENT.peopleNeeded),
        time=view.text(node, INTENT.timeNeeded),
        by=view.text(node, INTENT.doneBy),
        note=view.text(node, INTENT.note),
        internal=is_internal(view, node),
    )
