"""Whether each thing in a graph can bear what is said of it: a wall colour is a venue's, a lens no loudspeaker's.

In a dossier the section of a table says whose the columns are; in a graph from elsewhere anything may be said of
anything, and would be passed over in silence.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from rdflib import RDF
from rdflib.term import Node

from intent.diagnostics import Diagnostic
from intent.dossier.bearers import bearers_of
from intent.language.message import Joint, listed, named, say
from intent.names import INTENT
from intent.record.indexed import IndexedGraph
from intent.record.ontology import Ontology
from intent.record.places import Places
from intent.vocabulary.terms import Characteristic, Vocabulary


def misborne_statements(
    data: IndexedGraph, places: Places, ontology: Ontology, vocabulary: Vocabulary
) -> Iterator[Diagnostic]:
    """Statements of a characteristic about something that cannot have it; classes that bear nothing are left alone."""
    for holder, _, characteristic in _statements(data, vocabulary):
        bearers = _bearers(data, ontology, holder)
        if bearers and not characteristic.bearers & bearers:
            message = say(
                "{characteristic} is said of a {bearers}, not of this",
                characteristic=characteristic,
                bearers=bearers_of(characteristic),
            )
            yield places.finding("misborne", message, holder)


def _bearers(data: IndexedGraph, ontology: Ontology, holder: Node) -> frozenset[str]:
    """Whose a characteristic can be that is stated by this; of an expectation, by what it is expected of."""
    about = [*data.objects(holder, INTENT.expectedOf)]
    kinds = [_WHOLES.get(one, INTENT.Part) for one in about] or [*data.objects(holder, RDF.type)]
    return frozenset(bearer for kind in kinds for bearer in ontology.bearers.get(kind, ()))


_WHOLES: Mapping[Node, Node] = {INTENT.work: INTENT.Work, INTENT.venue: INTENT.Venue}
"""What the scopes stand for of which something is expected as a whole."""


def unsuited_values(data: IndexedGraph, places: Places, vocabulary: Vocabulary) -> Iterator[Diagnostic]:
    """Named values that a part of its kind cannot have, as a text that says so is refused."""
    for holder, stated, characteristic in _statements(data, vocabulary):
        kinds = [kind for kind in _kinds(data, holder) if kind in vocabulary.concepts]
        for value in data.objects(stated, INTENT.value):
            concept = vocabulary.concepts.get(str(value))
            if concept is not None and kinds and not any(vocabulary.applies(concept, kind) for kind in kinds):
                message = say(
                    "`{text}` is not a {characteristic} of a {kinds}",
                    text=named(concept),
                    characteristic=characteristic,
                    kinds=listed((named(vocabulary.concepts[kind]) for kind in kinds), Joint.OR),
                )
                yield places.finding("unsuited", message, holder)


def _kinds(data: IndexedGraph, holder: Node) -> tuple[str, ...]:
    """The kind of a part; of an expectation, the kinds of the parts that it is expected of."""
    about = [*data.objects(holder, INTENT.expectedOf)]
    parts = [part for one in about for part in data.by_value.get(INTENT.inGroup, {}).get(one, ())]
    kinds = (kind for one in (holder, *about, *parts) for kind in data.objects(one, INTENT.kind))
    return tuple(dict.fromkeys(map(str, kinds)))


def _statements(data: IndexedGraph, vocabulary: Vocabulary) -> Iterator[tuple[Node, Node, Characteristic]]:
    """Everything that states something, with each statement and the characteristic it is about, where that is known."""
    for stated, holders in data.by_value.get(INTENT.states, {}).items():
        characteristic = vocabulary.characteristics.get(str(data.value(stated, INTENT.characteristic)))
        if characteristic is not None:
            yield from ((holder, stated, characteristic) for holder in holders)
