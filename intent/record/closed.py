"""What a graph from elsewhere says that no text could: undeclared names, things in no place, things said twice.

A dossier compiles to a graph without any of these. In a graph that was written by another program, or by hand, each
would change or drop a rule in silence.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from rdflib import RDF, URIRef
from rdflib.term import Node

from intent.diagnostics import Diagnostic, Span, in_order
from intent.names import Triple
from intent.record.bearing import misborne_statements, unsuited_values
from intent.record.belonging import misnumbered_lines, repeated_statements, shared_details, stray_things
from intent.record.declared import misplaced_names, undeclared_names
from intent.record.indexed import IndexedGraph
from intent.record.ontology import read_ontology
from intent.record.places import places_of
from intent.vocabulary.terms import Vocabulary


def closed_findings(
    graph: Iterable[Triple],
    spans: Mapping[str, Span],
    vocabulary: Vocabulary,
    which: str,
    beside: Iterable[Triple] = (),
) -> tuple[Diagnostic, ...]:
    """The errors of a ``work`` or an ``installation`` in what its graph names and how it hangs together.

    While a name is unknown nothing else is said, since all the rest may follow from it.
    """
    data = IndexedGraph(graph, IndexedGraph(beside))
    places, ontology = places_of(data, spans, which), read_ontology()
    return in_order(undeclared_names(data, places, ontology)) or in_order(
        [
            *misplaced_names(data, places, ontology, _classes(vocabulary)),
            *stray_things(data, places, ontology, which),
            *shared_details(data, places),
            *repeated_statements(data, places),
            *misnumbered_lines(data, places),
            *misborne_statements(data, places, ontology, vocabulary),
            *unsuited_values(data, places, vocabulary),
        ]
    )


def _classes(vocabulary: Vocabulary) -> Mapping[str, frozenset[Node]]:
    """The classes of the vocabulary's terms, a collection's own among them."""
    return {
        iri: frozenset(URIRef(kind.value) for kind in about.get(str(RDF.type), ()))
        for iri, about in vocabulary.described.items()
    }
