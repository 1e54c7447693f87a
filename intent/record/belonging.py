"""Everything that a record describes belongs to it, once: nothing is passed over, and nothing is said twice."""

from __future__ import annotations

import re
from collections.abc import Iterator

from rdflib import DCTERMS, RDF
from rdflib.term import Node

from intent.diagnostics import Diagnostic
from intent.language.message import say
from intent.names import INTENT
from intent.record.declared import short_name
from intent.record.indexed import IndexedGraph
from intent.record.ontology import Ontology
from intent.record.places import Places

_ROOTS = frozenset({INTENT.Work, INTENT.Installation})
_WHOLES = (DCTERMS.isPartOf, INTENT.inHeading)
"""What a thing is part of; what has neither is a detail of what names it."""
_OWN = (
    INTENT.states,
    INTENT.condition,
    INTENT.section,
    INTENT.cites,
    INTENT.atVenue,
    INTENT.whole,
    INTENT.takesAsGiven,
)
"""What joins a thing with a detail that is its own and no other's; equal values, though, are shared."""
_NUMBERED = re.compile(r"[.][1-9][0-9]*")


def stray_things(data: IndexedGraph, places: Places, ontology: Ontology, which: str) -> Iterator[Diagnostic]:
    """Things that belong to no work and no installation of the graph, so that nobody would see them."""
    roots = frozenset(node for kind in _ROOTS for node in data.subjects(RDF.type, kind))
    found = set(roots)
    if (
        which == "installation"
    ):  # a pool is not in the graph, and its devices are there for whoever names them
        found.update(data.subjects(RDF.type, INTENT.Device))
    described = ontology.with_wider(ontology.classes).union(*ontology.domains.values())
    waiting = list(found)
    while waiting:
        node = waiting.pop()
        wholes = _WHOLES if node in roots else _WHOLES[1:]
        parts = [part for whole in wholes for part in data.by_value.get(whole, {}).get(node, ())]
        for detail in (*parts, *_details(data, node)):
            if detail not in found:
                found.add(detail)
                waiting.append(detail)
    stray = {
        node: None
        for node, said in data.by_subject.items()
        if node not in found and described.intersection(said.get(RDF.type, ()))
    }
    below = {detail for node in stray for detail in _below(data, node) if detail != node}
    message = say(
        "this belongs to nothing in the record, so nobody would see it; say what it is part of, or leave it out"
    )
    yield from (
        places.finding("stray", message, node) for node in [one for one in stray if one not in below] or stray
    )


def _below(data: IndexedGraph, node: Node) -> Iterator[Node]:
    """What stands and falls with a thing: its lines, and its details."""
    yield from data.by_value.get(INTENT.inHeading, {}).get(node, ())
    yield from _details(data, node)


def _details(data: IndexedGraph, node: Node) -> Iterator[Node]:
    """What a thing names that is described here and is part of nothing else."""
    for values in data.by_subject.get(node, {}).values():
        for value in values:
            said = data.by_subject.get(value)
            if said is not None and not any(whole in said for whole in _WHOLES):
                yield value


def shared_details(data: IndexedGraph, places: Places) -> Iterator[Diagnostic]:
    """Statements, conditions and the like that two things have: whichever was meant, the other was not."""
    for joint in _OWN:
        for detail, having in data.by_value.get(joint, {}).items():
            if len(having) > 1:
                message = say(
                    "this is said of {one} and of {other}; give each a statement of its own",
                    one=places.name(min(having, key=str)),
                    other=places.name(max(having, key=str)),
                )
                yield places.finding("shared-detail", message, detail)


def repeated_statements(data: IndexedGraph, places: Places) -> Iterator[Diagnostic]:
    """Things of which one characteristic is stated twice: which of the two counts, nobody has said."""
    for bearer, said in data.by_subject.items():
        first: dict[Node, Node] = {}
        for statement in said.get(INTENT.states, ()):
            for characteristic in data.objects(statement, INTENT.characteristic):
                if first.setdefault(characteristic, statement) != statement:
                    message = say(
                        "`{characteristic}` is stated twice of this; keep the statement that holds",
                        characteristic=short_name(characteristic),
                    )
                    yield places.finding("repeated-statement", message, bearer)


def misnumbered_lines(data: IndexedGraph, places: Places) -> Iterator[Diagnostic]:
    """Lines whose identifier is not that of their heading with a number: `R1.2` stands under `R1`."""
    for heading, lines in data.by_value.get(INTENT.inHeading, {}).items():
        named = [str(one) for one in data.objects(heading, DCTERMS.identifier)]
        for line in lines:
            for identifier in data.objects(line, DCTERMS.identifier):
                number = str(identifier).removeprefix(named[0]) if named else ""
                if named and not (number != str(identifier) and _NUMBERED.fullmatch(number)):
                    message = say(
                        "this stands under {heading}, and its identifier says otherwise; "
                        "a line of {heading} is called `{heading}.1`, `{heading}.2` and so on",
                        heading=named[0],
                    )
                    yield places.finding("misnumbered-line", message, line)
