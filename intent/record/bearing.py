"""Whether each thing in a graph can bear what is said of it: a wall colour is a venue's, a lens no loudspeaker's.

In a dossier the section of a table says whose the columns are; in a graph from elsewhere anything may be said of
anything, and would be passed over in silence.
"""

from __future__ import annotations

from collections.abc import Iterator

from rdflib import RDF
from rdflib.term import Node

from intent.diagnostics import Diagnostic
from intent.dossier.bearers import bearers_of
from intent.language.message import named, say
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
        bearers = frozenset(
            bearer for kind in data.objects(holder, RDF.type) for bearer in ontology.bearers.get(kind, ())
        )
        if bearers and not characteristic.bearers & bearers:
            message = say(
                "{characteristic} is said of a {bearers}, not of this",
                characteristic=characteristic,
                bearers=bearers_of(characteristic),
            )
            yield places.finding("misborne", message, holder)


def unsuited_values(data: IndexedGraph, places: Places, vocabulary: Vocabulary) -> Iterator[Diagnostic]:
    """Named values that a part of its kind cannot have, as a text that says so is refused."""
    for holder, stated, characteristic in _statements(data, vocabulary):
        kind = str(data.value(holder, INTENT.kind))
        if kind not in vocabulary.concepts:
            continue
        for value in data.objects(stated, INTENT.value):
            concept = vocabulary.concepts.get(str(value))
            if concept is not None and not vocabulary.suits(concept, kind):
                message = say(
                    "`{text}` is not a {characteristic} of a {kinds}",
                    text=named(concept),
                    characteristic=characteristic,
                    kinds=named(vocabulary.concepts[kind]),
                )
                yield places.finding("unsuited", message, holder)


def _statements(data: IndexedGraph, vocabulary: Vocabulary) -> Iterator[tuple[Node, Node, Characteristic]]:
    """Everything that states something, with each statement and the characteristic it is about, where that is known."""
    for stated, holders in data.by_value.get(INTENT.states, {}).items():
        characteristic = vocabulary.characteristics.get(str(data.value(stated, INTENT.characteristic)))
        if characteristic is not None:
            yield from ((holder, stated, characteristic) for holder in holders)
