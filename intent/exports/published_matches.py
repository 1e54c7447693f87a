"""Which term of the Art & Architecture Thesaurus says the same as one of ours; `vocabulary/published.ttl` lists it."""

from __future__ import annotations

from collections.abc import Mapping
from importlib.resources import files

from rdflib import SKOS

from intent.record.indexed import IndexedGraph
from intent.record.parse import parse_triples

_AAT = "http://vocab.getty.edu/aat/"
_MATCHES = (SKOS.exactMatch, SKOS.closeMatch, SKOS.broadMatch, SKOS.relatedMatch)
Published = Mapping[str, tuple[str, str]]
"""The IRI and the name of the published term, by the IRI of ours."""


def read_published() -> Published:
    """The published term for each of ours that has one."""
    content = files("intent.vocabulary").joinpath("published.ttl").read_bytes()
    graph = IndexedGraph(parse_triples(content, "published.ttl", "turtle"))
    return {
        str(ours): (str(theirs), str(graph.value(theirs, SKOS.prefLabel)))
        for match in _MATCHES
        for theirs, having in graph.by_value.get(match, {}).items()
        for ours in having
        if str(theirs).startswith(_AAT)
    }
