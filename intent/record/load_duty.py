"""A duty from the record."""

from __future__ import annotations

from dataclasses import replace

from rdflib import RDF
from rdflib.term import Node

from intent.model.duty import Duty, Moment, Phase, Timing
from intent.model.instruction_text import duty_text
from intent.model.work import Heading
from intent.names import INTENT
from intent.record.load_assertions import load_conditions
from intent.record.view import GraphView
from intent.vocabulary.terms import Vocabulary


def load_duty(view: GraphView, node: Node, heading: Heading, vocabulary: Vocabulary) -> Duty:
    """A duty with what its heading says of itself; who gave it and when the caller adds, as for an instruction."""
    who = view.one(node, INTENT.dutyOf)
    is_person = who is not None and INTENT.Person in view.values(who, RDF.type)
    duty = Duty(
        iri=str(node),
        identifier=view.identifier(node),
        heading=heading.identifier,
        what=view.text(node, INTENT.toBeDone),
        person=view.identifier(who) if who is not None and is_person else None,
        role=str(who) if who is not None and not is_person else None,
        timing=_timing(view, node),
        conditions=load_conditions(view, node, vocabulary),
        until=view.date(node, INTENT.until),
        written=view.text(node, INTENT.written),
        words=view.text(node, INTENT.words),
        ground=heading.ground,
        withdrawn=heading.withdrawn,
        sources=heading.sources,
    )
    return replace(duty, sentence=duty_text(duty, vocabulary))


def _timing(view: GraphView, node: Node) -> Timing:
    phase = view.local(node, INTENT.inPhase).removesuffix("-the-showing")
    moment = view.local(node, INTENT.countedFrom).removeprefix("the-")
    return Timing(
        phase=Phase(phase) if phase else None,
        every=view.whole(node, INTENT.everyDays),
        within=view.whole(node, INTENT.withinDays),
        of=Moment(moment) if moment else None,
    )
