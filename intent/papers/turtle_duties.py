"""The duties of a showing as Turtle: which they are, on what days, of whom, and what is attested of them."""

from __future__ import annotations

from rdflib import DCTERMS, RDF, Graph, Literal, URIRef

from intent.model.instruction_text import condition_text
from intent.names import INTENT, local_iri
from intent.planning.duties_due import DueDuty, duties_due
from intent.variance.result import Variance


def add_duties(graph: Graph, whole: URIRef, variance: Variance) -> None:
    """Each duty that is in force for the showing; none of them counts in the outcome."""
    for place, due in enumerate(duties_due(variance.work, variance.installation), start=1):
        node = local_iri(variance.installation.iri, "variance", f"duty-{place}")
        graph.add((whole, INTENT.due, node))
        _add_due(graph, node, due, variance)


def _add_due(graph: Graph, node: URIRef, due: DueDuty, variance: Variance) -> None:
    duty, days = due.duty, due.days
    graph.add((node, RDF.type, INTENT.DueDuty))
    graph.add((node, INTENT.dutyDue, URIRef(duty.iri)))
    graph.add((node, DCTERMS.description, Literal(duty.what)))
    graph.add((node, INTENT.isDone, Literal(due.is_done)))
    person = variance.work.person(due.person)
    whose = person.iri if person else duty.role
    if whose:
        graph.add((node, INTENT.dutyOf, URIRef(whose)))
    if days.first:
        graph.add((node, INTENT.firstDay, Literal(days.first)))
    if days.last:
        graph.add((node, INTENT.lastDay, Literal(days.last)))
    if duty.timing.every is not None:
        graph.add((node, INTENT.everyDays, Literal(duty.timing.every)))
        graph.add((node, INTENT.timesDone, Literal(due.times_done)))
        if due.times is not None:
            graph.add((node, INTENT.timesDue, Literal(due.times)))
    for condition in due.open:
        text = condition_text(condition, variance.work.vocabulary)
        graph.add((node, INTENT.openCondition, Literal(text, lang="en")))
